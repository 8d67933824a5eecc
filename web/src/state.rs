//! What the page knows: the design with its history, what follows from it, and how the reader looks at it.
//!
//! The design is the only truth that is written; report and station are memos over it. Deck height, units and toggles are view
//! state and never enter the report.
use std::sync::Arc;

use leptos::prelude::*;
use risewright::design::Design;
use risewright::drawing::{Chart, Show};
use risewright::quantity::{System, lower};
use risewright::report::{Refusal, Report, Station, Unsound, analyse};
use risewright::share::Manner;
use risewright::share::address::View;

use crate::begin::Begun;
use crate::clock::Resting;
use crate::edit::{Book, Edit, Turned};
use crate::format;
use crate::input::crank::Direction;
use crate::input::keyboard::Command;
use crate::persist::{Keeper, Shelved};
use crate::worker::{Leaf, Picture};

/// A value shared between memos; equal only to itself, so that a new one always counts as a change.
#[derive(Debug)]
pub struct Shared<T>(Arc<T>);

impl<T> Shared<T> {
    /// A new value, unlike any other.
    pub fn new(value: T) -> Self {
        Self(Arc::new(value))
    }
}

impl<T> Clone for Shared<T> {
    fn clone(&self) -> Self {
        Self(Arc::clone(&self.0))
    }
}

impl<T> PartialEq for Shared<T> {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

impl<T> core::ops::Deref for Shared<T> {
    type Target = T;
    fn deref(&self) -> &T {
        &self.0
    }
}

/// What is told above the sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Message {
    /// A sentence.
    Sentence(String),
    /// A link to copy by hand.
    Link(String),
    /// A design that was taken off the shelf, and can be put there again.
    Removed(Shelved),
    /// A sentence, and designs of other tabs that can be opened.
    Designs(String, Vec<Design>),
}

/// The page's state: signals that live as long as the page.
#[derive(Clone, Copy)]
pub struct State {
    book: RwSignal<Book>,
    /// The design at present.
    pub design: Memo<Design>,
    /// Everything computed from it.
    pub report: Memo<Shared<Report>>,
    height: RwSignal<f64>,
    /// The height at which the deck last stood still for a moment, m.
    settled: Resting,
    /// The table at the deck's present height.
    pub station: Memo<Shared<Station>>,
    /// Turns of the crank from the lowest deck to the present height.
    pub turns: Memo<f64>,
    /// The units the reader is used to.
    pub units: RwSignal<System>,
    /// What the drawing shows.
    pub shown: RwSignal<Show>,
    /// The plots beside it, from left to right.
    pub charts: RwSignal<Vec<Chart>>,
    /// Which way the crank is being turned, if it is.
    pub turning: RwSignal<Option<Direction>>,
    /// The view that is open.
    pub view: RwSignal<View>,
    /// How the page is shown: with or without inputs, within another page. The height in it is not kept.
    pub manner: RwSignal<Manner>,
    /// The shelf with the designs that are kept.
    pub keeper: Keeper,
    /// What else a file brought with the design, to be written into its file again.
    pub extra: RwSignal<String>,
    /// The design that is compared with the present one, with everything computed from it.
    pub other: RwSignal<Option<Shared<Report>>>,
    /// What is ticked off of the build: the keys of its tests, a space after each.
    pub ticks: RwSignal<String>,
    /// Whether type and lines are larger than usual, for a projector.
    pub enlarged: RwSignal<bool>,
    /// What is known of the page that is read in it.
    pub leaf: RwSignal<Leaf>,
    /// The end elevation as the worker drew it last.
    pub picture: RwSignal<Picture>,
    /// The check whose part is marked in the drawing.
    pub marked: RwSignal<Option<&'static str>>,
    /// A sentence to read before all else: a link that cannot be opened, a copy that failed.
    pub notice: RwSignal<Option<Message>>,
    /// What a screen reader says when the deck has come to rest.
    pub spoken: RwSignal<String>,
    /// Which turn of the page's making it is; see `making.rs`.
    pub turn: RwSignal<u32>,
}

