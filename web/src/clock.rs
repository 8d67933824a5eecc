//! Animation frames: the one place where time passes.
use std::cell::{Cell, RefCell};
use std::rc::Rc;

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

/// Asks the browser to call once before it paints next; without a window nothing happens.
fn request(call: &Closure<dyn FnMut(f64)>) {
    if let Some(window) = web_sys::window() {
        // A document that is being torn down refuses; then there is nothing left to paint.
        let _ = window.request_animation_frame(call.as_ref().unchecked_ref());
    }
}

/// Calls `step` before every paint with the seconds since the call before (0 at first) until it returns false.
///
/// Seconds are capped at a tenth, so that a page that slept in the background does not leap.
pub fn each_frame(mut step: impl FnMut(f64) -> bool + 'static) {
    const LONGEST: f64 = 0.1;
    let holder: Rc<RefCell<Option<Closure<dyn FnMut(f64)>>>> = Rc::default();
    let again = Rc::clone(&holder);
    let mut last = None;
    let call = Closure::<dyn FnMut(f64)>::new(move |now: f64| {
        let seconds = last.map_or(0.0, |last: f64| (now - last) / 1000.0).clamp(0.0, LONGEST);
        last = Some(now);
        if step(seconds) {
            if let Some(call) = &*again.borrow() {
                request(call);
            }
        } else {
            // The closure cannot be dropped while it runs: the cycle is cut in the next turn of the event loop.
            let again = Rc::clone(&again);
            wasm_bindgen::closure::Closure::once_into_js(move || drop(again.take()))
                .dyn_ref::<js_sys::Function>()
                .and_then(|free| {
                    web_sys::window().map(|window| window.set_timeout_with_callback_and_timeout_and_arguments_0(free, 0))
                });
        }
    });
    request(&call);
    holder.replace(Some(call));
}

/// Does something once before the next paint with the latest of all values put in until then.
pub struct Latest<T> {
    value: Rc<Cell<Option<T>>>,
    call: Closure<dyn FnMut(f64)>,
}

impl<T: 'static> Latest<T> {
    /// Nothing is waiting yet.
    pub fn new(act: impl Fn(T) + 'static) -> Self {
        let value = Rc::new(Cell::new(None));
        let waiting = Rc::clone(&value);
        let call = Closure::new(move |_now| {
            if let Some(latest) = waiting.take() {
                act(latest);
            }
        });
        Self { value, call }
    }

    /// This value replaces the one that waits.
    pub fn put(&self, value: T) {
        if self.value.replace(Some(value)).is_none() {
            request(&self.call);
        }
    }
}
