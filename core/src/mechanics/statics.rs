//! Equilibrium of the whole linkage: one system of equations a height, factored once, serving every load.
//!
//! Plain `f64` in SI: N, N m. Forces and moments are totals of all sides.
//!
//! A linkage of n stages has 2n arms and a top frame with three equations each and two axles with two: 6n + 7
//! equations. The unknowns are two components a joint, two wheel loads and the drive force: 6n + 7 as well. Taken
//! from the deck down the matrix is block triangular, because a stage hangs on nothing but the joints above it:
//!
//! ```text
//!   top frame, top axle     N_T, TL, TR     triangular
//!   stage n                 C_n             2 x 2: moments about the lower ends of A_n and B_n
//!                           JL, JR below    1 : forces on A_n and B_n
//!   ...
//!   stage 1                 C_1, BL, BR
//!   base axle               N_B             1
//!                           F               the Schur complement of the drive's column
//! ```
//!
//! Only the drive's column spans all blocks. Factoring therefore means: the determinants of the 2 x 2 blocks,
//! sin(2 theta_i), and one pass with the drive force at one newton, which leaves the pivot of the last equation. A
//! load then costs one pass of a few dozen operations a stage, and rounding grows no faster than the forces
//! themselves do. The pivots vanish exactly where the table has no equilibrium: arms flat or upright, screw at a
//! dead point.

use super::drive::{Action, ScrewLine};
use super::fault::Fault;
use super::linkage::Pose;
use super::names::{ArmId, Body, JointId};
use glam::DVec2;

/// The least sine of the angle between crossing arms, and the least share of the drive in the last equation.
const LEAST_PIVOT: f64 = 1e-9;

/// A force on a body and its moment about the body's origin.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Wrench {
    /// Force, N.
    pub force: DVec2,
    /// Moment about the origin of the body's frame, counter-clockwise, N m.
    pub moment: f64,
}

/// What acts on the linkage from outside, the drive apart.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Loads {
    /// On the arms, in the order A1, B1, A2, ...
    pub arms: Vec<Wrench>,
    /// On the top frame.
    pub top: Wrench,
    /// On the base wheel axle, N.
    pub base_axle: DVec2,
    /// On the top wheel axle, N.
    pub top_axle: DVec2,
}

impl Loads {
    /// No load on a linkage of `n` stages.
    pub fn none(n: usize) -> Self {
        Self { arms: vec![Wrench::default(); 2 * n], ..Self::default() }
    }

    fn body(&mut self, body: Body) -> Option<&mut Wrench> {
        match body {
            Body::Base => None,
            Body::Arm(arm) => self.arms.get_mut(arm.index()),
            Body::Top => Some(&mut self.top),
        }
    }

    /// Adds a force at a point of a body, given in the body's own axes. What acts on the base goes to the ground.
    pub fn push(&mut self, pose: &Pose, body: Body, local: DVec2, force: DVec2) {
        let moment = pose.frame(body).global(local).perp_dot(force);
        if let Some(wrench) = self.body(body) {
            wrench.force += force;
            wrench.moment += moment;
        }
    }

    /// Adds a couple on a body, counter-clockwise.
    pub fn twist(&mut self, body: Body, couple: f64) {
        if let Some(wrench) = self.body(body) {
            wrench.moment += couple;
        }
    }

    /// Adds the drive force `force` on everything the screw acts on.
    pub fn drive(&mut self, pose: &Pose, screw: &ScrewLine, force: f64) {
        match screw.action {
            Action::BaseAxle => self.base_axle.x -= force,
            Action::TopAxle => {
                self.top_axle -= force * pose.top.along;
                self.push(pose, Body::Top, pose.top_axle, force * pose.top.along);
            }
            Action::Pins([p, q]) => {
                let along = screw.sigma * force * screw.along;
                self.push(pose, p.body, p.local, -along);
                self.push(pose, q.body, q.local, along);
            }
        }
    }
}

/// Couples and drags that friction adds to a state; all zero at rest.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Rubbing {
    /// Couple on the second body of every joint, N m; the first feels the opposite.
    pub couples: Vec<f64>,
    /// Couples on the bodies at the pins P and Q of a free screw, N m.
    pub ends: [f64; 2],
    /// Force on the body at Q across the screw that balances the couples on it, N; at P the opposite.
    pub across: f64,
    /// Drag on the base wheel axle along the base rail, N.
    pub base_drag: f64,
    /// Drag on the top wheel axle along the top rail, N; the top frame feels the opposite.
    pub top_drag: f64,
    /// Rounds it took to settle.
    pub rounds: usize,
}

/// A state of equilibrium.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Forces {
    /// Drive force F, N: positive when the load drives the table down.
    pub drive: f64,
    /// Rail on base wheels, up positive, N.
    pub base_wheel: f64,
    /// Top wheels on top rail, square to the rail, up positive, N.
    pub top_wheel: f64,
    /// Force on the second body of every joint, in the order of [`JointId::index`], N.
    pub joints: Vec<DVec2>,
    /// What friction adds.
    pub rubbing: Rubbing,
}

