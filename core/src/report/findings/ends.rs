//! What holds a screw that hangs between two points.
use crate::quantity::Phrase;
use crate::report::Report;
use crate::report::finding::{Finding, Grade, Spot};

/// That nothing here holds its ends.
pub(super) fn left(report: &Report) -> Option<Finding> {
    Some(Finding {
        grade: Grade::Watch,
        ratio: 1.0,
        phrase: report.ends_left()?,
        remedy: Some(Phrase::new(
            "Size the pins for shear and bending and the wood around them for their pressure; of a screw in the base or under the deck both ends are worked out.",
        )),
        cure: None,
        height: None,
        spot: Spot::Screw,
        curve: None,
    })
}
