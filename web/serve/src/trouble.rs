//! What can go wrong, as one sentence for the person at the terminal.
use std::fmt;
use std::io;
use std::path::Path;

/// One clear sentence that says what failed and, where it is known, what to do.
#[derive(Debug, PartialEq, Eq)]
pub struct Trouble(String);

impl Trouble {
    /// A trouble told by `sentence`.
    pub fn new(sentence: impl Into<String>) -> Self {
        Self(sentence.into())
    }

    /// For `map_err`: could not do `deed` (a verb) with `path`, for the reason the system gives.
    pub fn with_path(deed: &str, path: &Path) -> impl FnOnce(io::Error) -> Self {
        move |reason| Self(format!("could not {deed} {}: {reason}.", path.display()))
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&self.0)
    }
}
