//! A sheet with its pieces, kerfs and offcuts.
use super::Drawn;
use super::hatch::hatch;
use super::piece::{Said, letter};
use crate::design::Cutting;
use crate::drawing::dimension::{Dimension, extension};
use crate::drawing::face::Measure;
use crate::drawing::frame::Area;
use crate::drawing::lettering::{Lettering, text};
use crate::drawing::mark::{Anchor, Mark};
use crate::drawing::scale::Screen;
use crate::quantity::{Length, System, figures};
use crate::workshop::sheets::{Cut, Job, Offcut, Pass, Sheet};

/// Room for the dimensions beside and above the sheet, and free beyond its other edges, px.
const DIMENSIONS: f64 = 34.0;
const FREE: f64 = 4.0;
/// From the sheet to the dimension lines, px.
const LINE: f64 = 14.0;

/// What a sheet's figure is drawn from.
#[derive(Clone, Copy)]
pub struct Panel<'a> {
    /// What is cut.
    pub job: &'a Job,
    /// The sheet with its pieces.
    pub sheet: &'a Sheet,
    /// Its cuts, whose numbers stand on it from 1; none for a router, or where there is no room for them.
    pub passes: &'a [Pass],
    /// Its offcuts.
    pub offcuts: &'a [Offcut],
    /// Units of the sizes in it.
    pub system: System,
    /// Whether the sheet stands on its width, for a narrow page.
    pub upright: bool,
}

/// A rectangle of the sheet, mm: left end, lower edge, length, width.
type Patch = [Length; 4];

/// How the sheet lies on paper.
struct Lie {
    upright: bool,
    per_mm: f64,
    corner: Screen,
    /// Length and width of the sheet, mm.
    whole: [f64; 2],
}

impl Lie {
    fn at(&self, x: f64, y: f64) -> Screen {
        let [right, up, height] =
            if self.upright { [self.whole[1] - y, x, self.whole[0]] } else { [x, y, self.whole[1]] };
        self.corner.by(right * self.per_mm, (height - up) * self.per_mm)
    }

    fn area(&self, [x, y, length, width]: Patch) -> Area {
        let from = self.at(x.to_mm(), y.to_mm());
        let to = self.at((x + length).to_mm(), (y + width).to_mm());
        Area::between([from.x, to.x], [from.y, to.y])
    }
}

fn rect(class: &'static str, area: &Area) -> Mark {
    Mark::rect(class, Screen::new(area.x, area.y), area.width, area.height)
}

/// The sheet on paper so many px wide; nothing where the job does not know it or it has no size.
#[must_use]
pub fn panel(of: &Panel<'_>, width: f64, measure: Measure<'_>) -> Drawn {
    let Some(blank) = of.job.blanks.get(of.sheet.blank) else { return Drawn::default() };
    let whole = [blank.length.to_mm(), blank.width.to_mm()];
    let [level, rise] = if of.upright { [whole[1], whole[0]] } else { whole };
    if !(level > 0.0 && rise > 0.0) {
        return Drawn::default();
    }
    let per_mm = (width - DIMENSIONS - FREE).max(1.0) / level;
    let lie = Lie { upright: of.upright, per_mm, corner: Screen::new(DIMENSIONS, DIMENSIONS), whole };
    let height = rise * per_mm + DIMENSIONS + FREE;
    let paper = Area { x: 0.0, y: 0.0, width, height };
    let mut lettering = Lettering::new(measure, paper);
    let mut marks = Vec::new();
    let room = of.job.room(*blank);
    let trimmed: Patch = [of.job.trim, of.job.trim, room[0], room[1]];
    let sheet = lie.area([Length::ZERO, Length::ZERO, blank.length, blank.width]);
    marks.push(rect("w sheet", &sheet));
    marks.extend(waste(of, &lie, trimmed));
    let mut lettered = Vec::new();
    for placed in &of.sheet.placed {
        let patch = [placed.x, placed.y, placed.length, placed.width];
        let area = lie.area(patch);
        marks.push(rect("n ply", &area));
        let Some(piece) = of.job.pieces.get(placed.piece) else { continue };
        let size = sides([piece.length, piece.width], of.system);
        // Grain that matters runs along the sheet.
        let grain = (!piece.may_turn).then_some(of.upright);
        lettered.extend(letter(&mut lettering, &area, &Said { number: piece.part, size: &size, grain }));
    }
    for rest in of.offcuts {
        let area = lie.area([rest.x, rest.y, rest.length, rest.width]);
        lettered.extend(offcut(&mut lettering, &area, &sides([rest.length, rest.width], of.system)));
    }
    for (pass, number) in of.passes.iter().zip(1_usize..) {
        for cut in &pass.firsts {
            lettered.push(cut_number(&mut lettering, &lie, cut, number));
        }
    }
    marks.extend(lettered);
    marks.extend(outer(&mut lettering, &sheet, whole.map(Length::mm), of));
    Drawn { width, height, marks }
}

