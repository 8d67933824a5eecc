//! Equilibrium while the table moves: Coulomb friction in the pivots, drag of the wheels.
//!
//! Plain `f64` in SI. A joint resists with the couple mu r |R| against the turning of its second body relative to
//! its first; a wheel drags with crr |N| along its rail. The arm turns on a wheel's axle, and the axle hands its
//! couple to the frame that guides it. Since the couples follow from the forces and the forces from the couples,
//! the two are taken in turn until they settle, each round one more load on the factored equations.

use super::drive::{Action, ScrewLine};
use super::fault::Fault;
use super::linkage::Pose;
use super::mechanism::{Friction, Mechanism};
use super::names::{Body, JointId};
use super::statics::{Equilibrium, Forces, Loads, Rubbing};

/// Rounds after which friction counts as jamming; ordinary tables settle in 5 to 15.
const MOST_ROUNDS: usize = 400;
/// Change of the largest force at which a round counts as the last, relative to that force.
const SETTLED: f64 = 1e-13;

/// Which way the table moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// The deck rises.
    Raising,
    /// The deck sinks.
    Lowering,
}

/// The rubbing radii of a mechanism, already multiplied by their friction.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Resistance {
    /// mu r of every joint, in the order of the joints, m.
    joints: Vec<f64>,
    /// mu r of the end pins of a free screw, m.
    ends: f64,
    base: f64,
    top: f64,
}

impl Resistance {
    pub(super) fn new(m: &Mechanism) -> Self {
        let Friction { mu_pin, r, crr_base, crr_top } = &m.friction;
        Self {
            joints: JointId::all(m.n).map(|joint| mu_pin * r.of(joint.kind())).collect(),
            ends: mu_pin * r.d.or(r.default).unwrap_or(0.0),
            base: *crr_base,
            top: *crr_top,
        }
    }

    fn is_none(&self) -> bool {
        let sum: f64 = self.joints.iter().sum();
        sum + self.ends + self.base + self.top <= 0.0
    }

    /// The state in which the table just moves under `loads`; `rest` is the state without friction.
    ///
    /// # Errors
    /// Where friction grows faster than the drive: the linkage jams.
    pub(super) fn moving(
        &self,
        system: &Equilibrium,
        loads: &Loads,
        rest: &Forces,
        direction: Direction,
    ) -> Result<Forces, Fault> {
        let mut now = rest.clone();
        if self.is_none() {
            return Ok(now);
        }
        let turning = Turning::new(system.pose(), system.screw(), direction);
        let mut before = rest.clone();
        let mut rubbed = loads.clone();
        for round in 1..=MOST_ROUNDS {
            self.rub(system, &turning, &before, &mut now.rubbing);
            rubbed.clone_from(loads);
            rubbed.add_rubbing(system.pose(), system.screw(), &now.rubbing);
            system.solve_into(&rubbed, &mut now);
            let change = now
                .joints
                .iter()
                .zip(&before.joints)
                .fold((now.drive - before.drive).abs(), |most, (new, old)| most.max((*new - *old).length()));
            let largest = now.largest();
            if !largest.is_finite() {
                break;
            }
            if change <= SETTLED * largest {
                now.rubbing.rounds = round;
                return Ok(now);
            }
            before.clone_from(&now);
        }
        Err(Fault::new("friction", "the linkage jams: friction grows faster than the drive can push"))
    }

    /// The friction that goes with the forces of a state.
    fn rub(&self, system: &Equilibrium, turning: &Turning, forces: &Forces, rubbing: &mut Rubbing) {
        let resistances = self.joints.iter().zip(&forces.joints).zip(&turning.joints);
        for (couple, ((radius, force), sign)) in rubbing.couples.iter_mut().zip(resistances) {
            *couple = -sign * radius * force.length();
        }
        rubbing.base_drag = -turning.base * self.base * forces.base_wheel.abs();
        rubbing.top_drag = -turning.top * self.top * forces.top_wheel.abs();
        let pull = libm::hypot(forces.drive, forces.rubbing.across);
        rubbing.ends = turning.ends.map(|sign| -sign * self.ends * pull);
        rubbing.across = -(rubbing.ends[0] + rubbing.ends[1]) / system.screw().length;
    }
}

/// The sense in which everything slides.
struct Turning {
    /// Sign of the second body's turning relative to the first's, a joint.
    joints: Vec<f64>,
    /// Sign of the body's turning relative to the screw's, at P and Q; zero for a screw along a rail.
    ends: [f64; 2],
    base: f64,
    top: f64,
}

impl Turning {
    fn new(pose: &Pose, screw: &ScrewLine, direction: Direction) -> Self {
        let way = if direction == Direction::Raising { 1.0 } else { -1.0 };
        let spin = |body: Body| pose.frame(body).spin;
        Self {
            joints: JointId::all(pose.n)
                .map(|joint| {
                    let [first, second] = joint.bodies(pose.n);
                    way * sign(spin(second) - spin(first))
                })
                .collect(),
            ends: match screw.action {
                Action::Pins(ends) => ends.map(|end| way * sign(spin(end.body) - screw.spin)),
                _ => [0.0; 2],
            },
            base: way * sign(pose.carriage_rate),
            top: way * sign(pose.top_axle_rate),
        }
    }
}

/// -1, 0 or 1.
fn sign(value: f64) -> f64 {
    if value.abs() > 0.0 { value.signum() } else { 0.0 }
}

impl Loads {
    /// Adds what friction does to the bodies.
    pub fn add_rubbing(&mut self, pose: &Pose, screw: &ScrewLine, rubbing: &Rubbing) {
        for (joint, couple) in JointId::all(pose.n).zip(&rubbing.couples) {
            let [first, second] = joint.bodies(pose.n);
            self.twist(first, -couple);
            self.twist(second, *couple);
        }
        self.base_axle.x += rubbing.base_drag;
        let drag = rubbing.top_drag * pose.top.along;
        self.top_axle += drag;
        self.push(pose, Body::Top, pose.top_axle, -drag);
        if let Action::Pins([p, q]) = screw.action {
            self.twist(p.body, rubbing.ends[0]);
            self.twist(q.body, rubbing.ends[1]);
            let across = rubbing.across * screw.across();
            self.push(pose, p.body, p.local, -across);
            self.push(pose, q.body, q.local, across);
        }
    }
}
