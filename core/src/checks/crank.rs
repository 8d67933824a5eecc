//! The crank: force, turns and work, by hand or with a drill.
//!
//! Plain `f64` in SI.
use core::f64::consts::PI;

use super::check::{Check, Group, Lever, Member, Rule, Use, Weight};
use super::level::Loaded;
use super::table::{Table, add};
use crate::catalogue::{Source, Standing};
use crate::quantity::{Amount, Phrase};

/// Resistance of a crank turned for some time, N, by its radius: 22 to 45 N from 125 to 200 mm, 9 to 22 N below 80 mm.
pub const SUSTAINED: [(f64, f64, [f64; 2]); 2] = [(0.0, 0.080, [9.0, 22.0]), (0.125, 0.200, [22.0, 45.0])];

/// Standing at a crank of 0.4 m: force, N, radius, m, and turns a minute a person can keep up.
pub const STANDING: (f64, f64, f64) = (130.0, 0.4, 25.0);

/// The most turns a minute by hand.
pub const MOST_TURNS: f64 = 30.0;

/// What a cordless drill in low gear gives without a strain on the wrist, N m, and its turns a minute (common practice, no source).
pub const DRILL: (f64, f64) = (30.0, 300.0);

/// Speed of a lifting table up to which the rules for them reach, m/s (scope of EN 1570-1).
pub const LIFT_SPEED: f64 = 0.15;

const LIMIT: Source = Source::new("Limit set for this design", Standing::Practice);
const CONTROL_ROOM: Source =
    Source::new("Ivergård and Hunt, Handbook of Control Room Design and Ergonomics, 5.3.4", Standing::Read);
const HUMAN: Source = Source::new(
    "Tables of human force: standing at a crank, at most 130 N at 25 to 30 turns a minute",
    Standing::Read,
);
const DRILLS: Source = Source::new("Cordless drills in low gear", Standing::Practice);
const EN_1570: Source = Source::new("EN 1570-1, scope", Standing::Read);

/// Power of a torque at so many turns a minute, W.
#[must_use]
pub fn power(torque: f64, turns_a_minute: f64) -> f64 {
    2.0 * PI * torque * turns_a_minute / 60.0
}

/// The upper end of what is comfortable for some time at a crank of that radius, N; between the two ranges the wider one's.
#[must_use]
pub fn comfortable(radius: f64) -> f64 {
    let [(_, small, [_, light]), (_, _, [_, heavy])] = SUSTAINED;
    if radius < small { light } else { heavy }
}

pub(super) fn checks(table: &Table<'_>, list: &mut Vec<Check>) {
    add(list, [force(table), sustained(table), work(table), pace(table), drill(table), speed(table)]);
}

fn raising(at: &Loaded<'_>) -> Option<f64> {
    at.level.torque?.crank_raise
}

fn handle(table: &Table<'_>, at: &Loaded<'_>) -> Phrase {
    Phrase::new("F = T / r = ")
        .with(Amount::Torque(at.level.torque.map_or(0.0, |torque| torque.raise)))
        .and(" / ")
        .with(Amount::Size(table.design.drive.crank.to_m()))
        .and(" = ")
        .with(Amount::Force(raising(at).unwrap_or(0.0)))
}

fn force(table: &Table<'_>) -> Option<Check> {
    let limit = table.design.drive.crank_limit.to_n();
    let rule = Rule {
        id: "crank-force",
        group: Group::Crank,
        title: "Force on the handle",
        weight: Weight::Limit,
        formula: "F = T / r",
        source: LIMIT,
        unit: Amount::Force,
        levers: &[Lever::HigherStop, Lever::LongerCrank, Lever::Thread],
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(Member::Crank, raising(at)?, limit)),
        |at, _| handle(table, at),
    )
}

