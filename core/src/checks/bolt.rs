//! Round pins across a joint.
//!
//! Plain `f64` in SI.
use core::f64::consts::PI;

/// Greatest shear stress of a round pin, Pa: 4/3 of the average V / (pi d^2 / 4) (any text on the strength of materials).
#[must_use]
pub fn shear(force: f64, diameter: f64) -> f64 {
    4.0 / 3.0 * force / (PI / 4.0 * diameter * diameter)
}

/// Bending moment in the pin of a lap joint, N m: R a / 2, `lap` the distance of the two members' middles. Each member is taken to hold
/// its end of the pin square.
#[must_use]
pub fn lap_moment(force: f64, lap: f64) -> f64 {
    force * lap / 2.0
}

/// Bending moment in a pin held on both sides of a member, N m: R a b / (a + b) less R t / 8 for the member's width; `laps` are the distances a
/// and b of the outer members' middles from the inner one's.
#[must_use]
pub fn fork_moment(force: f64, laps: [f64; 2], thickness: f64) -> f64 {
    force * (laps[0] * laps[1] / (laps[0] + laps[1]) - thickness / 8.0)
}

/// Bending stress of a round bar, Pa: 32 M / pi d^3.
#[must_use]
pub fn bending(moment: f64, diameter: f64) -> f64 {
    32.0 * moment / (PI * diameter * diameter * diameter)
}

/// Average pressure of a pin on the member or bushing around it, Pa: R / (d t).
#[must_use]
pub fn pressure(force: f64, diameter: f64, thickness: f64) -> f64 {
    force / (diameter * thickness)
}
