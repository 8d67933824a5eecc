//! Rectangular wooden bars with a hole through them, and how much of the wood's strength may be used.
//!
//! Plain `f64` in SI.
use crate::design::{Design, DowelRule, WoodSort};
use crate::mechanics::Section;
use crate::quantity::Stress;

/// A rectangle bent over its depth, with a round hole across its middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rectangle {
    /// Depth in the plane of bending, m.
    pub depth: f64,
    /// Thickness, m.
    pub thickness: f64,
    /// Diameter of the hole, m; zero for none.
    pub hole: f64,
}

impl Rectangle {
    /// Area left beside the hole, m2.
    #[must_use]
    pub fn area(&self) -> f64 {
        self.thickness * (self.depth - self.hole)
    }

    /// Section modulus left above and below the hole, m3: t (w^3 - d^3) / 6 w.
    #[must_use]
    pub fn modulus(&self) -> f64 {
        let cube = |side: f64| side * side * side;
        self.thickness * (cube(self.depth) - cube(self.hole)) / (6.0 * self.depth)
    }

    /// Stress at the edge, Pa: |M| / W + |N| / A.
    #[must_use]
    pub fn edge_stress(&self, section: &Section) -> f64 {
        section.m.abs() / self.modulus() + section.n.abs() / self.area()
    }

    /// The one of two section forces with the greater edge stress; the first of equals.
    #[must_use]
    pub fn worse(&self, most: Section, here: Section) -> Section {
        if self.edge_stress(&here) > self.edge_stress(&most) { here } else { most }
    }

    /// Greatest shear stress, Pa: 3/2 |V| / A.
    #[must_use]
    pub fn shear_stress(&self, section: &Section) -> f64 {
        1.5 * section.v.abs() / self.area()
    }
}

/// What may be used of a strength of the wood, Pa: times k_mod, over gamma_M (EN 1995-1-1, equation 2.14).
pub(super) fn usable(design: &Design, strength: Stress) -> f64 {
    strength.to_pa() * kept(design)
}

/// k_mod over gamma_M. The choice between EN 1995-1-1 and NDS is about pins alone, whose NDS values have their own safety.
pub(super) fn kept(design: &Design) -> f64 {
    design.strength.duration.value() / design.strength.wood_safety.value()
}

/// k_cr of EN 1995-1-1/A1:2008, 6.1.7 (2) (values from memory): the part of a bent piece's thickness that cracks from drying leave for shear.
/// Solid wood 0.67; panels, plywood among them, 1. Veneers glued lengthwise count as solid wood: on the safe side.
pub(super) fn uncracked(design: &Design) -> f64 {
    if design.strength.sort == WoodSort::Plywood { 1.0 } else { 0.67 }
}

/// Whether pins in wood go by EN 1995-1-1.
pub(super) fn by_eurocode(design: &Design) -> bool {
    design.strength.rule == DowelRule::Eurocode
}
