//! Time of day, animation frames, turns of the event loop, and values that follow at rest.
use std::cell::Cell;
use std::rc::Rc;
use std::time::Duration;

use leptos::prelude::{
    Get, GetUntracked, GetValue, RwSignal, Set, SetValue, StoredValue, request_animation_frame, set_timeout,
};

/// How long something must stay as it is to be at rest: longer than a frame, shorter than it takes to listen.
const MOMENT: Duration = Duration::from_millis(120);

/// Milliseconds since some fixed moment.
pub fn now() -> f64 {
    js_sys::Date::now()
}

/// The same in whole milliseconds, as it is written down.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a time after 1970")]
pub fn stamp() -> u64 {
    now() as u64
}

/// Today where the reader is, year first (ISO 8601).
pub fn today() -> String {
    written(&js_sys::Date::new_0())
}

/// The day of a moment where the reader is, ms since 1970, year first.
pub fn day(stamp: u64) -> String {
    written(&js_sys::Date::new(&wasm_bindgen::JsValue::from_f64(stamp as f64)))
}

fn written(date: &js_sys::Date) -> String {
    format!("{}-{:02}-{:02}", date.get_full_year(), date.get_month() + 1, date.get_date())
}

/// Calls `step` before every paint, with the seconds since the call before, until it returns false.
pub fn each_frame(step: impl FnMut(f64) -> bool + 'static) {
    next_frame(now(), step);
}

fn next_frame(last: f64, mut step: impl FnMut(f64) -> bool + 'static) {
    // A page that slept in the background, or a clock that was set, must not make the table leap.
    const LONGEST: f64 = 0.1;
    request_animation_frame(move || {
        let now = now();
        if step(((now - last) / 1000.0).clamp(0.0, LONGEST)) {
            next_frame(now, step);
        }
    });
}

/// Calls `step` again and again between other work, from a moment of rest on, until it returns false.
pub fn at_leisure(step: impl FnMut() -> bool + 'static) {
    later(MOMENT, step);
}

/// Calls `step` again and again, each time in a turn of its own in which the browser waits for nothing else, until it returns false.
pub fn in_turns(step: impl FnMut() -> bool + 'static) {
    later(Duration::ZERO, step);
}

fn later(wait: Duration, mut step: impl FnMut() -> bool + 'static) {
    let call = move || {
        if step() {
            later(Duration::ZERO, step);
        }
    };
    set_timeout(call, wait);
}

/// A value that follows a moment after its last change.
#[derive(Clone, Copy)]
pub struct Resting {
    latest: StoredValue<f64>,
    /// When it changed last, ms.
    changed: StoredValue<f64>,
    waiting: StoredValue<bool>,
    settled: RwSignal<f64>,
}

impl Resting {
    /// It rests at this value.
    pub fn new(value: f64) -> Self {
        Self {
            latest: StoredValue::new(value),
            changed: StoredValue::new(0.0),
            waiting: StoredValue::new(false),
            settled: RwSignal::new(value),
        }
    }

    /// Where it rested last.
    pub fn get(&self) -> f64 {
        self.settled.get()
    }

    /// It rests now.
    pub fn settle(&self) {
        let now = self.latest.get_value();
        if self.settled.get_untracked().to_bits() != now.to_bits() {
            self.settled.set(now);
        }
    }

    /// It has changed.
    pub fn put(&self, value: f64) {
        self.latest.set_value(value);
        self.changed.set_value(now());
        if !self.waiting.get_value() {
            self.waiting.set_value(true);
            self.wait(MOMENT);
        }
    }

    fn wait(self, moment: Duration) {
        let look = move || {
            // A clock that was set back must not make it wait for hours.
            let rested = (now() - self.changed.get_value()).max(0.0);
            let rest = MOMENT.saturating_sub(Duration::from_secs_f64(rested / 1000.0));
            if rest.is_zero() {
                self.waiting.set_value(false);
                self.settle();
            } else {
                self.wait(rest);
            }
        };
        set_timeout(look, moment);
    }
}

/// Does something once before the next paint with the latest of all values put in until then.
pub struct Latest<T> {
    waiting: Rc<Cell<Option<T>>>,
    act: Rc<dyn Fn(T)>,
}

impl<T> Clone for Latest<T> {
    fn clone(&self) -> Self {
        Self { waiting: Rc::clone(&self.waiting), act: Rc::clone(&self.act) }
    }
}

impl<T: 'static> Latest<T> {
    /// Nothing is waiting yet.
    pub fn new(act: impl Fn(T) + 'static) -> Self {
        Self { waiting: Rc::default(), act: Rc::new(act) }
    }

    /// This value replaces the one that waits.
    pub fn put(&self, value: T) {
        if self.waiting.replace(Some(value)).is_none() {
            let Self { waiting, act } = self.clone();
            request_animation_frame(move || {
                if let Some(latest) = waiting.take() {
                    act(latest);
                }
            });
        }
    }
}
