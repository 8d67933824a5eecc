//! Strength of bolts by the marks on their heads.

use super::{Source, Standing, listed};
use crate::quantity::{Length, Stress};

/// A strength class or grade of bolts, over a range of sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoltClass {
    /// The row's number, unique in the table.
    pub id: u16,
    /// The mark, with the range of sizes where the values depend on it.
    pub name: &'static str,
    /// The diameters it holds for, ends included.
    pub sizes: (Length, Length),
    /// Least tensile strength.
    pub tensile: Stress,
    /// Least yield strength, or 0.2 % proof strength.
    pub yield_strength: Stress,
    /// Proof stress: stands without lasting stretch.
    pub proof: Stress,
    /// Where the values come from.
    pub source: Source,
}

const ISO_898_1: Source = Source::new("ISO 898-1, table of mechanical properties", Standing::Read);
const SAE_J429: Source = Source::new("SAE J429, grades of bolts", Standing::Read);

const fn iso(
    id: u16,
    name: &'static str,
    sizes_mm: (f64, f64),
    tensile: f64,
    yields: f64,
    proof: f64,
) -> BoltClass {
    BoltClass {
        id,
        name,
        sizes: (Length::mm(sizes_mm.0), Length::mm(sizes_mm.1)),
        tensile: Stress::mpa(tensile),
        yield_strength: Stress::mpa(yields),
        proof: Stress::mpa(proof),
        source: ISO_898_1,
    }
}

const fn sae(
    id: u16,
    name: &'static str,
    sizes_inch: (f64, f64),
    tensile: f64,
    yields: f64,
    proof: f64,
) -> BoltClass {
    const KSI: f64 = 1000.0;
    BoltClass {
        id,
        name,
        sizes: (Length::inch(sizes_inch.0), Length::inch(sizes_inch.1)),
        tensile: Stress::psi(tensile * KSI),
        yield_strength: Stress::psi(yields * KSI),
        proof: Stress::psi(proof * KSI),
        source: SAE_J429,
    }
}

/// The sizes ISO 898-1 covers, in mm.
const ISO_SIZES: (f64, f64) = (1.6, 39.0);

/// Classes in the order they are offered.
pub static BOLT_CLASSES: [BoltClass; 16] = [
    iso(101, "4.6", ISO_SIZES, 400.0, 240.0, 225.0),
    iso(102, "4.8", ISO_SIZES, 420.0, 340.0, 310.0),
    iso(103, "5.6", ISO_SIZES, 500.0, 300.0, 280.0),
    iso(104, "5.8", ISO_SIZES, 520.0, 420.0, 380.0),
    iso(105, "6.8", ISO_SIZES, 600.0, 480.0, 440.0),
    iso(106, "8.8 up to M16", (1.6, 16.0), 800.0, 640.0, 580.0),
    iso(107, "8.8 above M16", (16.001, 39.0), 830.0, 660.0, 600.0),
    iso(108, "9.8", (1.6, 16.0), 900.0, 720.0, 650.0),
    iso(109, "10.9", ISO_SIZES, 1040.0, 940.0, 830.0),
    iso(110, "12.9", ISO_SIZES, 1220.0, 1100.0, 970.0),
    sae(201, "Grade 1, 1/4 to 1 1/2 in", (0.25, 1.5), 60.0, 36.0, 33.0),
    sae(202, "Grade 2, 1/4 to 3/4 in", (0.25, 0.75), 74.0, 57.0, 55.0),
    sae(203, "Grade 2, 7/8 to 1 1/2 in", (0.875, 1.5), 60.0, 36.0, 33.0),
    sae(204, "Grade 5, 1/4 to 1 in", (0.25, 1.0), 120.0, 92.0, 85.0),
    sae(205, "Grade 5, 1 1/8 to 1 1/2 in", (1.125, 1.5), 105.0, 81.0, 74.0),
    sae(206, "Grade 8, 1/4 to 1 1/2 in", (0.25, 1.5), 150.0, 130.0, 120.0),
];
listed!(BoltClass, BOLT_CLASSES);

impl BoltClass {
    /// Whether the values hold for bolts of that diameter.
    #[must_use]
    pub fn covers(&self, diameter: Length) -> bool {
        self.sizes.0 <= diameter && diameter <= self.sizes.1
    }
}
