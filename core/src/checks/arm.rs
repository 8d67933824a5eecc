//! The arms: bending with the force along them, shear, buckling.
//!
//! Plain `f64` in SI. What the free functions return are totals of all sides: the caller takes its share.
use super::check::{Check, Group, Lever, Member, Rule, Use, Weight, worst};
use super::column::euler;
use super::level::Loaded;
use super::table::{Table, add};
use super::timber::Rectangle;
use crate::catalogue::{Source, Standing};
use crate::design::StrutEnd;
use crate::mechanics::stiffness::rectangle;
use crate::mechanics::{ArmId, JointId, Section, Side};
use crate::quantity::{Amount, Phrase};

/// The section forces at places of an arm, either side of each, in all three states.
fn sections<'a>(at: &'a Loaded<'_>, arm: ArmId, places: &'a [f64]) -> impl Iterator<Item = Section> + 'a {
    let diagrams = at.arms.iter().filter_map(move |state| state.get(arm.index()));
    diagrams.flat_map(move |diagram| places.iter().filter_map(|place| diagram.around(*place)).flatten())
}

fn greatest(figures: impl Iterator<Item = f64>) -> f64 {
    figures.fold(0.0, f64::max)
}

/// Greatest edge stress of a section at places of an arm, either side of each, at rest, raising and lowering, Pa.
pub(super) fn stress_at(at: &Loaded<'_>, arm: ArmId, places: &[f64], bar: &Rectangle) -> f64 {
    greatest(sections(at, arm, places).map(|section| bar.edge_stress(&section)))
}

/// Greatest shear stress of a section there, Pa.
pub(super) fn shear_at(at: &Loaded<'_>, arm: ArmId, places: &[f64], bar: &Rectangle) -> f64 {
    greatest(sections(at, arm, places).map(|section| bar.shear_stress(&section)))
}

/// Greatest edge stress anywhere along an arm, holes left out, Pa: `bar` is the section without them.
pub(super) fn stress_anywhere(at: &Loaded<'_>, arm: ArmId, bar: &Rectangle) -> f64 {
    at.bent.get(arm.index()).map_or(0.0, |section| bar.edge_stress(section))
}

/// Greatest push along an arm, N.
pub(super) fn compression(at: &Loaded<'_>, arm: ArmId) -> f64 {
    at.pushed.get(arm.index()).copied().unwrap_or(0.0)
}

/// The push at which an arm buckles in its plane and out of it, N, for its bending stiffnesses and the lengths it buckles over.
pub(super) fn critical(ei: [f64; 2], lengths: [f64; 2]) -> [f64; 2] {
    [euler(ei[0], lengths[0]), euler(ei[1], lengths[1])]
}

const BEAM: Source = Source::new("Beam theory; any text on the strength of materials", Standing::Practice);
const EULER: Source = Source::new(
    "Euler's column; the force for buckling alone and the stress for bending alone are added, as in a straight-line interaction",
    Standing::Practice,
);

/// The section forces with the greatest edge stress at the drilled places of an arm.
fn worst_section(table: &Table<'_>, at: &Loaded<'_>, arm: ArmId, bar: &Rectangle) -> Section {
    let places = drilled(table, arm);
    sections(at, arm, &places).fold(Section::default(), |most, here| bar.worse(most, here))
}

/// Where an arm is drilled between its ends: for the centre pin, and for an end of a strut.
fn drilled(table: &Table<'_>, arm: ArmId) -> Vec<f64> {
    let (lift, drive) = (&table.design.lift, &table.design.drive);
    let length = lift.arm_length.to_m();
    let mut places = vec![lift.centre.value() * length];
    let mut add = |end: StrutEnd, part: f64| {
        let same = |stage: i64| usize::try_from(stage).is_ok_and(|stage| stage == arm.stage);
        if end.stage().is_some_and(same) && end.is_b() == (arm.side == Side::B) {
            places.push(part * length);
        }
    };
    if drive.kind == crate::design::DriveKind::Strut {
        add(drive.foot, drive.foot_part.value());
        add(drive.head, drive.head_part.value());
    }
    places
}

