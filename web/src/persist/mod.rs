//! Keeping the design: in the address bar, and in the browser's storage.
//!
//! The address always holds the design, so that it can be sent; storage brings it back when the page is opened without one. Both
//! are written late and seldom, because browsers throttle them, but the last state is always written.
mod file;
mod history;
mod storage;
mod writer;

use std::rc::Rc;

use leptos::prelude::*;
use risewright::design::Design;
use risewright::quantity::System;
use risewright::share::address::{self, View};
use web_sys::{ScrollIntoViewOptions, ScrollLogicalPosition};

use crate::state::{Message, State};
use writer::Writer;

pub use file::{file_beside, print, save_file};

const INCHES: &str = "in";
const MILLIMETRES: &str = "mm";

/// The text behind the `#` of the address bar.
fn fragment() -> String {
    web_sys::window().and_then(|window| window.location().hash().ok()).unwrap_or_default()
}

/// The address of the page itself, without a design.
pub fn page_address() -> String {
    let page = web_sys::window().and_then(|window| window.location().href().ok()).unwrap_or_default();
    page.split('#').next().unwrap_or_default().to_owned()
}

/// The whole address of the page with a design in a view.
pub fn link_to(view: View, design: &Design) -> String {
    format!("{}#{}", page_address(), address::write(view, design))
}

/// The view and the designs to begin with, the best first, and what was wrong with the address.
pub fn first_designs() -> (View, Vec<Design>, Option<String>) {
    let (opened, fault) = match address::read(&fragment()) {
        Ok(opened) => (opened, None),
        Err(fault) => (None, Some(fault.to_string())),
    };
    let view = opened.as_ref().map_or_else(View::default, |(view, _)| *view);
    (view, opened.map(|(_, design)| design).into_iter().chain(storage::kept()).collect(), fault)
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
    Effect::new(move || put.put(state.view.get(), state.design.get()));
    Effect::new(move || {
        storage::keep_units(if state.units.get() == System::Inch { INCHES } else { MILLIMETRES });
    });
    Effect::new(move || {
        if let Some(document) = web_sys::window().and_then(|window| window.document()) {
            document.set_title(&state.design.with(|design| format!("{} – Risewright", design.name)));
        }
    });
    Effect::new(move || {
        state.view.track();
        // Its tab is marked by then.
        request_animation_frame(show_tab);
    });
    let put = Rc::clone(&writer);
    window_event_listener(leptos::ev::popstate, move |event| {
        // Back and forward between views keep the design as it is now; only another opened link changes it.
        if let (true, Ok(Some((view, _)))) = (history::is_ours(&event), address::read(&fragment())) {
            state.view.set(view);
        } else {
            history::new_chapter();
            let outcome = match address::read(&fragment()) {
                Ok(Some((view, design))) => state.open("opened link", design).map(|()| state.view.set(view)),
                Ok(None) => Ok(()),
                Err(fault) => Err(fault.to_string()),
            };
            state.notice.set(outcome.err().map(Message::Sentence));
        }
        // After a refused link, or a step back, the address must again tell what is shown.
        put.put(state.view.get_untracked(), state.design.get_untracked());
    });
    window_event_listener(leptos::ev::pagehide, move |_| writer.flush());
}

/// Goes to a view; the present one can be come back to.
pub fn go_to_view(state: State, view: View) {
    if state.view.get_untracked() != view {
        history::push(&format!("#{}", state.design.with_untracked(|design| address::write(view, design))));
        state.view.set(view);
        to_the_top();
    }
}

/// Brings the tab of the present view into sight, where there is no room for all of them.
fn show_tab() {
    let document = web_sys::window().and_then(|window| window.document());
    let tab = document.and_then(|document| document.query_selector(".tabs [aria-current]").ok().flatten());
    if let Some(tab) = tab {
        let options = ScrollIntoViewOptions::new();
        options.set_block(ScrollLogicalPosition::Nearest);
        options.set_inline(ScrollLogicalPosition::Center);
        tab.scroll_into_view_with_scroll_into_view_options(&options);
    }
}

/// Shows the page from its beginning.
pub fn to_the_top() {
    if let Some(window) = web_sys::window() {
        window.scroll_to_with_x_and_y(0.0, 0.0);
    }
}

/// Writes what still waits to be written, before the program ends in trouble.
pub fn save_now() {
    writer::flush_remembered();
}
