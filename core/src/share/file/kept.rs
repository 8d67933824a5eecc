//! What a file holds that this version does not know.
use serde_json::{Map, Value};

use super::strict;

/// The most that is kept of it, bytes as JSON; beyond that it is let go.
pub const KEPT_LIMIT: usize = 16_000;

/// Members of a design's file that this version does not know: beside `name` and `inputs`, and among the inputs. They are written again with the design.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Kept {
    pub(super) members: Map<String, Value>,
    pub(super) inputs: Map<String, Value>,
}

impl Kept {
    /// As one line of text, to be kept beside the design; empty where nothing is kept.
    #[must_use]
    pub fn text(&self) -> String {
        if *self == Self::default() {
            return String::new();
        }
        let mut whole = Map::new();
        whole.insert("members".into(), Value::Object(self.members.clone()));
        whole.insert("inputs".into(), Value::Object(self.inputs.clone()));
        Value::Object(whole).to_string()
    }

    /// From such a text; nothing is kept of any other.
    #[must_use]
    pub fn of(text: &str) -> Self {
        let parsed = if text.len() > 2 * KEPT_LIMIT { None } else { strict::parse(text).ok() };
        let part = |name: &str| {
            let part = parsed.as_ref().and_then(|whole| whole.get(name)).and_then(Value::as_object);
            part.cloned().unwrap_or_default()
        };
        Self { members: part("members"), inputs: part("inputs") }.bounded()
    }

    /// All of it, or nothing where it is too much.
    pub(super) fn bounded(self) -> Self {
        if self.text().len() > KEPT_LIMIT { Self::default() } else { self }
    }
}
