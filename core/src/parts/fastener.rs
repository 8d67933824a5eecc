//! Bolts, nuts, washers and wood screws: their usual sizes and lengths.
use super::solid::{steel_bar, steel_ring};
use crate::catalogue::steel::{STEEL_DENSITY, Section};
use crate::catalogue::thread::{Series, THREADS};
use crate::quantity::Length;

/// Height of a bolt's head, its width across flats, and the height of a self-locking nut, in diameters: rounded proportions of ISO 4014 and of
/// nuts with a plastic insert (from memory).
const HEAD: f64 = 0.65;
const FLATS: f64 = 1.5;
const NUT: f64 = 1.0;

/// Corner to corner of a hexagon of width one, and its area.
const CORNERS: f64 = 1.154_700_538_379_251_5;
const HEXAGON: f64 = 0.866_025_403_784_438_6;

/// Pitch of a thread that is in no table, in diameters (common practice).
const COARSE: f64 = 0.125;

/// A wood screw weighs so much of a bar of its size (common practice, no source): its core is thinner than its thread.
const SCREW_FILL: f64 = 0.5;

/// Flat washers, mm: bolt, outside, thickness. ISO 7089, from memory.
const WASHERS: [[f64; 3]; 9] = [
    [5.0, 10.0, 1.0],
    [6.0, 12.0, 1.6],
    [8.0, 16.0, 1.6],
    [10.0, 20.0, 2.0],
    [12.0, 24.0, 2.5],
    [14.0, 28.0, 2.5],
    [16.0, 30.0, 3.0],
    [20.0, 37.0, 3.0],
    [24.0, 44.0, 4.0],
];

/// Flat washers, inches: bolt, outside, thickness. SAE series, from memory.
const INCH_WASHERS: [[f64; 3]; 7] = [
    [0.25, 0.625, 0.065],
    [0.3125, 0.6875, 0.065],
    [0.375, 0.8125, 0.065],
    [0.5, 1.0625, 0.095],
    [0.625, 1.3125, 0.095],
    [0.75, 1.5, 0.134],
    [1.0, 2.0, 0.134],
];

/// A washer of no table: outside and thickness in bolt diameters.
const WASHER_OUTSIDE: f64 = 1.9;
const WASHER_THICK: f64 = 0.19;

/// A bolt's size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BoltSize {
    /// Diameter of its thread.
    pub diameter: Length,
}

impl BoltSize {
    /// Whether it is sold in inches: its diameter is a whole number of sixteenths.
    #[must_use]
    pub fn is_inch(self) -> bool {
        self.diameter.steps() > 0 && self.diameter.steps() % Length::inch(1.0 / 16.0).steps() == 0
    }

    fn pitch(self) -> Length {
        let series = if self.is_inch() { Series::Unc } else { Series::MetricCoarse };
        THREADS
            .iter()
            .find(|row| row.series == series && row.major() == self.diameter)
            .map_or_else(|| self.diameters(COARSE), |row| row.pitch())
    }

