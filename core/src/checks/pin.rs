//! Pivot bolts, their bushings, and how they press into the wood.
//!
//! Plain `f64` in SI.
use super::bolt;
use super::check::{Check, Group, Lever, Member, Rule, Use, Weight, worst};
use super::dowel::{Mode, ec5, nds};
use super::level::Loaded;
use super::table::{Table, add};
use super::thread::SHEAR_YIELD;
use super::timber::by_eurocode;
use crate::catalogue::{Source, Standing};
use crate::design::WoodSort;
use crate::mechanics::statics::Forces;
use crate::mechanics::{Body, JointId, JointKind};
use crate::quantity::{Amount, Phrase};
use glam::DVec2;

/// Specific gravity of the oven-dry wood over its density at 12 % moisture, 1/(kg/m3).
const GRAVITY_OF_DENSITY: f64 = 1.0 / 1120.0;

const ROUND_BAR: Source =
    Source::new("Round bar in shear and bending; any text on the strength of materials", Standing::Practice);
const BEARING: Source =
    Source::new("Average pressure over bolt diameter and bushing length", Standing::Practice);
const EC5: Source = Source::new(
    "EN 1995-1-1, 8.2 and 8.5, Johansen's modes without rope effect; checked against published worked examples",
    Standing::SecondHand,
);
const NDS: Source = Source::new("NDS 2018, tables 12.3.1A, 12.3.1B and 12.3.3", Standing::Read);

/// How a pivot holds its arm.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Hold {
    /// Bolt through two members side by side.
    Lap,
    /// Bolt through a cheek on either side of the arm.
    Fork,
    /// Axle held square in the tube between the arms.
    Axle,
}

fn hold(table: &Table<'_>, joint: JointId) -> Hold {
    match joint.kind() {
        JointKind::Br | JointKind::Tr => Hold::Axle,
        JointKind::Bl | JointKind::Tl if table.design.running.forks => Hold::Fork,
        _ => Hold::Lap,
    }
}

/// From middle to middle of the two members on a bolt, m.
fn lap(table: &Table<'_>, joint: JointId) -> f64 {
    match joint.kind() {
        JointKind::Bl | JointKind::Tl => {
            (table.arm_thickness() + table.frame_thickness()) / 2.0 + table.design.arms.spacer.to_m()
        }
        _ => table.lap(),
    }
}

pub(super) fn checks(table: &Table<'_>, list: &mut Vec<Check>) {
    add(list, [shear(table), bending(table), pressure(table)]);
    add(list, [if by_eurocode(table.design) { eurocode(table) } else { by_nds(table) }]);
}

fn bolts(table: &Table<'_>) -> Vec<JointId> {
    table.joints().filter(|joint| hold(table, *joint) != Hold::Axle).collect()
}

/// Force on the worst-used bolt in one shear plane.
fn plane(table: &Table<'_>, at: &Loaded<'_>, joint: JointId) -> f64 {
    let planes = if hold(table, joint) == Hold::Fork { 2.0 } else { 1.0 };
    at.joint_force(joint) * table.share / planes
}

fn shear(table: &Table<'_>) -> Option<Check> {
    let (d, bolts, strength) = (table.design.running.pin.to_m(), bolts(table), SHEAR_YIELD * table.bolt());
    let rule = Rule {
        id: "pin-shear",
        group: Group::Pins,
        title: "Bolt in shear",
        weight: Weight::Limit,
        formula: "τ = 4/3 R / (π d² / 4)",
        source: ROUND_BAR,
        unit: Amount::Stress,
        levers: &[Lever::Pin, Lever::BoltClass],
    };
    rule.check(
        table.levels,
        |at| {
            worst(bolts.iter().map(|joint| {
                Use::new(Member::Joint(*joint), bolt::shear(plane(table, at, *joint), d), strength)
            }))
        },
        |at, most| {
            let Member::Joint(joint) = most.member else { return Phrase::default() };
            Phrase::new("τ = 4/3 × ")
                .with(Amount::Thrust(plane(table, at, joint)))
                .and(" / (π × (")
                .with(Amount::Give(d))
                .and(")² / 4) = ")
                .with(Amount::Stress(most.demand))
        },
    )
}

