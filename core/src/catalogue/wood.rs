//! Solid wood by the strength classes of EN 338: for pieces graded to a class, knots allowed for.

use super::{Family, Source, Standing, Stock, Strength};
use crate::quantity::{Density, Stress};

const EN_338: Source = Source::new("EN 338:2016", Standing::Read);

const GRADED: &str = "For pieces graded to the class; knots are allowed for.";

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
