//! A picture of a page that follows the deck and the reader's push.
use crate::drawing::Grip;
use std::rc::Rc;

/// A picture at one height and one push, as the inside of an SVG element in the classes of the drawing language.
#[derive(Clone, Debug, PartialEq)]
pub struct Live {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// What stands still, far to near; the moving part lies on it.
    pub still: Rc<str>,
    /// Grows when what stands still is another: a receiver that has this edition need not take it again.
    pub edition: u32,
    /// What moves with the deck and the push.
    pub moving: String,
    /// What one would read off it, in a sentence.
    pub spoken: String,
    /// The push that is drawn, N, positive to the right of the drawing.
    pub pushed: f64,
    /// The hardest push that can be drawn, N; zero where none can.
    pub most_push: f64,
    /// How far the deck's grip moves on paper for a push of one newton, px; zero where none can be drawn.
    pub per_newton: f64,
    /// How far the deck moves up on paper for a metre of height, px.
    pub per_metre: f64,
    /// Lowest and highest deck, m.
    pub lift: [f64; 2],
    /// The grip at the deck that moves it up and down.
    pub deck: Option<Grip>,
    /// The grip at the deck that pushes it sideways.
    pub push: Option<Grip>,
    /// The ring at the base wheel axle, where the side elevation is drawn.
    pub carriage: Option<Grip>,
    /// Whether the figures behind it are complete, so that it will not change by itself.
    pub settled: bool,
    /// The plot on which the reader sketches a guess; none where there is nothing to sketch.
    pub sketch: Option<Sketch>,
}

/// A plot to sketch on: a pointer over it is an answer. The handle at the height nearest to the pointer, `g0` for the lowest, takes the
/// place of the pointer between `left` (0) and `right` (1).
#[derive(Clone, Debug, PartialEq)]
pub struct Sketch {
    /// The beginning of the value axis, px.
    pub left: f64,
    /// Its end, px.
    pub right: f64,
    /// The heights of the handles on paper, px from the top, the lowest deck first.
    pub ys: Vec<f64>,
}
