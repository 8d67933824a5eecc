//! By what a stiffness is told: what the deck does under a push, a couple or a weight that one can imagine.
use super::{CORNER, COUPLE, PUSH};
use crate::mechanics::frame3::Stiffness3;

/// Below this multiple of the load the second-order stiffness says nothing: the table is too near its collapse. Held to an independent
/// solver above it only.
const SECOND_ORDER: f64 = 2.0;

/// How far the deck gives sideways under [`PUSH`], m.
#[must_use]
pub fn gives(at: &Stiffness3) -> f64 {
    PUSH / at.sway
}

/// The same with the load on the deck, whose weight leans with it, m; none where less than twice the load is critical.
#[must_use]
pub fn gives_loaded(at: &Stiffness3) -> Option<f64> {
    if at.lambda.is_some_and(|multiple| multiple < SECOND_ORDER) {
        return None;
    }
    at.sway_pdelta.map(|sway| PUSH / sway)
}

/// How far it gives lengthwise under [`PUSH`], m.
#[must_use]
pub fn gives_lengthwise(at: &Stiffness3) -> f64 {
    PUSH / at.push
}

/// How far it turns about the upright under [`COUPLE`], rad.
#[must_use]
pub fn twists(at: &Stiffness3) -> f64 {
    COUPLE / at.twist
}

/// How far it turns about the lengthwise axis under [`COUPLE`], rad.
#[must_use]
pub fn rolls(at: &Stiffness3) -> f64 {
    COUPLE / at.roll
}

/// How far its corner drops under [`CORNER`] there, m.
#[must_use]
pub fn corner_drops(at: &Stiffness3) -> f64 {
    CORNER * at.corner_flex
}
