//! The arms as bars: what acts on each of them, and where.
//!
//! Plain `f64` in SI; totals of all sides. An arm's own axes: along it from the lower to the upper end, and across.

use super::drive::{Action, ScrewLine};
use super::linkage::Pose;
use super::loads::LoadCases;
use super::mechanism::Mechanism;
use super::names::{ArmId, Body, Side};
use super::section::{Diagram, PointLoad, Softness, Spread};
use super::statics::Forces;
use crate::order::order;
use glam::DVec2;

/// What acts at a place of an arm.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Acting {
    /// The joint at this place of the list; whether the arm is its second body.
    Joint(usize, bool),
    /// End P (0) or Q (1) of the screw, this far across the arm.
    Screw(usize, f64),
    /// A weight, N.
    Weight(f64),
}

/// The arms of a mechanism with everything that can act on them, in order of place.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Arms {
    stations: Vec<Vec<(f64, Acting)>>,
    /// Weight of all sides of one arm a metre, N/m.
    spread: f64,
    /// How all sides of an arm together yield; none when rigid.
    pub(super) softness: Option<Softness>,
}

impl Arms {
    pub(super) fn new(m: &Mechanism, action: Action, cases: &LoadCases) -> Self {
        let mut stations: Vec<Vec<(f64, Acting)>> = ArmId::all(m.n)
            .map(|arm| {
                let (own, other) = if arm.side == Side::A { (0, 1) } else { (1, 0) };
                let below = 3 * (arm.stage - 1);
                let centre = m.c.of(arm.stage).unwrap_or(0.5) * m.length;
                vec![
                    (0.0, Acting::Joint(below + own, true)),
                    (centre, Acting::Joint(below + 2, arm.side == Side::B)),
                    (m.length, Acting::Joint(below + 3 + other, false)),
                ]
            })
            .collect();
        let mut add = |arm: ArmId, s: f64, acting: Acting| {
            if let Some(list) = stations.get_mut(arm.index()) {
                list.push((s, acting));
            }
        };
        for lump in &cases.lumps {
            add(lump.arm, lump.s, Acting::Weight(lump.weight));
        }
        if let Action::Pins(ends) = action {
            for (which, end) in ends.into_iter().enumerate() {
                if let Body::Arm(arm) = end.body {
                    add(arm, end.local.x, Acting::Screw(which, end.local.y));
                }
            }
        }
        for list in &mut stations {
            order(list, |a, b| a.0.total_cmp(&b.0));
        }
        Self { stations, spread: cases.arm_weight / m.length, softness: softness(m) }
    }

    /// Everything that acts on each arm in a state, weights apart.
    pub(super) fn loads(&self, pose: &Pose, screw: &ScrewLine, forces: &Forces) -> Vec<Vec<PointLoad>> {
        let at = |frame, list: &Vec<_>| list.iter().map(|at| point_load(at, frame, screw, forces)).collect();
        pose.arms.iter().zip(&self.stations).map(|(frame, list)| at(frame, list)).collect()
    }

    /// Section forces of each arm in a state, its weights included.
    pub(super) fn diagrams(&self, pose: &Pose, screw: &ScrewLine, forces: &Forces) -> Vec<Diagram> {
        let mut loads = self.loads(pose, screw, forces);
        let mut diagrams = Vec::with_capacity(loads.len());
        for ((loads, list), frame) in loads.iter_mut().zip(&self.stations).zip(&pose.arms) {
            let down = frame.local(DVec2::NEG_Y);
            for (load, (_, acting)) in loads.iter_mut().zip(list) {
                if let Acting::Weight(weight) = acting {
                    load.along = weight * down.x;
                    load.across = weight * down.y;
                }
            }
            diagrams.push(Diagram::new(
                loads,
                Spread { along: self.spread * down.x, across: self.spread * down.y },
            ));
        }
        diagrams
    }
}

/// What acts at one place of an arm with the axes `frame`, weights apart.
fn point_load(
    (s, acting): &(f64, Acting),
    frame: &super::linkage::Frame,
    screw: &ScrewLine,
    forces: &Forces,
) -> PointLoad {
    match *acting {
        Acting::Joint(joint, second) => {
            let sign = if second { 1.0 } else { -1.0 };
            let force = frame.local(sign * forces.joints[joint]);
            let couple = sign * forces.rubbing.couples[joint];
            PointLoad { s: *s, along: force.x, across: force.y, couple }
        }
        Acting::Screw(end, offset) => {
            let force = frame.local(screw.end_force(end, forces));
            let couple = forces.rubbing.ends[end] - offset * force.x;
            PointLoad { s: *s, along: force.x, across: force.y, couple }
        }
        Acting::Weight(_) => PointLoad { s: *s, ..PointLoad::default() },
    }
}

/// How all sides of an arm yield, gross section; rigid without a modulus of elasticity.
fn softness(m: &Mechanism) -> Option<Softness> {
    let e = m.arm.e?;
    let area = m.sides * m.arm.w * m.arm.t;
    let inertia = area * m.arm.w * m.arm.w / 12.0;
    let shear = if m.arm.g > 0.0 { 1.0 / (m.arm.kappa * m.arm.g * area) } else { 0.0 };
    Some(Softness { axial: 1.0 / (e * area), bending: 1.0 / (e * inertia), shear })
}
