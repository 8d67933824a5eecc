//! What a table is compared by, and the bounds that are known before all is computed.
use super::space::Choice;
use super::targets::{MEASURES, Measure, Targets};
use crate::design::Design;
use crate::mechanics::GRAVITY;
use crate::quantity::Length;

/// The figures of a table, or bounds below them, in the order of [`Measure::ALL`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figures(pub [f64; MEASURES]);

/// A bound is taken this much lower, as a share: sums in another order differ in their last digits.
const ROUNDING: f64 = 1e-9;

impl Figures {
    /// Nothing known: all bounds at zero.
    pub(super) const NONE: Self = Self([0.0; MEASURES]);

    /// One of them.
    #[must_use]
    pub const fn of(&self, measure: Measure) -> f64 {
        self.0[measure.at()]
    }

    /// Raises a bound.
    pub(super) const fn raise(&mut self, measure: Measure, value: f64) {
        let known = &mut self.0[measure.at()];
        *known = known.max(value * (1.0 - ROUNDING));
    }

    /// The figures that are over their limits.
    pub fn over(&self, targets: &Targets) -> impl Iterator<Item = Measure> {
        Measure::ALL
            .into_iter()
            .filter(|measure| targets.limit(*measure).is_some_and(|limit| self.of(*measure) > limit))
    }

    /// By how much limits are passed, as shares of their values, added up.
    pub(super) fn excess(&self, targets: &Targets) -> f64 {
        self.over(targets).map(|measure| self.of(measure) / targets.of(measure).value.max(1e-9) - 1.0).sum()
    }

    /// In steps that one would notice: what is compared.
    #[must_use]
    pub fn steps(&self) -> [i64; MEASURES] {
        Measure::ALL.map(|measure| {
            #[allow(
                clippy::cast_possible_truncation,
                reason = "the cast saturates, and figures are far below"
            )]
            let step = (self.of(measure) / measure.noticed()).round() as i64;
            step
        })
    }

    /// All figures weighed against their targets, in one number: the less, the better all round.
    #[must_use]
    pub fn weighed(&self, targets: &Targets) -> f64 {
        Measure::ALL.iter().map(|measure| targets.weighed(*measure, self.of(*measure))).sum()
    }

    /// By how much wishes are missed, as shares of their values, added up.
    #[must_use]
    pub fn missed(&self, targets: &Targets) -> f64 {
        Measure::ALL
            .iter()
            .filter(|measure| targets.of(**measure).stance == super::Stance::Wish)
            .map(|measure| {
                let value = targets.of(*measure).value.max(1e-9);
                (self.of(*measure) / value - 1.0).max(0.0)
            })
            .sum()
    }
}

/// Bounds from closed forms, before anything is drawn or weighed: turns as they will be, and the crank under the load alone on arms without
/// weight and pivots without friction, F = n W cot(theta), at the lowest deck. For a level deck, centre pins in the middle, a screw along a
/// rail.
pub(super) fn closed(choice: &Choice, design: &Design, targets: &Targets) -> Figures {
    let mut bounds = Figures::NONE;
    for (measure, missed) in short(design, targets) {
        bounds.raise(measure, missed);
    }
    let length = design.lift.arm_length.to_m();
    let stacked = design.lift.pin_line + design.lift.deck_stack;
    let stage = |deck: Length| (deck - stacked).to_m() / choice.stages as f64;
    let across = |rise: f64| (length * length - rise * rise).max(0.0).sqrt();
    let (low, high) = (stage(design.lift.lowest), stage(design.lift.highest));
    bounds.raise(Measure::Turns, (across(low) - across(high)) / design.drive.lead.to_m());
    let weight = design.load.mass.to_kg() * GRAVITY;
    let thrust = choice.stages as f64 * weight * across(low) / low;
    let torque = crate::mechanics::screw_of(design).torque_against(thrust);
    bounds.raise(Measure::Crank, torque / design.drive.crank.to_m());
    bounds
}

/// By how much a design misses the heights that were asked for, and the deck, m; what is free asks for nothing.
pub(super) fn short(design: &Design, targets: &Targets) -> [(Measure, f64); 2] {
    let miss = |target: super::Target<Length>, by: f64| {
        if target.stance == super::Stance::Free { 0.0 } else { by.max(0.0) }
    };
    let heights = miss(targets.lowest, (design.lift.lowest - targets.lowest.value).to_m())
        + miss(targets.highest, (targets.highest.value - design.lift.highest).to_m());
    let deck = miss(targets.deck_width, (design.frames.deck_width - targets.deck_width.value).to_m().abs())
        + miss(targets.deck_length, (design.frames.deck_length - targets.deck_length.value).to_m());
    [(Measure::Height, heights), (Measure::Deck, deck)]
}