impl State {
    /// Begins with a design and everything computed from it, and with something to read.
    pub fn new(begun: Begun) -> Self {
        let first = Shared::new(begun.report);
        let middle = 0.5 * (first.lowest() + first.highest());
        let book = RwSignal::new(Book::new(first.design.clone()));
        let design = Memo::new(move |_| book.with(|book| book.design().clone()));
        let report = Memo::new(move |last: Option<&Shared<Report>>| {
            let last = last.unwrap_or(&first);
            design.with(|design| {
                if *design == last.design {
                    return last.clone();
                }
                // Every design in the book stands, so that this cannot fail; if it did, the last good one stays.
                analyse(design).map_or_else(|_| last.clone(), Shared::new)
            })
        });
        let height = RwSignal::new(middle);
        let station = Memo::new(move |_| report.with(|report| Shared::new(report.at(height.get()))));
        let turns =
            Memo::new(move |_| report.with(|report| report.turns_at(station.with(|station| station.height))));
        Self {
            book,
            design,
            report,
            height,
            settled: Resting::new(middle),
            station,
            turns,
            units: RwSignal::new(System::default()),
            shown: RwSignal::new(Show::default()),
            charts: RwSignal::new(vec![Chart::ScrewForce, Chart::Sag]),
            turning: RwSignal::new(None),
            view: RwSignal::new(View::default()),
            manner: RwSignal::new(Manner::default()),
            keeper: Keeper::new(),
            extra: RwSignal::new(String::new()),
            other: RwSignal::new(None),
            ticks: RwSignal::new(String::new()),
            enlarged: RwSignal::new(false),
            leaf: RwSignal::new(Leaf::default()),
            picture: RwSignal::new(Picture::default()),
            marked: RwSignal::new(None),
            notice: RwSignal::new(begun.notice.map(Message::Sentence)),
            spoken: RwSignal::new(String::new()),
            turn: RwSignal::new(0),
        }
    }

    /// Applies an edit; a refused one changes nothing.
    ///
    /// # Errors
    /// The reason, with ways out.
    pub fn apply(&self, edit: Edit) -> Result<(), Refusal> {
        let mut outcome = Ok(false);
        let title = edit.title();
        let counts = !matches!(edit, Edit::Name(_));
        self.book.maybe_update(|book| {
            outcome = book.apply(edit);
            matches!(outcome, Ok(true))
        });
        if counts && matches!(outcome, Ok(true)) {
            self.say_outcome(&format!("Changed: {}", lower(title)));
        }
        outcome.map(|_changed| ())
    }

    /// Opens another design, if it can stand.
    ///
    /// # Errors
    /// What is wrong with it; the present design stays.
    pub fn open(&self, title: &'static str, design: Design) -> Result<(), String> {
        analyse(&design).map_err(|unsound| cannot_stand(&unsound))?;
        self.apply(Edit::Whole(title, Box::new(design)))
            .map_err(|refusal| refusal.phrase.text(self.units.get_untracked()))
    }

