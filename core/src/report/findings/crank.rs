//! How hard the crank is.
use super::strength::spot;
use crate::checks::NEAR;
use crate::design::Design;
use crate::quantity::{Amount, Length, Phrase};
use crate::report::finding::{Cure, Curve, Finding, Grade};
use crate::report::{Report, advice};

/// Halvings when looking for a remedy: to a two-hundred-and-fiftieth of the range looked through.
const HALVINGS: u32 = 8;

/// The force on the handle while raising against the force the builder accepts.
pub(super) fn effort(report: &Report) -> Option<Finding> {
    let check = report.check("crank-force")?;
    let grade = Grade::of(check.verdict);
    Some(Finding {
        grade,
        ratio: check.ratio,
        phrase: Phrase::new("Crank: ")
            .with(check.demand)
            .and(" at deck ")
            .with(Amount::Size(check.height))
            .and(". Limit set for this design: ")
            .with(check.capacity)
            .and("."),
        remedy: None,
        cure: (grade != Grade::Fine).then_some(Cure::Crank),
        height: Some(check.height),
        spot: spot(check.member),
        curve: Some(Curve::ScrewForce),
    })
}

/// A higher lowest deck, and a longer crank, that keep to the limit, or well below it where it is only near; the first is tried out, the second
/// follows from the lever.
pub(super) fn remedy(report: &Report) -> Option<Phrase> {
    let (design, ratio) = (&report.design, report.check("crank-force")?.ratio);
    let (share, keeps) = if ratio > 1.0 { (1.0, "keeps to it") } else { (NEAR, "keeps well below it") };
    let limit = share * design.drive.crank_limit.to_n();
    let crank = Length::mm((design.drive.crank.to_mm() * ratio / share).ceil());
    let stop = higher_stop(design, limit)
        .map(|lowest| Phrase::new("A lowest deck of ").with(Amount::AtLeast(lowest.to_m())));
    let lever = (crank < design.lift.pin_line).then_some(Amount::AtLeast(crank.to_m()));
    match (stop, lever) {
        (Some(stop), Some(lever)) => {
            Some(stop.and(format!(" {keeps}; so does a crank of ")).with(lever).and("."))
        }
        (Some(stop), None) => Some(stop.and(format!(" {keeps}."))),
        (None, Some(lever)) => Some(Phrase::new("A crank of ").with(lever).and(format!(" {keeps}."))),
        (None, None) => None,
    }
}

/// The lowest stop, to the nearest millimetre above, with which the crank keeps to a limit.
fn higher_stop(design: &Design, limit: f64) -> Option<Length> {
    let at = |lowest: Length| {
        let mut changed = design.clone();
        changed.lift.lowest = lowest;
        changed
    };
    let (mut low, mut high) = (design.lift.lowest, design.lift.highest - Length::mm(1.0));
    if !keeps(&at(high), limit) {
        return None;
    }
    for _ in 0..HALVINGS {
        let middle = Length::from_steps(i64::midpoint(low.steps(), high.steps()));
        if keeps(&at(middle), limit) {
            high = middle;
        } else {
            low = middle;
        }
    }
    Some(Length::mm(high.to_mm().ceil()))
}

/// Whether the crank keeps to a limit at the lowest deck, where a higher stop acts.
fn keeps(design: &Design, limit: f64) -> bool {
    advice::station(design, design.lift.lowest.to_m()).is_some_and(|station| station.crank_raise() <= limit)
}
