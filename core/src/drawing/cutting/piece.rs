//! What stands in a piece: its number in a circle, its size, an arrow along the grain.
use crate::drawing::dimension::upright;
use crate::drawing::frame::Area;
use crate::drawing::lettering::{Lettering, text};
use crate::drawing::mark::{Anchor, Mark};
use crate::drawing::outline::{tidy, write};
use crate::drawing::scale::Screen;

/// Radius of the circle around a number, px.
const RING: f64 = 8.0;
/// Between circle, words and arrow, px.
const GAP: f64 = 6.0;
/// Between lettering and the piece's outline, px.
const CLEAR: f64 = 3.0;
/// Length of the arrow along the grain, px; the least of it.
const ARROW: f64 = 30.0;
const ARROW_LEAST: f64 = 14.0;
/// From a base line up to the middle of its figures, px.
const MIDDLE: f64 = 4.0;

/// What is said of a piece.
pub(super) struct Said<'a> {
    pub number: u32,
    pub size: &'a str,
    /// Along which way of the paper the grain runs: level or upright; none where it may run either way.
    pub grain: Option<bool>,
}

/// Which of the three stand there.
#[derive(Clone, Copy)]
struct Kept {
    ring: bool,
    size: bool,
    arrow: bool,
}

const WAYS: [Kept; 5] = [
    Kept { ring: true, size: true, arrow: true },
    Kept { ring: true, size: true, arrow: false },
    Kept { ring: true, size: false, arrow: true },
    Kept { ring: true, size: false, arrow: false },
    Kept { ring: false, size: false, arrow: false },
];

/// The lettering of a piece that covers an area, as much of it as has room, along its longer side.
pub(super) fn letter(lettering: &mut Lettering<'_>, area: &Area, said: &Said<'_>) -> Vec<Mark> {
    let rising = area.height > area.width;
    let (long, short) = (area.width.max(area.height), area.width.min(area.height));
    let number = said.number.to_string();
    let words = lettering.width("dt", said.size);
    let middle = Screen::new(area.x + area.width / 2.0, area.y + area.height / 2.0);
    // The arrow lies in line with the words or across them.
    let (inline, arrow) = match said.grain {
        Some(grain) if grain == rising => (true, ARROW.min(long - 2.0 * (RING + GAP + CLEAR))),
        Some(_) => (false, ARROW.min(short - 2.0 * CLEAR)),
        None => (true, 0.0),
    };
    for way in WAYS {
        if way.arrow && arrow < ARROW_LEAST {
            continue;
        }
        let arrow_room = if inline { arrow } else { 6.0 };
        let mut length = if way.ring { 2.0 * RING } else { lettering.width("mt", &number) };
        length += if way.size { GAP + words } else { 0.0 };
        length += if way.arrow { GAP + arrow_room } else { 0.0 };
        let depth = if way.ring { 2.0 * RING } else { 10.0 };
        let clear = if way.size || way.arrow { CLEAR } else { 0.5 };
        if length > long - 2.0 * clear || depth > short - 0.5 {
            continue;
        }
        return set(lettering, middle, rising, length, (&number, said.size), way, (inline, arrow));
    }
    Vec::new()
}

fn set(
    lettering: &mut Lettering<'_>,
    middle: Screen,
    rising: bool,
    length: f64,
    (number, size): (&str, &str),
    way: Kept,
    (inline, arrow): (bool, f64),
) -> Vec<Mark> {
    // A way along the lettering and across it, down or to the right.
    let at = |along: f64, across: f64| {
        let from = along - length / 2.0;
        if rising { middle.by(across, -from) } else { middle.by(from, across) }
    };
    let word = |class: &'static str, along: f64, anchor: Anchor, words: &str| {
        if rising {
            upright(class, at(along, MIDDLE), anchor, words)
        } else {
            text(class, at(along, MIDDLE), anchor, words)
        }
    };
    let mut marks = Vec::new();
    let mut along = 0.0;
    if way.ring {
        let centre = at(RING, 0.0);
        marks.push(Mark::circle("ring", centre, RING));
        lettering.keep(Area::between([centre.x - RING, centre.x + RING], [centre.y - RING, centre.y + RING]));
        // The number stands upright in its circle, however the piece lies.
        marks.push(lettering.set(text("mt", centre.by(0.0, 3.8), Anchor::Middle, number)));
        along += 2.0 * RING;
    } else {
        let width = lettering.width("mt", number);
        marks.push(lettering.set(word("mt", width / 2.0, Anchor::Middle, number)));
        along += width;
    }
    if way.size {
        along += GAP;
        marks.push(lettering.set(word("dt", along, Anchor::Start, size)));
        along += lettering.width("dt", size);
    }
    if way.arrow {
        along += GAP;
        let ends = if inline {
            [at(along, 0.0), at(along + arrow, 0.0)]
        } else {
            [at(along + 3.0, -arrow / 2.0), at(along + 3.0, arrow / 2.0)]
        };
        marks.push(Mark::path("grain", grain_arrow(ends)));
    }
    marks
}

/// A line with an open half head at either end, as the direction of grain is marked.
fn grain_arrow([from, to]: [Screen; 2]) -> String {
    const HEAD: f64 = 5.0;
    let mut d = String::new();
    let span = to.vector() - from.vector();
    let Some(along) = span.try_normalize() else { return d };
    let side = along.perp();
    let (first, last) =
        (from.vector() + HEAD * (along + side * 0.5), to.vector() - HEAD * (along + side * 0.5));
    for (index, point) in [first, from.vector(), to.vector(), last].into_iter().enumerate() {
        let command = if index == 0 { 'M' } else { 'L' };
        write(&mut d, format_args!("{command}{} {}", tidy(point.x), tidy(point.y)));
    }
    d
}
