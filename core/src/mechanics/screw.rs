//! Torques of the lifting screw.
//!
//! Plain `f64` in SI: N, m, N m. Thread friction enters by mu' = mu / cos(a), a the flank half-angle: the usual
//! textbook form (Shigley's Mechanical Engineering Design, 9th ed., section 8-2, equations 8-5 and 8-6). The exact
//! normal-plane angle differs by less than 0.1 % raising and 0.3 % lowering for ordinary threads.

use super::mechanism::Screw;
use std::f64::consts::PI;

impl Screw {
    /// Friction of the thread referred to its flank angle, mu / cos(a).
    pub fn mu_flank(&self) -> f64 {
        self.mu_thread / libm::cos(self.half_angle)
    }

    fn collar(&self, force: f64) -> f64 {
        self.mu_collar * force * self.d_collar / 2.0
    }

    /// Torque that moves the nut against an axial force `force >= 0`, collar included, N m.
    ///
    /// Valid while mu' lead < pi d; a thread beyond that cannot be turned at all.
    pub fn torque_against(&self, force: f64) -> f64 {
        let (mu, d) = (self.mu_flank(), self.d_mean);
        force * d / 2.0 * (self.lead + PI * mu * d) / (PI * d - mu * self.lead) + self.collar(force)
    }

    /// Torque that moves the nut with an axial force `force >= 0`, collar included, N m; negative when the force
    /// turns the screw by itself and must be held back.
    pub fn torque_with(&self, force: f64) -> f64 {
        let (mu, d) = (self.mu_flank(), self.d_mean);
        force * d / 2.0 * (PI * mu * d - self.lead) / (PI * d + mu * self.lead) + self.collar(force)
    }

    /// Whether an axial force alone never turns the screw: a matter of its own geometry and friction.
    pub fn is_self_locking(&self) -> bool {
        self.torque_with(1.0) >= 0.0
    }

    /// Torque to raise against the drive force `force`; where that is negative the load helps.
    pub fn torque_raising(&self, force: f64) -> f64 {
        if force >= 0.0 { self.torque_against(force) } else { self.torque_with(-force) }
    }

    /// Torque to lower with the drive force `force`; where that is negative the table must be cranked down.
    pub fn torque_lowering(&self, force: f64) -> f64 {
        if force >= 0.0 { self.torque_with(force) } else { self.torque_against(-force) }
    }

    /// Share of the work at the crank that raises the load: `ideal` is the drive force without friction, `torque`
    /// the torque to raise. None where no torque is needed.
    pub fn efficiency(&self, ideal: f64, torque: f64) -> Option<f64> {
        (torque.abs() > 0.0).then(|| ideal * self.lead / (2.0 * PI * torque))
    }
}
