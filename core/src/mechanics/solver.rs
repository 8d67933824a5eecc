//! The front door: a mechanism goes in, poses and states come out.
//!
//! Plain `f64` in SI.

use super::arms::Arms;
use super::beam::Beam;
use super::bent::Bent;
use super::body::{self, FreeBody, Freed};
use super::check::check;
use super::drive::{Action, ScrewLine};
use super::fault::Fault;
use super::flex::{Deflection, Flexibility, Yielded, base_loads, top_loads};
use super::friction::{Direction, Resistance};
use super::limits::Limits;
use super::linkage::{Linkage, Pose};
use super::loads::LoadCases;
use super::mechanism::Mechanism;
use super::play::Slack;
use super::section::{Diagram, Extremes, Softness};
use super::statics::{Equilibrium, Forces, Loads};

/// How much of a state is wanted; less is quicker.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Detail {
    /// The forces while raising and lowering, and the torques.
    pub motion: bool,
    /// The extremes of the section forces in the arms at rest.
    pub sections: bool,
    /// How far the deck gives way, and its play.
    pub deflection: bool,
    /// The bent shape.
    pub shape: bool,
}

impl Detail {
    /// Forces at rest only.
    pub const FORCES: Self = Self { motion: false, sections: false, deflection: false, shape: false };
    /// Everything.
    pub const ALL: Self = Self { motion: true, sections: true, deflection: true, shape: true };
}

/// Bearings that would lift off under the state at rest.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Uplift {
    /// The base wheels: they need a captured rail.
    pub base_wheel: bool,
    /// The top wheels: they need a captured rail.
    pub top_wheel: bool,
    /// The base pivot: its bracket must hold down.
    pub base_pivot: bool,
    /// The top pivot: its bracket must hold down.
    pub top_pivot: bool,
}

/// The table in motion.
#[derive(Clone, Debug, PartialEq)]
pub struct Motion {
    /// Forces while the deck rises.
    pub raise: Forces,
    /// Forces while the deck sinks.
    pub lower: Forces,
    /// Torques; none without a screw.
    pub torque: Option<Torque>,
}

/// What the crank feels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Torque {
    /// To raise, N m.
    pub raise: f64,
    /// To lower, N m; negative where the table runs down and must be held back.
    pub lower: f64,
    /// Whether the screw by itself never runs down.
    pub self_locking: bool,
    /// Force on the crank to raise, N; none without a crank radius.
    pub crank_raise: Option<f64>,
    /// Force on the crank to lower, N; none without a crank radius.
    pub crank_lower: Option<f64>,
    /// Share of the work at the crank that raises the load; none where no torque is needed.
    pub efficiency: Option<f64>,
}

/// Everything about one height.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// Length of the screw, m.
    pub screw_length: f64,
    /// Rise of the deck a unit of screw travel, dH/ds.
    pub advantage: f64,
    /// +1 where the screw grows as the table rises, so that the load pushes it; -1 where it shrinks.
    pub sigma: f64,
    /// Force along the screw at rest, compression positive, N.
    pub screw_force: f64,
    /// Stiffness along the screw, N/m; none where nothing yields.
    pub drive_stiffness: Option<f64>,
    /// Forces at rest, without friction.
    pub rest: Forces,
    /// Bearings that would lift off at rest.
    pub uplift: Uplift,
    /// Reactions of the left and right caster line, N; negative where the table tips over.
    pub casters: Option<[f64; 2]>,
    /// The table in motion, where asked for.
    pub motion: Option<Motion>,
    /// Extremes of the section forces at rest, an arm each in the order A1, B1, A2, ..., where asked for.
    pub sections: Option<Vec<Extremes>>,
    /// How far the deck gives way, where asked for.
    pub deflection: Option<Deflection>,
    /// The bent shape under the live load, where asked for.
    pub shape: Option<Bent>,
}

/// A mechanism made ready to be asked.
#[derive(Clone, Debug)]
pub struct Solver {
    mechanism: Mechanism,
    linkage: Linkage,
    action: Action,
    cases: LoadCases,
    resistance: Resistance,
    arms: Arms,
    flexibility: Flexibility,
    slack: Slack,
    limits: Limits,
}

