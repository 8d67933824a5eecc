//! Writes the design to address and storage: late, seldom, and the last one always.
use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};
use std::time::Duration;

use leptos::prelude::set_timeout;
use risewright::design::Design;
use risewright::share::Manner;
use risewright::share::address::{self, View};
use risewright::share::link;

use super::{history, storage};
use crate::clock::now;

/// The least time between two writes, ms: browsers refuse more than some 100 in 30 s.
const PAUSE: f64 = 500.0;

thread_local! {
    static REMEMBERED: RefCell<Weak<Writer>> = const { RefCell::new(Weak::new()) };
}

/// Lets [`flush_remembered`] reach this writer.
pub fn remember(writer: &Rc<Writer>) {
    REMEMBERED.set(Rc::downgrade(writer));
}

/// Writes what waits in the remembered writer.
pub fn flush_remembered() {
    if let Some(writer) = REMEMBERED.with_borrow(Weak::upgrade) {
        writer.flush();
    }
}

/// Writes at most every [`PAUSE`].
#[derive(Default)]
pub struct Writer {
    written_at: Cell<f64>,
    waiting: Cell<Option<(View, Manner, Design)>>,
    scheduled: Cell<bool>,
}

impl Writer {
    /// This design in this view is to be written, and what still waits no longer.
    pub fn put(self: &Rc<Self>, view: View, manner: Manner, design: Design) {
        self.waiting.set(Some((view, manner, design)));
        let wait = self.written_at.get() + PAUSE - now();
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

    /// Writes what waits, if anything does.
    pub fn flush(&self) {
        if let Some((view, manner, design)) = self.waiting.take() {
            self.written_at.set(now());
            storage::keep(&link::encode(&design));
            replace_address(view, &manner, &design);
        }
    }
}

/// The entry is replaced even where the address is the same: a link that was followed has no mark yet.
fn replace_address(view: View, manner: &Manner, design: &Design) {
    history::replace(&format!("#{}", address::write_in(view, manner, design)));
}
