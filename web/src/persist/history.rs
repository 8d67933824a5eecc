//! The browser's history. Views add to it, edits do not; each entry is marked with the chapter it belongs to, and a chapter begins when a
//! link is opened. So Back within a chapter changes the view only, and Back beyond it opens the design of before.
use std::cell::Cell;

use wasm_bindgen::JsValue;
use web_sys::{History, PopStateEvent};

thread_local! {
    static CHAPTER: Cell<f64> = const { Cell::new(0.0) };
}

/// Whether an entry that was gone to belongs to the present chapter.
pub fn is_ours(event: &PopStateEvent) -> bool {
    event.state().as_f64() == Some(CHAPTER.get())
}

/// A link was opened.
pub fn new_chapter() {
    CHAPTER.set(crate::clock::now());
}

/// Adds an entry.
pub fn push(address: &str) {
    if let Some(history) = history() {
        // Refused by some browsers in embedded pages: the link can still be copied as text.
        let _ = history.push_state_with_url(&JsValue::from(CHAPTER.get()), "", Some(address));
    }
}

/// Replaces the present entry.
pub fn replace(address: &str) {
    if let Some(history) = history() {
        // As above.
        let _ = history.replace_state_with_url(&JsValue::from(CHAPTER.get()), "", Some(address));
    }
}

fn history() -> Option<History> {
    web_sys::window()?.history().ok()
}
