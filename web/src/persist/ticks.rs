//! What is ticked off of a build, kept by the design's name: a build takes weeks, and a page is closed every evening.
use leptos::prelude::*;

use super::storage::{self, Place};
use crate::state::State;

const PREFIX: &str = "risewright.ticks.";

/// Keeps the ticks of the present design, and takes up those kept when a design of another name comes, or when another tab ticks.
pub fn follow(state: State) {
    let key = StoredValue::new(String::new());
    let take_up =
        move || state.ticks.set(key.with_value(|key| storage::read(Place::Browser, key)).unwrap_or_default());
    // An effect, because storage lies outside the page's own state.
    Effect::new(move || {
        let present = state.design.with(|design| format!("{PREFIX}{}", design.name));
        let ticks = state.ticks.get();
        if key.with_value(|key| *key == present) {
            key.with_value(|key| keep(key, &ticks));
        } else {
            key.set_value(present);
            take_up();
        }
    });
    window_event_listener(leptos::ev::storage, move |event| {
        if event.key().is_some_and(|changed| key.with_value(|key| *key == changed)) {
            take_up();
        }
    });
}

fn keep(key: &str, ticks: &str) {
    if ticks.is_empty() {
        storage::remove(Place::Browser, key);
    } else {
        // Refused, they last as long as the page.
        let _ = storage::write(Place::Browser, key, ticks);
    }
}
