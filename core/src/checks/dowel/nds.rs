//! Bolts in wood by the yield limits of the National Design Specification for Wood Construction (NDS 2018), chapter 12.
//!
//! Plain `f64` in SI; the values are reference design values with their own safety, for bolts from 1/4 to 1 in. The formulas are those of
//! table 12.3.1A with the reduction terms of table 12.3.1B.
use core::f64::consts::FRAC_PI_2;

use super::Mode;

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

/// A member of wood that a bolt goes through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bed {
    /// Its thickness along the bolt, m.
    pub thickness: f64,
    /// Its dowel bearing strength, Pa.
    pub bearing: f64,
}

/// A bolt between a main and a side member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bolt {
    /// Diameter that presses on the wood, m.
    pub diameter: f64,
    /// Yield moment, N m: see [`yield_moment`].
    pub yield_moment: f64,
    /// The largest angle between force and grain in any member, rad.
    pub angle: f64,
}

impl Bolt {
    /// K_theta = 1 + theta / 360 degrees.
    fn reduction(&self) -> f64 {
        1.0 + 0.25 * self.angle / FRAC_PI_2
    }

    fn crushing(&self, bed: Bed) -> f64 {
        self.diameter * bed.thickness * bed.bearing
    }

    /// Mode III: the bolt bends once and the member `bed` is crushed; `ratio` is R_e as seen from the main member.
    fn one_hinge(&self, bed: Bed, main: Bed, spread: f64, root: f64) -> f64 {
        let crushing = self.diameter * bed.thickness * main.bearing;
        let bent = 4.0 * self.yield_moment * spread / (crushing * bed.thickness);
        let k = (root + bent).sqrt() - 1.0;
        k * crushing / (spread * 3.2 * self.reduction())
    }

    fn side_hinge(&self, main: Bed, side: Bed) -> f64 {
        let re = main.bearing / side.bearing;
        self.one_hinge(side, main, 2.0 + re, 2.0 * (1.0 + re) / re)
    }

    fn main_hinge(&self, main: Bed, side: Bed) -> f64 {
        let re = main.bearing / side.bearing;
        self.one_hinge(main, main, 1.0 + 2.0 * re, 2.0 * (1.0 + re))
    }

    fn two_hinges(&self, main: Bed, side: Bed) -> f64 {
        let re = main.bearing / side.bearing;
        let root = (4.0 * main.bearing * self.yield_moment * self.diameter / (1.0 + re)).sqrt();
        root / (3.2 * self.reduction())
    }

    /// One shear plane: the least of modes Im, Is, II, IIIm, IIIs and IV, N.
    #[must_use]
    pub fn single_shear(&self, main: Bed, side: Bed) -> Mode {
        Mode::least(self.single_shear_modes(main, side))
    }

    /// Every mode of [`Self::single_shear`].
    #[must_use]
    pub fn single_shear_modes(&self, main: Bed, side: Bed) -> [Mode; 6] {
        let k = self.reduction();
        let re = main.bearing / side.bearing;
        let rt = main.thickness / side.thickness;
        let root = re + 2.0 * re * re * (1.0 + rt + rt * rt) + rt * rt * re * re * re;
        let tilted = (root.sqrt() - re * (1.0 + rt)) / (1.0 + re);
        [
            Mode::new("Im", self.crushing(main) / (4.0 * k)),
            Mode::new("Is", self.crushing(side) / (4.0 * k)),
            Mode::new("II", tilted * self.crushing(side) / (3.6 * k)),
            Mode::new("IIIm", self.main_hinge(main, side)),
            Mode::new("IIIs", self.side_hinge(main, side)),
            Mode::new("IV", self.two_hinges(main, side)),
        ]
    }

    /// A side member on either side of the main one: the least of modes Im, Is, IIIs and IV, N for both planes together.
    #[must_use]
    pub fn double_shear(&self, main: Bed, side: Bed) -> Mode {
        Mode::least(self.double_shear_modes(main, side))
    }

    /// Every mode of [`Self::double_shear`].
    #[must_use]
    pub fn double_shear_modes(&self, main: Bed, side: Bed) -> [Mode; 4] {
        let k = self.reduction();
        [
            Mode::new("Im", self.crushing(main) / (4.0 * k)),
            Mode::new("Is", 2.0 * self.crushing(side) / (4.0 * k)),
            Mode::new("IIIs", 2.0 * self.side_hinge(main, side)),
            Mode::new("IV", 2.0 * self.two_hinges(main, side)),
        ]
    }

    /// Wood against steel that holds the bolt square: mode Is, N.
    #[must_use]
    pub fn against_steel(&self, side: Bed) -> Mode {
        Mode::new("Is", self.crushing(side) / (4.0 * self.reduction()))
    }
}
