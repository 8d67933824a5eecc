//! What would stiffen the table: the usual remedies, each tried out on this design.
//!
//! Slow, and therefore made in steps: one step is one remedy at one height, or its free play there.
mod step;

pub use step::Idle;
pub(super) use step::Step;

use super::sway::{Case, LEAST_MULTIPLE, frame, slack, told};
use super::{Progress, Station, Unsound, worse_share};
use crate::checks::{self, Verdict};
use crate::design::Design;
use crate::mechanics::frame3::Frame3;
use crate::mechanics::{Solver, idealise, rattle};
use crate::parts::{Part, Rides, parts};
use crate::quantity::{Amount, Money, Phrase};
use crate::workshop::cost;

/// Heights at which a remedy is tried, from the lowest to the highest deck, even in height.
const LOOKS: usize = 3;

/// A gain below this share is none.
const LEAST_GAIN: f64 = 0.01;

/// How a table stands sideways, by its worst of a few heights.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stand {
    /// The lowest critical load as a multiple of the load, middle stiffnesses; infinite where nothing is critical.
    pub multiple: f64,
    /// The same with the wheels inside the play of their guides.
    pub unguided: f64,
    /// The greatest give under [`super::PUSH`], m.
    pub give: f64,
    /// The greatest free play to either side, upper bound, m.
    pub rattle: f64,
}

impl Stand {
    const NONE: Self = Self { multiple: f64::INFINITY, unguided: f64::INFINITY, give: 0.0, rattle: 0.0 };

    fn with(self, other: Self) -> Self {
        Self {
            multiple: self.multiple.min(other.multiple),
            unguided: self.unguided.min(other.unguided),
            give: self.give.max(other.give),
            rattle: self.rattle.max(other.rattle),
        }
    }
}

/// A remedy that was tried.
#[derive(Clone, Debug)]
pub struct Remedy {
    /// What is changed, as the beginning of a sentence.
    pub words: Phrase,
    /// How the table stands after it.
    pub after: Stand,
    /// How many times the critical load grows.
    pub gain: f64,
    /// What remains of the give: 1 for no gain.
    pub give_left: f64,
    /// What remains of the free play.
    pub rattle_left: f64,
    /// What the table weighs more, kg.
    pub mass: f64,
    /// Sheet it takes more, m2.
    pub sheet: f64,
    /// What it costs more, sheet by its area; none where a price that matters is not known.
    pub cost: Option<Money>,
    /// Titles of the checks that fail with it and not without; looked for where the remedy was tried.
    pub breaks: Vec<&'static str>,
    /// The design after it.
    pub design: Box<Design>,
}

/// What a remedy is wanted for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Goal {
    /// A higher critical load.
    Collapse,
    /// Less give under a push.
    Give,
    /// Less free play.
    Rattle,
}

impl Remedy {
    /// How many times better it makes the table for a goal: 1 for no help, below 1 for harm.
    #[must_use]
    pub fn worth(&self, goal: Goal) -> f64 {
        match goal {
            Goal::Collapse => self.gain,
            Goal::Give => self.give_left.recip(),
            Goal::Rattle => self.rattle_left.recip(),
        }
    }

    /// That it does not help towards a goal.
    fn in_vain(&self, goal: Goal) -> Phrase {
        let what = match goal {
            Goal::Collapse => "the critical load",
            Goal::Give => "the give",
            Goal::Rattle => "the rattle",
        };
        if self.worth(goal) < 1.0 - LEAST_GAIN {
            let after = match goal {
                Goal::Collapse => Amount::Factor(self.after.multiple),
                Goal::Give => Amount::Give(self.after.give),
                Goal::Rattle => Amount::Give(self.after.rattle),
            };
            Phrase::new(format!("makes {what} worse: ")).with(after).and(".")
        } else {
            Phrase::new(format!("tried; it leaves {what} as it is."))
        }
    }
}

/// A design being looked at.
#[derive(Clone, Debug)]
struct Candidate {
    words: Phrase,
    design: Design,
    solver: Option<Solver>,
    stand: Option<Stand>,
    /// The table where it was looked at.
    stations: Vec<Station>,
    /// What is known of it once it was looked at everywhere.
    ends: Option<Ends>,
}

/// What a design takes, and what fails in it.
#[derive(Clone, Debug)]
struct Ends {
    mass: f64,
    sheet: f64,
    cost: Option<Money>,
    over: Vec<&'static str>,
}

/// The search for what would stiffen a design, in steps.
#[derive(Clone, Debug)]
pub struct StiffenRun {
    /// The design itself, then every remedy that can be taken.
    candidates: Vec<Candidate>,
    /// What cannot be taken.
    idle: Vec<Idle>,
    done: usize,
}

impl StiffenRun {
    /// A search for a design, nothing computed yet.
    ///
    /// # Errors
    /// As [`super::SwayRun::new`].
    pub fn new(design: &Design) -> Result<Self, Unsound> {
        super::SwayRun::new(design)?;
        let own = Candidate::new(Phrase::default(), design.clone());
        let mut run = Self { candidates: vec![own], idle: Vec::new(), done: 0 };
        for step in Step::ALL {
            match step.take(design) {
                Ok(trial) => run.candidates.push(Candidate::new(trial.words, trial.design)),
                Err(idle) => run.idle.extend(idle),
            }
        }
        Ok(run)
    }

    /// How far it has come.
    #[must_use]
    pub fn progress(&self) -> Progress {
        Progress { done: self.done, all: self.candidates.len() * LOOKS }
    }

