//! Solid wood: strength classes of EN 338, and species as small clear pieces.

use super::{Family, Source, Standing, Stock, Strength};
use crate::quantity::{Density, Stress};

const EN_338: Source = Source::new("EN 338:2016 tables 1 and 3", Standing::Read);
const HANDBOOK: Source = Source::new(
    "Wood Handbook FPL-GTR-190, clear wood at 12 % moisture; across the grain and in shear by the ratios of EN 338",
    Standing::Read,
);
const HANDBOOK_RATIOS: Source = Source::new(
    "Wood Handbook FPL-GTR-190, clear wood at 12 % moisture, with its elastic ratios across the grain and in shear",
    Standing::Read,
);

const GRADED: &str = "For pieces graded to the class; knots are allowed for.";
const CLEAR: &str = "For pieces without knots; a board from the shop has less.";

/// Strengths in MPa, moduli in GPa, densities in kg/m3, in the order of the standard's table.
struct Class {
    bending: f64,
    across: f64,
    shear: f64,
    modulus: f64,
    modulus_across: f64,
    shear_modulus: f64,
    density_low: f64,
    density: f64,
}

const fn class(id: u16, name: &'static str, family: Family, class: Class) -> Stock {
    Stock {
        id,
        name,
        family,
        nominal: None,
        measured: None,
        sheet: None,
        density: Density::kg_m3(class.density),
        density_low: Some(Density::kg_m3(class.density_low)),
        modulus: Stress::gpa(class.modulus),
        shear_modulus: Stress::gpa(class.shear_modulus),
        modulus_across: Stress::gpa(class.modulus_across),
        bending: Stress::mpa(class.bending),
        bearing_across: Some(Stress::mpa(class.across)),
        shear: Some(Stress::mpa(class.shear)),
        strength: Strength::Characteristic,
        source: EN_338,
        size_source: None,
        advice: GRADED,
    }
}

const fn softwood(id: u16, name: &'static str, values: Class) -> Stock {
    class(id, name, Family::Softwood, values)
}

const fn hardwood(id: u16, name: &'static str, values: Class) -> Stock {
    class(id, name, Family::Hardwood, values)
}

/// Graded wood by strength class.
pub static CLASSES: [Stock; 12] = [
    softwood(
        201,
        "Softwood C16",
        Class {
            bending: 16.0,
            across: 2.2,
            shear: 3.2,
            modulus: 8.0,
            modulus_across: 0.27,
            shear_modulus: 0.5,
            density_low: 310.0,
            density: 370.0,
        },
    ),
    softwood(
        202,
        "Softwood C18",
        Class {
            bending: 18.0,
            across: 2.2,
            shear: 3.4,
            modulus: 9.0,
            modulus_across: 0.3,
            shear_modulus: 0.56,
            density_low: 320.0,
            density: 380.0,
        },
    ),
    softwood(
        203,
        "Softwood C20",
        Class {
            bending: 20.0,
            across: 2.3,
            shear: 3.6,
            modulus: 9.5,
            modulus_across: 0.32,
            shear_modulus: 0.59,
            density_low: 330.0,
            density: 400.0,
        },
    ),
    softwood(
        204,
        "Softwood C22",
        Class {
            bending: 22.0,
            across: 2.4,
            shear: 3.8,
            modulus: 10.0,
            modulus_across: 0.33,
            shear_modulus: 0.63,
            density_low: 340.0,
            density: 410.0,
        },
    ),
    softwood(
        205,
        "Softwood C24",
        Class {
            bending: 24.0,
            across: 2.5,
            shear: 4.0,
            modulus: 11.0,
            modulus_across: 0.37,
            shear_modulus: 0.69,
            density_low: 350.0,
            density: 420.0,
        },
    ),
    softwood(
        206,
        "Softwood C27",
        Class {
            bending: 27.0,
            across: 2.5,
            shear: 4.0,
            modulus: 11.5,
            modulus_across: 0.38,
            shear_modulus: 0.72,
            density_low: 360.0,
            density: 430.0,
        },
    ),
    softwood(
        207,
        "Softwood C30",
        Class {
            bending: 30.0,
            across: 2.7,
            shear: 4.0,
            modulus: 12.0,
            modulus_across: 0.4,
            shear_modulus: 0.75,
            density_low: 380.0,
            density: 460.0,
        },
    ),
    hardwood(
        221,
        "Hardwood D30",
        Class {
            bending: 30.0,
            across: 5.3,
            shear: 3.9,
            modulus: 11.0,
            modulus_across: 0.73,
            shear_modulus: 0.69,
            density_low: 530.0,
            density: 640.0,
        },
    ),
    hardwood(
        222,
        "Hardwood D35",
        Class {
            bending: 35.0,
            across: 5.4,
            shear: 4.1,
            modulus: 12.0,
            modulus_across: 0.8,
            shear_modulus: 0.75,
            density_low: 540.0,
            density: 650.0,
        },
    ),
    hardwood(
        223,
        "Hardwood D40",
        Class {
            bending: 40.0,
            across: 5.5,
            shear: 4.2,
            modulus: 13.0,
            modulus_across: 0.87,
            shear_modulus: 0.81,
            density_low: 550.0,
            density: 660.0,
        },
    ),
    hardwood(
        224,
        "Hardwood D45",
        Class {
            bending: 45.0,
            across: 5.8,
            shear: 4.4,
            modulus: 13.5,
            modulus_across: 0.9,
            shear_modulus: 0.84,
            density_low: 580.0,
            density: 700.0,
        },
    ),
    hardwood(
        225,
        "Hardwood D50",
        Class {
            bending: 50.0,
            across: 6.2,
            shear: 4.5,
            modulus: 14.0,
            modulus_across: 0.93,
            shear_modulus: 0.88,
            density_low: 620.0,
            density: 740.0,
        },
    ),
];

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

const fn psi(value: Option<f64>) -> Option<Stress> {
    match value {
        Some(value) => Some(Stress::psi(value)),
        None => None,
    }
}

const fn species(id: u16, name: &'static str, family: Family, clear: Clear) -> Stock {
    // The ratios of EN 338: E across 1/30 of E for softwoods and 1/15 for hardwoods, G 1/16.
    let (across, shear) = match (clear.ratios, family) {
        (Some(ratios), _) => ratios,
        (None, Family::Hardwood) => (1.0 / 15.0, 1.0 / 16.0),
        (None, _) => (1.0 / 30.0, 1.0 / 16.0),
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
