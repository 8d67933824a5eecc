//! Stresses in a screw and its nut.
//!
//! Plain `f64` in SI. Formulas of Shigley's Mechanical Engineering Design 9e, section 8-2 (equations 8-7 to 8-12).
use core::f64::consts::PI;

/// The first turn in the nut carries this share of the force (Shigley 9e, section 8-2, from experiments: 0.38, then 0.25, 0.18).
pub const FIRST_TURN: f64 = 0.38;

/// A screw thread in its nut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thread {
    /// Root diameter, m.
    pub root: f64,
    /// Mean diameter, m.
    pub mean: f64,
    /// Outside diameter, m.
    pub major: f64,
    /// Pitch, m.
    pub pitch: f64,
    /// Depth over which screw and nut touch, m.
    pub depth: f64,
    /// Length of the nut, m.
    pub nut: f64,
}

impl Thread {
    /// Stress along the root, Pa: F over the root's area.
    #[must_use]
    pub fn axial(&self, force: f64) -> f64 {
        force / (PI / 4.0 * self.root * self.root)
    }

    /// Shear stress at the root from a torque, Pa: 16 T / pi d_r^3.
    #[must_use]
    pub fn twist(&self, torque: f64) -> f64 {
        16.0 * torque / (PI * self.root * self.root * self.root)
    }

    /// Pressure between the threads as an average over the nut, Pa: F p / (pi d_m h L).
    #[must_use]
    pub fn pressure(&self, force: f64) -> f64 {
        force * self.pitch / (PI * self.mean * self.depth * self.nut)
    }

    /// Shear stress in the nut's threads at the screw's outside, half of the length being thread, Pa: F / (pi d L / 2).
    #[must_use]
    pub fn shear_nut(&self, force: f64) -> f64 {
        force / (PI * self.major * 0.5 * self.nut)
    }

    /// Shear stress in the screw's threads at their root, Pa.
    #[must_use]
    pub fn shear_screw(&self, force: f64) -> f64 {
        force / (PI * self.root * 0.5 * self.nut)
    }

    /// Bending stress at the root of one turn that carries `force`, Pa: 6 F / (pi d_r p).
    #[must_use]
    pub fn bending(&self, force: f64) -> f64 {
        6.0 * force / (PI * self.root * self.pitch)
    }

    /// Von Mises stress at the root of the first turn, Pa: bending of the thread, the push along the screw and the torque.
    /// A pulled screw is reckoned as pushed, which is the worse of the two.
    #[must_use]
    pub fn first_turn(&self, force: f64, torque: f64) -> f64 {
        let bent = self.bending(FIRST_TURN * force);
        let pushed = -self.axial(force);
        let across = bent * bent + pushed * pushed + (bent - pushed) * (bent - pushed);
        let twisted = self.twist(torque);
        (across / 2.0 + 3.0 * twisted * twisted).sqrt()
    }
}

/// Von Mises stress of a normal and a shear stress, Pa: sqrt(s^2 + 3 t^2).
#[must_use]
pub fn mises(normal: f64, shear: f64) -> f64 {
    (normal * normal + 3.0 * shear * shear).sqrt()
}

/// Yield strength in shear as a part of that in tension: 1 / sqrt(3), von Mises.
pub const SHEAR_YIELD: f64 = 0.577_350_269_189_625_8;
