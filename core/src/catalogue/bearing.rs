//! Rolling bearings: thrust bearings for the screw, ball bearings as wheels.
//!
//! Boundary sizes are those of the standards. Load ratings are makers' values from memory, rounded down; makers differ
//! by a tenth and more, so the maker's own figure should replace them.

use super::{Source, Standing, listed};
use crate::quantity::{Force, Length};

/// What a bearing carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Duty {
    /// Along the shaft, one way.
    Thrust,
    /// Across the shaft.
    Radial,
}

/// A rolling bearing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bearing {
    /// The row's number, unique in the table.
    pub id: u16,
    /// The designation.
    pub name: &'static str,
    /// What it carries.
    pub duty: Duty,
    /// Inside diameter.
    pub bore: Length,
    /// Outside diameter.
    pub outside: Length,
    /// Width, or height of a thrust bearing.
    pub width: Length,
    /// Static load rating, where remembered.
    pub static_load: Option<Force>,
    /// Where the sizes come from; the load rating is from memory in every row.
    pub source: Source,
}

const ISO_104: Source = Source::new("ISO 104, series 511", Standing::SecondHand);
const ISO_15: Source = Source::new("ISO 15, series 60 and 62", Standing::SecondHand);
const INCH_R: Source = Source::new("Inch series R", Standing::Memory);

const fn thrust(id: u16, name: &'static str, sizes_mm: [f64; 3], static_kn: f64) -> Bearing {
    metric(id, name, Duty::Thrust, sizes_mm, static_kn, ISO_104)
}

const fn ball(id: u16, name: &'static str, sizes_mm: [f64; 3], static_kn: f64) -> Bearing {
    metric(id, name, Duty::Radial, sizes_mm, static_kn, ISO_15)
}

const fn metric(
    id: u16,
    name: &'static str,
    duty: Duty,
    sizes_mm: [f64; 3],
    static_kn: f64,
    source: Source,
) -> Bearing {
    let [bore, outside, width] = sizes_mm;
    Bearing {
        id,
        name,
        duty,
        bore: Length::mm(bore),
        outside: Length::mm(outside),
        width: Length::mm(width),
        static_load: Some(Force::kn(static_kn)),
        source,
    }
}

const fn inch_ball(id: u16, name: &'static str, sizes_inch: [f64; 3]) -> Bearing {
    let [bore, outside, width] = sizes_inch;
    Bearing {
        id,
        name,
        duty: Duty::Radial,
        bore: Length::inch(bore),
        outside: Length::inch(outside),
        width: Length::inch(width),
        static_load: None,
        source: INCH_R,
    }
}

/// Bearings in the order they are offered.
pub static BEARINGS: [Bearing; 19] = [
    thrust(101, "51100", [10.0, 24.0, 9.0], 14.0),
    thrust(102, "51101", [12.0, 26.0, 9.0], 15.0),
    thrust(103, "51102", [15.0, 28.0, 9.0], 16.0),
    thrust(104, "51103", [17.0, 30.0, 9.0], 18.0),
    thrust(105, "51104", [20.0, 35.0, 10.0], 26.0),
    thrust(106, "51105", [25.0, 42.0, 11.0], 35.0),
    thrust(107, "51106", [30.0, 47.0, 11.0], 40.0),
    ball(201, "6000-2RS", [10.0, 26.0, 8.0], 1.9),
    ball(202, "6001-2RS", [12.0, 28.0, 8.0], 2.3),
    ball(203, "6002-2RS", [15.0, 32.0, 9.0], 2.8),
    ball(204, "6003-2RS", [17.0, 35.0, 10.0], 3.2),
    ball(205, "6004-2RS", [20.0, 42.0, 12.0], 4.6),
    ball(206, "6005-2RS", [25.0, 47.0, 12.0], 6.0),
    ball(211, "6201-2RS", [12.0, 32.0, 10.0], 3.0),
    ball(212, "6202-2RS", [15.0, 35.0, 11.0], 3.7),
    ball(213, "6204-2RS", [20.0, 47.0, 14.0], 6.5),
    inch_ball(301, "R8", [0.5, 1.125, 0.3125]),
    inch_ball(302, "R10", [0.625, 1.375, 0.34375]),
    inch_ball(303, "R12", [0.75, 1.625, 0.4375]),
];
listed!(Bearing, BEARINGS);

impl Bearing {
    /// Mean diameter, where the friction of a thrust bearing acts.
    #[must_use]
    pub const fn mean(&self) -> Length {
        Length::from_steps(self.bore.steps().midpoint(self.outside.steps()))
    }
}
