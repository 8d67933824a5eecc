//! The ratio over the deck's height beside the table: elevation, pole and curve at one scale and one level, as on the main sheet.
use super::curve::{notation, thinned};
use super::{MOST_DRAWN, Small, drawn};
use crate::checks::{Check, Verdict};
use crate::drawing::arrow::dimension_head;
use crate::drawing::face::widths;
use crate::drawing::frame::Area;
use crate::drawing::lettering::{Lettering, text};
use crate::drawing::mark::{Anchor, Mark};
use crate::drawing::outline::write;
use crate::drawing::plan::height_number;
use crate::drawing::plot::dot;
use crate::drawing::pole::{Pole, WIDTH, band, tag, tag_width};
use crate::drawing::scale::{Model, Scale, Screen, crisp};
use crate::drawing::sheet::hatched;
use crate::drawing::slim::Slim;
use crate::drawing::state;
use crate::quantity::System;
use crate::report::{Grade, Report, Station};

/// Room for the elevation, px.
const WIDE: f64 = 146.0;
const TALL: f64 = 240.0;
/// Margins at the left, between elevation and pole, above, and below the floor, px.
const LEFT: f64 = 3.0;
const BESIDE: f64 = 9.0;
const ABOVE: f64 = 22.0;
const BELOW: f64 = 10.0;
/// Pixels for a ratio of one, and room beyond two, px.
const ONE: f64 = 50.0;
const BEYOND: f64 = 26.0;
/// Below the plot's base line, for ticks and their figures, px.
const AXIS: f64 = 22.0;
/// How far a thinned curve may lie off, px.
const APART: f64 = 0.15;
/// Pictures of the checks of a report that share what they have in common: see [`Self::shapes`].
pub struct Beside<'a> {
    report: &'a Report,
    system: System,
    slim: Slim<'a>,
    scale: Scale,
    pole: Pole,
    /// Where the ratio zero stands, px.
    zero: f64,
    /// Size of the pictures, px.
    size: (f64, f64),
    /// Every height at which a check is worst.
    stations: Vec<Station>,
}

impl<'a> Beside<'a> {
    /// For the checks of a report.
    #[must_use]
    pub fn new(report: &'a Report, system: System) -> Self {
        let slim = Slim::new(report, (WIDE, TALL), Screen::new(LEFT, ABOVE));
        let scale = slim.scale;
        let floor = scale.y(0.0);
        let up = (floor - ABOVE) / scale.per_mm;
        let band = band(system, scale.per_mm);
        let pole = Pole {
            x: (slim.right + BESIDE).floor() + 0.5,
            scale,
            ends: [0.0, (up / band + 1e-9).floor() * band],
            band,
            system,
            names_unit: true,
        };
        let mut heights: Vec<f64> = report.checks.iter().map(|check| check.height).collect();
        heights.sort_by(f64::total_cmp);
        heights.dedup();
        let stations: Vec<Station> = heights.into_iter().map(|height| report.at(height)).collect();
        let lettering = Lettering::new(&widths, Area::default());
        let labels = stations
            .iter()
            .map(|station| tag_width(&lettering, &height_number(station.height, system)))
            .fold(pole.labels_width(&lettering, true), f64::max);
        let zero = (pole.x + WIDTH + labels + 9.0).round() + 0.5;
        let width = (zero + MOST_DRAWN * ONE + BEYOND).ceil();
        let height = (floor + BELOW).max(scale.level(report.lowest()) + AXIS).ceil();
        Self { report, system, slim, scale, pole, zero, size: (width, height), stations }
    }

    fn x(&self, ratio: f64) -> f64 {
        self.zero + drawn(ratio) * ONE
    }

    /// Shapes that the pictures refer to by `use`: axes and pole, and the table at every height at which a check is worst. They belong once
    /// into the document of the pictures.
    #[must_use]
    pub fn shapes(&self) -> String {
        let mut shapes = String::from("<g id=\"lift-axes\" class=\"dwg\">");
        shapes.extend(self.axes().iter().map(Mark::svg));
        shapes += "</g>";
        for (place, station) in self.stations.iter().enumerate() {
            write(&mut shapes, format_args!("<g id=\"lift-{place}\" class=\"dwg\"><g class=\"slim\">"));
            shapes.extend(self.slim.table(station).iter().map(Mark::svg));
            shapes += "</g>";
            shapes.extend(self.level(station).iter().map(Mark::svg));
            shapes += "</g>";
        }
        shapes
    }

