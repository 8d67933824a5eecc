//! How large an element is at present.
use leptos::html::ElementType;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{HtmlElement, ResizeObserver};

/// Width and height of an element's inside, CSS pixels; zero until it stands in the page.
pub fn observe<E>(node: NodeRef<E>) -> ReadSignal<(f64, f64)>
where
    E: ElementType,
    E::Output: JsCast + Clone + 'static,
{
    let (size, set_size) = signal((0.0, 0.0));
    // An effect, because the element's size is the browser's and not the page's.
    Effect::new(move || {
        let Some(element) = node.get().and_then(|element| element.dyn_into::<HtmlElement>().ok()) else {
            return;
        };
        let measure = {
            let element = element.clone();
            move || {
                let now = (f64::from(element.client_width()), f64::from(element.client_height()));
                set_size.maybe_update(|size| core::mem::replace(size, now) != now);
            }
        };
        let call = Closure::<dyn Fn()>::new(measure);
        // It calls for the first time when the page has been laid out anyway.
        if let Ok(observer) = ResizeObserver::new(call.as_ref().unchecked_ref()) {
            observer.observe(&element);
        }
        // The observer lives as long as the page, and so must what it calls.
        call.forget();
    });
    size
}
