//! What moves with the deck and with a push at it.
use super::load::load;
use super::reading::reading;
use super::sheet::{Scene, SwaySheet};
use super::{EndSubject, Leaning, frames};
use crate::drawing::elevation::load_shape;
use crate::drawing::face::Measure;
use crate::drawing::frame::{Area, Grip};
use crate::drawing::lettering::Lettering;
use crate::drawing::mark::Mark;
use crate::drawing::moving::{GRIP, MARGIN, RING, shows};
use crate::drawing::outline::Bounds;
use crate::drawing::reading::Reading;
use crate::drawing::scale::{Screen, crisp};
use crate::drawing::sheet::{Live, Picture};
use crate::drawing::state;
use crate::drawing::view::{Layout, View};
use crate::report::{Lean, PUSH, Station};

/// The hardest push that is drawn, N.
pub const MOST_PUSH: f64 = 2.0 * PUSH;
/// The centre line runs on beyond the table by so much, px.
const PAST_END: f64 = 12.0;

/// What goes with the moving marks of one height and one push.
#[derive(Clone, Debug, PartialEq)]
pub struct SwayLive {
    /// The ring at the base wheel axle of the side elevation; none where that is not drawn, or on paper.
    pub carriage: Option<Grip>,
    /// The grip at the deck's edge that moves it up and down; none on paper.
    pub deck: Option<Grip>,
    /// The grip at the deck's edge that pushes it sideways; none on paper and where the slow report is not there.
    pub push: Option<Grip>,
    /// How far that grip moves on paper for a push of one newton, px.
    pub per_newton: f64,
    /// The push that is drawn, N: what was asked for, at most [`MOST_PUSH`] either way; positive to the right of the drawing.
    pub pushed: f64,
    /// Where the level line lies in the drawing, px.
    pub level: f64,
    /// Above this nothing of the table is drawn, px.
    pub top: f64,
    /// The values at this height.
    pub reading: Reading,
}

/// The picture of a scene with the deck at `height`, m (brought back into the lift), and a sideways push, N.
///
/// The same as [`SwaySheet::new`] and [`SwaySheet::moving`] one after the other, for pictures that are made once.
#[must_use]
pub fn compose(scene: &Scene<'_>, height: f64, push: f64, view: &View, measure: Measure<'_>) -> Picture {
    let sheet = SwaySheet::new(scene, view, measure);
    let (moving, live) = sheet.moving(scene, &scene.report.at(height), push, measure);
    Picture {
        width: sheet.width,
        height: sheet.height,
        still: sheet.still,
        curves: sheet.curves,
        moving,
        frame: sheet.frame,
        live: Live {
            carriage: live.carriage,
            deck: live.deck,
            level: live.level,
            top: live.top,
            reading: live.reading,
        },
    }
}

impl SwaySheet {
    /// The marks that move, far to near, with the table at a station of the same report and a sideways push at the deck, N,
    /// positive to the right of the drawing. Their number and order depend on neither.
    #[must_use]
    pub fn moving(
        &self,
        scene: &Scene<'_>,
        station: &Station,
        push: f64,
        measure: Measure<'_>,
    ) -> (Vec<Mark>, SwayLive) {
        let side = self.side(scene.report, station);
        let straight = self.end(side, None);
        let lean = scene.sway.filter(|_| self.view.live()).and_then(|sway| sway.lean(station.height));
        let asked = if push.is_nan() { 0.0 } else { push.clamp(-MOST_PUSH, MOST_PUSH) };
        let pushed = if lean.is_some() { asked } else { 0.0 };
        let leaning =
            lean.as_ref().filter(|_| pushed.abs() > 0.0).map(|lean| self.leaning(&straight, lean, pushed));
        let end = self.end(side, leaning);
        let scale = &self.plan.scale;
        let level = crisp(scale.level(station.height));
        let mut lettering = Lettering::with(measure, self.plan.paper, &self.taken);
        let stands = load(&end);
        let beside = load_shape(&side);
        let values = reading(scene.sway, station, self.view.system);
        let live = self.view.live();

        let mut marks = Vec::new();
        if self.beside {
            marks.extend(self.plan.paint(&side.mechanism()));
            if self.view.show.load {
                marks.extend(self.plan.paint(&beside.strokes));
            }
        }
        let phantom = self.plan.paint(&straight.phantom());
        marks.extend(phantom.into_iter().map(|mark| if leaning.is_some() { mark } else { left_out(mark) }));
        marks.extend(self.plan.paint(&end.mechanism()));
        if self.view.show.load {
            marks.extend(self.plan.paint(&stands.strokes));
        }
        if live {
            marks.extend(self.slack(scene, &end, station));
        }
        marks.extend(self.plan.paint(&[straight.centre_line(PAST_END)]));

        // Lettering that must stand is set first; the order of the marks is another matter.
        self.keep_crank(&mut lettering, &end);
        let tags = if live { self.plan.tags(&self.view, &mut lettering, station) } else { Vec::new() };
        let curve_marks = if live { self.curve_marks(&mut lettering, scene) } else { Vec::new() };
        let figures = self.charts.values(&self.plan, &mut lettering, station, self.view.system);
        let table =
            self.plan.reading.map(|area| values.marks(&mut lettering, area, false)).unwrap_or_default();
        let now = self.plan.deck_now(&self.view, &mut lettering, self.left_edge(&side), station.height);
        let labels = if self.view.show.load {
            self.load_labels(&mut lettering, scene.report, stands.middle)
        } else {
            Vec::new()
        };
        let given = if live { self.given(&mut lettering, scene, &end, station, pushed) } else { Vec::new() };
        let states = if live && self.beside {
            state::on_drawing(&mut lettering, scene.findings, &side, scale)
        } else {
            Vec::new()
        };

        marks.extend(now);
        marks.extend(labels);
        marks.extend(given);
        let grips = self.grips(&end, level);
        if live {
            marks.extend(self.grip_marks(&end, &grips, level));
        }
        marks.extend(tags);
        marks.extend(self.plan.height_labels(&self.view, &mut lettering, station));
        marks.extend(self.charts.names_and_dots(&self.plan, &mut lettering, station));
        marks.extend(figures);
        marks.extend(curve_marks);
        marks.extend(states);
        marks.extend(table);
        let highest = if self.view.show.load { scale.y(stands.top) } else { level };
        let live = SwayLive {
            carriage: grips.carriage.filter(|_| live),
            deck: Some(grips.deck).filter(|_| live),
            push: Some(grips.push).filter(|_| live && lean.is_some()),
            per_newton: lean.as_ref().map_or(0.0, |lean| scale.length(self.drawn(lean.deck, 1.0))),
            pushed,
            level,
            top: (highest.min(level) - MARGIN).max(0.0),
            reading: values,
        };
        (marks, live)
    }

