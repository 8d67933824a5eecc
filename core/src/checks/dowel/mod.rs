//! Bolts and dowels across wood, after Johansen's yield theory: the wood is crushed, the bolt tilts, or it bends.
//!
//! Plain `f64` in SI. Two codes put their own factors on the same mechanics: [`ec5`] and [`nds`].

pub mod ec5;
pub mod nds;

/// One way in which a joint fails.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mode {
    /// The mode's mark in its code.
    pub mark: &'static str,
    /// Load at which it does, N.
    pub load: f64,
}

impl Mode {
    const fn new(mark: &'static str, load: f64) -> Self {
        Self { mark, load }
    }

    /// The one that fails first; the first of equals.
    #[must_use]
    pub fn least(modes: impl IntoIterator<Item = Self>) -> Self {
        let lesser = |least: Self, mode: Self| if mode.load < least.load { mode } else { least };
        modes.into_iter().fold(Self::new("", f64::INFINITY), lesser)
    }
}

/// A member of wood that a bolt goes through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bed {
    /// Its thickness along the bolt, m.
    pub thickness: f64,
    /// Diameter that presses on it, m: the bolt's, or that of a bushing around it.
    pub diameter: f64,
    /// What its wood stands being crushed, Pa.
    pub strength: f64,
}

impl Bed {
    /// What it holds for a length of the bolt, N/m.
    fn line(&self) -> f64 {
        self.strength * self.diameter
    }

    /// What it holds crushed over its whole thickness, N.
    fn crushed(&self) -> f64 {
        self.line() * self.thickness
    }
}

/// Two members of wood beside each other on a bolt.
///
/// How the bolt gives way between them is the least load in balance with crushed wood, whose line loads are known, and hinges in the bolt, whose
/// moment is: a quadratic for each mode. Without a gap they are Johansen's; with one they are the general dowel equations (American Wood
/// Council, Technical Report 12, from memory).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plane {
    /// The members.
    pub beds: [Bed; 2],
    /// What is free between them, m.
    pub gap: f64,
    /// Yield moment of the bolt, N m.
    pub yield_moment: f64,
}

impl Plane {
    /// What one member adds to the quadratic where the bolt turns in it, or where it bends in it.
    fn terms(&self, member: usize, hinged: bool) -> [f64; 3] {
        let bed = self.beds[member];
        if hinged {
            [0.5 / bed.line(), 0.0, self.yield_moment]
        } else {
            [0.25 / bed.line(), 0.5 * bed.thickness, 0.25 * bed.crushed() * bed.thickness]
        }
    }

    fn load(&self, hinged: [bool; 2]) -> f64 {
        let (one, other) = (self.terms(0, hinged[0]), self.terms(1, hinged[1]));
        let (a, b, c) = (one[0] + other[0], one[1] + other[1] + self.gap.max(0.0), one[2] + other[2]);
        // The positive root of a P^2 + b P = c, in the form that loses no digits.
        2.0 * c / (b + (b * b + 4.0 * a * c).sqrt())
    }

    /// The stiff bolt turns in both members, N.
    fn tilted(&self) -> f64 {
        self.load([false, false])
    }

    /// The bolt turns in that member and bends in the other, N.
    fn hinged_beside(&self, turning: usize) -> f64 {
        self.load([turning != 0, turning != 1])
    }

    /// The bolt bends in both members, N.
    fn bent(&self) -> f64 {
        self.load([true, true])
    }
}
