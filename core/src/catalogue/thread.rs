//! Screw threads: nominal diameter and pitch by table, everything else by the formula of the series.
//!
//! Lengths of the profile are the basic or design sizes, without tolerances.

use core::f64::consts::PI;

use super::{Source, Standing, listed};
use crate::quantity::{Angle, Length};

/// A family of threads with one profile.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Series {
    /// ISO metric trapezoidal, flanks at 30° to each other.
    Trapezoidal,
    /// ISO metric with coarse pitch, flanks at 60°: threaded rod.
    MetricCoarse,
    /// Unified coarse, flanks at 60°: threaded rod in inches.
    Unc,
    /// General-purpose Acme, flanks at 29°.
    Acme,
}

/// One thread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thread {
    /// The row's number, unique in the table.
    pub id: u16,
    /// The designation.
    pub name: &'static str,
    /// The family.
    pub series: Series,
    /// Number of ridges that wind side by side.
    pub starts: u8,
    /// Where diameter and pitch come from.
    pub source: Source,
    major_mm: f64,
    pitch_mm: f64,
}

const MM_OF_INCH: f64 = 25.4;

const ISO_2904: &str = "ISO 2904 (trapezoidal threads, basic sizes)";
const TR_READ: Source = Source::new(ISO_2904, Standing::SecondHand);
const TR_FORMULA: Source = Source::new(ISO_2904, Standing::Formula);
const TR_STARTS: Source = Source::new(
    "ISO 2904 profile; the pairing of diameter and starts is a common stock size",
    Standing::Practice,
);
const ISO_724: Source = Source::new("ISO 724 and ISO 898-1 (metric coarse)", Standing::Read);
const B1_1: Source = Source::new("ASME B1.1 (unified coarse), as in Shigley 9e table 8-2", Standing::Read);
const B1_5: Source =
    Source::new("ASME B1.5 (general-purpose Acme); clearance at the root from memory", Standing::Read);
const B1_5_FORMULA: Source =
    Source::new("ASME B1.5 (general-purpose Acme); clearance at the root from memory", Standing::Formula);

const fn trapezoidal(id: u16, name: &'static str, major_mm: f64, pitch_mm: f64, source: Source) -> Thread {
    Thread { id, name, series: Series::Trapezoidal, starts: 1, source, major_mm, pitch_mm }
}

const fn multi_start(id: u16, name: &'static str, major_mm: f64, pitch_mm: f64, starts: u8) -> Thread {
    Thread { id, name, series: Series::Trapezoidal, starts, source: TR_STARTS, major_mm, pitch_mm }
}

const fn metric(id: u16, name: &'static str, major_mm: f64, pitch_mm: f64) -> Thread {
    Thread { id, name, series: Series::MetricCoarse, starts: 1, source: ISO_724, major_mm, pitch_mm }
}

const fn unc(id: u16, name: &'static str, major_inch: f64, per_inch: f64) -> Thread {
    let (major_mm, pitch_mm) = (major_inch * MM_OF_INCH, MM_OF_INCH / per_inch);
    Thread { id, name, series: Series::Unc, starts: 1, source: B1_1, major_mm, pitch_mm }
}

const fn acme(id: u16, name: &'static str, major_inch: f64, per_inch: f64) -> Thread {
    let (major_mm, pitch_mm) = (major_inch * MM_OF_INCH, MM_OF_INCH / per_inch);
    Thread { id, name, series: Series::Acme, starts: 1, source: B1_5, major_mm, pitch_mm }
}

/// A row whose printed line was not read.
const fn acme_formula(id: u16, name: &'static str, major_inch: f64, per_inch: f64) -> Thread {
    Thread { source: B1_5_FORMULA, ..acme(id, name, major_inch, per_inch) }
}

/// The least thread friction that holds a load without a hand on the crank: the tangent of the lead angle times the cosine of
/// the flank angle (Shigley's Mechanical Engineering Design 9e, section 8-2, with the flank). A bearing's friction helps and
/// is not counted; shaking lowers friction.
#[must_use]
pub fn holding_friction(lead: Length, mean: Length, flank: Angle) -> f64 {
    lead.to_m() / (PI * mean.to_m()) * libm::cos(flank.to_radians())
}

