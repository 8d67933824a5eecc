//! The ends of the arms: what the wood past a pin holds, how far a pin stays from ends and edges, the glue between layers.
//!
//! Plain `f64` in SI.
use super::check::{Check, Group, Lever, Member, Rule, Use, Weight, worst};
use super::dowel::ec5::Distances;
use super::level::Loaded;
use super::pin::presses;
use super::table::{Table, add};
use super::timber::Rectangle;
use crate::catalogue::{Source, Standing};
use crate::mechanics::{ArmId, Body, JointId};
use crate::quantity::{Amount, Phrase};
use glam::DVec2;

/// Shear that a glue line between crossed veneers carries before the veneer rolls, Pa. Assumed, cautious: plywood 1 to 2 MPa.
const ROLLING: f64 = 1e6;

const PLUG: Source =
    Source::new("Plug of wood sheared out past the pin, along two planes", Standing::Practice);
const TENSION: Source = Source::new(
    "Tension beside the pin's hole; tension as a part of bending strength by EN 338, C24",
    Standing::Practice,
);
const TABLE_8_4: Source = Source::new(
    "EN 1995-1-1 table 8.4, as in a published lecture's worked examples; made for buildings, shop tables rarely keep it",
    Standing::SecondHand,
);
const GLUE: Source = Source::new(
    "All but one layer's share of the force crosses one glue line over the arm's width and as far past its depth; 1 MPa",
    Standing::Assumed,
);

/// Tension along the grain over bending strength: 14.5 to 24 MPa for C24.
const TENSION_OF_BENDING: f64 = 14.5 / 24.0;

/// An arm on a pivot.
#[derive(Clone, Copy)]
struct Seat {
    joint: JointId,
    arm: ArmId,
    /// -1 where the arm is the joint's first body, and so feels the opposite of its force.
    sign: f64,
    /// Whether the pivot is at the arm's upper end; none at its middle.
    upper: Option<bool>,
}

/// Every arm on every of its pivots.
fn seats(table: &Table<'_>) -> Vec<Seat> {
    let n = table.stages();
    let seat = move |joint: JointId, body: Body, sign: f64| {
        let Body::Arm(arm) = body else { return None };
        let upper = match joint {
            JointId::C(_) => None,
            JointId::Bl | JointId::Br => Some(false),
            JointId::Tl | JointId::Tr => Some(true),
            JointId::Jl(level) | JointId::Jr(level) => Some(arm.stage == level),
        };
        Some(Seat { joint, arm, sign, upper })
    };
    let both = |joint: JointId| {
        let [first, second] = joint.bodies(n);
        [seat(joint, first, -1.0), seat(joint, second, 1.0)]
    };
    table.joints().flat_map(both).flatten().collect()
}

impl Seat {
    /// The pin's force on the arm in every state, along the arm towards this end and across it, N.
    fn forces(self, at: &Loaded<'_>) -> [DVec2; 3] {
        let frame = at.level.pose.arm(self.arm);
        let outwards = if self.upper == Some(false) { -1.0 } else { 1.0 };
        at.forces().map(|forces| {
            let local = frame.local(self.sign * forces.joint(self.joint));
            DVec2::new(outwards * local.x, local.y)
        })
    }

    /// From the pin to the end it stands near, m.
    fn end(self, table: &Table<'_>) -> f64 {
        let arms = &table.design.arms;
        if self.upper == Some(true) && self.arm.stage < table.stages() { arms.long_end } else { arms.end }
            .to_m()
    }

    /// The greatest force towards the end in any state, N; zero where the pin presses the other way.
    fn pull(self, at: &Loaded<'_>) -> f64 {
        self.forces(at).into_iter().fold(0.0, |most, force| most.max(force.x))
    }
}

pub(super) fn checks(table: &Table<'_>, list: &mut Vec<Check>) {
    let all = seats(table);
    let ends: Vec<Seat> = all.iter().copied().filter(|seat| seat.upper.is_some()).collect();
    add(
        list,
        [
            plug(table, &ends),
            tension(table, &ends),
            glue(table, &ends),
            end_distance(table, &ends),
            edge_distance(table, &all),
        ],
    );
}

fn plug(table: &Table<'_>, ends: &[Seat]) -> Option<Check> {
    let (thick, strength) = (table.arm_thickness(), table.shear());
    let area = |seat: Seat| 2.0 * thick * (seat.end(table) - presses(table, seat.joint) / 2.0).max(0.0);
    let seat_of = |member: Member| ends.iter().copied().find(|seat| Member::Joint(seat.joint) == member);
    let rule = Rule {
        id: "arm-plug",
        group: Group::Arms,
        title: "Wood sheared out past a pin",
        weight: Weight::Limit,
        formula: "τ = R / 2 t (e − d/2)",
        source: PLUG,
        unit: Amount::Thrust,
        levers: &[Lever::ArmEnds, Lever::ArmLayer],
    };
    rule.check(
        table.levels,
        |at| {
            worst(ends.iter().map(|seat| {
                Use::new(Member::Joint(seat.joint), seat.pull(at) * table.share, strength * area(*seat))
            }))
        },
        |_, most| {
            let sheared = seat_of(most.member).map_or(0.0, area);
            Phrase::new("R = ")
                .with(Amount::Thrust(most.demand))
                .and(", held by ")
                .with(Amount::Stress(strength))
                .and(" × ")
                .with(Amount::Section(sheared))
                .and(" = ")
                .with(Amount::Thrust(most.capacity))
        },
    )
}

