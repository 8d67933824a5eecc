//! The picture of a part cut free: the part and its forces at the left or on top, the force polygon beside or beneath it, sums below both.
use super::acting::Paper;
use super::polygon::Polygon;
use super::words::{closing, part_words};
use crate::drawing::elevation::Subject;
use crate::drawing::face::Measure;
use crate::drawing::frame::Area;
use crate::drawing::lettering::{Lettering, text};
use crate::drawing::mark::{Anchor, Mark};
use crate::drawing::outline::{Bounds, tidy, write};
use crate::drawing::scale::{Scale, Screen};
use crate::drawing::sheet::runs;
use crate::drawing::view::{Layout, View};
use crate::mechanics::{FreeBody, Freed};
use crate::quantity::{System, figures};
use crate::report::{Doing, Report, Station};
use glam::DVec2;

/// Above the pictures for their headings, and below them for the sums, px.
const HEAD: f64 = 40.0;
const FOOT: f64 = 44.0;
/// The share of a wide picture that the part takes, and the gap between the two, px.
const SHARE: f64 = 0.6;
const GAP: f64 = 24.0;
/// Heights of a wide picture, px, and of the two panels of a narrow one as parts of its width.
const TALL: [f64; 2] = [360.0, 520.0];
const NARROW: [f64; 2] = [0.95, 0.7];
/// The longest arrow, px, and the most of a panel that arrows may take on either side of the part.
const LONGEST: f64 = 150.0;
const BESIDE: f64 = 0.2;
/// Room for words beyond an arrow, across and down, px.
const WORDS: [f64; 2] = [44.0, 26.0];
/// Room around the polygon, px.
const AROUND: f64 = 46.0;
/// The polygon is drawn at most so many times longer than the arrows at the part.
const MOST_TIMES: f64 = 4.0;
/// A part is drawn at most so large, px a mm.
const LARGEST: f64 = 1.6;
/// A length and a force that show the scales are at most so long, px.
const BAR: f64 = 90.0;
/// Every so many stations of the sweep are looked at to find the scales.
const STEP: usize = 9;

/// What goes with the moving marks of one height.
#[derive(Clone, Debug, PartialEq)]
pub struct FreeLive {
    /// The part with its forces; none where they cannot be computed.
    pub body: Option<FreeBody>,
    /// The gap at which the polygon closes, N.
    pub gap: f64,
}

/// The picture of one part without what moves with the deck: scales are the same at every height.
#[derive(Clone, Debug, PartialEq)]
pub struct FreeSheet {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// What stands still.
    pub still: Vec<Mark>,
    part: Freed,
    doing: Doing,
    system: System,
    panels: [Area; 2],
    per_mm: f64,
    per_newton: f64,
    /// So many times longer the polygon is drawn than the arrows at the part.
    times: f64,
    /// The middle of the part from the middle of everything it reaches, mm.
    centre: DVec2,
    runs: [[f64; 2]; 2],
    taken: Vec<Area>,
}

/// What the scales must hold.
struct Reach {
    bounds: Bounds,
    /// The largest force, and the largest components, N.
    largest: f64,
    across: DVec2,
    /// The polygon at one px a newton.
    polygon: DVec2,
}

impl FreeSheet {
    /// Lays out the picture of a part in a state; of the view its size, layout and units are heeded.
    #[must_use]
    pub fn new(report: &Report, part: Freed, doing: Doing, view: &View, measure: Measure<'_>) -> Self {
        let runs = runs(report);
        let reach = reach(report, part, doing, runs);
        let width = f64::from(view.width.clamp(240, 10_000));
        let panels = panels(view, width);
        let [free, closed] = &panels;
        let room = |panel: &Area, share: f64| DVec2::new(panel.width * share, panel.height * share);
        let fit = |room: DVec2, needed: DVec2| {
            let one = |room: f64, needed: f64| if needed > 0.0 { room / needed } else { f64::INFINITY };
            one(room.x, needed.x).min(one(room.y, needed.y))
        };
        let around = DVec2::new(closed.width, closed.height) - DVec2::splat(2.0 * AROUND);
        let for_polygon = fit(around.max(DVec2::splat(40.0)), reach.polygon);
        let per_newton = fit(room(free, BESIDE), reach.across).min(for_polygon).min(if reach.largest > 0.0 {
            LONGEST / reach.largest
        } else {
            f64::INFINITY
        });
        let per_newton = if per_newton.is_finite() { per_newton } else { 1.0 };
        let times = (for_polygon / per_newton).floor().clamp(1.0, MOST_TIMES);
        let size = reach.bounds.most - reach.bounds.least;
        let left = DVec2::new(free.width, free.height)
            - 2.0
                * (per_newton * reach.across + DVec2::from(WORDS))
                    .min(0.4 * DVec2::new(free.width, free.height));
        let per_mm = fit(left, size).clamp(0.01, LARGEST);
        let mut sheet = Self {
            width,
            height: panels[1].bottom() + FOOT,
            still: Vec::new(),
            part,
            doing,
            system: view.system,
            per_mm,
            per_newton,
            times,
            centre: (reach.bounds.least + reach.bounds.most) / 2.0,
            runs,
            taken: Vec::new(),
            panels,
        };
        sheet.draw(measure);
        sheet
    }

