//! Axes, limits and curves of the plots: everything about them that does not move.
use super::chart::{Plot, Series};
use super::frame::{Area, PlotArea};
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Curve, Hue, Ink, Mark};
use super::outline::{tidy, write};
use super::plan::HEADING;
use super::scale::{Screen, crisp};
use super::ticks::Ticks;

/// Length of a tick below the base line and from there to the base line of its figure, px.
const TICK: f64 = 5.0;
const FIGURE: f64 = 17.0;
/// How far the zero line goes on above the highest deck, px.
const ABOVE: f64 = 8.0;
/// A limit's line stands this far above the point where the curve passes it, px.
const OVER_CURVE: f64 = 30.0;
/// Where on a curve its name may hang, as parts of the lift, for those written to the right and to the left of it.
const TO_RIGHT: [f64; 9] = [0.55, 0.65, 0.45, 0.75, 0.35, 0.85, 0.25, 0.92, 0.12];
const TO_LEFT: [f64; 9] = [0.16, 0.24, 0.32, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];
/// A leader runs this far aside and up, px.
const LEADER: (f64, f64) = (22.0, 8.0);

/// The band of a curve beyond its limit.
const BEYOND: Ink = Ink { class: "over-run", hue: Hue::Force, width: 9.0, dash: &[], opacity: 0.25 };

/// A plot in its place.
pub(super) struct Placed<'a> {
    pub(super) plot: &'a Plot,
    pub(super) area: &'a PlotArea,
    pub(super) ticks: &'a Ticks,
}

/// The name of a curve with its leader; the three parts go together.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Name {
    pub(super) parts: [Mark; 3],
    /// Box of the words; none where the name found no place.
    pub(super) area: Option<Area>,
}

