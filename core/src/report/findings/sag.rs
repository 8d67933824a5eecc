//! How far the deck sags, and whether the table is so low that it sags faster than its load grows.
use crate::quantity::{Amount, Phrase};
use crate::report::advice;
use crate::report::finding::{Cure, Curve, Finding, Grade, Spot};
use crate::report::{Report, Station};

/// Shares of the lift from which the linear sag is too small, is not to be trusted, and the table can collapse flat when loaded low.
/// The last is the limit point of n W cot(theta) = k_x L (cos(theta) - cos(theta_0)): 0.19 of the tangent limit k_x L sin^3(theta) / n
/// at the unloaded angle; the others are steps towards it. Derived for this program; shallow-arch snap-through in any text on elastic stability.
const GROWS: f64 = 0.05;
pub(crate) const UNSAFE: f64 = 0.10;
pub(crate) const COLLAPSES: f64 = 0.19;

/// A side that carries more than this share of the load is named, and its sag shown.
const EVEN: f64 = 0.505;

/// The largest sag and its share of the lift.
pub(super) fn drop(report: &Report) -> Finding {
    let (share, height) = report.greatest(Station::sag_share);
    let station = report.at(height);
    let sag = station.sag();
    let start = Phrase::new("Sag: ")
        .with(Amount::Give(sag.total()))
        .and(" under the load at deck ")
        .with(Amount::Size(height))
        .and(", ")
        .with(Amount::Share(share))
        .and(" of the height of the arms there");
    let start = if report.share > EVEN {
        start.and(", on the side that carries ").with(Amount::Share(report.share)).and(" of the load")
    } else {
        start
    };
    let (grade, phrase) = if share > COLLAPSES {
        (Grade::Over, start.and(": loaded this low the table can collapse flat."))
    } else if share > UNSAFE {
        (Grade::Over, start.and(": it grows much faster than the load."))
    } else if share > GROWS {
        (Grade::Watch, start.and(", so it grows faster than the load."))
    } else {
        (Grade::Fine, start.and("."))
    };
    Finding {
        grade,
        ratio: share / UNSAFE,
        phrase,
        remedy: None,
        cure: (grade != Grade::Fine).then_some(Cure::Sag),
        height: Some(height),
        spot: Spot::Deck,
        curve: Some(Curve::Sag),
    }
}

/// The part that gives most, and the step that takes most off it.
pub(super) fn remedy(report: &Report) -> Phrase {
    let (_, height) = report.greatest(Station::sag_share);
    let station = report.at(height);
    let sag = station.sag();
    let causes = [
        ("the arms", sag.arms),
        ("the pivots in their holes", sag.joints),
        ("the wheels", sag.wheels),
        ("the screw and what holds it", sag.screw),
        ("the deck rails", sag.top_rails),
        ("the base beams", sag.base_rails),
        ("the casters", sag.casters),
    ];
    let most = causes
        .into_iter()
        .fold(("", f64::NEG_INFINITY), |most, cause| if cause.1 > most.1 { cause } else { most });
    let start =
        Phrase::new("Most of it, ").with(Amount::Give(most.1)).and(format!(", comes from {}. ", most.0));
    match advice::best(advice::against_sag(&report.design), height, |station| station.sag().total()) {
        Some((trial, less)) if less < sag.total() => {
            start.then(trial.words).and(" makes it ").with(Amount::Give(less)).and(".")
        }
        _ => start.and("Raise the lowest deck."),
    }
}
