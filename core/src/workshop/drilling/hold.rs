//! What the builder's own drilling does to the deck, and how exact it must be for what is accepted.
use super::exact::{Effect, Exactness, Method, largest};
use crate::design::Design;
use crate::mechanics::{Fault, Solver};
use crate::quantity::Length;

/// Deck heights looked at, from the lowest to the highest.
const HEIGHTS: u8 = 21;

/// Errors to hold are given in whole steps of this, rounded down.
const STEP: Length = Length::mm(0.05);

/// Nobody is asked to drill more exactly than this, by hand or under a drill press (common practice, no source).
const FINEST: Length = Length::mm(0.05);

/// How exact the holes of the pivots are and must be.
#[derive(Clone, Debug, PartialEq)]
pub struct Hold {
    /// What a unit of error does with each way of drilling, the largest over all heights, in the order of [`Method::ALL`].
    pub ways: Vec<(Method, Exactness)>,
    /// The error that gives the tilt accepted, m, for each way in the same order; infinite where none does.
    pub errors: Vec<Effect>,
    /// How far the holes of the pivots may be off: what the builder holds, or less where the deck would else stand further out of level than
    /// is accepted, left and right arm drilled together and the root of the sum of squares counted.
    pub tolerance: Length,
}

impl Hold {
    /// Whether the error that the builder holds is good enough.
    #[must_use]
    pub fn is_enough(&self, design: &Design) -> bool {
        self.tolerance >= design.shop.drilling
    }
}

/// How exact the holes of a design must be.
///
/// # Errors
/// Where the deck cannot stand at one of its heights, or the arms lie too flat to say.
pub fn hold(design: &Design, solver: &Solver) -> Result<Hold, Fault> {
    let (low, high) = (design.lift.lowest.to_m(), design.lift.highest.to_m());
    let last = f64::from(HEIGHTS - 1);
    let heights: Vec<f64> = (0..HEIGHTS).map(|at| low + (high - low) * f64::from(at) / last).collect();
    let accepted = design.shop.level.to_m() / design.frames.deck_length.to_m();
    let mut ways = Vec::new();
    for method in Method::ALL {
        if let Some(most) = largest(design, solver, method, &heights)? {
            ways.push((method, most));
        }
    }
    let errors: Vec<Effect> = ways.iter().map(|(_, exact)| exact.tilt.error_for(accepted)).collect();
    let pairs = ways.iter().zip(&errors).find(|((method, _), _)| *method == Method::Pairs);
    let needed = pairs.map_or(f64::INFINITY, |(_, error)| error.rss);
    let held = design.shop.drilling;
    let tolerance = if needed >= held.to_m() { held } else { down(needed) };
    Ok(Hold { ways, errors, tolerance })
}

/// The next whole step below, not finer than can be drilled; m.
fn down(error: f64) -> Length {
    let steps = (error / STEP.to_m()).floor().max(0.0);
    Length::mm(steps * STEP.to_mm()).max(FINEST)
}
