//! The loads of a table: dead, live, and the unit cases of the deflection.
//!
//! Plain `f64` in SI: N, N m. Weights are totals of all sides.

use super::linkage::Pose;
use super::mechanism::Mechanism;
use super::names::{ArmId, Body};
use super::statics::Loads;
use glam::DVec2;

/// Standard gravity, m/s2 (CGPM 1901, resolution 2).
pub const GRAVITY: f64 = 9.80665;

/// A weight that rides on an arm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct ArmWeight {
    pub(super) arm: ArmId,
    /// Distance from the lower end, m.
    pub(super) s: f64,
    /// Weight of all sides, N.
    pub(super) weight: f64,
}

/// The loads of a mechanism, taken from it once.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct LoadCases {
    /// Weight of all sides of one arm, spread evenly over its length, N.
    pub(super) arm_weight: f64,
    /// Weights at points of the arms.
    pub(super) lumps: Vec<ArmWeight>,
    /// Resultant of each arm's weights and its moment about the lower end for a level arm, N and N m.
    totals: Vec<(f64, f64)>,
    top: f64,
    top_cg: DVec2,
    base_carriage: f64,
    top_carriage: f64,
    pub(super) weight: f64,
    pub(super) push: f64,
    /// Where the live weight acts in the top frame, m.
    pub(super) at: DVec2,
    /// Where the push acts in the top frame, m.
    pub(super) push_at: DVec2,
}

impl LoadCases {
    pub(super) fn new(m: &Mechanism) -> Self {
        let arm_weight = m.sides * m.arm.mass * GRAVITY;
        let lumps: Vec<ArmWeight> = m
            .lumps
            .iter()
            .map(|lump| ArmWeight { arm: lump.arm, s: lump.f * m.length, weight: lump.mass * GRAVITY })
            .collect();
        let mut totals = vec![(arm_weight, arm_weight * m.length / 2.0); 2 * m.n];
        for lump in &lumps {
            if let Some((weight, moment)) = totals.get_mut(lump.arm.index()) {
                *weight += lump.weight;
                *moment += lump.weight * lump.s;
            }
        }
        Self {
            arm_weight,
            lumps,
            totals,
            top: m.top_mass * GRAVITY,
            top_cg: DVec2::new(m.top_cg_x, 0.0),
            base_carriage: m.base_carriage_mass * GRAVITY,
            top_carriage: m.top_carriage_mass * GRAVITY,
            weight: m.load.weight,
            push: m.load.push,
            at: DVec2::new(m.load.xw, m.load.yw.unwrap_or(m.h_deck)),
            push_at: DVec2::new(m.load.xw, m.load.yp.unwrap_or(m.h_deck)),
        }
    }

    /// The weight of everything that moves.
    pub(super) fn dead(&self, pose: &Pose) -> Loads {
        let mut loads = Loads::none(pose.n);
        for ((wrench, frame), (weight, moment)) in loads.arms.iter_mut().zip(&pose.arms).zip(&self.totals) {
            wrench.force.y = -weight;
            wrench.moment = -moment * frame.along.x;
        }
        loads.push(pose, Body::Top, self.top_cg, DVec2::new(0.0, -self.top));
        loads.base_axle.y = -self.base_carriage;
        loads.top_axle.y = -self.top_carriage;
        loads
    }

    /// Adds weight and push of the live load.
    pub(super) fn add_live(&self, pose: &Pose, loads: &mut Loads) {
        loads.push(pose, Body::Top, self.at, DVec2::new(0.0, -self.weight));
        loads.push(pose, Body::Top, self.push_at, DVec2::new(self.push, 0.0));
    }

    /// Weight and moment about the base pivot of everything that moves and of the live load, push included, as the
    /// floor feels them: N down, N m clockwise. The push acts at its height above the floor, `h_base` included.
    pub(super) fn on_floor(&self, pose: &Pose, h_base: f64) -> (f64, f64) {
        let (mut weight, mut moment) = (0.0, 0.0);
        let mut add = |w: f64, x: f64| {
            weight += w;
            moment += w * x;
        };
        for (frame, (weight, lever)) in pose.arms.iter().zip(&self.totals) {
            add(*weight, frame.origin.x);
            add(1.0, lever * frame.along.x);
            add(-1.0, 0.0);
        }
        add(self.top, pose.top.point(self.top_cg).x);
        add(self.base_carriage, pose.carriage_x);
        add(self.top_carriage, pose.top.point(pose.top_axle).x);
        add(self.weight, pose.top.point(self.at).x);
        (weight, moment + self.push * (pose.top.point(self.push_at).y + h_base))
    }
}

/// The three displacements of the deck that are reported, each with the load of one unit that finds it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnitCase {
    /// Down at the load point: one newton down there.
    Drop,
    /// Counter-clockwise turn of the top frame: a couple of one newton metre on it.
    Tilt,
    /// To the right at the top pivot: one newton to the right there.
    Drift,
}

impl UnitCase {
    /// All three.
    pub const ALL: [Self; 3] = [Self::Drop, Self::Tilt, Self::Drift];

    /// The forces on the top frame: where, in its own axes, and how much, in the plane's.
    pub(super) fn forces(self, cases: &LoadCases, pose: &Pose) -> Vec<(DVec2, DVec2)> {
        match self {
            Self::Drop => vec![(cases.at, DVec2::NEG_Y)],
            Self::Tilt => {
                let pair = pose.top.across() / pose.top_axle.x;
                vec![(DVec2::ZERO, -pair), (pose.top_axle, pair)]
            }
            Self::Drift => vec![(DVec2::ZERO, DVec2::X)],
        }
    }
}
