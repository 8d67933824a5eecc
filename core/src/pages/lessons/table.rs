//! The tables of the lessons: variations of the metric demo.
use super::studied::Studied;
use crate::design::{Design, paper_lift};
use crate::quantity::{Count, Length};
use crate::report::Report;

/// Two stages of short arms, with a paper stack.
pub(super) fn two_stages() -> Design {
    paper_lift()
}

/// One stage of the same arms.
pub(super) fn one_stage() -> Design {
    let mut design = paper_lift();
    design.lift.stages = Count::of(1);
    design.lift.lowest = Length::mm(330.0);
    design.lift.highest = Length::mm(690.0);
    design.load.length = Length::mm(400.0);
    design.load.centre = Length::mm(200.0);
    design
}

/// A figure of a table at a height, m; not a number where the table is missing.
pub(super) fn of(known: &Studied, table: usize, figure: impl Fn(&Report) -> f64) -> f64 {
    known.reports.get(table).map_or(f64::NAN, figure)
}

/// The force along the screw without friction, N.
pub(super) fn still(known: &Studied, table: usize, height: f64) -> f64 {
    of(known, table, |report| report.at(height).still())
}

/// The sag at the load, m.
pub(super) fn sag(known: &Studied, table: usize, height: f64) -> f64 {
    of(known, table, |report| report.at(height).sag().total())
}

/// How far the deck gives sideways under the usual push, m.
pub(super) fn give(known: &Studied, table: usize, height: f64) -> f64 {
    known.sways.get(table).and_then(|sway| sway.give(crate::report::Case::Middle, height)).unwrap_or(f64::NAN)
}

/// The weight of the load on the table that is drawn, N.
pub(super) fn load(known: &Studied) -> f64 {
    of(known, 0, |report| report.mechanism().load.weight)
}
