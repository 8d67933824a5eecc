//! Bolts in wood by the yield limits of the National Design Specification for Wood Construction (NDS 2018), chapter 12.
//!
//! Plain `f64` in SI; the values are reference design values with their own safety, for bolts from 1/4 to 1 in. The formulas are those of
//! table 12.3.1A with the reduction terms of table 12.3.1B.
use core::f64::consts::FRAC_PI_2;

use super::{Bed, Mode, Plane};

const PSI: f64 = 6_894.757_293_168_361;
const INCH: f64 = 0.0254;

/// Dowel bearing strength: 11200 G along the grain, 6100 G^1.45 / sqrt(D) across (psi, D in inches; table 12.3.3).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bearing {
    /// With the force along the grain, Pa.
    pub along: f64,
    /// With the force across it, Pa.
    pub across: f64,
}

impl Bearing {
    /// Of wood of that specific gravity, oven-dry, and a bolt's diameter, m.
    #[must_use]
    pub fn new(gravity: f64, diameter: f64) -> Self {
        Self {
            along: PSI * 11_200.0 * gravity,
            across: PSI * 6_100.0 * libm::pow(gravity, 1.45) / (diameter / INCH).sqrt(),
        }
    }

    /// With the force at an angle to the grain of that sine, Pa: Hankinson's formula.
    #[must_use]
    pub fn at(&self, sine: f64) -> f64 {
        let square = sine * sine;
        self.along * self.across / (self.along * square + self.across * (1.0 - square))
    }
}

/// Yield moment of a round bolt, N m: F_yb D^3 / 6, F_yb its bending yield strength, the mean of yield and tensile strength. With it the
/// code's terms in F_yb D^2 become terms in the moment, so that what bends may be thinner than what presses.
#[must_use]
pub fn yield_moment(yield_bending: f64, diameter: f64) -> f64 {
    yield_bending * diameter * diameter * diameter / 6.0
}

/// K_theta: 1 + theta / 360 degrees, theta the largest angle between force and grain in any member, rad.
fn k_theta(angle: f64) -> f64 {
    1.0 + 0.25 * angle / FRAC_PI_2
}

/// Every mode of a main and a side member, in that order, N; `angle` is the largest between force and grain, rad.
#[must_use]
pub fn single_shear(plane: &Plane, angle: f64) -> [Mode; 6] {
    let k = k_theta(angle);
    let [main, side] = plane.beds;
    [
        Mode::new("Im", main.crushed() / (4.0 * k)),
        Mode::new("Is", side.crushed() / (4.0 * k)),
        Mode::new("II", plane.tilted() / (3.6 * k)),
        Mode::new("IIIm", plane.hinged_beside(0) / (3.2 * k)),
        Mode::new("IIIs", plane.hinged_beside(1) / (3.2 * k)),
        Mode::new("IV", plane.bent() / (3.2 * k)),
    ]
}

/// Every mode of a side member on either side of a main one, the main one first, N for each of the two shear planes.
#[must_use]
pub fn double_shear(plane: &Plane, angle: f64) -> [Mode; 4] {
    let k = k_theta(angle);
    let [main, side] = plane.beds;
    [
        Mode::new("Im", 0.5 * main.crushed() / (4.0 * k)),
        Mode::new("Is", side.crushed() / (4.0 * k)),
        Mode::new("IIIs", plane.hinged_beside(1) / (3.2 * k)),
        Mode::new("IV", plane.bent() / (3.2 * k)),
    ]
}

/// Wood against steel that holds the bolt square: mode Is, N.
#[must_use]
pub fn against_steel(side: Bed, angle: f64) -> Mode {
    Mode::new("Is", side.crushed() / (4.0 * k_theta(angle)))
}