/// Bending moment in the bolt of a pivot, N m.
fn moment(table: &Table<'_>, at: &Loaded<'_>, joint: JointId) -> f64 {
    let (force, a) = (at.joint_force(joint) * table.share, lap(table, joint));
    match hold(table, joint) {
        Hold::Fork => bolt::fork_moment(force, a, table.arm_thickness()),
        _ => bolt::lap_moment(force, a),
    }
}

fn bending(table: &Table<'_>) -> Option<Check> {
    let (d, bolts, strength) = (table.design.running.pin.to_m(), bolts(table), table.bolt());
    let rule = Rule {
        id: "pin-bending",
        group: Group::Pins,
        title: "Bolt bent across the joint",
        weight: Weight::Limit,
        formula: "σ = 32 M / π d³,  M = R a / 2, between two cheeks R (a / 2 − t / 8)",
        source: ROUND_BAR,
        unit: Amount::Stress,
        levers: &[Lever::Pin, Lever::BoltClass],
    };
    rule.check(
        table.levels,
        |at| {
            worst(bolts.iter().map(|joint| {
                Use::new(Member::Joint(*joint), bolt::bending(moment(table, at, *joint), d), strength)
            }))
        },
        |at, most| {
            let Member::Joint(joint) = most.member else { return Phrase::default() };
            Phrase::new("M from ")
                .with(Amount::Thrust(at.joint_force(joint) * table.share))
                .and(" over ")
                .with(Amount::Give(lap(table, joint)))
                .and(": ")
                .with(Amount::Torque(moment(table, at, joint)))
                .and(", σ = ")
                .with(Amount::Stress(most.demand))
        },
    )
}

/// Diameter of what turns in a bushing, m.
pub(super) fn shaft(table: &Table<'_>, joint: JointId) -> f64 {
    let running = &table.design.running;
    if hold(table, joint) == Hold::Axle { running.axle } else { running.pin }.to_m()
}

fn pressure(table: &Table<'_>) -> Option<Check> {
    let (t, strength) = (table.arm_thickness(), table.design.strength.bush_pressure.to_pa());
    let rule = Rule {
        id: "bush-pressure",
        group: Group::Pins,
        title: "Pressure in the bushings",
        weight: Weight::Limit,
        formula: "p = R / d t",
        source: BEARING,
        unit: Amount::Stress,
        levers: &[Lever::Pin, Lever::ArmLayer],
    };
    rule.check(
        table.levels,
        |at| {
            worst(table.joints().map(|joint| {
                let force = at.joint_force(joint) * table.share;
                Use::new(Member::Joint(joint), bolt::pressure(force, shaft(table, joint), t), strength)
            }))
        },
        |_, most| {
            let Member::Joint(joint) = most.member else { return Phrase::default() };
            let d = shaft(table, joint);
            Phrase::new("p = ")
                .with(Amount::Thrust(most.demand * d * t))
                .and(" / (")
                .with(Amount::Give(d))
                .and(" × ")
                .with(Amount::Give(t))
                .and(") = ")
                .with(Amount::Stress(most.demand))
        },
    )
}

/// Sine of the angle of a pivot's force to the grain of each of its two members. Frames are cut along the table.
fn sines(at: &Loaded<'_>, joint: JointId, forces: &Forces) -> [f64; 2] {
    let pose = at.level.pose;
    let force = forces.joint(joint);
    let size = force.length();
    joint.bodies(pose.n).map(|body| {
        let along = match body {
            Body::Arm(arm) => pose.arm(arm).along,
            Body::Top => pose.top.along,
            Body::Base => DVec2::X,
        };
        if size > 0.0 { (along.perp_dot(force) / size).abs().min(1.0) } else { 0.0 }
    })
}

