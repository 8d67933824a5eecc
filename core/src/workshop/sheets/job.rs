//! What is to be cut, and from what.
use crate::design::{Cutting, Design};
use crate::parts::{Form, Grain, Part};
use crate::quantity::Length;

/// A rectangle to be cut out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// Number of the part it becomes, or a layer of.
    pub part: u32,
    /// Its name.
    pub name: String,
    /// Its length: along the grain where that matters.
    pub length: Length,
    /// Its width.
    pub width: Length,
    /// Whether it may lie across the grain.
    pub may_turn: bool,
}

/// A sheet or offcut at hand, its length along the grain.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Blank {
    /// Its length.
    pub length: Length,
    /// Its width.
    pub width: Length,
    /// How many there are; none where one buys as many as are needed.
    pub count: Option<u32>,
}

/// Pieces of one thickness and the sheets for them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Job {
    /// Thickness of the sheet.
    pub thickness: Length,
    /// What is to be cut.
    pub pieces: Vec<Piece>,
    /// What it is cut from: offcuts first, they cost nothing.
    pub blanks: Vec<Blank>,
    /// Width of the saw's cut.
    pub kerf: Length,
    /// What is cut off all round a sheet first.
    pub trim: Length,
    /// How it is cut.
    pub cutting: Cutting,
}

impl Job {
    /// Room for pieces on a blank, after its edges are trimmed; nothing where the trim leaves none.
    #[must_use]
    pub fn room(&self, blank: Blank) -> [Length; 2] {
        [blank.length, blank.width].map(|side| (side - self.trim * 2).max(Length::ZERO))
    }

    /// Area of all pieces, m2.
    #[must_use]
    pub fn area(&self) -> f64 {
        self.pieces.iter().map(|piece| piece.length.to_m() * piece.width.to_m()).sum()
    }
}

/// What a design's parts ask of sheets: one job a thickness, the thickest first, every layer a piece of its own.
///
/// The offcuts of the design are taken to be of the thickness most is cut from.
#[must_use]
pub fn jobs(design: &Design, parts: &[Part]) -> Vec<Job> {
    let shop = &design.shop;
    let mut jobs: Vec<Job> = Vec::new();
    for part in parts.iter().filter(|part| part.form == Form::Sheet) {
        let pieces = core::iter::repeat_with(|| Piece {
            part: part.number,
            name: part.title(),
            length: part.size[0],
            width: part.size[1],
            may_turn: part.grain == Grain::Free || !shop.keep_grain,
        })
        .take(usize::try_from(part.count * part.layers).unwrap_or(0));
        let thickness = part.layer();
        if let Some(job) = jobs.iter_mut().find(|job| job.thickness == thickness) {
            job.pieces.extend(pieces);
        } else {
            jobs.push(Job {
                thickness,
                pieces: pieces.collect(),
                blanks: vec![Blank { length: shop.sheet_length, width: shop.sheet_width, count: None }],
                kerf: shop.kerf,
                trim: shop.trim,
                cutting: shop.cutting,
            });
        }
    }
    let offcuts = [(shop.offcut_length, shop.offcut_width), (shop.second_length, shop.second_width)]
        .into_iter()
        .filter(|(length, width)| *length > Length::ZERO && *width > Length::ZERO)
        .map(|(length, width)| Blank { length, width, count: Some(1) });
    if let Some(job) = jobs.iter_mut().max_by(|one, other| one.area().total_cmp(&other.area())) {
        job.blanks.splice(0..0, offcuts);
    }
    jobs.sort_by_key(|job| core::cmp::Reverse(job.thickness));
    jobs
}
