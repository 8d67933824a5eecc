//! Failures on demand, for the tests of what the page does then. Only the feature `trial` brings this file into the program.
use leptos::prelude::*;
use wasm_bindgen::JsValue;
use web_sys::CustomEvent;

/// The event that asks for a failure now, with its kind as detail, and the entry in the tab's storage that asks for one at every start.
const TRIAL: &str = "risewright-trial";

/// Fails where the tab's storage asks for it.
pub fn at_start() {
    let storage = web_sys::window().and_then(|window| window.session_storage().ok().flatten());
    if storage.and_then(|storage| storage.get_item(TRIAL).ok().flatten()).is_some() {
        fail("at the start");
    }
}

/// Fails from now on when it is asked to: in the event's handler, in an effect, in a task, or by a trap without a panic.
pub fn listen() {
    let asked = RwSignal::new(false);
    Effect::new(move || {
        if asked.get() {
            fail("in an effect");
        }
    });
    let event = leptos::ev::Custom::<CustomEvent>::new(TRIAL);
    window_event_listener(event, move |event| match event.detail().as_string().as_deref() {
        Some("effect") => asked.set(true),
        Some("task") => leptos::task::spawn_local(async { fail("in a task") }),
        Some("trap") => std::process::abort(),
        Some("stack") => web_sys::console::log_1(&JsValue::from_f64(deep(0.0))),
        _ => fail("in a handler"),
    });
}

#[expect(clippy::panic, reason = "this is what it is for")]
fn fail(place: &str) {
    panic!("asked to fail {place}");
}

/// Never comes back: the stack ends before.
#[expect(unconditional_recursion, reason = "this is what it is for")]
fn deep(depth: f64) -> f64 {
    depth + core::hint::black_box(deep(core::hint::black_box(depth + 1.0)))
}
