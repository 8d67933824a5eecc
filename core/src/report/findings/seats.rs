//! Whether everything stays on its seat: casters, wheels, pivots.
use super::strength::spot;
use crate::checks::{Check, Stance, Verdict};
use crate::quantity::{Amount, Phrase};
use crate::report::Report;
use crate::report::finding::{Cure, Finding, Grade, Spot};

/// The pair of casters that presses least where the table comes nearest to tipping.
struct Lifting {
    /// The force on it, N; less than nothing where it lifts.
    force: f64,
    side: &'static str,
    other: &'static str,
    spot: Spot,
}

impl Lifting {
    fn of(report: &Report, check: &Check) -> Option<Self> {
        let stance = Stance::of(&report.design, &report.at(check.height).level())?;
        let [left, right] = stance.pairs();
        Some(if left < right {
            Self { force: left, side: "left", other: "right", spot: Spot::LeftCaster }
        } else {
            Self { force: right, side: "right", other: "left", spot: Spot::RightCaster }
        })
    }
}

/// Whether both pairs of casters press at every height, swivelled to their worst.
pub(super) fn tipping(report: &Report) -> Option<Finding> {
    let check = report.check("tip-along")?;
    let Lifting { force, side, spot, .. } = Lifting::of(report, check)?;
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
    Some(Finding {
        grade,
        ratio: check.ratio,
        phrase,
        remedy: None,
        cure: (grade != Grade::Fine).then_some(Cure::Tipping),
        height: Some(check.height),
        spot,
        curve: None,
    })
}

/// Where casters and load belong, and the step that was tried with most effect.
pub(super) fn remedy(report: &Report) -> Option<Phrase> {
    let check = report.check("tip-along")?;
    let lifting = Lifting::of(report, check)?;
    let start = Phrase::new(format!(
        "Move the {} casters outwards, the base beams' ends with them, or the load back between them; swivel casters are taken at their worst trail.",
        lifting.other
    ));
    Some(match super::strength::remedy(report, check) {
        Some(tried) => start.and(" ").then(tried),
        None => start,
    })
}

/// What can be pulled off its seat: the check that says so, who it is, and what holds it without and with keepers among the parts.
const SEATS: [(&str, &str, [&str; 2]); 4] = [
    (
        "uplift-base-wheels",
        "The base wheels",
        [
            "A rail above the wheels must hold them down.",
            "The keepers above them hold them down: fit them over the wheels' whole run.",
        ],
    ),
    (
        "uplift-deck-wheels",
        "The deck wheels",
        [
            "A rail under the wheels must hold the deck down.",
            "The keepers under them hold the deck down: fit them over the wheels' whole run.",
        ],
    ),
    (
        "uplift-base-pivots",
        "The base pivots",
        ["Their cheeks must hold them down: bolts, not the weight."; 2],
    ),
    (
        "uplift-deck-pivots",
        "The deck pivots",
        ["Their cheeks must hold the deck down: bolts, not the weight."; 2],
    ),
];

/// Wheels and pivots that are pulled off their seats somewhere in the lift.
pub(super) fn uplift(report: &Report) -> Vec<Finding> {
    SEATS.iter().filter_map(|seat| pulled(report, *seat)).collect()
}

fn pulled(report: &Report, (id, who, help): (&str, &str, [&'static str; 2])) -> Option<Finding> {
    // Both frames have keepers, or neither.
    let kept = report.parts.iter().any(|part| part.name == "Keeper");
    let check = report.check(id).filter(|check| check.verdict == Verdict::Watch)?;
    Some(Finding {
        grade: Grade::Watch,
        ratio: check.ratio,
        phrase: Phrase::new(format!("{who} are pulled off their seat with up to "))
            .with(check.demand)
            .and(", at deck ")
            .with(Amount::Size(check.height))
            .and("."),
        remedy: Some(Phrase::new(help[usize::from(kept)])),
        cure: None,
        height: Some(check.height),
        spot: spot(check.member),
        curve: None,
    })
}
