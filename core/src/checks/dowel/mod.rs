//! Bolts and dowels across wood, after Johansen's yield theory: the wood is crushed, the bolt tilts, or it bends.
//!
//! Plain `f64` in SI. Two codes put their own factors on the same mechanics: [`ec5`] and [`nds`].

pub mod ec5;
pub mod nds;

/// The least of the loads of several modes of failure, N, with the mode's mark; the first of equals.
fn least<const N: usize>(modes: [(&'static str, f64); N]) -> Mode {
    let least = modes.into_iter().reduce(|least, mode| if mode.1 < least.1 { mode } else { least });
    let (mark, load) = least.unwrap_or(("", 0.0));
    Mode { mark, load }
}

/// How a joint fails first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mode {
    /// The mode's mark in its code.
    pub mark: &'static str,
    /// Load of one shear plane, N.
    pub load: f64,
}
