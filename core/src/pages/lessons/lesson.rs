//! A lesson as it goes: the reader guesses, sees, and reads why.
use super::picture::{Kept, Seen};
use super::plan::Plan;
use super::plot::HANDLES;
use super::studied::Study;
use super::told;
use crate::drawing::View;
use crate::pages::{Document, Live, Page, Reader};

/// Where the reader is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Beat {
    Guess,
    See,
    Why,
}

impl Beat {
    pub const ALL: [Self; 3] = [Self::Guess, Self::See, Self::Why];

    pub const fn word(self) -> &'static str {
        match self {
            Self::Guess => "guess",
            Self::See => "see",
            Self::Why => "why",
        }
    }

    pub const fn title(self) -> &'static str {
        match self {
            Self::Guess => "1  Guess",
            Self::See => "2  See",
            Self::Why => "3  Say why",
        }
    }
}

/// What the reader has answered.
pub(super) struct Answers {
    pub beat: Beat,
    /// The guess at the heights of the handles, as shares of the value axis.
    pub guess: [f64; HANDLES],
    /// Whether that is a guess of the reader's, and not the line that stands there before.
    pub guessed: bool,
    /// The choice at the end.
    pub choice: Option<usize>,
}

/// The guess before there is one, a share of the value axis.
const BEFORE: f64 = 0.1;

/// The page of a lesson.
pub(super) struct Taught {
    plan: &'static Plan,
    study: Study,
    answers: Answers,
    /// The lowest and the highest deck that was looked at since the guess was made, m.
    visited: Option<[f64; 2]>,
    kept: Kept,
}

impl Taught {
    pub const fn new(plan: &'static Plan) -> Self {
        let answers = Answers { beat: Beat::Guess, guess: [BEFORE; HANDLES], guessed: false, choice: None };
        Self { plan, study: Study::new(plan), answers, visited: None, kept: Kept::NONE }
    }
}

impl Page for Taught {
    fn advance(&mut self) -> bool {
        self.study.advance()
    }

    fn progress(&self) -> f64 {
        if self.study.done { 1.0 } else { 0.0 }
    }

    fn answer(&mut self, key: &str, text: &str, _: &Reader) {
        match key {
            "beat" => {
                if let Some(beat) = Beat::ALL.into_iter().find(|beat| beat.word() == text)
                    && beat != self.answers.beat
                {
                    self.answers.beat = beat;
                    self.visited = None;
                }
            }
            "ask" => self.answers.choice = text.parse().ok().filter(|choice| *choice < 3),
            _ => {
                let handle = key.strip_prefix('g').and_then(|digits| digits.parse::<usize>().ok());
                let value = text.parse::<f64>().ok().filter(|value| value.is_finite());
                if let (Some(handle), Some(value)) = (handle, value)
                    && let Some(guess) = self.answers.guess.get_mut(handle)
                {
                    *guess = value.clamp(0.0, 1.0);
                    self.answers.guessed = true;
                }
            }
        }
    }

    fn document(&self, reader: &Reader) -> Document {
        told::document(self.plan, &self.study, &self.answers, reader.system)
    }

    fn live(&mut self, view: &View, deck: f64, _: f64) -> Option<Live> {
        if !self.study.done {
            return None;
        }
        let [low, high] = self.study.known.lift();
        let deck = if deck.is_nan() { low } else { deck.clamp(low, high) };
        if self.answers.beat == Beat::See {
            let [least, most] = self.visited.unwrap_or([deck; 2]);
            self.visited = Some([least.min(deck), most.max(deck)]);
        }
        let shown = match self.answers.beat {
            Beat::Guess => None,
            Beat::See => self.visited,
            Beat::Why => Some([low, high]),
        };
        let seen = Seen { plan: self.plan, known: &self.study.known, answers: &self.answers, shown };
        self.kept.picture(&seen, view, deck)
    }
}
