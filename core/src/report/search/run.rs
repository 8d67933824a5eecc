//! The search itself, in slices: a batch of rough looks, then the most promising of them judged to the end, and so on.
use super::figures::Figures;
use super::front::Front;
use super::judge::{Fault, Trial, lean, look, sketch, weigh};
use super::space::Space;
use super::targets::{Measure, Targets};
use std::collections::{BTreeMap, BTreeSet};

/// What a run looks for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Aim {
    /// All tables within the limits of which none beats another.
    Front,
    /// The least a figure can be while all other limits hold.
    Least(Measure),
    /// The table that passes its limits by least, all taken together.
    Nearest,
}

impl Aim {
    /// What shall be least.
    fn goal(self, figures: &Figures, targets: &Targets) -> f64 {
        match self {
            Self::Front => figures.weighed(targets),
            Self::Least(measure) => figures.of(measure),
            Self::Nearest => figures.excess(targets),
        }
    }

    /// The limit that is passed, if it counts.
    fn over(self, figures: &Figures, targets: &Targets) -> Option<Measure> {
        let freed = |measure: &Measure| match self {
            Self::Front => false,
            Self::Least(freed) => *measure == freed,
            Self::Nearest => true,
        };
        figures.over(targets).find(|measure| !freed(measure))
    }
}

/// Rough looks between two tables that are judged to the end.
const BATCH: usize = 24;

/// Combinations sketched in a slice.
const SKETCHES: usize = 256;

/// Rough looks in a slice.
const LOOKS: usize = 4;

/// What a missed wish weighs against the figures themselves, in the order of work.
const WISHES: f64 = 4.0;

/// 2^32 over the golden ratio.
const SPREAD: u64 = 2_654_435_761;

/// A combination on its way.
#[derive(Clone, Copy, Debug)]
struct Entry {
    at: usize,
    bounds: Figures,
    /// Whether its sideways give was looked at.
    leant: bool,
}

/// Order of work: the smaller first, and of those that are alike the one that comes first in the space.
type Rank = (u64, usize);

/// A run over a space for one aim. The same targets and space give the same steps on every machine.
pub(super) struct Run {
    pub space: Space,
    pub targets: Targets,
    aim: Aim,
    /// Combinations that are sketched: all below this.
    sketched: usize,
    /// Sketched, not looked at.
    rough: BTreeSet<Rank>,
    bounds: BTreeMap<usize, Figures>,
    /// Looked at, not judged.
    near: BTreeMap<Rank, Entry>,
    looked: usize,
    trial: Option<(usize, Trial)>,
    /// What was found.
    pub front: Front,
    /// The least found, where one table is looked for, and its figures.
    pub least: Option<(f64, usize, Figures)>,
    /// Combinations that are done with.
    pub settled: usize,
    /// Tables judged to the end or to a fault of the full analysis.
    pub judged: usize,
    /// Why combinations were ruled out.
    pub faults: BTreeMap<Fault, usize>,
    /// Combinations left out because a table that was kept is as good at least.
    pub beaten: usize,
}

impl Run {
    pub fn new(targets: &Targets, space: &Space, aim: Aim) -> Self {
        Self {
            space: space.clone(),
            targets: targets.clone(),
            aim,
            sketched: 0,
            rough: BTreeSet::new(),
            bounds: BTreeMap::new(),
            near: BTreeMap::new(),
            looked: 0,
            trial: None,
            front: Front::default(),
            least: None,
            settled: 0,
            judged: 0,
            faults: BTreeMap::new(),
            beaten: 0,
        }
    }

    /// A slice of work; whether there is more to do.
    pub fn advance(&mut self) -> bool {
        if self.sketched < self.space.len() {
            self.sketch();
        } else if self.trial.is_some() {
            self.judge();
        } else if !self.rough.is_empty() && (self.looked < BATCH || self.near.is_empty()) {
            self.look();
        } else if let Some((rank, entry)) = self.near.pop_first() {
            self.begin(rank, entry);
        } else {
            return false;
        }
        true
    }

    fn rank(&self, at: usize, bounds: &Figures) -> Rank {
        let missed = if self.aim == Aim::Front { bounds.missed(&self.targets) } else { 0.0 };
        let worth = self.aim.goal(bounds, &self.targets) + WISHES * missed;
        // Positive floats keep their order as bits.
        (worth.max(0.0).to_bits(), at)
    }

