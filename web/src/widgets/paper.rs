//! Whether what is drawn in pixels must be drawn anew: colours or the density of the screen have changed.
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

/// The system's choices that change colours.
const COLOURS: [&str; 2] = ["(prefers-color-scheme: dark)", "(forced-colors: active)"];

/// A number that changes whenever colours or density do.
pub fn paper() -> ReadSignal<u32> {
    let (paper, set_paper) = signal(0_u32);
    let anew = move || {
        // Gone with the view that asked; then nobody draws.
        let _ = set_paper.try_update(|paper| *paper = paper.wrapping_add(1));
    };
    if let Some(window) = web_sys::window() {
        for choice in COLOURS {
            let Ok(Some(query)) = window.match_media(choice) else { continue };
            let call = Closure::<dyn Fn()>::new(anew);
            // Old browsers lack it; then a change shows with the next drawing.
            let _ = query.add_event_listener_with_callback("change", call.as_ref().unchecked_ref());
            // It listens as long as the page lives.
            call.forget();
        }
    }
    let density = StoredValue::new(f64::NAN);
    let resized = window_event_listener(leptos::ev::resize, move |_| {
        let now = web_sys::window().map_or(1.0, |window| window.device_pixel_ratio());
        if (now - density.get_value()).abs() > f64::EPSILON || density.get_value().is_nan() {
            density.set_value(now);
            anew();
        }
    });
    // The window outlives the view that asked.
    on_cleanup(move || resized.remove());
    paper
}
