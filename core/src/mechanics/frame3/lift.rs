//! The sideways push that lifts a wheel.
//!
//! Plain `f64` in SI. At rest both wheels of an axle carry the same: one half of what equilibrium in the plane gives,
//! because an arm pair turns freely about its pins. A sideways push takes from the wheel on its side what it adds to the
//! other; at the push found here one wheel carries nothing. Beyond it an uncaptured wheel leaves its rail.

use super::Frame3;
use super::half::Parity;
use super::shape::DeckLoad;
use crate::mechanics::statics::Forces;
use glam::DVec3;
use serde::{Deserialize, Serialize};

/// Which rail a wheel runs on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
pub enum Rail {
    /// On the base.
    Base,
    /// Under the deck.
    Top,
}

/// The least sideways push that lifts a wheel.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize)]
pub struct WheelLift {
    /// The push, N; zero where the wheels of that axle carry nothing or pull already at rest.
    pub push: f64,
    /// The rail of the wheel that leaves first.
    pub rail: Rail,
}

impl Frame3 {
    /// The least sideways push, `height` above the reference point, m, that takes all load from a wheel which carries
    /// its share of `rest`, the state at rest under dead and live load.
    ///
    /// None where a push changes no wheel load. Holds for pins that turn freely (`joint.rz` of zero); superposes the
    /// linear state under the push, without second-order effects.
    pub fn wheel_lift(&self, rest: &Forces, height: f64) -> Option<WheelLift> {
        let unit = self.wheel_loads(height);
        let carried = [(Rail::Base, rest.base_wheel), (Rail::Top, rest.top_wheel)];
        carried
            .into_iter()
            .zip(unit)
            .filter(|(_, by_push)| by_push.abs() > 0.0)
            .map(|((rail, total), by_push)| WheelLift { push: (0.5 * total / by_push.abs()).max(0.0), rail })
            .min_by(|a, b| a.push.total_cmp(&b.push))
    }

    /// What one newton along +z, `height` above the reference point, adds to the load of the base and the top wheel on
    /// the side of positive z, N; the other side's change by the opposite.
    pub fn wheel_loads(&self, height: f64) -> [f64; 2] {
        let load = DeckLoad::force_at(DVec3::new(0.0, height, 0.0), DVec3::Z);
        let half = &self.antisymmetric;
        let state = half.state(load.part(Parity::Antisymmetric));
        let (mesh, deck) = (&self.plan.mesh, self.plan.deck);
        let motion = |node| half.parity.motion(mesh, node, &state);
        let place = |node: usize| mesh.nodes()[node].at;
        let [base, top] = self.plan.wheels;
        let under_deck = motion(deck).at(place(top.node) - place(deck));
        [
            -base.stiffness * motion(base.node).shift.dot(base.normal),
            top.stiffness * (motion(top.node).shift - under_deck).dot(top.normal),
        ]
    }
}