impl Solver {
    /// Makes a mechanism ready.
    ///
    /// # Errors
    /// Every reason why the mechanism cannot be computed.
    pub fn new(mechanism: &Mechanism) -> Result<Self, Vec<Fault>> {
        let faults = check(mechanism);
        if !faults.is_empty() {
            return Err(faults);
        }
        let one = |fault| vec![fault];
        let linkage = Linkage::new(mechanism).map_err(one)?;
        let action = mechanism.drive.action(mechanism.length);
        let length = |theta: f64| {
            let pose = linkage.pose(theta)?;
            ScrewLine::new(&mechanism.drive, action, &pose).map(|screw| screw.length)
        };
        let limits = Limits::new(mechanism, &linkage, length).map_err(one)?;
        let cases = LoadCases::new(mechanism);
        Ok(Self {
            action,
            arms: Arms::new(mechanism, action, &cases),
            flexibility: Flexibility::new(mechanism),
            slack: Slack::new(mechanism),
            cases,
            resistance: Resistance::new(mechanism),
            limits,
            linkage,
            mechanism: mechanism.clone(),
        })
    }

    /// The mechanism it was made from.
    pub fn mechanism(&self) -> &Mechanism {
        &self.mechanism
    }

    /// The range of motion.
    pub fn limits(&self) -> &Limits {
        &self.limits
    }

    /// The pose with the deck at `height` over the floor, m; also outside the limits, as far as geometry exists.
    ///
    /// # Errors
    /// Where the deck cannot stand there at all.
    pub fn pose_at_height(&self, height: f64) -> Result<Pose, Fault> {
        self.linkage.pose_at_height(height)
    }

    /// The pose with stage 1's arms at `theta`, rad.
    ///
    /// # Errors
    /// Where the linkage does not close.
    pub fn pose_at_angle(&self, theta: f64) -> Result<Pose, Fault> {
        self.linkage.pose(theta)
    }

    /// The pose with the base wheel axle at `x`, m.
    ///
    /// # Errors
    /// Where the arms do not reach there.
    pub fn pose_at_carriage(&self, x: f64) -> Result<Pose, Fault> {
        match self.linkage.theta_at_carriage(x) {
            Some(theta) => self.linkage.pose(theta),
            None => Err(Fault::new("carriage", format!("the arms do not reach {x} m"))),
        }
    }

