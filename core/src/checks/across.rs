//! How the deck's stock bends across its grain, flatwise.
//!
//! Plain `f64` in SI. A design holds stiffness and strength along the grain alone; what is left across follows from the sort of wood and, of
//! sheet stock, from the row of the catalogue the design agrees with.
use crate::catalogue::panel::{BIRCH_VENEER, is_birch};
use crate::catalogue::species::ACROSS_OF_ALONG;
use crate::catalogue::{Family, Stock};
use crate::design::{self, Design, WoodSort};
use crate::quantity::Length;

/// Strength of solid wood pulled across its grain, Pa: f_t,90,k of EN 338:2016, every class of conifers, every class of broadleaved trees. Taken
/// for bending, of which the standard says nothing across the grain: on the safe side.
const SPLITS: [f64; 2] = [0.4e6, 0.6e6];

/// Shear stiffness flatwise over that on edge: of plywood (rolling shear; Wood Handbook FPL-GTR-190, chapter 5, by ratio), and of solid wood
/// bent across its grain, a tenth (common practice, no source).
const FLATWISE: f64 = 0.25;
const ROLLING: f64 = 0.1;

/// E and bending strength of OSB across over along: EN 300, OSB/3 above 10 to 18 mm: 1400 of 3500 MPa, 10 of 20 MPa (from memory).
const OSB: [f64; 2] = [0.4, 0.5];

/// Plywood of no row is taken with as few layers as PS 1 allows (from memory): three up to this thickness, five above.
const THREE_LAYERS: Length = Length::inch(0.5);

/// What a panel has across its grain.
pub(super) struct Across {
    /// E flatwise, Pa.
    pub modulus: f64,
    /// G flatwise, Pa.
    pub shear: f64,
    /// Bending strength flatwise, nothing taken off yet, Pa.
    pub bending: f64,
    /// What was taken, in words.
    pub words: String,
}

/// E and bending strength of plywood flatwise across the grain of its face, over those on edge along it: an odd number n of equal layers glued
/// crosswise, of which those across the span carry nothing. For three layers or more.
///
/// On edge (n + 1) / 2 n of the section runs along the span. Flatwise across the face it is the layers of the other sense, which have
/// 1 - (n3 + 3 n2 - 2) / 2 n3 of the second moment, the outermost of them (n - 2) / 2 layers off the middle instead of n / 2.
/// Source: transformed section of a layered beam, any text on the strength of materials; the sum over the layers worked out here.
fn crosswise(layers: u16) -> [f64; 2] {
    let n = f64::from(layers);
    let along = (n * n * n + 3.0 * n * n - 2.0) / (2.0 * n * n * n);
    let stiff = (1.0 - along) * 2.0 * n / (n + 1.0);
    [stiff, stiff * n / (n - 2.0)]
}

/// The odd number of veneers that comes nearest to a thickness, three at least.
fn veneers(thickness: Length, veneer: Length) -> u16 {
    let wanted = thickness.to_m() / veneer.to_m();
    let mut layers = 3;
    while f64::from(layers) + 1.0 < wanted {
        layers += 2;
    }
    layers
}

fn plywood(thickness: Length, row: Option<&Stock>) -> ([f64; 2], String) {
    let (layers, why) = if row.is_some_and(is_birch) {
        (veneers(thickness, BIRCH_VENEER), "")
    } else {
        (if thickness > THREE_LAYERS { 5 } else { 3 }, ", as few as are usual")
    };
    (crosswise(layers), format!("plywood across its face, {layers} layers{why}"))
}

/// What a design's deck panel has across its grain.
pub(super) fn across(design: &Design) -> Across {
    let (arms, strength) = (&design.arms, &design.strength);
    let [e, g, f] = [arms.modulus, arms.shear_modulus, strength.bending].map(|along| along.to_pa());
    let solid = match strength.sort {
        WoodSort::Softwood => Some(0),
        WoodSort::Hardwood => Some(1),
        WoodSort::Plywood => None,
    };
    if let Some(sort) = solid {
        return Across {
            modulus: ACROSS_OF_ALONG[sort] * e,
            shear: ROLLING * g,
            bending: f.min(SPLITS[sort]),
            words: "solid wood across its grain".to_owned(),
        };
    }
    let row = design::panel(design);
    let ([stiff, strong], words) = match row.map(|row| row.family) {
        Some(Family::Mdf) => ([1.0, 1.0], "MDF, alike both ways".to_owned()),
        Some(Family::Osb) => (OSB, "OSB across its strands".to_owned()),
        _ => plywood(design.frames.deck_thickness, row),
    };
    Across { modulus: stiff * e, shear: FLATWISE * g, bending: strong * f, words }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The layers' own second moments and areas, added up one by one.
    #[test]
    fn layers_add_up() {
        for layers in [3_u16, 5, 7, 9, 13, 17] {
            let n = f64::from(layers);
            let cube = |side: f64| side * side * side;
            let inertia = |layer: u16| {
                let low = f64::from(layer) - n / 2.0;
                (cube(low + 1.0) - cube(low)) / 3.0
            };
            let across: f64 = (0..layers).filter(|layer| layer % 2 == 1).map(inertia).sum();
            let on_edge = (0..layers).filter(|layer| layer % 2 == 0).count() as f64 / n;
            let stiff = across / (cube(n) / 12.0) / on_edge;
            let [e, f] = crosswise(layers);
            assert!((e - stiff).abs() < 1e-12, "{layers}: {e}, {stiff}");
            assert!((f - stiff * (n / 2.0) / (n / 2.0 - 1.0)).abs() < 1e-12, "{layers}");
        }
    }

    /// Birch plywood of 9, 12 and 18 mm has 7, 9 and 13 veneers (Handbook of Finnish plywood, from memory).
    #[test]
    fn veneers_of_birch() {
        for (thickness, layers) in [(9.0, 7), (12.0, 9), (17.7, 13), (18.0, 13)] {
            assert_eq!(veneers(Length::mm(thickness), BIRCH_VENEER), layers, "{thickness}");
        }
    }
}
