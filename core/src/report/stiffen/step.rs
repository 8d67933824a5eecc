//! The usual remedies against sway, each as a step a builder would take.
use crate::checks::Lever;
use crate::design::{Design, check};
use crate::parts::flange_thickness;
use crate::quantity::{Amount, Kind, Length, Phrase};
use crate::report::reach;
use crate::report::trial::Trial;

/// Two guides on either end of the driven axle are tried this far apart.
const GUIDES_APART: Length = Length::mm(150.0);

/// Holes are tried with this part of their play, and what bushings reamed by hand keep at least.
const TIGHTER: f64 = 0.5;
const TIGHTEST: Length = Length::mm(0.05);

/// Hub washers are tried in this many bolt diameters.
const HUB: i64 = 4;

/// A usual remedy.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::report) enum Step {
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

/// A remedy that was looked at and does not help, or cannot be taken.
#[derive(Clone, Debug, PartialEq)]
pub struct Idle {
    /// What would be changed, as the beginning of a sentence.
    pub words: Phrase,
    /// Why it is not among the remedies, as the rest of it.
    pub why: Phrase,
}

impl Idle {
    pub(super) fn new(words: Phrase, why: &str) -> Self {
        Self { words, why: Phrase::new(why) }
    }
}

/// A changed design; or why there is none, nothing where another step says so.
pub(in crate::report) type Taken = Result<Trial, Option<Idle>>;

impl Step {
    pub(in crate::report) const ALL: [Self; 12] = [
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

    /// The remedy taken on a design that stands with it.
    pub(in crate::report) fn take(self, design: &Design) -> Taken {
        let trial = self.change(design)?;
        if let Some(fault) = check(&trial.design).first() {
            let why = format!("beyond the range of the input {}.", fault.field.label);
            return Err(Some(Idle::new(trial.words, &why)));
        }
        match reach(&trial.design) {
            Ok(()) => Ok(trial),
            Err(obstacle) => Err(Some(Idle { words: trial.words, why: obstacle.phrase })),
        }
    }

    fn change(self, design: &Design) -> Taken {
        match self {
            // Outer faces stay where they are, so that wheels and cheeks do.
            Self::SecondLayer => {
                let mut trial = lever(design, Lever::ArmLayer)?;
                trial.design.frames.spread -= design.arms.thickness;
                Ok(trial)
            }
            Self::WiderArms => lever(design, Lever::ArmWidth),
            Self::LargerCrossBar => lever(design, Lever::CrossBar),
            Self::BoardsOnA | Self::BoardsOnB | Self::BoardsOnBoth => self.boards(design),
            Self::StrapsOnA | Self::StrapsOnBoth => self.straps(design),
            Self::Guides | Self::SquareCarriage => self.guides(design),
            Self::TighterHoles => tighter(design),
            Self::HubWashers => hubs(design),
        }
    }

    fn boards(self, design: &Design) -> Taken {
        let mut changed = design.clone();
        let arms = &mut changed.arms;
        let words = match (self, arms.boards_a, arms.boards_b) {
            (Self::BoardsOnBoth, true, true) => {
                return idle("Cross boards", "on all arms already.");
            }
            (Self::BoardsOnA, false, true) => "Cross boards on the arms A",
            (Self::BoardsOnB, true, false) => "Cross boards on the arms B",
            (Self::BoardsOnA, false, false) => "Cross boards on the arms A only",
            (Self::BoardsOnB, false, false) => "Cross boards on the arms B only",
            (Self::BoardsOnBoth, false, false) => "Cross boards on all arms",
            _ => return Err(None),
        };
        arms.boards_a |= self != Self::BoardsOnB;
        arms.boards_b |= self != Self::BoardsOnA;
        Ok(Trial { words: Phrase::new(words), design: changed })
    }

    /// Straps are bolted to boards.
    fn straps(self, design: &Design) -> Taken {
        let mut changed = design.clone();
        let arms = &mut changed.arms;
        let words = match self {
            Self::StrapsOnA if !arms.boards_a => {
                return idle("X straps", "they are bolted to cross boards on the arms A, which come first.");
            }
            Self::StrapsOnA if arms.straps_a => return Err(None),
            Self::StrapsOnA => "X straps on the arms A",
            _ if arms.straps_a && arms.straps_b => return idle("X straps", "on all arms already."),
            _ if !arms.boards_a => return Err(None),
            _ if !arms.boards_b => {
                return idle("X straps on the arms B", "they are bolted to cross boards, which come first.");
            }
            _ => "X straps on all arms",
        };
        arms.straps_a = true;
        arms.straps_b |= self == Self::StrapsOnBoth;
        Ok(Trial { words: Phrase::new(words), design: changed })
    }

    fn guides(self, design: &Design) -> Taken {
        let mut changed = design.clone();
        let sway = &mut changed.sway;
        let had = sway.guide_base && sway.guide_deck;
        let span = sway.guide_span;
        (sway.guide_base, sway.guide_deck) = (true, true);
        let words = if self == Self::Guides {
            Phrase::new("Flange washers that guide all wheels sideways")
        } else {
            sway.guide_span = GUIDES_APART;
            Phrase::new("Two guides on either end of the driven axle, ")
                .with(Amount::AtLeast(GUIDES_APART.to_m()))
                .and(" apart, on brackets of your own")
        };
        if [false, true].into_iter().any(|deck| flange_thickness(&changed, deck) == Length::ZERO) {
            let why = "there is no room for a washer between arm and wheel; move the wheels outwards.";
            return if self == Self::Guides { Err(Some(Idle::new(words, why))) } else { Err(None) };
        }
        match self {
            Self::Guides if had => idle("Side guides", "on all wheels already."),
            Self::SquareCarriage if had && span >= GUIDES_APART => {
                idle("Two guides on either end of the driven axle", "there already.")
            }
            _ => Ok(Trial { words, design: changed }),
        }
    }
}

fn idle(words: &str, why: &str) -> Taken {
    Err(Some(Idle::new(Phrase::new(words), why)))
}

fn lever(design: &Design, lever: Lever) -> Taken {
    Trial::of(design, lever).ok_or(None)
}

fn tighter(design: &Design) -> Taken {
    let mut changed = design.clone();
    let running = &mut changed.running;
    let tighter = |play: Length| Length::m(TIGHTER * play.to_m()).max(TIGHTEST).min(play);
    let before = (running.clearance, running.axle_clearance);
    (running.clearance, running.axle_clearance) = (tighter(before.0), tighter(before.1));
    if before == (running.clearance, running.axle_clearance) {
        return idle("Tighter holes", "as tight as a hand reamer makes them already.");
    }
    let words = Phrase::new("Holes with ")
        .with(Amount::Written(Kind::Length, running.clearance.steps()))
        .and(" of play on the bolts and ")
        .with(Amount::Written(Kind::Length, running.axle_clearance.steps()))
        .and(" on the axles");
    Ok(Trial { words, design: changed })
}

fn hubs(design: &Design) -> Taken {
    let mut changed = design.clone();
    let wide = (design.running.pin * HUB).min(design.arms.width);
    if design.sway.hub >= wide {
        return idle("Sprung hub washers", "there already.");
    }
    changed.sway.hub = wide;
    let words =
        Phrase::new("Sprung hub washers ").with(Amount::Size(wide.to_m())).and(" wide at every pivot");
    Ok(Trial { words, design: changed })
}
