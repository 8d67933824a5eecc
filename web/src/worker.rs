//! The worker beside the page: it makes the documents that are read. The page never waits for it; a newer request abandons an older one.
use std::cell::{Cell, RefCell};
use std::rc::Rc;

use js_sys::Array;
use leptos::prelude::*;
use risewright::quantity::System;
use risewright::share::address::View;
use risewright::share::link;
use wasm_bindgen::prelude::{Closure, JsValue};
use wasm_bindgen::{JsCast, intern};
use web_sys::{ErrorEvent, MessageEvent, Worker, WorkerOptions, WorkerType};

use crate::clock::today;
use crate::persist;
use crate::state::{Message, State};

/// What is known of a page so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Leaf {
    /// The page's view; none before the first.
    pub view: Option<View>,
    /// The document.
    pub html: String,
    /// The share of the work behind it that is done, 0 to 1.
    pub progress: f64,
    /// Whether work goes on.
    pub working: bool,
}

/// A page is asked anew at most so often while work is abandoned and begun again and the module fails.
const MOST_FAILURES: u32 = 3;

thread_local! {
    static OFFICE: RefCell<Option<Rc<Office>>> = const { RefCell::new(None) };
}

/// The worker and what was asked of it.
struct Office {
    state: State,
    worker: RefCell<Option<Worker>>,
    request: Cell<u32>,
    failures: Cell<u32>,
    heard: Closure<dyn FnMut(MessageEvent)>,
    failed: Closure<dyn FnMut(ErrorEvent)>,
}

/// Keeps the page that is read in step with the state from now on.
pub fn follow(state: State) {
    OFFICE.set(Some(Rc::new(Office {
        state,
        worker: RefCell::default(),
        request: Cell::new(0),
        failures: Cell::new(0),
        heard: Closure::new(|event: MessageEvent| {
            if let Some(office) = office() {
                office.hear(&Array::from(&event.data()));
            }
        }),
        failed: Closure::new(|event: ErrorEvent| {
            if let Some(office) = office() {
                office.fail(&event.message());
            }
        }),
    })));
    // An effect, because the worker lies outside the page's own state.
    Effect::new(move || {
        let view = state.view.get();
        state.design.track();
        state.units.track();
        if let Some(office) = office() {
            if view == View::Elevation { office.stop() } else { office.open() }
        }
    });
}

/// Stops the work behind the page; what is known stays.
pub fn stop() {
    if let Some(office) = office() {
        office.stop();
    }
}

/// Goes on with the work behind the page.
pub fn go_on() {
    if let Some(office) = office() {
        office.open();
    }
}

/// Asks for a file of the page; it is saved when it comes.
pub fn save(name: &str) {
    if let Some(office) = office() {
        office.ask("file", [JsValue::from_str(name)]);
    }
}

fn office() -> Option<Rc<Office>> {
    OFFICE.with_borrow(Clone::clone)
}

impl Office {
    fn open(&self) {
        let view = self.state.view.get_untracked();
        let link = self.state.design.with_untracked(link::encode);
        self.ask("open", [JsValue::from_str(view.word()), JsValue::from_str(&link)]);
    }

    fn stop(&self) {
        if self.worker.borrow().is_some() {
            self.ask("stop", []);
        }
        self.state.leaf.update(|leaf| leaf.working = false);
    }

    /// Sends a request: a word, its number, what belongs to it, and for whom.
    fn ask<const N: usize>(&self, word: &str, content: [JsValue; N]) {
        let Some(worker) = self.worker() else {
            self.tell("This browser does not let the page work in the background, which this view needs.");
            return;
        };
        // A file belongs to the page that is open and does not abandon its work.
        if word != "file" {
            self.request.set(self.request.get().wrapping_add(1));
        }
        let inches = self.state.units.get_untracked() == System::Inch;
        let reader = [
            JsValue::from_bool(inches),
            JsValue::from_str(&persist::page_address()),
            JsValue::from_str(&today()),
        ];
        let message: Array = [JsValue::from_str(intern(word)), JsValue::from(self.request.get())]
            .into_iter()
            .chain(content)
            .chain(reader)
            .collect();
        if worker.post_message(&message).is_err() {
            self.fail("it takes no messages");
        }
    }

    /// The worker, started when it is first needed.
    fn worker(&self) -> Option<Worker> {
        let mut kept = self.worker.borrow_mut();
        if kept.is_none() {
            let options = WorkerOptions::new();
            options.set_type(WorkerType::Module);
            let worker = Worker::new_with_options(&persist::file_beside("worker.js")?, &options).ok()?;
            worker.set_onmessage(Some(self.heard.as_ref().unchecked_ref()));
            worker.set_onerror(Some(self.failed.as_ref().unchecked_ref()));
            *kept = Some(worker);
        }
        kept.clone()
    }

    fn hear(&self, answer: &Array) {
        let text = |place| answer.get(place).as_string().unwrap_or_default();
        let number = answer.get(1).as_f64();
        match text(0).as_str() {
            "file" => persist::save_file(&text(2), &text(3)),
            "dead" => self.fail(&text(2)),
            _ if number != Some(f64::from(self.request.get())) => {}
            "page" => {
                self.failures.set(0);
                self.state.leaf.set(Leaf {
                    view: Some(self.state.view.get_untracked()),
                    html: text(2),
                    progress: answer.get(3).as_f64().unwrap_or(1.0),
                    working: answer.get(4).as_bool().unwrap_or(false),
                });
            }
            _ => self.tell(&text(2)),
        }
    }

    /// Begins again with another worker, but not for ever.
    fn fail(&self, reason: &str) {
        if let Some(worker) = self.worker.take() {
            worker.terminate();
        }
        let failures = self.failures.get() + 1;
        self.failures.set(failures);
        if failures < MOST_FAILURES {
            self.open();
        } else {
            self.state.leaf.update(|leaf| leaf.working = false);
            self.tell(&format!(
                "The part of the program behind this view has failed ({reason}). Your design is safe; change it or load the page anew."
            ));
        }
    }

    fn tell(&self, sentence: &str) {
        self.state.notice.set(Some(Message::Sentence(sentence.to_owned())));
    }
}
