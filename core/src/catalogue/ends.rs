//! How the ends of a pushed bar are held.

use super::{Source, Standing, listed};
use crate::quantity::Ratio;

/// A pair of ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ends {
    /// The row's number, unique in the table.
    pub id: u16,
    /// How they are held.
    pub name: &'static str,
    /// End-condition constant C of Euler's formula in theory, as one should build on at most, and as is usual; C = 1/K^2.
    pub constants: [f64; 3],
    /// Where the constants come from.
    pub source: Source,
}

const SHIGLEY_4_2: Source = Source::new("Shigley 9e table 4-2, page 183", Standing::Read);

const fn ends(id: u16, name: &'static str, constants: [f64; 3]) -> Ends {
    Ends { id, name, constants, source: SHIGLEY_4_2 }
}

/// Ends in the order they are offered.
pub static ENDS: [Ends; 4] = [
    ends(101, "Held square at one end, free at the other", [0.25, 0.25, 0.25]),
    ends(102, "Free to turn at both ends", [1.0, 1.0, 1.0]),
    ends(103, "Held square at one end, free to turn at the other", [2.0, 1.0, 1.2]),
    ends(104, "Held square at both ends", [4.0, 1.0, 1.2]),
];
listed!(Ends, ENDS);

impl Ends {
    /// The end factor K by the usual constant: the length that buckles as a part of the free length.
    #[must_use]
    pub fn factor(&self) -> Ratio {
        Ratio::of(self.constants[2].sqrt().recip())
    }
}