fn tension(table: &Table<'_>, ends: &[Seat]) -> Option<Check> {
    let strength = TENSION_OF_BENDING * table.bending();
    let area = |seat: &Seat| Rectangle { hole: presses(table, seat.joint), ..table.gross() }.area();
    let rule = Rule {
        id: "arm-tension",
        group: Group::Arms,
        title: "Tension beside an end pin",
        weight: Weight::Limit,
        formula: "σ = R / t (w − d)",
        source: TENSION,
        unit: Amount::Stress,
        levers: &[Lever::ArmWidth, Lever::ArmLayer],
    };
    rule.check(
        table.levels,
        |at| {
            worst(ends.iter().map(|seat| {
                Use::new(Member::Joint(seat.joint), seat.pull(at) * table.share / area(seat), strength)
            }))
        },
        |_, most| {
            let area = ends.iter().find(|seat| Member::Joint(seat.joint) == most.member).map_or(0.0, area);
            Phrase::new("σ = ")
                .with(Amount::Thrust(most.demand * area))
                .and(" / ")
                .with(Amount::Section(area))
                .and(" = ")
                .with(Amount::Stress(most.demand))
        },
    )
}

fn glue(table: &Table<'_>, ends: &[Seat]) -> Option<Check> {
    let layers = table.design.arms.layers.get() as f64;
    if layers < 2.0 {
        return None;
    }
    let width = table.design.arms.width.to_m();
    let crossing = 1.0 - 1.0 / layers;
    let area = |seat: &Seat| width * (seat.end(table) + width);
    let rule = Rule {
        id: "arm-glue",
        group: Group::Arms,
        title: "Glue between the layers",
        weight: Weight::Limit,
        formula: "τ = R (1 − 1/m) / w (e + w)",
        source: GLUE,
        unit: Amount::Stress,
        levers: &[Lever::ArmWidth, Lever::ArmEnds],
    };
    rule.check(
        table.levels,
        |at| {
            worst(ends.iter().map(|seat| {
                let force = at.joint_force(seat.joint) * table.share * crossing;
                Use::new(Member::Joint(seat.joint), force / area(seat), ROLLING * table.kept())
            }))
        },
        |_, most| {
            let area = ends.iter().find(|seat| Member::Joint(seat.joint) == most.member).map_or(0.0, area);
            Phrase::new("τ = ")
                .with(Amount::Thrust(most.demand * area / crossing))
                .and(" × ")
                .with(Amount::Number(crossing))
                .and(" / ")
                .with(Amount::Section(area))
                .and(" = ")
                .with(Amount::Stress(most.demand))
        },
    )
}

/// The distances asked for at a pivot, the farthest of the three states; for the diameter that presses on the wood, as in `pin-wood`.
fn needed(table: &Table<'_>, seat: Seat, at: &Loaded<'_>) -> Distances {
    let diameter = presses(table, seat.joint);
    let farther = |one: Distances, other: Distances| Distances {
        end: one.end.max(other.end),
        edge: one.edge.max(other.edge),
    };
    let none = Distances { end: 0.0, edge: 0.0 };
    seat.forces(at).map(|force| Distances::needed(diameter, force.x, force.y)).into_iter().fold(none, farther)
}

fn against(asked: f64, given: f64) -> Phrase {
    Phrase::new("needed ").with(Amount::Size(asked)).and(", given ").with(Amount::Size(given))
}

fn end_distance(table: &Table<'_>, ends: &[Seat]) -> Option<Check> {
    let rule = Rule {
        id: "arm-end-distance",
        group: Group::Arms,
        title: "Pin to the end of the arm",
        weight: Weight::Advice,
        formula: "loaded end max(7 d, 80 mm), unloaded max((1 + 6 sin α) d, 4 d); d the bushing or axle in the wood",
        source: TABLE_8_4,
        unit: Amount::Size,
        levers: &[Lever::ArmEnds],
    };
    rule.check(
        table.levels,
        |at| {
            worst(ends.iter().map(|seat| {
                Use::new(Member::Joint(seat.joint), needed(table, *seat, at).end, seat.end(table))
            }))
        },
        |_, most| against(most.demand, most.capacity),
    )
}

fn edge_distance(table: &Table<'_>, all: &[Seat]) -> Option<Check> {
    let given = table.design.arms.width.to_m() / 2.0;
    let rule = Rule {
        id: "arm-edge-distance",
        group: Group::Arms,
        title: "Pin to the edge of the arm",
        weight: Weight::Advice,
        formula: "loaded edge max((2 + 2 sin α) d, 3 d), unloaded 3 d; d the bushing or axle in the wood",
        source: TABLE_8_4,
        unit: Amount::Size,
        levers: &[Lever::ArmWidth],
    };
    rule.check(
        table.levels,
        |at| {
            worst(
                all.iter()
                    .map(|seat| Use::new(Member::Joint(seat.joint), needed(table, *seat, at).edge, given)),
            )
        },
        |_, most| against(most.demand, most.capacity),
    )
}
