//! Where every part goes under the live load: the bent shape, for drawing it larger than life.
//!
//! Plain `f64` in SI: displacements in m, turns in rad, small and exact within linear theory. The linkage is put
//! together from the base up out of the yielded parts, the base axle held for the moment; then the whole is moved
//! along its one free motion until the screw, shortened by its force, fits again. By virtual work the displacements
//! of the deck found here are those of the unit-load method.

use super::drive::Action;
use super::flex::Yielded;
use super::linkage::{Frame, Pose};
use super::names::{ArmId, Body, JointId};
use super::section::{Bend, ElasticLine};
use glam::DVec2;

/// A body that has moved as a whole and bent in itself.
#[derive(Clone, Debug, PartialEq)]
struct Moved {
    frame: Frame,
    /// Displacement of the origin, m.
    shift: DVec2,
    turn: f64,
    line: Option<ElasticLine>,
}

impl Moved {
    fn new(frame: Frame, line: Option<ElasticLine>) -> Self {
        Self { frame, shift: DVec2::ZERO, turn: 0.0, line }
    }

    /// Displacement by bending alone of a point in the body's own axes.
    fn bend(&self, local: DVec2) -> DVec2 {
        let Bend { along, across, turn } =
            self.line.as_ref().map_or_else(Bend::default, |line| line.at(local.x));
        self.frame.global(DVec2::new(along - local.y * turn, across))
    }

    fn at(&self, local: DVec2) -> DVec2 {
        self.shift + self.turn * self.frame.global(local).perp() + self.bend(local)
    }

    /// Moves the body along the linkage's free motion.
    fn advance(&mut self, theta: f64) {
        self.shift += theta * self.frame.origin_rate;
        self.turn += theta * self.frame.spin;
    }
}

/// The base under its load: each caster settled, the rails bent between them.
#[derive(Clone, Debug, Default, PartialEq)]
struct Ground {
    /// Rise at the base pivot and slope of the straight line through the settled casters.
    chord: (f64, f64),
    line: Option<ElasticLine>,
}

impl Ground {
    fn at(&self, local: DVec2) -> DVec2 {
        let bend = self.line.as_ref().map_or_else(Bend::default, |line| line.at(local.x));
        let (rise, slope) = self.chord;
        DVec2::new(-local.y * (slope + bend.turn), rise + slope * local.x + bend.across)
    }
}

/// The displacements of all parts under the live load.
#[derive(Clone, Debug, PartialEq)]
pub struct Bent {
    arm_length: f64,
    arms: Vec<Moved>,
    top: Moved,
    ground: Ground,
    joints: Vec<DVec2>,
}

impl Bent {
    /// Displacement of a point of an arm's axis at the fraction `f` from its lower end, m.
    pub fn arm(&self, arm: ArmId, f: f64) -> DVec2 {
        let at = DVec2::new(f * self.arm_length, 0.0);
        self.arms.get(arm.index()).map_or(DVec2::ZERO, |arm| arm.at(at))
    }

    /// Displacement of a point of the top frame given in the frame's own axes, m.
    pub fn deck(&self, local: DVec2) -> DVec2 {
        self.top.at(local)
    }

    /// Turn of the line from top pivot to top wheel, counter-clockwise, rad.
    pub fn tilt(&self) -> f64 {
        self.top.turn
    }

    /// Displacement of a point of the base, m.
    pub fn base(&self, local: DVec2) -> DVec2 {
        self.ground.at(local)
    }

    /// Displacement of a joint, midway between its two bodies, m.
    pub fn joint(&self, joint: JointId) -> DVec2 {
        self.joints.get(joint.index(self.arms.len() / 2)).copied().unwrap_or(DVec2::ZERO)
    }

    /// Puts the yielded parts together.
    pub(super) fn new(yielded: &Yielded) -> Self {
        let pose = yielded.system.pose();
        let mut lines = yielded.arms.iter().cloned();
        let mut bent = Self {
            arm_length: pose.arm_length,
            arms: pose.arms.iter().map(|frame| Moved::new(*frame, lines.next())).collect(),
            top: Moved::new(pose.top, yielded.top.clone()),
            ground: ground(yielded),
            joints: Vec::new(),
        };
        let axles = bent.assemble(pose, yielded);
        let theta = bent.fit_screw(pose, yielded, axles);
        for part in bent.arms.iter_mut().chain([&mut bent.top]) {
            part.advance(theta);
        }
        bent.joints = bent.place_joints(pose, axles, theta);
        bent
    }

