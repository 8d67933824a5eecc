//! Bolts in wood by EN 1995-1-1, section 8.
//!
//! Plain `f64` in SI; characteristic values. The expressions were checked against published worked examples and secondary
//! sources, not against the standard's own pages. The rope effect is left out: a pivot must turn, so nothing clamps it.
use super::{Bed, Mode, Plane};
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

/// Every mode of two members of wood, one shear plane, N: (8.6 a) to (8.6 f).
#[must_use]
pub fn single_shear(plane: &Plane) -> [Mode; 6] {
    let [first, second] = plane.beds;
    [
        Mode::new("a", first.crushed()),
        Mode::new("b", second.crushed()),
        Mode::new("c", plane.tilted()),
        Mode::new("d", ONE_HINGE * plane.hinged_beside(0)),
        Mode::new("e", ONE_HINGE * plane.hinged_beside(1)),
        Mode::new("f", TWO_HINGES * plane.bent()),
    ]
}

/// Every mode of wood on both sides of wood, the outer member first, N for each of the two shear planes: (8.7 g) to (8.7 k).
#[must_use]
pub fn double_shear(plane: &Plane) -> [Mode; 4] {
    let [outer, inner] = plane.beds;
    [
        Mode::new("g", outer.crushed()),
        Mode::new("h", 0.5 * inner.crushed()),
        Mode::new("j", ONE_HINGE * plane.hinged_beside(0)),
        Mode::new("k", TWO_HINGES * plane.bent()),
    ]
}

/// The code's factors on modes in which the bolt bends.
const ONE_HINGE: f64 = 1.05;
const TWO_HINGES: f64 = 1.15;

/// Every mode of wood against steel that holds the bolt square, one shear plane, thick plate, N: (8.10 c) to (8.10 e).
#[must_use]
pub fn against_steel(bed: Bed, yield_moment: f64) -> [Mode; 3] {
    let crushed = bed.crushed();
    let bent = 4.0 * yield_moment / (crushed * bed.thickness);
    [
        Mode::new("c", crushed),
        Mode::new("d", crushed * ((2.0 + bent).sqrt() - 1.0)),
        Mode::new("e", 2.3 * (yield_moment * bed.line()).sqrt()),
    ]
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
