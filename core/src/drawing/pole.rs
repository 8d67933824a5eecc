//! The pole: a banded rule from the floor up, the only height axis of the picture.
use super::frame::Area;
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Mark};
use super::outline::{tidy, write};
use super::scale::{Scale, Screen, crisp};
use crate::quantity::{System, figures};

/// Width of the rule and of one of its two columns of bands, px.
pub(super) const WIDTH: f64 = 8.0;
const COLUMN: f64 = 4.0;
/// Ends of long and short ticks and begin of the labels, px from the rule's right edge.
const LONG: f64 = 5.5;
const SHORT: f64 = 3.0;
/// Lettering of the drawing keeps so far off the rule, px.
const BESIDE: f64 = 3.0;
const LABEL: f64 = 9.5;
/// A label this near to the tag goes, px.
const NEAR_TAG: f64 = 14.0;
/// Labels stand at least this far apart, px.
const LABELS_APART: f64 = 15.0;
/// Height of the tag and of its point, px.
const TAG_HEIGHT: f64 = 20.0;
const TAG_POINT: f64 = 7.0;

/// A rule beside a picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Pole {
    /// Left edge, px.
    pub(super) x: f64,
    /// How heights lie beside it.
    pub(super) scale: Scale,
    /// Lower and upper end, mm above the floor: whole bands.
    pub(super) ends: [f64; 2],
    /// Height of a band, mm.
    pub(super) band: f64,
    /// Units of its labels.
    pub(super) system: System,
    /// Whether the unit stands behind the uppermost label.
    pub(super) names_unit: bool,
}

/// Bands are at least and, where there is a finer one, at most so high, px.
const BAND: [f64; 2] = [9.0, 80.0];
/// Heights of bands from the usual one down, mm and in; where the usual one is too low, five of them are one band.
const METRIC_BANDS: [f64; 7] = [100.0, 50.0, 20.0, 10.0, 5.0, 2.0, 1.0];
const INCH_BANDS: [f64; 7] = [4.0, 2.0, 1.0, 0.5, 0.25, 0.125, 0.0625];

/// Height of a band, mm: 100 mm or 4 in where that is neither too low nor too high on paper.
pub(super) fn band(system: System, per_mm: f64) -> f64 {
    let bands = match system {
        System::Metric => METRIC_BANDS,
        System::Inch => INCH_BANDS.map(|inches| inches * 25.4),
    };
    let [usual, .., finest] = bands;
    if usual * per_mm < BAND[0] {
        5.0 * usual
    } else {
        bands.into_iter().find(|band| band * per_mm <= BAND[1]).unwrap_or(finest)
    }
}

impl Pole {
    fn count(&self) -> u32 {
        let bands = ((self.ends[1] - self.ends[0]) / self.band).round().clamp(0.0, 400.0);
        (0..400).take_while(|count| f64::from(*count) < bands).count().try_into().unwrap_or(0)
    }

    /// Right edge, px.
    pub(super) fn right(&self) -> f64 {
        self.x + WIDTH
    }

    /// Left edge of its labels, px.
    pub(super) fn label_x(&self) -> f64 {
        self.right() + LABEL
    }

    fn height(&self, band: u32) -> f64 {
        self.ends[0] + f64::from(band) * self.band
    }

    fn y(&self, band: u32) -> f64 {
        crisp(self.scale.y(self.height(band)))
    }

    /// The place of rule and ticks, px.
    pub(super) fn area(&self) -> Area {
        Area::between([self.x - BESIDE, self.right() + LONG], [self.y(self.count()), self.y(0)])
    }

    /// Rule, bands and ticks.
    pub(super) fn rule(&self) -> Vec<Mark> {
        let count = self.count();
        let (top, bottom) = (self.y(count), self.y(0));
        let mut marks = vec![Mark::rect("pole", Screen::new(self.x, top), WIDTH, (bottom - top).max(0.0))];
        let mut bands = String::new();
        let first = (self.ends[0] / self.band).round();
        for band in 0..count {
            let odd = ((first + f64::from(band)) / 2.0).fract().abs() > 0.25;
            let x = self.x + if odd { COLUMN } else { 0.0 };
            let (upper, lower) = (self.y(band + 1), self.y(band));
            write(
                &mut bands,
                format_args!("M{} {}h{COLUMN}V{}h-{COLUMN}Z", tidy(x), tidy(upper), tidy(lower)),
            );
        }
        marks.push(Mark::path("pb", bands));
        let mut ticks = String::new();
        for half in 0..=2 * count {
            let y = crisp(self.scale.y(self.ends[0] + f64::from(half) * self.band / 2.0));
            let length = if half % 2 == 0 { LONG } else { SHORT };
            write(&mut ticks, format_args!("M{} {}h{length}", tidy(self.right()), tidy(y)));
        }
        marks.push(Mark::path("tick", ticks));
        marks
    }

    /// The label of a band's lower edge.
    fn label(&self, band: u32, named: bool) -> String {
        let figure = figures::size(self.height(band) / 1e3, self.system);
        if named { figure.to_string() } else { figure.number }
    }

    /// The labels; those near a level, px, are left out.
    pub(super) fn labels(&self, lettering: &mut Lettering<'_>, level: f64) -> Vec<Mark> {
        let count = self.count();
        let every = (1..10)
            .find(|every| f64::from(*every) * self.band * self.scale.per_mm >= LABELS_APART)
            .unwrap_or(10);
        let uppermost = count - count % every;
        (0..=count)
            .step_by(usize::try_from(every).unwrap_or(1))
            .map(|band| {
                let y = self.scale.y(self.height(band));
                let named = self.names_unit && band == uppermost;
                let label = text(
                    "halo s",
                    Screen::new(self.label_x(), y + 4.0),
                    Anchor::Start,
                    &self.label(band, named),
                );
                if (y - level).abs() < NEAR_TAG { label.silent() } else { lettering.place([label]) }
            })
            .collect()
    }

    /// Widest label, px, named or not.
    pub(super) fn labels_width(&self, lettering: &Lettering<'_>, named: bool) -> f64 {
        (0..=self.count()).map(|band| lettering.width("s", &self.label(band, named))).fold(0.0, f64::max)
    }
}

/// How wide a tag is for its words, px.
pub(super) fn tag_width(lettering: &Lettering<'_>, words: &str) -> f64 {
    lettering.width("tagt", words) + TAG_POINT + 10.0
}

/// The tag with a height on it, its point at `tip`, pointing to the left.
pub(super) fn tag(lettering: &mut Lettering<'_>, tip: Screen, words: &str) -> [Mark; 2] {
    let width = tag_width(lettering, words);
    let half = TAG_HEIGHT / 2.0;
    let (x, y) = (tidy(tip.x), tidy(tip.y));
    let body = tidy(width - TAG_POINT);
    let shape = format!("M{x} {y}l{TAG_POINT} -{half}h{body}v{TAG_HEIGHT}h-{body}Z");
    lettering.keep(Area::between([tip.x, tip.x + width], [tip.y - half, tip.y + half]));
    let words = Mark::text("tagt", tip.by(TAG_POINT + 4.0, 4.5), Anchor::Start, words);
    [Mark::path("tag", shape), words]
}
