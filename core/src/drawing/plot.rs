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
const FIGURE: f64 = 19.0;
/// How far the zero line goes on above the highest deck, px.
const ABOVE: f64 = 8.0;
/// A limit's line ends this far above the point where the curve passes it, px, the first height with room for its name.
const OVER_CURVE: [f64; 6] = [30.0, 44.0, 58.0, 76.0, 96.0, 120.0];
/// Where on a limit that runs all the way up its name may hang, as parts of the lift from above.
const ON_LIMIT: [f64; 9] = [0.0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8];
/// Names may pass the right end of their plot by so much, px.
const RIGHT: f64 = 20.0;
/// Where on a curve its name may hang, as parts of the lift, for those written to the right and to the left of it.
const TO_RIGHT: [f64; 9] = [0.55, 0.65, 0.45, 0.75, 0.35, 0.85, 0.25, 0.92, 0.12];
const TO_LEFT: [f64; 9] = [0.16, 0.24, 0.32, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];
/// A leader runs this far aside and up, px, the second where there is little room.
const LEADERS: [(f64, f64); 2] = [(22.0, 8.0), (9.0, 4.0)];
/// From the upper end of a curve to the base line of a name that finds no place on its flanks, px.
const OVER_END: f64 = 6.0;

/// The band of a curve beyond its limit.
const BEYOND: Ink = Ink { class: "over-run", hue: Hue::Force, width: 9.0, dash: &[], opacity: 0.25 };

/// The main curve of another design, in the hue of its quantity.
const fn other(hue: Hue) -> Ink {
    let class = if matches!(hue, Hue::Sag) { "c-other sag" } else { "c-other" };
    Ink { class, hue, width: 1.4, dash: &[2.0, 3.0], opacity: 1.0 }
}

/// The tint between a curve and what play adds.
pub(super) const TINT: Ink = Ink { class: "b-play", hue: Hue::Play, width: 0.0, dash: &[], opacity: 0.22 };

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
    /// Where else it may hang while other lettering stands in its place, the better places first.
    pub(super) elsewhere: Vec<([Mark; 3], Area)>,
}

/// A name has at most so many other places.
const ELSEWHERE: usize = 8;

impl Name {
    /// A name without a place.
    fn none(class: &'static str) -> Self {
        let nowhere = text(class, Screen::default(), Anchor::Start, "");
        Self {
            parts: [Mark::path("ld", String::new()), Mark::path("pb", String::new()), nowhere],
            area: None,
            elsewhere: Vec::new(),
        }
    }
}

