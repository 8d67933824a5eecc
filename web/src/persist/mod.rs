//! Keeping the design: in the address bar, and in the browser's storage.
//!
//! The address always holds the design, so that it can be sent; storage brings it back when the page is opened without one. Both
//! are written late and seldom, because browsers throttle them, but the last state is always written.
mod storage;
mod writer;

use std::rc::Rc;

use leptos::prelude::*;
use risewright::design::Design;
use risewright::quantity::System;
use risewright::share::address::{self, View};

use crate::state::{Message, State};
use writer::Writer;

const INCHES: &str = "in";
const MILLIMETRES: &str = "mm";

/// The text behind the `#` of the address bar.
fn fragment() -> String {
    web_sys::window().and_then(|window| window.location().hash().ok()).unwrap_or_default()
}

/// The whole address of the page with a design in it.
pub fn link_to(design: &Design) -> String {
    let page = web_sys::window().and_then(|window| window.location().href().ok()).unwrap_or_default();
    let page = page.split('#').next().unwrap_or_default().to_owned();
    format!("{page}#{}", address::write(View::Elevation, design))
}

/// The designs to begin with, the best first, and what was wrong with the address.
pub fn first_designs() -> (Vec<Design>, Option<String>) {
    let (opened, fault) = match address::read(&fragment()) {
        Ok(opened) => (opened.map(|(_, design)| design), None),
        Err(fault) => (None, Some(fault.to_string())),
    };
    (opened.into_iter().chain(storage::kept()).collect(), fault)
}

/// Keeps address and storage in step with the state from now on, and follows links opened in the same page.
pub fn follow(state: State) {
    if storage::units().as_deref() == Some(INCHES) {
        state.units.set(System::Inch);
    }
    let writer = Rc::new(Writer::default());
    writer::remember(&writer);
    // Effects, because address, storage and the window's title lie outside the page's own state.
    let put = Rc::clone(&writer);
    Effect::new(move || put.put(state.design.get()));
    Effect::new(move || {
        storage::keep_units(if state.units.get() == System::Inch { INCHES } else { MILLIMETRES });
    });
    Effect::new(move || {
        if let Some(document) = web_sys::window().and_then(|window| window.document()) {
            document.set_title(&state.design.with(|design| format!("{} – Risewright", design.name)));
        }
    });
    let put = Rc::clone(&writer);
    window_event_listener(leptos::ev::hashchange, move |_| {
        let outcome = match address::read(&fragment()) {
            Ok(Some((_, design))) => state.open("opened link", design),
            Ok(None) => Ok(()),
            Err(fault) => Err(fault.to_string()),
        };
        state.notice.set(outcome.err().map(Message::Sentence));
        // After a refused link the address must again tell the design that is shown.
        put.put(state.design.get_untracked());
    });
    window_event_listener(leptos::ev::pagehide, move |_| writer.flush());
}

/// Writes what still waits to be written, before the program ends in trouble.
pub fn save_now() {
    writer::flush_remembered();
}
