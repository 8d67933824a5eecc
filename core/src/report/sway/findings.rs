//! What the slow report says, in words.
use super::run::is_guided;
use super::{Case, LEAST_MULTIPLE, PUSH, SwayReport};
use crate::design::{Design, Wear};
use crate::mechanics::frame3::Rail;
use crate::mechanics::test_is_void;
use crate::quantity::{Amount, Phrase, capital};
use crate::report::finding::{Curve, Finding, Grade, Spot, sorted};

/// A give under [`PUSH`] and a rattle from which a table feels flimsy, m. Common practice, no source.
const FLIMSY: f64 = 10e-3;
const RATTLING: f64 = 5e-3;
/// Two figures that differ by less than this share are told as one.
const ALIKE: f64 = 0.03;

/// The findings of a report with those of its slow part among them, worst first.
#[must_use]
pub fn merged(findings: &[Finding], slow: Vec<Finding>) -> Vec<Finding> {
    sorted(findings.iter().cloned().chain(slow).collect())
}

impl SwayReport {
    /// What was found, in no order, for the design the report was made from.
    #[must_use]
    pub fn findings(&self, design: &Design) -> Vec<Finding> {
        [self.collapse(design), self.flimsy(), self.lifting(design), void_test(design)]
            .into_iter()
            .flatten()
            .collect()
    }

    /// The critical load against the one that is wanted, and why it is no higher.
    fn collapse(&self, design: &Design) -> Option<Finding> {
        let worst = self.worst?;
        let doubtful = [Case::Soft, Case::Unguided]
            .into_iter()
            .filter_map(|case| Some((case, self.least_multiple(case)?)))
            .filter(|(_, (multiple, _))| *multiple < LEAST_MULTIPLE);
        let grade = if worst.multiple < LEAST_MULTIPLE {
            Grade::Over
        } else if doubtful.clone().next().is_some() {
            Grade::Watch
        } else {
            Grade::Fine
        };
        let collapses = match grade {
            _ if worst.multiple < 1.0 => " the table collapses: it stands only ",
            Grade::Fine => " the table would collapse only under ",
            _ => " the table would collapse under ",
        };
        let mut phrase = Phrase::new("Sideways: at deck ")
            .with(Amount::Size(worst.height))
            .and(collapses)
            .with(Amount::Factor(worst.multiple))
            .and(" times the load on it; at least ")
            .with(Amount::Factor(LEAST_MULTIPLE))
            .and(" is wanted");
        if worst.multiple >= LEAST_MULTIPLE {
            for (case, (multiple, height)) in doubtful {
                phrase = phrase
                    .and(if case == Case::Soft {
                        ". With soft joints it is "
                    } else {
                        ". With the side guides inside their play it is "
                    })
                    .with(Amount::Factor(multiple))
                    .and(" at deck ")
                    .with(Amount::Size(height));
            }
        }
        Some(Finding {
            grade,
            ratio: LEAST_MULTIPLE / worst.multiple,
            phrase: phrase.and("."),
            remedy: (grade != Grade::Fine).then(|| self.reasons(design)),
            cure: None,
            height: Some(worst.height),
            spot: Spot::Arms,
            curve: Some(Curve::Multiple),
        })
    }

    /// What in the design keeps the critical load low.
    fn reasons(&self, design: &Design) -> Phrase {
        let arms = &design.arms;
        let mut list = Vec::new();
        if arms.layers.get() == 1 {
            list.push("arms of one layer bend sideways");
        }
        match (arms.boards_a, arms.boards_b) {
            (false, false) => list.push("no cross boards tie the two sides together"),
            (false, true) => list.push("no cross boards tie the outer arms A"),
            (true, false) => list.push("no cross boards tie the inner arms B"),
            (true, true) => {}
        }
        if !is_guided(design) {
            list.push("nothing guides the wheels sideways");
        }
        if design.sway.wear != Wear::New {
            list.push("its pivots are worn");
        }
        if list.is_empty() {
            list.push("its joints rock, and the driven carriage can turn");
        }
        let mut phrase = Phrase::new(capital(&list.join(", "))).and(".");
        if let Some((worst, low)) = self.worst.and_then(|worst| Some((worst, worst.with_low_weight?)))
            && low > (1.0 + ALIKE) * worst.multiple
        {
            phrase = phrase
                .and(" The load's weight sits ")
                .with(Amount::Size(design.load.rise()))
                .and(" above the deck; at the deck it would be ")
                .with(Amount::Factor(low))
                .and(" times.");
        }
        phrase
    }

