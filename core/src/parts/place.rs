//! Where a piece sits: a block in the axes of what it rides on.
//!
//! Plain `f64` in m. Along an arm from its lower pin, or along a frame from its fixed pivot; up, or square to the arm; and from the middle
//! of the table outwards.
use crate::quantity::Length;

/// The outline of a block seen from the side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Outline {
    /// Rectangular.
    Square,
    /// Rectangular with its corners rounded off to a radius, m.
    Rounded(f64),
    /// Round, about an axis across the table.
    Round,
}

/// A block on the right half of the table; its mirror image stands on the left half.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Block {
    /// What it is called where that is not the part's name: a bolt has a head and a nut.
    pub label: &'static str,
    /// From and to along what it rides on, m.
    pub x: [f64; 2],
    /// From and to square to that, m.
    pub y: [f64; 2],
    /// From and to across the table, m; it reaches over the middle where the first is not above zero.
    pub z: [f64; 2],
    /// Its outline seen from the side.
    pub outline: Outline,
}

impl Block {
    /// A rectangular block.
    pub(super) const fn square(x: [f64; 2], y: [f64; 2], z: [f64; 2]) -> Self {
        Self { label: "", x, y, z, outline: Outline::Square }
    }

    /// A round one about a point.
    pub(super) const fn round(middle: [f64; 2], radius: f64, z: [f64; 2]) -> Self {
        let [x, y] = middle;
        Self {
            label: "",
            x: [x - radius, x + radius],
            y: [y - radius, y + radius],
            z,
            outline: Outline::Round,
        }
    }

    pub(super) const fn rounded(mut self, radius: f64) -> Self {
        self.outline = Outline::Rounded(radius);
        self
    }

    pub(super) const fn labelled(mut self, label: &'static str) -> Self {
        self.label = label;
        self
    }
}

/// From and to, about a middle, m.
pub(super) fn about(middle: f64, size: Length) -> [f64; 2] {
    let half = size.to_m() / 2.0;
    [middle - half, middle + half]
}

/// From a place on, m.
pub(super) fn from(start: f64, size: Length) -> [f64; 2] {
    [start, start + size.to_m()]
}
