//! Bolts in wood by EN 1995-1-1, section 8.
//!
//! Plain `f64` in SI; characteristic values. The expressions were checked against published worked examples and secondary
//! sources, not against the standard's own pages. The rope effect is left out: a pivot must turn, so nothing clamps it.
use super::Mode;
use crate::design::WoodSort;

/// How the wood under a pin stands being crushed.
///
/// Solid wood: 0.082 (1 - 0.01 d) rho_k over k90 sin^2 + cos^2, k90 = 1.35 + 0.015 d for softwood and 0.90 + 0.015 d for hardwood
/// (8.31 to 8.33); plywood: 0.11 (1 - 0.01 d) rho_k in every direction (8.36). d in mm, at most 30; rho_k in kg/m3; MPa.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Embedment {
    /// With the force along the grain, Pa.
    pub along: f64,
    /// How many times that is what it stands across the grain.
    pub k90: f64,
}

impl Embedment {
    /// Of a sort of wood, its density (5 % fractile, kg/m3) and the pin's diameter, m.
    #[must_use]
    pub fn new(sort: WoodSort, density_low: f64, diameter: f64) -> Self {
        let d = diameter * 1e3;
        let slim = (1.0 - 0.01 * d).max(0.0) * density_low * 1e6;
        match sort {
            WoodSort::Plywood => Self { along: 0.11 * slim, k90: 1.0 },
            WoodSort::Softwood => Self { along: 0.082 * slim, k90: 1.35 + 0.015 * d },
            WoodSort::Hardwood => Self { along: 0.082 * slim, k90: 0.90 + 0.015 * d },
        }
    }

    /// With the force at an angle to the grain of that sine, Pa.
    #[must_use]
    pub fn at(&self, sine: f64) -> f64 {
        self.along / (1.0 + (self.k90 - 1.0) * sine * sine)
    }
}

/// Yield moment of a round bolt, N m: 0.3 f_u d^2.6 N mm with f_u in MPa and d in mm (8.30).
#[must_use]
pub fn yield_moment(tensile: f64, diameter: f64) -> f64 {
    0.3 * (tensile / 1e6) * libm::pow(diameter * 1e3, 2.6) * 1e-3
}

/// A member of wood that a bolt goes through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bed {
    /// Its thickness along the bolt, m.
    pub thickness: f64,
    /// Its embedment strength, Pa.
    pub embedment: f64,
}

/// A bolt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dowel {
    /// Diameter that presses on the wood, m.
    pub diameter: f64,
    /// Yield moment, N m.
    pub yield_moment: f64,
}

impl Dowel {
    fn crushing(&self, bed: Bed) -> f64 {
        bed.embedment * bed.thickness * self.diameter
    }

    /// The bolt bends once, in one member; `beta` is the other member's embedment strength over this one's (d, e, j).
    fn one_hinge(&self, bed: Bed, beta: f64) -> f64 {
        let crushing = self.crushing(bed);
        let bent = 4.0 * beta * (2.0 + beta) * self.yield_moment / (crushing * bed.thickness);
        1.05 * crushing / (2.0 + beta) * ((2.0 * beta * (1.0 + beta) + bent).sqrt() - beta)
    }

    /// The bolt bends in both members (f, k).
    fn two_hinges(&self, first: Bed, beta: f64) -> f64 {
        let bent = 2.0 * self.yield_moment * first.embedment * self.diameter;
        1.15 * (2.0 * beta / (1.0 + beta)).sqrt() * bent.sqrt()
    }

    /// Wood to wood, one shear plane: the least of (8.6 a) to (8.6 f), N.
    #[must_use]
    pub fn single_shear(&self, first: Bed, second: Bed) -> Mode {
        Mode::least(self.single_shear_modes(first, second))
    }

    /// Every mode of [`Self::single_shear`].
    #[must_use]
    pub fn single_shear_modes(&self, first: Bed, second: Bed) -> [Mode; 6] {
        let beta = second.embedment / first.embedment;
        let r = second.thickness / first.thickness;
        let root = beta + 2.0 * beta * beta * (1.0 + r + r * r) + beta * beta * beta * r * r;
        let tilted = self.crushing(first) / (1.0 + beta) * (root.sqrt() - beta * (1.0 + r));
        [
            Mode::new("a", self.crushing(first)),
            Mode::new("b", self.crushing(second)),
            Mode::new("c", tilted),
            Mode::new("d", self.one_hinge(first, beta)),
            Mode::new("e", self.one_hinge(second, 1.0 / beta)),
            Mode::new("f", self.two_hinges(first, beta)),
        ]
    }

    /// Wood on both sides of wood: the least of (8.7 g) to (8.7 k), N for each of the two shear planes.
    #[must_use]
    pub fn double_shear(&self, outer: Bed, inner: Bed) -> Mode {
        Mode::least(self.double_shear_modes(outer, inner))
    }

    /// Every mode of [`Self::double_shear`].
    #[must_use]
    pub fn double_shear_modes(&self, outer: Bed, inner: Bed) -> [Mode; 4] {
        let beta = inner.embedment / outer.embedment;
        [
            Mode::new("g", self.crushing(outer)),
            Mode::new("h", 0.5 * self.crushing(inner)),
            Mode::new("j", self.one_hinge(outer, beta)),
            Mode::new("k", self.two_hinges(outer, beta)),
        ]
    }

    /// Wood against steel that holds the bolt square, one shear plane: the least of (8.10 c) to (8.10 e), thick plate, N.
    #[must_use]
    pub fn against_steel(&self, bed: Bed) -> Mode {
        Mode::least(self.against_steel_modes(bed))
    }

    /// Every mode of [`Self::against_steel`].
    #[must_use]
    pub fn against_steel_modes(&self, bed: Bed) -> [Mode; 3] {
        let crushing = self.crushing(bed);
        let bent = 4.0 * self.yield_moment / (crushing * bed.thickness);
        [
            Mode::new("c", crushing),
            Mode::new("d", crushing * ((2.0 + bent).sqrt() - 1.0)),
            Mode::new("e", 2.3 * (self.yield_moment * bed.embedment * self.diameter).sqrt()),
        ]
    }
}

/// Distances of a bolt from the ends and edges of a member, m (table 8.4; `angle` is that between force and grain, rad).
///
/// An end or edge is loaded when the pin presses towards it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Distances {
    /// To the end.
    pub end: f64,
    /// To the edge.
    pub edge: f64,
}

impl Distances {
    /// What the table asks for. `along` and `across` are the pin's force on the member along its axis, towards the end positive,
    /// and across it, in any unit.
    #[must_use]
    pub fn needed(diameter: f64, along: f64, across: f64) -> Self {
        const LEAST_LOADED_END: f64 = 0.080;
        let force = (along * along + across * across).sqrt();
        let (sine, cosine) = if force > 0.0 { ((across / force).abs(), along / force) } else { (0.0, -1.0) };
        let d = diameter;
        // From 150 to 210 degrees the pin presses away from the end.
        let away = cosine <= -0.75_f64.sqrt();
        let end = if cosine >= 0.0 {
            (7.0 * d).max(LEAST_LOADED_END)
        } else if away {
            4.0 * d
        } else {
            ((1.0 + 6.0 * sine) * d).max(4.0 * d)
        };
        Self { end, edge: ((2.0 + 2.0 * sine) * d).max(3.0 * d) }
    }
}
