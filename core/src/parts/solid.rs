//! Masses of the plain shapes that parts are taken as, kg.
use crate::catalogue::steel::{BRONZE_DENSITY, STEEL_DENSITY, Section};
use crate::quantity::{Density, Length};

/// A block of three sides.
pub(super) fn block(density: Density, size: [Length; 3]) -> f64 {
    density.to_kg_m3() * size[0].to_m() * size[1].to_m() * size[2].to_m()
}

/// A steel bar or tube of a section.
pub(super) fn steel_bar(section: Section, length: Length) -> f64 {
    STEEL_DENSITY.to_kg_m3() * section.area() * length.to_m()
}

/// A flat piece of steel.
pub(super) fn steel_flat(size: [Length; 3]) -> f64 {
    block(STEEL_DENSITY, size)
}

/// A steel ring or disc with a hole.
pub(super) fn steel_ring(length: Length, outside: Length, inside: Length) -> f64 {
    ring(STEEL_DENSITY, length, outside, inside)
}

/// A bronze bushing or nut.
pub(super) fn bronze_ring(length: Length, outside: Length, inside: Length) -> f64 {
    ring(BRONZE_DENSITY, length, outside, inside)
}

fn ring(density: Density, length: Length, outside: Length, inside: Length) -> f64 {
    let area = |diameter| Section::RoundBar { diameter }.area();
    density.to_kg_m3() * (area(outside) - area(inside)).max(0.0) * length.to_m()
}

/// Density of polyethylene and polyamide discs, between 950 and 1150 kg/m3.
const PLASTIC_DENSITY: Density = Density::kg_m3(1050.0);

/// A plastic disc with a hole.
pub(super) fn plastic_ring(length: Length, outside: Length, inside: Length) -> f64 {
    ring(PLASTIC_DENSITY, length, outside, inside)
}
