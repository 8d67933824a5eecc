//! The slow report as a file for other programs.
use super::csv;
use crate::mechanics::frame3::Stiffness3;
use crate::report::{Case, SwayReport, told};

/// The guesses, by their words.
const CASES: [(&str, Case); 4] = [
    ("stiff", Case::Stiff),
    ("middle", Case::Middle),
    ("soft", Case::Soft),
    ("guides in their play", Case::Unguided),
];

/// A figure of one guess: its name, its unit, and its value.
type Figure = (&'static str, &'static str, fn(&Stiffness3) -> Option<f64>);

const FIGURES: [Figure; 7] = [
    ("gives sideways", "mm", |at| Some(1e3 * told::gives(at))),
    ("gives sideways loaded", "mm", |at| told::gives_loaded(at).map(|metres| 1e3 * metres)),
    ("gives lengthwise", "mm", |at| Some(1e3 * told::gives_lengthwise(at))),
    ("twists", "mrad", |at| Some(1e3 * told::twists(at))),
    ("rolls", "mrad", |at| Some(1e3 * told::rolls(at))),
    ("corner drops", "mm", |at| Some(1e3 * told::corner_drops(at))),
    ("critical load", "times the load", |at| at.lambda),
];

/// All heights from the lowest up as CSV (RFC 4180): give under 50 N, twist and roll under 10 N m, corner drop under 100 N, free
/// play, and the push that lifts a wheel. A decimal point and a plain minus; an empty cell stands where there is no value.
#[must_use]
pub fn csv(sway: &SwayReport) -> String {
    let known: Vec<(&str, Case)> =
        CASES.into_iter().filter(|(_, case)| !sway.case(*case).is_empty()).collect();
    let mut heads = vec!["deck (mm)".to_owned()];
    for (name, unit, _) in FIGURES {
        heads.extend(known.iter().map(|(case, _)| format!("{name}, {case} ({unit})")));
    }
    heads.extend(
        ["rattles, at least (mm)", "rattles, at most (mm)", "push that lifts a wheel (N)"].map(String::from),
    );
    let names: Vec<&str> = heads.iter().map(String::as_str).collect();
    csv::table(
        &names,
        sway.heights.iter().enumerate().map(|(station, height)| {
            let mut row = vec![written(Some(1e3 * height))];
            for (_, _, value) in FIGURES {
                row.extend(
                    known.iter().map(|(_, case)| written(sway.case(*case).get(station).and_then(value))),
                );
            }
            let rattle = sway.rattle.get(station);
            row.push(written(rattle.map(|rattle| 1e3 * rattle.least)));
            row.push(written(rattle.map(|rattle| 1e3 * rattle.most)));
            row.push(written(sway.wheel_lift.get(station).and_then(|lift| lift.map(|lift| lift.push))));
            row
        }),
    )
}

/// A number with four decimals, nothing where there is none.
fn written(value: Option<f64>) -> String {
    value.filter(|value| value.is_finite()).map_or_else(String::new, |value| format!("{value:.4}"))
}
