//! What would have to give where nothing keeps all limits: one limit at a time is dropped while the others stay, and the least that does is
//! looked for in the same space.
use super::figures::Figures;
use super::run::{Aim, Run};
use super::space::Space;
use super::targets::{Measure, Stance, Targets};
use crate::design::Design;
use crate::quantity::Length;

/// A limit that can be loosened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Loose {
    /// The most that is accepted of a figure.
    Most(Measure),
    /// A lowest deck that stands higher.
    Lowest,
    /// A highest deck that stands lower.
    Highest,
    /// A longer deck.
    DeckLength,
}

/// A way out: one limit, and by how much it must be loosened.
#[derive(Clone, Debug)]
pub struct WayOut {
    /// The limit.
    pub loose: Loose,
    /// As it was asked for: N, turns, m, kg, sheets or money, as in [`Measure`]; m for heights and the deck.
    pub asked: f64,
    /// As it would do, in the same unit.
    pub needed: f64,
    /// A table that keeps everything else.
    pub design: Box<Design>,
    /// Its figures.
    pub figures: Figures,
}

/// Heights that are limits are loosened by one of these steps, mm.
pub const RUNGS: [f64; 6] = [10.0, 20.0, 35.0, 60.0, 100.0, 160.0];

/// One question: the targets and the space in which it is asked, and what is looked for.
pub(super) struct Question {
    loose: Option<Loose>,
    /// Whether only the largest step is tried, to see whether there is any use in the smaller ones.
    probe: bool,
    pub run: Run,
}

/// Every limit of some targets.
pub(super) fn limits(targets: &Targets) -> Vec<Loose> {
    let mut list: Vec<Loose> = [
        (targets.lowest.stance, Loose::Lowest),
        (targets.highest.stance, Loose::Highest),
        (targets.deck_length.stance, Loose::DeckLength),
    ]
    .into_iter()
    .filter(|(stance, _)| *stance == Stance::Limit)
    .map(|(_, loose)| loose)
    .collect();
    list.extend(
        Measure::ALL.into_iter().filter(|measure| targets.limit(*measure).is_some()).map(Loose::Most),
    );
    list
}

impl Question {
    /// Whether loosening one limit alone would do.
    pub fn one(loose: Loose, targets: &Targets, space: &Space) -> Self {
        Self::new(loose, !matches!(loose, Loose::Most(_)), targets, space)
    }

    /// Which table passes its limits by least.
    pub fn nearest(targets: &Targets, space: &Space) -> Self {
        Self { loose: None, probe: false, run: Run::new(targets, space, Aim::Nearest) }
    }

    fn new(loose: Loose, probe: bool, targets: &Targets, space: &Space) -> Self {
        let (mut targets, mut space) = (targets.clone(), space.clone());
        let rungs = |from: Length, way: f64| -> Vec<Length> {
            let last = RUNGS.len() - 1;
            let steps = if probe { &RUNGS[last..] } else { &RUNGS[..] };
            steps.iter().map(|step| from + Length::mm(way * step)).collect()
        };
        let aim = match loose {
            Loose::Most(measure) => Aim::Least(measure),
            Loose::Lowest => {
                space.lowest = rungs(targets.lowest.value, 1.0);
                Aim::Least(Measure::Height)
            }
            Loose::Highest => {
                space.highest = rungs(targets.highest.value, -1.0);
                Aim::Least(Measure::Height)
            }
            Loose::DeckLength => {
                targets.deck_length.stance = Stance::Wish;
                Aim::Least(Measure::Deck)
            }
        };
        let probe = probe && loose != Loose::DeckLength;
        Self { loose: Some(loose), probe, run: Run::new(&targets, &space, aim) }
    }

    /// Once its run is over: the smaller steps, where the largest would do.
    pub fn closer(&self, targets: &Targets, space: &Space) -> Option<Self> {
        let loose = self.loose?;
        (self.probe && self.run.least.is_some()).then(|| Self::new(loose, false, targets, space))
    }

    /// Once its run is over: the way out, if there is one.
    pub fn answer(&self) -> Option<WayOut> {
        let ((_, at, figures), loose) = (self.run.least?, self.loose?);
        let design = self.run.space.choice(at)?.design(&self.run.targets).ok()?;
        let targets = &self.run.targets;
        let (asked, needed) = match loose {
            Loose::Most(measure) => (targets.of(measure).value, figures.of(measure)),
            Loose::Lowest => (targets.lowest.value.to_m(), design.lift.lowest.to_m()),
            Loose::Highest => (targets.highest.value.to_m(), design.lift.highest.to_m()),
            Loose::DeckLength => (targets.deck_length.value.to_m(), design.frames.deck_length.to_m()),
        };
        Some(WayOut { loose, asked, needed, design: Box::new(design), figures })
    }

    /// Once its run is over: the table that comes nearest.
    pub fn nearest_table(&self) -> Option<(Design, Figures)> {
        let (_, at, figures) = self.run.least?;
        Some((self.run.space.choice(at)?.design(&self.run.targets).ok()?, figures))
    }
}