/// Threads in the order they are offered.
pub static THREADS: [Thread; 51] = [
    trapezoidal(101, "Tr 8 x 1.5", 8.0, 1.5, TR_READ),
    trapezoidal(102, "Tr 10 x 2", 10.0, 2.0, TR_READ),
    trapezoidal(103, "Tr 12 x 3", 12.0, 3.0, TR_READ),
    trapezoidal(104, "Tr 14 x 3", 14.0, 3.0, TR_READ),
    trapezoidal(105, "Tr 16 x 4", 16.0, 4.0, TR_READ),
    trapezoidal(106, "Tr 18 x 4", 18.0, 4.0, TR_FORMULA),
    trapezoidal(107, "Tr 20 x 4", 20.0, 4.0, TR_FORMULA),
    trapezoidal(108, "Tr 22 x 5", 22.0, 5.0, TR_FORMULA),
    trapezoidal(109, "Tr 24 x 5", 24.0, 5.0, TR_FORMULA),
    trapezoidal(110, "Tr 26 x 5", 26.0, 5.0, TR_FORMULA),
    trapezoidal(111, "Tr 28 x 5", 28.0, 5.0, TR_FORMULA),
    trapezoidal(112, "Tr 30 x 6", 30.0, 6.0, TR_FORMULA),
    trapezoidal(113, "Tr 32 x 6", 32.0, 6.0, TR_FORMULA),
    trapezoidal(114, "Tr 36 x 6", 36.0, 6.0, TR_FORMULA),
    trapezoidal(115, "Tr 40 x 7", 40.0, 7.0, TR_FORMULA),
    multi_start(151, "Tr 8 x 8 (P2)", 8.0, 2.0, 4),
    multi_start(152, "Tr 10 x 4 (P2)", 10.0, 2.0, 2),
    multi_start(153, "Tr 12 x 6 (P3)", 12.0, 3.0, 2),
    multi_start(154, "Tr 16 x 8 (P4)", 16.0, 4.0, 2),
    multi_start(155, "Tr 20 x 8 (P4)", 20.0, 4.0, 2),
    metric(201, "M6", 6.0, 1.0),
    metric(202, "M8", 8.0, 1.25),
    metric(203, "M10", 10.0, 1.5),
    metric(204, "M12", 12.0, 1.75),
    metric(205, "M14", 14.0, 2.0),
    metric(206, "M16", 16.0, 2.0),
    metric(207, "M18", 18.0, 2.5),
    metric(208, "M20", 20.0, 2.5),
    metric(209, "M22", 22.0, 2.5),
    metric(210, "M24", 24.0, 3.0),
    unc(301, "1/4-20 UNC", 0.25, 20.0),
    unc(302, "5/16-18 UNC", 0.3125, 18.0),
    unc(303, "3/8-16 UNC", 0.375, 16.0),
    unc(304, "7/16-14 UNC", 0.4375, 14.0),
    unc(305, "1/2-13 UNC", 0.5, 13.0),
    unc(306, "9/16-12 UNC", 0.5625, 12.0),
    unc(307, "5/8-11 UNC", 0.625, 11.0),
    unc(308, "3/4-10 UNC", 0.75, 10.0),
    unc(309, "7/8-9 UNC", 0.875, 9.0),
    unc(310, "1-8 UNC", 1.0, 8.0),
    acme(401, "1/4-16 Acme", 0.25, 16.0),
    acme(402, "5/16-14 Acme", 0.3125, 14.0),
    acme(403, "3/8-12 Acme", 0.375, 12.0),
    acme(404, "7/16-12 Acme", 0.4375, 12.0),
    acme(405, "1/2-10 Acme", 0.5, 10.0),
    acme(406, "5/8-8 Acme", 0.625, 8.0),
    acme(407, "3/4-6 Acme", 0.75, 6.0),
    acme(408, "7/8-6 Acme", 0.875, 6.0),
    acme(409, "1-5 Acme", 1.0, 5.0),
    acme_formula(410, "1-1/8-5 Acme", 1.125, 5.0),
    acme_formula(411, "1-1/4-5 Acme", 1.25, 5.0),
];
listed!(Thread, THREADS);

