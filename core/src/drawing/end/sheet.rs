//! The picture with the end elevation: what stands still and the curves.
use super::load::load;
use super::pieces::Pieces;
use super::plots::plot;
use super::{EndSubject, Leaning};
use crate::drawing::chart::Plot;
use crate::drawing::charts::Charts;
use crate::drawing::dimension::{Dimension, OFF_PART, PAST_LINE, extension};
use crate::drawing::elevation::{Subject, load_shape};
use crate::drawing::face::Measure;
use crate::drawing::frame::{Area, Frame};
use crate::drawing::lettering::Lettering;
use crate::drawing::mark::{Curve, Mark};
use crate::drawing::outline::{Bounds, Stroke};
use crate::drawing::plan::{Needs, Plan, height_number, reach};
use crate::drawing::scale::{Screen, crisp};
use crate::drawing::sheet::{hatched, runs};
use crate::drawing::title;
use crate::drawing::view::{Chart, Layout, SwayChart, View};
use crate::report::{Finding, PUSH, Report, Station, SwayReport};
use glam::DVec2;

/// What is shown.
#[derive(Clone, Copy)]
pub struct Scene<'a> {
    /// The report of the design.
    pub report: &'a Report,
    /// Its slow part; none as long as it is not known, or where it is not computed for this drive.
    pub sway: Option<&'a SwayReport>,
    /// The findings whose marks stand in the picture, in the order of their numbers.
    pub findings: &'a [Finding],
    /// Whether the side elevation stands to the left of the end elevation, where the layout is wide.
    pub beside: bool,
}

/// The give under [`PUSH`] is drawn at most so large anywhere in the lift, px.
const GIVE: f64 = 34.0;
/// Factors by which it is drawn larger than life.
const FACTORS: [u16; 9] = [1, 2, 5, 10, 20, 50, 100, 200, 500];
/// Between two elevations, mm of the table and px of paper.
const BETWEEN: f64 = 90.0;

/// A picture of the end elevation without its moving part; see [`crate::drawing::Sheet`].
#[derive(Clone, Debug, PartialEq)]
pub struct SwaySheet {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// What stands still, far to near.
    pub still: Vec<Mark>,
    /// The curves of the plots.
    pub curves: Vec<Curve>,
    /// Where things lie; `bent_factor` is the factor by which the give is drawn larger than life.
    pub frame: Frame,
    pub(super) view: View,
    pub(super) plan: Plan,
    pub(super) charts: Charts,
    pub(super) taken: Vec<Area>,
    pub(super) runs: [[f64; 2]; 2],
    pub(super) pieces: Pieces,
    /// Where the middle of the end elevation lies, mm right of the fixed pivots of the side elevation.
    pub(super) middle: f64,
    pub(super) beside: bool,
}

impl SwaySheet {
    /// Lays out the picture of a scene and draws what stands still. Of the view's overlays dimensions and load are heeded, of its charts
    /// those of the slow report; where it has none of these, all of them are drawn.
    #[must_use]
    pub fn new(scene: &Scene<'_>, view: &View, measure: Measure<'_>) -> Self {
        let report = scene.report;
        let beside = scene.beside && view.layout == Layout::Wide;
        let plots: Vec<Plot> =
            chosen(view).into_iter().map(|chart| plot(chart, report, scene.sway, view.system)).collect();
        let runs = runs(report);
        let pieces = Pieces::of(&report.design);
        let side_bounds = reach(report, |height| side_strokes(report, &report.at(height), runs));
        let end_bounds = reach(report, |height| {
            let station = report.at(height);
            let side = subject(report, &station, runs, 2.0);
            let end = EndSubject { side, pieces: &pieces, leaning: None, middle: 0.0 };
            let mut strokes = end.mechanism();
            strokes.extend(end.ground());
            strokes.extend(load(&end).strokes);
            strokes
        });
        let middle = if beside { side_bounds.most.x + BETWEEN - end_bounds.least.x } else { 0.0 };
        let shifted = Bounds {
            least: end_bounds.least + DVec2::new(middle, 0.0),
            most: end_bounds.most + DVec2::new(middle, 0.0),
        };
        let bounds = if beside { side_bounds.with(shifted) } else { shifted };
        let plan = Needs { report, view, measure, plots: &plots, bounds }.plan();
        let mut sheet = Self {
            width: plan.paper.width,
            height: plan.paper.height,
            still: Vec::new(),
            curves: Vec::new(),
            frame: plan.frame(report, factor(report, scene.sway, plan.scale.per_mm)),
            view: view.clone(),
            plan,
            charts: Charts::new(plots),
            taken: Vec::new(),
            runs,
            pieces,
            middle,
            beside,
        };
        sheet.draw(scene, measure);
        sheet
    }

