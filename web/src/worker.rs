//! The worker beside the page: it makes the documents that are read. The page never waits for it; a newer request abandons an older one.
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::sync::Arc;

use js_sys::Array;
use leptos::prelude::*;
use risewright::drawing::Screen;
use risewright::quantity::System;
use risewright::share::address::View;
use risewright::share::link;
use wasm_bindgen::prelude::{Closure, JsValue};
use wasm_bindgen::{JsCast, intern};
use web_sys::{ErrorEvent, MessageEvent, Worker, WorkerOptions, WorkerType};

use crate::clock::today;
use crate::persist;
use crate::shelf;
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
    /// Whether another document is asked for and still to come.
    pub awaited: bool,
}

/// A picture that is wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ask {
    /// Width, and height or that of the window, CSS pixels, and what is kept free at the top.
    pub room: [u32; 3],
    /// Whether plots stand beneath the drawing.
    pub narrow: bool,
    /// Whether the plots are those of rattle and twist.
    pub rattle: bool,
    /// Deck height, m.
    pub deck: f64,
    /// Sideways push, N.
    pub push: f64,
}

/// The end elevation as it was drawn last; see [`risewright::pages::Live`].
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Picture {
    /// What stands still.
    pub still: Arc<str>,
    edition: u32,
    /// What moves.
    pub moving: Arc<str>,
    /// What one would read off it.
    pub spoken: String,
    /// Width and height, px.
    pub size: [f64; 2],
    /// The push that is drawn, N.
    pub pushed: f64,
    /// The hardest push that can be drawn, N; zero where none can.
    pub most_push: f64,
    /// How far the grip moves for a push of one newton, px.
    pub per_newton: f64,
    /// How far the deck moves for a metre of height, px.
    pub per_metre: f64,
    /// Lowest and highest deck, m.
    pub lift: [f64; 2],
    /// The grip that moves the deck up and down.
    pub deck: Option<Screen>,
    /// The grip that pushes it.
    pub push: Option<Screen>,
    /// The ring at the carriage.
    pub carriage: Option<Screen>,
    /// The plot on which the reader sketches a guess, if there is one.
    pub sketch: Option<Sketch>,
}

/// A plot to sketch on; see [`risewright::pages::Sketch`].
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sketch {
    /// Where its value axis begins and ends, px.
    pub ends: [f64; 2],
    /// The heights of its handles, px, the lowest deck first.
    pub ys: Vec<f64>,
}

impl Sketch {
    /// The handle nearest to a point, and the share of the axis at it.
    pub fn at(&self, point: Screen) -> Option<(usize, f64)> {
        let apart = |y: &f64| (y - point.y).abs();
        let (handle, _) =
            self.ys.iter().enumerate().min_by(|one, other| apart(one.1).total_cmp(&apart(other.1)))?;
        let [left, right] = self.ends;
        Some((handle, ((point.x - left) / (right - left).max(1.0)).clamp(0.0, 1.0)))
    }
}

impl Picture {
    /// From the worker's list, which begins at a place; `last` gives what stands still where that is not sent again. None where the page
    /// has no picture.
    fn read(list: &Array, from: u32, last: &Self) -> Option<Self> {
        let number = |place: u32| list.get(from + 4 + place).as_f64().unwrap_or(f64::NAN);
        let grip = |place: u32| {
            let at = Screen::new(number(8 + 2 * place), number(9 + 2 * place));
            at.x.is_finite().then_some(at)
        };
        let text = |place: u32| list.get(from + place).as_string();
        Some(Self {
            still: text(0).map_or_else(|| Arc::clone(&last.still), Arc::from),
            moving: text(1)?.into(),
            spoken: text(2)?,
            edition: list.get(from + 3).as_f64().map_or(0, whole),
            size: [number(0), number(1)],
            pushed: number(2),
            most_push: number(3),
            per_newton: number(4),
            per_metre: number(5),
            lift: [number(6), number(7)],
            deck: grip(0),
            push: grip(1),
            carriage: grip(2),
            sketch: number(14).is_finite().then(|| Sketch {
                ends: [number(14), number(15)],
                ys: (16..).map(number).take_while(|y| y.is_finite()).collect(),
            }),
        })
    }
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number, saturating")]
const fn whole(number: f64) -> u32 {
    number as u32
}

/// What was found in a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    /// The designs, each by its link and with what else the file brought with it.
    pub designs: Vec<(String, String)>,
    /// Whether the file is a shelf, though it may hold one design only.
    pub shelf: bool,
    /// What is to be said of it.
    pub remark: Option<String>,
}

