//! How the deck gives way sideways, twists and rattles over the lift, and under what load the table would collapse.
//!
//! The slow report: a frame in space for every height and every guess of its stiffnesses. It is made in steps by a
//! [`SwayRun`], which has no clock and no thread of its own.

mod findings;
mod lean;
mod run;
mod single;
pub mod told;

pub use findings::merged;
pub use lean::{Lean, LeanNode};
pub use run::{Progress, SwayRun};
pub(super) use run::{computed, frame, slack};
pub use single::{SpringEffect, SpringRun};

use crate::mechanics::Rattle;
use crate::mechanics::frame3::{Stiffness3, WheelLift};
use serde::{Deserialize, Serialize};

/// Heights of the slow sweep from the lowest to the highest deck, even in height, ends included.
pub const SWAY_STATIONS: usize = 24;

/// The sideways push by which the give of the deck is told, N: a hand that leans on it lightly.
pub const PUSH: f64 = 50.0;

/// The couple about the vertical by which its twist is told, N m.
pub const COUPLE: f64 = 10.0;

/// The force on a corner of the deck by which its drop is told, N: somebody leans on it.
pub const CORNER: f64 = 100.0;

/// The critical load as a multiple of the load that is wanted at every height. The linear theory reads 2 to 13 per cent
/// high below a multiple of 10, and nothing in a shop-built table is as straight as it has it.
pub const LEAST_MULTIPLE: f64 = 4.0;

/// Which guess of the stiffnesses, and whether the side guides hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Case {
    /// The best guess, guides touching.
    Middle,
    /// The softest to be expected, guides touching.
    Soft,
    /// The stiffest to be expected, guides touching.
    Stiff,
    /// The best guess with the wheels inside the play of their guides.
    Unguided,
}

impl Case {
    /// All of them, in the order in which they are computed.
    pub const ALL: [Self; 4] = [Self::Middle, Self::Soft, Self::Stiff, Self::Unguided];
}

/// The table at its worst height, and what the height of the load's weight does there.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize)]
pub struct Worst {
    /// Deck height, m.
    pub height: f64,
    /// The critical load as a multiple of the load, middle stiffnesses.
    pub multiple: f64,
    /// The same if the load's weight sat at the deck's surface.
    pub with_low_weight: Option<f64>,
}

/// Everything the slow run finds. What it has not reached yet is empty.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize)]
pub struct SwayReport {
    /// Deck heights, m, from the lowest to the highest.
    pub heights: Vec<f64>,
    /// Stiffnesses at these heights, best guess.
    pub middle: Vec<Stiffness3>,
    /// The softest to be expected.
    pub soft: Vec<Stiffness3>,
    /// The stiffest to be expected.
    pub stiff: Vec<Stiffness3>,
    /// The best guess with nothing to hold the wheels sideways; empty where the table has no side guides.
    pub unguided: Vec<Stiffness3>,
    /// Free play of the deck.
    pub rattle: Vec<Rattle>,
    /// The push at the deck's surface that lifts a wheel.
    pub wheel_lift: Vec<Option<WheelLift>>,
    /// The shape under a push of one newton.
    pub lean: Vec<Lean>,
    /// The worst height, once the best guess is known at all heights; none where no load is critical.
    pub worst: Option<Worst>,
}

impl SwayReport {
    /// The stiffnesses of a case; empty where they are not known.
    #[must_use]
    pub fn case(&self, case: Case) -> &[Stiffness3] {
        match case {
            Case::Middle => &self.middle,
            Case::Soft => &self.soft,
            Case::Stiff => &self.stiff,
            Case::Unguided => &self.unguided,
        }
    }

    /// How far the deck gives sideways at a height, m, under [`PUSH`], in m; none where the case is not known.
    #[must_use]
    pub fn give(&self, case: Case, height: f64) -> Option<f64> {
        self.read(self.case(case), height, |stiffness| Some(told::gives(stiffness)))
    }

    /// The same with the load on the deck, whose weight leans with it; none where less than twice the load is critical.
    #[must_use]
    pub fn loaded_give(&self, case: Case, height: f64) -> Option<f64> {
        self.read(self.case(case), height, told::gives_loaded)
    }

    /// How far the deck twists at a height, m, under [`COUPLE`], in rad; none where the case is not known.
    #[must_use]
    pub fn twist(&self, case: Case, height: f64) -> Option<f64> {
        self.read(self.case(case), height, |stiffness| Some(told::twists(stiffness)))
    }

    /// The critical load as a multiple of the load at a height, m; none where the case is not known or nothing is critical.
    #[must_use]
    pub fn multiple(&self, case: Case, height: f64) -> Option<f64> {
        self.read(self.case(case), height, |stiffness| stiffness.lambda)
    }

    /// How far the deck rattles to either side at a height, m.
    #[must_use]
    pub fn rattle(&self, height: f64) -> Option<Rattle> {
        let least = self.read(&self.rattle, height, |rattle| Some(rattle.least))?;
        let most = self.read(&self.rattle, height, |rattle| Some(rattle.most))?;
        Some(Rattle { least, most })
    }

    /// The shape at a height, m, under one newton sideways at the deck's reference point.
    #[must_use]
    pub fn lean(&self, height: f64) -> Option<Lean> {
        let (at, part) = self.between(height)?;
        let first = self.lean.get(at)?;
        Some(self.lean.get(at + 1).map_or_else(|| first.clone(), |second| first.towards(second, part)))
    }

    /// The lowest multiple over the lift and the height of it, m; none where the case is not known or nothing is critical.
    #[must_use]
    pub fn least_multiple(&self, case: Case) -> Option<(f64, f64)> {
        let known = self.case(case).iter().zip(&self.heights);
        known
            .filter_map(|(stiffness, height)| Some((stiffness.lambda?, *height)))
            .min_by(|one, other| one.0.total_cmp(&other.0))
    }

    /// The greatest give under [`PUSH`] over the lift, m, and the height of it, m.
    #[must_use]
    pub fn greatest_give(&self, case: Case) -> Option<(f64, f64)> {
        let known = self.case(case).iter().zip(&self.heights);
        known
            .map(|(stiffness, height)| (told::gives(stiffness), *height))
            .max_by(|one, other| one.0.total_cmp(&other.0))
    }

    /// The station at or below a height, m, and how far the height lies on the way to the next: 0 to 1.
    fn between(&self, height: f64) -> Option<(usize, f64)> {
        let last = self.heights.len().checked_sub(1)?;
        let at = self.heights.partition_point(|station| *station <= height).saturating_sub(1).min(last);
        let (from, to) = (self.heights[at], self.heights[(at + 1).min(last)]);
        let part = if to > from { ((height - from) / (to - from)).clamp(0.0, 1.0) } else { 0.0 };
        Some((at, if part.is_nan() { 0.0 } else { part }))
    }

    /// A figure along the straight line between two stations; none where either has none.
    fn read<T>(&self, list: &[T], height: f64, figure: impl Fn(&T) -> Option<f64>) -> Option<f64> {
        let (at, part) = self.between(height)?;
        let first = figure(list.get(at)?)?;
        if part <= 0.0 {
            return Some(first);
        }
        let second = figure(list.get(at + 1)?)?;
        Some(first + part * (second - first))
    }
}
