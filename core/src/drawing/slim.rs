//! The elevation in a small space: no dimensions, no lines that would only blot.
use super::elevation::Subject;
use super::mark::Mark;
use super::outline::Stroke;
use super::plan::reach;
use super::scale::{Scale, Screen};
use super::sheet::{hatched, runs};
use super::usage::Small;
use crate::report::{Report, Station};

/// Lines that are too fine for so small a drawing.
const TOO_FINE: [&str; 5] = ["cl", "cm", "hid", "glue", "n"];
/// The size of a pixel on the table by which its strokes are made, before the scale is known, mm.
const ROUGH: f64 = 6.0;
/// Margin of a picture of its own, and below the floor for its hatching, px.
const MARGIN: f64 = 3.0;
const HATCH: f64 = 10.0;

/// A table drawn small, at any height of its lift, all at one scale.
pub(super) struct Slim<'a> {
    report: &'a Report,
    /// From millimetres to pixels.
    pub scale: Scale,
    runs: [[f64; 2]; 2],
    /// How far it reaches to the right, px.
    pub right: f64,
}

impl<'a> Slim<'a> {
    /// As large as a room (width, height; px) holds it at every height, with its left edge and the top of the room at a place; the floor
    /// lies at the bottom of what it needs.
    pub fn new(report: &'a Report, room: (f64, f64), place: Screen) -> Self {
        let runs = runs(report);
        let design = &report.design;
        let bounds = reach(report, |height| {
            let station = report.at(height);
            let subject = Subject { design, pose: &station.pose, runs, pixel: ROUGH };
            let mut strokes = subject.mechanism();
            strokes.extend(subject.ground());
            strokes.retain(|stroke| !too_fine(stroke));
            strokes
        });
        let (across, up) =
            ((bounds.most.x - bounds.least.x).max(1.0), bounds.most.y.max(report.highest() * 1e3));
        let per_mm = (room.0 / across).min(room.1 / up);
        let floor = (place.y + up * per_mm).round();
        let scale = Scale { per_mm, origin: Screen::new(place.x - bounds.least.x * per_mm, floor) };
        Self { report, scale, runs, right: place.x + across * per_mm }
    }

    pub fn subject<'s>(&'s self, station: &'s Station) -> Subject<'s> {
        let pixel = 1.0 / self.scale.per_mm;
        Subject { design: &self.report.design, pose: &station.pose, runs: self.runs, pixel }
    }

    /// The table at a height.
    pub fn table(&self, station: &Station) -> Vec<Mark> {
        let subject = self.subject(station);
        let mut strokes = subject.ground();
        strokes.extend(subject.mechanism());
        strokes
            .iter()
            .filter(|stroke| !too_fine(stroke))
            .map(|stroke| Mark::path(stroke.class, stroke.outline.notation(&self.scale)))
            .collect()
    }
}

/// Whether a line would only blot so small a drawing.
fn too_fine(stroke: &Stroke) -> bool {
    TOO_FINE.iter().any(|class| stroke.class.split(' ').any(|one| one == *class))
}

/// The table alone at some heights, m, side by side at one scale, in a room (width, height; px) that it does not exceed.
#[must_use]
pub fn small(report: &Report, heights: &[f64], room: (f64, f64)) -> Small {
    let share = room.0 / heights.len().max(1) as f64;
    let inner = (share - 2.0 * MARGIN, room.1 - MARGIN - HATCH);
    let (mut marks, mut width) = (String::from("<g class=\"slim\">"), 0.0);
    let mut floor = 0.0;
    for height in heights {
        let slim = Slim::new(report, inner, Screen::new(width + MARGIN, MARGIN));
        marks.extend(hatched(slim.scale.y(0.0), [width, slim.right + MARGIN]).iter().map(Mark::svg));
        marks.extend(slim.table(&report.at(*height)).iter().map(Mark::svg));
        width = slim.right + MARGIN;
        floor = slim.scale.y(0.0);
    }
    marks += "</g>";
    Small { marks, width, height: floor + HATCH }
}

/// A table drawn small at one height, and where it stands on paper.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// The table and the floor, in the classes of the drawing language.
    pub marks: String,
    /// From millimetres to pixels.
    pub scale: Scale,
    /// How far it reaches to the right at any height, px.
    pub right: f64,
}

/// The table at a height, m, in a room (width, height; px) that it does not exceed at any height, with the upper left corner of the room
/// at a place.
#[must_use]
pub fn placed(report: &Report, height: f64, room: (f64, f64), place: Screen) -> Placed {
    let slim = Slim::new(report, room, place);
    let mut marks = String::from("<g class=\"slim\">");
    marks.extend(hatched(slim.scale.y(0.0), [place.x, slim.right]).iter().map(Mark::svg));
    marks.extend(slim.table(&report.at(height)).iter().map(Mark::svg));
    marks += "</g>";
    Placed { marks, scale: slim.scale, right: slim.right }
}
