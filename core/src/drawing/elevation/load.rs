//! What stands on the deck.
use super::{Axes, Subject, line, stroke};
use crate::design::Design;
use crate::drawing::outline::Stroke;
use glam::DVec2;

/// A load is drawn no higher than this part of the highest deck; a higher one is broken off.
const TALLEST: f64 = 0.4;

/// How the load is drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadShape {
    /// Its outline and the diagonals that cross in its middle.
    pub strokes: Vec<Stroke>,
    /// Middle of its weight, mm; of the part drawn when it is broken off.
    pub middle: DVec2,
    /// Its four corners from the lower left one, counter-clockwise, mm.
    pub corners: [DVec2; 4],
    /// Whether it is drawn lower than it is.
    pub broken: bool,
}

/// Height in which the load is drawn, mm, and whether it is broken off there.
#[must_use]
pub fn drawn_height(design: &Design) -> (f64, bool) {
    let (height, most) = (design.load.height.to_mm(), TALLEST * design.lift.highest.to_mm());
    if height > most { (most, true) } else { (height, false) }
}

/// The load as it stands on the deck.
#[must_use]
pub fn load_shape(subject: &Subject<'_>) -> LoadShape {
    let load = &subject.design.load;
    let deck = subject.deck();
    let (height, broken) = drawn_height(subject.design);
    let (middle, half) = (load.centre.to_mm(), load.length.to_mm() / 2.0);
    let corner = |x: f64, y: f64| deck.point(x, y);
    let (left, right) = (middle - half, middle + half);
    let corners = [corner(left, 0.0), corner(right, 0.0), corner(right, height), corner(left, height)];
    let strokes = vec![
        stroke("load none", deck.block([left, right], [0.0, height])),
        line("paper", corners[0], corners[2]),
        line("paper", corners[1], corners[3]),
        stroke(
            "n none",
            break_mark(&deck, [left, right], height, if broken { 6.0 * subject.pixel } else { 0.0 }),
        ),
    ];
    LoadShape { strokes, middle: corner(middle, height * load.centre_height.value()), corners, broken }
}

/// The upper edge with a zigzag in its middle, which says that the rest is left out (ISO 128-2, line 01.1 with
/// zigzags); a plain edge when `size` is zero.
fn break_mark(deck: &Axes, ends: [f64; 2], y: f64, size: f64) -> crate::drawing::outline::Outline {
    use crate::drawing::outline::{Outline, Segment};
    let middle = (ends[0] + ends[1]) / 2.0;
    let at = |x: f64, y: f64| Segment::Line(deck.point(x, y));
    Outline::Run {
        start: deck.point(ends[0], y),
        segments: vec![
            at(middle - size, y),
            at(middle - size / 3.0, y + size),
            at(middle + size / 3.0, y - size),
            at(middle + size, y),
            at(ends[1], y),
        ],
        closed: false,
    }
}
