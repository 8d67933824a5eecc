//! A fault of the mechanics as a sentence for the builder, and as what keeps a design from being computed.
use super::{Obstacle, Unsound};
use crate::mechanics::Fault;
use crate::quantity::{Phrase, capital};

/// Why the mechanics do not compute a design: the first of their faults.
pub(super) fn unsolvable(faults: &[Fault]) -> Unsound {
    let phrase = faults.first().map_or_else(|| Phrase::new("The table cannot be computed."), sentence);
    Unsound::Obstacle(Obstacle { key: "dr", phrase })
}

/// What keeps a mechanism from being computed, as a sentence.
pub(super) fn sentence(fault: &Fault) -> Phrase {
    let text = if fault.text.starts_with("is ") { fault.to_string() } else { fault.text.clone() };
    Phrase::new(format!("{}.", capital(&text)))
}
