//! A figure drawn anew for each width of page, so that its lettering keeps its size: the style sheet shows the one that has room.
use super::document::{Block, Figure};

/// Widths a figure is drawn for, px, with the class that shows it: a wide window; paper and smaller windows; a phone.
const WIDTHS: [(&str, f64); 3] = [("for-wide", 1060.0), ("for-paper", 690.0), ("for-phone", 340.0)];

/// The figure for all three widths. `draw` is given the width and whether it is the narrowest.
pub(super) fn for_all(draw: impl Fn(f64, bool) -> Figure) -> Block {
    fitted(&WIDTHS, draw)
}

/// The figure for paper, used in wide windows too, and for a phone.
pub(super) fn for_paper(draw: impl Fn(f64, bool) -> Figure) -> Block {
    fitted(&[("for-wide-too", WIDTHS[1].1), WIDTHS[2]], draw)
}

/// The figure of a part beside its table, and for a phone.
pub(super) fn for_plan(draw: impl Fn(f64, bool) -> Figure) -> Block {
    fitted(&[("for-wide-too", PLAN), WIDTHS[2]], draw)
}

/// Width of a part's figure beside its table, px.
const PLAN: f64 = 620.0;

fn fitted(widths: &[(&'static str, f64)], draw: impl Fn(f64, bool) -> Figure) -> Block {
    let forms = widths
        .iter()
        .map(|(class, width)| Block::Group(class, vec![Block::Figure(draw(*width, *class == WIDTHS[2].0))]));
    Block::Group("fitted", forms.collect())
}
