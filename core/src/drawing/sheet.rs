//! The whole picture: what stands still, the curves, and what moves with the deck.
use super::chart::Plot;
use super::charts::Charts;
use super::dimension::{Dimension, OFF_PART, PAST_LINE, extension};
use super::elevation::{Subject, load_shape};
use super::face::Measure;
use super::forces::{Field, ForceScale};
use super::frame::{Area, Frame, Grip};
use super::lettering::Lettering;
use super::mark::{Curve, Mark};
use super::outline::{Bounds, tidy, write};
use super::overlay::Overlay;
use super::plan::{Needs, Plan, height_number, reach};
use super::reading::Reading;
use super::scale::{Screen, crisp};
use super::title;
use super::view::{Chart, Layout, View};
use crate::quantity::figures;
use crate::report::{Report, Station};

/// A picture of a table at one height.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// What changes with design, size and the reader's choices only, far to near. It lies beneath the rest.
    pub still: Vec<Mark>,
    /// The curves of the plots.
    pub curves: Vec<Curve>,
    /// What moves with the deck, far to near. It lies on top.
    pub moving: Vec<Mark>,
    /// Where things lie.
    pub frame: Frame,
    /// What can be taken hold of, and the values at this height.
    pub live: Live,
}

/// What goes with the moving marks of one height.
#[derive(Clone, Debug, PartialEq)]
pub struct Live {
    /// The ring at the base wheel axle; none on paper.
    pub carriage: Option<Grip>,
    /// The grip at the deck; none on paper.
    pub deck: Option<Grip>,
    /// Where the level line lies in the drawing, px.
    pub level: f64,
    /// Above this nothing of the table is drawn at this height, px: a page of paper may cut the picture there.
    pub top: f64,
    /// The values at this height.
    pub reading: Reading,
}

/// The picture of a report with the deck at `height`, m (brought back into the lift).
///
/// The same as [`Sheet::new`] and [`Sheet::moving`] one after the other, for pictures that are made once.
#[must_use]
pub fn compose(report: &Report, height: f64, view: &View, measure: Measure<'_>) -> Picture {
    compose_over(report, None, height, view, measure)
}

/// The same over another design: [`Sheet::over`], its [`Sheet::outline`] and [`Sheet::moving`] one after the other.
#[must_use]
pub fn compose_over(
    report: &Report,
    other: Option<&Report>,
    height: f64,
    view: &View,
    measure: Measure<'_>,
) -> Picture {
    let sheet = Sheet::over(report, other, view, measure);
    let station = report.at(height);
    let mut moving = other.map_or_else(Vec::new, |other| sheet.outline(other, station.height, measure));
    let (marks, live) = sheet.moving(report, &station, measure);
    moving.extend(marks);
    Picture {
        width: sheet.width,
        height: sheet.height,
        still: sheet.still,
        curves: sheet.curves,
        moving,
        frame: sheet.frame,
        live,
    }
}

/// A picture without its moving part: made anew when design, size, units or the reader's choices change, asked for the
/// moving part whenever the deck moves.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// What stands still, far to near.
    pub still: Vec<Mark>,
    /// The curves of the plots.
    pub curves: Vec<Curve>,
    /// Where things lie.
    pub frame: Frame,
    pub(super) view: View,
    pub(super) plan: Plan,
    pub(super) charts: Charts,
    pub(super) taken: Vec<Area>,
    /// Where the line stands that names the other design, and how wide it may be, px; none without one.
    pub(super) legend: Option<(Screen, f64)>,
    pub(super) forces: ForceScale,
    pub(super) overlay: Overlay,
    pub(super) runs: [[f64; 2]; 2],
}

/// A line for the legend over a narrow picture, px.
const LEGEND: u32 = 20;
/// Hatching below the floor: distance of two strokes and their size, px.
const HATCH: f64 = 10.0;
const HATCH_SIZE: f64 = 6.0;
/// The arrow that shows the scale of forces lies this far below the floor, px.
const UNIT_BELOW: f64 = 23.0;

impl Sheet {
    /// Lays out the picture of a report and draws what stands still.
    #[must_use]
    pub fn new(report: &Report, view: &View, measure: Measure<'_>) -> Self {
        Self::over(report, None, view, measure)
    }

