//! Which way the grain of the deck panel runs.
use crate::design::WoodSort;
use crate::quantity::Phrase;
use crate::report::Report;
use crate::report::finding::{Finding, Grade, Spot};

/// A deck panel of solid wood, or of veneers glued lengthwise, bends across its grain.
pub(super) fn grain(report: &Report) -> Option<Finding> {
    (report.design.strength.sort != WoodSort::Plywood).then(|| Finding {
        grade: Grade::Watch,
        ratio: 1.0,
        phrase: Phrase::new(
            "The deck panel is solid wood with its grain along the table: between its rails it bends across the grain, where it splits.",
        ),
        remedy: Some(Phrase::new(
            "Make the deck of plywood, or of boards laid across the table from rail to rail. The figures here know neither beside arms of solid wood.",
        )),
        cure: None,
        height: None,
        spot: Spot::Deck,
        curve: None,
    })
}
