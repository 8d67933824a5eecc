//! The screw and its nut.
//!
//! Plain `f64` in SI. The torque on the screw is taken with its bearing's share, though between bearing and nut only the thread's part acts:
//! on the safe side.
use super::allowed;
use super::check::{Check, Group, Lever, Member, Rule, Use, Weight};
use super::column::Column;
use super::level::Loaded;
use super::table::{Table, add};
use super::thread::{FIRST_TURN, SHEAR_YIELD, Thread, mises};
use crate::catalogue::friction::SHAKEN;
use crate::catalogue::steel::STEEL_MODULUS;
use crate::catalogue::thread::holding_friction;
use crate::catalogue::{Source, Standing};
use crate::quantity::{Amount, Phrase};

/// Working depth of a thread as a part of its pitch (ISO 2904 and ASME B1.5 alike; less for threaded rod, whose flanks are steeper).
const DEPTH_OF_PITCH: f64 = 0.5;

const SHIGLEY: Source = Source::new("Shigley 9e, section 8-2, equations 8-7 to 8-12", Standing::Read);
const COLUMNS: Source = Source::new(
    "Euler, and J. B. Johnson for stout columns: Shigley 9e, sections 4-12 and 4-13",
    Standing::Read,
);
const HOLDING: Source =
    Source::new("Shigley 9e, section 8-2, with the flank; shaken friction at 60 % assumed", Standing::Read);

/// The screw's thread in its nut.
pub(super) fn thread(table: &Table<'_>) -> Thread {
    let drive = &table.design.drive;
    Thread {
        root: drive.root.to_m(),
        mean: drive.mean.to_m(),
        major: drive.major.to_m(),
        pitch: drive.pitch.to_m(),
        depth: DEPTH_OF_PITCH * drive.pitch.to_m(),
        nut: drive.nut_length.to_m(),
    }
}

fn strength(table: &Table<'_>) -> f64 {
    allowed::screw(table.design)
}

pub(super) fn checks(table: &Table<'_>, list: &mut Vec<Check>) {
    add(
        list,
        [
            root(table),
            buckling(table),
            first_turn(table),
            pressure(table),
            nut_shear(table),
            screw_shear(table),
            holding(table),
            efficiency(table),
        ],
    );
}

fn root(table: &Table<'_>) -> Option<Check> {
    let (thread, strength) = (thread(table), strength(table));
    let rule = Rule {
        id: "screw-root",
        group: Group::Screw,
        title: "Screw's root, pulled or pushed and twisted",
        weight: Weight::Limit,
        formula: "σ_v = √(σ² + 3 τ²),  σ = F / (π d² / 4),  τ = 16 T / π d³",
        source: SHIGLEY,
        unit: Amount::Stress,
        levers: &[Lever::Thread, Lever::HigherStop],
    };
    rule.check(
        table.levels,
        |at| {
            let stress = mises(thread.axial(at.drive()), thread.twist(at.torque()));
            Some(Use::new(Member::Screw, stress, strength))
        },
        |at, most| {
            Phrase::new("σ = ")
                .with(Amount::Stress(thread.axial(at.drive())))
                .and(", τ = ")
                .with(Amount::Stress(thread.twist(at.torque())))
                .and(", σ_v = ")
                .with(Amount::Stress(most.demand))
        },
    )
}

/// The screw as a column of its present length.
fn column(table: &Table<'_>, at: &Loaded<'_>) -> Column {
    let ends = table.design.strength.screw_ends.value();
    let length = at.level.state.screw_length * ends;
    let (e, sy) = (STEEL_MODULUS.to_pa(), table.design.strength.screw_yield.to_pa());
    Column::round(table.design.drive.root.to_m(), length, e, sy)
}

