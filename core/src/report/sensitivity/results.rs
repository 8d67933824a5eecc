//! What is asked of a table in six figures, each the less, the better.
use crate::checks::Group;
use crate::design::Design;
use crate::mechanics::frame3::Frame3;
use crate::parts::{Part, Rides};
use crate::quantity::Money;
use crate::report::sway::{self, Case, frame, told};
use crate::report::{Report, SWAY_STATIONS, Station};
use crate::workshop::hardware::bill;

/// A figure of the whole table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Outcome {
    /// Greatest force on the crank's handle while raising, N.
    Crank,
    /// Greatest sag at the load, m.
    Sag,
    /// Greatest give sideways under [`crate::report::PUSH`], m; for a screw along the base or under the deck.
    Give,
    /// Ratio of the weakest check, the crank's own left out.
    Weakest,
    /// Weight of the empty table, kg.
    Weight,
    /// Cost, sheet by its area; known where every price is.
    Cost,
}

/// How many there are.
pub const OUTCOMES: usize = 6;

impl Outcome {
    /// All of them.
    pub const ALL: [Self; OUTCOMES] =
        [Self::Crank, Self::Sag, Self::Give, Self::Weakest, Self::Weight, Self::Cost];

    /// Its place among them.
    #[must_use]
    pub const fn at(self) -> usize {
        self as usize
    }
}

/// The figures of a table, in the order of [`Outcome::ALL`]; none where one is not known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Results(pub [Option<f64>; OUTCOMES]);

impl Results {
    /// One of them.
    #[must_use]
    pub const fn of(&self, outcome: Outcome) -> Option<f64> {
        self.0[outcome.at()]
    }

    /// All but the give sideways, which takes longer: see [`give`].
    pub(super) fn planar(report: &Report) -> Self {
        let stands = report.parts.iter().filter(|part| part.rides != Rides::Aside);
        let mut known = Self([None; OUTCOMES]);
        let mut set = |outcome: Outcome, value: f64| {
            known.0[outcome.at()] = Some(value).filter(|value| value.is_finite());
        };
        set(Outcome::Crank, report.greatest(Station::crank_raise).0);
        set(Outcome::Sag, report.greatest(|station| station.sag().total()).0);
        if let Some(check) = weakest(report) {
            set(Outcome::Weakest, check.ratio);
        }
        set(Outcome::Weight, stands.map(Part::total).sum());
        known.0[Outcome::Cost.at()] = cost(report);
        known
    }
}

/// The check with the least left, limits only; the crank's are told apart.
#[must_use]
pub fn weakest(report: &Report) -> Option<&crate::checks::Check> {
    report.weakest_of(|check| check.group != Group::Crank)
}

fn cost(report: &Report) -> Option<f64> {
    let shop = &report.design.shop;
    let bill = bill(&report.design, &report.parts, &[], &[]);
    if bill.unpriced > 0 || shop.sheet_price == Money::ZERO {
        return None;
    }
    let area: f64 = report.parts.iter().map(Part::sheet_area).sum();
    let sheet = shop.sheet_length.to_m() * shop.sheet_width.to_m();
    Some(bill.cost.value() + shop.sheet_price.value() * area / sheet)
}

/// The greatest give sideways over the heights of the sway, m, and the least critical load as a multiple of the load; none for drives
/// whose sideways figures are not known.
pub(super) fn give(report: &Report) -> Option<(f64, f64)> {
    let design: &Design = &report.design;
    if !sway::computed(design) {
        return None;
    }
    let mechanism = frame(design, report.mechanism(), Case::Middle);
    let (low, high) = (report.lowest(), report.highest());
    let mut worst = (0.0_f64, f64::INFINITY);
    for at in 0..SWAY_STATIONS {
        let height = low + (high - low) * at as f64 / (SWAY_STATIONS - 1) as f64;
        let pose = report.solver().pose_at_height(height).ok()?;
        let answers = Frame3::new(&mechanism, &pose).ok()?.answers();
        worst = (worst.0.max(told::gives(&answers)), worst.1.min(answers.lambda.unwrap_or(f64::INFINITY)));
    }
    Some(worst)
}
