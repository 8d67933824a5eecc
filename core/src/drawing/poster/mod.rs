//! The side elevation for the wall: lowest and highest deck on one page at a standard scale, with a bar to check the printer by, and the words
//! and figures that stand beside it.
mod keys;
mod ruler;
mod words;

pub use keys::{KeyFigures, KeyRow};
pub use ruler::Ruler;
pub use words::{ratio_words, summary};

use super::face::Measure;
use super::mark::Mark;
use super::sheet::{Picture, Sheet, compose};
use super::view::{Layout, OnPaper, View};
use crate::quantity::System;
use crate::report::Report;

/// Pixels in a millimetre of paper, by the definition of the CSS pixel.
pub const PAPER: f64 = 96.0 / 25.4;

/// The scales drawings are made at, largest first: ISO 5455, and the inches to a foot of a folding rule.
pub(super) const fn ratios(system: System) -> &'static [u32] {
    match system {
        System::Metric => &[1, 2, 5, 10, 20, 50, 100, 200],
        System::Inch => &[1, 2, 4, 8, 12, 16, 24, 32, 48, 96, 192],
    }
}

/// Beside the table: dimensions at the left, overhang at the right, px. As the plan of a picture on paper lays it out.
const BESIDE: f64 = 90.0 + 24.0;

/// Paper is cut off a picture that is at first drawn on a sheet high enough for anything, px.
const TALLEST: u32 = 6000;

/// One deck height on paper.
#[derive(Clone, Debug, PartialEq)]
pub struct Panel {
    /// The picture; what lies above [`Self::top`] is empty.
    pub picture: Picture,
    /// Its upper edge, px.
    pub top: f64,
    /// Deck height, m.
    pub deck: f64,
    /// Whether the load stands on it.
    pub loaded: bool,
}

impl Panel {
    fn new(report: &Report, deck: f64, view: &View, measure: Measure<'_>) -> Self {
        let picture = compose(report, deck, view, measure);
        // The load's figure may stand over it where nothing else is free.
        let words = picture.moving.iter().filter_map(|mark| mark.lettering(measure)).map(|area| area.y - 4.0);
        let top = words.fold(picture.live.top, f64::min).floor();
        Self { top, picture, deck, loaded: view.show.load }
    }

    /// Height on paper, px.
    #[must_use]
    pub fn height(&self) -> f64 {
        self.picture.height - self.top
    }

    /// The marks as the inside of an SVG element.
    #[must_use]
    pub fn marks(&self) -> String {
        self.picture.marks()
    }
}

/// The elevations of a page.
#[derive(Clone, Debug, PartialEq)]
pub struct Poster {
    /// They are drawn at one to so much.
    pub ratio: u32,
    /// Width of the elevations, px.
    pub width: f64,
    /// The highest deck.
    pub highest: Panel,
    /// The lowest deck; none where the page has no room for both.
    pub lowest: Option<Panel>,
}

impl Poster {
    /// The elevations in a room of a width and a height, mm, of which each takes `heading` mm more for its name.
    ///
    /// The scale is the largest standard one at which both decks fit, the lowest if need be without its load; where they do not even at the
    /// smallest, the highest stands alone at the largest at which it fits.
    #[must_use]
    pub fn new(report: &Report, system: System, room: [f64; 2], heading: f64, measure: Measure<'_>) -> Self {
        let [width, height] = room.map(|side| side * PAPER);
        let heading = heading * PAPER;
        let known = ratios(system);
        let across = across(report, system, measure);
        let fitting = || known.iter().copied().filter(|ratio| across / f64::from(*ratio) + BESIDE <= width);
        let highest = |ratio| {
            let view = view(system, across, ratio, OnPaper { ratio: Some(ratio), frame: false }, true);
            Panel::new(report, report.highest(), &view, measure)
        };
        let lowest = |ratio, loaded| {
            let view = view(system, across, ratio, OnPaper { ratio: Some(ratio), frame: true }, loaded);
            Panel::new(report, report.lowest(), &view, measure)
        };
        for ratio in fitting() {
            let upper = highest(ratio);
            let left = height - upper.height() - 2.0 * heading;
            if left <= 0.0 {
                continue;
            }
            if let Some(lower) = [true, false]
                .into_iter()
                .map(|loaded| lowest(ratio, loaded))
                .find(|lower| lower.height() <= left)
            {
                return Self { ratio, width: upper.picture.width, highest: upper, lowest: Some(lower) };
            }
        }
        let alone = |ratio| {
            let view = view(system, across, ratio, OnPaper { ratio: Some(ratio), frame: true }, true);
            Panel::new(report, report.highest(), &view, measure)
        };
        let last = known[known.len() - 1];
        let (ratio, upper) = fitting()
            .map(|ratio| (ratio, alone(ratio)))
            .find(|(_, upper)| upper.height() + heading <= height)
            .unwrap_or_else(|| (last, alone(last)));
        Self { ratio, width: upper.picture.width, highest: upper, lowest: None }
    }

    /// The elevations from above, each with its heading.
    #[must_use]
    pub fn panels(&self, system: System) -> Vec<(String, &Panel)> {
        let deck = |panel: &Panel| crate::quantity::figures::size(panel.deck, system);
        let mut panels = vec![(format!("Highest deck, {}", deck(&self.highest)), &self.highest)];
        if let Some(lowest) = &self.lowest {
            let load = if lowest.loaded { "" } else { ", drawn without its load" };
            panels.push((format!("Lowest deck, {}{load}", deck(lowest)), lowest));
        }
        panels
    }
}

/// How wide the table ever is, px at full size.
fn across(report: &Report, system: System, measure: Measure<'_>) -> f64 {
    let bounds = Sheet::new(report, &View::new(560, 790, Layout::Print, system), measure).plan.bounds;
    (bounds.most.x - bounds.least.x) * PAPER
}

fn view(system: System, across: f64, ratio: u32, on_paper: OnPaper, loaded: bool) -> View {
    let width = (across / f64::from(ratio) + BESIDE).ceil();
    let mut view = View::new(whole(width), TALLEST, Layout::Print, system);
    view.on_paper = on_paper;
    view.show.load = loaded;
    view
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a width of paper, saturating")]
const fn whole(pixels: f64) -> u32 {
    pixels as u32
}

/// The marks of a list as text.
fn text(marks: &[Mark]) -> String {
    marks.iter().map(Mark::svg).collect()
}

#[cfg(test)]
mod tests;
