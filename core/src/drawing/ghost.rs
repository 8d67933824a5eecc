//! Another design beneath the elevation: its outline thin and dashed, and the line that names it.
use super::elevation::Subject;
use super::face::Measure;
use super::frame::Area;
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Mark};
use super::outline::Stroke;
use super::scale::{Scale, Screen};
use super::sheet::{Sheet, bounds, hatched, runs};
use super::usage::Small;
use super::view::Layout;
use crate::quantity::figures;
use crate::report::Report;
use glam::DVec2;

/// Lines that would only confuse beneath another drawing.
const TOO_FINE: [&str; 5] = ["cl", "cm", "hid", "glue", "n"];
/// The line of the legend: its sample, the gap behind it, and its height above and below the base line, px.
const SAMPLE: f64 = 24.0;
const GAP: f64 = 6.0;
const TALL: [f64; 2] = [11.0, 4.0];
/// From the left edge and from the head to the legend, px.
const PLACE: [f64; 2] = [12.0, 14.0];
/// The legend is at most this part of the drawing's width.
const SHARE: f64 = 0.96;

impl Sheet {
    /// Finds the legend its place and keeps other lettering out of it.
    pub(super) fn legend_place(&self, lettering: &mut Lettering<'_>) -> (Screen, f64) {
        let left = if self.view.layout == Layout::Wide { self.plan.drawing.x } else { 0.0 };
        let at = Screen::new(left + PLACE[0], f64::from(self.view.head) + PLACE[1]);
        let room = (self.plan.drawing.width * SHARE - 2.0 * PLACE[0]).max(SAMPLE);
        lettering.keep(Area { x: at.x, y: at.y - TALL[0], width: room, height: TALL[0] + TALL[1] });
        (at, room)
    }

    /// The outline of the other design this sheet was made over, with its deck at a height, m, or at the nearer end of its lift, and the line
    /// that names it and says so. It lies beneath what moves; nothing where the sheet was made without another design.
    #[must_use]
    pub fn outline(&self, other: &Report, height: f64, measure: Measure<'_>) -> Vec<Mark> {
        let Some((at, room)) = self.legend else { return Vec::new() };
        let station = other.at(height);
        let pixel = 1.0 / self.plan.scale.per_mm;
        let subject = Subject { design: &other.design, pose: &station.pose, runs: runs(other), pixel };
        let mut strokes = subject.ground();
        strokes.extend(subject.mechanism());
        let drawn = plain(&strokes, &self.plan.scale);
        let where_it_stands = if (station.height - height).abs() < SAME_HEIGHT {
            "at the same deck height".to_owned()
        } else {
            let end = if height > station.height { "highest" } else { "lowest" };
            format!("at its {end} deck, {}", figures::size(station.height, self.view.system))
        };
        let lettering = Lettering::new(measure, self.plan.paper);
        let tail = format!(", {where_it_stands}");
        let free = room - SAMPLE - GAP;
        let name = format!("set aside: {}", other.design.name);
        let name = lettering.shortened("s", &name, (free - lettering.width("s", &tail)).max(40.0));
        let words = lettering.shortened("s", &format!("{name}{tail}"), free);
        vec![
            Mark::path("ghost", drawn),
            Mark::line("ghost", at.by(0.0, -4.0), at.by(SAMPLE, -4.0)),
            text("s halo", at.by(SAMPLE + GAP, 0.0), Anchor::Start, &words),
        ]
    }
}

/// The outlines of strokes in one line, without what is too fine.
fn plain(strokes: &[Stroke], scale: &Scale) -> String {
    strokes.iter().filter(|stroke| !is_fine(stroke)).map(|stroke| stroke.outline.notation(scale)).collect()
}

fn is_fine(stroke: &Stroke) -> bool {
    TOO_FINE.iter().any(|class| stroke.class.split(' ').any(|one| one == *class))
}

/// A small picture of a size, px: a table with its deck at a height, m, over another, thin and dashed, at the same height or the nearer end of
/// its lift. All heights of both have the same scale.
#[must_use]
pub fn over_each_other(report: &Report, other: &Report, height: f64, (width, tall): (f64, f64)) -> Small {
    let bounds = bounds(report, false).with(bounds(other, false));
    let size = (bounds.most - bounds.least).max(DVec2::ONE);
    let per_mm = ((width - 2.0 * EDGE) / size.x).min((tall - 2.0 * EDGE) / size.y);
    let scale = Scale {
        per_mm,
        origin: Screen::new(
            (width - size.x * per_mm) / 2.0 - bounds.least.x * per_mm,
            tall - EDGE + bounds.least.y.min(0.0) * per_mm,
        ),
    };
    let strokes = |report: &Report| {
        let station = report.at(height);
        let subject =
            Subject { design: &report.design, pose: &station.pose, runs: runs(report), pixel: 1.0 / per_mm };
        let mut strokes = subject.ground();
        strokes.extend(subject.mechanism());
        strokes
    };
    let mut marks = hatched(scale.y(0.0), [2.0, width - 2.0]);
    marks.push(Mark::path("ghost", plain(&strokes(other), &scale)));
    let drawn = strokes(report).into_iter().filter(|stroke| !is_fine(stroke));
    let own: String =
        drawn.map(|stroke| Mark::path(stroke.class, stroke.outline.notation(&scale)).svg()).collect();
    let beneath: String = marks.iter().map(Mark::svg).collect();
    Small { marks: format!("{beneath}<g class=\"slim\">{own}</g>"), width, height: tall }
}

/// Around a small picture, px.
const EDGE: f64 = 12.0;

/// Two heights closer than this are one, m.
const SAME_HEIGHT: f64 = 1e-6;
