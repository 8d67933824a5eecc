//! What moves with the deck.
use super::dimension::{Dimension, OFF_PART, PAST_LINE};
use super::elevation::{LoadShape, Subject, load_shape};
use super::face::Measure;
use super::forces::Arrow;
use super::frame::{Area, Grip};
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Mark, joined};
use super::marked;
use super::outline::{tidy, write};
use super::plan::{Plan, height_number};
use super::pole::{tag, tag_width};
use super::reading::Reading;
use super::scale::{Screen, crisp};
use super::sheet::{Live, Sheet, with_extensions};
use super::state;
use super::view::{Chart, Layout, SwayChart, View};
use crate::mechanics::GRAVITY;
use crate::quantity::{Kind, Style, System, figures, print};
use crate::report::{Curve as Figured, Report, Station};
use glam::DVec2;

/// A load shows no overhang below this, mm.
const LEAST_OVERHANG: f64 = 0.5;
/// Radius of a centre of mass and of the deck's grip, and by how much the ring passes the wheel, px.
const CENTRE: f64 = 6.0;
pub(super) const GRIP: f64 = 4.5;
pub(super) const RING: f64 = 4.0;
/// Free paper above what is drawn, px.
pub(super) const MARGIN: f64 = 12.0;
/// Half the width of the strip along a line that lettering keeps off where it can, px.
const LINE: f64 = 1.0;
/// A deck edge this far off the level line has a tilt that can be seen, px.
const LEVEL: f64 = 0.75;

impl Sheet {
    /// The marks that move, far to near, and what can be taken hold of, with the table at a station of the same report.
    #[must_use]
    pub fn moving(&self, report: &Report, station: &Station, measure: Measure<'_>) -> (Vec<Mark>, Live) {
        let subject = self.subject(report, station);
        let load = load_shape(&subject);
        let mut lettering = Lettering::with(measure, self.plan.paper, &self.taken);
        let [low, high] = subject.crank_box().map(|corner| self.plan.scale.to_screen(corner.into()));
        lettering.keep(Area::between([low.x, high.x], [low.y, high.y]));
        let arrows = self.arrows(&subject, station);
        let weight = self.weight(report, &load);
        self.shun_lines(&mut lettering, &subject, &load);
        weight.iter().chain(&arrows).for_each(|arrow| arrow.shunned(&mut lettering));
        let level = crisp(self.plan.scale.level(station.height));
        let reading = Reading::at(report, station, self.view.system);

        let mut marks = self.plan.paint(&subject.mechanism());
        if self.view.show.load {
            marks.extend(self.plan.paint(&load.strokes));
        }
        if self.view.show.bent && self.view.live() {
            marks.extend(self.bent(&subject, station));
        }
        if self.view.show.support {
            marks.extend(self.support(station, report));
        }
        // Lettering that must stand is set first; the order of the marks is another matter.
        let live = self.view.live();
        let tags = if live { self.plan.tags(&self.view, &mut lettering, station) } else { Vec::new() };
        let curve_marks = if live { self.curve_marks(&mut lettering, report) } else { Vec::new() };
        let values = self.charts.values(&self.plan, &mut lettering, station, self.view.system);
        let table = self
            .plan
            .reading
            .map(|area| reading.marks(&mut lettering, area, self.view.charts.contains(&Chart::Sag)))
            .unwrap_or_default();
        let edge = self.plan.scale.to_screen(subject.deck_left().into()).x;
        let now = self.plan.deck_now(&self.view, &mut lettering, edge, station.height);
        let labels =
            if self.view.show.load { self.load_labels(&mut lettering, report, &load) } else { Vec::new() };
        let overhang = if self.view.show.load && self.view.show.dimensions {
            self.overhang(&mut lettering, &subject, &load)
        } else {
            Vec::new()
        };
        let marked = self.view.marked.and_then(|id| report.check(id));
        let marked =
            marked.map(|check| marked::part(&mut lettering, &self.plan, &subject, check)).unwrap_or_default();
        let states = if live {
            state::on_drawing(&mut lettering, &report.findings, &subject, &self.plan.scale)
        } else {
            Vec::new()
        };
        let bending = if self.view.show.bending && live {
            self.bending(&mut lettering, report, &subject, station)
        } else {
            Vec::new()
        };
        let forces = Arrow::marks(arrows, &mut lettering);

        marks.extend(bending);
        marks.extend(overhang);
        marks.extend(now);
        marks.extend(weight.into_iter().flat_map(Arrow::bare));
        let lettered: Vec<f64> =
            labels.iter().filter_map(|label| label.lettering(measure)).map(|area| area.y).collect();
        marks.extend(labels);
        marks.extend(forces);
        if self.view.show.load && self.view.show.dimensions && !live {
            marks.extend(self.with_load(&mut lettering, &load));
        }
        let (grips, carriage, deck) = self.grips(&subject, level);
        if live {
            marks.extend(grips);
        }
        marks.extend(tags);
        marks.extend(self.plan.height_labels(&self.view, &mut lettering, station));
        marks.extend(self.charts.names_and_dots(&self.plan, &mut lettering, station));
        marks.extend(values);
        marks.extend(curve_marks);
        marks.extend(marked);
        marks.extend(states);
        marks.extend(table);
        let loaded = if self.view.show.load { &load.corners[..] } else { &[] };
        let corners = loaded.iter().map(|corner| self.plan.scale.y(corner.y));
        let highest = corners.chain(lettered).fold(level, f64::min);
        let top = (highest.min(self.plan.scale.y(subject.crank_box()[1].y)) - MARGIN).max(0.0);
        let live =
            Live { carriage: live.then_some(carriage), deck: live.then_some(deck), level, top, reading };
        (joined(marks), live)
    }

