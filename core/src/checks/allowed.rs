//! What may be used of the strengths of wood and steel: the strength, what lasting load and damp leave of it, and what it is divided by.
//!
//! Plain `f64` in SI.
use super::timber::usable;
use crate::design::Design;
use crate::quantity::{Amount, Ratio, Stress};

/// A strength, and what the checks use of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowed {
    /// What it is the strength of.
    pub what: &'static str,
    /// The strength as it was given.
    pub strength: Amount,
    /// What lasting load and damp leave of it, as a share; none for steel.
    pub duration: Option<f64>,
    /// What it is divided by.
    pub safety: f64,
    /// What the checks use.
    pub used: Amount,
}

/// Yield strength of bars and axles that may be used, Pa.
pub(super) fn steel(design: &Design) -> f64 {
    design.strength.steel_yield.to_pa() / design.strength.steel_safety.value()
}

/// Yield strength of the bolts that may be used, Pa.
pub(super) fn bolt(design: &Design) -> f64 {
    design.strength.bolt_yield.to_pa() / design.strength.steel_safety.value()
}

/// Yield strength of the screw that may be used, Pa.
pub(super) fn screw(design: &Design) -> f64 {
    design.strength.screw_yield.to_pa() / design.strength.screw_safety.value()
}

/// The strengths most checks lean on, with what is used of them.
#[must_use]
pub fn allowed(design: &Design) -> [Allowed; 6] {
    let given = &design.strength;
    let wood = |what, strength: Stress| Allowed {
        what,
        strength: Amount::Stress(strength.to_pa()),
        duration: Some(given.duration.value()),
        safety: given.wood_safety.value(),
        used: Amount::Stress(usable(design, strength)),
    };
    let metal = |what, strength: Stress, safety: Ratio, used: f64| Allowed {
        what,
        strength: Amount::Stress(strength.to_pa()),
        duration: None,
        safety: safety.value(),
        used: Amount::Stress(used),
    };
    [
        wood("Wood, bending", given.bending),
        wood("Wood, shear", given.shear),
        wood("Wood, pressed", given.crushing),
        metal("Bolts, yield", given.bolt_yield, given.steel_safety, bolt(design)),
        metal("Bars and axles, yield", given.steel_yield, given.steel_safety, steel(design)),
        metal("Screw, yield", given.screw_yield, given.screw_safety, screw(design)),
    ]
}
