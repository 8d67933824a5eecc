//! What a reader sees who points at a height in a plot: a line at that height and the values of all curves it crosses.
use super::face::Measure;
use super::frame::Area;
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Mark};
use super::outline::{tidy, write};
use super::plan::height_number;
use super::scale::{Screen, crisp};
use super::sheet::Sheet;
use crate::report::Station;

/// Nearer to the level line than this, px, there is nothing to add to it.
const AT_LEVEL: f64 = 2.0;
/// Height of the tag, px.
const TAG: f64 = 18.0;

impl Sheet {
    /// Line, height, dots and values at a station, in the row of plots that holds the plot at a place. `moving` are the marks that the picture
    /// shows at present: the values keep off their lettering. Nothing at the height where the deck stands, since the level line says it already.
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
        let y = crisp(row.pole.scale.level(station.height));
        let Some(level) = self.level_in(place, deck) else { return Vec::new() };
        if (y - level).abs() < AT_LEVEL {
            return Vec::new();
        }
        let mut lettering = Lettering::with(measure, self.plan.paper, &self.taken);
        for area in moving.iter().filter_map(|mark| mark.lettering(measure)) {
            lettering.keep(area);
        }
        let from = row.pole.right() + 5.0;
        let mut marks = vec![Mark::line("probe", Screen::new(from, y), Screen::new(row.right, y))];
        let (mut dots, mut values) = (Vec::new(), Vec::new());
        for plot in row.plots.clone() {
            let Some(placed) = self.charts.placed(&self.plan, plot) else { continue };
            dots.extend(placed.dots(station, y));
            values.extend(placed.values(&mut lettering, station, y, self.view.system));
        }
        marks.extend(dots);
        marks.extend(values);
        marks.extend(tag(&lettering, Screen::new(from, y), &height_number(station.height, self.view.system)));
        marks
    }

    /// Where the level line lies in the row of a plot, px, with the deck at a height, m.
    fn level_in(&self, place: usize, height: f64) -> Option<f64> {
        let row = self.plan.rows.iter().find(|row| row.plots.contains(&place))?;
        Some(crisp(row.pole.scale.level(height)))
    }
}

/// A height in a thin frame, over the labels of the pole.
fn tag(lettering: &Lettering<'_>, at: Screen, words: &str) -> [Mark; 2] {
    let width = lettering.width("s", words) + 8.0;
    let area = Area { x: at.x, y: at.y - TAG / 2.0, width, height: TAG };
    let mut frame = String::new();
    let [x, y] = [area.x + 0.5, area.y].map(tidy);
    write(&mut frame, format_args!("M{x} {y}h{}v{TAG}h-{}Z", tidy(width), tidy(width)));
    [Mark::path("probe-tag", frame), text("s", at.by(4.5, 4.0), Anchor::Start, words)]
}
