//! Two kinds of point that may never be mixed up, and the one scale between them.
use glam::DVec2;

/// A place on the table itself: millimetres, x to the right from the lower fixed pivots, y up from the floor.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Model {
    /// To the right, mm.
    pub x: f64,
    /// Up, mm.
    pub y: f64,
}

impl Model {
    /// The place `x` mm to the right of the lower fixed pivots and `y` mm above the floor.
    #[must_use]
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }
}

impl From<DVec2> for Model {
    fn from(at: DVec2) -> Self {
        Self::new(at.x, at.y)
    }
}

/// A place on the paper: CSS pixels, x to the right and y down from the upper left corner of the picture.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Screen {
    /// To the right, px.
    pub x: f64,
    /// Down, px.
    pub y: f64,
}

impl Screen {
    /// The place `x` px to the right of the picture's left edge and `y` px below its upper one.
    #[must_use]
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    pub(super) const fn by(self, right: f64, down: f64) -> Self {
        Self::new(self.x + right, self.y + down)
    }

    pub(super) fn vector(self) -> DVec2 {
        DVec2::new(self.x, self.y)
    }
}

impl From<DVec2> for Screen {
    fn from(at: DVec2) -> Self {
        Self::new(at.x, at.y)
    }
}

/// How millimetres become pixels: one factor for both axes, and where the pivots and the floor come to lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// Pixels a millimetre; above zero.
    pub per_mm: f64,
    /// Where the point below the fixed pivots on the floor lies.
    pub origin: Screen,
}

impl Scale {
    /// The place on paper.
    #[must_use]
    pub fn to_screen(&self, at: Model) -> Screen {
        Screen::new(self.x(at.x), self.y(at.y))
    }

    /// The place on the table.
    #[must_use]
    pub fn to_model(&self, at: Screen) -> Model {
        Model::new((at.x - self.origin.x) / self.per_mm, (self.origin.y - at.y) / self.per_mm)
    }

    /// Where a distance to the right of the fixed pivots, mm, comes to lie, px.
    #[must_use]
    pub fn x(&self, mm: f64) -> f64 {
        self.origin.x + mm * self.per_mm
    }

    /// Where a height above the floor, mm, comes to lie, px.
    #[must_use]
    pub fn y(&self, mm: f64) -> f64 {
        self.origin.y - mm * self.per_mm
    }

    /// Where a height above the floor, m, comes to lie, px.
    #[must_use]
    pub fn level(&self, metres: f64) -> f64 {
        self.y(metres * 1e3)
    }

    /// How long so many millimetres are on paper, px.
    #[must_use]
    pub fn length(&self, mm: f64) -> f64 {
        mm * self.per_mm
    }
}

/// The middle of the pixel that holds a coordinate, so that a narrow line falls on one row of pixels.
pub(super) fn crisp(coordinate: f64) -> f64 {
    coordinate.floor() + 0.5
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_way_back_leads_to_the_same_place() {
        let scale = Scale { per_mm: 0.375, origin: Screen::new(214.0, 594.0) };
        let at = Model::new(-120.0, 760.0);
        let back = scale.to_model(scale.to_screen(at));
        assert!((back.x - at.x).abs() < 1e-9 && (back.y - at.y).abs() < 1e-9);
    }
}
