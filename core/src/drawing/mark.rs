//! What a picture consists of: shapes on paper, each with the classes of the drawing language.
use super::scale::Screen;

/// One shape of a picture. Its place in its layer is its key: the same design, view and reader's choices give the
/// same marks in the same order, whatever the deck's height, so that a page can patch attributes in place.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Classes of the drawing language, apart by spaces.
    pub class: &'static str,
    /// The shape itself.
    pub shape: Shape,
}

/// The five kinds of shape a picture uses. The kind at a place never changes with the height.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// Outlines in the notation of an SVG `d` attribute, px; empty when there is nothing to draw at this height.
    Path(String),
    /// A circle.
    Circle {
        /// Its middle.
        centre: Screen,
        /// Its radius, px.
        radius: f64,
    },
    /// An upright rectangle.
    Rect {
        /// Its upper left corner.
        corner: Screen,
        /// To the right, px.
        width: f64,
        /// Down, px.
        height: f64,
    },
    /// A straight line.
    Line {
        /// One end.
        from: Screen,
        /// The other.
        to: Screen,
    },
    /// Lettering; empty when it has no room at this height.
    Text {
        /// The point on the base line that `anchor` speaks of.
        at: Screen,
        /// Which part of the words stands at that point.
        anchor: Anchor,
        /// Turned by 90 degrees to be read from the right.
        upright: bool,
        /// The words.
        words: String,
    },
}

/// Which part of a text stands at its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Its beginning.
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

impl Anchor {
    /// The value of the SVG attribute `text-anchor`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }

    /// How much of the width lies before the point.
    pub(super) const fn share(self) -> f64 {
        match self {
            Self::Start => 0.0,
            Self::Middle => 0.5,
            Self::End => 1.0,
        }
    }
}

impl Mark {
    pub(super) const fn path(class: &'static str, d: String) -> Self {
        Self { class, shape: Shape::Path(d) }
    }

    pub(super) const fn line(class: &'static str, from: Screen, to: Screen) -> Self {
        Self { class, shape: Shape::Line { from, to } }
    }

    pub(super) const fn circle(class: &'static str, centre: Screen, radius: f64) -> Self {
        Self { class, shape: Shape::Circle { centre, radius } }
    }

    pub(super) const fn rect(class: &'static str, corner: Screen, width: f64, height: f64) -> Self {
        Self { class, shape: Shape::Rect { corner, width, height } }
    }

    /// Whether nothing is drawn of it at this height.
    #[must_use]
    pub fn is_left_out(&self) -> bool {
        match &self.shape {
            Shape::Path(d) => d.is_empty(),
            Shape::Text { words, .. } => words.is_empty(),
            _ => false,
        }
    }

    pub(super) fn text(class: &'static str, at: Screen, anchor: Anchor, words: impl Into<String>) -> Self {
        Self { class, shape: Shape::Text { at, anchor, upright: false, words: words.into() } }
    }
}

/// Thin lines and heads of arrows: it does not matter which of them lies over which.
const JOINED: [&str; 6] = ["cm", "hid", "cl", "ext", "fl", "fh"];

/// The same picture in fewer shapes, which a page draws faster: neighbours of the same class of thin lines become one.
pub(super) fn joined(marks: Vec<Mark>) -> Vec<Mark> {
    let mut all: Vec<Mark> = Vec::with_capacity(marks.len());
    for mark in marks {
        match (all.last_mut(), &mark.shape) {
            (Some(Mark { class, shape: Shape::Path(before) }), Shape::Path(more))
                if *class == mark.class && JOINED.contains(class) =>
            {
                before.push_str(more);
            }
            _ => all.push(mark),
        }
    }
    all
}

/// A run of points that the page draws on its canvas and print as a path.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// The plot it belongs to, counted from the left.
    pub plot: usize,
    /// How it is drawn.
    pub ink: Ink,
    /// Its points in order, px; for [`Ink::fills`] the outline of an area.
    pub points: Vec<Screen>,
}

/// The hue of a quantity: which token of the style a curve takes its colour from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hue {
    /// `--force`
    Force,
    /// `--sag`
    Sag,
    /// `--play`
    Play,
    /// `--ink`
    Ink,
    /// `--ink-2`
    Limit,
}

impl Hue {
    /// The name of the token without its dashes.
    #[must_use]
    pub const fn token(self) -> &'static str {
        match self {
            Self::Force => "force",
            Self::Sag => "sag",
            Self::Play => "play",
            Self::Ink => "ink",
            Self::Limit => "ink-2",
        }
    }
}

/// How a curve is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ink {
    /// The same said in a class of the drawing language, for SVG.
    pub class: &'static str,
    /// Its hue.
    pub hue: Hue,
    /// Width of the line, px; zero for an area.
    pub width: f64,
    /// Dash and gap, px; empty for a full line.
    pub dash: &'static [f64],
    /// 1 for opaque.
    pub opacity: f64,
}

impl Ink {
    /// Whether the points are the outline of an area to fill and not a line.
    #[must_use]
    pub fn fills(&self) -> bool {
        self.width <= 0.0
    }
}
