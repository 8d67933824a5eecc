//! Sheets and bars to scale, with what is cut from them.
//!
//! Wide is what one lays on the saw, narrow what comes off it; between two pieces the kerf stays white, offcuts are hatched. A piece shows as
//! much lettering as has room in it: number in a circle, size, an arrow along the grain.

mod bars;
mod hatch;
mod panel;
mod piece;

pub use bars::bars;
pub use panel::{Panel, panel};

#[cfg(test)]
mod tests;

use super::mark::Mark;

/// A figure that stands still.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawn {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// Its marks in painter's order.
    pub marks: Vec<Mark>,
}

impl Drawn {
    /// The marks as SVG elements, in the classes of the drawing language.
    #[must_use]
    pub fn svg(&self) -> String {
        self.marks.iter().map(Mark::svg).collect()
    }
}
