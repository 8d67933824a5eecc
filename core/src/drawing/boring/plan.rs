//! A drilled part in plan, with running dimensions from its datum corner and the letters of its holes.
use super::PX_PER_MM;
use super::face::{Lie, face};
use super::running::{LEADER, Running};
use crate::drawing::cutting::Drawn;
use crate::drawing::face::Measure;
use crate::drawing::frame::Area;
use crate::drawing::lettering::{Lettering, text};
use crate::drawing::mark::{Anchor, Mark};
use crate::drawing::scale::{Scale, Screen};
use crate::parts::Part;
use crate::quantity::{Length, System};
use crate::workshop::drilling::{Row, place};

/// Scales of reduction: ISO 5455; in inches halves, quarters and so on, as on a builder's rule (common practice, no source).
const METRIC: [u32; 6] = [1, 2, 5, 10, 20, 50];
const INCH: [u32; 7] = [1, 2, 4, 8, 16, 32, 64];

/// From the part to the dimension lines, px.
const LINE: f64 = 20.0;
/// Free around the drawing, px.
const FREE: f64 = 8.0;
/// Room for letters of holes above the part, px.
const LETTER: f64 = 14.0;
/// Half the strip along the edge of a recess that lettering keeps off, px.
const EDGE: f64 = 0.5;
/// A part is drawn no higher than this, px, if a smaller scale is left.
const HIGHEST: f64 = 420.0;

/// A part in plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The drawing.
    pub drawn: Drawn,
    /// It is drawn at one to so much, measured on paper.
    pub ratio: u32,
}

/// The part at the largest standard scale that has room in a width, px.
#[must_use]
pub fn plan(part: &Part, rows: &[Row], system: System, width: f64, measure: Measure<'_>) -> Plan {
    let [long, wide] = [part.size[0].to_mm(), part.size[1].to_mm()];
    let along = distances(|row| row.along, rows, part.size[0]);
    let across = distances(|row| row.across, rows, part.size[1]);
    let words = |(length, held): &(Length, bool)| place(*length, *held, system);
    let longest = |list: &[(Length, bool)]| {
        list.iter().map(|at| measure(&words(at), crate::drawing::Face::Plain)).fold(8.0, f64::max)
    };
    let (left, below) =
        (FREE + longest(&across) + LEADER + LINE + 6.0, LINE + LEADER + longest(&along) + 6.0 + FREE);
    let room = (width - left - 2.0 * FREE).max(1.0);
    let scales: &[u32] = match system {
        System::Metric => &METRIC,
        System::Inch => &INCH,
    };
    let fits = |ratio: &&u32| {
        let per_mm = PX_PER_MM / f64::from(**ratio);
        long * per_mm <= room && wide * per_mm <= HIGHEST
    };
    let ratio = scales.iter().find(fits).or(scales.last()).copied().unwrap_or(1);
    let per_mm = PX_PER_MM / f64::from(ratio);
    let (drawn_wide, drawn_high) = (long * per_mm, wide * per_mm);
    // Figures across may need more room than the part is wide.
    let need = 14.0 * across.len() as f64;
    let above = FREE + LETTER + ((need - drawn_high) / 2.0).max(0.0);
    let datum = Screen::new(left, above + drawn_high);
    let lie = Lie { scale: Scale { per_mm, origin: datum }, upright: false };
    let width = left + drawn_wide.max(14.0 * along.len() as f64 - left / 2.0) + 2.0 * FREE;
    let height = datum.y + below.max(above - FREE + 14.0);
    let paper = Area { x: 0.0, y: 0.0, width, height };
    let mut lettering = Lettering::new(measure, paper);
    let mut marks = face(part, &lie);
    for row in rows {
        let at = lie.at([row.along.to_mm(), row.across.to_mm()]);
        let reach = row.bit.countersink.unwrap_or(row.bit.diameter).to_mm() / 2.0 * per_mm;
        lettering.keep(Area::between([at.x - reach, at.x + reach], [at.y - reach, at.y + reach]));
    }
    // Lettering stands in the part or off it, not on its edges.
    for y in [datum.y - drawn_high, datum.y] {
        lettering.keep(Area::between([datum.x, datum.x + drawn_wide], [y - EDGE, y + EDGE]));
    }
    let outline = part.outline();
    for (at, corner) in outline.iter().enumerate() {
        let next = outline[(at + 1) % outline.len()];
        let [from, middle, to] =
            [[corner.x, corner.y], corner.half_way(&next), [next.x, next.y]].map(|place| lie.at(place));
        for end in [from, to] {
            lettering.shun(end, middle, EDGE);
        }
    }
    for cut in &part.housings {
        let half = [cut.length, cut.width].map(|side| side.to_mm() / 2.0);
        let middle = [cut.along, cut.across].map(Length::to_mm);
        let [from, to] =
            [-1.0, 1.0].map(|side| lie.at([middle[0] + side * half[0], middle[1] + side * half[1]]));
        for x in [from.x, to.x] {
            lettering.keep(Area::between([x - EDGE, x + EDGE], [from.y, to.y]));
        }
        for y in [from.y, to.y] {
            lettering.keep(Area::between([from.x, to.x], [y - EDGE, y + EDGE]));
        }
    }
    let placed = |list: &[(Length, bool)], on_paper: &dyn Fn(f64) -> f64| -> Vec<(f64, String)> {
        list.iter().map(|at| (on_paper(at.0.to_mm()), words(at))).collect()
    };
    let level = placed(&along, &|x| datum.x + x * per_mm);
    let rise = placed(&across, &|y| datum.y - y * per_mm);
    let running = [
        Running {
            line: datum.y + LINE,
            edge: datum.y,
            origin: datum.x,
            places: &level,
            bounds: [14.0, width - 8.0],
        },
        Running {
            line: datum.x - LINE,
            edge: datum.x,
            origin: datum.y,
            places: &rise,
            bounds: [8.0, height - 8.0],
        },
    ];
    let dimensions = [running[0].level(&mut lettering), running[1].rising(&mut lettering)].concat();
    marks.extend(dimensions);
    for row in rows {
        let at = lie.at([row.along.to_mm(), row.across.to_mm()]);
        let reach = row.bit.countersink.unwrap_or(row.bit.diameter).to_mm() / 2.0 * per_mm;
        marks.push(letter(&mut lettering, at, reach, datum.y - drawn_high, &row.letter));
    }
    for cut in &part.housings {
        let [above, below] = [1.0, -1.0]
            .map(|side| lie.at([cut.along.to_mm(), cut.across.to_mm() + side * cut.width.to_mm() / 2.0]));
        let words = format!("{} deep", place(cut.depth, false, system));
        let forms = [below.by(0.0, 13.0), above.by(0.0, -5.0), below.by(0.0, -4.0)]
            .map(|at| text("q halo", at, Anchor::Middle, &words));
        if cut.depth < part.size[2] {
            marks.push(lettering.place(forms));
        }
    }
    Plan { drawn: Drawn { width, height, marks }, ratio }
}

