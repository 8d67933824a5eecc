//! Bolts in wood by EN 1995-1-1, section 8.
//!
//! Plain `f64` in SI; characteristic values. The expressions were checked against published worked examples and secondary
//! sources, not against the standard's own pages. The rope effect is left out: a pivot must turn, so nothing clamps it.
use super::{Mode, least};
use crate::design::WoodSort;

/// Embedment strength of the wood under a pin, Pa, with the force at `angle` (rad) to the grain.
///
/// Solid wood: 0.082 (1 - 0.01 d) rho_k over k90 sin^2 + cos^2, k90 = 1.35 + 0.015 d for softwood and 0.90 + 0.015 d for hardwood
/// (8.31 to 8.33); plywood: 0.11 (1 - 0.01 d) rho_k in every direction (8.36). d in mm, at most 30; rho_k in kg/m3; MPa.
#[must_use]
pub fn embedment(sort: WoodSort, density_low: f64, diameter: f64, angle: f64) -> f64 {
    let d = diameter * 1e3;
    let slim = (1.0 - 0.01 * d).max(0.0) * density_low * 1e6;
    let across = |k90: f64| {
        let sine = libm::sin(angle);
        0.082 * slim / (1.0 + (k90 - 1.0) * sine * sine)
    };
    match sort {
        WoodSort::Plywood => 0.11 * slim,
        WoodSort::Softwood => across(1.35 + 0.015 * d),
        WoodSort::Hardwood => across(0.90 + 0.015 * d),
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
        let beta = second.embedment / first.embedment;
        let r = second.thickness / first.thickness;
        let root = beta + 2.0 * beta * beta * (1.0 + r + r * r) + beta * beta * beta * r * r;
        let tilted = self.crushing(first) / (1.0 + beta) * (root.sqrt() - beta * (1.0 + r));
        least([
            ("a", self.crushing(first)),
            ("b", self.crushing(second)),
            ("c", tilted),
            ("d", self.one_hinge(first, beta)),
            ("e", self.one_hinge(second, 1.0 / beta)),
            ("f", self.two_hinges(first, beta)),
        ])
    }

    /// Wood on both sides of wood: the least of (8.7 g) to (8.7 k), N for each of the two shear planes.
    #[must_use]
    pub fn double_shear(&self, outer: Bed, inner: Bed) -> Mode {
        let beta = inner.embedment / outer.embedment;
        least([
            ("g", self.crushing(outer)),
            ("h", 0.5 * self.crushing(inner)),
            ("j", self.one_hinge(outer, beta)),
            ("k", self.two_hinges(outer, beta)),
        ])
    }

    /// Wood against steel that holds the bolt square, one shear plane: the least of (8.10 c) to (8.10 e), thick plate, N.
    #[must_use]
    pub fn against_steel(&self, bed: Bed) -> Mode {
        let crushing = self.crushing(bed);
        let bent = 4.0 * self.yield_moment / (crushing * bed.thickness);
        least([
            ("c", crushing),
            ("d", crushing * ((2.0 + bent).sqrt() - 1.0)),
            ("e", 2.3 * (self.yield_moment * bed.embedment * self.diameter).sqrt()),
        ])
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
        let force = libm::hypot(along, across);
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