impl Placed<'_> {
    /// Lines of the axes.
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
        ]
    }

    fn tick_x(&self, value: f64) -> f64 {
        self.area.zero + value / self.plot.per_si * self.area.per_value
    }

    /// Heading and figures of the axis.
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
        marks
    }

    /// The limit's line from the base line up to above the curve, with its name at the upper end; one that the curve should stay
    /// above all the way up, with its name anywhere on it. No name where there is no room for it, nothing where the limit lies outside the axis.
    pub(super) fn limit(&self, lettering: &mut Lettering<'_>) -> (Mark, Name) {
        let nothing = |line: String| (Mark::path("lim", line), Name::none("halo s"));
        let Some(limit) = &self.plot.limit else { return nothing(String::new()) };
        let area = self.area.area;
        let (Some(first), Some(last)) = (limit.points.first(), limit.points.last()) else {
            return nothing(String::new());
        };
        let foot = self.area.place(first.0, first.1);
        if !(area.x + 1.0..=area.right() + 0.5).contains(&foot.x) {
            return nothing(String::new());
        }
        let end = self.area.place(last.0, last.1);
        let line = |head: Screen| {
            let snap = |x: f64| if (end.x - foot.x).abs() < 0.5 { crisp(x) } else { x };
            format!("M{} {}L{} {}", tidy(snap(foot.x)), tidy(foot.y), tidy(snap(head.x)), tidy(head.y))
        };
        let stands = if limit.least { line(end) } else { String::new() };
        let drawn = |head: Screen| if limit.least { stands.clone() } else { line(head) };
        for head in self.limit_heads(foot, end) {
            let forms = [
                (4.0, 9.0, Anchor::Start),
                (-4.0, 9.0, Anchor::End),
                (0.0, -5.0, Anchor::End),
                (0.0, -5.0, Anchor::Middle),
            ];
            for (right, down, anchor) in forms {
                let form = text("halo s", head.by(right, down), anchor, &limit.name);
                let Some(words) = lettering.area(&form) else { continue };
                let inside = area.x < words.x && words.right() < area.right() + RIGHT && head.y >= area.y;
                if inside && self.is_clear(&words) && lettering.is_free(&words) {
                    lettering.keep(words);
                    let parts = [Mark::path("ld", String::new()), Mark::path("pb", String::new()), form];
                    return (
                        Mark::path("lim", drawn(head)),
                        Name { parts, area: Some(words), elsewhere: Vec::new() },
                    );
                }
            }
        }
        let head = self.limit_heads(foot, end).first().copied().unwrap_or(end);
        nothing(drawn(Screen::new(head.x, head.y.max(area.y))))
    }

    /// Where a limit's line may end: some way above the point where the curve passes it, or where it leaves the axis.
    fn limit_heads(&self, foot: Screen, end: Screen) -> Vec<Screen> {
        let area = self.area.area;
        if self.plot.limit.as_ref().is_some_and(|limit| limit.least) {
            return ON_LIMIT.map(|part| Screen::new(foot.x, end.y + part * (foot.y - end.y))).into();
        }
        let slope = (end.x - foot.x) / (end.y - foot.y).min(-1.0);
        let leaves = if slope < -1e-3 { foot.y + (area.right() - foot.x) / slope } else { area.y };
        let passed = self.passes().map_or(area.bottom(), |height| self.area.scale.level(height));
        OVER_CURVE
            .into_iter()
            .map(|rise| (passed - rise).max(leaves))
            .map(|y| Screen::new(foot.x + slope * (y - foot.y), y))
            .collect()
    }

    /// The greatest height, m, at which the main curve lies beyond the limit.
    fn passes(&self) -> Option<f64> {
        let limit = self.plot.limit.as_ref()?;
        let beyond = |point: &&(f64, f64)| limit.is_passed(**point);
        self.plot.series.first()?.points.iter().rev().find(beyond).map(|point| point.1)
    }

    /// Whether the box of a text lies on no curve of the plot and not across its zero line.
    pub(super) fn is_clear(&self, words: &Area) -> bool {
        let beside = self.area.zero <= words.x - 1.0 || words.right() + 1.0 <= self.area.zero;
        let words = words.grown(2.0);
        let mut curves = self.plot.series.iter().map(|series| &series.points).chain([&self.plot.other]);
        beside && !curves.any(|points| self.passes_through(points, &words))
    }

    /// Whether a curve passes through a box.
    fn passes_through(&self, points: &[(f64, f64)], area: &Area) -> bool {
        // Only the piece of the curve at the heights of the box can.
        let [low, high] = [area.bottom(), area.y].map(|y| self.area.height_at(y));
        let from = points.partition_point(|point| point.1 < low).saturating_sub(1);
        let to = (points.partition_point(|point| point.1 <= high) + 1).min(points.len());
        points.get(from..to).unwrap_or_default().windows(2).any(|pair| {
            let [one, other] = [pair[0], pair[1]].map(|(value, height)| self.area.place(value, height));
            area.meets(&Area::between([one.x, other.x], [one.y, other.y]).grown(0.1))
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
                // Inside the plot first; past its zero line where nothing else is free, over the curve's end at last.
                let forms = [true, false].into_iter().flat_map(|inside| {
                    LEADERS.into_iter().flat_map(move |leader| {
                        sides.into_iter().flat_map(move |left| {
                            (if left { TO_LEFT } else { TO_RIGHT })
                                .map(move |part| (inside, left, part, leader))
                        })
                    })
                });
                let hanging = forms
                    .filter(|(_, _, part, _)| taken.iter().all(|other| (other - part).abs() >= 0.04))
                    .filter_map(|(inside, left, part, leader)| {
                        let point = self.on_curve(series, part)?;
                        let (aside, anchor) = if left { (-1.0, Anchor::End) } else { (1.0, Anchor::Start) };
                        let end = point.by(aside * leader.0, -leader.1);
                        let form = text(series.lettering, end.by(aside * 3.0, 4.0), anchor, &series.name);
                        let area = lettering.area(&form)?;
                        let within = area.right() < self.area.area.right() + RIGHT
                            && (!inside || self.area.area.x < area.x);
                        let fits = within && self.is_clear(&area) && lettering.is_free(&area);
                        fits.then(|| (part, hung(point, end, form), area))
                    });
                let mut places = hanging
                    .chain(self.over_end(series, lettering))
                    .take(1 + ELSEWHERE)
                    .collect::<Vec<_>>()
                    .into_iter();
                let Some((part, parts, area)) = places.next() else { return Name::none(series.lettering) };
                taken.push(part);
                lettering.keep(area);
                Name {
                    parts,
                    area: Some(area),
                    elsewhere: places.map(|(_, parts, area)| (parts, area)).collect(),
                }
            })
            .collect()
    }

    /// The name of a curve over its upper end, where it fits there.
    fn over_end(
        &self,
        series: &Series,
        lettering: &Lettering<'_>,
    ) -> impl Iterator<Item = (f64, [Mark; 3], Area)> {
        let end = self.on_curve(series, 1.0);
        let forms = [(0.0, Anchor::Middle), (-4.0, Anchor::Start), (4.0, Anchor::End)];
        let fitting = forms.into_iter().filter_map(|(right, anchor)| {
            let point = end?;
            let form = text(series.lettering, point.by(right, -OVER_END), anchor, &series.name);
            let area = lettering.area(&form)?;
            let within = self.area.area.x < area.x && area.right() < self.area.area.right() + RIGHT;
            let fits = within && self.is_clear(&area) && lettering.is_free(&area);
            fits.then(|| (1.0, hung(point, point, form), area))
        });
        fitting.take(1).collect::<Vec<_>>().into_iter()
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

    /// The curves, beneath them the tint between the first two and the band of the main one beyond its limit.
    pub(super) fn curves(&self, place: usize) -> Vec<Curve> {
        let on_paper = |point: &(f64, f64)| self.area.place(point.0, point.1);
        let curve = |ink: Ink, points: Vec<Screen>| Curve { plot: place, ink, points };
        let mut curves = Vec::new();
        if let Some((between, tint)) = self.plot.tint
            && let [Some(first), Some(second)] = between.map(|place| self.plot.series.get(place))
        {
            let outline = first.points.iter().chain(second.points.iter().rev()).map(on_paper).collect();
            curves.push(curve(tint, outline));
        }
        if let (Some(limit), Some(main)) = (&self.plot.limit, self.plot.series.first()) {
            let beyond = main.points.iter().filter(|point| limit.is_passed(**point)).map(on_paper).collect();
            curves.push(curve(Ink { hue: main.ink.hue, ..BEYOND }, beyond));
        }
        if let Some(main) = self.plot.series.first() {
            curves.push(curve(other(main.ink.hue), self.plot.other.iter().map(on_paper).collect()));
        }
        // The main curve is drawn last, over its companions.
        let lines = self.plot.series.iter().rev();
        curves.extend(lines.map(|series| curve(series.ink, series.points.iter().map(on_paper).collect())));
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