    /// Floor, pole, and the axes of the plot.
    fn axes(&self) -> Vec<Mark> {
        let mut marks = hatched(self.scale.y(0.0), [LEFT, self.pole.right() + 3.0]);
        marks.extend(self.pole.rule());
        let base = crisp(self.scale.level(self.report.lowest()));
        let top = crisp(self.scale.level(self.report.highest()));
        let at = |ratio: f64, y: f64| Screen::new(self.x(ratio), y);
        marks.push(Mark::line("reach", at(0.0, top), at(MOST_DRAWN, top)));
        marks.push(Mark::line("axis", at(0.0, base), at(0.0, top - 6.0)));
        marks.push(Mark::line("axis", at(0.0, base), at(MOST_DRAWN, base)));
        marks.push(Mark::line("lim", at(1.0, base), at(1.0, top - 6.0)));
        for (words, ratio) in [("0", 0.0), ("1", 1.0), ("2", 2.0)] {
            marks.push(Mark::line("tick", at(ratio, base), at(ratio, base + 5.0)));
            marks.push(text("s", at(ratio, base + 17.0), Anchor::Middle, words));
        }
        marks.push(self.limit());
        marks
    }

    /// The name of the line at a ratio of one.
    fn limit(&self) -> Mark {
        let top = crisp(self.scale.level(self.report.highest()));
        text("q", Screen::new(self.x(1.0), top - 9.0), Anchor::Middle, "limit")
    }

    /// The labels of the pole, the level line, and the height on its tag.
    fn level(&self, station: &Station) -> Vec<Mark> {
        let mut lettering = Lettering::new(&widths, self.paper());
        let y = crisp(self.scale.level(station.height));
        let deck = self.scale.to_screen(Model::from(self.slim.subject(station).deck_edge()));
        let mut marks = self.pole.labels(&mut lettering, y);
        marks.push(Mark::line("level", Screen::new(deck.x, y), Screen::new(self.x(MOST_DRAWN), y)));
        let words = height_number(station.height, self.system);
        marks.extend(tag(&mut lettering, Screen::new(self.pole.right() + 0.5, y), &words));
        marks
    }

    fn paper(&self) -> Area {
        Area { x: 0.0, y: 0.0, width: self.size.0, height: self.size.1 }
    }

    /// The picture of a check of the report: the table at the height where it is worst with the part drawn wide, and the ratio over the
    /// height. It needs [`Self::shapes`].
    #[must_use]
    pub fn picture(&self, check: &Check) -> Small {
        let mut marks = String::from("<use href=\"#lift-axes\"/>");
        let station =
            self.stations.iter().position(|station| station.height.total_cmp(&check.height).is_eq());
        if let Some(place) = station {
            write(&mut marks, format_args!("<use href=\"#lift-{place}\"/>"));
            let outlines = self.slim.subject(&self.stations[place]).part(check.member);
            let notation: String = outlines.iter().map(|outline| outline.notation(&self.scale)).collect();
            marks += &Mark::path("part", notation).svg();
        }
        marks.extend(self.curve(check).iter().map(Mark::svg));
        Small { marks, width: self.size.0, height: self.size.1 }
    }

    fn curve(&self, check: &Check) -> Vec<Mark> {
        let place = |height: f64, ratio: f64| Screen::new(self.x(ratio), self.scale.level(height));
        let points: Vec<Screen> = check.curve.iter().map(|(height, ratio)| place(*height, *ratio)).collect();
        let mut marks = vec![Mark::path("c-ink", notation(&thinned(&points, APART)))];
        let worst = place(check.height, check.ratio);
        let mut lettering = Lettering::new(&widths, self.paper());
        lettering.keep(state::around(worst));
        lettering.set(self.limit());
        if check.ratio > MOST_DRAWN {
            marks.push(Mark::path("ah", dimension_head(worst, worst.by(BEYOND - 6.0, 0.0))));
        }
        if matches!(check.verdict, Verdict::Over | Verdict::Watch) {
            marks.extend(state::sign(Grade::of(check.verdict), Some(worst), ""));
        } else {
            marks.push(Mark::path("d-ink", dot(worst, 4.0)));
        }
        let sides = [
            (12.0, -5.0, Anchor::Start),
            (-12.0, -5.0, Anchor::End),
            (0.0, -13.0, Anchor::Middle),
            (0.0, 22.0, Anchor::Middle),
        ];
        let words = check.ratio_words();
        marks.push(
            lettering.place(
                sides.map(|(right, down, anchor)| text("b halo", worst.by(right, down), anchor, &words)),
            ),
        );
        marks
    }
}
