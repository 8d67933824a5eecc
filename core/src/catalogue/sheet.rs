//! Sizes in which sheets are sold, length along the grain of the face first.

use super::{Source, Standing, listed};
use crate::quantity::Length;

/// A size of sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SheetSize {
    /// The row's number, unique in the table.
    pub id: u16,
    /// What it is called.
    pub name: &'static str,
    /// Length along the grain of the face.
    pub length: Length,
    /// Width.
    pub width: Length,
    /// Where it comes from.
    pub source: Source,
}

const PRACTICE: Source = Source::new("", Standing::Practice);

const fn metric(id: u16, name: &'static str, length: f64, width: f64) -> SheetSize {
    SheetSize { id, name, length: Length::mm(length), width: Length::mm(width), source: PRACTICE }
}

const fn feet(id: u16, name: &'static str, length: f64, width: f64) -> SheetSize {
    let inches = 12.0;
    SheetSize {
        id,
        name,
        length: Length::inch(length * inches),
        width: Length::inch(width * inches),
        source: PRACTICE,
    }
}

/// Every size, each as a trader sells it.
pub const SHEET_SIZES: [SheetSize; 6] = [
    metric(1, "2440 × 1220 mm", 2440.0, 1220.0),
    metric(2, "2500 × 1250 mm", 2500.0, 1250.0),
    metric(3, "1525 × 1525 mm", 1525.0, 1525.0),
    feet(4, "8 × 4 ft", 8.0, 4.0),
    feet(5, "5 × 5 ft", 5.0, 5.0),
    feet(6, "4 × 4 ft", 4.0, 4.0),
];

listed!(SheetSize, SHEET_SIZES);
