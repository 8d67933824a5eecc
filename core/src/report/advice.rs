//! What would help, found by trying it: the design is changed and computed again, nothing is guessed.
use super::trial::Trial;
use super::{Report, Station, reach, worse_share};
use crate::checks::{self, Check, Lever, Verdict};
use crate::design::Design;
use crate::mechanics::{Solver, idealise};
use crate::order::order;
use crate::quantity::Phrase;

/// A step that was tried, and what became of the check.
#[derive(Clone, Debug)]
pub struct Help {
    /// What is changed, as the beginning of a sentence.
    pub words: Phrase,
    /// The check's ratio after it, the worst of the lowest, the highest and the governing height; zero where nothing is left to check.
    pub ratio: f64,
    /// The worst other check that it puts over its limit, by its title; none where all others hold as before.
    pub spoils: Option<&'static str>,
    /// The design after it.
    pub design: Box<Design>,
}

fn solver(design: &Design) -> Option<Solver> {
    Solver::new(&idealise(design).ok()?).ok()
}

/// The table of a design at one deck height, m; none where it cannot stand there.
pub(super) fn station(design: &Design, height: f64) -> Option<Station> {
    reach(design).ok()?;
    sketch(design, height)
}

/// The same without asking whether it can stand at every other height.
fn sketch(design: &Design, height: f64) -> Option<Station> {
    Station::new(&solver(design)?, height, worse_share(design), false).ok()
}

/// The trial with the least of a figure at a height, and that figure; none where no trial can stand.
pub(super) fn best(
    trials: impl Iterator<Item = Trial>,
    height: f64,
    figure: impl Fn(&Station) -> f64,
) -> Option<(Trial, f64)> {
    let mut tried: Vec<(Trial, f64)> = trials
        .filter_map(|trial| {
            let value = figure(&sketch(&trial.design, height)?);
            Some((trial, value))
        })
        .collect();
    order(&mut tried, |one, other| one.1.total_cmp(&other.1));
    tried.into_iter().find(|(trial, _)| reach(&trial.design).is_ok())
}

/// The usual remedies for sag, each a step a builder would take.
pub(super) fn against_sag(design: &Design) -> impl Iterator<Item = Trial> + '_ {
    [Lever::CrossBar, Lever::Bush, Lever::ArmWidth, Lever::ArmLayer, Lever::BearingTube]
        .into_iter()
        .filter_map(|lever| Trial::of(design, lever))
}

/// Every check of a design, each the worst of its lowest, its highest and one height, m; none where the design cannot stand.
fn checks_of(design: &Design, height: f64) -> Option<Vec<Check>> {
    let (low, high) = (design.lift.lowest.to_m(), design.lift.highest.to_m());
    let (solver, share) = (solver(design)?, worse_share(design));
    let stations = [low, height.clamp(low, high), high]
        .into_iter()
        .map(|height| Station::new(&solver, height, share, false))
        .collect::<Result<Vec<_>, _>>()
        .ok()?;
    let levels: Vec<_> = stations.iter().map(Station::level).collect();
    checks::all(design, &solver, &levels, share).ok()
}

impl Report {
    /// Every step worth trying against a check, tried out, the most helpful first. Steps that do not help, or with which the table could not
    /// stand, are left out. Each takes about as long as thirty heights.
    #[must_use]
    pub fn helps(&self, check: &Check) -> Vec<Help> {
        self.tried(check).into_iter().filter(|help| reach(&help.design).is_ok()).collect()
    }

    /// The first of them.
    pub(super) fn first_help(&self, check: &Check) -> Option<Help> {
        self.tried(check).into_iter().find(|help| reach(&help.design).is_ok())
    }

    /// Steps tried at three heights, whether the table could stand in between or not.
    fn tried(&self, check: &Check) -> Vec<Help> {
        let mut helps: Vec<Help> = check
            .levers
            .iter()
            .filter_map(|lever| {
                let trial = Trial::of(&self.design, *lever)?;
                let list = checks_of(&trial.design, check.height)?;
                let ratio = list.iter().find(|other| other.id == check.id).map_or(0.0, |after| after.ratio);
                (ratio < check.ratio).then(|| Help {
                    words: trial.words,
                    ratio,
                    spoils: self.spoilt(&list, check.id),
                    design: Box::new(trial.design),
                })
            })
            .collect();
        order(&mut helps, |one, other| one.ratio.total_cmp(&other.ratio));
        helps
    }

    /// The worst of some checks that is over its limit though it held in this report, one of them left out.
    fn spoilt(&self, list: &[Check], but: &str) -> Option<&'static str> {
        let held = |check: &&Check| {
            check.id != but && self.check(check.id).is_none_or(|before| before.verdict != Verdict::Over)
        };
        list.iter()
            .filter(|check| check.verdict == Verdict::Over)
            .filter(held)
            .max_by(|one, other| one.ratio.total_cmp(&other.ratio))
            .map(|check| check.title)
    }
}
