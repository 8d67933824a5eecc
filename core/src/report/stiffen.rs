//! What would stiffen the table: the usual remedies, each tried out on this design.
//!
//! Slow, and therefore made in steps: one step is one remedy at one height, or its free play there.
use super::sway::{Case, LEAST_MULTIPLE, PUSH, frame, slack};
use super::trial::Trial;
use super::{Progress, Unsound, reach};
use crate::checks::Lever;
use crate::design::Design;
use crate::mechanics::frame3::Frame3;
use crate::mechanics::{Solver, idealise, rattle};
use crate::parts::{Part, parts};
use crate::quantity::{Amount, Length, Phrase};

/// Heights at which a remedy is tried, from the lowest to the highest deck, even in height.
const LOOKS: usize = 3;

/// Two guides on either end of the driven axle are tried this far apart.
const GUIDES_APART: Length = Length::mm(150.0);

/// Holes are tried with this part of their play, and what bushings reamed by hand keep at least.
const TIGHTER: f64 = 0.5;
const TIGHTEST: Length = Length::mm(0.05);

/// Hub washers are tried in this many bolt diameters.
const HUB: i64 = 4;

/// A gain below this share is none.
const LEAST_GAIN: f64 = 0.01;

/// A usual remedy.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Step {
    SecondLayer,
    WiderArms,
    BoardsOnA,
    BoardsOnB,
    BoardsOnBoth,
    StrapsOnA,
    StrapsOnBoth,
    Guides,
    SquareCarriage,
    LargerCrossBar,
    TighterHoles,
    HubWashers,
}

impl Step {
    const ALL: [Self; 12] = [
        Self::SecondLayer,
        Self::WiderArms,
        Self::BoardsOnA,
        Self::BoardsOnB,
        Self::BoardsOnBoth,
        Self::StrapsOnA,
        Self::StrapsOnBoth,
        Self::Guides,
        Self::SquareCarriage,
        Self::LargerCrossBar,
        Self::TighterHoles,
        Self::HubWashers,
    ];

    /// The remedy taken on a design; none where it changes nothing that is there.
    fn take(self, design: &Design) -> Option<Trial> {
        match self {
            // Outer faces stay where they are, so that wheels and cheeks do.
            Self::SecondLayer => Trial::of(design, Lever::ArmLayer).map(|mut trial| {
                trial.design.frames.spread -= design.arms.thickness;
                trial
            }),
            Self::WiderArms => Trial::of(design, Lever::ArmWidth),
            Self::LargerCrossBar => Trial::of(design, Lever::CrossBar),
            Self::BoardsOnBoth => Trial::of(design, Lever::Boards),
            _ => {
                let mut changed = design.clone();
                let words = self.change(&mut changed)?;
                Some(Trial { words, design: changed })
            }
        }
    }

    fn change(self, d: &mut Design) -> Option<Phrase> {
        let (arms, sway, running) = (&mut d.arms, &mut d.sway, &mut d.running);
        let flag = |has: &mut bool, words: &str| (!core::mem::replace(has, true)).then(|| Phrase::new(words));
        match self {
            // Told as one remedy where both pairs lack them.
            Self::BoardsOnA if arms.boards_b => flag(&mut arms.boards_a, "Cross boards on the arms A"),
            Self::BoardsOnB if arms.boards_a => flag(&mut arms.boards_b, "Cross boards on the arms B"),
            Self::BoardsOnA => flag(&mut arms.boards_a, "Cross boards on the arms A only"),
            Self::BoardsOnB => flag(&mut arms.boards_b, "Cross boards on the arms B only"),
            // Straps are bolted to boards.
            Self::StrapsOnA if arms.boards_a => flag(&mut arms.straps_a, "X straps on the arms A"),
            Self::StrapsOnBoth if arms.boards_a && arms.boards_b => {
                let missing = !(arms.straps_a && arms.straps_b);
                (arms.straps_a, arms.straps_b) = (true, true);
                missing.then(|| Phrase::new("X straps on all arms"))
            }
            Self::Guides => {
                let missing = !(sway.guide_base && sway.guide_deck);
                (sway.guide_base, sway.guide_deck) = (true, true);
                missing.then(|| Phrase::new("Flange washers that guide all wheels sideways"))
            }
            Self::SquareCarriage => {
                let longer = sway.guide_span < GUIDES_APART;
                (sway.guide_base, sway.guide_deck, sway.guide_span) = (true, true, GUIDES_APART);
                longer.then(|| {
                    Phrase::new("Two guides on either end of the driven axle, ")
                        .with(Amount::Size(GUIDES_APART.to_m()))
                        .and(" apart")
                })
            }
            Self::TighterHoles => {
                let tighter = |play: Length| Length::m(TIGHTER * play.to_m()).max(TIGHTEST).min(play);
                let before = (running.clearance, running.axle_clearance);
                running.clearance = tighter(running.clearance);
                running.axle_clearance = tighter(running.axle_clearance);
                let changed = before != (running.clearance, running.axle_clearance);
                changed.then(|| {
                    Phrase::new("Holes with ").with(Amount::Give(running.clearance.to_m())).and(" of play")
                })
            }
            Self::HubWashers => {
                let wide = (running.pin * HUB).min(arms.width);
                let wider = sway.hub < wide;
                sway.hub = wide;
                wider.then(|| {
                    Phrase::new("Sprung hub washers ")
                        .with(Amount::Size(wide.to_m()))
                        .and(" wide at every pivot")
                })
            }
            _ => None,
        }
    }
}

