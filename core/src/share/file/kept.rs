//! What a file holds that this version does not know.
use serde_json::{Map, Value};

use super::{member, strict};
use crate::design::Design;

/// The most that is kept of it, bytes as JSON; beyond that it is let go.
pub const KEPT_LIMIT: usize = 4_000;

/// How deep it may lie, counted in [`Kept::text`], so that it can be written into a shelf and read again; deeper, it is let go.
pub const KEPT_DEEPEST: usize = 10;

/// The members of a file that have a meaning.
const KNOWN: [&str; 5] = ["format", "version", "name", "inputs", "designs"];

/// Members of a design's file that this version does not know: beside `name` and `inputs`, among the inputs, and within an input that it knows. They are written
/// again with the design.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Kept {
    pub(super) members: Map<String, Value>,
    pub(super) inputs: Map<String, Value>,
    /// By the key of an input, what stands within it beside its value.
    pub(super) within: Map<String, Value>,
}

impl Kept {
    /// All of it that this version does not know; nothing where it is too much.
    pub(super) fn new(
        mut members: Map<String, Value>,
        mut inputs: Map<String, Value>,
        mut within: Map<String, Value>,
    ) -> Self {
        // What an older version kept may have a meaning by now. Written beside the member of that meaning it would stand twice.
        members.retain(|name, _| !KNOWN.contains(&name.as_str()));
        inputs.retain(|key, _| Design::field(key).is_none());
        within.retain(|key, parts| {
            let Some(parts) = parts.as_object_mut() else { return false };
            parts.retain(|name, _| !member::KNOWN.contains(&name.as_str()));
            !parts.is_empty() && Design::field(key).is_some()
        });
        let kept = Self { members, inputs, within };
        let text = kept.text();
        let bounded = text.len() <= KEPT_LIMIT && strict::depth(&text) <= KEPT_DEEPEST;
        if bounded { kept } else { Self::default() }
    }

    /// As one line of text, to be kept beside the design; empty where nothing is kept.
    #[must_use]
    pub fn text(&self) -> String {
        if *self == Self::default() {
            return String::new();
        }
        let parts = [("members", &self.members), ("inputs", &self.inputs), ("within", &self.within)];
        let whole = parts.map(|(name, part)| (name.to_owned(), Value::Object(part.clone())));
        Value::Object(whole.into_iter().collect()).to_string()
    }

    /// From such a text; nothing is kept of any other.
    #[must_use]
    pub fn of(text: &str) -> Self {
        let parsed = if text.len() > KEPT_LIMIT { None } else { strict::parse(text).ok() };
        let part = |name: &str| {
            let part = parsed.as_ref().and_then(|whole| whole.get(name)).and_then(Value::as_object);
            part.cloned().unwrap_or_default()
        };
        Self::new(part("members"), part("inputs"), part("within"))
    }
}
