//! Whether a design can stand at all: its rules kept, both ends of its lift within reach of the linkage.
use super::Unsound;
use super::fault::sentence;
use super::relations::{Obstacle, broken};
use crate::design::{Design, check};
use crate::mechanics::limits::LowStop;
use crate::mechanics::{Detail, Fault, Solver, free};
use crate::quantity::{Amount, Phrase};

/// How finely the lift is looked through for a dead point of the screw.
const LOOKS: u32 = 24;

/// The deck may stand this much outside the linkage's own reach and count as in it, m: well below a stored step.
const SLACK: f64 = 1e-9;

/// The first reason why the design cannot stand. Nothing when it can.
///
/// # Errors
/// The [`Obstacle`], with the input to blame and the rule in words.
pub fn reach(design: &Design) -> Result<(), Obstacle> {
    if let Some(obstacle) = broken(design) {
        return Err(obstacle);
    }
    let mechanism = free(design);
    let solver = Solver::new(&mechanism).map_err(|faults| {
        let phrase =
            faults.first().map_or_else(|| Phrase::new("The linkage cannot be put together."), sentence);
        Obstacle::new("al", phrase)
    })?;
    let limits = solver.limits();
    let (low, high) = (design.lift.lowest.to_m(), design.lift.highest.to_m());
    if let Some(folded) = limits.height_low.filter(|folded| low < folded - SLACK) {
        let why = if limits.low_stop == LowStop::Nesting {
            ", where the arms meet."
        } else {
            ", where the arms lie flat."
        };
        return Err(Obstacle::new(
            "lo",
            Phrase::new("The deck comes down to ").with(Amount::AtLeast(folded)).and(why),
        ));
    }
    if let Some(upright) = limits.height_high.filter(|upright| high >= upright - SLACK) {
        return Err(Obstacle::new(
            "hi",
            Phrase::new("The deck stays below ")
                .with(Amount::AtMost(upright))
                .and(", where the arms stand upright."),
        ));
    }
    screw_path(&solver, low, high)
}

/// The same, asked first whether every input lies in its range.
///
/// # Errors
/// What is wrong.
pub(super) fn stands(design: &Design) -> Result<(), Unsound> {
    let faults = check(design);
    if !faults.is_empty() {
        return Err(Unsound::Range(faults));
    }
    reach(design).map_err(Unsound::Obstacle)
}

/// The screw must go one way from the lowest to the highest deck, and keep a length.
fn screw_path(solver: &Solver, low: f64, high: f64) -> Result<(), Obstacle> {
    let mut way = 0.0;
    for look in 0..=LOOKS {
        let height = low + (high - low) * f64::from(look) / f64::from(LOOKS);
        let Ok(rate) = travel_rate(solver, height) else {
            return Err(Obstacle::new(
                "dr",
                Phrase::new("The screw cannot lift with the deck at ")
                    .with(Amount::Size(height))
                    .and(": its ends meet, it stands at a dead point, or friction jams the arms. Move its bearing or its ends."),
            ));
        };
        if way * rate < 0.0 {
            return Err(Obstacle::new(
                "dr",
                Phrase::new("The screw passes a dead point with the deck near ")
                    .with(Amount::Size(height))
                    .and(": there it can no longer lift. Move one of its ends."),
            ));
        }
        way = rate;
    }
    Ok(())
}

/// How fast the screw moves at a height, with the sign of its way; only where the table can also be raised and lowered.
fn travel_rate(solver: &Solver, height: f64) -> Result<f64, Fault> {
    let pose = solver.pose_at_height(height)?;
    solver.state(&pose, Detail::ALL)?;
    let system = solver.equilibrium(&pose)?;
    Ok(system.screw().travel_rate * system.screw().sigma)
}