pub(super) fn checks(table: &Table<'_>, list: &mut Vec<Check>) {
    add(list, [net(table), shear(table), gross(table), buckling(table, false), buckling(table, true)]);
}

fn net(table: &Table<'_>) -> Option<Check> {
    let (bar, strength, share) = (table.net(), table.bending(), table.share);
    let places: Vec<(ArmId, Vec<f64>)> = table.arms().map(|arm| (arm, drilled(table, arm))).collect();
    let rule = Rule {
        id: "arm-net",
        group: Group::Arms,
        title: "Bending at the holes",
        weight: Weight::Limit,
        formula: "σ = |M| / W + |N| / A,  W = t (w³ − d³) / 6 w,  A = t (w − d)",
        source: BEAM,
        unit: Amount::Stress,
        levers: &[Lever::ArmLayer, Lever::ArmWidth, Lever::HigherStop],
    };
    rule.check(
        table.levels,
        |at| {
            worst(places.iter().map(|(arm, places)| {
                Use::new(Member::Arm(*arm), stress_at(at, *arm, places, &bar) * share, strength)
            }))
        },
        |at, most| {
            let Member::Arm(arm) = most.member else { return Phrase::default() };
            numbers(&worst_section(table, at, arm, &bar), share, &bar, most.demand)
        },
    )
}

/// `σ = M / W + N / A = ...` with its figures.
fn numbers(section: &Section, share: f64, bar: &Rectangle, stress: f64) -> Phrase {
    Phrase::new("σ = ")
        .with(Amount::Torque(section.m.abs() * share))
        .and(" / ")
        .with(Amount::Modulus(bar.modulus()))
        .and(" + ")
        .with(Amount::Thrust(section.n.abs() * share))
        .and(" / ")
        .with(Amount::Section(bar.area()))
        .and(" = ")
        .with(Amount::Stress(stress))
}

fn shear(table: &Table<'_>) -> Option<Check> {
    let (bar, strength, share) = (table.net(), table.shear(), table.share);
    let places: Vec<(ArmId, Vec<f64>)> = table.arms().map(|arm| (arm, drilled(table, arm))).collect();
    let rule = Rule {
        id: "arm-shear",
        group: Group::Arms,
        title: "Shear at the holes",
        weight: Weight::Limit,
        formula: "τ = 3/2 |V| / A,  A = t (w − d)",
        source: BEAM,
        unit: Amount::Stress,
        levers: &[Lever::ArmLayer, Lever::ArmWidth, Lever::HigherStop],
    };
    rule.check(
        table.levels,
        |at| {
            worst(places.iter().map(|(arm, places)| {
                Use::new(Member::Arm(*arm), shear_at(at, *arm, places, &bar) * share, strength)
            }))
        },
        |_, most| {
            Phrase::new("τ = 1.5 × ")
                .with(Amount::Thrust(most.demand * bar.area() / 1.5))
                .and(" / ")
                .with(Amount::Section(bar.area()))
                .and(" = ")
                .with(Amount::Stress(most.demand))
        },
    )
}

fn gross(table: &Table<'_>) -> Option<Check> {
    let (bar, strength, share) = (table.gross(), table.bending(), table.share);
    let rule = Rule {
        id: "arm-gross",
        group: Group::Arms,
        title: "Bending beside the holes",
        weight: Weight::Limit,
        formula: "σ = 6 |M| / t w² + |N| / t w",
        source: BEAM,
        unit: Amount::Stress,
        levers: &[Lever::ArmLayer, Lever::ArmWidth, Lever::HigherStop],
    };
    rule.check(
        table.levels,
        |at| {
            worst(
                table
                    .arms()
                    .map(|arm| Use::new(Member::Arm(arm), stress_anywhere(at, arm, &bar) * share, strength)),
            )
        },
        |at, most| {
            let Member::Arm(arm) = most.member else { return Phrase::default() };
            let worst = at.bent.get(arm.index()).copied().unwrap_or_default();
            numbers(&worst, share, &bar, most.demand)
        },
    )
}

