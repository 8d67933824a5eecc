//! Volumes and densities of the plain shapes that parts are taken as.
use core::f64::consts::PI;

/// Density of structural steel, kg/m3 (EN 1991-1-1 table A.4 gives 77.0 to 78.5 kN/m3).
pub(super) const STEEL: f64 = 7850.0;

/// Density of bronze, kg/m3 (EN 1991-1-1 table A.4 gives 83 to 85 kN/m3 for bronze; cast tin bronze is heavier, 8800).
pub(super) const BRONZE: f64 = 8800.0;

/// Volume of a block of three sides.
pub(super) fn block(a: f64, b: f64, c: f64) -> f64 {
    a * b * c
}

/// Volume of a round bar.
pub(super) fn round(length: f64, diameter: f64) -> f64 {
    PI / 4.0 * diameter * diameter * length
}

/// Volume of a round tube or ring.
pub(super) fn ring(length: f64, outside: f64, inside: f64) -> f64 {
    (round(length, outside) - round(length, inside)).max(0.0)
}

/// Volume of a square tube with sharp corners; a wall of half the side or more is a solid bar.
pub(super) fn square_tube(length: f64, side: f64, wall: f64) -> f64 {
    let hollow = (side - 2.0 * wall).max(0.0);
    length * (side * side - hollow * hollow)
}

/// Volume of a hexagon bolt with its nut over a grip.
///
/// Shank of the grip and 1.5 diameters for washers, nut and the end that shows; head 0.65 and nut 0.8 diameters high,
/// 1.5 diameters across flats (rounded proportions of ISO 4014 and ISO 4032).
pub(super) fn bolt(diameter: f64, grip: f64) -> f64 {
    let across_flats = 1.5 * diameter;
    let hexagon = 0.866 * across_flats * across_flats;
    round(grip + 1.5 * diameter, diameter) + hexagon * (0.65 + 0.8) * diameter - round(0.8 * diameter, diameter)
}