    /// The same over another design, whose main curves stand dashed in the plots; its outline is [`Self::outline`]. All scales hold both.
    #[must_use]
    pub fn over(report: &Report, other: Option<&Report>, view: &View, measure: Measure<'_>) -> Self {
        let charts = if view.charts.is_empty() { &[Chart::ScrewForce][..] } else { &view.charts };
        let plot = |chart: &Chart| {
            let plot = Plot::of(*chart, report, view.system);
            other.map_or_else(|| plot.clone(), |other| plot.clone().with(other))
        };
        let plots: Vec<Plot> = charts.iter().map(plot).collect();
        let runs = runs(report);
        let own = bounds(report, true);
        let bounds = other.map_or(own, |other| own.with(bounds(other, false)));
        // A narrow picture has no free corner: the legend gets a line of its own.
        let line = if other.is_some() && view.layout == Layout::Narrow { LEGEND } else { 0 };
        let headed = View { head: view.head + line, ..view.clone() };
        let plan = Needs { report, view: &headed, measure, plots: &plots, bounds }.plan();
        let overlay = Overlay::new(report, plan.scale.per_mm);
        let mut sheet = Self {
            width: plan.paper.width,
            height: plan.paper.height,
            still: Vec::new(),
            curves: Vec::new(),
            frame: plan.frame(report, overlay.factor),
            view: view.clone(),
            overlay,
            forces: ForceScale::new(report, (bounds.most.x - bounds.least.x) * plan.scale.per_mm),
            plan,
            charts: Charts::new(plots),
            taken: Vec::new(),
            legend: None,
            runs,
        };
        sheet.draw(report, other, measure);
        sheet
    }

    pub(super) fn subject<'a>(&self, report: &'a Report, station: &'a Station) -> Subject<'a> {
        let pixel = 1.0 / self.plan.scale.per_mm;
        Subject { design: &report.design, pose: &station.pose, runs: self.runs, pixel }
    }

    fn draw(&mut self, report: &Report, other: Option<&Report>, measure: Measure<'_>) {
        let mut lettering = Lettering::new(measure, self.plan.paper);
        if other.is_some() {
            self.legend = Some(self.legend_place(&mut lettering));
        }
        let mut marks = self.plan.reaches(report);
        marks.extend(self.floor());
        let (low, high) = (report.at(report.lowest()), report.at(report.highest()));
        let ends = [self.subject(report, &low), self.subject(report, &high)];
        marks.extend(self.plan.paint(&ends[0].ground()));
        if self.view.live() {
            for subject in &ends {
                marks.extend(self.plan.paint(&subject.phantom()));
            }
        }
        for row in &self.plan.rows {
            marks.extend(row.pole.rule());
            lettering.keep(row.pole.area());
        }
        let (drawn, curves) = self.charts.draw(&self.plan, &mut lettering);
        marks.extend(drawn);
        self.curves = curves;
        let names = self.charts.named();
        if let Some(area) = self.plan.title {
            marks.extend(title::title(
                &mut lettering,
                area,
                &title::cells(report, &self.view, "Side elevation"),
            ));
        }
        for area in self.solids(&ends[0]) {
            lettering.keep(area);
        }
        if self.view.show.dimensions {
            let dimensions = if self.view.live() {
                self.lift_dimensions(&mut lettering, report, &ends)
            } else if self.view.on_paper.frame {
                self.frame_dimensions(&mut lettering, report)
            } else {
                Vec::new()
            };
            marks.extend(dimensions);
        }
        if self.view.show.forces && self.view.live() {
            marks.extend(self.force_unit(&mut lettering));
        }
        if self.view.show.bent && self.view.live() {
            marks.push(self.bent_note(&mut lettering));
        }
        self.still = marks;
        self.taken = lettering.into_taken();
        self.taken.retain(|area| !names.contains(area));
    }

    fn floor(&self) -> Vec<Mark> {
        let scale = &self.plan.scale;
        let (left, right) = match self.view.layout {
            Layout::Wide => (
                self.plan.columns[0] - 3.0,
                self.plan.rows.first().map_or(self.plan.drawing.right(), |row| row.pole.right() + 3.0),
            ),
            Layout::Narrow => (8.0, self.width - 8.0),
            Layout::Print => {
                (self.plan.columns[0] - 3.0, (scale.x(self.plan.bounds.most.x) + 12.0).min(self.width - 2.0))
            }
        };
        hatched(scale.y(0.0), [left, right])
    }

    /// Parts that stand still and that lettering should keep off.
    fn solids(&self, lowest: &Subject<'_>) -> Vec<Area> {
        let scale = &self.plan.scale;
        let running = &lowest.design.running;
        let area = |x: [f64; 2], y: [f64; 2]| {
            Area::between([scale.x(x[0]), scale.x(x[1])], [scale.y(y[0]), scale.y(y[1])])
        };
        let top = running.caster_height.to_mm();
        let half = running.caster_wheel.to_mm() * 0.6;
        let mut solids = Vec::new();
        for place in [running.caster_left, running.caster_right] {
            solids.push(area([place.to_mm() - half, place.to_mm() + half], [0.0, top]));
        }
        solids
    }