    /// The designation of its thread: `M16`, `1/2-13 UNC`; its diameter where no table has it.
    #[must_use]
    pub fn thread(self) -> Option<&'static str> {
        let series = if self.is_inch() { Series::Unc } else { Series::MetricCoarse };
        THREADS.iter().find(|row| row.series == series && row.major() == self.diameter).map(|row| row.name)
    }

    fn diameters(self, times: f64) -> Length {
        Length::m(self.diameter.to_m() * times)
    }

    /// Height of its head.
    #[must_use]
    pub fn head(self) -> Length {
        self.diameters(HEAD)
    }

    /// Width of head and nut across flats.
    #[must_use]
    pub fn flats(self) -> Length {
        self.diameters(FLATS)
    }

    /// Radius of head and nut at their corners, m.
    #[must_use]
    pub fn corner_radius(self) -> f64 {
        self.diameter.to_m() * FLATS * CORNERS / 2.0
    }

    /// Height of its self-locking nut.
    #[must_use]
    pub fn nut(self) -> Length {
        self.diameters(NUT)
    }

    /// Outside diameter and thickness of its flat washer.
    #[must_use]
    pub fn washer(self) -> [Length; 2] {
        let row = |table: &[[f64; 3]], of: fn(f64) -> Length| {
            table.iter().find(|row| of(row[0]) == self.diameter).map(|row| [of(row[1]), of(row[2])])
        };
        row(&WASHERS, Length::mm)
            .or_else(|| row(&INCH_WASHERS, Length::inch))
            .unwrap_or_else(|| [self.diameters(WASHER_OUTSIDE), self.diameters(WASHER_THICK)])
    }

    /// The shortest usual bolt that holds a grip, washers included, with its nut full of thread and one turn showing.
    #[must_use]
    pub fn length(self, grip: Length) -> Length {
        let least = grip + self.nut() + self.pitch();
        let step = |of: Length| {
            Length::from_steps((least.steps() + of.steps() - 1).div_euclid(of.steps()) * of.steps())
        };
        if self.is_inch() {
            // ASME B18.2.1 bolts go by quarters of an inch up to six, by halves beyond (from memory).
            let fine = step(Length::inch(0.25));
            return if fine <= Length::inch(6.0) { fine } else { step(Length::inch(0.5)) };
        }
        // ISO 888 lengths: by 5 mm up to 70, by 10 up to 160, by 20 beyond (from memory).
        let (short, long) = (step(Length::mm(5.0)), step(Length::mm(10.0)));
        if short <= Length::mm(70.0) {
            short
        } else if long <= Length::mm(160.0) {
            long
        } else {
            step(Length::mm(20.0))
        }
    }

    /// Mass of a bolt of a length, kg: shank and head.
    pub(super) fn bolt_mass(self, length: Length) -> f64 {
        steel_bar(Section::RoundBar { diameter: self.diameter }, length) + self.hexagon(self.head())
    }

    /// Mass of its nut, kg.
    pub(super) fn nut_mass(self) -> f64 {
        self.hexagon(self.nut()) - steel_bar(Section::RoundBar { diameter: self.diameter }, self.nut())
    }

    /// Mass of its flat washer, kg.
    pub(super) fn washer_mass(self) -> f64 {
        let [outside, thick] = self.washer();
        steel_ring(thick, outside, self.diameter)
    }

    fn hexagon(self, height: Length) -> f64 {
        let flats = self.flats().to_m();
        STEEL_DENSITY.to_kg_m3() * HEXAGON * flats * flats * height.to_m()
    }

    /// The hole it passes freely: a sixteenth of its diameter wider, a quarter of a millimetre at least (common practice, no source).
    #[must_use]
    pub fn clearance_hole(self) -> Length {
        self.diameter + self.diameters(1.0 / 16.0).max(Length::mm(0.25))
    }
}

/// A wood screw of a diameter for a length of thread and shank, to the nearest length that is sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WoodScrew {
    /// Outside diameter of its thread.
    pub diameter: Length,
    /// Its length.
    pub length: Length,
}

impl WoodScrew {
    /// The screw that passes through one piece and holds by about so much in the next; in inches lengths go by quarters, in millimetres by
    /// five up to 60 and by ten beyond.
    pub(super) fn through(diameter: Length, piece: Length, hold: Length, inch: bool) -> Self {
        let wanted = piece + hold;
        let nearest = |of: Length| {
            let steps = (wanted.steps() + of.steps() / 2).div_euclid(of.steps()).max(1);
            Length::from_steps(steps * of.steps())
        };
        let length = if inch {
            nearest(Length::inch(0.25))
        } else if wanted < Length::mm(60.0) {
            nearest(Length::mm(5.0))
        } else {
            nearest(Length::mm(10.0))
        };
        Self { diameter, length }
    }

    /// Its mass, kg.
    pub(super) fn mass(self) -> f64 {
        SCREW_FILL * steel_bar(Section::RoundBar { diameter: self.diameter }, self.length)
    }

    /// The hole it passes freely.
    #[must_use]
    pub fn clearance_hole(self) -> Length {
        self.diameter + Length::mm(0.5)
    }

    /// The hole it cuts its thread in: seven tenths of its diameter in plywood (common practice, no source).
    #[must_use]
    pub fn pilot_hole(self) -> Length {
        Length::m(self.diameter.to_m() * 0.7)
    }
}
