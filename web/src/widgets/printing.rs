//! Whether the page is being printed at this moment.
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

/// True from before the browser lays the page out for paper until it is done.
pub fn printing() -> ReadSignal<bool> {
    let (printing, set_printing) = signal(false);
    let before = window_event_listener(leptos::ev::beforeprint, move |_| set_printing.set(true));
    let query = web_sys::window().and_then(|window| window.match_media("print").ok().flatten());
    let shown = query.clone();
    // A page that is shown as it would be printed goes on being shown so.
    let after = window_event_listener(leptos::ev::afterprint, move |_| {
        set_printing.set(shown.as_ref().is_some_and(web_sys::MediaQueryList::matches));
    });
    on_cleanup(move || {
        before.remove();
        after.remove();
    });
    // A page shown as it would be printed is told so in another way.
    if let Some(query) = query {
        set_printing.set(query.matches());
        let call = {
            let query = query.clone();
            Closure::<dyn Fn()>::new(move || {
                // Gone with the view that asked; then nobody prints it.
                let _ = set_printing.try_set(query.matches());
            })
        };
        // Old browsers lack it and have the events above.
        let _ = query.add_event_listener_with_callback("change", call.as_ref().unchecked_ref());
        // It listens as long as the page lives.
        call.forget();
    }
    printing
}
