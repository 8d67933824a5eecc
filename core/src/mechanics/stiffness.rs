//! Stiffnesses of the plain parts a table is made of.
//!
//! Plain `f64` in SI: N, m, Pa, kg. Each function names where its formula comes from; what is assumed says so.
/// Give of a nut with its flange and bolts along the screw, N/m. Assumed.
pub const NUT: f64 = 150e6;

/// Give of a thrust bearing along the screw, N/m. Assumed.
pub const THRUST_BEARING: f64 = 200e6;

/// Second moment of area of a rectangle bent over its depth, m4.
#[must_use]
pub fn rectangle(width: f64, depth: f64) -> f64 {
    width * depth * depth * depth / 12.0
}

/// Stiffness of a bar on two supports against a force at its middle, N/m: 48 EI / l^3
/// (Wood Handbook FPL-GTR-190 equation 9-2 with k_b = 1/48). Infinite for no span.
#[must_use]
pub fn bar_at_middle(ei: f64, span: f64) -> f64 {
    48.0 * ei / (span * span * span)
}

/// Stiffness of a bar that stands out of its support against a force at its end, N/m: 3 EI / l^3
/// (same equation with k_b = 1/3). Infinite for no overhang.
#[must_use]
pub fn bar_at_tip(ei: f64, overhang: f64) -> f64 {
    3.0 * ei / (overhang * overhang * overhang)
}

/// Stiffness of a block pressed over its whole section, N/m: E A / l. Infinite for no length.
#[must_use]
pub fn block(e: f64, area: f64, length: f64) -> f64 {
    e * area / length
}

/// Slip of a bolt or dowel in wood for one shear plane, N/m: rho_m^1.5 d / 23 N/mm with rho in kg/m3 and d in mm
/// (EN 1995-1-1 table 7.1). A bushing counts as the dowel. For steel on wood it may be doubled (7.1 (3)).
#[must_use]
pub fn slip(density: f64, diameter: f64) -> f64 {
    libm::pow(density, 1.5) * (diameter * 1e3) / 23.0 * 1e3
}

/// Stiffness of springs one behind the other, N/m. Rigid ones (infinite) do not count; no spring at all is rigid.
#[must_use]
pub fn series(springs: impl IntoIterator<Item = f64>) -> f64 {
    1.0 / springs.into_iter().map(|spring| 1.0 / spring).sum::<f64>()
}
