//! Metals, and the sections of cross-bars, axles and straps.
//!
//! Plain SI inside: lengths in metres, areas in m2, second moments in m4.

use core::f64::consts::PI;

use super::{Source, Standing, listed};
use crate::quantity::{Density, Length, Stress};

/// A metal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Metal {
    /// The row's number, unique in the table.
    pub id: u16,
    /// What it is called.
    pub name: &'static str,
    /// Density.
    pub density: Density,
    /// Modulus of elasticity.
    pub modulus: Stress,
    /// Least yield strength.
    pub yield_strength: Stress,
    /// Where the strength comes from. Density and modulus are the usual round values.
    pub source: Source,
}

/// Density of steel, the usual round value.
pub const STEEL_DENSITY: Density = Density::kg_m3(7850.0);
/// Modulus of elasticity of steel, the usual round value (EN 1993-1-1 takes 210 GPa, inch handbooks 200 to 207).
pub const STEEL_MODULUS: Stress = Stress::gpa(205.0);
/// Density of bearing bronze, the usual round value.
pub const BRONZE_DENSITY: Density = Density::kg_m3(8800.0);

const EN_10025: Source = Source::new("EN 10025-2, thickness up to 16 mm", Standing::Memory);
const ASTM_A36: Source = Source::new("ASTM A36", Standing::Memory);
const ASTM_A500: Source = Source::new("ASTM A500 grade B, shaped tube", Standing::Memory);
const EN_10277: Source =
    Source::new("EN 10277, cold drawn C45 from 16 to 40 mm, lower end", Standing::Memory);
const BEARING_BRONZE: Source = Source::new("Cast bearing bronze CuSn7ZnPb (C93200)", Standing::Memory);

const fn steel(id: u16, name: &'static str, yield_mpa: f64, source: Source) -> Metal {
    Metal {
        id,
        name,
        density: STEEL_DENSITY,
        modulus: STEEL_MODULUS,
        yield_strength: Stress::mpa(yield_mpa),
        source,
    }
}

/// Metals in the order they are offered.
pub static METALS: [Metal; 6] = [
    steel(101, "Structural steel S235", 235.0, EN_10025),
    steel(102, "Structural steel S355", 355.0, EN_10025),
    steel(103, "Structural steel A36", 250.0, ASTM_A36),
    steel(104, "Steel tube A500 B", 315.0, ASTM_A500),
    steel(105, "Bright steel bar C45", 340.0, EN_10277),
    Metal {
        id: 201,
        name: "Bearing bronze",
        density: BRONZE_DENSITY,
        modulus: Stress::gpa(100.0),
        yield_strength: Stress::mpa(120.0),
        source: BEARING_BRONZE,
    },
];
listed!(Metal, METALS);

/// The shape of a bar. Corners are taken as sharp; a size that is not above zero has no area and no stiffness.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Section {
    /// A square tube; solid where the wall reaches the middle.
    SquareTube {
        /// Outer side.
        side: Length,
        /// Thickness of the wall.
        wall: Length,
    },
    /// A round bar.
    RoundBar {
        /// Diameter.
        diameter: Length,
    },
    /// A flat bar, bent about the axis along its width.
    FlatBar {
        /// The larger side.
        width: Length,
        /// The smaller side, in the direction of bending.
        thickness: Length,
    },
}

impl Section {
    /// Area, in m2.
    #[must_use]
    pub fn area(self) -> f64 {
        match self {
            Self::SquareTube { side, wall } => {
                let (outer, inner) = tube(side, wall);
                outer * outer - inner * inner
            }
            Self::RoundBar { diameter } => PI / 4.0 * square(size(diameter)),
            Self::FlatBar { width, thickness } => size(width) * size(thickness),
        }
    }

    /// Second moment of area about the axis it bends about, in m4.
    #[must_use]
    pub fn second_moment(self) -> f64 {
        match self {
            Self::SquareTube { side, wall } => {
                let (outer, inner) = tube(side, wall);
                (square(square(outer)) - square(square(inner))) / 12.0
            }
            Self::RoundBar { diameter } => PI / 64.0 * square(square(size(diameter))),
            Self::FlatBar { width, thickness } => {
                size(width) * size(thickness) * square(size(thickness)) / 12.0
            }
        }
    }

    /// Section modulus: the second moment over half the depth, in m3; zero for a section without depth.
    #[must_use]
    pub fn section_modulus(self) -> f64 {
        let depth = match self {
            Self::SquareTube { side, .. } => side,
            Self::RoundBar { diameter } => diameter,
            Self::FlatBar { thickness, .. } => thickness,
        };
        if depth > Length::ZERO { self.second_moment() / (size(depth) / 2.0) } else { 0.0 }
    }
}

/// A length in metres, none below zero.
fn size(length: Length) -> f64 {
    length.max(Length::ZERO).to_m()
}

/// Outer and inner side of a square tube, in metres.
fn tube(side: Length, wall: Length) -> (f64, f64) {
    (size(side), size(side - wall.max(Length::ZERO) * 2))
}

fn square(value: f64) -> f64 {
    value * value
}
