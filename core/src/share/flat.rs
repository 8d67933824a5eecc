//! Parts and sheets as flat drawings in true scale, for the files that machines and printers read.
//!
//! In millimetres, x along the part or sheet from its datum end, y up from its datum edge.
use crate::parts::{Corner, Form, Part, Purpose, rounded};
use crate::quantity::Length;
use crate::workshop::sheets::{Job, Sheet, sequence};

/// What is done along a line of the drawing: the layer it lies on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Layer {
    /// The blank sheet's edge.
    Blank,
    /// Cut right through, outside the line.
    Outline,
    /// Drilled through.
    Drill,
    /// Countersunk: from this face, or from the other one where this is recessed.
    Countersink,
    /// Cut to a depth, inside the line.
    Housing,
    /// Kept as an offcut.
    Offcut,
    /// Not cut: lettering and centre marks.
    Label,
}

impl Layer {
    /// Every layer.
    pub const ALL: [Self; 7] = [
        Self::Blank,
        Self::Outline,
        Self::Drill,
        Self::Countersink,
        Self::Housing,
        Self::Offcut,
        Self::Label,
    ];

    /// Its name in a file.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Blank => "BLANK",
            Self::Outline => "OUTLINE",
            Self::Drill => "DRILL",
            Self::Countersink => "COUNTERSINK",
            Self::Housing => "HOUSING",
            Self::Offcut => "OFFCUT",
            Self::Label => "LABEL",
        }
    }
}

/// One thing in a flat drawing.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A closed outline.
    Outline(Vec<Corner>),
    /// A circle: middle and radius, mm.
    Circle([f64; 2], f64),
    /// A straight line, mm.
    Line([f64; 2], [f64; 2]),
    /// Lettering from a point on its base line, with its height, mm.
    Text([f64; 2], f64, String),
}

/// A flat drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Flat {
    /// What it shows.
    pub title: String,
    /// Its size, mm.
    pub size: [f64; 2],
    /// What is in it.
    pub shapes: Vec<(Layer, Shape)>,
}

/// Height of lettering, mm: ISO 3098 has 3.5.
const LETTERING: f64 = 3.5;

/// How far a centre mark reaches past its circle, mm.
const PAST: f64 = 3.0;

fn mm(length: Length) -> f64 {
    length.to_mm()
}

fn square(at: [f64; 2], size: [f64; 2]) -> Shape {
    Shape::Outline(rounded(at, size, [0.0; 2]))
}

/// A part from its datum corner: outline, holes with their centre marks, recesses, and its name.
#[must_use]
pub fn part(part: &Part) -> Flat {
    let size = [mm(part.size[0]), mm(part.size[1])];
    let mut shapes = vec![(Layer::Outline, Shape::Outline(part.outline()))];
    for hole in &part.holes {
        let at = [mm(hole.along), mm(hole.across)];
        let radius = mm(hole.diameter) / 2.0;
        shapes.push((Layer::Drill, Shape::Circle(at, radius)));
        if hole.purpose == Purpose::Countersunk {
            shapes.push((Layer::Countersink, Shape::Circle(at, 2.0 * radius)));
        }
        let reach = radius + PAST;
        shapes.push((Layer::Label, Shape::Line([at[0] - reach, at[1]], [at[0] + reach, at[1]])));
        shapes.push((Layer::Label, Shape::Line([at[0], at[1] - reach], [at[0], at[1] + reach])));
    }
    for cut in &part.housings {
        let corner = [mm(cut.along) - mm(cut.length) / 2.0, mm(cut.across) - mm(cut.width) / 2.0];
        shapes.push((Layer::Housing, square(corner, [mm(cut.length), mm(cut.width)])));
        let words = if cut.depth < part.size[2] {
            format!("{} deep, this face", round(mm(cut.depth)))
        } else {
            "right through".to_owned()
        };
        shapes.push((Layer::Label, Shape::Text([corner[0] + 1.0, corner[1] + 1.0], LETTERING, words)));
    }
    let title = format!("{} {}", part.number, part.title());
    let both =
        !part.housings.is_empty() && part.holes.iter().any(|hole| hole.purpose == Purpose::Countersunk);
    let other = if both { ", countersunk from the other face" } else { "" };
    let thick = if part.form == Form::SquareTube { "mm wall" } else { "mm thick" };
    let words = format!("{title}, {} off, {} {thick}{other}", part.count, round(mm(part.size[2])));
    shapes.push((Layer::Label, Shape::Text([0.0, -2.0 * LETTERING], LETTERING, words)));
    Flat { title, size, shapes }
}

/// A sheet with its pieces, their numbers, and the offcuts.
#[must_use]
pub fn sheet(job: &Job, sheet: &Sheet) -> Flat {
    let blank = job.blanks.get(sheet.blank);
    let size = blank.map_or([0.0; 2], |blank| [mm(blank.length), mm(blank.width)]);
    let mut shapes = vec![(Layer::Blank, square([0.0; 2], size))];
    for placed in &sheet.placed {
        let (at, own) = ([mm(placed.x), mm(placed.y)], [mm(placed.length), mm(placed.width)]);
        shapes.push((Layer::Outline, square(at, own)));
        if let Some(piece) = job.pieces.get(placed.piece) {
            let words = format!("{} {}", piece.part, piece.name);
            shapes
                .push((Layer::Label, Shape::Text([at[0] + LETTERING, at[1] + LETTERING], LETTERING, words)));
        }
    }
    for rest in sequence(job, sheet).unwrap_or_default().offcuts {
        shapes.push((Layer::Offcut, square([mm(rest.x), mm(rest.y)], [mm(rest.length), mm(rest.width)])));
    }
    Flat { title: format!("Sheet {} mm thick", round(mm(job.thickness))), size, shapes }
}

/// A number with two decimals at most.
pub(super) fn round(value: f64) -> String {
    let text = format!("{value:.2}");
    let short = text.trim_end_matches('0').trim_end_matches('.');
    if matches!(short, "" | "-0") { "0".into() } else { short.into() }
}