    /// When a sketch is looked at. A front is looked for all over the space at once, so that something good is known soon; the order is
    /// that of multiples of a constant (D. E. Knuth, The Art of Computer Programming 3, section 6.4, multiplicative hashing).
    fn turn(&self, at: usize, bounds: &Figures) -> Rank {
        match self.aim {
            Aim::Front => ((at as u64).wrapping_mul(SPREAD) & 0xFFFF_FFFF, at),
            Aim::Least(_) | Aim::Nearest => self.rank(at, bounds),
        }
    }

    fn sketch(&mut self) {
        let end = (self.sketched + SKETCHES).min(self.space.len());
        for at in self.sketched..end {
            let Some(choice) = self.space.choice(at) else { continue };
            match sketch(&choice, &self.targets) {
                Ok((_, bounds)) => {
                    if !self.rule_out(at, &bounds) {
                        self.rough.insert(self.turn(at, &bounds));
                        self.bounds.insert(at, bounds);
                    }
                }
                Err(fault) => self.drop(fault),
            }
        }
        self.sketched = end;
    }

    fn drop(&mut self, fault: Fault) {
        *self.faults.entry(fault).or_default() += 1;
        self.settled += 1;
    }

    /// Settles a combination whose bounds say already that it cannot be wanted.
    fn rule_out(&mut self, at: usize, bounds: &Figures) -> bool {
        if let Some(measure) = self.aim.over(bounds, &self.targets) {
            self.drop(Fault::Over(measure));
            return true;
        }
        let beaten = match self.aim {
            Aim::Front => self.front.beats(at, bounds),
            Aim::Least(_) | Aim::Nearest => {
                let goal = self.aim.goal(bounds, &self.targets);
                self.least.is_some_and(|(least, first, _)| (least, first) <= (goal, at))
            }
        };
        if beaten {
            self.beaten += 1;
            self.settled += 1;
        }
        beaten
    }

    fn look(&mut self) {
        for _ in 0..LOOKS {
            let Some((_, at)) = self.rough.pop_first() else { break };
            self.looked += 1;
            let Some(mut bounds) = self.bounds.remove(&at) else { continue };
            if self.rule_out(at, &bounds) {
                continue;
            }
            let Some(Ok((design, _))) = self.space.choice(at).map(|choice| sketch(&choice, &self.targets))
            else {
                continue;
            };
            weigh(&design, &mut bounds);
            if self.rule_out(at, &bounds) {
                continue;
            }
            match look(&design, &mut bounds) {
                Err(fault) => self.drop(fault),
                Ok(()) if self.rule_out(at, &bounds) => {}
                Ok(()) => {
                    self.near.insert(self.rank(at, &bounds), Entry { at, bounds, leant: false });
                }
            }
        }
    }

    /// The most promising: its sideways give first, then the whole.
    fn begin(&mut self, rank: Rank, mut entry: Entry) {
        let at = entry.at;
        if self.rule_out(at, &entry.bounds) {
            return;
        }
        let Some(Ok((design, _))) = self.space.choice(at).map(|choice| sketch(&choice, &self.targets)) else {
            return;
        };
        if entry.leant {
            self.looked = 0;
            self.trial = Some((at, Trial::new(design, &self.targets)));
            return;
        }
        match lean(&design, &mut entry.bounds) {
            Err(fault) => self.drop(fault),
            Ok(()) if self.rule_out(at, &entry.bounds) => {}
            Ok(()) => {
                entry.leant = true;
                let worth = self.rank(at, &entry.bounds).max(rank);
                self.near.insert(worth, entry);
            }
        }
    }

    fn judge(&mut self) {
        let Some((at, trial)) = &mut self.trial else { return };
        let at = *at;
        let outcome = trial.advance();
        let known = *trial.known();
        match outcome {
            Err(fault) => {
                self.trial = None;
                self.judged += 1;
                self.drop(fault);
            }
            Ok(None) => {
                if self.rule_out(at, &known) {
                    self.trial = None;
                    self.judged += 1;
                }
            }
            Ok(Some(figures)) => {
                self.trial = None;
                self.judged += 1;
                if self.rule_out(at, &figures) {
                    return;
                }
                self.settled += 1;
                match self.aim {
                    Aim::Front => self.front.take(at, figures),
                    Aim::Least(_) | Aim::Nearest => {
                        self.least = Some((self.aim.goal(&figures, &self.targets), at, figures));
                    }
                }
            }
        }
    }

    /// Whether nothing is left to do.
    pub fn is_done(&self) -> bool {
        self.settled >= self.space.len()
    }

    /// The share of the combinations that are done with.
    pub fn progress(&self) -> f64 {
        if self.space.is_empty() { 1.0 } else { self.settled as f64 / self.space.len() as f64 }
    }
}