    /// The level line from the deck, the ring at the carriage and the grip at the deck's edge.
    fn grips(&self, subject: &Subject<'_>, level: f64) -> (Vec<Mark>, Grip, Grip) {
        let scale = &self.plan.scale;
        let edge = scale.to_screen(subject.deck_edge().into());
        let tilted = (edge.y - level).abs() > LEVEL;
        let from = if tilted { scale.x(subject.deck_point().x) } else { edge.x };
        let to = match (self.view.layout, self.plan.rows.first()) {
            (Layout::Wide, Some(row)) => row.right,
            _ => self.width - 40.0,
        };
        let ring = Grip {
            centre: scale.to_screen(subject.carriage().into()),
            radius: scale.length(subject.design.running.wheel.to_mm() / 2.0) + RING,
        };
        let grip = Grip { centre: if tilted { edge } else { Screen::new(edge.x, level) }, radius: GRIP };
        let marks = vec![
            Mark::line("level", Screen::new(from, level), Screen::new(to.max(from), level)),
            Mark::circle("grip none", ring.centre, ring.radius),
            Mark::circle("grip", grip.centre, grip.radius),
        ];
        (marks, ring, grip)
    }

    /// Centre of mass and what the load weighs.
    fn load_labels(&self, lettering: &mut Lettering<'_>, report: &Report, load: &LoadShape) -> Vec<Mark> {
        let system = self.view.system;
        let at = self.plan.scale.to_screen(load.middle.into());
        let weight = report.design.load.mass.to_kg() * GRAVITY;
        let mut marks = Vec::from(centre_of_mass(lettering, at));
        let mass = load_words(report, system);
        let force =
            if self.view.live() { figures::small_force(weight, system).to_string() } else { String::new() };
        // Beside the mark of the centre, over the load, to its right.
        let corners = load.corners.map(|corner| self.plan.scale.to_screen(corner.into()));
        let top = corners.iter().map(|corner| corner.y).fold(at.y, f64::min) - at.y;
        let edge = corners.iter().map(|corner| corner.x).fold(at.x, f64::max) - at.x;
        let sides = [
            (14.0, -5.0, Anchor::Start),
            (-14.0, -5.0, Anchor::End),
            (0.0, -14.0, Anchor::Middle),
            (0.0, 30.0, Anchor::Middle),
            (0.0, top - 22.0, Anchor::Middle),
            (edge + 6.0, -5.0, Anchor::Start),
        ];
        let form = |class, (right, down, anchor): (f64, f64, Anchor), line: f64, words: &str| {
            text(class, at.by(right, down + line), anchor, words)
        };
        let forms = || {
            sides.into_iter().flat_map(|side| {
                [16.0, -14.0, 32.0]
                    .map(|line| [form("b halo", side, 0.0, &mass), form("ft halo", side, line, &force)])
            })
        };
        // Both together where that can be; the mass stands in any case.
        let pair = forms().find(|pair| pair.iter().all(|mark| lettering.is_clear(mark)));
        if let Some(pair) = pair {
            marks.extend(pair.map(|mark| lettering.set(mark)));
            return marks;
        }
        let mut named = lettering.place(forms().map(|[named, _]| named));
        if named.is_left_out() {
            named = lettering.set(form("b halo", sides[0], 0.0, &mass));
        }
        marks.push(named);
        marks.push(lettering.place(forms().map(|[_, force]| force)));
        marks
    }

