//! A finding as a sentence of a page.
use super::document::Text;
use crate::quantity::{Phrase, System};
use crate::report::Finding;

/// How bad it is, what was found, and what would help where that is told.
pub(super) fn told(finding: &Finding, remedy: Option<&Phrase>, system: System) -> Text {
    let text =
        Text::default().strong(format!("{}. ", finding.grade.word())).words(finding.phrase.text(system));
    match remedy {
        Some(remedy) => text.words(" ").words(remedy.text(system)),
        None => text,
    }
}