/// An arm as a column in its plane, held at its pins, or out of it, held at its ends and, by cross boards, in its middle.
fn buckling(table: &Table<'_>, out: bool) -> Option<Check> {
    let (arms, lift) = (&table.design.arms, &table.design.lift);
    let (bar, share) = (table.gross(), table.share);
    let e = arms.modulus.to_pa();
    let ei = [e * rectangle(bar.thickness, bar.depth), e * rectangle(bar.depth, bar.thickness)];
    let (length, centre) = (lift.arm_length.to_m(), lift.centre.value());
    let boarded = |arm: ArmId| if arm.side == Side::A { arms.boards_a } else { arms.boards_b };
    let factor = |arm: ArmId| if boarded(arm) { 1.0 } else { 2.0 };
    let force = move |arm: ArmId| {
        critical(ei, [centre.max(1.0 - centre) * length, factor(arm) * length])[usize::from(out)]
    };
    let (safety, strength) = (table.design.strength.buckling_safety.value(), table.bending());
    let pushed = |at: &Loaded<'_>, arm: ArmId| compression(at, arm) * share;
    let bent = |at: &Loaded<'_>, arm: ArmId| stress_anywhere(at, arm, &bar) * share;
    let rule = Rule {
        id: if out { "arm-buckling-out" } else { "arm-buckling-in" },
        group: Group::Arms,
        title: if out { "Buckling sideways" } else { "Buckling in its plane" },
        weight: Weight::Limit,
        formula: if out {
            "n N / N_cr + σ / f ≤ 1,  N_cr = π² E I / (K L)²,  I = w t³ / 12,  K = 1 with cross boards, else 2"
        } else {
            "n N / N_cr + σ / f ≤ 1,  N_cr = π² E I / (c L)²,  I = t w³ / 12"
        },
        source: EULER,
        unit: Amount::Number,
        levers: if out {
            &[Lever::ArmLayer, Lever::Boards, Lever::HigherStop]
        } else {
            &[Lever::ArmWidth, Lever::ArmLayer, Lever::HigherStop]
        },
    };
    rule.check(
        table.levels,
        |at| {
            worst(table.arms().map(|arm| {
                let used = safety * pushed(at, arm) / force(arm) + bent(at, arm) / strength;
                Use::new(Member::Arm(arm), used, 1.0)
            }))
        },
        |at, most| {
            let Member::Arm(arm) = most.member else { return Phrase::default() };
            Phrase::default()
                .with(Amount::Factor(safety))
                .and(" × ")
                .with(Amount::Thrust(pushed(at, arm)))
                .and(" / ")
                .with(Amount::Thrust(force(arm)))
                .and(" + ")
                .with(Amount::Stress(bent(at, arm)))
                .and(" / ")
                .with(Amount::Stress(strength))
                .and(" = ")
                .with(Amount::Number(most.demand))
        },
    )
}

impl Loaded<'_> {
    /// The greatest force on a pivot in any state, N, as a share of the total, and which pivot.
    pub(super) fn greatest_joint(&self, share: f64) -> (f64, JointId) {
        let n = self.level.pose.n;
        JointId::all(n).fold((0.0, JointId::Bl), |most: (f64, JointId), joint| {
            let force = self.joint_force(joint) * share;
            if force > most.0 { (force, joint) } else { most }
        })
    }

    /// The greatest force on a pivot in any state, N.
    pub(super) fn joint_force(&self, joint: JointId) -> f64 {
        greatest(self.forces().into_iter().map(|forces| forces.joint(joint).length()))
    }
}
