//! What stands on the deck, seen from the end.
use super::{Carrier, EndSubject};
use crate::drawing::elevation::load::drawn_height;
use crate::drawing::outline::{Outline, Segment, Stroke};
use glam::DVec2;

/// Size of the zigzag where a load is broken off, px.
const BREAK: f64 = 6.0;

/// How the load is drawn.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct EndLoad {
    pub(super) strokes: Vec<Stroke>,
    /// Middle of its weight, mm.
    pub(super) middle: DVec2,
    /// Its highest point, mm.
    pub(super) top: f64,
}

/// The load as it stands on the deck, off the middle by what the design says.
pub(super) fn load(subject: &EndSubject<'_>) -> EndLoad {
    let load = &subject.side.design.load;
    let (height, broken) = drawn_height(subject.side.design);
    let foot = subject.side.deck_point().y;
    let (middle, half) = (load.across.to_mm(), load.width.to_mm() / 2.0);
    let on = Carrier::Deck;
    let (z, y) = ([middle - half, middle + half], [foot, foot + height]);
    let size = if broken { BREAK * subject.side.pixel } else { 0.0 };
    let edge = |z: f64, up: f64| subject.at(on, z, y[1] + up);
    let upper = Outline::Run {
        start: edge(z[0], 0.0),
        segments: [
            edge(middle - size, 0.0),
            edge(middle - size / 3.0, size),
            edge(middle + size / 3.0, -size),
            edge(middle + size, 0.0),
            edge(z[1], 0.0),
        ]
        .map(Segment::Line)
        .into(),
        closed: false,
    };
    let corners = [subject.at(on, z[0], y[1]), subject.at(on, z[1], y[1])];
    EndLoad {
        strokes: vec![
            subject.block("load none", on, z, y),
            subject.line("paper", on, (z[0], y[0]), (z[1], y[1])),
            subject.line("paper", on, (z[1], y[0]), (z[0], y[1])),
            Stroke { class: "n none", outline: upper },
        ],
        middle: subject.at(on, middle, foot + height * load.centre_height.value()),
        top: corners[0].y.max(corners[1].y) + size,
    }
}
