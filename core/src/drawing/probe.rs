//! What a reader sees who points at a height in a plot: a line at that height and the values of all curves it crosses, by name.
use super::face::Measure;
use super::frame::Area;
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Mark};
use super::outline::{tidy, write};
use super::plan::height_number;
use super::plot::Placed;
use super::scale::{Screen, crisp};
use super::sheet::Sheet;
use crate::quantity::System;
use crate::report::Station;

/// Height of the tag with the height, px; nearer to the level line it would hide that one's tag.
const TAG: f64 = 18.0;
/// Lines of the list of values, its inner margin, and its distance from the dots, px.
const LINE: f64 = 15.0;
const INSIDE: f64 = 5.0;
const BESIDE: f64 = 12.0;

impl Sheet {
    /// Line, height, dots and a list of values at a station, in the row of plots that holds the plot at a place, with the deck at a height, m. They lie
    /// on top of `moving`, the marks the picture shows at present, and hide as little of its lettering as they can.
    #[must_use]
    pub fn probe(
        &self,
        place: usize,
        station: &Station,
        deck: f64,
        moving: &[Mark],
        measure: Measure<'_>,
    ) -> Vec<Mark> {
        let Some(row) = self.plan.rows.iter().find(|row| row.plots.contains(&place)) else {
            return Vec::new();
        };
        let mut lettering = Lettering::new(measure, self.plan.paper);
        for area in moving.iter().filter_map(|mark| mark.lettering(measure)) {
            lettering.keep(area);
        }
        let scale = &row.pole.scale;
        let y = crisp(scale.level(station.height));
        let from = row.pole.right() + 5.0;
        let mut marks = vec![Mark::line("probe", Screen::new(from, y), Screen::new(row.right, y))];
        if (y - scale.level(deck)).abs() > TAG {
            let words = height_number(station.height, self.view.system);
            let area = Area {
                x: from,
                y: y - TAG / 2.0,
                width: lettering.width("s", &words) + 2.0 * INSIDE,
                height: TAG,
            };
            marks.push(frame(&area));
            marks.push(text("s", Screen::new(from + INSIDE, y + 4.0), Anchor::Start, &words));
        }
        for plot in row.plots.clone() {
            let Some(placed) = self.charts.placed(&self.plan, plot) else { continue };
            marks.extend(placed.dots(station, y));
            marks.extend(list(&placed, &lettering, station, y, self.view.system));
        }
        marks
    }
}

/// A value in a list: class of its lettering, name, figure, and where its dot lies, px.
type Known<'a> = (&'static str, &'a str, String, f64);

/// The values of a plot's curves by name in a frame: beside the dots where that hides neither curve nor
/// lettering, else above or beneath the line.
fn list(
    placed: &Placed<'_>,
    lettering: &Lettering<'_>,
    station: &Station,
    y: f64,
    system: System,
) -> Vec<Mark> {
    let known: Vec<Known<'_>> = placed
        .plot
        .series
        .iter()
        .filter_map(|series| {
            let value = series.value(station);
            let x = placed.area.place(value, station.height).x;
            let words = placed.plot.figure(value, system);
            x.is_finite().then_some((series.lettering, series.name.as_str(), words, x))
        })
        .collect();
    if known.is_empty() {
        return Vec::new();
    }
    let widest = |of: &dyn Fn(&Known<'_>) -> f64| known.iter().map(of).fold(0.0, f64::max);
    let names = widest(&|line| lettering.width(line.0, line.1));
    let values = widest(&|line| lettering.width(line.0, &line.2));
    let ends = known
        .iter()
        .fold([f64::INFINITY, f64::NEG_INFINITY], |ends, line| [ends[0].min(line.3), ends[1].max(line.3)]);
    let width = names + 10.0 + values + 2.0 * INSIDE;
    let height = known.len() as f64 * LINE + INSIDE;
    let plot = &placed.area.area;
    let xs = [ends[1] + BESIDE, ends[0] - BESIDE - width, plot.right() - width, plot.x];
    let ys = [y - height / 2.0, y - height - BESIDE, y + BESIDE, y - height - 3.0 * BESIDE, y + 3.0 * BESIDE];
    let room = Area { x: plot.x - 8.0, y: plot.y - 8.0, width: plot.width + 24.0, height: plot.height + 8.0 };
    let places = || {
        ys.into_iter().flat_map(|y| xs.map(|x| Area { x, y, width, height })).filter(|area| room.holds(area))
    };
    let hides_dots = |area: &Area| known.iter().any(|line| area.grown(4.0).contains(Screen::new(line.3, y)));
    let area = places()
        .find(|area| placed.is_clear(area) && lettering.is_free(area))
        .or_else(|| places().find(|area| placed.is_clear(area)))
        .or_else(|| places().find(|area| !hides_dots(area)))
        .unwrap_or(Area { x: plot.x, y: y - height - BESIDE, width, height });
    let mut marks = vec![frame(&area)];
    for (line, (class, name, words, _)) in (1..).zip(known) {
        let base = area.y + f64::from(line) * LINE - 2.0;
        marks.push(text(class, Screen::new(area.x + INSIDE, base), Anchor::Start, name));
        marks.push(text(class, Screen::new(area.right() - INSIDE, base), Anchor::End, &words));
    }
    marks
}

fn frame(area: &Area) -> Mark {
    let mut d = String::new();
    let [x, y, width, height] =
        [crisp(area.x), crisp(area.y), area.width.round(), area.height.round()].map(tidy);
    write(&mut d, format_args!("M{x} {y}h{width}v{height}h-{width}Z"));
    Mark::path("probe-tag", d)
}