    /// Does so many steps more, or as many as are left. A remedy that cannot be computed is left out of the list.
    pub fn advance(&mut self, steps: usize) -> Progress {
        for _ in 0..steps {
            let own = self.candidates.first().map(|own| own.design.clone());
            let (Some(candidate), Some(own)) = (self.candidates.get_mut(self.done / LOOKS), own) else {
                break;
            };
            let part = (self.done % LOOKS) as f64 / (LOOKS - 1) as f64;
            candidate.stand = candidate.stand.and_then(|stand| Some(stand.with(candidate.look(part)?)));
            self.done += 1;
            if self.done.is_multiple_of(LOOKS) {
                candidate.ends = candidate.end(&own);
            }
        }
        self.progress()
    }

    /// How the design itself stands; none until that is known.
    #[must_use]
    pub fn before(&self) -> Option<Stand> {
        self.candidates.first().filter(|_| self.done >= LOOKS)?.stand
    }

    /// What this design needs most: a higher critical load where it is not high enough, or not with its guides in their play; less give
    /// otherwise. None until it is known.
    #[must_use]
    pub fn need(&self) -> Option<Goal> {
        let before = self.before()?;
        let low = before.multiple.min(before.unguided) < LEAST_MULTIPLE;
        Some(if low { Goal::Collapse } else { Goal::Give })
    }

    /// Every remedy tried so far that helps towards a goal, the most helpful first.
    #[must_use]
    pub fn remedies(&self, goal: Goal) -> Vec<Remedy> {
        let mut list = self.tried();
        list.retain(|remedy| remedy.worth(goal) > 1.0 + LEAST_GAIN);
        list.sort_by(|one, other| other.worth(goal).total_cmp(&one.worth(goal)));
        list
    }

    /// What was looked at so far and does not help towards a goal, and what this design has or cannot have.
    #[must_use]
    pub fn others(&self, goal: Goal) -> Vec<Idle> {
        let unhelpful = self.tried().into_iter().filter(|remedy| remedy.worth(goal) <= 1.0 + LEAST_GAIN);
        let unknown = self.known().filter(|candidate| candidate.stand.is_none());
        unhelpful
            .map(|remedy| Idle { why: remedy.in_vain(goal), words: remedy.words })
            .chain(unknown.map(|candidate| Idle::new(candidate.words.clone(), "cannot be computed.")))
            .chain(self.idle.iter().cloned())
            .collect()
    }

    /// The candidates that were looked at, the design itself left out.
    fn known(&self) -> impl Iterator<Item = &Candidate> {
        self.candidates.iter().take(self.done / LOOKS).skip(1)
    }

    /// What was tried so far, in no order.
    fn tried(&self) -> Vec<Remedy> {
        let own = self.candidates.first().and_then(|own| own.ends.as_ref());
        let Some((before, own)) = self.before().zip(own) else { return Vec::new() };
        self.known()
            .filter_map(|candidate| {
                let (after, ends) = (candidate.stand?, candidate.ends.as_ref()?);
                let gain = after.multiple / before.multiple;
                let breaks = ends.over.iter().filter(|title| !own.over.contains(title));
                Some(Remedy {
                    words: candidate.words.clone(),
                    after,
                    gain: if gain.is_finite() { gain } else { 1.0 },
                    give_left: left(after.give, before.give),
                    rattle_left: left(after.rattle, before.rattle),
                    mass: ends.mass - own.mass,
                    sheet: ends.sheet - own.sheet,
                    cost: ends.cost,
                    breaks: breaks.copied().collect(),
                    design: Box::new(candidate.design.clone()),
                })
            })
            .collect()
    }
}

/// What is left of a figure, 1 where there was none.
fn left(after: f64, before: f64) -> f64 {
    if before > 0.0 { after / before } else { 1.0 }
}

impl Candidate {
    fn new(words: Phrase, design: Design) -> Self {
        Self { words, design, solver: None, stand: Some(Stand::NONE), stations: Vec::new(), ends: None }
    }

    /// How it stands at a part of its lift; none where it cannot be computed.
    fn look(&mut self, part: f64) -> Option<Stand> {
        if self.solver.is_none() {
            self.solver = Solver::new(&idealise(&self.design).ok()?).ok();
        }
        let solver = self.solver.as_ref()?;
        let (low, high) = (self.design.lift.lowest.to_m(), self.design.lift.highest.to_m());
        let height = low + part * (high - low);
        self.stations.push(Station::new(solver, height, worse_share(&self.design), false).ok()?);
        let pose = solver.pose_at_height(height).ok()?;
        let middle = frame(&self.design, solver.mechanism(), Case::Middle);
        let unguided = frame(&self.design, solver.mechanism(), Case::Unguided);
        let answers = Frame3::new(&middle, &pose).ok()?.answers();
        let loose = Frame3::new(&unguided, &pose).ok()?.answers();
        let play = rattle(&middle, &pose, &slack(&self.design)).ok()?;
        Some(Stand {
            multiple: answers.lambda.unwrap_or(f64::INFINITY),
            unguided: loose.lambda.unwrap_or(f64::INFINITY),
            give: told::gives(&answers),
            rattle: play.most,
        })
    }

    /// What it takes and what fails in it, once it was looked at everywhere; none where that cannot be computed.
    fn end(&mut self, own: &Design) -> Option<Ends> {
        let stations = core::mem::take(&mut self.stations);
        let levels: Vec<_> = stations.iter().map(Station::level).collect();
        let list =
            checks::all(&self.design, self.solver.as_ref()?, &levels, worse_share(&self.design)).ok()?;
        let over = list.iter().filter(|check| check.verdict == Verdict::Over).map(|check| check.title);
        let parts = parts(&self.design);
        let stands = parts.iter().filter(|part| part.rides != Rides::Aside);
        Some(Ends {
            mass: stands.map(Part::total).sum(),
            sheet: parts.iter().map(Part::sheet_area).sum(),
            cost: cost::added(own, &self.design),
            over: over.collect(),
        })
    }
}
