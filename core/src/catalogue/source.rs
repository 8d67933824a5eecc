//! Where a value comes from, and how far it can be trusted.

use core::fmt;

/// How far a value can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Standing {
    /// Read in the source or in a copy of it.
    Read,
    /// Follows from a formula of the source; the printed table was not compared.
    Formula,
    /// Read in a second-hand copy or a maker's sheet; the source itself was not seen.
    SecondHand,
    /// Assumed for this program, deliberately on the weak side.
    Assumed,
    /// Usual in the trade; there is no source to point to.
    Practice,
    /// From memory; check it before relying on it.
    Memory,
}

impl Standing {
    /// The standing in words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Read => "read in the source",
            Self::Formula => "by the source's formula",
            Self::SecondHand => "read second-hand",
            Self::Assumed => "assumed, deliberately cautious",
            Self::Practice => "common practice, no source",
            Self::Memory => "from memory",
        }
    }
}

/// Where a value comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Source {
    /// Publication and place in it.
    pub title: &'static str,
    /// How far it can be trusted.
    pub standing: Standing,
}

impl Source {
    /// A source of that title and standing.
    #[must_use]
    pub const fn new(title: &'static str, standing: Standing) -> Self {
        Self { title, standing }
    }
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.title.is_empty() {
            f.write_str(self.standing.words())
        } else {
            write!(f, "{} ({})", self.title, self.standing.words())
        }
    }
}