/// What a pivot holds in wood, by the sines of the angles of its force to the grain of its two members.
type Held<'a> = dyn Fn([f64; 2]) -> Mode + 'a;

/// The worst-used pivot in wood.
fn embedded(table: &Table<'_>, at: &Loaded<'_>, joints: &[(JointId, Box<Held<'_>>)]) -> Option<(Use, Mode)> {
    let states = joints.iter().flat_map(|(joint, held)| at.forces().map(|forces| (*joint, held, forces)));
    states
        .map(|(joint, held, forces)| {
            let held = held(sines(at, joint, forces));
            let force = forces.joint(joint).length() * table.share;
            (Use::new(Member::Joint(joint), force, held.load), held)
        })
        .reduce(|most, here| if here.0.ratio() > most.0.ratio() { here } else { most })
}

fn holds(rule: &Rule, table: &Table<'_>, joints: &[(JointId, Box<Held<'_>>)]) -> Option<Check> {
    rule.check(
        table.levels,
        |at| embedded(table, at, joints).map(|(most, _)| most),
        |at, most| {
            let mark = embedded(table, at, joints).map_or("", |(_, mode)| mode.mark);
            Phrase::new("R = ")
                .with(Amount::Thrust(most.demand))
                .and(", the joint holds ")
                .with(Amount::Thrust(most.capacity))
                .and(format!(" (mode {mark})"))
        },
    )
}

/// A pivot's members: first and second body in order, which of the two is the arm that counts, and which the cheek.
struct Members {
    thickness: [f64; 2],
    arm: usize,
}

impl Members {
    fn new(table: &Table<'_>, joint: JointId) -> Self {
        let (arm, frame) = (table.arm_thickness(), table.frame_thickness());
        match joint.kind() {
            JointKind::Bl => Self { thickness: [frame, arm], arm: 1 },
            JointKind::Br => Self { thickness: [arm, arm], arm: 1 },
            JointKind::Tl => Self { thickness: [arm, frame], arm: 0 },
            _ => Self { thickness: [arm, arm], arm: 0 },
        }
    }

    fn cheek(&self) -> usize {
        1 - self.arm
    }
}

/// Diameter that presses on the wood of a pivot, m: the bushing's, and of an axle, whose bushing has no size of its own, the axle's.
pub(super) fn presses(table: &Table<'_>, joint: JointId) -> f64 {
    let running = &table.design.running;
    if hold(table, joint) == Hold::Axle { running.axle } else { running.bush }.to_m()
}

/// What a pivot holds in wood by EN 1995-1-1, the bushing taken as the dowel and the bolt alone as what bends.
fn held_by_eurocode<'a>(table: &'a Table<'_>, joint: JointId) -> Box<Held<'a>> {
    let strength = &table.design.strength;
    let held = hold(table, joint);
    let tensile = if held == Hold::Axle { strength.steel_yield } else { strength.bolt_tensile };
    let diameter = presses(table, joint);
    let dowel =
        ec5::Dowel { diameter, yield_moment: ec5::yield_moment(tensile.to_pa(), shaft(table, joint)) };
    let wood = ec5::Embedment::new(strength.sort, strength.density_low.to_kg_m3(), diameter);
    let members = Members::new(table, joint);
    let kept = table.kept();
    let mode = move |sines: [f64; 2]| {
        let bed =
            |which: usize| ec5::Bed { thickness: members.thickness[which], embedment: wood.at(sines[which]) };
        let (mode, planes) = match held {
            Hold::Lap => (dowel.single_shear(bed(0), bed(1)), 1.0),
            Hold::Fork => (dowel.double_shear(bed(members.cheek()), bed(members.arm)), 2.0),
            Hold::Axle => (dowel.against_steel(bed(members.arm)), 1.0),
        };
        Mode { load: planes * mode.load * kept, ..mode }
    };
    if strength.sort == WoodSort::Plywood {
        // Alike in every direction: one answer serves all.
        let always = mode([0.0; 2]);
        return Box::new(move |_| always);
    }
    Box::new(mode)
}

