//! What the checks say, each that does not hold in a sentence, and one for all that do.
use crate::checks::{Check, Member, Verdict, Weight};
use crate::mechanics::JointId;
use crate::order::order;
use crate::quantity::{Amount, Phrase, lower};
use crate::report::Report;
use crate::report::finding::{Cure, Finding, Grade, Spot};

/// Checks that other findings speak of in their own words.
const TOLD: [&str; 7] = [
    "crank-force",
    "screw-holding",
    "tip-along",
    "uplift-base-wheels",
    "uplift-deck-wheels",
    "uplift-base-pivots",
    "uplift-deck-pivots",
];

/// What another check has said from a verdict of it on: a table that tips by its weight tips at any push, and an empty one that is not to be pushed
/// from the side is not to be pushed at all.
const FOLLOWS: [(&str, &str, Verdict); 3] = [
    ("push-along", "tip-along", Verdict::Over),
    ("push-across", "tip-across", Verdict::Over),
    ("push-along-empty", "push-across-empty", Verdict::Watch),
];

/// Every check that does not hold or is near its limit.
pub(super) fn checks(report: &Report) -> Vec<Finding> {
    let mut worst: Vec<&Check> = report
        .checks
        .iter()
        .filter(|check| matches!(check.verdict, Verdict::Over | Verdict::Watch) && !TOLD.contains(&check.id))
        .filter(|check| !follows(report, check.id))
        .collect();
    order(&mut worst, |one, other| one.verdict.cmp(&other.verdict).then(other.ratio.total_cmp(&one.ratio)));
    worst
        .into_iter()
        .map(|check| Finding {
            grade: Grade::of(check.verdict),
            ratio: check.ratio,
            phrase: Phrase::new(format!("{}: {}, ", check.group.title(), lower(check.title)))
                .with(check.demand)
                .and(" of ")
                .with(check.capacity)
                .and(" at deck ")
                .with(Amount::Size(check.height))
                .and("."),
            remedy: None,
            cure: Some(Cure::Check(check.id)),
            height: Some(check.height),
            spot: spot(check.member),
            curve: None,
        })
        .collect()
}

/// Whether a check only says what another one has said already.
fn follows(report: &Report, id: &str) -> bool {
    FOLLOWS.iter().any(|(follower, leader, from)| {
        *follower == id && report.check(leader).is_some_and(|check| check.verdict <= *from)
    })
}

/// The most helpful step that was tried, and what it would do to another part.
pub(super) fn remedy(report: &Report, check: &Check) -> Option<Phrase> {
    let help = report.first_help(check)?;
    let phrase = help.words.and(": ").with(Amount::Share(help.ratio)).and(" of the limit");
    Some(match help.spoils {
        Some(other) => phrase.and(format!(", but too much for another: {}.", lower(other))),
        None => phrase.and("."),
    })
}

/// One word that the rest holds; none where something does not.
pub(super) fn all_hold(report: &Report) -> Option<Finding> {
    if report.checks.iter().any(|check| check.verdict == Verdict::Over) {
        return None;
    }
    let limits = || report.checks.iter().filter(|check| check.weight == Weight::Limit);
    let most = limits()
        .filter(|check| check.verdict == Verdict::Fine && !TOLD.contains(&check.id))
        .max_by(|one, other| one.ratio.total_cmp(&other.ratio))?;
    let but = if report.leaves_ends() { ", what holds the ends of the screw in none of them" } else { "" };
    Some(Finding {
        grade: Grade::Fine,
        ratio: most.ratio,
        phrase: Phrase::new(format!(
            "Strength: {} checks hold at every height{but}; of what is not named above, nearest its limit: {}, ",
            limits().count(),
            lower(most.title)
        ))
        .with(Amount::Share(most.ratio))
        .and("."),
        remedy: None,
        cure: None,
        height: Some(most.height),
        spot: spot(most.member),
        curve: None,
    })
}

/// The place in the drawing of a part.
pub(super) const fn spot(member: Member) -> Spot {
    match member {
        Member::Arm(_) | Member::Joint(JointId::C(_) | JointId::Jl(_) | JointId::Jr(_)) => Spot::Arms,
        Member::Joint(JointId::Bl) => Spot::BasePivot,
        Member::Joint(JointId::Tl) => Spot::DeckPivot,
        Member::Joint(JointId::Br) | Member::BaseWheels => Spot::BaseWheel,
        Member::Joint(JointId::Tr) | Member::DeckWheels => Spot::DeckWheel,
        Member::CrossBar | Member::BearingTube | Member::Screw | Member::Nut | Member::ThrustBearing => {
            Spot::Screw
        }
        Member::Deck | Member::DeckRails => Spot::Deck,
        Member::BaseBeams => Spot::Base,
        Member::LeftCasters => Spot::LeftCaster,
        Member::RightCasters => Spot::RightCaster,
        Member::Crank => Spot::Crank,
    }
}
