//! How many sheets a design takes: a search for each thickness, as long as it may still save one.
use crate::quantity::Length;
use crate::report::Report;
use crate::workshop::sheets::{Search, jobs};

/// Layouts tried for a thickness before its number of sheets is taken as it is: three whole coolings of the search.
pub(super) const EFFORT: u64 = 60_000;

/// Layouts tried in a slice, some milliseconds.
const SLICE: u32 = 200;

/// The searches.
pub struct Sawn {
    searches: Vec<Search>,
}

impl Sawn {
    /// The first layouts of a report's parts.
    pub fn new(report: &Report) -> Self {
        Self { searches: jobs(&report.design, &report.parts).iter().map(Search::new).collect() }
    }

    fn is_done(search: &Search) -> bool {
        search.job().pieces.len() < 2 || search.is_least() || search.tried() >= EFFORT
    }

    /// Tries some more layouts; whether a sheet may still be saved.
    pub fn advance(&mut self) -> bool {
        let open = self.searches.iter_mut().find(|search| !Self::is_done(search));
        let Some(search) = open else { return false };
        search.advance(SLICE);
        true
    }

    /// The share that is done, 0 to 1.
    pub fn progress(&self) -> f64 {
        let share = |search: &Search| {
            if Self::is_done(search) { 1.0 } else { search.tried() as f64 / EFFORT as f64 }
        };
        let count = self.searches.len().max(1) as f64;
        self.searches.iter().map(share).sum::<f64>() / count
    }

    /// Thickness and number of the sheets to buy, the thickest first.
    pub fn bought(&self) -> Vec<(Length, usize)> {
        self.searches
            .iter()
            .map(|search| (search.job().thickness, search.best().bought(search.job())))
            .collect()
    }

    /// Pieces that fit on no sheet.
    pub fn left(&self) -> usize {
        self.searches.iter().map(|search| search.best().left.len()).sum()
    }
}