    /// A displacement by one newton, m, under a push, N, as it is drawn, mm.
    pub(super) fn drawn(&self, metres: f64, push: f64) -> f64 {
        metres * push * f64::from(self.frame.bent_factor) * 1e3
    }

    /// The shape under a push, positive to the right of the drawing.
    fn leaning<'a>(&self, straight: &EndSubject<'_>, lean: &'a Lean, push: f64) -> Leaning<'a> {
        Leaning { lean, scale: straight.turned() * self.drawn(1.0, push) }
    }

    /// Lettering keeps off the crank.
    fn keep_crank(&self, lettering: &mut Lettering<'_>, end: &EndSubject<'_>) {
        let scale = &self.plan.scale;
        let crank = Bounds::around(&super::drive::crank(end));
        let beside = self.beside.then(|| {
            let [least, most] = end.side.crank_box();
            Bounds { least, most }
        });
        for bounds in crank.into_iter().chain(beside) {
            lettering.keep(Area::between(
                [scale.x(bounds.least.x), scale.x(bounds.most.x)],
                [scale.y(bounds.least.y), scale.y(bounds.most.y)],
            ));
        }
    }

    fn grips(&self, end: &EndSubject<'_>, level: f64) -> Grips {
        let scale = &self.plan.scale;
        let [left, right] = self.deck_edges(end);
        let carriage = self.beside.then(|| Grip {
            centre: scale.to_screen(end.side.carriage().into()),
            radius: scale.length(end.side.design.running.wheel.to_mm() / 2.0) + RING,
        });
        let deck = Grip { centre: Screen::new(right.x, level), radius: GRIP };
        Grips { carriage, deck, push: Grip { centre: left, radius: GRIP } }
    }

    /// The deck's edges on the left and on the right of the drawing, in the middle of its thickness.
    pub(super) fn deck_edges(&self, end: &EndSubject<'_>) -> [Screen; 2] {
        let panel = Bounds::around(&[frames::panel(end, "ph")]);
        let scale = &self.plan.scale;
        panel.map_or_else(Default::default, |panel| {
            let y = f64::midpoint(panel.least.y, panel.most.y);
            [panel.least.x, panel.most.x].map(|x| Screen::new(scale.x(x), scale.y(y)))
        })
    }

    /// The level line from the deck, and the grips on it.
    fn grip_marks(&self, end: &EndSubject<'_>, grips: &Grips, level: f64) -> Vec<Mark> {
        let edge = if self.beside {
            self.plan.scale.to_screen(end.side.deck_edge().into()).x
        } else {
            grips.deck.centre.x
        };
        let to = match (self.view.layout, self.plan.rows.first()) {
            (Layout::Wide, Some(row)) => row.right,
            _ => self.width - 40.0,
        };
        let mut marks = vec![Mark::line("level", Screen::new(edge, level), Screen::new(to.max(edge), level))];
        marks.extend(grips.carriage.map(|ring| Mark::circle("grip none", ring.centre, ring.radius)));
        marks.push(Mark::circle("grip", grips.deck.centre, grips.deck.radius));
        let push = crate::drawing::plot::dot(grips.push.centre, grips.push.radius);
        let known = self.charts.have_points();
        marks.push(Mark::path("grip", if known { push } else { String::new() }));
        marks
    }

    /// State marks where they stand on curves.
    fn curve_marks(&self, lettering: &mut Lettering<'_>, scene: &Scene<'_>) -> Vec<Mark> {
        let mut marks = Vec::new();
        for (number, finding) in (1..).zip(scene.findings) {
            let (Some(height), Some(curve)) = (finding.height, finding.curve) else { continue };
            let Some(place) = self.plan.areas.iter().position(|area| shows(area.chart, curve)) else {
                continue;
            };
            let Some(placed) = self.charts.placed(&self.plan, place) else { continue };
            let Some(main) = placed.plot.series.first() else { continue };
            let at = placed.area.place(main.drawn(height), height);
            if at.x.is_finite() && at.y.is_finite() {
                marks.extend(state::on_curve(lettering, finding.grade, at, number));
            }
        }
        marks
    }
}

/// Everything that can be taken hold of.
struct Grips {
    carriage: Option<Grip>,
    deck: Grip,
    push: Grip,
}

/// The same mark with nothing drawn of it.
fn left_out(mark: Mark) -> Mark {
    Mark::path(mark.class, String::new())
}