    /// Sets a design aside to be compared with the present one, or none any more.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn set_aside(&self, design: Option<&Design>) -> Result<(), String> {
        let report = design.map(analyse).transpose().map_err(|unsound| cannot_stand(&unsound))?;
        self.other.set(report.map(Shared::new));
        Ok(())
    }

    /// Goes to a view as a link asks for it.
    pub fn look(&self, view: View, manner: Manner) {
        if let Some(height) = manner.at {
            self.move_to(self.report.with_untracked(|report| report.at(height.to_m()).height));
        }
        self.manner.set(Manner { at: None, ..manner });
        self.view.set(view);
    }

    /// From here to [`Self::end_gesture`] all edits are one step of the history.
    pub fn begin_gesture(&self) {
        self.book.update(Book::begin);
    }

    /// Ends the gesture.
    pub fn end_gesture(&self) {
        self.book.update(Book::end);
    }

    /// What undo would take back.
    pub fn undoes(&self) -> Option<String> {
        self.book.with(|book| book.undoes().map(str::to_owned))
    }

    /// What redo would do again.
    pub fn redoes(&self) -> Option<String> {
        self.book.with(|book| book.redoes().map(str::to_owned))
    }

    /// Looks into the design's history.
    pub fn with_book(&self, look: impl FnOnce(&Book)) {
        self.book.with_untracked(look);
    }

    /// Takes up a history that was kept; see [`Book::recall`].
    pub fn recall(&self, past: Vec<Turned>, future: Vec<Turned>) {
        self.book.update(|book| book.recall(past, future));
    }

    /// Says something above the sheet, after what stands there already.
    pub fn tell(&self, sentence: &str) {
        self.notice.update(|notice| match notice {
            Some(Message::Sentence(words) | Message::Designs(words, _)) => {
                words.push(' ');
                words.push_str(sentence);
            }
            _ => *notice = Some(Message::Sentence(sentence.to_owned())),
        });
    }

    /// Offers designs above the sheet, after what stands there already.
    pub fn offer(&self, sentence: &str, designs: Vec<Design>) {
        self.tell(sentence);
        self.notice.update(|notice| {
            if let Some(Message::Sentence(words)) = notice {
                *notice = Some(Message::Designs(core::mem::take(words), designs));
            }
        });
    }

    /// Does what a key or button asks for.
    pub fn command(&self, command: Command) {
        match command {
            Command::Undo => self.step("Undone", Self::undoes, Book::undo),
            Command::Redo => self.step("Redone", Self::redoes, Book::redo),
            Command::Enlarge => self.enlarged.update(|enlarged| *enlarged = !*enlarged),
            Command::Stop => {
                if self.turning.get_untracked().is_some() {
                    self.turning.set(None);
                    self.say_rest();
                }
                self.marked.set(None);
            }
        }
    }

    /// Takes a step back or forth in the history, and says which.
    fn step(&self, word: &str, what: fn(&Self) -> Option<String>, walk: fn(&mut Book)) {
        if let Some(title) = untrack(|| what(self)) {
            self.book.update(walk);
            self.say_outcome(&format!("{word}: {}", lower(&title)));
        }
    }

    /// The deck's present height, m.
    pub fn height(&self) -> f64 {
        self.station.with(|station| station.height)
    }

    /// The height at which the deck last stood still for a moment, m: for what nobody sees while it moves.
    pub fn rest_height(&self) -> f64 {
        self.report.with(|report| self.settled.get().max(report.lowest()).min(report.highest()))
    }

    /// Moves the deck to a height, m, within the lift; the crank is no longer turned.
    pub fn move_to(&self, height: f64) {
        if self.turning.get_untracked().is_some() {
            self.turning.set(None);
        }
        self.crank_to(height);
    }

    /// Moves the deck to a height, m, and says what it is like there.
    pub fn go_to(&self, height: f64) {
        self.move_to(height);
        self.say_rest();
    }

    /// Turns of the crank from the lowest deck to the height at which the deck last stood still.
    pub fn rest_turns(&self) -> f64 {
        self.report.with(|report| report.turns_at(self.rest_height()))
    }

    /// Where the deck last stood still, in words.
    pub fn deck_words(&self) -> String {
        self.report.with(|report| {
            format::deck_words(self.rest_height(), self.rest_turns(), report, self.units.get())
        })
    }

    /// Lets a screen reader say where the deck came to rest and what the crank feels there.
    pub fn say_rest(&self) {
        self.settled.settle();
        let units = self.units.get_untracked();
        self.say(self.report.with_untracked(|report| {
            self.station.with_untracked(|station| format::rest_words(station, report, units))
        }));
    }

    /// Lets a screen reader say what has become of the design.
    fn say_outcome(&self, change: &str) {
        let units = self.units.get_untracked();
        let outcome = self.report.with_untracked(|report| format::outcome_words(report, units));
        self.say(format!("{change}. {outcome}"));
    }

    /// Lets a screen reader say something, but not the same twice.
    pub fn say(&self, words: String) {
        if self.spoken.with_untracked(|spoken| *spoken != words) {
            self.spoken.set(words);
        }
    }

    /// Ticks something off, or takes its tick away.
    pub fn tick(&self, key: &str) {
        let ticked = format!("{key} ");
        let ticks = self.ticks.get_untracked();
        self.ticks.set(if ticks.contains(&ticked) { ticks.replace(&ticked, "") } else { ticks + &ticked });
    }

    /// Moves the deck while the crank is turned.
    pub fn crank_to(&self, height: f64) {
        if height.is_finite() {
            self.height.set(height);
            self.settled.put(height);
        }
    }
}

/// Why a design cannot be opened.
pub fn cannot_stand(unsound: &Unsound) -> String {
    let reasons: Vec<String> =
        unsound.phrases().iter().map(|phrase| phrase.text(System::default())).collect();
    format!("This design cannot be built. {} The design below is still yours.", reasons.join(" "))
}
