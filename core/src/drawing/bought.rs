//! Small outlines of what is bought, all at one scale: seen from the side, and beside it along its axis or in section.
use super::cutting::Drawn;
use super::elevation::base;
use super::mark::Mark;
use super::outline::{Bounds, Outline, Segment, Stroke};
use super::scale::{Scale, Screen};
use crate::design::Design;
use crate::parts::{BoltSize, Form};
use crate::workshop::hardware::Item;
use glam::DVec2;

/// The scale: a millimetre of paper for so many of the part, where 96 px are an inch.
pub const SCALE: f64 = 5.0;
const PER_MM: f64 = super::poster::PAPER / SCALE;

/// What is longer is drawn broken, this long, mm; a broken piece has a gap of so much.
const LONGEST: f64 = 130.0;
const BREAK: f64 = 6.0;
/// Between the two views, mm.
const BETWEEN: f64 = 8.0;
/// White around, px.
const MARGIN: f64 = 2.0;
/// The circle on a bolt's head, in widths across flats.
const CHAMFER: f64 = 0.92;
/// Root of a thread, in outside diameters, and of a wood screw.
const ROOT: f64 = 0.85;
const WOOD_ROOT: f64 = 0.6;
/// Thread of a bolt: two diameters and so much more, mm (ISO 888 up to 125 mm, from memory).
const THREAD: f64 = 6.0;
/// Lines closer than this are drawn as one, px.
const APART: f64 = 2.0;

/// Its outline; none for sheets and glue, and for what has no size.
#[must_use]
pub fn outline(design: &Design, item: &Item) -> Option<Drawn> {
    let form = item.form?;
    let size = item.size.map(|side| side.to_mm());
    if size[0] <= 0.0 || size[1] <= 0.0 {
        return None;
    }
    let mut sketch = Sketch::default();
    let [length, second, third] = size;
    match (form, item.name) {
        (Form::Bolt, _) => sketch.bolt(BoltSize { diameter: item.size[1] }, length),
        (Form::LockNut, _) => sketch.nut(BoltSize { diameter: item.size[1] }, length),
        (Form::WoodScrew, _) => sketch.wood_screw(length, second),
        (Form::ThreadedBar, _) => {
            sketch.bar(length, second, &[ROOT * second]);
            sketch.disc(second, ROOT * second);
        }
        (Form::Bearing, _) => sketch.bearing(length, second, third),
        (Form::RoundBar, _) => {
            sketch.bar(length, second, &[]);
            sketch.disc(second, 0.0);
        }
        (Form::SquareTube, _) => {
            sketch.bar(length, second, &[]);
            sketch.section(second, second);
            sketch.hollow(second - 2.0 * third);
        }
        (Form::FlatBar | Form::LightBar | Form::Batten | Form::Sheet, _) => {
            sketch.bar(length, second, &[]);
            sketch.section(third, second);
        }
        (_, "Caster") => {
            for stroke in base::caster(design, 0.0) {
                sketch.strokes.push(stroke);
            }
        }
        (_, "Spring pin" | "Crank pin") => sketch.bar(length, second, &[]),
        (_, "Crank") => sketch.crank(length, second),
        (_, "Wear sheet") => sketch.bar(length, third, &[]),
        _ => sketch.ring(length, second, third),
    }
    Some(sketch.drawn())
}

/// Outlines in millimetres; the axis of everything lies on the first axis.
#[derive(Default)]
struct Sketch {
    strokes: Vec<Stroke>,
    /// Where the first view ends.
    end: f64,
}

impl Sketch {
    fn draw(&mut self, class: &'static str, outline: Outline) {
        self.strokes.push(Stroke { class, outline });
    }

    fn line(&mut self, class: &'static str, from: [f64; 2], to: [f64; 2]) {
        self.draw(class, Outline::line(from.into(), to.into()));
    }

    /// A rectangle about the axis.
    fn block(&mut self, class: &'static str, x: [f64; 2], high: f64) {
        let half = high / 2.0;
        let corners = [[x[0], -half], [x[1], -half], [x[1], half], [x[0], half]].map(DVec2::from);
        self.draw(class, Outline::polygon(&corners));
        self.end = self.end.max(x[1]);
    }

    /// A circle about the axis of the second view; one inside the last too near its edge to be told apart from it is left out.
    fn circle(&mut self, class: &'static str, x: f64, diameter: f64) {
        let last = self.strokes.last().map(|stroke| &stroke.outline);
        let edge = match last {
            Some(Outline::Circle { centre, radius }) if (centre.x - x).abs() < 1e-9 => {
                *radius - diameter / 2.0
            }
            _ => f64::INFINITY,
        };
        if diameter > 0.0 && (edge < 0.0 || edge * PER_MM > APART) {
            self.draw(class, Outline::Circle { centre: DVec2::new(x, 0.0), radius: diameter / 2.0 });
        }
    }

