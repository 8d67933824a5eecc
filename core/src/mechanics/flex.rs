//! How far the deck gives way under the live load, and which part is to blame.
//!
//! Plain `f64` in SI. The unit-load method: the linkage with a locked screw is statically determinate, so the
//! displacement in the direction of a unit load is the work of the unit case's forces on the deformations under the
//! live load, part by part. Of an arm or rail that work, its unit forces times the bent line, equals the integral of
//! M m/EI + N n/EA + V v/(kappa G A). Friction is left out, displacements are small, the geometry is the given one.

use super::arms::Arms;
use super::beam::Beam;
use super::drive::{Action, ScrewLine};
use super::linkage::Pose;
use super::loads::{DeckForce, LoadCases, UnitCase};
use super::mechanism::Mechanism;
use super::names::{Body, JointId};
use super::play::{Play, Slack};
use super::section::{Diagram, ElasticLine, PointLoad, Softness, Spread};
use super::statics::{Equilibrium, Forces, Loads};
use glam::DVec2;

/// A displacement under the live load, split by what yields: m for drop and drift, rad for tilt.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Movement {
    /// Bending, stretching and shearing of the arms.
    pub arms: f64,
    /// Slip of the pivots.
    pub joints: f64,
    /// Squeeze of the wheels.
    pub wheels: f64,
    /// Squeeze of the screw and what holds it.
    pub screw: f64,
    /// Bending of the deck rails.
    pub top_rails: f64,
    /// Bending of the base rails.
    pub base_rails: f64,
    /// Squeeze of the casters.
    pub casters: f64,
    /// What free play adds under dead and live load; not part of the total.
    pub play: f64,
    /// Free travel between the extreme positions of all play; not part of the total.
    pub lash: f64,
}

impl Movement {
    /// The elastic displacement, without play.
    pub fn total(&self) -> f64 {
        self.arms + self.joints + self.wheels + self.screw + self.top_rails + self.base_rails + self.casters
    }
}

/// The displacements of the deck under the live load.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Deflection {
    /// At the load point, down positive, m.
    pub drop: Movement,
    /// Of the top frame, counter-clockwise positive, rad.
    pub tilt: Movement,
    /// Of the top pivot, to the right positive, m.
    pub drift: Movement,
}

/// Flexibilities of a mechanism, totals of all sides; zero is rigid.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Flexibility {
    /// Of every joint, in the order of the joints, m/N.
    pub(super) joints: Vec<f64>,
    pub(super) base_wheel: f64,
    pub(super) top_wheel: f64,
    pub(super) top_rails: Option<Softness>,
    pub(super) base_rails: Option<Softness>,
    /// The caster lines: where they stand and how one yields.
    pub(super) casters: Option<([f64; 2], f64)>,
}

impl Flexibility {
    pub(super) fn new(m: &Mechanism) -> Self {
        let of_all = |k: Option<f64>| k.map_or(0.0, |k| 1.0 / (m.sides * k));
        Self {
            joints: JointId::all(m.n).map(|joint| of_all(m.joint_k.pins.own(joint.kind()))).collect(),
            base_wheel: of_all(m.joint_k.wheel_base),
            top_wheel: of_all(m.joint_k.wheel_top),
            top_rails: Softness::of_rail(m.top.ei, m.top.kga),
            base_rails: Softness::of_rail(m.base.ei, m.base.kga),
            casters: m.base.casters.map(|places| (places, m.base.k_caster.map_or(0.0, f64::recip))),
        }
    }
}

/// The base rails under a load case.
pub(super) struct BaseBent {
    pub(super) beam: Beam,
    /// Bent between its casters; none when rigid.
    pub(super) line: Option<ElasticLine>,
    /// Settlement of each caster line, up positive, m.
    pub(super) settlement: [f64; 2],
}

/// Everything that has yielded under the live load.
pub(super) struct Yielded<'a> {
    pub(super) system: &'a Equilibrium<'a>,
    pub(super) flexibility: &'a Flexibility,
    /// The forces of the live load alone, without friction.
    pub(super) live: Forces,
    /// Of the screw and its ends, m/N.
    pub(super) screw: f64,
    /// Each arm held at its lower end; empty when rigid.
    pub(super) arms: Vec<ElasticLine>,
    /// The deck rails held at pivot and wheel; none when rigid.
    pub(super) top: Option<ElasticLine>,
    pub(super) base: Option<BaseBent>,
    cases: &'a LoadCases,
    arm_stations: &'a Arms,
}

