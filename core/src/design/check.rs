//! Whether every input lies where it may.
use super::{Design, Field};

/// An input outside its range.
#[derive(Clone, Copy, Debug)]
pub struct Fault {
    /// Which input.
    pub field: &'static Field,
    /// Its value, in steps.
    pub steps: i64,
    /// The allowed value nearest to it, in steps.
    pub nearest: i64,
}

/// Every input that lies outside its own range, in the order of the groups.
///
/// It judges each input alone; whether they go together is for [`crate::report::reach`].
#[must_use]
pub fn check(design: &Design) -> Vec<Fault> {
    Design::fields()
        .filter_map(|field| {
            let steps = field.get(design);
            (!field.allows(steps)).then(|| Fault { field, steps, nearest: field.nearest(steps) })
        })
        .collect()
}
