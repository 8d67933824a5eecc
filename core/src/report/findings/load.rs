//! Whether the load's middle stands over the deck.
use crate::quantity::{Amount, Length, Phrase};
use crate::report::Report;
use crate::report::finding::{Finding, Grade, Spot};
use crate::report::relations::{least, most};

/// A load whose middle stands past the deck's edge, along or across: nothing keeps it up there, whatever the table carries.
pub(super) fn beside(report: &Report) -> Vec<Finding> {
    let (load, frames) = (&report.design.load, &report.design.frames);
    if load.mass.steps() <= 0 {
        return Vec::new();
    }
    let (left, right) = (frames.deck_left, frames.deck_left + frames.deck_length);
    let half = Length::from_steps(frames.deck_width.steps() / 2);
    let along = (left - load.centre).max(load.centre - right);
    let across = load.across.abs() - half;
    let finding = |past: Length, half: Length, edge: &str, remedy: Phrase| {
        (past > Length::ZERO).then(|| Finding {
            grade: Grade::Over,
            ratio: 1.0 + past.to_m() / half.to_m().max(1e-3),
            phrase: Phrase::new("The load's middle is ")
                .with(Amount::Size(past.to_m()))
                .and(format!(" past the deck's {edge}.")),
            remedy: Some(remedy),
            cure: None,
            height: None,
            spot: Spot::Deck,
            curve: None,
        })
    };
    let ends = Phrase::new("Put it between ")
        .with(least(left))
        .and(" and ")
        .with(most(right))
        .and(" from the fixed pivots, or let the deck reach under it.");
    let sides = Phrase::new("Put it at most ")
        .with(most(half))
        .and(" off the middle, or make the deck at least ")
        .with(least(load.across.abs() * 2))
        .and(" wide.");
    [
        finding(along, Length::from_steps(frames.deck_length.steps() / 2), "edge", ends),
        finding(across, half, "side", sides),
    ]
    .into_iter()
    .flatten()
    .collect()
}