    /// Stacks stage on stage; returns the displacements of base and top axle. The base axle does not move along its
    /// rail.
    fn assemble(&mut self, pose: &Pose, yielded: &Yielded) -> [DVec2; 2] {
        let (live, k) = (&yielded.live, &yielded.flexibility);
        // How far the second body of a joint lags behind its first.
        let slip = |index: usize| -k.joints[index] * live.joints[index];
        let along_arm = |f: f64| DVec2::new(f * pose.arm_length, 0.0);
        let rail = self.ground.at(DVec2::new(pose.carriage_x, 0.0)).y;
        let base_axle = DVec2::new(0.0, rail - k.base_wheel * live.base_wheel);
        let (mut left, mut right) = (self.ground.at(DVec2::ZERO), base_axle);
        for stage in 1..=pose.n {
            let (a, b) = (ArmId::a(stage).index(), ArmId::b(stage).index());
            self.arms[a].shift = left + slip(3 * stage - 3);
            self.arms[b].shift = right + slip(3 * stage - 2);
            let centre = along_arm(pose.centre_of(stage));
            let gap = slip(3 * stage - 1) + self.arms[a].at(centre) - self.arms[b].at(centre);
            let to = [a, b].map(|arm| self.arms[arm].frame.global(centre));
            self.arms[a].turn = gap.dot(to[1]) / to[1].perp_dot(to[0]);
            self.arms[b].turn = gap.dot(to[0]) / to[1].perp_dot(to[0]);
            (left, right) = (self.arms[b].at(along_arm(1.0)), self.arms[a].at(along_arm(1.0)));
        }
        self.top.shift = left + slip(3 * pose.n);
        let top_axle = right + slip(3 * pose.n + 1);
        let lift = (top_axle - self.top.shift).dot(pose.top.across());
        self.top.turn = (lift - k.top_wheel * live.top_wheel) / pose.top_axle.x;
        [base_axle, top_axle]
    }

    /// How far the free motion must go, as a change of theta, for the squeezed screw to fit.
    fn fit_screw(&self, pose: &Pose, yielded: &Yielded, [base_axle, top_axle]: [DVec2; 2]) -> f64 {
        let screw = yielded.system.screw();
        let travel = match screw.action {
            Action::BaseAxle => -base_axle.x,
            Action::TopAxle => (self.top.at(pose.top_axle) - top_axle).dot(pose.top.along),
            Action::Pins(ends) => {
                let [p, q] = ends.map(|end| match end.body {
                    Body::Base => self.ground.at(end.local),
                    Body::Arm(arm) => self.arms[arm.index()].at(end.local),
                    Body::Top => self.top.at(end.local),
                });
                screw.sigma * (q - p).dot(screw.along)
            }
        };
        (-yielded.live.drive * yielded.screw - travel) / screw.travel_rate
    }

    fn place_joints(&self, pose: &Pose, [base_axle, top_axle]: [DVec2; 2], theta: f64) -> Vec<DVec2> {
        let n = pose.n;
        let base_axle = base_axle + theta * pose.joint_rate(JointId::Br);
        let top_axle = top_axle + theta * pose.joint_rate(JointId::Tr);
        let body = |body: Body, joint: JointId| match (body, joint) {
            (Body::Base, JointId::Br) => base_axle,
            (Body::Top, JointId::Tr) => top_axle,
            (Body::Base, _) => self.ground.at(DVec2::ZERO),
            (Body::Top, _) => self.top.at(DVec2::ZERO),
            (Body::Arm(arm), _) => self.arm(arm, place(arm, joint, pose)),
        };
        JointId::all(n)
            .map(|joint| {
                let [first, second] = joint.bodies(n).map(|at| body(at, joint));
                0.5 * (first + second)
            })
            .collect()
    }
}

/// The fraction at which an arm carries one of its three joints.
fn place(arm: ArmId, joint: JointId, pose: &Pose) -> f64 {
    match joint {
        JointId::C(stage) => pose.centre_of(stage),
        JointId::Bl | JointId::Br => 0.0,
        JointId::Tl | JointId::Tr => 1.0,
        JointId::Jl(level) | JointId::Jr(level) => f64::from(u8::from(arm.stage == level)),
    }
}

fn ground(yielded: &Yielded) -> Ground {
    yielded.base.as_ref().map_or_else(Ground::default, |base| {
        let ([left, right], [low, high]) = (base.beam.supports, base.settlement);
        let slope = (high - low) / (right - left);
        Ground { chord: (low - slope * left, slope), line: base.line.clone() }
    })
}
