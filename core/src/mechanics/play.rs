//! Free play: what clearances add to the displacements of the deck.
//!
//! Plain `f64` in SI. A pivot in contact stands half its diametral clearance off its centre along its force, a wheel
//! hangs in a captured rail by the rail's slack; by virtual work each moves the deck by its force in the unit case.

use super::mechanism::{DriveKind, Mechanism};
use super::names::JointId;
use super::statics::Forces;

/// A joint force below this share of the largest has no direction worth the name.
const NO_FORCE: f64 = 1e-11;

/// The clearances of a mechanism, m.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Slack {
    /// Diametral clearance of every joint, in the order of the joints.
    joints: Vec<f64>,
    /// Of the two end pins of a free screw.
    ends: f64,
    base_gap: f64,
    top_gap: f64,
    backlash: f64,
}

/// Free play in the direction of a unit case, m or rad.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Play {
    /// Displacement from centred pivots to the contacts of the present forces.
    pub(super) sag: f64,
    /// Free travel between the extreme contacts.
    pub(super) lash: f64,
}

impl Slack {
    pub(super) fn new(m: &Mechanism) -> Self {
        let pins = &m.clearance.pins;
        let free = matches!(m.drive.kind, DriveKind::MidPivot { .. } | DriveKind::Strut { .. });
        Self {
            joints: JointId::all(m.n).map(|joint| pins.of(joint.kind())).collect(),
            ends: if free { pins.d.unwrap_or(0.0) } else { 0.0 },
            base_gap: m.clearance.rail_gap_base,
            top_gap: m.clearance.rail_gap_top,
            backlash: m.clearance.screw_backlash,
        }
    }

    /// The play in the direction of `unit` with the contacts of the state `rest`.
    pub(super) fn play(&self, rest: &Forces, unit: &Forces) -> Play {
        let least = NO_FORCE * rest.largest();
        let mut play = Play::default();
        for ((clearance, force), unit) in self.joints.iter().zip(&rest.joints).zip(&unit.joints) {
            let size = force.length();
            if size > least {
                play.sag += clearance / 2.0 * force.dot(*unit) / size;
            }
            play.lash += clearance * unit.length();
        }
        let wheels = [
            (self.base_gap, rest.base_wheel, unit.base_wheel),
            (self.top_gap, rest.top_wheel, unit.top_wheel),
        ];
        for (gap, force, unit) in wheels {
            if force < -least {
                play.sag -= gap * unit;
            }
            play.lash += gap * unit.abs();
        }
        if rest.drive.abs() > least {
            play.sag += self.ends * rest.drive.signum() * unit.drive;
        }
        play.lash += (self.backlash + 2.0 * self.ends) * unit.drive.abs();
        play
    }
}
