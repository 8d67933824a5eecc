//! A fault of the mechanics as a sentence for the builder.
use crate::mechanics::Fault;
use crate::quantity::Phrase;

/// What keeps a mechanism from being computed, as a sentence.
pub(super) fn sentence(fault: &Fault) -> Phrase {
    let text = if fault.text.starts_with("is ") { fault.to_string() } else { fault.text.clone() };
    let mut letters = text.chars();
    let first = letters.next().map(|letter| letter.to_uppercase().to_string()).unwrap_or_default();
    Phrase::new(format!("{first}{}.", letters.as_str()))
}
