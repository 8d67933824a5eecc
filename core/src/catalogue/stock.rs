//! What a row of sheet stock or wood says.

use super::{Row, Source, panel, species, wood};
use crate::quantity::{Density, Length, Stress};

/// The sort of wood, as the rules for pins and washers tell them apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Family {
    /// Veneers glued crosswise.
    Plywood,
    /// Veneers glued lengthwise.
    Lvl,
    /// Strands, oriented.
    Osb,
    /// Fibres.
    Mdf,
    /// Solid wood of conifers.
    Softwood,
    /// Solid wood of broadleaved trees.
    Hardwood,
}

/// What a strength value means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Strength {
    /// Reached by 95 of 100 pieces of the class.
    Characteristic,
    /// The mean of small pieces without knots at 12 % moisture; a board has less.
    ClearMean,
    /// Typical of a kind of panel; the sheet at hand may have less.
    Typical,
}

/// Sheet stock or wood. Stiffness and strength are for the direction along the grain of the face or the board.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stock {
    /// The row's number, unique in the table.
    pub id: u16,
    /// What it is called.
    pub name: &'static str,
    /// The sort of wood.
    pub family: Family,
    /// Thickness by name; none for wood that is sawn to any thickness.
    pub nominal: Option<Length>,
    /// Thickness to expect with a caliper.
    pub measured: Option<Length>,
    /// The usual sheet, length along the grain of the face first.
    pub sheet: Option<(Length, Length)>,
    /// Mean density at about 12 % moisture.
    pub density: Density,
    /// Density that 95 of 100 pieces exceed, where known.
    pub density_low: Option<Density>,
    /// Modulus of elasticity E in bending on edge, without shear.
    pub modulus: Stress,
    /// Shear modulus G of an arm bent on edge (through the thickness of a panel).
    pub shear_modulus: Stress,
    /// Modulus of elasticity across the grain, or through the thickness of a panel.
    pub modulus_across: Stress,
    /// Bending strength on edge.
    pub bending: Stress,
    /// Strength under pressure across the grain, or on the face of a panel, where known.
    pub bearing_across: Option<Stress>,
    /// Shear strength along the grain, or through the thickness of a panel, where known.
    pub shear: Option<Stress>,
    /// What the strength values mean.
    pub strength: Strength,
    /// Where the mechanical values come from.
    pub source: Source,
    /// Where thickness and sheet come from.
    pub size_source: Option<Source>,
    /// What the reader should know before relying on the row.
    pub advice: &'static str,
}

impl Row for Stock {
    fn rows() -> impl Iterator<Item = &'static Self> {
        panel::PANELS.iter().chain(wood::CLASSES.iter()).chain(species::SPECIES.iter())
    }

    fn id(&self) -> u16 {
        self.id
    }

    fn name(&self) -> &'static str {
        self.name
    }
}
