//! Sizes of the small fasteners a design does not state, in the units its pivot bolts are sold in. Common practice, no source.
use super::fastener::{BoltSize, WoodScrew};
use crate::design::Design;
use crate::quantity::Length;

/// Which small fasteners go with a design.
#[derive(Clone, Copy)]
pub(super) struct Small {
    inch: bool,
}

impl Small {
    pub(super) fn of(design: &Design) -> Self {
        Self { inch: BoltSize { diameter: design.running.pin }.is_inch() }
    }

    /// Whether they are sold in inches.
    pub(super) const fn is_inch(self) -> bool {
        self.inch
    }

    /// The next whole millimetre, or sixteenth of an inch.
    pub(super) fn next(self, least: Length) -> Length {
        let step = self.size(1.0, 1.0 / 16.0).steps();
        Length::from_steps((least.steps() + step - 1).div_euclid(step) * step)
    }

    pub(super) fn size(self, mm: f64, inch: f64) -> Length {
        if self.inch { Length::inch(inch) } else { Length::mm(mm) }
    }

    /// Into the end of a cross board: 50 mm, or 2 in, of hold in its end grain.
    pub(super) fn board_screw(self, through: Length) -> WoodScrew {
        WoodScrew::through(self.size(6.0, 0.25), through, self.size(50.0, 2.0), self.inch)
    }

    /// Through a panel or block into a rail.
    pub(super) fn panel_screw(self, through: Length) -> WoodScrew {
        WoodScrew::through(self.size(5.0, 0.1875), through, self.size(32.0, 1.25), self.inch)
    }

    /// Through a steel strip into its rail.
    pub(super) fn strip_screw(self, through: Length) -> WoodScrew {
        WoodScrew::through(self.size(4.0, 0.1875), through, self.size(21.0, 0.75), self.inch)
    }

    /// Past a wheel into the rail beneath it.
    pub(super) fn keeper_screw(self, through: Length) -> WoodScrew {
        WoodScrew::through(self.size(5.0, 0.1875), through, self.size(30.0, 1.25), self.inch)
    }

    /// Through a caster's plate into plank and beam.
    pub(super) fn caster_screw(self, through: Length) -> WoodScrew {
        WoodScrew::through(self.size(6.0, 0.25), through, self.size(30.0, 1.25), self.inch)
    }

    /// For straps and the flange of the nut.
    pub(super) fn thin_bolt(self) -> BoltSize {
        BoltSize { diameter: self.size(6.0, 0.25) }
    }

    /// For pivot cheeks.
    pub(super) fn cheek_bolt(self) -> BoltSize {
        BoltSize { diameter: self.size(8.0, 0.3125) }
    }

    /// The distance screws of a row keep at most.
    pub(super) fn screw_spacing(self) -> Length {
        self.size(125.0, 5.0)
    }

    /// From a corner to the first screw.
    pub(super) fn screw_margin(self) -> Length {
        self.size(30.0, 1.25)
    }
}

/// Places of a row of screws between two ends, margins kept, none farther apart than the spacing: two at least.
pub(super) fn row(length: Length, margin: Length, spacing: Length) -> Vec<Length> {
    let span = (length - margin * 2).max(Length::ZERO);
    let gaps = span.steps().div_euclid(spacing.steps().max(1)).clamp(0, 60) + 1;
    (0..=gaps).map(|at| margin + Length::from_steps(span.steps() * at / gaps)).collect()
}