fn eurocode(table: &Table<'_>) -> Option<Check> {
    let joints: Vec<_> = table.joints().map(|joint| (joint, held_by_eurocode(table, joint))).collect();
    let rule = Rule {
        id: "pin-wood",
        group: Group::Pins,
        title: "Wood crushed around a pivot",
        weight: Weight::Limit,
        formula: "R ≤ k_mod / γ × least of (8.6 a–f), forks (8.7 g–k), axles (8.10 c–e); (c) is 0.41 f_h d t for equal arms",
        source: EC5,
        unit: Amount::Thrust,
        levers: &[Lever::Bush, Lever::ArmLayer, Lever::Pin],
    };
    holds(&rule, table, &joints)
}

/// What a pivot holds in wood by the NDS: the bushing taken as the dowel and the bolt alone as what bends; load duration
/// factor 1, dry.
///
/// Plywood has no grain of its own: it is given the lesser value, across, without the reduction for the angle.
fn held_by_nds<'a>(table: &'a Table<'_>, joint: JointId) -> Box<Held<'a>> {
    let strength = &table.design.strength;
    let plywood = strength.sort == WoodSort::Plywood;
    let held = hold(table, joint);
    let diameter = presses(table, joint);
    let yield_bending = match held {
        Hold::Axle => strength.steel_yield.to_pa(),
        _ => (strength.bolt_yield.to_pa() + strength.bolt_tensile.to_pa()) / 2.0,
    };
    let yield_moment = nds::yield_moment(yield_bending, shaft(table, joint));
    let wood = nds::Bearing::new(table.design.arms.density.to_kg_m3() * GRAVITY_OF_DENSITY, diameter);
    let members = Members::new(table, joint);
    Box::new(move |sines| {
        let angle = if plywood { 0.0 } else { libm::asin(sines[0].max(sines[1])) };
        let bolt = nds::Bolt { diameter, yield_moment, angle };
        let bed = |which: usize| nds::Bed {
            thickness: members.thickness[which],
            bearing: if plywood { wood.across } else { wood.at(sines[which]) },
        };
        match held {
            Hold::Lap => bolt.single_shear(bed(0), bed(1)),
            Hold::Fork => bolt.double_shear(bed(members.arm), bed(members.cheek())),
            Hold::Axle => bolt.against_steel(bed(members.arm)),
        }
    })
}

fn by_nds(table: &Table<'_>) -> Option<Check> {
    let joints: Vec<_> = table.joints().map(|joint| (joint, held_by_nds(table, joint))).collect();
    let rule = Rule {
        id: "pin-wood",
        group: Group::Pins,
        title: "Wood crushed around a pivot",
        weight: Weight::Limit,
        formula: "R ≤ Z, least of modes Im, Is, II, IIIm, IIIs, IV; forks in double shear; axles Is",
        source: NDS,
        unit: Amount::Thrust,
        levers: &[Lever::Pin, Lever::ArmLayer],
    };
    holds(&rule, table, &joints)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The rule of thumb for a bolt free to tilt between equal members, 0.41 of full crushing: sqrt(2) - 1 of (8.6 c).
    #[test]
    fn a_tilting_bolt_holds_two_fifths() {
        let dowel = ec5::Dowel { diameter: 0.022, yield_moment: 1e6 };
        let bed = ec5::Bed { thickness: 0.036, embedment: 35.9e6 };
        let held = dowel.single_shear(bed, bed);
        assert_eq!(held.mark, "c");
        assert!((held.load / (0.022 * 0.036 * 35.9e6) - (2.0_f64.sqrt() - 1.0)).abs() < 1e-12);
    }
}