    /// How far the load hangs over the deck's edges, left and right.
    fn overhang(&self, lettering: &mut Lettering<'_>, subject: &Subject<'_>, load: &LoadShape) -> Vec<Mark> {
        let scale = &self.plan.scale;
        let thick = scale.length(subject.design.frames.deck_thickness.to_mm());
        let load_of = &subject.design.load;
        let frames = &subject.design.frames;
        let (left, right) = (frames.deck_left.to_mm(), frames.deck_left.to_mm() + frames.deck_length.to_mm());
        let half = load_of.length.to_mm() / 2.0;
        let sides = [
            (left - (load_of.centre.to_mm() - half), subject.deck_left(), load.corners[0]),
            (load_of.centre.to_mm() + half - right, subject.deck_edge(), load.corners[1]),
        ];
        sides
            .into_iter()
            .flat_map(|(over, edge, corner)| {
                let (edge, corner) = (scale.to_screen(edge.into()), scale.to_screen(corner.into()));
                let y = edge.y.max(corner.y) + thick + 34.0;
                let number = figures::size(over.max(0.0) / 1e3, self.view.system).number;
                let dimension = Dimension {
                    word: "overhang",
                    number: &number,
                    live: false,
                    always: false,
                    words_below: true,
                };
                let drawn = over > LEAST_OVERHANG && self.plan.paper.bottom() > y + 8.0;
                let line = if drawn {
                    dimension.level(lettering, y, [edge.x, corner.x])
                } else {
                    dimension.nothing()
                };
                let end = y + PAST_LINE;
                with_extensions(
                    line,
                    [
                        [edge.by(0.0, thick + OFF_PART), Screen::new(edge.x, end)],
                        [corner.by(0.0, OFF_PART), Screen::new(corner.x, end)],
                    ],
                )
            })
            .collect()
    }

    /// The load's weight as an arrow, where forces and load are shown.
    fn weight(&self, report: &Report, load: &LoadShape) -> Option<Arrow> {
        let show = &self.view.show;
        let shown = show.load && show.forces && self.view.live();
        shown.then(|| self.field().weight(load.middle, report.design.load.mass.to_kg() * GRAVITY))
    }

    /// The arrows of joints and screw; none where forces are not shown.
    fn arrows(&self, subject: &Subject<'_>, station: &Station) -> Vec<Arrow> {
        if !(self.view.show.forces && self.view.live()) {
            return Vec::new();
        }
        let field = self.field();
        let mut arrows = field.joints(subject, station);
        arrows.push(field.screw(subject, station));
        arrows
    }

    /// Leads lettering off lines that it would make hard to follow: deck, load, and a screw that stands free.
    fn shun_lines(&self, lettering: &mut Lettering<'_>, subject: &Subject<'_>, load: &LoadShape) {
        let scale = &self.plan.scale;
        let at = |place: DVec2| scale.to_screen(place.into());
        let thick = scale.length(subject.design.frames.deck_thickness.to_mm());
        let (left, right) = (at(subject.deck_left()), at(subject.deck_edge()));
        for down in [0.0, thick] {
            lettering.shun(left.by(0.0, down), right.by(0.0, down), LINE);
        }
        if self.view.show.load {
            for (place, corner) in load.corners.iter().enumerate() {
                lettering.shun(at(*corner), at(load.corners[(place + 1) % load.corners.len()]), LINE);
            }
        }
        if let Some([from, to]) = subject.free_screw() {
            let half = scale.length(subject.design.drive.major.to_mm() / 2.0);
            lettering.shun(at(from), at(to), half + LINE);
        }
    }

    /// State marks where they stand on curves.
    fn curve_marks(&self, lettering: &mut Lettering<'_>, report: &Report) -> Vec<Mark> {
        let mut marks = Vec::new();
        for (number, finding) in (1..).zip(&report.findings) {
            let (Some(height), Some(curve)) = (finding.height, finding.curve) else { continue };
            let Some(place) = self.plan.areas.iter().position(|area| shows(area.chart, curve)) else {
                continue;
            };
            let Some(placed) = self.charts.placed(&self.plan, place) else { continue };
            let Some(main) = placed.plot.series.first() else { continue };
            let value = main.value(&report.at(height));
            let at = placed.area.place(value, height);
            if at.x.is_finite() && at.y.is_finite() {
                marks.extend(state::on_curve(lettering, finding.grade, at, number));
            }
        }
        marks
    }