impl Found {
    /// From the worker's list: whether it is a shelf, the remark, and pairs of link and extra text.
    fn read(answer: &Array) -> Self {
        let texts: Vec<String> = answer.iter().skip(4).filter_map(|text| text.as_string()).collect();
        Self {
            designs: texts.chunks_exact(2).map(|pair| (pair[0].clone(), pair[1].clone())).collect(),
            shelf: answer.get(2).is_truthy(),
            remark: answer.get(3).as_string().filter(|remark| !remark.is_empty()),
        }
    }
}

/// An answer to a question of a view.
struct Answer {
    view: View,
    key: String,
    text: String,
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
    /// What the reader answered to the questions of each view, the latest last: another worker, or the page of another design, hears it anew.
    answers: RefCell<Vec<Answer>>,
    /// The picture asked for last, the view whose answer is still to come, and the one to ask for then.
    asked: Cell<Option<Ask>>,
    waiting: Cell<Option<View>>,
    wanted: Cell<Option<Ask>>,
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
        answers: RefCell::default(),
        asked: Cell::new(None),
        waiting: Cell::new(None),
        wanted: Cell::new(None),
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

/// Keeps the picture in step with what is asked for, one request at a time, the latest first.
pub fn draw(ask: Signal<Option<Ask>>) {
    // An effect, because the worker lies outside the page's own state.
    Effect::new(move || {
        if let (Some(ask), Some(office)) = (ask.get(), office()) {
            office.want(ask);
        }
    });
    on_cleanup(|| {
        if let Some(office) = office() {
            office.asked.set(None);
            office.state.picture.set(Picture::default());
        }
    });
}

/// Tells the page that is read what the reader answers. Where the answer does not rest yet, as under a slider that is still held, only its
/// picture follows.
pub fn answer(key: &str, text: &str, rests: bool) {
    if let Some(office) = office() {
        office.answer(key, text, rests);
    }
}

/// Keeps the page of the view that is open told of something, by the names under which it hears it.
pub fn tell(told: Signal<Vec<(&'static str, String)>>) {
    // An effect, because the worker lies outside the page's own state.
    Effect::new(move || {
        let Some(office) = office() else { return };
        let told = told.get();
        let last = told.len().saturating_sub(1);
        for (place, (key, text)) in told.iter().enumerate() {
            office.answer(key, text, place == last);
        }
    });
}

/// Lets the worker read a file that the reader brings; what is found comes to [`crate::shelf::found`].
pub fn read_file(text: &str) {
    if let Some(office) = office() {
        office.ask("read", [JsValue::from_str(text)]);
    }
}

/// Answers a question of a view before it is opened.
pub fn answer_in(view: View, key: &str, text: &str) {
    if let Some(office) = office() {
        office.keep(view, key, text);
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
        // A page that is the same for every design is not made anew for another.
        let link = if view.is_about_the_design() {
            self.state.design.with_untracked(link::encode)
        } else {
            String::new()
        };
        let answers: Array = self
            .answers
            .borrow()
            .iter()
            .filter(|answer| answer.view == view)
            .flat_map(|answer| [&answer.key, &answer.text])
            .map(|text| JsValue::from_str(text))
            .collect();
        self.ask("open", [JsValue::from_str(view.word()), JsValue::from_str(&link), answers.into()]);
        self.state.leaf.update(|leaf| leaf.awaited = true);
    }

    fn keep(&self, view: View, key: &str, text: &str) {
        let mut answers = self.answers.borrow_mut();
        answers.retain(|answer| answer.view != view || answer.key != key);
        answers.push(Answer { view, key: key.to_owned(), text: text.to_owned() });
    }

    fn answer(&self, key: &str, text: &str, rests: bool) {
        self.keep(self.state.view.get_untracked(), key, text);
        self.ask("answer", [JsValue::from_str(key), JsValue::from_str(text), JsValue::from_bool(rests)]);
        if rests {
            self.state.leaf.update(|leaf| leaf.awaited = true);
        } else if let Some(ask) = self.asked.get() {
            self.want(ask);
        }
    }

    fn stop(&self) {
        if self.worker.borrow().is_some() {
            self.ask("stop", []);
        }
        self.rest();
    }

    /// Nothing more comes for now.
    fn rest(&self) {
        self.state.leaf.update(|leaf| (leaf.working, leaf.awaited) = (false, false));
    }

    fn want(&self, ask: Ask) {
        self.asked.set(Some(ask));
        if self.waiting.get().is_some() {
            self.wanted.set(Some(ask));
        } else {
            self.waiting.set(Some(self.state.view.get_untracked()));
            let [width, height, head] = ask.room.map(JsValue::from);
            let seen = self.state.picture.with_untracked(|picture| picture.edition);
            let content = [
                width,
                height,
                head,
                JsValue::from_bool(ask.narrow),
                JsValue::from_bool(ask.rattle),
                JsValue::from_f64(ask.deck),
                JsValue::from_f64(ask.push),
                JsValue::from(seen),
            ];
            self.ask("live", content);
        }
    }

    /// The picture has come; where another is wanted by now, that is asked for.
    fn drawn(&self, answer: &Array) {
        let of_this_view = self.waiting.take() == Some(self.state.view.get_untracked());
        let wanted = self.wanted.take();
        if self.asked.get().is_none() {
            // The view that wanted it has been left.
            return;
        }
        if of_this_view {
            let read = self.state.picture.with_untracked(|last| Picture::read(answer, 2, last));
            if let Some(picture) = read {
                self.state.picture.set(picture);
            }
            if !self.state.leaf.with_untracked(|leaf| leaf.working) {
                self.failures.set(0);
            }
        }
        if let Some(ask) = wanted {
            self.want(ask);
        }
    }

    /// Sends a request: a word, its number, what belongs to it, and for whom.
    fn ask<const N: usize>(&self, word: &str, content: [JsValue; N]) {
        let Some(worker) = self.worker() else {
            self.tell("This browser does not let the page work in the background, which this view needs.");
            return;
        };
        // A file, a picture and an answer that does not rest belong to the page that is open and do not abandon its work.
        let abandons = match word {
            "file" | "live" | "read" => false,
            "answer" => content.last().is_some_and(JsValue::is_truthy),
            _ => true,
        };
        if abandons {
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
            "live" => self.drawn(answer),
            "found" => shelf::found(self.state, Found::read(answer)),
            "refused" => self.tell(&text(2)),
            _ if number != Some(f64::from(self.request.get())) => {}
            "page" => {
                let working = answer.get(4).as_bool().unwrap_or(false);
                self.state.leaf.set(Leaf {
                    view: Some(self.state.view.get_untracked()),
                    html: text(2),
                    progress: answer.get(3).as_f64().unwrap_or(1.0),
                    working,
                    awaited: false,
                });
                match self.asked.get() {
                    // More is known now than when it was drawn.
                    Some(ask) => self.want(ask),
                    // All of it is done: a failure after that is the first of a row.
                    None if !working => self.failures.set(0),
                    None => {}
                }
            }
            _ => {
                self.rest();
                self.tell(&text(2));
            }
        }
    }

    /// Begins again with another worker, but not for ever.
    fn fail(&self, reason: &str) {
        if let Some(worker) = self.worker.take() {
            worker.terminate();
        }
        self.waiting.set(None);
        self.wanted.set(None);
        // Another worker counts its editions anew.
        self.state.picture.update(|picture| picture.edition = 0);
        let failures = self.failures.get() + 1;
        self.failures.set(failures);
        if failures < MOST_FAILURES {
            self.open();
        } else {
            self.rest();
            self.tell(&format!(
                "The part of the program behind this view has failed ({reason}). Your design is safe; change it or load the page anew."
            ));
        }
    }

    fn tell(&self, sentence: &str) {
        self.state.notice.set(Some(Message::Sentence(sentence.to_owned())));
    }
}