fn sustained(table: &Table<'_>) -> Option<Check> {
    let limit = comfortable(table.design.drive.crank.to_m());
    let rule = Rule {
        id: "crank-sustained",
        group: Group::Crank,
        title: "Force on the handle for many turns",
        weight: Weight::Advice,
        formula: "22 to 45 N from 125 to 200 mm radius, 9 to 22 N below 80 mm",
        source: CONTROL_ROOM,
        unit: Amount::Force,
        levers: &[Lever::LongerCrank, Lever::HigherStop],
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(Member::Crank, raising(at)?, limit)),
        |at, _| handle(table, at),
    )
}

fn work(table: &Table<'_>) -> Option<Check> {
    let (force, radius, turns) = STANDING;
    let limit = power(force * radius, turns);
    let pace = table.design.drive.pace.to_per_minute();
    let rule = Rule {
        id: "crank-work",
        group: Group::Crank,
        title: "Work at the crank, a second",
        weight: Weight::Advice,
        formula: "P = 2π n T",
        source: HUMAN,
        unit: Amount::Power,
        levers: &[Lever::HigherStop],
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(Member::Crank, power(at.level.torque?.raise, pace), limit)),
        |at, most| {
            Phrase::new(format!("2π × {pace} / min × "))
                .with(Amount::Torque(at.level.torque.map_or(0.0, |torque| torque.raise)))
                .and(" = ")
                .with(Amount::Power(most.demand))
        },
    )
}

/// Turns of the crank over the whole lift.
fn turns(table: &Table<'_>) -> f64 {
    let length = |at: &Loaded<'_>| at.level.state.screw_length;
    let ends = table.levels.first().map(length).zip(table.levels.last().map(length));
    ends.map_or(0.0, |(low, high)| (high - low).abs() / table.design.drive.lead.to_m())
}

fn turning(table: &Table<'_>, turns_a_minute: f64) -> Phrase {
    let turns = turns(table);
    Phrase::default()
        .with(Amount::Turns(turns))
        .and(format!(" at {turns_a_minute} a minute: "))
        .with(Amount::Duration(turns / turns_a_minute * 60.0))
}

fn pace(table: &Table<'_>) -> Option<Check> {
    let pace = table.design.drive.pace.to_per_minute();
    let rule = Rule {
        id: "crank-pace",
        group: Group::Crank,
        title: "Turns a minute by hand",
        weight: Weight::Advice,
        formula: "n ≤ 30 / min",
        source: HUMAN,
        unit: Amount::Number,
        levers: &[],
    };
    rule.check(table.levels, |_| Some(Use::new(Member::Crank, pace, MOST_TURNS)), |_, _| turning(table, pace))
}

fn drill(table: &Table<'_>) -> Option<Check> {
    let (limit, pace) = DRILL;
    let rule = Rule {
        id: "drill",
        group: Group::Crank,
        title: "With a drill instead of the crank",
        weight: Weight::Advice,
        formula: "T ≤ 30 N m",
        source: DRILLS,
        unit: Amount::Torque,
        levers: &[Lever::HigherStop],
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(Member::Crank, at.level.torque?.raise, limit)),
        |_, _| turning(table, pace),
    )
}

/// The deck is fastest at the bottom; a drill takes it there ten times as fast as a hand.
fn speed(table: &Table<'_>) -> Option<Check> {
    let drive = &table.design.drive;
    let a_turn = |at: &Loaded<'_>| (at.level.state.advantage * drive.lead.to_m()).abs();
    let fastest = drive.pace.to_per_minute().max(DRILL.1) / 60.0;
    let rule = Rule {
        id: "deck-speed",
        group: Group::Crank,
        title: "Speed of the deck with a drill",
        weight: Weight::Advice,
        formula: "v = n dH, dH the rise of the deck a turn",
        source: EN_1570,
        unit: Amount::Speed,
        levers: &[Lever::HigherStop],
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(Member::Deck, fastest * a_turn(at), LIFT_SPEED)),
        |at, most| {
            Phrase::new(format!("{} / min × ", fastest * 60.0))
                .with(Amount::Give(a_turn(at)))
                .and(" = ")
                .with(Amount::Speed(most.demand))
        },
    )
}
