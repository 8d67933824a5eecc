//! The quantities themselves: one small type each, one constructor a unit, one reading a unit.
//!
//! Constructors are named after their unit (`Length::mm(38.1)`), readings `to_` the unit (`length.to_m()`).
//! A constructor rounds to the nearest step, half a step away from zero; a value beyond the range of an `i64` ends at
//! that range, and a NaN gives zero.
//! Sums, differences and multiples saturate at the same range instead of overflowing.

use core::iter::Sum;
use core::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

use serde::{Deserialize, Serialize};

use super::kind::{Kind, Quantity};

/// Steps nearest to `value` units of `per` steps each; saturating, zero for NaN.
#[allow(clippy::cast_possible_truncation, reason = "the cast saturates and maps NaN to zero, as documented")]
const fn nearest(value: f64, per: f64) -> i64 {
    (value * per).round() as i64
}

macro_rules! quantity {
    ($(#[$about:meta])* $name:ident, $kind:ident) => {
        $(#[$about])*
        #[derive(
            Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
        )]
        #[serde(transparent)]
        pub struct $name(i64);

        impl $name {
            /// Nothing.
            pub const ZERO: Self = Self(0);

            /// The value of so many steps.
            #[must_use]
            pub const fn from_steps(steps: i64) -> Self {
                Self(steps)
            }

            /// The value in whole steps.
            #[must_use]
            pub const fn steps(self) -> i64 {
                self.0
            }

            /// The same size without its sign.
            #[must_use]
            pub const fn abs(self) -> Self {
                Self(self.0.saturating_abs())
            }
        }

        impl Quantity for $name {
            const KIND: Kind = Kind::$kind;

            fn steps(self) -> i64 {
                self.0
            }

            fn from_steps(steps: i64) -> Self {
                Self(steps)
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0.saturating_add(other.0))
            }
        }

        impl AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                *self = *self + other;
            }
        }

        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0.saturating_sub(other.0))
            }
        }

        impl SubAssign for $name {
            fn sub_assign(&mut self, other: Self) {
                *self = *self - other;
            }
        }

        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(self.0.saturating_neg())
            }
        }

        impl Mul<i64> for $name {
            type Output = Self;
            fn mul(self, times: i64) -> Self {
                Self(self.0.saturating_mul(times))
            }
        }

        impl Sum for $name {
            fn sum<I: Iterator<Item = Self>>(values: I) -> Self {
                values.fold(Self::ZERO, Add::add)
            }
        }
    };
}

/// A constructor and a reading for each unit: `name: constructor, reading, steps in one unit`.
macro_rules! units {
    ($name:ident { $($from:ident, $to:ident, $per:expr, $unit:literal;)+ }) => {
        impl $name {
            $(
                #[doc = concat!("The value of so many ", $unit, ", to the nearest step.")]
                #[must_use]
                pub const fn $from(value: f64) -> Self {
                    Self(nearest(value, $per))
                }

                #[doc = concat!("The value in ", $unit, ".")]
                #[must_use]
                pub const fn $to(self) -> f64 {
                    self.0 as f64 / $per
                }
            )+
        }
    };
}

quantity! {
    /// A size or place: whole steps of 1/1600 mm, so that 0.01 mm is 16 steps and 1/64 in is 635.
    Length, Length
}
units! { Length {
    mm, to_mm, 1600.0, "millimetres";
    m, to_m, 1_600_000.0, "metres";
    inch, to_inch, 40_640.0, "inches of 25.4 mm";
} }

quantity! {
    /// A mass: whole steps of 1e-8 kg, so that one pound is 45 359 237 steps.
    Mass, Mass
}
units! { Mass {
    kg, to_kg, 1e8, "kilograms";
    lb, to_lb, 45_359_237.0, "pounds of 0.45359237 kg";
} }

quantity! {
    /// A force: whole steps of 1 mN.
    Force, Force
}
units! { Force {
    n, to_n, 1e3, "newtons";
    kn, to_kn, 1e6, "kilonewtons";
    lbf, to_lbf, 4_448.221_615_260_5, "pounds of force (0.45359237 kg at 9.80665 m/s2)";
} }

quantity! {
    /// A number without a unit: whole steps of 1e-5.
    Ratio, Ratio
}
units! { Ratio {
    of, value, 1e5, "ones";
    percent, to_percent, 1e3, "hundredths";
} }

quantity! {
    /// A stress, pressure or elastic modulus: whole steps of 1 kPa.
    Stress, Stress
}
units! { Stress {
    pa, to_pa, 1e-3, "pascals";
    mpa, to_mpa, 1e3, "megapascals";
    gpa, to_gpa, 1e6, "gigapascals";
    psi, to_psi, 6.894_757_293_168_361, "pounds of force a square inch";
} }

quantity! {
    /// A mass in a volume: whole steps of 0.1 kg/m3.
    Density, Density
}
units! { Density {
    kg_m3, to_kg_m3, 10.0, "kilograms a cubic metre";
} }

quantity! {
    /// How fast the crank is turned: whole steps of a tenth of a turn a minute.
    Pace, Pace
}
units! { Pace {
    per_minute, to_per_minute, 10.0, "turns a minute";
} }

quantity! {
    /// A number of pieces.
    Count, Count
}

impl Count {
    /// So many pieces.
    #[must_use]
    pub const fn of(pieces: i64) -> Self {
        Self(pieces)
    }

    /// The number of pieces.
    #[must_use]
    pub const fn get(self) -> i64 {
        self.0
    }
}

quantity! {
    /// A price: whole hundredths of whatever currency the reader uses.
    Money, Money
}
units! { Money {
    of, value, 100.0, "currency units";
} }

quantity! {
    /// A price for each length of bar: whole hundredths of whatever currency the reader uses, a metre.
    Rate, Rate
}
units! { Rate {
    a_metre, to_a_metre, 100.0, "currency units a metre";
} }

quantity! {
    /// An angle: whole steps of 1/100 degree.
    Angle, Angle
}
units! { Angle {
    degrees, to_degrees, 100.0, "degrees";
} }

impl Angle {
    /// The angle in radians.
    #[must_use]
    pub const fn to_radians(self) -> f64 {
        self.to_degrees() * (core::f64::consts::PI / 180.0)
    }
}

quantity! {
    /// How much force a part takes for its give: whole steps of 1 N/mm.
    Stiffness, Stiffness
}
units! { Stiffness {
    n_per_mm, to_n_per_mm, 1.0, "newtons a millimetre";
    n_per_m, to_n_per_m, 1e-3, "newtons a metre";
    lbf_per_inch, to_lbf_per_inch, 0.175_126_835_246_476_4, "pounds of force an inch";
} }
