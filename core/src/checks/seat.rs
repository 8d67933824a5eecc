//! What the screw's thrust presses on: wood and thrust bearing.
//!
//! Plain `f64` in SI.
use core::f64::consts::PI;

use super::check::{Check, Group, Lever, Member, Rule, Use, Weight};
use super::table::{Table, add};
use crate::catalogue::{Source, Standing};
use crate::design::WoodSort;
use crate::parts::screw_bars;
use crate::quantity::{Amount, Phrase};

/// A washer spreads its force into the wood beside it: three times the strength may be reckoned under it (EN 1995-1-1, 8.5.2 (2)).
pub const UNDER_WASHER: f64 = 3.0;

/// The hole for a bolt is wider than the bolt by this much, m (same clause's usual practice).
const HOLE_CLEARANCE: f64 = 1e-3;

/// Static rating of a rolling bearing over the force on it: 2 for seats that are not machined (common practice, no source).
const STATIC_SAFETY: f64 = 2.0;

const WASHER: Source = Source::new(
    "EN 1995-1-1, 8.5.2 (2): three times the bearing strength under a washer",
    Standing::SecondHand,
);
const TUBE: Source = Source::new("Average pressure of the tube's ends on their seats", Standing::Practice);
const BEARING: Source =
    Source::new("ISO 76: static rating over equivalent static load", Standing::SecondHand);

/// Pressure under a washer of two diameters, Pa.
#[must_use]
pub fn under_washer(force: f64, outer: f64, inner: f64) -> f64 {
    force.abs() / (PI / 4.0 * (outer * outer - inner * inner))
}

/// Static safety of a rolling bearing: rating over force.
#[must_use]
pub fn static_safety(rating: f64, force: f64) -> f64 {
    rating / force
}

pub(super) fn checks(table: &Table<'_>, list: &mut Vec<Check>) {
    add(list, [tube(table), washer(table), bearing(table)]);
}

/// The seat in words, by the sort of wood.
fn seat(table: &Table<'_>) -> &'static str {
    match table.design.strength.sort {
        WoodSort::Plywood => "plywood",
        WoodSort::Softwood => "softwood across the grain",
        WoodSort::Hardwood => "hardwood across the grain",
    }
}

fn pressed(table: &Table<'_>, demand: f64, area: f64) -> Phrase {
    Phrase::new("p = ")
        .with(Amount::Thrust(demand * area))
        .and(" / ")
        .with(Amount::Section(area))
        .and(" = ")
        .with(Amount::Stress(demand))
        .and(format!(" on {}", seat(table)))
}

/// The ends of the bearing tube on the edges of the cheeks or rails that hold it.
fn tube(table: &Table<'_>) -> Option<Check> {
    if !screw_bars(table.design).iter().any(|bar| bar.on_frame) {
        return None;
    }
    let area = 2.0 * table.design.drive.anchor_bar.to_m() * table.frame_thickness();
    let strength = table.crushing();
    let rule = Rule {
        id: "seat-tube",
        group: Group::Seats,
        title: "Bearing tube's ends on wood",
        weight: Weight::Limit,
        formula: "p = F / 2 b t,  edge of plywood as its face",
        source: TUBE,
        unit: Amount::Stress,
        levers: &[Lever::BearingTube, Lever::FrameLayer],
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(Member::BearingTube, at.drive() / area, strength)),
        |_, most| pressed(table, most.demand, area),
    )
}

/// A washer or collar straight on wood.
fn washer(table: &Table<'_>) -> Option<Check> {
    let (outer, inner) =
        (table.design.strength.washer.to_m(), table.design.drive.major.to_m() + HOLE_CLEARANCE);
    if outer <= 0.0 {
        return None;
    }
    // A washer that falls through its hole presses on nothing.
    let strength = if outer > inner { UNDER_WASHER * table.crushing() } else { 0.0 };
    let stress = |force: f64| if outer > inner { under_washer(force, outer, inner) } else { force };
    let rule = Rule {
        id: "seat-washer",
        group: Group::Seats,
        title: "Washer or collar on wood",
        weight: Weight::Limit,
        formula: "p = F / (π (D² − (d + 1 mm)²) / 4) ≤ 3 f_c,90 k_mod / γ",
        source: WASHER,
        unit: Amount::Stress,
        levers: &[Lever::HigherStop],
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(Member::ThrustBearing, stress(at.drive()), strength)),
        |_, most| pressed(table, most.demand, PI / 4.0 * (outer * outer - inner * inner).max(0.0)),
    )
}

fn bearing(table: &Table<'_>) -> Option<Check> {
    let rating = table.design.strength.thrust_rating.to_n();
    let rule = Rule {
        id: "thrust-bearing",
        group: Group::Seats,
        title: "Thrust bearing at rest",
        weight: Weight::Limit,
        formula: "2 F ≤ C₀",
        source: BEARING,
        unit: Amount::Thrust,
        levers: &[Lever::HigherStop],
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(Member::ThrustBearing, STATIC_SAFETY * at.drive(), rating)),
        |at, _| {
            Phrase::new("rating ")
                .with(Amount::Thrust(rating))
                .and(" over ")
                .with(Amount::Thrust(at.drive()))
                .and(" is ")
                .with(Amount::Factor(static_safety(rating, at.drive())))
                .and(", wanted ")
                .with(Amount::Factor(STATIC_SAFETY))
        },
    )
}
