//! Pivot bolts, their bushings, and how they press into the wood.
//!
//! Plain `f64` in SI.
use super::bolt;
use super::check::{Check, Group, Lever, Member, Rule, Use, Weight, worst};
use super::dowel::{Bed, Mode, Plane, ec5, nds};
use super::level::Loaded;
use super::table::{Table, add};
use super::thread::SHEAR_YIELD;
use super::timber::by_eurocode;
use crate::catalogue::{Source, Standing};
use crate::design::WoodSort;
use crate::mechanics::statics::Forces;
use crate::mechanics::{Body, JointId, JointKind};
use crate::parts::{axle_bush, cheek_laps};
use crate::quantity::{Amount, Length, Phrase};
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

/// From middle to middle of the members on a bolt, m: twice the same where there are two only.
fn laps(table: &Table<'_>, joint: JointId) -> [f64; 2] {
    let deck = match joint.kind() {
        JointKind::Bl => false,
        JointKind::Tl => true,
        _ => return [table.lap(); 2],
    };
    let [outer, inner] = cheek_laps(table.design, deck);
    let outer = outer.map_or(0.0, Length::to_m);
    [outer, inner.map_or(outer, Length::to_m)]
}

/// The greatest share of a pivot's force that one shear plane carries: in a fork the nearer cheek's.
fn plane_share(table: &Table<'_>, joint: JointId) -> f64 {
    if hold(table, joint) != Hold::Fork {
        return 1.0;
    }
    let [one, other] = laps(table, joint);
    one.max(other) / (one + other)
}

pub(super) fn checks(table: &Table<'_>, list: &mut Vec<Check>) {
    add(list, [shear(table), bending(table), pressure(table)]);
    add(list, [if by_eurocode(table.design) { eurocode(table) } else { by_nds(table) }]);
}

fn bolts(table: &Table<'_>) -> Vec<JointId> {
    table.joints().filter(|joint| hold(table, *joint) != Hold::Axle).collect()
}

/// Force on a bolt in one shear plane.
fn plane(table: &Table<'_>, at: &Loaded<'_>, joint: JointId) -> f64 {
    at.joint_force(joint) * table.share * plane_share(table, joint)
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
    let (force, laps) = (at.joint_force(joint) * table.share, laps(table, joint));
    match hold(table, joint) {
        Hold::Fork => bolt::fork_moment(force, laps, table.arm_thickness()),
        _ => bolt::lap_moment(force, laps[0]),
    }
}