    fn draw(&mut self, measure: Measure<'_>) {
        let paper = Area { x: 0.0, y: 0.0, width: self.width, height: self.height };
        let mut lettering = Lettering::new(measure, paper);
        let [free, closed] = self.panels;
        let what = part_words(self.part);
        let scale = match self.times {
            times if times > 1.0 => format!("drawn {times:.0} times as long"),
            _ => "to the same scale".to_owned(),
        };
        let heads = [
            (free, format!("The {what} cut free"), state_words(self.doing)),
            (closed, "Its forces head to tail".to_owned(), scale.as_str()),
        ];
        for (panel, title, note) in heads {
            let title = lettering.shortened("th", &title, panel.width);
            let at = Screen::new(panel.x, panel.y - HEAD + 14.0);
            self.still.push(lettering.set(text("th", at, Anchor::Start, &title)));
            let note = lettering.shortened("q", note, panel.width);
            self.still.push(lettering.set(text("q", at.by(0.0, 15.0), Anchor::Start, &note)));
        }
        self.still.extend(self.bars(&mut lettering));
        self.taken = lettering.into_taken();
    }

    /// A length and a force that show the scales, beneath the part.
    fn bars(&self, lettering: &mut Lettering<'_>) -> Vec<Mark> {
        let [free, _] = self.panels;
        let y = free.bottom() + 14.0;
        let (metres, length) = round_size(BAR / self.per_mm, self.system);
        let mut marks = Vec::new();
        let mut d = String::new();
        let (x, long) = (free.x + 1.0, metres * 1e3 * self.per_mm);
        write(&mut d, format_args!("M{} {}v6m0 -3h{}m0 -3v6", tidy(x), tidy(y - 3.0), tidy(long)));
        marks.push(Mark::path("n none", d));
        marks.push(lettering.place([text(
            "s",
            Screen::new(x + long + 6.0, y + 4.0),
            Anchor::Start,
            &length,
        )]));
        let (newtons, words) = round_force(BAR / self.per_newton, self.system);
        let from = Screen::new(x + long + 24.0 + lettering.width("s", &length), y);
        let to = from.by(newtons * self.per_newton, 0.0);
        let [shaft, head] = crate::drawing::arrow::force(from, to);
        marks.extend([Mark::path("fl", shaft), Mark::path("fh", head)]);
        let words = format!("{words}, both sides");
        marks.push(lettering.place([text("ft halo", to.by(6.0, 4.0), Anchor::Start, &words)]));
        marks
    }

    /// What moves with the deck, with the table at a station of the same report.
    #[must_use]
    pub fn moving(&self, report: &Report, station: &Station, measure: Measure<'_>) -> (Vec<Mark>, FreeLive) {
        let paper = Area { x: 0.0, y: 0.0, width: self.width, height: self.height };
        let mut lettering = Lettering::with(measure, paper, &self.taken);
        let [free, closed] = self.panels;
        let subject = Subject {
            design: &report.design,
            pose: &station.pose,
            runs: self.runs,
            pixel: 1.0 / self.per_mm,
        };
        let middle = subject.middle(self.part);
        // The part's own middle keeps its distance from the middle of all it reaches.
        let target = DVec2::new(free.x + free.width / 2.0, free.y + free.height / 2.0)
            - DVec2::new(self.centre.x, -self.centre.y) * self.per_mm;
        let origin = target - DVec2::new(middle.x, -middle.y) * self.per_mm;
        let scale = Scale { per_mm: self.per_mm, origin: origin.into() };
        let mut marks: Vec<Mark> = subject
            .freed(self.part)
            .iter()
            .map(|stroke| Mark::path(stroke.class, stroke.outline.notation(&scale)))
            .collect();
        let Ok(body) = report.body(station, self.doing, self.part) else {
            return (marks, FreeLive { body: None, gap: f64::NAN });
        };
        let paper = Paper {
            scale,
            pin_line: report.design.lift.pin_line.to_mm(),
            per_newton: self.per_newton,
            system: self.system,
            room: free,
            middle: scale.to_screen(middle.into()),
            half_width: matches!(self.part, Freed::Arm(_))
                .then(|| scale.length(report.design.arms.width.to_mm() / 2.0)),
            body: &body,
        };
        marks.push(paper.pole());
        marks.extend(paper.marks(&mut lettering));
        let polygon = Polygon::of(&body, self.times * self.per_newton);
        marks.extend(polygon.marks(&body, self.system, &closed, &mut lettering));
        let gap = body.force().length();
        marks.extend(self.sums(&body, gap, polygon.note(), &mut lettering));
        (marks, FreeLive { body: Some(body), gap })
    }

