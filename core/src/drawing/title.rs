//! The title block in the lower right corner.
use super::frame::Area;
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Mark};
use super::outline::{tidy, write};
use super::scale::{Screen, crisp};
use super::view::View;
use crate::quantity::System;
use crate::report::Report;

/// Inner margin of a cell, where there is room and where there is not, and its two base lines from the upper edge, px.
const INSIDE: [f64; 2] = [12.0, 8.0];
const NAMES: f64 = 19.0;
const WORDS: f64 = 40.0;
/// The first cell is never narrower, px.
const LEAST: f64 = 84.0;

/// The cells of a picture: design, what is seen, unit and number of the drawing.
pub(super) fn cells(report: &Report, view: &View, what: &str) -> Vec<(&'static str, String)> {
    let unit = if view.system == System::Metric { "mm" } else { "in" };
    let (number, of) = view.sheet;
    vec![
        ("Design", report.design.name.clone()),
        ("View", what.to_owned()),
        ("Dimensions", unit.to_owned()),
        ("Drawing", format!("{number} of {of}")),
    ]
}

/// Frame and lettering of a block with these cells: heading and words. The first cell takes what the others leave and is
/// cut where it must be; where even that is too little, cells go from the second on.
pub(super) fn title(lettering: &mut Lettering<'_>, area: Area, cells: &[(&str, String)]) -> Vec<Mark> {
    let bare = |(name, words): &(&str, String)| lettering.width("q", name).max(lettering.width("b", words));
    let fits = |inside: &f64| cells.iter().map(|cell| bare(cell) + 2.0 * inside).sum::<f64>() <= area.width;
    let inside = INSIDE.into_iter().find(fits).unwrap_or(INSIDE[1]);
    let wide = |cell: &(&str, String)| bare(cell) + 2.0 * inside;
    let mut kept: Vec<&(&str, String)> = cells.iter().collect();
    while kept.len() > 1 && area.width - kept.iter().skip(1).map(|cell| wide(cell)).sum::<f64>() < LEAST {
        kept.remove(1);
    }
    let rest: f64 = kept.iter().skip(1).map(|cell| wide(cell)).sum();
    let widths: Vec<f64> = kept
        .iter()
        .enumerate()
        .map(|(index, cell)| if index == 0 { area.width - rest } else { wide(cell) })
        .collect();
    let (left, top) = (crisp(area.x), crisp(area.y));
    let mut frame = String::new();
    write(
        &mut frame,
        format_args!("M{} {}V{}H{}", tidy(left), tidy(area.bottom()), tidy(top), tidy(area.right())),
    );
    let mut words = Vec::new();
    let mut x = area.x;
    for (cell, width) in kept.iter().zip(widths) {
        if x > area.x {
            write(&mut frame, format_args!("M{} {}V{}", tidy(crisp(x)), tidy(top), tidy(area.bottom())));
        }
        let short = lettering.shortened("b", &cell.1, width - 1.5 * inside);
        words.push(lettering.set(text("q", Screen::new(x + inside, area.y + NAMES), Anchor::Start, cell.0)));
        words.push(lettering.set(text("b", Screen::new(x + inside, area.y + WORDS), Anchor::Start, &short)));
        x += width;
    }
    let mut marks = vec![Mark::path("axis none", frame)];
    marks.extend(words);
    marks
}