/// What becomes no piece: offcuts of a saw one by one, of a router all that lies around the pieces, a bit's width off them.
fn waste(of: &Panel<'_>, lie: &Lie, trimmed: Patch) -> Vec<Mark> {
    let mut marks = Vec::new();
    if of.job.cutting == Cutting::Free {
        let area = lie.area(trimmed);
        marks.push(Mark::path("hatch", hatch(&area)));
        for placed in &of.sheet.placed {
            let kerf = of.job.kerf;
            let around =
                [placed.x - kerf, placed.y - kerf, placed.length + kerf * 2, placed.width + kerf * 2];
            marks.push(rect("sheet", &lie.area(around)));
        }
    }
    for rest in of.offcuts {
        let area = lie.area([rest.x, rest.y, rest.length, rest.width]);
        marks.push(Mark::path("hatch", hatch(&area)));
        marks.push(rect("offcut", &area));
    }
    marks.push(rect("trim", &lie.area(trimmed)));
    marks
}

/// The size of an offcut where it has room.
fn offcut(lettering: &mut Lettering<'_>, area: &Area, size: &str) -> Option<Mark> {
    let class = "dt halo";
    let (middle, room) = (
        Screen::new(area.x + area.width / 2.0, area.y + area.height / 2.0),
        lettering.width(class, size) + 8.0,
    );
    if area.width >= room && area.height >= 16.0 {
        Some(lettering.set(text(class, middle.by(0.0, 4.0), Anchor::Middle, size)))
    } else if area.height >= room && area.width >= 16.0 {
        Some(lettering.set(crate::drawing::dimension::upright(
            class,
            middle.by(4.0, 0.0),
            Anchor::Middle,
            size,
        )))
    } else {
        None
    }
}

/// The number of a cut on its line, where nothing else stands.
fn cut_number(lettering: &mut Lettering<'_>, lie: &Lie, cut: &Cut, number: usize) -> Mark {
    const PLACES: [f64; 9] = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9, 0.04, 0.96];
    let (x, y) = (cut.from.x.to_mm(), cut.from.y.to_mm());
    let (length, width) = (cut.from.length.to_mm(), cut.from.width.to_mm());
    let at = cut.at.to_mm();
    let ends = if cut.across {
        [lie.at(at, y), lie.at(at, y + width)]
    } else {
        [lie.at(x, at), lie.at(x + length, at)]
    };
    let words = number.to_string();
    lettering.place(PLACES.map(|share| {
        let on = ends[0].vector().lerp(ends[1].vector(), share);
        text("cut q halo", Screen::from(on).by(0.0, 4.0), Anchor::Middle, &words)
    }))
}

/// Length and width of the sheet.
fn outer(
    lettering: &mut Lettering<'_>,
    sheet: &Area,
    [length, width]: [Length; 2],
    of: &Panel<'_>,
) -> Vec<Mark> {
    let sides = if of.upright {
        [("width", width), ("length", length)]
    } else {
        [("length", length), ("width", width)]
    };
    let [level, rise] = sides.map(|(word, side)| (word, figures::marked(side, of.system).number));
    let (x, y) = (sheet.x - LINE, sheet.y - LINE);
    let mut marks: Vec<Mark> = [sheet.x, sheet.right()]
        .map(|x| extension(Screen::new(x, sheet.y - 4.0), Screen::new(x, y - 6.0)))
        .into_iter()
        .chain(
            [sheet.y, sheet.bottom()]
                .map(|y| extension(Screen::new(sheet.x - 4.0, y), Screen::new(x - 6.0, y))),
        )
        .collect();
    marks.extend(whole(level.0, &level.1).level(lettering, y, [sheet.x, sheet.right()]));
    marks.extend(whole(rise.0, &rise.1).vertical(lettering, x, [sheet.y, sheet.bottom()]));
    marks
}

const fn whole<'a>(word: &'a str, number: &'a str) -> Dimension<'a> {
    Dimension { word, number, live: false, always: true, words_below: false }
}

/// Two sides as one reads them, without a unit.
fn sides([length, width]: [Length; 2], system: System) -> String {
    format!("{} × {}", figures::marked(length, system).number, figures::marked(width, system).number)
}