    /// The base between the casters, and where all weight comes down on the floor.
    fn support(&self, station: &Station, report: &Report) -> Vec<Mark> {
        let scale = &self.plan.scale;
        let running = &report.design.running;
        let [left, right] = [running.caster_left.to_mm(), running.caster_right.to_mm()];
        let [on_left, on_right] = station.casters();
        let y = crisp(scale.y(0.0)) + 11.0;
        let mut bar = String::new();
        write(
            &mut bar,
            format_args!("M{} {}v6m0 -3H{}m0 -3v6", tidy(scale.x(left)), tidy(y - 3.0), tidy(scale.x(right))),
        );
        let place = (on_left * left + on_right * right) / (on_left + on_right);
        let mut point = String::new();
        if place.is_finite() {
            let x = tidy(scale.x(place).clamp(self.plan.drawing.x + 6.0, self.plan.drawing.right() - 6.0));
            write(&mut point, format_args!("M{x} {}l-5 9h10Z", tidy(y + 1.0)));
        }
        vec![Mark::path("w none", bar), Mark::path("fh", point)]
    }
}

impl Plan {
    /// Lines of lowest and highest deck through the plots.
    pub(super) fn reaches(&self, report: &Report) -> Vec<Mark> {
        self.rows
            .iter()
            .flat_map(|row| {
                [report.lowest(), report.highest()].map(|height| {
                    let y = crisp(row.pole.scale.level(height));
                    Mark::line("reach", Screen::new(row.pole.right() + 6.0, y), Screen::new(row.right, y))
                })
            })
            .collect()
    }

    /// Level lines beside the poles and the tags on them.
    pub(super) fn tags(&self, view: &View, lettering: &mut Lettering<'_>, station: &Station) -> Vec<Mark> {
        let words = height_number(station.height, view.system);
        let mut marks = Vec::new();
        if view.layout == Layout::Narrow {
            let tip = Screen::new(
                self.paper.width - tag_width(lettering, &words),
                crisp(self.scale.level(station.height)),
            );
            marks.extend(tag(lettering, tip, &words));
        }
        for row in &self.rows {
            let y = crisp(row.pole.scale.level(station.height));
            if view.layout == Layout::Narrow {
                marks.push(Mark::line(
                    "level",
                    Screen::new(row.pole.right() + 5.0, y),
                    Screen::new(row.right, y),
                ));
            }
            marks.extend(tag(lettering, Screen::new(row.pole.right() + 0.5, y), &words));
        }
        marks
    }

    /// The labels of the poles, with their unit.
    pub(super) fn height_labels(
        &self,
        view: &View,
        lettering: &mut Lettering<'_>,
        station: &Station,
    ) -> Vec<Mark> {
        let mut marks = Vec::new();
        for row in &self.rows {
            marks.extend(row.pole.labels(lettering, row.pole.scale.level(station.height)));
            if !row.pole.names_unit {
                let unit = if view.system == System::Metric { "mm" } else { "in" };
                let at = Screen::new(row.pole.x - 2.0, crisp(row.pole.scale.y(row.pole.ends[1])) - 12.0);
                marks.push(lettering.place([text("q", at, Anchor::Start, unit)]));
            }
        }
        marks
    }
}

/// A quartered circle where a weight has its middle; lettering keeps off it.
pub(super) fn centre_of_mass(lettering: &mut Lettering<'_>, at: Screen) -> [Mark; 2] {
    let (x, y, r) = (tidy(at.x), tidy(at.y), CENTRE);
    let mut quarters = String::new();
    write(
        &mut quarters,
        format_args!("M{x} {y}v-{r}a{r} {r} 0 0 1 {r} {r}ZM{x} {y}v{r}a{r} {r} 0 0 1 -{r} -{r}Z"),
    );
    lettering.keep(Area { x: at.x - CENTRE, y: at.y - CENTRE, width: 2.0 * CENTRE, height: 2.0 * CENTRE });
    [Mark::circle("cgb", at, CENTRE), Mark::path("cgf", quarters)]
}

/// The load's weight as it was given.
pub(super) fn load_words(report: &Report, system: System) -> String {
    print(report.design.load.mass.steps(), Kind::Mass, system, Style::Short).text()
}

/// Whether a chart shows the curve a finding belongs to.
pub(super) fn shows(chart: Chart, curve: Figured) -> bool {
    matches!(
        (chart, curve),
        (Chart::ScrewForce, Figured::ScrewForce)
            | (Chart::Sag, Figured::Sag)
            | (Chart::Sway(SwayChart::Give), Figured::Give)
            | (Chart::Sway(SwayChart::Multiple), Figured::Multiple)
    )
}
