//! Bolts in wood by the yield limits of the National Design Specification for Wood Construction (NDS 2018), chapter 12.
//!
//! Plain `f64` in SI; the values are reference design values with their own safety, for bolts from 1/4 to 1 in. The formulas are those of
//! table 12.3.1A with the reduction terms of table 12.3.1B.
use core::f64::consts::FRAC_PI_2;

use super::{Mode, least};

const PSI: f64 = 6_894.757_293_168_361;
const INCH: f64 = 0.0254;

/// Dowel bearing strength, Pa, at `angle` (rad) between force and grain: 11200 G along, 6100 G^1.45 / sqrt(D) across (psi, D in
/// inches; table 12.3.3), between them by Hankinson's formula. `gravity` is the specific gravity of the oven-dry wood.
#[must_use]
pub fn bearing(gravity: f64, diameter: f64, angle: f64) -> f64 {
    let along = 11_200.0 * gravity;
    let across = 6_100.0 * libm::pow(gravity, 1.45) / (diameter / INCH).sqrt();
    let sine = libm::sin(angle);
    let square = sine * sine;
    PSI * along * across / (along * square + across * (1.0 - square))
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
    /// Its diameter, m.
    pub diameter: f64,
    /// Its bending yield strength, Pa: the mean of yield and tensile strength.
    pub yield_bending: f64,
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
        let d = self.diameter;
        let bent =
            2.0 * self.yield_bending * spread * d * d / (3.0 * main.bearing * bed.thickness * bed.thickness);
        let k = (root + bent).sqrt() - 1.0;
        k * d * bed.thickness * main.bearing / (spread * 3.2 * self.reduction())
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
        let d = self.diameter;
        let root = (2.0 * main.bearing * self.yield_bending / (3.0 * (1.0 + re))).sqrt();
        d * d * root / (3.2 * self.reduction())
    }

    /// One shear plane: the least of modes Im, Is, II, IIIm, IIIs and IV, N.
    #[must_use]
    pub fn single_shear(&self, main: Bed, side: Bed) -> Mode {
        let k = self.reduction();
        let re = main.bearing / side.bearing;
        let rt = main.thickness / side.thickness;
        let root = re + 2.0 * re * re * (1.0 + rt + rt * rt) + rt * rt * re * re * re;
        let tilted = (root.sqrt() - re * (1.0 + rt)) / (1.0 + re);
        least([
            ("Im", self.crushing(main) / (4.0 * k)),
            ("Is", self.crushing(side) / (4.0 * k)),
            ("II", tilted * self.crushing(side) / (3.6 * k)),
            ("IIIm", self.main_hinge(main, side)),
            ("IIIs", self.side_hinge(main, side)),
            ("IV", self.two_hinges(main, side)),
        ])
    }

    /// A side member on either side of the main one: the least of modes Im, Is, IIIs and IV, N for both planes together.
    #[must_use]
    pub fn double_shear(&self, main: Bed, side: Bed) -> Mode {
        let k = self.reduction();
        least([
            ("Im", self.crushing(main) / (4.0 * k)),
            ("Is", 2.0 * self.crushing(side) / (4.0 * k)),
            ("IIIs", 2.0 * self.side_hinge(main, side)),
            ("IV", 2.0 * self.two_hinges(main, side)),
        ])
    }

    /// Wood against steel that holds the bolt square: mode Is, N.
    #[must_use]
    pub fn against_steel(&self, side: Bed) -> Mode {
        Mode { mark: "Is", load: self.crushing(side) / (4.0 * self.reduction()) }
    }
}
