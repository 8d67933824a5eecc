//! A small sheet of paper that outlines in millimetres are put on.
use crate::drawing::cutting::Drawn;
use crate::drawing::dimension::{Dimension, OFF_PART, PAST_LINE, extension};
use crate::drawing::face::Measure;
use crate::drawing::frame::Area;
use crate::drawing::lettering::{Lettering, text};
use crate::drawing::mark::{Anchor, Mark};
use crate::drawing::outline::{Bounds, Outline, Stroke};
use crate::drawing::scale::{Model, Scale, Screen};
use crate::parts::Part;
use crate::quantity::{System, figures};
use crate::report::Report;
use glam::DVec2;

/// The drawing is at most so wide and so high, px.
pub(super) const MOST: [f64; 2] = [300.0, 230.0];
/// White around it, and room beneath for a dimension, px.
const MARGIN: f64 = 12.0;
const DIMENSION: f64 = 26.0;
/// The ring around a part's number, px.
const RING: f64 = 8.5;

/// What is known before the figure has its scale.
pub(super) struct Canvas<'a> {
    pub(super) report: &'a Report,
    system: System,
    measure: Measure<'a>,
    strokes: Vec<Stroke>,
    labels: Vec<(DVec2, String)>,
    numbers: Vec<(DVec2, u32)>,
    level: Option<Level>,
    per_mm: Option<f64>,
}

/// A level dimension beneath the drawing.
struct Level {
    word: &'static str,
    from: DVec2,
    to: DVec2,
}

impl<'a> Canvas<'a> {
    pub(super) fn new(report: &'a Report, system: System, measure: Measure<'a>) -> Self {
        Self {
            report,
            system,
            measure,
            strokes: Vec::new(),
            labels: Vec::new(),
            numbers: Vec::new(),
            level: None,
            per_mm: None,
        }
    }

    /// Draws at so many px a millimetre, whatever the drawing's size.
    pub(super) fn at_scale(&mut self, per_mm: f64) {
        self.per_mm = Some(per_mm);
    }

    /// Puts an outline on top of what is there.
    pub(super) fn draw(&mut self, class: &'static str, outline: Outline) {
        self.strokes.push(Stroke { class, outline });
    }

    /// Puts an outline on top as it is.
    pub(super) fn stroke(&mut self, stroke: Stroke) {
        self.strokes.push(stroke);
    }

    /// Puts an outline on top in narrow lines; axes, hidden lines and centre marks, which belong to what is new, are left out.
    pub(super) fn stroke_narrow(&mut self, stroke: Stroke) {
        let class = match stroke.class {
            "w" => "n",
            "w near" | "w ply" => "n ply",
            "w far" => "n far",
            "w steel" => "n steel",
            "w sheet" => "n sheet",
            "w none" => "n none",
            "cl" | "cm" | "hid" | "glue" => return,
            same => same,
        };
        self.strokes.push(Stroke { class, outline: stroke.outline });
    }

    pub(super) fn rectangle(&mut self, class: &'static str, x: [f64; 2], y: [f64; 2]) {
        let corners = [[x[0], y[0]], [x[1], y[0]], [x[1], y[1]], [x[0], y[1]]].map(DVec2::from);
        self.draw(class, Outline::polygon(&corners));
    }

    pub(super) fn line(&mut self, class: &'static str, from: DVec2, to: DVec2) {
        self.draw(class, Outline::line(from, to));
    }

    /// A hole or a bushing with its centre mark.
    pub(super) fn circle(&mut self, class: &'static str, centre: DVec2, diameter: f64) {
        let radius = diameter / 2.0;
        self.draw(class, Outline::Circle { centre, radius });
        let past = radius * 1.3;
        for reach in [DVec2::new(past, 0.0), DVec2::new(0.0, past)] {
            self.line("cm", centre - reach, centre + reach);
        }
    }

    /// A distance between two places, written as a figure in the reader's units.
    pub(super) fn diagonals(&mut self, corners: [DVec2; 4]) {
        let [first, second, third, fourth] = corners;
        self.line("dl", first, third);
        self.line("dl", second, fourth);
        let length = figures::ruled((third - first).length() / 1e3, self.system).to_string();
        self.labels.push(((first + third) / 2.0, length));
    }

