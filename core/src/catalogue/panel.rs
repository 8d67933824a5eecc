//! Sheet stock. Every row is typical at best: panels differ from mill to mill, so each value may be overwritten.
//!
//! Plywood has two shear moduli. The one here is through the thickness, which an arm on edge feels; flatwise, as in a
//! deck, it is about a quarter of that.

use super::{Family, Source, Standing, Stock, Strength};
use crate::quantity::{Density, Length, Stress};

const CHECK_SHEET: &str = "Typical, check your sheet.";

/// Thickness and sheets of birch plywood.
const BIRCH_SHEET: Source =
    Source::new("Birch plywood data sheet of a trader: thickness mean and limits", Standing::SecondHand);
/// Thickness of structural plywood for North America.
const PS1: Source = Source::new(
    "US Voluntary Product Standard PS 1, performance categories: least and most thickness",
    Standing::SecondHand,
);
const PANEL_PRACTICE: Source = Source::new("", Standing::Practice);

const BIRCH: Source = Source::new("Birch plywood, every ply birch", Standing::Assumed);
const EXTERIOR: Source = Source::new(
    "Softwood plywood; E and bending strength within Wood Handbook FPL-GTR-190 table 12-1",
    Standing::Assumed,
);

/// Thickness of a veneer of birch plywood (makers' sheets, second hand).
pub(crate) const BIRCH_VENEER: Length = Length::mm(1.4);

/// Whether a row is birch plywood, every ply birch.
pub(crate) fn is_birch(row: &Stock) -> bool {
    row.source == BIRCH
}

/// Birch plywood of [`BIRCH_VENEER`]s, named and measured thickness in mm.
const fn birch(id: u16, name: &'static str, nominal: f64, measured: f64) -> Stock {
    Stock {
        id,
        name,
        family: Family::Plywood,
        nominal: Some(Length::mm(nominal)),
        measured: Some(Length::mm(measured)),
        sheet: Some((Length::mm(1525.0), Length::mm(1525.0))),
        density: Density::kg_m3(680.0),
        density_low: Some(Density::kg_m3(630.0)),
        modulus: Stress::gpa(9.0),
        shear_modulus: Stress::gpa(0.62),
        modulus_across: Stress::gpa(0.6),
        bending: Stress::mpa(35.0),
        bearing_across: Some(Stress::mpa(5.0)),
        shear: Some(Stress::mpa(7.0)),
        strength: Strength::Typical,
        source: BIRCH,
        size_source: Some(BIRCH_SHEET),
        advice: CHECK_SHEET,
    }
}

/// Exterior softwood plywood of a PS 1 performance category, thickness in inches.
const fn exterior(id: u16, name: &'static str, category: f64) -> Stock {
    Stock {
        id,
        name,
        family: Family::Plywood,
        nominal: Some(Length::inch(category)),
        // PS 1 allows 1/32 in either side of the category, so the category is the middle.
        measured: Some(Length::inch(category)),
        sheet: Some((Length::inch(96.0), Length::inch(48.0))),
        density: Density::kg_m3(560.0),
        density_low: Some(Density::kg_m3(410.0)),
        modulus: Stress::gpa(7.5),
        shear_modulus: Stress::gpa(0.5),
        modulus_across: Stress::gpa(0.4),
        bending: Stress::mpa(33.72),
        bearing_across: Some(Stress::mpa(3.0)),
        shear: Some(Stress::mpa(3.5)),
        strength: Strength::Typical,
        source: EXTERIOR,
        size_source: Some(PS1),
        advice: CHECK_SHEET,
    }
}

/// Sheet stock in the order it is offered.
pub static PANELS: [Stock; 11] = [
    birch(101, "Birch plywood 12 mm", 12.0, 12.0),
    birch(102, "Birch plywood 15 mm", 15.0, 14.9),
    birch(103, "Birch plywood 18 mm", 18.0, 17.7),
    birch(104, "Birch plywood 21 mm", 21.0, 20.5),
    birch(105, "Birch plywood 24 mm", 24.0, 23.4),
    exterior(111, "Exterior softwood plywood 15/32 in", 15.0 / 32.0),
    exterior(112, "Exterior softwood plywood 19/32 in", 19.0 / 32.0),
    exterior(113, "Exterior softwood plywood 23/32 in", 23.0 / 32.0),
    Stock {
        id: 121,
        name: "MDF 18 mm",
        family: Family::Mdf,
        nominal: Some(Length::mm(18.0)),
        measured: Some(Length::mm(18.0)),
        sheet: Some((Length::mm(2440.0), Length::mm(1220.0))),
        density: Density::kg_m3(800.0),
        density_low: None,
        modulus: Stress::gpa(3.59),
        shear_modulus: Stress::gpa(1.0),
        modulus_across: Stress::gpa(0.1),
        bending: Stress::mpa(35.85),
        bearing_across: None,
        shear: None,
        strength: Strength::Typical,
        source: Source::new(
            "Wood Handbook FPL-GTR-190 table 12-1 (density middle of its range, E, bending strength); shear modulus and modulus across assumed",
            Standing::Read,
        ),
        size_source: Some(PANEL_PRACTICE),
        advice: "Measured flatwise. Creeps under lasting load and splits at pins in its edge: not for arms.",
    },
    Stock {
        id: 122,
        name: "OSB 18 mm",
        family: Family::Osb,
        nominal: Some(Length::mm(18.0)),
        measured: Some(Length::mm(18.0)),
        sheet: Some((Length::mm(2440.0), Length::mm(1220.0))),
        density: Density::kg_m3(650.0),
        density_low: None,
        modulus: Stress::gpa(4.41),
        shear_modulus: Stress::gpa(1.0),
        modulus_across: Stress::gpa(0.1),
        bending: Stress::mpa(21.8),
        bearing_across: None,
        shear: None,
        strength: Strength::Typical,
        source: Source::new(
            "Wood Handbook FPL-GTR-190 table 12-1 (density middle, E and bending strength lower end of their ranges); shear modulus and modulus across assumed",
            Standing::Read,
        ),
        size_source: Some(PANEL_PRACTICE),
        advice: "Typical, check your sheet. Edges crumble at drilled holes.",
    },
    Stock {
        id: 131,
        name: "LVL 39 mm",
        family: Family::Lvl,
        nominal: Some(Length::mm(39.0)),
        measured: Some(Length::mm(39.0)),
        sheet: None,
        density: Density::kg_m3(550.0),
        density_low: None,
        modulus: Stress::gpa(8.96),
        shear_modulus: Stress::gpa(0.5),
        modulus_across: Stress::gpa(0.3),
        bending: Stress::mpa(33.78),
        bearing_across: None,
        shear: None,
        strength: Strength::Typical,
        source: Source::new(
            "Wood Handbook FPL-GTR-190 table 12-1 (density middle, E and bending strength lower end of their ranges); shear modulus and modulus across assumed",
            Standing::Read,
        ),
        size_source: Some(PANEL_PRACTICE),
        advice: "Typical; the maker's certificate usually allows more.",
    },
];
