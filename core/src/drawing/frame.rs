//! Where things lie in a picture, for pointers: areas to hit and the way from pixels to heights.
use super::scale::{Scale, Screen};
use super::view::Chart;

/// An upright rectangle on paper, px.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Area {
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// To the right.
    pub width: f64,
    /// Down.
    pub height: f64,
}

impl Area {
    pub(super) fn between(x: [f64; 2], y: [f64; 2]) -> Self {
        Self { x: x[0].min(x[1]), y: y[0].min(y[1]), width: (x[1] - x[0]).abs(), height: (y[1] - y[0]).abs() }
    }

    /// Right edge, px.
    #[must_use]
    pub fn right(&self) -> f64 {
        self.x + self.width
    }

    /// Lower edge, px.
    #[must_use]
    pub fn bottom(&self) -> f64 {
        self.y + self.height
    }

    /// Whether a point lies in it, edges included.
    #[must_use]
    pub fn contains(&self, at: Screen) -> bool {
        (self.x..=self.right()).contains(&at.x) && (self.y..=self.bottom()).contains(&at.y)
    }

    /// Whether it shares any point with another, edges apart.
    #[must_use]
    pub fn meets(&self, other: &Self) -> bool {
        self.x < other.right() && other.x < self.right() && self.y < other.bottom() && other.y < self.bottom()
    }

    /// Whether another lies wholly in it.
    #[must_use]
    pub fn holds(&self, other: &Self) -> bool {
        self.x <= other.x
            && other.right() <= self.right()
            && self.y <= other.y
            && other.bottom() <= self.bottom()
    }

    pub(super) fn grown(&self, by: f64) -> Self {
        Self { x: self.x - by, y: self.y - by, width: self.width + 2.0 * by, height: self.height + 2.0 * by }
    }
}

/// Something to take hold of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grip {
    /// Its middle, px.
    pub centre: Screen,
    /// Its radius as drawn, px; a target for a finger is larger.
    pub radius: f64,
}

/// One plot: where it is and how heights and values lie in it.
#[derive(Clone, Debug, PartialEq)]
pub struct PlotArea {
    /// What it shows.
    pub chart: Chart,
    /// From the value axis at the lowest deck to the highest deck, px.
    pub area: Area,
    /// How heights lie in it; the same as the drawing's in [`super::Layout::Wide`].
    pub scale: Scale,
    /// Where the value zero lies, px.
    pub zero: f64,
    /// Pixels for a unit of the values, SI.
    pub per_value: f64,
}

impl PlotArea {
    /// The deck height a point of the plot stands for, m.
    #[must_use]
    pub fn height_at(&self, y: f64) -> f64 {
        self.scale.to_model(Screen::new(0.0, y)).y / 1e3
    }

    /// Where a value at a deck height lies; value in SI, height in m.
    #[must_use]
    pub fn place(&self, value: f64, height: f64) -> Screen {
        Screen::new(self.zero + value * self.per_value, self.scale.level(height))
    }
}

/// What a page must know of a picture to let a reader touch it.
#[derive(Clone, Debug, PartialEq)]
pub struct Frame {
    /// The elevation's scale.
    pub scale: Scale,
    /// The part of the picture that holds elevation and dimensions.
    pub drawing: Area,
    /// The plots in order.
    pub plots: Vec<PlotArea>,
    /// The table of values, where it has room; otherwise a page must show it elsewhere.
    pub reading: Option<Area>,
    /// Lowest and highest deck, m.
    pub lift: [f64; 2],
    /// On paper the table is drawn at one to so much (ISO 5455); none on a screen.
    pub ratio: Option<u32>,
    /// How many times larger than life the bent shape is drawn.
    pub bent_factor: u16,
}

impl Frame {
    /// The deck height a point of the elevation stands for, m, within the lift.
    #[must_use]
    pub fn height_at(&self, at: Screen) -> f64 {
        (self.scale.to_model(at).y / 1e3).clamp(self.lift[0], self.lift[1])
    }
}
