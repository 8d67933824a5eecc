//! Pieces laid out on sheets.
use super::job::{Blank, Job};
use crate::quantity::Length;

/// A piece in its place on a sheet. Places are from the lower left corner of the untrimmed sheet, x along its length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placed {
    /// Place of the piece in the job's list.
    pub piece: usize,
    /// From the left end.
    pub x: Length,
    /// From the lower edge.
    pub y: Length,
    /// Its size along the sheet as it lies.
    pub length: Length,
    /// Its size across the sheet as it lies.
    pub width: Length,
    /// Whether it lies with its length across the sheet.
    pub turned: bool,
}

/// What is left over: a rectangle that can be kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Offcut {
    /// From the left end.
    pub x: Length,
    /// From the lower edge.
    pub y: Length,
    /// Its size along the sheet.
    pub length: Length,
    /// Its size across the sheet.
    pub width: Length,
}

/// One sheet with what is cut from it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// Place of the sheet's kind in the job's list.
    pub blank: usize,
    /// Its pieces.
    pub placed: Vec<Placed>,
}

/// Every piece on sheets, as far as they fit.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Layout {
    /// The sheets that are used, offcuts first.
    pub sheets: Vec<Sheet>,
    /// Pieces larger than any sheet, or beyond the sheets at hand.
    pub left: Vec<usize>,
}

impl Layout {
    /// How many sheets must be bought.
    #[must_use]
    pub fn bought(&self, job: &Job) -> usize {
        let is_bought =
            |sheet: &&Sheet| job.blanks.get(sheet.blank).is_some_and(|blank| blank.count.is_none());
        self.sheets.iter().filter(is_bought).count()
    }

    /// Area of the sheets in use, m2.
    #[must_use]
    pub fn sheet_area(&self, job: &Job) -> f64 {
        let area = |blank: &Blank| blank.length.to_m() * blank.width.to_m();
        self.sheets.iter().filter_map(|sheet| job.blanks.get(sheet.blank)).map(area).sum()
    }

    /// What of the sheets in use becomes no piece, offcuts and kerf included, as a share; zero where none is used.
    #[must_use]
    pub fn waste(&self, job: &Job) -> f64 {
        let used: f64 = self
            .sheets
            .iter()
            .flat_map(|sheet| &sheet.placed)
            .map(|placed| placed.length.to_m() * placed.width.to_m())
            .sum();
        let whole = self.sheet_area(job);
        if whole > 0.0 { 1.0 - used / whole } else { 0.0 }
    }
}
