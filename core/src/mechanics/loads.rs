//! The loads of a table: dead, live, and the unit cases of the deflection.
//!
//! Plain `f64` in SI: N, N m. Weights are totals of all sides.

use super::body::Freed;
use super::linkage::Pose;
use super::mechanism::Mechanism;
use super::names::{ArmId, Body, JointId};
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
    base: (f64, f64),
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
            base: (m.base_mass * GRAVITY, m.base_cg_x),
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

    /// Weight and push of the live load on the top frame.
    pub(super) fn live(&self) -> [DeckForce; 2] {
        [
            DeckForce { at: self.at, force: DVec2::new(0.0, -self.weight) },
            DeckForce { at: self.push_at, force: DVec2::new(self.push, 0.0) },
        ]
    }

    /// The own weight of a part with all that rides on it, N, and where it acts, m from the base pivot.
    pub(super) fn own_weight(&self, part: Freed, pose: &Pose) -> (DVec2, f64) {
        match part {
            Freed::Arm(arm) => {
                let (weight, moment) = self.totals.get(arm.index()).copied().unwrap_or_default();
                let s = if weight > 0.0 { moment / weight } else { 0.0 };
                (pose.arm(arm).point(DVec2::new(s, 0.0)), weight)
            }
            Freed::Deck => (pose.top.point(self.top_cg), self.top),
            Freed::BaseCarriage => (pose.base_axle(), self.base_carriage),
            Freed::DeckCarriage => (pose.joint(JointId::Tr), self.top_carriage),
            Freed::Base => (DVec2::new(self.base.1, 0.0), self.base.0),
        }
    }

    /// What presses on the deck rails: the deck's own weight at its middle, the live load and its push.
    pub(super) fn on_rails(&self) -> [DeckForce; 3] {
        let [weight, push] = self.live();
        [DeckForce { at: self.top_cg, force: DVec2::new(0.0, -self.top) }, weight, push]
    }

    /// Weight of everything, base and live load included, and the moment of weights and push about the floor beneath
    /// the base pivot: N down, N m clockwise. The push acts at its height above the floor, `h_base` included.
    pub(super) fn on_floor(&self, pose: &Pose, h_base: f64) -> (f64, f64) {
        let points = [
            self.base,
            (self.top, pose.top.point(self.top_cg).x),
            (self.base_carriage, pose.carriage_x),
            (self.top_carriage, pose.top.point(pose.top_axle).x),
            (self.weight, pose.top.point(self.at).x),
        ];
        let (mut weight, mut moment) = (0.0, self.push * (pose.top.point(self.push_at).y + h_base));
        for (w, x) in points {
            weight += w;
            moment += w * x;
        }
        for (frame, (w, lever)) in pose.arms.iter().zip(&self.totals) {
            weight += w;
            moment += w * frame.origin.x + lever * frame.along.x;
        }
        (weight, moment)
    }
}

/// A force on the top frame.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct DeckForce {
    /// Where, in the top frame's own axes, m.
    pub(super) at: DVec2,
    /// How much, in the plane's axes, N.
    pub(super) force: DVec2,
}

impl Loads {
    /// Adds forces on the top frame.
    pub(super) fn on_deck(&mut self, pose: &Pose, forces: &[DeckForce]) {
        for force in forces {
            self.push(pose, Body::Top, force.at, force.force);
        }
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

    /// The forces on the top frame.
    pub(super) fn forces(self, cases: &LoadCases, pose: &Pose) -> [DeckForce; 2] {
        match self {
            Self::Drop => [DeckForce { at: cases.at, force: DVec2::NEG_Y }, DeckForce::default()],
            Self::Tilt => {
                let pair = pose.top.across() / pose.top_axle.x;
                [DeckForce { at: DVec2::ZERO, force: -pair }, DeckForce { at: pose.top_axle, force: pair }]
            }
            Self::Drift => [DeckForce { at: DVec2::ZERO, force: DVec2::X }, DeckForce::default()],
        }
    }
}
