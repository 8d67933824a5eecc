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
    fn least<const N: usize>(modes: [Self; N]) -> Self {
        let first = modes.into_iter().reduce(|least, mode| if mode.load < least.load { mode } else { least });
        first.unwrap_or(Self::new("", 0.0))
    }
}