fn buckling(table: &Table<'_>) -> Option<Check> {
    let safety = table.design.strength.buckling_safety.value();
    let rule = Rule {
        id: "screw-buckling",
        group: Group::Screw,
        title: "Screw buckling when pushed",
        weight: Weight::Limit,
        formula: "n F ≤ F_cr,  slender π² E A / λ², stout A (S − (S λ / 2π)² / E),  λ = 4 K l / d",
        source: COLUMNS,
        unit: Amount::Thrust,
        levers: &[Lever::Thread, Lever::Pull],
    };
    // A screw that is only pulled has nothing to say here.
    if table.levels.iter().all(|at| at.push() <= 0.0) {
        return None;
    }
    rule.check(
        table.levels,
        |at| Some(Use::new(Member::Screw, safety * at.push(), column(table, at).critical())),
        |at, most| {
            Phrase::default()
                .with(Amount::Factor(safety))
                .and(" × ")
                .with(Amount::Thrust(at.push()))
                .and(" against ")
                .with(Amount::Thrust(most.capacity))
                .and(" at ")
                .with(Amount::Size(at.level.state.screw_length))
                .and(" free length, slenderness ")
                .with(Amount::Factor(column(table, at).slenderness()))
        },
    )
}

fn first_turn(table: &Table<'_>) -> Option<Check> {
    let (thread, strength) = (thread(table), strength(table));
    let rule = Rule {
        id: "screw-turn",
        group: Group::Screw,
        title: "Root of the first turn in the nut",
        weight: Weight::Limit,
        formula: "σ_v of bending 6 (0.38 F) / π d p, of F / A and of 16 T / π d³",
        source: SHIGLEY,
        unit: Amount::Stress,
        levers: &[Lever::Thread, Lever::HigherStop],
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(Member::Nut, thread.first_turn(at.drive(), at.torque()), strength)),
        |at, most| {
            Phrase::new("bending ")
                .with(Amount::Stress(thread.bending(FIRST_TURN * at.drive())))
                .and(", along ")
                .with(Amount::Stress(thread.axial(at.drive())))
                .and(", torque ")
                .with(Amount::Stress(thread.twist(at.torque())))
                .and(": ")
                .with(Amount::Stress(most.demand))
        },
    )
}

fn pressure(table: &Table<'_>) -> Option<Check> {
    let (thread, strength) = (thread(table), table.design.strength.thread_pressure.to_pa());
    let rule = Rule {
        id: "nut-pressure",
        group: Group::Screw,
        title: "Pressure on the nut's threads, wear",
        weight: Weight::Limit,
        formula: "p = F P / (π d_m h L),  h half the pitch P",
        source: SHIGLEY,
        unit: Amount::Stress,
        levers: &[Lever::Nut, Lever::Thread],
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(Member::Nut, thread.pressure(at.drive()), strength)),
        |at, most| {
            Phrase::new("p = ")
                .with(Amount::Thrust(at.drive()))
                .and(" × ")
                .with(Amount::Give(thread.pitch))
                .and(" / (π × ")
                .with(Amount::Give(thread.mean))
                .and(" × ")
                .with(Amount::Give(thread.depth))
                .and(" × ")
                .with(Amount::Give(thread.nut))
                .and(") = ")
                .with(Amount::Stress(most.demand))
        },
    )
}

fn nut_shear(table: &Table<'_>) -> Option<Check> {
    let thread = thread(table);
    let strength =
        SHEAR_YIELD * table.design.strength.nut_yield.to_pa() / table.design.strength.screw_safety.value();
    let rule = Rule {
        id: "nut-shear",
        group: Group::Screw,
        title: "Nut's threads in shear",
        weight: Weight::Limit,
        formula: "τ = F / (π d L / 2)",
        source: SHIGLEY,
        unit: Amount::Stress,
        levers: &[Lever::Nut, Lever::Thread],
    };
    sheared(&rule, table, |force| thread.shear_nut(force), thread.major, strength)
}

fn screw_shear(table: &Table<'_>) -> Option<Check> {
    let thread = thread(table);
    let rule = Rule {
        id: "screw-shear",
        group: Group::Screw,
        title: "Screw's threads in shear",
        weight: Weight::Limit,
        formula: "τ = F / (π d_r L / 2)",
        source: SHIGLEY,
        unit: Amount::Stress,
        levers: &[Lever::Nut, Lever::Thread],
    };
    let strength = SHEAR_YIELD * strength(table);
    sheared(&rule, table, |force| thread.shear_screw(force), thread.root, strength)
}