/// Every distance from the datum once, in order, the part's whole size last, and whether a joint turns there.
fn distances(of: fn(&Row) -> Length, rows: &[Row], whole: Length) -> Vec<(Length, bool)> {
    let mut list: Vec<(Length, bool)> =
        rows.iter().map(|row| (of(row), row.is_held())).chain([(whole, false)]).collect();
    list.sort_unstable_by_key(|(length, held)| (*length, !held));
    list.dedup_by_key(|(length, _)| *length);
    list
}

/// A hole's letter beside it, or above the part's upper edge.
fn letter(lettering: &mut Lettering<'_>, at: Screen, reach: f64, top: f64, words: &str) -> Mark {
    let out = reach + 3.0;
    let diagonal = out * 0.75;
    let places = [
        (diagonal, -diagonal, Anchor::Start),
        (-diagonal, -diagonal, Anchor::End),
        (diagonal, diagonal + 8.0, Anchor::Start),
        (-diagonal, diagonal + 8.0, Anchor::End),
        (0.0, -out - 2.0, Anchor::Middle),
        (0.0, out + 9.0, Anchor::Middle),
        (out + 2.0, 4.0, Anchor::Start),
        (-out - 2.0, 4.0, Anchor::End),
        (0.0, -out - 14.0, Anchor::Middle),
        (0.0, out + 21.0, Anchor::Middle),
        (0.0, top - at.y - 7.0, Anchor::Middle),
        (diagonal, -diagonal - 10.0, Anchor::Start),
        (-diagonal, -diagonal - 10.0, Anchor::End),
    ];
    lettering.place(places.map(|(right, down, anchor)| text("b halo", at.by(right, down), anchor, words)))
}
