//! What stands in a line of the list: the sign of its state, the ratio as a bar on the common scale, the ratio over the height.
use super::curve::{notation, thinned};
use super::{MOST_DRAWN, Small, drawn, lift};
use crate::checks::{Check, Verdict, Weight};
use crate::drawing::arrow::dimension_head;
use crate::drawing::mark::{Anchor, Mark};
use crate::drawing::plot::dot;
use crate::drawing::scale::Screen;
use crate::drawing::state;
use crate::report::Grade;

/// The bar's picture: where zero stands, pixels for a ratio of one, and room for the arrow at the right.
const ZERO: f64 = 6.5;
const ONE: f64 = 100.0;
const BEYOND: f64 = 13.0;
const HEIGHT: f64 = 20.0;
/// Thickness of a bar, px.
const THICK: f64 = 8.0;
/// Lines of the scale run on so far above and below, px, so that they join those of the next line however high it is.
const FAR: f64 = 60.0;
/// Width of a spark and its margin, px.
const SPARK: f64 = 40.0;
const MARGIN: f64 = 3.0;
/// How far a thinned curve may lie off, px.
const APART: f64 = 0.3;

fn x(ratio: f64) -> f64 {
    ZERO + drawn(ratio) * ONE
}

const WIDTH: f64 = ZERO + MOST_DRAWN * ONE + BEYOND;

fn small(marks: impl IntoIterator<Item = Mark>, width: f64, height: f64) -> Small {
    Small { marks: marks.into_iter().map(|mark| mark.svg()).collect(), width, height }
}

/// The sign of a verdict: triangle, diamond or circle; a note is a circle with an i in it.
#[must_use]
pub fn sign(verdict: Verdict) -> Small {
    let words = if verdict == Verdict::Note { "i" } else { "" };
    small(state::sign(Grade::of(verdict), Some(Screen::new(10.0, 10.5)), words), 20.0, HEIGHT)
}

/// The scale above the bars: 0, 1 and 2.
#[must_use]
pub fn axis() -> Small {
    let figures = ["0", "1", "2"].into_iter().zip([0.0, 1.0, 2.0]);
    let marks = figures.flat_map(|(words, ratio)| {
        let foot = Screen::new(x(ratio), HEIGHT);
        [
            Mark::text("s", foot.by(0.0, -7.0), Anchor::Middle, words),
            Mark::line("tick", foot.by(0.0, -4.0), foot.by(0.0, FAR)),
        ]
    });
    small(marks, WIDTH, HEIGHT)
}

/// The ratio as a bar from zero on a scale whose one is drawn through; beyond two an arrow. What is a limit is filled, darker beyond one;
/// what is only worth knowing is an outline.
#[must_use]
pub fn bar(check: &Check) -> Small {
    let upper = (HEIGHT - THICK) / 2.0;
    let piece = |class, from: f64, to: f64| Mark::rect(class, Screen::new(from, upper), to - from, THICK);
    let mut marks = Vec::new();
    if check.weight == Weight::Advice {
        marks.push(piece("n none", x(0.0), x(check.ratio)));
    } else {
        marks.push(piece("used", x(0.0), x(check.ratio.min(1.0))));
        if check.ratio > 1.0 {
            marks.push(piece("beyond", x(1.0), x(check.ratio)));
        }
    }
    if check.ratio > MOST_DRAWN {
        let middle = Screen::new(x(MOST_DRAWN), HEIGHT / 2.0);
        marks.push(Mark::path("ah", dimension_head(middle, middle.by(BEYOND - 1.0, 0.0))));
    }
    let mut bar = small(marks, WIDTH, HEIGHT);
    bar.marks += "<use href=\"#bar-scale\"/>";
    bar
}

/// The shape that every [`bar`] refers to by `use`: the lines of the scale at 0, 1 and 2. It belongs once into the document of the bars.
#[must_use]
pub fn bar_scale() -> String {
    let lines = [("rule", 0.0), ("axis", 1.0), ("rule", MOST_DRAWN)].map(|(class, ratio)| {
        Mark::line(class, Screen::new(x(ratio), -FAR), Screen::new(x(ratio), HEIGHT + FAR)).svg()
    });
    format!("<g id=\"bar-scale\" class=\"dwg\">{}</g>", lines.concat())
}

/// The ratio over the deck's height, the height upright and the ratio to the right, as large as there is room; a dot where it is worst.
#[must_use]
pub fn spark(check: &Check) -> Small {
    let (low, rise) = lift(check);
    let (width, height) = (SPARK - 2.0 * MARGIN, HEIGHT + 2.0 - 2.0 * MARGIN);
    let most = check.ratio.max(1e-9);
    let place = |deck: f64, ratio: f64| {
        Screen::new(MARGIN + ratio / most * width, MARGIN + height * (1.0 - (deck - low) / rise))
    };
    let points: Vec<Screen> = check.curve.iter().map(|(deck, ratio)| place(*deck, *ratio)).collect();
    let axis = Screen::new(MARGIN, MARGIN);
    small(
        [
            Mark::line("tick", axis, axis.by(0.0, height)),
            Mark::path("c-ink-2", notation(&thinned(&points, APART))),
            Mark::path("pb", dot(place(check.height, check.ratio), 2.0)),
        ],
        SPARK,
        HEIGHT + 2.0,
    )
}