impl Placed<'_> {
    /// Lines of the axes and the limit.
    pub(super) fn axes(&self) -> Vec<Mark> {
        let area = self.area.area;
        let base = crisp(area.bottom());
        let zero = crisp(self.area.zero);
        let mut ticks = String::new();
        for value in self.ticks.values() {
            write(&mut ticks, format_args!("M{} {}v{TICK}", tidy(crisp(self.tick_x(value))), tidy(base)));
        }
        vec![
            Mark::line("axis", Screen::new(zero, base), Screen::new(zero, area.y - ABOVE)),
            Mark::line("axis", Screen::new(crisp(area.x), base), Screen::new(area.right(), base)),
            Mark::path("tick", ticks),
            Mark::path("lim", self.limit_line().map_or_else(String::new, |[from, to]| {
                format!("M{} {}V{}", tidy(crisp(from.x)), tidy(from.y), tidy(to.y))
            })),
        ]
    }

    fn tick_x(&self, value: f64) -> f64 {
        self.area.zero + value / self.plot.per_si * self.area.per_value
    }

    /// Heading, figures of the axis and the limit's name.
    pub(super) fn words(&self, lettering: &mut Lettering<'_>) -> Vec<Mark> {
        let area = self.area.area;
        let head = area.y - HEADING;
        let room = area.width + 16.0;
        let mut marks = Vec::new();
        let title = lettering.shortened("th", self.plot.title, room);
        marks.push(lettering.set(text("th", Screen::new(area.x, head + 16.0), Anchor::Start, &title)));
        let note = lettering.shortened("q", &self.plot.note, room);
        marks.push(lettering.set(text("q", Screen::new(area.x, head + 31.0), Anchor::Start, &note)));
        for value in self.ticks.values() {
            let at = Screen::new(self.tick_x(value), area.bottom() + FIGURE);
            marks.push(lettering.place([text("s", at, Anchor::Middle, &self.ticks.text(value))]));
        }
        marks.push(self.limit_name(lettering));
        marks
    }

    /// The limit's line from the base line up to above the curve, where it lies within the axis.
    fn limit_line(&self) -> Option<[Screen; 2]> {
        let limit = self.plot.limit.as_ref()?;
        let area = self.area.area;
        let x = self.area.place(limit.value, 0.0).x;
        if !(area.x + 1.0..=area.right() + 0.5).contains(&x) {
            return None;
        }
        let passed = self.passes().map_or(area.bottom() - OVER_CURVE, |height| self.area.scale.level(height));
        Some([Screen::new(x, area.bottom()), Screen::new(x, (passed - OVER_CURVE).max(area.y))])
    }

    /// The greatest height, m, at which the main curve lies beyond the limit.
    fn passes(&self) -> Option<f64> {
        let limit = self.plot.limit.as_ref()?.value;
        self.plot.series.first()?.points.iter().rev().find(|point| point.0 > limit).map(|point| point.1)
    }

    fn limit_name(&self, lettering: &mut Lettering<'_>) -> Mark {
        let name = self.plot.limit.as_ref().map_or("", |limit| &limit.name);
        let Some([_, top]) = self.limit_line() else {
            return text("halo s", Screen::default(), Anchor::Start, "");
        };
        let forms = [(4.0, 9.0, Anchor::Start), (0.0, -5.0, Anchor::Middle), (-4.0, 9.0, Anchor::End), (0.0, -18.0, Anchor::End)]
            .map(|(right, down, anchor)| text("halo s", top.by(right, down), anchor, name));
        let own = self.area.area;
        let inside = |form: &Mark| {
            lettering.area(form).is_some_and(|area| own.x < area.x && area.right() < own.right() + 14.0)
        };
        let clear: Vec<Mark> =
            forms.iter().filter(|form| inside(form) && self.is_clear(lettering, form)).cloned().collect();
        let inside: Vec<Mark> = forms.iter().filter(|form| inside(form)).cloned().collect();
        lettering.place(clear.into_iter().chain(inside))
    }

    /// Whether a text lies on no curve of the plot and not across its zero line.
    fn is_clear(&self, lettering: &Lettering<'_>, form: &Mark) -> bool {
        lettering.area(form).is_none_or(|area| {
            let area = area.grown(2.0);
            let beside = self.area.zero <= area.x || area.right() <= self.area.zero;
            beside && !self.plot.series.iter().any(|series| {
                series.points.windows(2).any(|pair| {
                    let [one, other] = [pair[0], pair[1]].map(|(value, height)| self.area.place(value, height));
                    area.meets(&Area::between([one.x, other.x], [one.y, other.y]).grown(0.1))
                })
            })
        })
    }

    /// The names of the curves, each hung where it meets neither a curve nor other lettering.
    pub(super) fn names(&self, lettering: &mut Lettering<'_>) -> Vec<Name> {
        let mut taken: Vec<f64> = Vec::new();
        self.plot
            .series
            .iter()
            .enumerate()
            .map(|(rank, series)| {
                let leftmost = rank > 0 && self.is_leftmost(series);
                let sides = if leftmost { [true, false] } else { [false, true] };
                let forms = sides.into_iter().flat_map(|left| {
                    (if left { TO_LEFT } else { TO_RIGHT }).map(|part| (left, part))
                });
                for (left, part) in forms {
                    if taken.iter().any(|other| (other - part).abs() < 0.04) {
                        continue;
                    }
                    let Some(point) = self.on_curve(series, part) else { continue };
                    let (aside, anchor) = if left { (-1.0, Anchor::End) } else { (1.0, Anchor::Start) };
                    let end = point.by(aside * LEADER.0, -LEADER.1);
                    let form = text(series.lettering, end.by(aside * 3.0, 4.0), anchor, &series.name);
                    let Some(area) = lettering.area(&form) else { continue };
                    if self.is_clear(lettering, &form) && lettering.is_free(&area) && area.right() < self.area.area.right() + 14.0 {
                        taken.push(part);
                        lettering.keep(area);
                        return Name { parts: hung(point, end, form), area: Some(area) };
                    }
                }
                let nowhere = text(series.lettering, Screen::default(), Anchor::Start, "");
                Name {
                    parts: [Mark::path("ld", String::new()), Mark::path("pb", String::new()), nowhere],
                    area: None,
                }
            })
            .collect()
    }

    /// Whether no curve lies to the left of it in the middle of the lift.
    fn is_leftmost(&self, series: &Series) -> bool {
        let x = |series: &Series| self.on_curve(series, 0.5).map_or(f64::INFINITY, |point| point.x);
        self.plot.series.iter().all(|other| x(series) <= x(other))
    }

    fn on_curve(&self, series: &Series, part: f64) -> Option<Screen> {
        let last = series.points.len().checked_sub(1)? as f64;
        let index = (0..series.points.len()).min_by(|one, other| {
            let far = |index: usize| (index as f64 - part * last).abs();
            far(*one).total_cmp(&far(*other))
        })?;
        series.points.get(index).map(|(value, height)| self.area.place(*value, *height))
    }

    /// The curves, and the band of the main one beyond the limit, beneath them.
    pub(super) fn curves(&self, place: usize) -> Vec<Curve> {
        let line = |series: &Series, ink: Ink, from: f64| Curve {
            plot: place,
            ink,
            points: series
                .points
                .iter()
                .filter(|point| point.0 >= from)
                .map(|(value, height)| self.area.place(*value, *height))
                .collect(),
        };
        let mut curves = Vec::new();
        if let (Some(limit), Some(main)) = (&self.plot.limit, self.plot.series.first()) {
            curves.push(line(main, BEYOND, limit.value));
        }
        // The main curve is drawn last, over its companions.
        curves.extend(self.plot.series.iter().rev().map(|series| line(series, series.ink, f64::NEG_INFINITY)));
        curves
    }
}

fn hung(point: Screen, end: Screen, words: Mark) -> [Mark; 3] {
    let leader = format!("M{} {}L{} {}", tidy(point.x), tidy(point.y), tidy(end.x), tidy(end.y));
    [Mark::path("ld", leader), Mark::path("pb", dot(point, 1.4)), words]
}

/// A full circle as a path, so that it can be left out.
pub(super) fn dot(at: Screen, radius: f64) -> String {
    let (x, y) = (tidy(at.x), tidy(at.y));
    let two = tidy(2.0 * radius);
    format!("M{} {y}a{radius} {radius} 0 1 0 {two} 0a{radius} {radius} 0 1 0 -{two} 0Z", tidy(x - radius))
}
