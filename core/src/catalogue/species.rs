//! Solid wood by species, as small clear pieces: a board from the shop has knots and less strength.

use super::{Family, Source, Standing, Stock, Strength};
use crate::quantity::{Density, Stress};

const HANDBOOK: Source = Source::new(
    "Wood Handbook FPL-GTR-190, clear wood at 12 % moisture; across the grain and in shear by the ratios of EN 338",
    Standing::Read,
);
const HANDBOOK_RATIOS: Source = Source::new(
    "Wood Handbook FPL-GTR-190, clear wood at 12 % moisture, with its elastic ratios across the grain and in shear",
    Standing::Read,
);

const CLEAR: &str = "For pieces without knots; a board from the shop has less.";

/// One species as tested, in the handbook's own units.
struct Clear {
    /// Specific gravity, oven-dry mass over volume at 12 % moisture.
    gravity: f64,
    /// Modulus of rupture, psi.
    rupture: f64,
    /// Modulus of elasticity from bending tests, million psi.
    elasticity: f64,
    /// Compression across the grain, psi, where read.
    across: Option<f64>,
    /// Shear along the grain, psi, where read.
    shear: Option<f64>,
    /// The handbook's own ratios to E across the grain and in shear (the smaller of its two), where read.
    ratios: Option<(f64, f64)>,
}

/// The bending tests of the handbook, at a span of 14 depths, contain shear: its text gives ten per cent for it.
const WITHOUT_SHEAR: f64 = 1.10;
/// Mass at 12 % moisture over oven-dry mass.
const MOISTURE: f64 = 1.12;

/// E across the grain over E along it, by the ratios of EN 338: of softwoods and of hardwoods.
pub(crate) const ACROSS_OF_ALONG: [f64; 2] = [1.0 / 30.0, 1.0 / 15.0];

const fn psi(value: Option<f64>) -> Option<Stress> {
    match value {
        Some(value) => Some(Stress::psi(value)),
        None => None,
    }
}

const fn species(id: u16, name: &'static str, family: Family, clear: Clear) -> Stock {
    // Where not read, the ratios of EN 338; G is 1/16 of E.
    let (across, shear) = match (clear.ratios, family) {
        (Some(ratios), _) => ratios,
        (None, Family::Hardwood) => (ACROSS_OF_ALONG[1], 1.0 / 16.0),
        (None, _) => (ACROSS_OF_ALONG[0], 1.0 / 16.0),
    };
    let modulus = clear.elasticity * 1e6 * WITHOUT_SHEAR;
    Stock {
        id,
        name,
        family,
        nominal: None,
        measured: None,
        sheet: None,
        density: Density::kg_m3(clear.gravity * MOISTURE * 1000.0),
        density_low: None,
        modulus: Stress::psi(modulus),
        shear_modulus: Stress::psi(modulus * shear),
        modulus_across: Stress::psi(modulus * across),
        bending: Stress::psi(clear.rupture),
        bearing_across: psi(clear.across),
        shear: psi(clear.shear),
        strength: Strength::ClearMean,
        source: if clear.ratios.is_some() { HANDBOOK_RATIOS } else { HANDBOOK },
        size_source: None,
        advice: CLEAR,
    }
}

const fn broadleaf(id: u16, name: &'static str, clear: Clear) -> Stock {
    species(id, name, Family::Hardwood, clear)
}

const fn conifer(id: u16, name: &'static str, clear: Clear) -> Stock {
    species(id, name, Family::Softwood, clear)
}

/// Clear wood by species; only rows whose density, stiffness and bending strength were read.
pub static SPECIES: [Stock; 10] = [
    broadleaf(
        301,
        "Ash, white",
        Clear {
            gravity: 0.6,
            rupture: 15000.0,
            elasticity: 1.74,
            across: Some(1160.0),
            shear: Some(1910.0),
            ratios: None,
        },
    ),
    broadleaf(
        302,
        "Beech, American",
        Clear {
            gravity: 0.64,
            rupture: 14900.0,
            elasticity: 1.72,
            across: Some(1010.0),
            shear: Some(2010.0),
            ratios: None,
        },
    ),
    broadleaf(
        303,
        "Birch, yellow",
        Clear {
            gravity: 0.62,
            rupture: 16600.0,
            elasticity: 2.01,
            across: Some(970.0),
            shear: Some(1880.0),
            ratios: None,
        },
    ),
    broadleaf(
        304,
        "Maple, sugar",
        Clear {
            gravity: 0.63,
            rupture: 15800.0,
            elasticity: 1.83,
            across: Some(1470.0),
            shear: Some(2330.0),
            ratios: Some((0.065, 0.063)),
        },
    ),
    broadleaf(
        305,
        "Oak, white",
        Clear {
            gravity: 0.68,
            rupture: 15200.0,
            elasticity: 1.78,
            across: None,
            shear: None,
            ratios: Some((0.072, 0.086)),
        },
    ),
    conifer(
        321,
        "Douglas-fir, coast",
        Clear {
            gravity: 0.48,
            rupture: 12400.0,
            elasticity: 1.95,
            across: None,
            shear: None,
            ratios: Some((0.05, 0.064)),
        },
    ),
    conifer(
        322,
        "Pine, longleaf",
        Clear { gravity: 0.59, rupture: 14500.0, elasticity: 1.98, across: None, shear: None, ratios: None },
    ),
    conifer(
        323,
        "Pine, shortleaf",
        Clear {
            gravity: 0.51,
            rupture: 13100.0,
            elasticity: 1.75,
            across: Some(820.0),
            shear: Some(1390.0),
            ratios: None,
        },
    ),
    conifer(
        324,
        "Pine, slash",
        Clear {
            gravity: 0.59,
            rupture: 16300.0,
            elasticity: 1.98,
            across: Some(1020.0),
            shear: Some(1680.0),
            ratios: None,
        },
    ),
    conifer(
        325,
        "Pine, ponderosa",
        Clear {
            gravity: 0.4,
            rupture: 9400.0,
            elasticity: 1.29,
            across: Some(580.0),
            shear: Some(1130.0),
            ratios: None,
        },
    ),
];
