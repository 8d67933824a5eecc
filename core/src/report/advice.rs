//! What would help, found by trying it: the design is changed and computed again, nothing is guessed.
use super::{Station, reach, worse_share};
use crate::design::{Design, DriveKind};
use crate::mechanics::{Solver, idealise};
use crate::quantity::{Amount, Count, Length, Phrase};

/// A change worth trying, with the words for it.
pub(super) struct Trial {
    /// What is changed, as the beginning of a sentence.
    pub words: Phrase,
    /// The design after it.
    pub design: Design,
}

impl Trial {
    fn new(design: &Design, words: Phrase, change: impl FnOnce(&mut Design)) -> Self {
        let mut design = design.clone();
        change(&mut design);
        Self { words, design }
    }
}

/// The table of a design at one deck height, m; none where it cannot stand there.
pub(super) fn station(design: &Design, height: f64) -> Option<Station> {
    reach(design).ok()?;
    let solver = Solver::new(&idealise(design).ok()?).ok()?;
    Station::new(&solver, height, worse_share(design), false).ok()
}

/// The trial with the least of a figure at a height, and that figure; none where no trial can stand.
pub(super) fn best(
    trials: Vec<Trial>,
    height: f64,
    figure: impl Fn(&Station) -> f64,
) -> Option<(Trial, f64)> {
    trials
        .into_iter()
        .filter_map(|trial| {
            let value = figure(&station(&trial.design, height)?);
            Some((trial, value))
        })
        .min_by(|one, other| one.1.total_cmp(&other.1))
}

/// The usual remedies for sag, each a step a builder would take.
pub(super) fn against_sag(design: &Design) -> Vec<Trial> {
    let wider = |length: Length, by: f64| Length::mm((length.to_mm() * by / 5.0).ceil() * 5.0);
    let size = |length: Length| Amount::Size(length.to_m());
    let bar = wider(design.drive.cross_bar, 1.2);
    let bush = Length::mm((design.running.bush.to_mm() * 1.25).ceil());
    let width = wider(design.arms.width, 1.2);
    let mut trials = vec![
        Trial::new(design, Phrase::new("A cross-bar ").with(size(bar)).and(" square"), |d| {
            d.drive.cross_bar = bar;
        }),
        Trial::new(design, Phrase::new("Bushings ").with(size(bush)).and(" wide"), |d| d.running.bush = bush),
        Trial::new(design, Phrase::new("Arms ").with(size(width)).and(" wide"), |d| d.arms.width = width),
        Trial::new(design, Phrase::new("One layer more in the arms"), |d| {
            d.arms.layers = Count::of(d.arms.layers.get() + 1);
        }),
    ];
    if matches!(design.drive.kind, DriveKind::BaseCarriage | DriveKind::TopCarriage) {
        let tube = wider(design.drive.anchor_bar, 1.2);
        let words = Phrase::new("A bearing tube ").with(size(tube)).and(" square");
        trials.push(Trial::new(design, words, |d| d.drive.anchor_bar = tube));
    }
    trials
}
