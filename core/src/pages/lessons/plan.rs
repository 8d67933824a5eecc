//! What makes one lesson differ from another.
use super::studied::Studied;
use crate::design::Design;
use crate::pages::document::Block;
use crate::quantity::figures::{METRE_IN_INCHES, NEWTON_IN_LBF};
use crate::quantity::{Amount, System};
use crate::share::lesson::Lesson;

/// A figure over the deck's height, m: in SI units, not a number where there is none.
pub(super) type Curve = fn(&Studied, f64) -> f64;

/// A lesson.
pub(super) struct Plan {
    /// Which one it is.
    pub which: Lesson,
    /// What is there, before the question.
    pub scene: fn(&Studied, System) -> String,
    /// What the reader sketches.
    pub question: &'static str,
    /// The tables it needs; the first is drawn.
    pub designs: fn() -> Vec<Design>,
    /// Whether it needs the sideways figures.
    pub sideways: bool,
    /// What is drawn from the beginning, to go by, and its name.
    pub given: Option<(&'static str, Curve)>,
    /// What is sought, and its name.
    pub sought: (&'static str, Curve),
    /// The unit of both.
    pub unit: Unit,
    /// What explains it.
    pub why: fn(&Studied, System) -> Vec<Block>,
    /// The part that is shown cut free beside it; see [`crate::mechanics::Freed`].
    pub part: &'static str,
    /// The rule in signs.
    pub formula: &'static str,
    /// Where that comes from.
    pub source: &'static str,
    /// The question at the end.
    pub closing: Closing,
}

/// A question with three answers.
pub(super) struct Closing {
    /// The question.
    pub ask: &'static str,
    /// The answers.
    pub choices: [&'static str; 3],
    /// The right one, counted from zero.
    pub right: usize,
    /// Why it is.
    pub told: &'static str,
}

/// What a lesson's plot shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unit {
    /// A force along the screw or on a pivot, N.
    Thrust,
    /// A force of a hand, N.
    Hand,
    /// A small way, m.
    Give,
    /// A weight, kg.
    Mass,
}

impl Unit {
    /// A value with its unit.
    pub fn amount(self, value: f64, system: System) -> String {
        match self {
            Self::Thrust => Amount::Thrust(value),
            Self::Hand => Amount::Force(value),
            Self::Give => Amount::Give(value),
            Self::Mass => Amount::Mass(value),
        }
        .text(system)
    }

    /// By what the axis divides the value, and the sign of its unit.
    pub const fn axis(self, system: System) -> (f64, &'static str) {
        match (self, system) {
            (Self::Thrust, System::Metric) => (1e3, "kN"),
            (Self::Hand, System::Metric) => (1.0, "N"),
            (Self::Thrust | Self::Hand, System::Inch) => (1.0 / NEWTON_IN_LBF, "lbf"),
            (Self::Give, System::Metric) => (1e-3, "mm"),
            (Self::Give, System::Inch) => (1.0 / METRE_IN_INCHES, "in"),
            (Self::Mass, System::Metric) => (1.0, "kg"),
            (Self::Mass, System::Inch) => (0.453_592_37, "lb"),
        }
    }
}