fn sheared(
    rule: &Rule,
    table: &Table<'_>,
    stress: impl Fn(f64) -> f64,
    diameter: f64,
    strength: f64,
) -> Option<Check> {
    rule.check(
        table.levels,
        |at| Some(Use::new(Member::Nut, stress(at.drive()), strength)),
        |at, most| {
            Phrase::new("τ = ")
                .with(Amount::Thrust(at.drive()))
                .and(" / (π × ")
                .with(Amount::Give(diameter))
                .and(" × ")
                .with(Amount::Give(table.design.drive.nut_length.to_m()))
                .and(" / 2) = ")
                .with(Amount::Stress(most.demand))
        },
    )
}

/// How the screw holds the deck when nobody holds the crank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Holding {
    /// Thread friction that just holds.
    pub needed: f64,
    /// Thread friction there is.
    pub friction: f64,
    /// What is left of it when shaken.
    pub shaken: f64,
}

impl Holding {
    /// Of a design. The thrust bearing's friction helps and is not counted.
    #[must_use]
    pub fn of(design: &crate::design::Design) -> Self {
        let drive = &design.drive;
        let friction = drive.thread_friction.value();
        Self {
            needed: holding_friction(drive.lead, drive.mean, drive.flank),
            friction,
            shaken: SHAKEN.value() * friction,
        }
    }
}

/// Whether the screw holds by itself, also shaken. At rest the bearing's friction may help; shaken it is not counted on.
fn holding(table: &Table<'_>) -> Option<Check> {
    let Holding { needed, friction, shaken } = Holding::of(table.design);
    let rule = Rule {
        id: "screw-holding",
        group: Group::Screw,
        title: "Screw holds by itself, also shaken",
        weight: Weight::Limit,
        formula: "l cos α / π d_m ≤ 0.6 μ",
        source: HOLDING,
        unit: Amount::Number,
        levers: &[Lever::Thread],
    };
    let check = rule.check(
        table.levels,
        |_| Some(Use::new(Member::Screw, needed, shaken)),
        |_, _| {
            Phrase::new("needed ")
                .with(Amount::Number(needed))
                .and(", counted on when shaken: ")
                .with(Amount::Share(SHAKEN.value()))
                .and(" of ")
                .with(Amount::Number(friction))
                .and(" = ")
                .with(Amount::Number(shaken))
        },
    )?;
    // A screw that holds at rest and only creeps when shaken is to be watched, not wrong.
    let holds = table.levels.iter().all(|at| at.level.torque.is_none_or(|torque| torque.self_locking));
    Some(match (check.ratio > 1.0, holds) {
        (_, false) => Check { verdict: super::Verdict::Over, ..check },
        (true, true) => Check { verdict: super::Verdict::Watch, ..check },
        (false, true) => Check { verdict: super::Verdict::Fine, ..check },
    })
}

/// Work lost in screw, bearing and pivots: more than half is the price of a screw that holds by itself.
fn efficiency(table: &Table<'_>) -> Option<Check> {
    let rule = Rule {
        id: "screw-efficiency",
        group: Group::Screw,
        title: "Work lost in screw and pivots",
        weight: Weight::Advice,
        formula: "1 − F l / 2π T,  F without friction",
        source: SHIGLEY,
        unit: Amount::Share,
        levers: &[],
    };
    let lost = |at: &Loaded<'_>| Some(1.0 - at.level.torque?.efficiency?);
    rule.check(
        table.levels,
        |at| Some(Use::new(Member::Screw, lost(at)?, 1.0)),
        |at, most| {
            let useful =
                at.level.state.rest.drive * table.design.drive.lead.to_m() / (2.0 * core::f64::consts::PI);
            Phrase::new("of ")
                .with(Amount::Torque(at.level.torque.map_or(0.0, |torque| torque.raise)))
                .and(" at the crank ")
                .with(Amount::Torque(useful))
                .and(" lift the load; ")
                .with(Amount::Share(most.demand))
                .and(" is lost")
        },
    )
}