/// How a table stands sideways, by its worst of a few heights.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stand {
    /// The lowest critical load as a multiple of the load, middle stiffnesses; infinite where nothing is critical.
    pub multiple: f64,
    /// The same with the wheels inside the play of their guides.
    pub unguided: f64,
    /// The greatest give under [`PUSH`], m.
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
}

/// A design being looked at.
#[derive(Clone, Debug)]
struct Candidate {
    words: Phrase,
    design: Design,
    solver: Option<Solver>,
    stand: Option<Stand>,
}

/// The search for what would stiffen a design, in steps.
#[derive(Clone, Debug)]
pub struct StiffenRun {
    /// The design itself, then every remedy that can be taken.
    candidates: Vec<Candidate>,
    done: usize,
}

impl StiffenRun {
    /// A search for a design, nothing computed yet.
    ///
    /// # Errors
    /// As [`super::SwayRun::new`].
    pub fn new(design: &Design) -> Result<Self, Unsound> {
        super::SwayRun::new(design)?;
        let own = Candidate {
            words: Phrase::default(),
            design: design.clone(),
            solver: None,
            stand: Some(Stand::NONE),
        };
        let remedies = Step::ALL
            .into_iter()
            .filter_map(|step| step.take(design))
            .filter(|trial| reach(&trial.design).is_ok());
        let remedies = remedies.map(|trial| Candidate {
            words: trial.words,
            design: trial.design,
            solver: None,
            stand: Some(Stand::NONE),
        });
        Ok(Self { candidates: core::iter::once(own).chain(remedies).collect(), done: 0 })
    }

    /// How far it has come.
    #[must_use]
    pub fn progress(&self) -> Progress {
        Progress { done: self.done, all: self.candidates.len() * LOOKS }
    }

    /// Does so many steps more, or as many as are left. A remedy that cannot be computed is left out of the list.
    pub fn advance(&mut self, steps: usize) -> Progress {
        for _ in 0..steps {
            let Some(candidate) = self.candidates.get_mut(self.done / LOOKS) else { break };
            let part = (self.done % LOOKS) as f64 / (LOOKS - 1) as f64;
            candidate.stand = candidate.stand.and_then(|stand| Some(stand.with(candidate.look(part)?)));
            self.done += 1;
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
        let Some((before, own)) = self.before().zip(self.candidates.first()) else { return Vec::new() };
        let (mass, sheet) = totals(&own.design);
        let known = self.candidates.iter().take(self.done / LOOKS).skip(1);
        let mut list: Vec<Remedy> = known
            .filter_map(|candidate| {
                let after = candidate.stand?;
                let (heavier, larger) = totals(&candidate.design);
                let gain = after.multiple / before.multiple;
                Some(Remedy {
                    words: candidate.words.clone(),
                    after,
                    gain: if gain.is_finite() { gain } else { 1.0 },
                    give_left: left(after.give, before.give),
                    rattle_left: left(after.rattle, before.rattle),
                    mass: heavier - mass,
                    sheet: larger - sheet,
                    design: Box::new(candidate.design.clone()),
                })
            })
            .filter(|remedy| remedy.worth(goal) > 1.0 + LEAST_GAIN)
            .collect();
        list.sort_by(|one, other| other.worth(goal).total_cmp(&one.worth(goal)));
        list
    }
}

/// What is left of a figure, 1 where there was none.
fn left(after: f64, before: f64) -> f64 {
    if before > 0.0 { after / before } else { 1.0 }
}

/// Mass that stands on the floor and sheet area of a design, kg and m2.
fn totals(design: &Design) -> (f64, f64) {
    let list = parts(design);
    let rides = |part: &&Part| part.rides != crate::parts::Rides::Aside;
    (list.iter().filter(rides).map(Part::total).sum(), list.iter().map(Part::sheet_area).sum())
}

impl Candidate {
    /// How it stands at a part of its lift; none where it cannot be computed.
    fn look(&mut self, part: f64) -> Option<Stand> {
        if self.solver.is_none() {
            self.solver = Solver::new(&idealise(&self.design).ok()?).ok();
        }
        let solver = self.solver.as_ref()?;
        let (low, high) = (self.design.lift.lowest.to_m(), self.design.lift.highest.to_m());
        let pose = solver.pose_at_height(low + part * (high - low)).ok()?;
        let middle = frame(&self.design, solver.mechanism(), Case::Middle);
        let unguided = frame(&self.design, solver.mechanism(), Case::Unguided);
        let answers = Frame3::new(&middle, &pose).ok()?.answers();
        let loose = Frame3::new(&unguided, &pose).ok()?.answers();
        let play = rattle(&middle, &pose, &slack(&self.design)).ok()?;
        Some(Stand {
            multiple: answers.lambda.unwrap_or(f64::INFINITY),
            unguided: loose.lambda.unwrap_or(f64::INFINITY),
            give: PUSH / answers.sway,
            rattle: play.most,
        })
    }
}
