//! How a link wants to be shown, besides its view and its design: words behind the view, with commas between them.
use super::figure36;
use crate::quantity::Length;

/// The deck at a height.
const AT: &str = "at";
/// Without the inputs.
const BARE: &str = "bare";
/// As a part of another page.
const EMBED: &str = "embed";

/// How a view is opened. A reader who knows a word less shows the same design without it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Manner {
    /// The deck's height; where none is given, the middle of the lift.
    pub at: Option<Length>,
    /// Whether the inputs are hidden, as a teacher wants it.
    pub bare: bool,
    /// Whether it stands within another page, without head and inputs.
    pub embed: bool,
}

impl Manner {
    /// Its words, each with a comma before it.
    #[must_use]
    pub fn write(&self) -> String {
        let mut text = String::new();
        if let Some(at) = self.at {
            text.push(',');
            text.push_str(AT);
            text.push_str(&figure36::write(at.steps()));
        }
        for word in
            [(self.bare, BARE), (self.embed, EMBED)].into_iter().filter_map(|(on, word)| on.then_some(word))
        {
            text.push(',');
            text.push_str(word);
        }
        text
    }

    /// The manner that some words ask for; unknown ones are passed over.
    pub(super) fn read<'a>(words: impl Iterator<Item = &'a str>) -> Self {
        let mut manner = Self::default();
        for word in words {
            match word {
                BARE => manner.bare = true,
                EMBED => manner.embed = true,
                _ => {
                    let at = word.strip_prefix(AT).and_then(figure36::read).map(Length::from_steps);
                    manner.at = at.or(manner.at);
                }
            }
        }
        manner
    }
}
