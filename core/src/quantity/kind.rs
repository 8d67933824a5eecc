//! What sort of thing a number is, and which units the reader is used to.

use serde::{Deserialize, Serialize};

/// The sort of thing an input is: decides which units are understood and how the value is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Kind {
    /// A size or place, in steps of 1/1600 mm.
    Length,
    /// A mass (spoken of as a weight), in steps of 1e-8 kg.
    Mass,
    /// A force, in steps of 1 mN.
    Force,
    /// A number without a unit, such as a coefficient of friction or a share, in steps of 1e-5.
    Ratio,
    /// A stress, pressure or elastic modulus, in steps of 1 kPa.
    Stress,
    /// A mass in a volume, in steps of 0.1 kg/m3.
    Density,
    /// Crank turns a minute, in steps of 0.1.
    Pace,
    /// A number of pieces, in steps of 1.
    Count,
    /// A price in whatever currency the reader uses, in steps of 0.01.
    Money,
    /// A price for each length of bar, in steps of 0.01 a metre.
    Rate,
    /// An angle, in steps of 1/100 degree.
    Angle,
    /// A force for each length of give, in steps of 1 N/mm.
    Stiffness,
    /// One of a numbered list; the step is the place in the list.
    Choice,
    /// Yes (1) or no (0).
    Switch,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Self; 14] = [
        Self::Length,
        Self::Mass,
        Self::Force,
        Self::Ratio,
        Self::Stress,
        Self::Density,
        Self::Pace,
        Self::Count,
        Self::Money,
        Self::Rate,
        Self::Angle,
        Self::Stiffness,
        Self::Choice,
        Self::Switch,
    ];
}

/// The units a reader is used to: what a bare number means, and what values are printed in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum System {
    /// Millimetres, kilograms, newtons, megapascals.
    #[default]
    Metric,
    /// Inches, pounds, pounds of force, pounds a square inch.
    Inch,
}

/// A value held as whole steps of its kind.
pub trait Quantity: Copy {
    /// What sort of thing the value is.
    const KIND: Kind;

    /// The value in steps of its kind.
    fn steps(self) -> i64;

    /// The value of so many steps.
    fn from_steps(steps: i64) -> Self;
}
