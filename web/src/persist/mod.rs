//! Keeping the design: in the address bar, and in the browser's storage.
//!
//! The address always holds the design, so that it can be sent; storage brings it back when the page is opened without one. Both
//! are written late and seldom, because browsers throttle them, but the last state is always written.
mod entry;
mod file;
mod history;
mod passing;
mod record;
mod shelf;
mod slots;
mod storage;
mod ticks;
mod writer;

use std::rc::Rc;

use leptos::prelude::*;
use risewright::design::Design;
use risewright::quantity::{Length, System};
use risewright::share::Manner;
use risewright::share::address::{self, Opened, View};
use web_sys::{ScrollIntoViewOptions, ScrollLogicalPosition};

use crate::edit::Turned;
use crate::state::{Message, State};
use slots::Found;
use storage::Place;
use writer::Writer;

pub use file::{file_beside, print, save_file};
pub use passing::{can_send, choose_file, copy, send, take_dropped};
pub use shelf::{Fault, Keeper, Shelved};
pub use slots::not_again;

const UNITS: &str = "risewright.units";
const INCHES: &str = "in";
const MILLIMETRES: &str = "mm";
/// Set by the page's start, in the tab's storage, when it loads the page anew after a failure.
const RETURN: &str = "risewright.return";
/// What the program said when it failed, for the page's start.
const REASON: &str = "risewright.reason";

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
pub struct First {
    /// The view.
    pub view: View,
    /// How it is shown.
    pub manner: Manner,
    /// The design of the address, if it brings one.
    pub design: Option<Design>,
    /// What was wrong with the address.
    pub fault: Option<String>,
}

impl First {
    /// The designs to begin with, the best first. What is kept is not looked at before it is needed.
    pub fn designs(&self) -> impl Iterator<Item = Design> + use<> {
        let kept = core::iter::once_with(|| Found::now().kept).flatten().map(|kept| kept.design);
        self.design.clone().into_iter().chain(kept)
    }
}

/// What the address brings.
pub fn first() -> First {
    let (opened, fault) = match address::read(&fragment()) {
        Ok(opened) => (opened, None),
        Err(fault) => (None, Some(fault.to_string())),
    };
    let Opened { view, manner, design } =
        opened.unwrap_or(Opened { view: View::default(), manner: Manner::default(), design: None });
    First { view, manner, design, fault }
}

/// Keeps address and storage in step with the state from now on, and follows links opened in the same page.
pub fn follow(state: State, first: &First) {
    if storage::read(Place::Browser, UNITS).as_deref() == Some(INCHES) {
        state.units.set(System::Inch);
    }
    let writer = Rc::new(Writer::new(state, &tab()));
    come_back(state, writer.version());
    // Effects, because address, storage and the window's title lie outside the page's own state.
    // Within another page neither its history nor what the reader keeps is touched.
    if state.manner.with_untracked(|manner| manner.embed) {
        return;
    }
    writer::remember(&writer);
    ticks::follow(state);
    if first.design.is_none() {
        tell_of_others(state);
    }
    let put = Rc::clone(&writer);
    Effect::new(move || put.put(state.view.get(), state.manner.get(), state.design.get()));
    Effect::new(move || {
        let units = if state.units.get() == System::Inch { INCHES } else { MILLIMETRES };
        // Refused, it is chosen anew next time.
        let _ = storage::write(Place::Browser, UNITS, units);
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
    let keeper = Rc::clone(&writer);
    window_event_listener(leptos::ev::storage, move |event| {
        keeper.changed_by_others(event.key().as_deref(), event.new_value().is_none());
    });
    window_event_listener(leptos::ev::pagehide, move |_| writer.flush());
}

/// The name under which this tab keeps its design, given by the page's start.
fn tab() -> String {
    let root = web_sys::window().and_then(|window| window.document()?.document_element());
    root.and_then(|root| root.get_attribute("data-tab")).unwrap_or_default()
}

/// Takes up the history of a page that was loaded anew with the same design, or that has failed.
fn come_back(state: State, version: &str) {
    let returned = storage::read(Place::Tab, RETURN).is_some();
    storage::remove(Place::Tab, RETURN);
    let record = record::kept(version);
    if let Some(record) = record {
        if state.design.with_untracked(|design| *design == record.present) {
            state.recall(record.past, record.future);
        } else if returned {
            // The change that led to the failure was kept, the history that has it no more.
            let mut past = record.past;
            past.push(Turned { title: "last change".to_owned(), design: record.present });
            state.recall(past, Vec::new());
        }
    }
    if returned {
        state.tell(
            "The program had failed and was started again. Your design and its history are as they were.",
        );
    }
}

/// Says what of the kept designs could not be read, and offers those of other tabs.
fn tell_of_others(state: State) {
    const MOST: usize = 3;
    let found = Found::now();
    if let Some(sentence) = found.tell_once() {
        state.tell(sentence);
    }
    let mut others = state.design.with_untracked(|design| found.others(design));
    others.truncate(MOST);
    if !others.is_empty() {
        let sentence = match others.len() {
            1 => "Another design was open in another tab.",
            _ => "Other designs were open in other tabs.",
        };
        state.offer(sentence, others.into_iter().map(|kept| kept.design).collect());
    }
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

/// Writes what still waits to be written, and what the program says, before it ends in trouble.
pub fn save_now(reason: &str) {
    // Refused, the page's start has words of its own.
    let _ = storage::write(Place::Tab, REASON, reason);
    writer::save_remembered();
}
