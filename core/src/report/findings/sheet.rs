//! Whether the wooden parts can come off one sheet, by their area alone.
use crate::parts::Part;
use crate::quantity::{Amount, Phrase};
use crate::report::Report;
use crate::report::finding::{Finding, Grade, Spot};

/// Above this share of the sheet, kerf and odd offcuts usually decide (common practice, no source).
const TIGHT: f64 = 0.9;

/// The parts' area against the sheet's. A layout may still not exist: this is the first sieve.
pub(super) fn area(report: &Report) -> Finding {
    let parts: f64 = report.parts.iter().map(Part::sheet_area).sum();
    let sheet = report.design.shop.sheet_length.to_m() * report.design.shop.sheet_width.to_m();
    let share = parts / sheet;
    let grade = if share > 1.0 {
        Grade::Over
    } else if share > TIGHT {
        Grade::Watch
    } else {
        Grade::Fine
    };
    let start = Phrase::new("Sheet: the wooden parts take ")
        .with(Amount::Area(parts))
        .and(" of ")
        .with(Amount::Area(sheet))
        .and(", ")
        .with(Amount::Share(share));
    let (phrase, remedy) = match grade {
        Grade::Over => (
            start.and(": more than one sheet."),
            Some(Phrase::new("Narrower arms or a smaller deck, or a second sheet.")),
        ),
        Grade::Watch => (
            start.and(": too full for kerf and offcuts."),
            Some(Phrase::new("Aim below ").with(Amount::Share(TIGHT)).and(".")),
        ),
        Grade::Fine => (start.and(" before kerf and offcuts."), None),
    };
    Finding { grade, ratio: share, phrase, remedy, height: None, spot: Spot::Deck, curve: None }
}