    /// Give and rattle in one sentence, at the height where the deck gives most; none where they are not known.
    #[must_use]
    pub fn gives(&self) -> Option<Phrase> {
        let (give, height) = self.greatest_give(Case::Middle)?;
        let [stiff, soft] = [Case::Stiff, Case::Soft].map(|case| self.give(case, height).unwrap_or(give));
        let rattle = self.rattle(height)?;
        let phrase = Phrase::new("At ")
            .with(Amount::Size(height))
            .and(" the deck gives ")
            .with(Amount::GiveRange(stiff, soft))
            .and(" to a push of ")
            .with(Amount::Force(PUSH))
            .and(" and rattles by ")
            .with(Amount::GiveRange(rattle.least, rattle.most))
            .and(".");
        Some(phrase)
    }

    /// The critical load in one sentence, at the height where it is lowest; none where it is not known or no load is critical.
    #[must_use]
    pub fn collapses(&self) -> Option<Phrase> {
        let worst = self.worst?;
        let phrase = Phrase::new("At ")
            .with(Amount::Size(worst.height))
            .and(if worst.multiple < 1.0 {
                " it collapses sideways: it stands only "
            } else {
                " it would collapse sideways under "
            })
            .with(Amount::Factor(worst.multiple))
            .and(" times its load.");
        Some(phrase)
    }

    /// The same with what it means to the builder.
    fn flimsy(&self) -> Option<Finding> {
        let (give, height) = self.greatest_give(Case::Middle)?;
        let ends = [Case::Stiff, Case::Soft].map(|case| self.give(case, height).unwrap_or(give));
        let rattle = self.rattle(height)?;
        let phrase = self.gives()?;
        let ratio = (ends[1] / FLIMSY).max(rattle.most / RATTLING);
        Some(Finding {
            grade: if ratio > 1.0 { Grade::Watch } else { Grade::Fine },
            ratio,
            phrase,
            remedy: (ratio > 1.0).then(|| {
                let why = if rattle.most / RATTLING > ends[1] / FLIMSY {
                    "It rattles before it bends: tighter holes and a longer grip take that away, cross boards most of it."
                } else {
                    "It bends before it breaks: see what stiffens it."
                };
                Phrase::new(why)
            }),
            cure: None,
            height: Some(height),
            spot: Spot::Deck,
            curve: Some(Curve::Give),
        })
    }

    /// The least push that lifts a wheel.
    fn lifting(&self, design: &Design) -> Option<Finding> {
        let known = self.wheel_lift.iter().zip(&self.heights);
        let (lift, height) = known
            .filter_map(|(lift, height)| Some(((*lift)?, *height)))
            .min_by(|one, other| one.0.push.total_cmp(&other.0.push))?;
        let lean = design.strength.lean.to_n();
        let (wheel, spot) = match lift.rail {
            Rail::Base => ("base wheel", Spot::BaseWheel),
            Rail::Top => ("deck wheel", Spot::DeckWheel),
        };
        let ratio = lean / lift.push;
        Some(Finding {
            grade: if ratio > 1.0 { Grade::Watch } else { Grade::Fine },
            ratio: if ratio.is_finite() { ratio } else { f64::MAX },
            phrase: Phrase::new("Sideways: a push of ")
                .with(Amount::Force(lift.push))
                .and(format!(" at the deck lifts a {wheel} at deck "))
                .with(Amount::Size(height))
                .and("."),
            remedy: (ratio > 1.0).then(|| Phrase::new("The keepers over the wheels must then hold it down.")),
            cure: None,
            height: Some(height),
            spot,
            curve: None,
        })
    }
}

/// A joint test that cannot be right.
fn void_test(design: &Design) -> Option<Finding> {
    test_is_void(design).then(|| Finding {
        grade: Grade::Watch,
        ratio: 1.0,
        phrase: Phrase::new(
            "Joint test: the arm alone would bend as far as that, so the test says nothing about the joint; it is not used.",
        ),
        remedy: Some(Phrase::new("Hook the scale nearer to the bolt, or pull harder.")),
        cure: None,
        height: None,
        spot: Spot::Arms,
        curve: None,
    })
}