impl Forces {
    fn none(n: usize) -> Self {
        let joints = 3 * n + 2;
        Self {
            joints: vec![DVec2::ZERO; joints],
            rubbing: Rubbing { couples: vec![0.0; joints], ..Rubbing::default() },
            ..Self::default()
        }
    }

    /// The force at a joint, on its second body, N.
    pub fn joint(&self, joint: JointId) -> DVec2 {
        let n = self.joints.len() / 3;
        self.joints.get(joint.index(n)).copied().unwrap_or(DVec2::ZERO)
    }

    /// The largest force in any joint or in the drive, N.
    pub fn largest(&self) -> f64 {
        self.joints.iter().fold(self.drive.abs(), |most, force| most.max(force.length()))
    }

    /// Whether every force is a number.
    pub fn is_finite(&self) -> bool {
        self.drive.is_finite()
            && self.base_wheel.is_finite()
            && self.top_wheel.is_finite()
            && self.joints.iter().all(|force| force.is_finite())
    }
}

/// The equations of equilibrium at one pose, factored.
#[derive(Clone, Debug)]
pub struct Equilibrium<'a> {
    pose: &'a Pose,
    screw: ScrewLine,
    /// The joint forces for a drive force of one newton and no load.
    unit_drive: Forces,
    /// What that state leaves in the last equation.
    pivot: f64,
}

impl<'a> Equilibrium<'a> {
    /// Factors the equations at a pose.
    ///
    /// # Errors
    /// Where there is no equilibrium: arms flat or upright, or the screw at a dead point.
    pub fn new(pose: &'a Pose, screw: ScrewLine) -> Result<Self, Fault> {
        for stage in 1..=pose.n {
            if pose.arm(ArmId::a(stage)).along.perp_dot(pose.arm(ArmId::b(stage)).along) < LEAST_PIVOT {
                return Err(Fault::new("height", "the arms are flat or upright: no force can hold the deck"));
            }
        }
        let mut one = Loads::none(pose.n);
        one.drive(pose, &screw, 1.0);
        let mut system = Self { pose, screw, unit_drive: Forces::none(pose.n), pivot: 1.0 };
        let mut unit_drive = Forces::none(pose.n);
        let pivot = system.descend(&one, &mut unit_drive);
        if unit_drive.is_finite() && pivot.abs() > LEAST_PIVOT * unit_drive.largest().max(1.0) {
            (system.unit_drive, system.pivot) = (unit_drive, pivot);
            Ok(system)
        } else {
            Err(Fault::new("drive", "the screw stands at a dead point: it cannot move the deck from here"))
        }
    }

    /// The pose the equations belong to.
    pub fn pose(&self) -> &'a Pose {
        self.pose
    }

    /// The screw the equations belong to.
    pub fn screw(&self) -> &ScrewLine {
        &self.screw
    }

    /// The state of equilibrium under `loads`.
    pub fn solve(&self, loads: &Loads) -> Forces {
        let mut forces = Forces::none(self.pose.n);
        self.solve_into(loads, &mut forces);
        forces
    }

    /// As [`Self::solve`], into a state of the same linkage; what friction adds is left as it is.
    pub fn solve_into(&self, loads: &Loads, forces: &mut Forces) {
        let residual = self.descend(loads, forces);
        let drive = -residual / self.pivot;
        forces.drive = drive;
        forces.base_wheel += drive * self.unit_drive.base_wheel;
        forces.top_wheel += drive * self.unit_drive.top_wheel;
        for (force, unit) in forces.joints.iter_mut().zip(&self.unit_drive.joints) {
            *force += drive * *unit;
        }
    }

    /// Goes through all blocks from the deck down, with the drive as part of the loads, and returns what is left
    /// in the last equation: the horizontal force on the base axle.
    fn descend(&self, loads: &Loads, forces: &mut Forces) -> f64 {
        let (pose, length) = (self.pose, self.pose.arm_length);
        let normal = pose.top.across();
        let top_wheel = -loads.top.moment / pose.top_axle.x;
        let mut left = -loads.top.force - top_wheel * normal;
        let mut right = top_wheel * normal - loads.top_axle;
        forces.top_wheel = top_wheel;
        forces.joints[3 * pose.n] = left;
        forces.joints[3 * pose.n + 1] = right;
        for stage in (0..pose.n).rev() {
            let (a, b) = (pose.arms[2 * stage].along, pose.arms[2 * stage + 1].along);
            let (load_a, load_b) = (&loads.arms[2 * stage], &loads.arms[2 * stage + 1]);
            let to_centre = pose.centre[stage] * length;
            let across_a = (load_a.moment - length * a.perp_dot(right)) / to_centre;
            let across_b = (length * b.perp_dot(left) - load_b.moment) / to_centre;
            let centre = (across_a * b - across_b * a) / a.perp_dot(b);
            let below = (centre + right - load_a.force, left - centre - load_b.force);
            (left, right) = below;
            forces.joints[3 * stage] = left;
            forces.joints[3 * stage + 1] = right;
            forces.joints[3 * stage + 2] = centre;
        }
        forces.base_wheel = right.y - loads.base_axle.y;
        loads.base_axle.x - right.x
    }
}
