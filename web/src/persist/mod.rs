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
use risewright::quantity::{Length, System};
use risewright::share::Manner;
use risewright::share::address::{self, Opened, View};
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

/// The whole address of the page with a design in a view, shown in a manner.
pub fn link_to(view: View, manner: &Manner, design: &Design) -> String {
    format!("{}#{}", page_address(), address::write_in(view, manner, design))
}

/// The whole address of what is on screen, the deck where it stands.
pub fn link_here(state: State) -> String {
    let manner = Manner { at: Some(Length::m(state.height())), ..state.manner.get_untracked() };
    state.design.with_untracked(|design| link_to(state.view.get_untracked(), &manner, design))
}

/// What the page begins with.
#[derive(Default)]
pub struct First {
    /// The view.
    pub view: View,
    /// How it is shown.
    pub manner: Manner,
    /// The designs, the best first.
    pub designs: Vec<Design>,
    /// What was wrong with the address.
    pub fault: Option<String>,
}

/// What the address and the browser's storage bring.
pub fn first() -> First {
    match address::read(&fragment()) {
        Ok(Some(Opened { view, manner, design })) => {
            let designs = design.into_iter().chain(storage::kept()).collect();
            First { view, manner, designs, fault: None }
        }
        Ok(None) => First { designs: storage::kept().into_iter().collect(), ..First::default() },
        Err(fault) => First {
            designs: storage::kept().into_iter().collect(),
            fault: Some(fault.to_string()),
            ..First::default()
        },
    }
}

/// Keeps address and storage in step with the state from now on, and follows links opened in the same page.
pub fn follow(state: State) {
    if storage::units().as_deref() == Some(INCHES) {
        state.units.set(System::Inch);
    }
    let writer = Rc::new(Writer::default());
    writer::remember(&writer);
    // Effects, because address, storage and the window's title lie outside the page's own state.
    // Within another page neither its history nor what the reader keeps is touched.
    if state.manner.with_untracked(|manner| manner.embed) {
        return;
    }
    let put = Rc::clone(&writer);
    Effect::new(move || put.put(state.view.get(), state.manner.get(), state.design.get()));
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
        if let (true, Ok(Some(opened))) = (history::is_ours(&event), address::read(&fragment())) {
            state.view.set(opened.view);
        } else {
            history::new_chapter();
            let outcome = match address::read(&fragment()) {
                Ok(Some(Opened { view, manner, design })) => {
                    let opened = design.map_or(Ok(()), |design| state.open("opened link", design));
                    opened.map(|()| state.look(view, manner))
                }
                Ok(None) => Ok(()),
                Err(fault) => Err(fault.to_string()),
            };
            state.notice.set(outcome.err().map(Message::Sentence));
        }
        // After a refused link, or a step back, the address must again tell what is shown.
        put.put(state.view.get_untracked(), state.manner.get_untracked(), state.design.get_untracked());
    });
    window_event_listener(leptos::ev::pagehide, move |_| writer.flush());
}

/// Goes to a view; the present one can be come back to.
pub fn go_to_view(state: State, view: View) {
    if state.view.get_untracked() != view {
        if !state.manner.with_untracked(|manner| manner.embed) {
            let manner = state.manner.get_untracked();
            let fragment = state.design.with_untracked(|design| address::write_in(view, &manner, design));
            history::push(&format!("#{fragment}"));
        }
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
