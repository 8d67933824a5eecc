//! Parts in each other's way.
use crate::mechanics::Pose;
use crate::quantity::{Amount, Phrase, lower};
use crate::report::Report;
use crate::report::finding::{Finding, Grade, Spot};
use crate::workshop::clear;

/// Parts that pass nearer than this are worth a word, m: paint, dirt and a drill that ran off take as much.
const ROOM: f64 = 0.001;

/// Heights of the sweep at which parts are held against each other.
const LOOKS: usize = 9;

/// One finding a pair of parts that overlap, or nearly do.
pub(super) fn clashes(report: &Report) -> Vec<Finding> {
    let last = report.stations.len().saturating_sub(1);
    let poses: Vec<&Pose> = (0..LOOKS).map(|look| &report.stations[last * look / (LOOKS - 1)].pose).collect();
    clear::near(&report.parts, &poses, ROOM)
        .into_iter()
        .map(|pair| {
            let missing = -pair.gap;
            let start = Phrase::new(format!("{} and {}: ", pair.first, lower(&pair.second)));
            let at = |phrase: Phrase| phrase.and(" at deck ").with(Amount::Size(pair.height)).and(".");
            let (grade, phrase, remedy) = if missing > 0.0 {
                (
                    Grade::Over,
                    at(start.with(Amount::GiveAtLeast(missing)).and(" are missing between them")),
                    Phrase::new("Move or slim one of them by as much, and ")
                        .with(Amount::Slack(ROOM))
                        .and(" to spare."),
                )
            } else {
                (
                    Grade::Watch,
                    at(start.and("only ").with(Amount::GiveAtMost(pair.gap)).and(" between them")),
                    Phrase::new("Keep to the sizes here, or give them ")
                        .with(Amount::Slack(ROOM))
                        .and(" more."),
                )
            };
            Finding {
                grade,
                ratio: 1.0 + missing / ROOM / 100.0,
                phrase,
                remedy: Some(remedy),
                cure: None,
                height: Some(pair.height),
                spot: Spot::Arms,
                curve: None,
            }
        })
        .collect()
}
