//! How much of what a part can take is used: a bar for a list, a small curve over the deck's height, and a large one beside the table with
//! the part drawn wide.

mod bar;
mod beside;
mod curve;

pub use bar::{axis, bar, bar_scale, sign, spark};
pub use beside::Beside;

use crate::checks::Check;

/// Beyond this ratio nothing is drawn but an arrow: it is twice too much, how far beyond is a figure.
const MOST_DRAWN: f64 = 2.0;

/// A picture for use among words.
#[derive(Clone, Debug, PartialEq)]
pub struct Small {
    /// Its SVG elements.
    pub marks: String,
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
}

/// The ratio as far as it is drawn.
fn drawn(ratio: f64) -> f64 {
    ratio.clamp(0.0, MOST_DRAWN)
}

/// The lowest deck of a check's curve and how far it lifts from there, m; never nothing.
fn lift(check: &Check) -> (f64, f64) {
    let low = check.curve.first().map_or(check.height, |point| point.0);
    let high = check.curve.last().map_or(check.height, |point| point.0);
    (low, (high - low).max(1e-6))
}
