//! Whether the wooden parts can come off one sheet, by their area alone.
use crate::design::Design;
use crate::parts::{Part, parts};
use crate::quantity::{Amount, Length, Phrase};
use crate::report::Report;
use crate::report::finding::{Finding, Grade, Spot};

/// Above this share of the sheet, kerf and odd offcuts usually decide (common practice, no source).
const TIGHT: f64 = 0.9;

/// What a tenth off the arms' width and off the deck's would bring, tried out.
fn slimmer(report: &Report, sheet: f64) -> Phrase {
    let share = |design: &Design| parts(design).iter().map(Part::sheet_area).sum::<f64>() / sheet;
    let less = |length: Length| Length::mm((0.9 * length.to_mm()).floor());
    let (mut arms, mut deck) = (report.design.clone(), report.design.clone());
    arms.arms.width = less(arms.arms.width);
    deck.frames.deck_width = less(deck.frames.deck_width);
    Phrase::new("Arms ")
        .with(Amount::Size(arms.arms.width.to_m()))
        .and(" wide take ")
        .with(Amount::Share(share(&arms)))
        .and(", a deck ")
        .with(Amount::Size(deck.frames.deck_width.to_m()))
        .and(" wide ")
        .with(Amount::Share(share(&deck)))
}

/// The parts' area against the sheet's. A layout may still not exist: this is the first sieve.
pub(super) fn area(report: &Report) -> Finding {
    let taken: f64 = report.parts.iter().map(Part::sheet_area).sum();
    let sheet = report.design.shop.sheet_length.to_m() * report.design.shop.sheet_width.to_m();
    let share = taken / sheet;
    let grade = if share > 1.0 {
        Grade::Over
    } else if share > TIGHT {
        Grade::Watch
    } else {
        Grade::Fine
    };
    let start = Phrase::new("Sheet: the wooden parts take ")
        .with(Amount::Area(taken))
        .and(" of ")
        .with(Amount::Area(sheet))
        .and(", ")
        .with(Amount::Share(share));
    let (phrase, remedy) = match grade {
        Grade::Over => (
            start.and(": more than one sheet."),
            Some(slimmer(report, sheet).and("; or take a second sheet.")),
        ),
        Grade::Watch => (
            start.and(": too full for kerf and offcuts."),
            Some(
                slimmer(report, sheet)
                    .and("; below ")
                    .with(Amount::Share(TIGHT))
                    .and(" a layout is usually found."),
            ),
        ),
        Grade::Fine => (start.and(" before kerf and offcuts."), None),
    };
    Finding { grade, ratio: share, phrase, remedy, cure: None, height: None, spot: Spot::Deck, curve: None }
}