impl<'a> Yielded<'a> {
    pub(super) fn new(
        system: &'a Equilibrium<'a>,
        cases: &'a LoadCases,
        arms: &'a Arms,
        flexibility: &'a Flexibility,
        screw: f64,
    ) -> Self {
        let pose = system.pose();
        let deck = cases.live();
        let mut loads = Loads::none(pose.n);
        loads.on_deck(pose, &deck);
        let live = system.solve(&loads);
        let bent_arms = arms.softness.map_or_else(Vec::new, |softness| {
            arms.loads(pose, system.screw(), &live)
                .iter()
                .map(|loads| ElasticLine::new(&Diagram::new(loads, Spread::default()), softness))
                .collect()
        });
        let top = flexibility.top_rails.map(|softness| {
            let beam = Beam { supports: [0.0, pose.top_axle.x], softness };
            beam.line(&top_loads(pose, system.screw(), &live, &deck))
        });
        let base = flexibility.casters.map(|(supports, k)| {
            let beam = Beam { supports, softness: flexibility.base_rails.unwrap_or_default() };
            let loads = base_loads(pose, system.screw(), &live);
            BaseBent {
                beam,
                line: flexibility.base_rails.map(|_| beam.line(&loads)),
                settlement: beam.reactions(&loads).map(|reaction| -reaction * k),
            }
        });
        Self { system, flexibility, live, screw, arms: bent_arms, top, base, cases, arm_stations: arms }
    }

    /// One displacement of the deck. `rest` is the state under dead and live load, which decides how the play lies.
    pub(super) fn movement(&self, case: UnitCase, rest: &Forces, slack: &Slack) -> Movement {
        let (pose, screw) = (self.system.pose(), self.system.screw());
        let deck = case.forces(self.cases, pose);
        let mut loads = Loads::none(pose.n);
        loads.on_deck(pose, &deck);
        let unit = self.system.solve(&loads);
        let arm_loads =
            if self.arms.is_empty() { Vec::new() } else { self.arm_stations.loads(pose, screw, &unit) };
        let slips = self.live.joints.iter().zip(&unit.joints).zip(&self.flexibility.joints);
        let (base_rails, casters) = self.base.as_ref().map_or((0.0, 0.0), |base| {
            let loads = base_loads(pose, screw, &unit);
            let [left, right] = base.beam.reactions(&loads);
            let settled = base.settlement;
            (
                base.line.as_ref().map_or(0.0, |line| line.work(&loads)),
                -left * settled[0] - right * settled[1],
            )
        });
        let Play { sag, lash } = slack.play(rest, &unit);
        Movement {
            arms: self.arms.iter().zip(&arm_loads).map(|(line, loads)| line.work(loads)).sum(),
            joints: slips.map(|((real, unit), k)| real.dot(*unit) * k).sum(),
            wheels: self.live.base_wheel * unit.base_wheel * self.flexibility.base_wheel
                + self.live.top_wheel * unit.top_wheel * self.flexibility.top_wheel,
            screw: self.live.drive * unit.drive * self.screw,
            top_rails: self.top.as_ref().map_or(0.0, |line| line.work(&top_loads(pose, screw, &unit, &deck))),
            base_rails,
            casters,
            play: sag,
            lash,
        }
    }

    /// All displacements of the deck.
    pub(super) fn deflection(&self, rest: &Forces, slack: &Slack) -> Deflection {
        let [drop, tilt, drift] = UnitCase::ALL.map(|case| self.movement(case, rest, slack));
        Deflection { drop, tilt, drift }
    }
}

/// A force at a point of a rail, as a load on its axis: a force along the rail off its axis turns it.
fn on_rail(at: DVec2, force: DVec2) -> PointLoad {
    PointLoad { s: at.x, along: 0.0, across: force.y, couple: -at.y * force.x }
}

/// What bends the deck rails between top pivot and top wheel: the deck's forces and the screw, where it acts there.
pub(super) fn top_loads(
    pose: &Pose,
    screw: &ScrewLine,
    forces: &Forces,
    deck: &[DeckForce],
) -> Vec<PointLoad> {
    let mut loads: Vec<PointLoad> =
        deck.iter().map(|force| on_rail(force.at, pose.top.local(force.force))).collect();
    match screw.action {
        Action::TopAxle => loads.push(on_rail(pose.top_axle, DVec2::new(forces.drive, 0.0))),
        Action::Pins(ends) => {
            for (which, end) in ends.into_iter().enumerate().filter(|(_, end)| end.body == Body::Top) {
                loads.push(on_rail(end.local, pose.top.local(screw.end_force(which, forces))));
            }
        }
        Action::BaseAxle => {}
    }
    loads
}

/// What bends the base rails between the casters: base pivot, base wheel and the foot of a strut. Horizontal forces
/// at the pin line do not bend them.
pub(super) fn base_loads(pose: &Pose, screw: &ScrewLine, forces: &Forces) -> Vec<PointLoad> {
    let down = |s: f64, force: f64| PointLoad { s, across: -force, ..PointLoad::default() };
    let mut loads = vec![down(0.0, forces.joint(JointId::Bl).y), down(pose.carriage_x, forces.base_wheel)];
    if let Action::Pins(ends) = screw.action {
        for (which, end) in ends.into_iter().enumerate().filter(|(_, end)| end.body == Body::Base) {
            loads.push(on_rail(end.local, screw.end_force(which, forces)));
        }
    }
    loads
}