    pub(super) fn side<'a>(&self, report: &'a Report, station: &'a Station) -> Subject<'a> {
        subject(report, station, self.runs, 1.0 / self.plan.scale.per_mm)
    }

    pub(super) fn end<'a>(&'a self, side: Subject<'a>, leaning: Option<Leaning<'a>>) -> EndSubject<'a> {
        EndSubject { side, pieces: &self.pieces, leaning, middle: self.middle }
    }

    fn draw(&mut self, scene: &Scene<'_>, measure: Measure<'_>) {
        let report = scene.report;
        let mut lettering = Lettering::new(measure, self.plan.paper);
        let mut marks = self.plan.reaches(report);
        marks.extend(self.floor());
        let (low, high) = (report.at(report.lowest()), report.at(report.highest()));
        let ends = [&low, &high].map(|station| self.side(report, station));
        if self.beside {
            marks.extend(self.plan.paint(&ends[0].ground()));
            for side in &ends {
                marks.extend(self.plan.paint(&side.phantom()));
            }
        }
        marks.extend(self.plan.paint(&self.end(ends[0], None).ground()));
        if self.view.live() {
            for side in ends {
                marks.extend(self.plan.paint(&[super::frames::panel(&self.end(side, None), "ph")]));
            }
        }
        for row in &self.plan.rows {
            marks.extend(row.pole.rule());
            let top = row.pole.scale.y(row.pole.ends[1]);
            lettering.keep(Area::between(
                [row.pole.x, row.pole.right()],
                [top, row.pole.scale.y(row.pole.ends[0])],
            ));
        }
        let (drawn, curves) = self.charts.draw(&self.plan, &mut lettering);
        marks.extend(drawn);
        self.curves = curves;
        let names = self.charts.named();
        let what = if self.beside { "Side and end elevation" } else { "End elevation" };
        if let Some(area) = self.plan.title {
            marks.extend(title::title(&mut lettering, area, &title::cells(report, &self.view, what)));
        }
        let casters = self.end(ends[0], None);
        for area in self.solids(&casters) {
            lettering.keep(area);
        }
        if self.view.show.dimensions && self.view.live() {
            marks.extend(self.lift_dimensions(&mut lettering, report, &ends));
        }
        marks.push(self.factor_note(&mut lettering, scene));
        self.still = marks;
        self.taken = lettering.into_taken();
        self.taken.retain(|area| !names.contains(area));
    }

    fn floor(&self) -> Vec<Mark> {
        let right = match (self.view.layout, self.plan.rows.first()) {
            (Layout::Wide, Some(row)) => row.pole.right() + 3.0,
            (Layout::Narrow, _) => self.width - 8.0,
            _ => (self.plan.scale.x(self.plan.bounds.most.x) + 12.0).min(self.width - 2.0),
        };
        let left = if self.view.layout == Layout::Narrow { 8.0 } else { self.plan.columns[0] - 3.0 };
        hatched(self.plan.scale.y(0.0), [left, right])
    }

    /// The casters: lettering keeps off them.
    fn solids(&self, end: &EndSubject<'_>) -> Vec<Area> {
        let scale = &self.plan.scale;
        let mut strokes = end.ground();
        if self.beside {
            strokes.extend(end.side.ground());
        }
        let boxes = strokes.into_iter().filter_map(|stroke| Bounds::around(&[stroke]));
        boxes
            .map(|bounds| {
                Area::between(
                    [scale.x(bounds.least.x), scale.x(bounds.most.x)],
                    [scale.y(bounds.least.y), scale.y(bounds.most.y)],
                )
            })
            .collect()
    }

    /// Lowest and highest deck.
    fn lift_dimensions(
        &self,
        lettering: &mut Lettering<'_>,
        report: &Report,
        ends: &[Subject<'_>; 2],
    ) -> Vec<Mark> {
        let scale = &self.plan.scale;
        let floor = scale.y(0.0);
        let mut marks = Vec::new();
        let heights = [("lowest", report.lowest(), &ends[0], 0), ("highest", report.highest(), &ends[1], 2)];
        for (word, height, side, column) in heights {
            let x = self.plan.columns[column];
            let y = scale.level(height);
            marks.push(extension(
                Screen::new(self.left_edge(side) - OFF_PART, y),
                Screen::new(x - PAST_LINE, y),
            ));
            let number = height_number(height, self.view.system);
            let dimension =
                Dimension { word, number: &number, live: false, always: true, words_below: false };
            marks.extend(dimension.vertical(lettering, x, [y, floor]));
        }
        marks
    }

    /// Where the leftmost deck edge of the picture lies, px.
    pub(super) fn left_edge(&self, side: &Subject<'_>) -> f64 {
        let half = side.design.frames.deck_width.to_mm() / 2.0;
        self.plan.scale.x(if self.beside { side.deck_left().x } else { self.middle - half })
    }

    /// The note that says how many times larger than life the give is drawn, beneath the floor.
    fn factor_note(&self, lettering: &mut Lettering<'_>, scene: &Scene<'_>) -> Mark {
        use crate::drawing::lettering::text;
        use crate::drawing::mark::Anchor;
        let words = if scene.sway.is_some() && self.view.live() {
            format!("give × {}", self.frame.bent_factor)
        } else {
            String::new()
        };
        let y = crisp(self.plan.scale.y(0.0)) + 27.0;
        let middle = self.plan.scale.x(self.middle);
        let places = [0.0, -90.0, 90.0, -160.0].map(|x| Screen::new(middle + x, y));
        lettering.place(places.map(|at| text("sag-t halo", at, Anchor::Middle, &words)))
    }
}

