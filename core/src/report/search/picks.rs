//! A few of many: the table that is best at each thing, and the one that is good all round.
use super::front::{Front, Kept};
use super::targets::{Measure, Targets};

/// What a proposal is picked for.
#[derive(Clone, Debug, PartialEq)]
pub struct Pick {
    /// The table.
    pub kept: Kept,
    /// What it is the best of all at; empty where it is picked because it is good all round.
    pub best: Vec<Measure>,
    /// In what it is farthest behind the best of those picked; none where it is behind in nothing.
    pub worst: Option<Measure>,
    /// Whether it is the one that is good all round, wishes first.
    pub all_round: bool,
}

/// Figures for which a table is picked, the ones that builders ask for first in front.
const WANTED: [Measure; 9] = [
    Measure::Crank,
    Measure::Turns,
    Measure::Sag,
    Measure::Give,
    Measure::Weight,
    Measure::Cost,
    Measure::Area,
    Measure::Height,
    Measure::Deck,
];

/// The tables that are best at something, good all round first; at most `most` of them.
pub(super) fn picks(front: &Front, targets: &Targets, most: usize) -> Vec<Pick> {
    let kept = front.kept();
    let worth = |one: &&Kept| (one.figures.missed(targets), one.figures.weighed(targets));
    let order = |one: &&Kept, other: &&Kept| {
        let (one, other) = (worth(one), worth(other));
        one.0.total_cmp(&other.0).then(one.1.total_cmp(&other.1))
    };
    let Some(all_round) = kept.iter().min_by(order) else { return Vec::new() };
    let mut list: Vec<&Kept> = vec![all_round];
    for measure in WANTED {
        let figure = |one: &Kept| one.figures.steps()[measure.at()];
        let least = kept.iter().map(figure).min().unwrap_or_default();
        let greatest = kept.iter().map(figure).max().unwrap_or_default();
        if least == greatest || list.iter().any(|one| figure(one) == least) {
            continue;
        }
        let best = kept.iter().filter(|one| figure(one) == least).min_by(order);
        if list.len() < most {
            list.extend(best);
        }
    }
    list.iter()
        .map(|one| Pick {
            kept: (*one).clone(),
            best: WANTED.into_iter().filter(|measure| leads(one, *measure, &list)).collect(),
            worst: behind(one, &list, targets),
            all_round: one.at == all_round.at,
        })
        .collect()
}

/// Whether a table has the least of a figure among those picked, where they differ.
fn leads(one: &Kept, measure: Measure, list: &[&Kept]) -> bool {
    let figure = |one: &Kept| one.figures.steps()[measure.at()];
    list.iter().all(|other| figure(one) <= figure(other))
        && list.iter().any(|other| figure(one) < figure(other))
}

/// The figure in which a table is farthest behind, weighed.
fn behind(one: &Kept, list: &[&Kept], targets: &Targets) -> Option<Measure> {
    let lag = |measure: Measure| {
        let least = list.iter().map(|other| other.figures.of(measure)).fold(f64::INFINITY, f64::min);
        targets.weighed(measure, one.figures.of(measure) - least)
    };
    let worst = WANTED.into_iter().max_by(|one, other| lag(*one).total_cmp(&lag(*other)))?;
    (lag(worst) > 0.05).then_some(worst)
}