    /// Below the polygon its gap, below the part the sum of its moments.
    fn sums(&self, body: &FreeBody, gap: f64, note: &str, lettering: &mut Lettering<'_>) -> Vec<Mark> {
        let [free, closed] = self.panels;
        let moment = figures::left(figures::torque(body.moment(), self.system));
        let set = |lettering: &mut Lettering<'_>, x: f64, y: f64, forms: &[String]| {
            let at = Screen::new(x, y);
            lettering.place(forms.iter().map(|words| text("b halo", at, Anchor::Start, words)))
        };
        let closes = &[closing(gap, self.system)];
        let turns = &[format!("moments about the ring: sum {moment}"), format!("moments: {moment}")];
        let mut marks = vec![
            set(lettering, closed.x, closed.bottom() + 18.0, closes),
            set(lettering, free.x, free.bottom() + 36.0, turns),
        ];
        let at = Screen::new(closed.x, closed.bottom() + 36.0);
        marks.push(lettering.place([text("q", at, Anchor::Start, note)]));
        marks
    }
}

/// What the table does, beneath the heading.
const fn state_words(doing: Doing) -> &'static str {
    match doing {
        Doing::Standing => "at rest, without friction; forces of both sides",
        Doing::Raising => "while it is raised, friction against it; forces of both sides",
        Doing::Lowering => "while it is lowered, friction against it; forces of both sides",
    }
}

/// The part's and the polygon's places.
fn panels(view: &View, width: f64) -> [Area; 2] {
    if view.layout == Layout::Narrow {
        let [first, second] = NARROW.map(|part| part * width);
        let free = Area { x: 4.0, y: HEAD, width: width - 8.0, height: first };
        let y = free.bottom() + FOOT + HEAD + 4.0;
        return [free, Area { x: 4.0, y, width: width - 8.0, height: second }];
    }
    let height = f64::from(view.height).clamp(TALL[0], TALL[1]) - HEAD - FOOT;
    let left = (width - GAP) * SHARE;
    let free = Area { x: 4.0, y: HEAD, width: left - 4.0, height };
    [free, Area { x: left + GAP, y: HEAD, width: width - left - GAP - 4.0, height }]
}

/// Everything the part and its forces reach over the lift.
fn reach(report: &Report, part: Freed, doing: Doing, runs: [[f64; 2]; 2]) -> Reach {
    let nothing = Bounds { least: DVec2::ZERO, most: DVec2::ZERO };
    let mut reach = Reach { bounds: nothing, largest: 0.0, across: DVec2::ZERO, polygon: DVec2::ZERO };
    let ends = report.stations.last();
    for station in report.stations.iter().step_by(STEP).chain(ends) {
        let subject = Subject { design: &report.design, pose: &station.pose, runs, pixel: 2.0 };
        let middle = subject.middle(part);
        if let Some(bounds) = Bounds::around(&subject.freed(part)) {
            reach.bounds =
                reach.bounds.with(Bounds { least: bounds.least - middle, most: bounds.most - middle });
        }
        let Ok(body) = report.body(station, doing, part) else { continue };
        reach.largest = reach.largest.max(body.largest());
        reach.across = body.acting.iter().fold(reach.across, |most, one| most.max(one.force.abs()));
        reach.polygon = reach.polygon.max(Polygon::of(&body, 1.0).size());
    }
    reach
}

/// The largest of 1, 2 and 5 times a power of ten that is not larger.
fn round_down(value: f64) -> f64 {
    let power = libm::pow(10.0, libm::floor(libm::log10(value)));
    [5.0, 2.0].into_iter().map(|first| first * power).find(|round| *round <= value).unwrap_or(power)
}

/// A round length not above so many mm, m, in words.
fn round_size(most: f64, system: System) -> (f64, String) {
    let metres = match system {
        System::Metric => round_down(most) / 1e3,
        System::Inch => round_down((most / 25.4).max(1.0)) * 0.0254,
    };
    (metres, figures::size(metres, system).to_string())
}

/// A round force not above so many newtons, in words.
fn round_force(most: f64, system: System) -> (f64, String) {
    let unit = if system == System::Metric { 1.0 } else { figures::NEWTON_IN_LBF.recip() };
    let newtons = round_down((most / unit).max(1.0)) * unit;
    (newtons, figures::small_force(newtons, system).to_string())
}
