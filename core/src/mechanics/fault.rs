//! What keeps a mechanism, or one height of it, from being computed.

use std::fmt;

/// A reason why there is no answer, in words for the user.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// Where it is: the key path in the mechanism (`arm.w`), or the part of the computation (`height`).
    pub place: String,
    /// What is wrong, as a sentence without the place.
    pub text: String,
}

impl Fault {
    /// A fault at `place` described by `text`.
    pub fn new(place: impl Into<String>, text: impl Into<String>) -> Self {
        Self { place: place.into(), text: text.into() }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.place, self.text)
    }
}

impl std::error::Error for Fault {}