fn bending(table: &Table<'_>) -> Option<Check> {
    let (d, bolts, strength) = (table.design.running.pin.to_m(), bolts(table), table.bolt());
    let rule = Rule {
        id: "pin-bending",
        group: Group::Pins,
        title: "Bolt bent across the joint",
        weight: Weight::Limit,
        formula: "σ = 32 M / π d³,  M = R a / 2, between two cheeks R (a b / (a + b) − t / 8)",
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
                .with(Amount::Give(laps(table, joint)[0]))
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

/// The wood on a pivot: the arm that counts, and what stands beside it.
struct Wood {
    /// Thickness of the arm, and what of its hole presses on it, m.
    arm: [f64; 2],
    /// The same of the other member.
    other: [f64; 2],
    /// Which of the joint's two bodies the arm is.
    place: usize,
    /// What is free between the two in each shear plane, m, with the plane's share of the force.
    planes: Vec<(f64, f64)>,
}

impl Wood {
    fn new(table: &Table<'_>, joint: JointId) -> Self {
        let arm = [table.arm_thickness(), presses(table, joint)];
        // The bolt sits bare in a cheek.
        let cheek = [table.frame_thickness(), table.design.running.pin.to_m()];
        let (other, place) = match joint.kind() {
            JointKind::Bl => (cheek, 1),
            JointKind::Br => (arm, 1),
            JointKind::Tl => (cheek, 0),
            _ => (arm, 0),
        };
        let laps = laps(table, joint);
        let gap = |lap: f64| (lap - (arm[0] + other[0]) / 2.0).max(0.0);
        let planes = match hold(table, joint) {
            Hold::Fork => {
                let both = laps[0] + laps[1];
                vec![(gap(laps[0]), laps[1] / both), (gap(laps[1]), laps[0] / both)]
            }
            _ => vec![(gap(laps[0]), 1.0)],
        };
        Self { arm, other, place, planes }
    }

    /// What the pivot holds: the plane that gives way first, of what the two members stand and the modes of a plane.
    fn holds(&self, beds: [Bed; 2], yield_moment: f64, modes: &dyn Fn(&Plane) -> Mode) -> Mode {
        Mode::least(self.planes.iter().map(|(gap, share)| {
            let mode = modes(&Plane { beds, gap: *gap, yield_moment });
            Mode { load: mode.load / share, ..mode }
        }))
    }
}

/// Diameter of an arm's hole at a pivot, m: what presses on its wood is the bushing in it.
pub(super) fn presses(table: &Table<'_>, joint: JointId) -> f64 {
    let design = table.design;
    if hold(table, joint) == Hold::Axle { axle_bush(design) } else { design.running.bush }.to_m()
}

/// What a pivot holds in wood by EN 1995-1-1, a bushing taken as the dowel and the bolt alone as what bends.
fn held_by_eurocode<'a>(table: &'a Table<'_>, joint: JointId) -> Box<Held<'a>> {
    let strength = &table.design.strength;
    let held = hold(table, joint);
    let tensile = if held == Hold::Axle { strength.steel_yield } else { strength.bolt_tensile };
    let yield_moment = ec5::yield_moment(tensile.to_pa(), shaft(table, joint));
    let wood = Wood::new(table, joint);
    let embedment = |diameter| ec5::Embedment::new(strength.sort, strength.density_low.to_kg_m3(), diameter);
    let (of_arm, of_other) = (embedment(wood.arm[1]), embedment(wood.other[1]));
    let kept = table.kept();
    let mode = move |sines: [f64; 2]| {
        let bed = |[thickness, diameter]: [f64; 2], embedment: ec5::Embedment, sine: f64| Bed {
            thickness,
            diameter,
            strength: embedment.at(sine),
        };
        let arm = bed(wood.arm, of_arm, sines[wood.place]);
        let other = bed(wood.other, of_other, sines[1 - wood.place]);
        let mode = match held {
            Hold::Lap => {
                wood.holds([arm, other], yield_moment, &|plane| Mode::least(ec5::single_shear(plane)))
            }
            Hold::Fork => {
                wood.holds([other, arm], yield_moment, &|plane| Mode::least(ec5::double_shear(plane)))
            }
            Hold::Axle => Mode::least(ec5::against_steel(arm, yield_moment)),
        };
        Mode { load: mode.load * kept, ..mode }
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

/// What a pivot holds in wood by the NDS: a bushing taken as the dowel and the bolt alone as what bends; load duration
/// factor 1, dry.
///
/// Plywood has no grain of its own: it is given the lesser value, across, without the reduction for the angle.
fn held_by_nds<'a>(table: &'a Table<'_>, joint: JointId) -> Box<Held<'a>> {
    let strength = &table.design.strength;
    let plywood = strength.sort == WoodSort::Plywood;
    let held = hold(table, joint);
    let yield_bending = match held {
        Hold::Axle => strength.steel_yield.to_pa(),
        _ => (strength.bolt_yield.to_pa() + strength.bolt_tensile.to_pa()) / 2.0,
    };
    let yield_moment = nds::yield_moment(yield_bending, shaft(table, joint));
    let wood = Wood::new(table, joint);
    let gravity = table.design.arms.density.to_kg_m3() * GRAVITY_OF_DENSITY;
    let bearings = [wood.arm, wood.other].map(|[_, diameter]| nds::Bearing::new(gravity, diameter));
    Box::new(move |sines| {
        let angle = if plywood { 0.0 } else { libm::asin(sines[0].max(sines[1])) };
        let bed = |[thickness, diameter]: [f64; 2], bearing: nds::Bearing, sine: f64| Bed {
            thickness,
            diameter,
            strength: if plywood { bearing.across } else { bearing.at(sine) },
        };
        let arm = bed(wood.arm, bearings[0], sines[wood.place]);
        let other = bed(wood.other, bearings[1], sines[1 - wood.place]);
        match held {
            Hold::Lap => {
                wood.holds([arm, other], yield_moment, &|plane| Mode::least(nds::single_shear(plane, angle)))
            }
            Hold::Fork => {
                wood.holds([arm, other], yield_moment, &|plane| Mode::least(nds::double_shear(plane, angle)))
            }
            Hold::Axle => nds::against_steel(arm, angle),
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
