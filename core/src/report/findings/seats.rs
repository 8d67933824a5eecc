//! Whether everything stays on its seat: casters, wheels, pivots.
use super::strength::spot;
use crate::checks::{Stance, Verdict};
use crate::quantity::{Amount, Phrase};
use crate::report::Report;
use crate::report::finding::{Finding, Grade, Spot};

/// Whether both pairs of casters press at every height, swivelled to their worst.
pub(super) fn tipping(report: &Report) -> Option<Finding> {
    let check = report.check("tip-along")?;
    let stance = Stance::of(&report.design, &report.at(check.height).level())?;
    let [left, right] = stance.pairs();
    let (force, side, other, spot) = if left < right {
        (left, "left", "right", Spot::LeftCaster)
    } else {
        (right, "right", "left", Spot::RightCaster)
    };
    let grade = Grade::of(check.verdict);
    let phrase = match grade {
        Grade::Over => Phrase::new(format!("Tipping: the {side} casters lift, by "))
            .with(Amount::Force(-force))
            .and(" at deck ")
            .with(Amount::Size(check.height))
            .and("."),
        Grade::Watch => Phrase::new("Tipping: only ")
            .with(Amount::Force(force))
            .and(format!(" stay on the {side} casters at deck "))
            .with(Amount::Size(check.height))
            .and(", a small part of the weight."),
        Grade::Fine => Phrase::new("Tipping: all four casters press at every height, least ")
            .with(Amount::Force(force))
            .and(format!(" on the {side} pair at deck "))
            .with(Amount::Size(check.height))
            .and("."),
    };
    let remedy = (grade != Grade::Fine).then(|| {
        let start = Phrase::new(format!(
            "Move the {other} casters outwards, or the load back between them; swivel casters are taken at their worst trail."
        ));
        match super::strength::remedy(report, check) {
            Some(tried) => start.and(" ").then(tried),
            None => start,
        }
    });
    Some(Finding {
        grade,
        ratio: check.ratio,
        phrase,
        remedy,
        height: Some(check.height),
        spot,
        curve: None,
        check: None,
    })
}

/// What can be pulled off its seat: the check that says so, who it is, and what holds it.
const SEATS: [(&str, &str, &str); 4] = [
    ("uplift-base-wheels", "The base wheels", "A rail above the wheels must hold them down."),
    ("uplift-deck-wheels", "The deck wheels", "A rail under the wheels must hold the deck down."),
    ("uplift-base-pivots", "The base pivots", "Their cheeks must hold them down: bolts, not the weight."),
    ("uplift-deck-pivots", "The deck pivots", "Their cheeks must hold the deck down: bolts, not the weight."),
];

/// Wheels and pivots that are pulled off their seats somewhere in the lift.
pub(super) fn uplift(report: &Report) -> Vec<Finding> {
    SEATS.iter().filter_map(|seat| pulled(report, *seat)).collect()
}

fn pulled(report: &Report, (id, who, help): (&str, &str, &str)) -> Option<Finding> {
    let check = report.check(id).filter(|check| check.verdict == Verdict::Watch)?;
    Some(Finding {
        grade: Grade::Watch,
        ratio: check.ratio,
        phrase: Phrase::new(format!("{who} are pulled off their seat with up to "))
            .with(check.demand)
            .and(", at deck ")
            .with(Amount::Size(check.height))
            .and("."),
        remedy: Some(Phrase::new(help)),
        height: Some(check.height),
        spot: spot(check.member),
        curve: None,
        check: None,
    })
}