    /// The equations of equilibrium at a pose, factored.
    ///
    /// # Errors
    /// Where there is no equilibrium: arms flat or upright, screw at a dead point or without length.
    pub fn equilibrium<'a>(&self, pose: &'a Pose) -> Result<Equilibrium<'a>, Fault> {
        Equilibrium::new(pose, ScrewLine::new(&self.mechanism.drive, self.action, pose)?)
    }

    /// Dead and live load at a pose.
    pub fn loads(&self, pose: &Pose) -> Loads {
        let mut loads = self.cases.dead(pose);
        loads.on_deck(pose, &self.cases.live());
        loads
    }

    /// Forces, and with `detail` all else, at a pose.
    ///
    /// # Errors
    /// Where there is no equilibrium, or, with motion asked for, where friction jams the linkage.
    pub fn state(&self, pose: &Pose, detail: Detail) -> Result<State, Fault> {
        let system = self.equilibrium(pose)?;
        let loads = self.loads(pose);
        let rest = system.solve(&loads);
        let screw = *system.screw();
        let flexibility = self.mechanism.drive.stiff.flexibility(screw.length);
        let yielded = (detail.deflection || detail.shape)
            .then(|| Yielded::new(&system, &self.cases, &self.arms, &self.flexibility, flexibility));
        let state = State {
            screw_length: screw.length,
            advantage: screw.advantage(pose),
            sigma: screw.sigma,
            screw_force: screw.sigma * rest.drive,
            drive_stiffness: (flexibility > 0.0).then(|| flexibility.recip()),
            uplift: Uplift::of(&rest),
            casters: self.casters(pose),
            motion: if detail.motion { Some(self.motion(&system, &loads, &rest)?) } else { None },
            sections: detail
                .sections
                .then(|| self.arms.diagrams(pose, &screw, &rest).iter().map(Diagram::extremes).collect()),
            deflection: yielded
                .as_ref()
                .filter(|_| detail.deflection)
                .map(|yielded| yielded.deflection(&rest, &self.slack)),
            shape: yielded.as_ref().filter(|_| detail.shape).map(Bent::new),
            rest,
        };
        if state.is_finite() {
            Ok(state)
        } else {
            Err(Fault::new("height", "forces or displacements grow beyond all numbers here"))
        }
    }

    /// Section forces of every arm at a pose in a state of equilibrium, weights of the arms included, in the order
    /// A1, B1, A2, ...
    ///
    /// # Errors
    /// Where the screw has no length.
    pub fn diagrams(&self, pose: &Pose, forces: &Forces) -> Result<Vec<Diagram>, Fault> {
        let screw = ScrewLine::new(&self.mechanism.drive, self.action, pose)?;
        Ok(self.arms.diagrams(pose, &screw, forces))
    }

    /// A part cut free at a pose in a state under dead and live load, with all that acts on it.
    ///
    /// # Errors
    /// Where the screw has no length.
    pub fn body(&self, pose: &Pose, forces: &Forces, part: Freed) -> Result<FreeBody, Fault> {
        let screw = ScrewLine::new(&self.mechanism.drive, self.action, pose)?;
        let scene = body::Scene {
            mechanism: &self.mechanism,
            cases: &self.cases,
            pose,
            screw: &screw,
            forces,
            casters: self.casters(pose),
        };
        Ok(scene.body(part))
    }

    /// Section forces of the deck rails, held at top pivot and top wheel, and of the base rails, held at the caster lines, at a
    /// pose in a state under dead and live load; totals of all sides. No base rails without casters.
    ///
    /// # Errors
    /// Where the screw has no length.
    pub fn rails(&self, pose: &Pose, forces: &Forces) -> Result<(Diagram, Option<Diagram>), Fault> {
        let screw = ScrewLine::new(&self.mechanism.drive, self.action, pose)?;
        let beam = |supports| Beam { supports, softness: Softness::default() };
        let deck = top_loads(pose, &screw, forces, &self.cases.on_rails());
        let base = self
            .mechanism
            .base
            .casters
            .map(|casters| beam(casters).diagram(&base_loads(pose, &screw, forces)));
        Ok((beam([0.0, pose.top_axle.x]).diagram(&deck), base))
    }

    fn motion(&self, system: &Equilibrium, loads: &Loads, rest: &Forces) -> Result<Motion, Fault> {
        let raise = self.resistance.moving(system, loads, rest, Direction::Raising)?;
        let lower = self.resistance.moving(system, loads, rest, Direction::Lowering)?;
        let torque = self.mechanism.screw.as_ref().map(|screw| {
            let up = screw.torque_raising(raise.drive);
            let down = screw.torque_lowering(lower.drive);
            Torque {
                raise: up,
                lower: down,
                self_locking: screw.is_self_locking(),
                crank_raise: screw.crank_radius.map(|radius| up / radius),
                crank_lower: screw.crank_radius.map(|radius| down / radius),
                efficiency: screw.efficiency(rest.drive, up),
            }
        });
        Ok(Motion { raise, lower, torque })
    }

    /// Reactions of the caster lines from all weights and the push.
    fn casters(&self, pose: &Pose) -> Option<[f64; 2]> {
        let [left, right] = self.mechanism.base.casters?;
        let (weight, moment) = self.cases.on_floor(pose, self.mechanism.h_base);
        let at_right = (moment - weight * left) / (right - left);
        Some([weight - at_right, at_right])
    }
}

impl State {
    fn is_finite(&self) -> bool {
        let moving = self.motion.as_ref().is_none_or(|motion| {
            let torque = motion.torque.map_or(0.0, |torque| {
                torque.raise
                    + torque.lower
                    + torque.efficiency.unwrap_or(0.0)
                    + torque.crank_raise.unwrap_or(0.0)
            });
            motion.raise.is_finite() && motion.lower.is_finite() && torque.is_finite()
        });
        let given = self.deflection.as_ref().is_none_or(|deflection| {
            let all = [&deflection.drop, &deflection.tilt, &deflection.drift];
            all.iter().all(|movement| (movement.total() + movement.play + movement.lash).is_finite())
        });
        self.rest.is_finite() && self.advantage.is_finite() && moving && given
    }
}

impl Uplift {
    fn of(forces: &Forces) -> Self {
        let pulls = |force: f64| force < -UPLIFT_NOISE * forces.largest();
        let n = forces.joints.len() / 3;
        let up = |index: usize| forces.joints.get(index).is_some_and(|force| pulls(force.y));
        Self {
            base_wheel: pulls(forces.base_wheel),
            top_wheel: pulls(forces.top_wheel),
            base_pivot: up(0),
            top_pivot: up(3 * n),
        }
    }
}

/// A bearing counts as pulling only beyond rounding, as a share of the largest force.
const UPLIFT_NOISE: f64 = 1e-10;