    fn force_unit(&self, lettering: &mut Lettering<'_>) -> Vec<Mark> {
        let floor = self.plan.scale.y(0.0);
        self.field().unit(lettering, Screen::new(self.plan.columns[2] - 3.0, floor + UNIT_BELOW))
    }

    /// Where and how large forces are drawn.
    pub(super) fn field(&self) -> Field<'_> {
        let right = self.plan.rows.first().map_or(self.width, |row| row.pole.x);
        let right = if self.view.layout == Layout::Wide { right } else { self.width };
        Field {
            scale: &self.plan.scale,
            forces: self.forces,
            system: self.view.system,
            tight: self.view.layout == Layout::Narrow,
            room: [self.plan.columns[0] + 6.0, right - 6.0],
        }
    }

    /// Lowest and highest deck, and the travel of the base wheel.
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
        for (word, height, subject, column) in heights {
            let x = self.plan.columns[column];
            let y = scale.level(height);
            let edge = scale.to_screen(subject.deck_left().into()).x;
            marks.push(extension(Screen::new(edge - OFF_PART, y), Screen::new(x - PAST_LINE, y)));
            let number = height_number(height, self.view.system);
            let dimension =
                Dimension { word, number: &number, live: false, always: true, words_below: false };
            marks.extend(dimension.vertical(lettering, x, [y, floor]));
        }
        let [near, far] = self.runs[0];
        let number = figures::size((far - near).abs() / 1e3, self.view.system).number;
        let plate = scale.y(report.design.running.caster_height.to_mm());
        // Beneath the base where the casters leave room, beneath the floor otherwise.
        let (from, y) =
            if floor - plate >= 27.0 { (plate, floor - 11.0) } else { (floor + 8.0, floor + 26.0) };
        let x = [near, far].map(|mm| scale.x(mm));
        let dimension =
            Dimension { word: "travel", number: &number, live: false, always: false, words_below: false };
        let line = dimension.level(lettering, y, x);
        marks.extend(with_extensions(
            line,
            x.map(|x| [Screen::new(x, from + OFF_PART), Screen::new(x, y + PAST_LINE)]),
        ));
        marks
    }
}

/// Everything the table of a report ever reaches, mm; with its load or without.
pub(super) fn bounds(report: &Report, loaded: bool) -> Bounds {
    let runs = runs(report);
    reach(report, |height| {
        let station = report.at(height);
        let subject = Subject { design: &report.design, pose: &station.pose, runs, pixel: 2.0 };
        let mut strokes = subject.mechanism();
        strokes.extend(subject.ground());
        if loaded {
            strokes.extend(load_shape(&subject).strokes);
        }
        strokes
    })
}

/// The floor at a level, px, hatched beneath from left to right.
pub(super) fn hatched(level: f64, [left, right]: [f64; 2]) -> Vec<Mark> {
    let y = crisp(level);
    let mut hatch = String::new();
    let mut x = left + HATCH_SIZE;
    while x <= right && HATCH > 0.0 {
        write(&mut hatch, format_args!("M{} {}l-{HATCH_SIZE} {HATCH_SIZE}", tidy(x), tidy(y + 1.0)));
        x += HATCH;
    }
    vec![Mark::line("floor", Screen::new(left, y), Screen::new(right, y)), Mark::path("n faint", hatch)]
}

/// A dimension behind its two extension lines; these go where the dimension found no room.
pub(super) fn with_extensions(dimension: Vec<Mark>, lines: [[Screen; 2]; 2]) -> Vec<Mark> {
    let drawn = dimension.first().is_some_and(|line| !line.is_left_out());
    let mut marks: Vec<Mark> = lines
        .into_iter()
        .map(|[from, to]| if drawn { extension(from, to) } else { Mark::path("ext", String::new()) })
        .collect();
    marks.extend(dimension);
    marks
}

/// The runs of both wheel axles over the lift, mm from the fixed pivots of their frames.
pub(super) fn runs(report: &Report) -> [[f64; 2]; 2] {
    let run = |place: &dyn Fn(&Station) -> f64| {
        report.stations.iter().map(place).fold([f64::INFINITY, f64::NEG_INFINITY], |[least, most], metres| {
            [least.min(metres * 1e3), most.max(metres * 1e3)]
        })
    };
    [run(&|station| station.pose.carriage_x), run(&|station| station.pose.top_axle.x)]
}