impl Thread {
    /// Outside diameter.
    #[must_use]
    pub const fn major(&self) -> Length {
        Length::mm(self.major_mm)
    }

    /// Distance from one ridge to the next.
    #[must_use]
    pub const fn pitch(&self) -> Length {
        Length::mm(self.pitch_mm)
    }

    /// Travel of the nut in one turn.
    #[must_use]
    pub const fn lead(&self) -> Length {
        Length::mm(self.lead_mm())
    }

    /// Mean (pitch) diameter, where ridge and groove are equally wide.
    #[must_use]
    pub const fn mean(&self) -> Length {
        Length::mm(self.mean_mm())
    }

    /// Root diameter of the screw.
    #[must_use]
    pub const fn root(&self) -> Length {
        Length::mm(self.root_mm())
    }

    /// Half the angle between two flanks.
    #[must_use]
    pub const fn flank(&self) -> Angle {
        match self.series {
            Series::Trapezoidal => Angle::degrees(15.0),
            Series::MetricCoarse | Series::Unc => Angle::degrees(30.0),
            Series::Acme => Angle::degrees(14.5),
        }
    }

    /// The angle at which a ridge climbs at the mean diameter, in radians.
    #[must_use]
    pub fn lead_angle(&self) -> f64 {
        libm::atan(self.lead_mm() / (PI * self.mean_mm()))
    }

    /// The least thread friction that holds a load: see [`holding_friction`].
    #[must_use]
    pub fn holding_friction(&self) -> f64 {
        holding_friction(self.lead(), self.mean(), self.flank())
    }

    /// Area of the root circle, in m2.
    #[must_use]
    pub const fn root_area(&self) -> f64 {
        circle(self.root_mm())
    }

    /// Area of a circle half-way between mean and root diameter, in m2: the tensile stress area of ISO 898-1 and of
    /// ASME B1.1.
    #[must_use]
    pub const fn stress_area(&self) -> f64 {
        circle((self.mean_mm() + self.root_mm()) / 2.0)
    }

    const fn lead_mm(&self) -> f64 {
        self.pitch_mm * self.starts as f64
    }

    const fn mean_mm(&self) -> f64 {
        let part = match self.series {
            Series::Trapezoidal | Series::Acme => 0.5,
            // Three eighths of the height of the sharp triangle, either side: 3/4 of sqrt(3)/2.
            Series::MetricCoarse | Series::Unc => 0.649_519,
        };
        self.major_mm - part * self.pitch_mm
    }

    const fn root_mm(&self) -> f64 {
        let depth = match self.series {
            Series::Trapezoidal => self.pitch_mm + 2.0 * crest_clearance(self.pitch_mm),
            // 17/12 of the height of the sharp triangle: rounded root.
            Series::MetricCoarse => 1.226_869 * self.pitch_mm,
            // One and a half times that height, flat root: the minor area of Shigley 9e table 8-2.
            Series::Unc => 1.299_038 * self.pitch_mm,
            Series::Acme => self.pitch_mm + acme_clearance(self.pitch_mm),
        };
        self.major_mm - depth
    }
}

/// Crest clearance ac of ISO 2904, in mm, for pitches of the table.
const fn crest_clearance(pitch_mm: f64) -> f64 {
    if pitch_mm < 2.0 {
        0.15
    } else if pitch_mm < 6.0 {
        0.25
    } else {
        0.5
    }
}

/// Clearance on the root diameter, in mm: 0.020 in up to 10 threads an inch, 0.010 in for finer ones.
const fn acme_clearance(pitch_mm: f64) -> f64 {
    if pitch_mm > MM_OF_INCH / 11.0 { 0.020 * MM_OF_INCH } else { 0.010 * MM_OF_INCH }
}

/// Area of a circle in m2, from its diameter in mm.
const fn circle(diameter_mm: f64) -> f64 {
    PI / 4.0 * (diameter_mm * 1e-3) * (diameter_mm * 1e-3)
}