    /// Two lines along the axis, so far apart.
    fn lines(&mut self, class: &'static str, x: [f64; 2], apart: f64) {
        for y in [-apart / 2.0, apart / 2.0] {
            self.line(class, [x[0], y], [x[1], y]);
        }
    }

    /// A bar seen from the side, broken where it is long, with narrow lines along it.
    fn bar(&mut self, length: f64, high: f64, narrow: &[f64]) {
        if length <= LONGEST {
            self.block("w steel", [0.0, length], high);
            narrow.iter().for_each(|apart| self.lines("n", [0.0, length], *apart));
            return;
        }
        let half = high / 2.0;
        let middle = LONGEST / 2.0;
        for (outer, inner) in [(0.0, middle - BREAK / 2.0), (LONGEST, middle + BREAK / 2.0)] {
            let broken = broken_edge(inner, half);
            let mut around =
                vec![Segment::Line(DVec2::new(outer, -half)), Segment::Line(DVec2::new(inner, -half))];
            around.extend(broken.iter().map(|point| Segment::Line(*point)));
            around.push(Segment::Line(DVec2::new(outer, half)));
            self.draw(
                "steel",
                Outline::Run { start: DVec2::new(outer, half), segments: around, closed: true },
            );
            self.lines("w", [outer, inner], high);
            self.line("w", [outer, -half], [outer, half]);
            narrow.iter().for_each(|apart| self.lines("n", [outer, inner], *apart));
            self.draw(
                "n",
                Outline::Run {
                    start: DVec2::new(inner, -half),
                    segments: broken.into_iter().map(Segment::Line).collect(),
                    closed: false,
                },
            );
        }
        self.end = LONGEST;
    }

    /// Where the second view of something so wide has its middle.
    fn beside(&self, wide: f64) -> f64 {
        self.end + BETWEEN + wide / 2.0
    }

    /// The end of a round bar with a circle in it.
    fn disc(&mut self, outside: f64, inside: f64) {
        let x = self.beside(outside);
        self.circle("w steel", x, outside);
        self.circle("n none", x, inside);
    }

    fn section(&mut self, wide: f64, high: f64) {
        let x = self.beside(wide);
        self.block("w steel", [x - wide / 2.0, x + wide / 2.0], high);
    }

    /// The inside of the square section drawn last.
    fn hollow(&mut self, side: f64) {
        let outside = self.strokes.last().and_then(|last| Bounds::around(core::slice::from_ref(last)));
        if let Some(bounds) = outside.filter(|_| side > 0.0) {
            let x = (bounds.least.x + bounds.most.x) / 2.0;
            self.block("w sheet", [x - side / 2.0, x + side / 2.0], side);
        }
    }

    /// A ring: washer, collar, bushing, nut.
    fn ring(&mut self, length: f64, outside: f64, bore: f64) {
        self.block("w steel", [0.0, length], outside);
        if length > 0.4 * outside {
            self.lines("hid", [0.0, length], bore);
        }
        let x = self.beside(outside);
        self.circle("w steel", x, outside);
        self.circle("w sheet", x, bore);
    }

    fn bearing(&mut self, width: f64, outside: f64, bore: f64) {
        self.ring(width, outside, bore);
        let x = self.beside(outside);
        let wall = outside - bore;
        self.circle("n none", x, outside - 0.3 * wall);
        self.circle("n none", x, bore + 0.3 * wall);
    }

    /// A hexagon seen along its axis.
    fn hexagon(&mut self, x: f64, corner: f64) {
        // Corners at the sides, flats above and below.
        let high = corner * 3.0_f64.sqrt() / 2.0;
        let corners = [
            [corner, 0.0],
            [corner / 2.0, high],
            [-corner / 2.0, high],
            [-corner, 0.0],
            [-corner / 2.0, -high],
            [corner / 2.0, -high],
        ];
        let at = corners.map(|[along, up]| DVec2::new(x + along, up));
        self.draw("w steel", Outline::polygon(&at));
    }

    /// A hexagon seen from the side: three of its faces.
    fn hexagon_side(&mut self, x: [f64; 2], size: BoltSize) {
        let corners = size.corner_radius() * 2e3;
        self.block("w steel", x, corners);
        if corners * PER_MM > 5.0 * APART {
            self.lines("n", x, corners / 2.0);
        }
    }