    /// The number of a part, in a ring.
    pub(super) fn number(&mut self, at: DVec2, part: &Part) {
        self.numbers.push((at, part.number));
    }

    /// A dimension beneath everything.
    pub(super) fn level(&mut self, word: &'static str, from: DVec2, to: DVec2) {
        self.level = Some(Level { word, from, to });
    }

    /// Words at a place.
    pub(super) fn label(&mut self, at: DVec2, words: String) {
        self.labels.push((at, words));
    }

    pub(super) fn size(&self, mm: f64) -> String {
        figures::ruled(mm / 1e3, self.system).to_string()
    }

    /// Everything on paper.
    pub(super) fn drawn(self) -> Drawn {
        let Some(bounds) = Bounds::around(&self.strokes) else { return Drawn::default() };
        let span = (bounds.most - bounds.least).max(DVec2::splat(1.0));
        let per_mm = self.per_mm.unwrap_or_else(|| (MOST[0] / span.x).min(MOST[1] / span.y));
        let beneath = if self.level.is_some() { DIMENSION } else { 0.0 };
        let scale = Scale {
            per_mm,
            origin: Screen::new(MARGIN - bounds.least.x * per_mm, MARGIN + bounds.most.y * per_mm),
        };
        let (width, height) =
            ((span.x * per_mm + 2.0 * MARGIN).ceil(), (span.y * per_mm + 2.0 * MARGIN + beneath).ceil());
        let mut marks: Vec<Mark> = self
            .strokes
            .iter()
            .map(|stroke| Mark::path(stroke.class, stroke.outline.notation(&scale)))
            .collect();
        let paper = Area { x: 0.0, y: 0.0, width, height };
        let mut lettering = Lettering::new(self.measure, paper);
        let on_paper = |at: DVec2| scale.to_screen(Model::from(at));
        if let Some(Level { word, from, to }) = &self.level {
            let y = height - 8.0;
            let number = figures::ruled((*to - *from).length() / 1e3, self.system).number;
            let dimension =
                Dimension { word, number: &number, live: false, always: true, words_below: false };
            let ends = [on_paper(*from), on_paper(*to)];
            for end in ends {
                marks.push(extension(end.by(0.0, OFF_PART), Screen::new(end.x, y + PAST_LINE)));
            }
            marks.extend(dimension.level(&mut lettering, y, ends.map(|end| end.x)));
        }
        for (at, words) in &self.labels {
            let at = on_paper(*at).by(0.0, 4.0);
            let forms = [0.0, -18.0, 18.0, -34.0, 34.0]
                .map(|down| text("b halo", at.by(0.0, down), Anchor::Middle, words));
            marks.push(lettering.place(forms));
        }
        for (at, number) in &self.numbers {
            marks.extend(ring(&mut lettering, on_paper(*at), *number));
        }
        Drawn { width, height, marks }
    }
}

/// Where a ring is tried, in its own widths.
const AROUND: [[f64; 2]; 9] = [
    [0.0, 0.0],
    [1.2, 0.0],
    [-1.2, 0.0],
    [0.0, 1.2],
    [0.0, -1.2],
    [2.4, 0.0],
    [-2.4, 0.0],
    [0.0, 2.4],
    [0.0, -2.4],
];

/// A number in its ring, near a place; nothing where others stand all around.
fn ring(lettering: &mut Lettering<'_>, near: Screen, number: u32) -> Vec<Mark> {
    let boxed = |at: Screen| Area::between([at.x - RING, at.x + RING], [at.y - RING, at.y + RING]);
    let free = AROUND
        .map(|[x, y]| near.by(x * 2.0 * RING, y * 2.0 * RING))
        .into_iter()
        .find(|at| lettering.is_free(&boxed(*at)));
    let Some(at) = free else { return Vec::new() };
    lettering.keep(boxed(at));
    vec![Mark::circle("ring", at, RING), text("mt", at.by(0.0, 3.8), Anchor::Middle, &number.to_string())]
}
