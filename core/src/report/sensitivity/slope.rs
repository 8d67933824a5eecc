//! How strongly the figures of a table hang on one input: by central differences of the whole analysis.
use super::results::{OUTCOMES, Outcome, Results, give};
use crate::design::{Design, Field};
use crate::quantity::Kind;
use crate::report::computed;

/// An input is moved by this part of its value to either side.
const PART: i64 = 500;

/// Lengths are moved by multiples of this many steps: parts that are halved or quartered then move exactly.
const EVEN: i64 = 4;

/// Slopes to both sides that differ by more than this, as a share of the greater, belong to a kink.
const KINK: f64 = 0.05;

/// A figure that moves by less than this part of an input's is not moved by it.
pub const NOTHING: f64 = 1e-6;

/// The logarithmic sensitivity of a figure to an input, d ln(figure) / d ln(input): 1 where both grow alike, -2 where the figure falls with
/// the square.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slope {
    /// The sensitivity.
    pub value: f64,
    /// Whether it is not the same to both sides: another check becomes the weakest, a screw more is needed, or the input can be moved one
    /// way only.
    pub kinked: bool,
}

/// What one input does.
#[derive(Clone, Debug)]
pub struct Effect {
    /// The input.
    pub field: &'static Field,
    /// In the order of [`Outcome::ALL`]; none where the figure is not known.
    pub slopes: [Option<Slope>; OUTCOMES],
}

impl Effect {
    /// The sensitivity of a figure.
    #[must_use]
    pub const fn of(&self, outcome: Outcome) -> Option<Slope> {
        self.slopes[outcome.at()]
    }
}

/// Inputs with a scale of their own: what is counted or chosen, places that can lie on either side of zero at zero, prices and what is only
/// shown have none.
pub(super) fn has_scale(field: &Field, design: &Design) -> bool {
    let counted = matches!(field.kind, Kind::Choice | Kind::Switch | Kind::Count);
    field.choices.is_empty() && !counted && field.shown(design) && field.get(design) != 0
}

/// An input moved by so many steps, with the figures; none where the table cannot stand so.
fn moved(design: &Design, field: &Field, steps: i64) -> Option<Results> {
    let mut changed = design.clone();
    field.set(&mut changed, field.get(design) + steps);
    results(&changed)
}

/// All figures of a design; none where it cannot stand.
pub(super) fn results(design: &Design) -> Option<Results> {
    let report = computed(design).ok()?;
    let mut known = Results::planar(&report);
    known.0[Outcome::Give.at()] = give(&report).map(|(give, _)| give);
    Some(known)
}

/// How far an input is moved to either side, in steps.
fn stride(field: &Field, value: i64) -> i64 {
    let wanted = (value.abs() / PART).max(1);
    if field.kind == Kind::Length { wanted.div_euclid(EVEN).max(1) * EVEN } else { wanted }
}

/// The effect of an input on a design with known figures.
pub(super) fn effect(design: &Design, field: &'static Field, own: &Results) -> Effect {
    let value = field.get(design);
    let step = stride(field, value);
    let sides = [-step, step].map(|by| moved(design, field, by));
    let log_of = |by: i64| libm::log((value + by).unsigned_abs() as f64);
    let slopes = Outcome::ALL.map(|outcome| {
        let at = outcome.at();
        let [low, high] = [0, 1].map(|side| sides[side].as_ref().and_then(|results| results.0[at]));
        let own = own.0[at]?;
        let slope = |from: f64, to: f64, by: [i64; 2]| {
            let rise = libm::log(to / from) / (log_of(by[1]) - log_of(by[0]));
            Some(if rise.abs() < NOTHING { 0.0 } else { rise }).filter(|rise| rise.is_finite())
        };
        match (low, high) {
            (Some(low), Some(high)) => {
                let value = slope(low, high, [-step, step])?;
                let halves = [slope(low, own, [-step, 0])?, slope(own, high, [0, step])?];
                let apart = (halves[0] - halves[1]).abs();
                let kinked = apart > KINK * halves[0].abs().max(halves[1].abs()) + KINK * KINK;
                Some(Slope { value, kinked })
            }
            (Some(low), None) => slope(low, own, [-step, 0]).map(|value| Slope { value, kinked: true }),
            (None, Some(high)) => slope(own, high, [0, step]).map(|value| Slope { value, kinked: true }),
            (None, None) => None,
        }
    });
    Effect { field, slopes }
}