fn subject<'a>(report: &'a Report, station: &'a Station, runs: [[f64; 2]; 2], pixel: f64) -> Subject<'a> {
    Subject { design: &report.design, pose: &station.pose, runs, pixel }
}

fn side_strokes(report: &Report, station: &Station, runs: [[f64; 2]; 2]) -> Vec<Stroke> {
    let side = subject(report, station, runs, 2.0);
    let mut strokes = side.mechanism();
    strokes.extend(side.ground());
    strokes.extend(load_shape(&side).strokes);
    strokes
}

/// The plots of the slow report that are drawn.
fn chosen(view: &View) -> Vec<SwayChart> {
    let wanted: Vec<SwayChart> = view
        .charts
        .iter()
        .filter_map(|chart| if let Chart::Sway(chart) = chart { Some(*chart) } else { None })
        .collect();
    if wanted.is_empty() { SwayChart::ALL.into() } else { wanted }
}

/// How many times larger than life the give is drawn: as large as it may be anywhere in the lift, across and at the deck's edge.
fn factor(report: &Report, sway: Option<&SwayReport>, per_mm: f64) -> u16 {
    let half = report.design.frames.deck_width.to_m() / 2.0;
    let shapes = sway.map_or(&[][..], |sway| sway.lean.as_slice());
    let give =
        shapes.iter().map(|lean| PUSH * lean.deck.abs().max(lean.roll.abs() * half)).fold(0.0, f64::max);
    let fits = |factor: &u16| f64::from(*factor) * give * 1e3 * per_mm <= GIVE;
    FACTORS.into_iter().rev().find(fits).unwrap_or(1)
}
