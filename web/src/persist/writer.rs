//! Writes the design and its history to address and storage: late, seldom, and the last one always.
use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};
use std::time::Duration;

use leptos::prelude::{GetUntracked, set_timeout};
use risewright::design::Design;
use risewright::share::Manner;
use risewright::share::address::{self, View};
use risewright::share::link;

use super::slots::{Outcome, Slots};
use super::storage::Refused;
use super::{file, history, record};
use crate::clock::now;
use crate::state::State;

/// The least time between two writes, ms: browsers refuse more than some 100 in 30 s.
const PAUSE: f64 = 500.0;

const DENIED: &str = "This browser keeps nothing for this page. The address holds the design: copy the link before you close the page.";
const FULL: &str =
    "The browser's storage is full. The address holds the design: copy the link before you close the page.";
const CLEARED: &str = "What this browser kept for the page was cleared while it was open. The design in front of you is kept again.";

thread_local! {
    static REMEMBERED: RefCell<Weak<Writer>> = const { RefCell::new(Weak::new()) };
}

/// Lets [`save_remembered`] reach this writer.
pub fn remember(writer: &Rc<Writer>) {
    REMEMBERED.set(Rc::downgrade(writer));
}

/// Writes what waits in the remembered writer, and says nothing.
pub fn save_remembered() {
    if let Some(writer) = REMEMBERED.with_borrow(Weak::upgrade) {
        writer.save();
    }
}

/// Writes at most every [`PAUSE`].
pub struct Writer {
    state: State,
    slots: Slots,
    version: String,
    written_at: Cell<f64>,
    waiting: Cell<Option<(View, Manner, Design)>>,
    scheduled: Cell<bool>,
    /// The last sentence about storage; it is not said twice on end.
    told: Cell<&'static str>,
}

impl Writer {
    /// Nothing is written yet.
    pub fn new(state: State, tab: &str) -> Self {
        Self {
            state,
            slots: Slots::new(tab),
            // The folder of the page's files has the name of its version.
            version: file::file_beside("").unwrap_or_default(),
            written_at: Cell::default(),
            waiting: Cell::default(),
            scheduled: Cell::default(),
            told: Cell::default(),
        }
    }

    /// The version of the program that keeps histories.
    pub fn version(&self) -> &str {
        &self.version
    }

    /// This design in this view is to be written, and what still waits no longer.
    pub fn put(self: &Rc<Self>, view: View, manner: Manner, design: Design) {
        self.waiting.set(Some((view, manner, design)));
        // A clock that was set back must not make it wait for hours.
        let wait = (self.written_at.get() + PAUSE - now()).min(PAUSE);
        if wait <= 0.0 {
            self.flush();
        } else if !self.scheduled.replace(true) {
            let writer = Rc::clone(self);
            set_timeout(
                move || {
                    writer.scheduled.set(false);
                    writer.flush();
                },
                Duration::from_secs_f64(wait / 1000.0),
            );
        }
    }

    /// Something else has changed the browser's storage: a key, or everything at once. What this tab keeps there stays there.
    pub fn changed_by_others(self: &Rc<Self>, key: Option<&str>, gone: bool) {
        if key.is_none() || gone && key.is_some_and(|key| self.slots.has(key)) {
            let State { view, manner, design, .. } = self.state;
            self.put(view.get_untracked(), manner.get_untracked(), design.get_untracked());
        }
    }

    /// Writes what waits, if anything does, and tells what cannot be kept.
    pub fn flush(&self) {
        let sentence = match self.save() {
            None => return,
            // Told again when it happens again after a time in which all was well.
            Some(Ok(Outcome::Kept)) => return self.told.set(""),
            Some(Ok(Outcome::KeptAgain)) => CLEARED,
            Some(Err(Refused::Denied)) => DENIED,
            Some(Err(Refused::Full)) => FULL,
        };
        if self.told.replace(sentence) != sentence {
            self.state.tell(sentence);
        }
    }

    /// Writes what waits, the design first.
    fn save(&self) -> Option<Result<Outcome, Refused>> {
        let (view, manner, design) = self.waiting.take()?;
        self.written_at.set(now());
        replace_address(view, &manner, &design);
        let outcome = self.slots.keep(&link::encode(&design));
        self.state.with_book(|book| record::keep(&self.version, book));
        Some(outcome)
    }
}

/// The entry is replaced even where the address is the same: a link that was followed has no mark yet.
fn replace_address(view: View, manner: &Manner, design: &Design) {
    history::replace(&format!("#{}", address::write_in(view, manner, design)));
}