    fn bolt(&mut self, size: BoltSize, length: f64) {
        let diameter = size.diameter.to_mm();
        let head = size.head().to_mm();
        self.hexagon_side([0.0, head], size);
        let drawn = length.min(LONGEST);
        let end = head + drawn;
        let thread = (2.0 * diameter + THREAD).min(drawn);
        self.block("w steel", [head, end], diameter);
        if (1.0 - ROOT) * diameter * PER_MM > APART / 2.0 {
            self.lines("n", [end - thread, end], ROOT * diameter);
        }
        self.line("w", [end - thread, -diameter / 2.0], [end - thread, diameter / 2.0]);
        if length > LONGEST {
            self.gap(head + (drawn - thread) / 2.0, diameter);
        }
        let corner = size.corner_radius() * 1e3;
        let x = self.beside(2.0 * corner);
        self.hexagon(x, corner);
        if corner * PER_MM > 4.0 * APART {
            self.circle("n none", x, size.flats().to_mm() * CHAMFER);
        }
    }

    /// A break in a shank that is already drawn.
    fn gap(&mut self, x: f64, high: f64) {
        let half = high / 2.0 + 1.0;
        let corners = [[x - 2.0, -half], [x + 2.0, -half], [x + 2.0, half], [x - 2.0, half]].map(DVec2::from);
        self.draw("sheet", Outline::polygon(&corners));
        for inner in [x - 2.0, x + 2.0] {
            self.draw(
                "n",
                Outline::Run {
                    start: DVec2::new(inner, -high / 2.0),
                    segments: broken_edge(inner, high / 2.0).into_iter().map(Segment::Line).collect(),
                    closed: false,
                },
            );
        }
    }

    fn nut(&mut self, size: BoltSize, height: f64) {
        self.hexagon_side([0.0, height], size);
        let corner = size.corner_radius() * 1e3;
        let x = self.beside(2.0 * corner);
        self.hexagon(x, corner);
        if corner * PER_MM > 4.0 * APART {
            self.circle("n none", x, size.diameter.to_mm());
        }
        self.circle("w sheet", x, ROOT * size.diameter.to_mm());
    }

    fn wood_screw(&mut self, length: f64, diameter: f64) {
        let (head, tip) = (0.55 * diameter, 1.2 * diameter);
        let root = WOOD_ROOT * diameter;
        let start = length * 0.4;
        let corners = [
            [0.0, -diameter],
            [head, -root / 2.0],
            [length - tip, -root / 2.0],
            [length, 0.0],
            [length - tip, root / 2.0],
            [head, root / 2.0],
            [0.0, diameter],
        ];
        self.draw("w steel", Outline::polygon(&corners.map(DVec2::from)));
        let pitch = 0.55 * diameter;
        let mut x = start.max(head + pitch);
        while x < length - tip * 0.6 {
            self.line("n", [x, -diameter / 2.0], [x + 0.4 * pitch, diameter / 2.0]);
            x += pitch;
        }
        self.end = length;
        let middle = self.beside(2.0 * diameter);
        self.circle("w steel", middle, 2.0 * diameter);
        let slot = 0.5 * diameter;
        if slot * PER_MM > APART {
            self.line("n", [middle - slot, 0.0], [middle + slot, 0.0]);
            self.line("n", [middle, -slot], [middle, slot]);
        }
    }

    /// Its arm from the side, and its handle.
    fn crank(&mut self, reach: f64, wide: f64) {
        self.bar(reach, wide, &[]);
        let end = self.end;
        self.circle("w sheet", wide / 2.0, 0.6 * wide);
        self.circle("n steel", end - wide / 2.0, 0.5 * wide);
    }

    fn drawn(self) -> Drawn {
        let Some(bounds) = Bounds::around(&self.strokes) else { return Drawn::default() };
        let span = bounds.most - bounds.least;
        let scale = Scale {
            per_mm: PER_MM,
            origin: Screen::new(MARGIN - bounds.least.x * PER_MM, MARGIN + bounds.most.y * PER_MM),
        };
        Drawn {
            width: (span.x * PER_MM + 2.0 * MARGIN).ceil(),
            height: (span.y * PER_MM + 2.0 * MARGIN).ceil(),
            marks: self
                .strokes
                .iter()
                .map(|stroke| Mark::path(stroke.class, stroke.outline.notation(&scale)))
                .collect(),
        }
    }
}

/// The points of a broken edge from below upwards, an S about its middle.
fn broken_edge(x: f64, half: f64) -> Vec<DVec2> {
    const POINTS: u8 = 8;
    (1..=POINTS)
        .map(|at| {
            let up = f64::from(at) / f64::from(POINTS);
            let swing = libm::sin(up * core::f64::consts::TAU) * BREAK / 4.0;
            DVec2::new(x + swing, half * (2.0 * up - 1.0))
        })
        .collect()
}
