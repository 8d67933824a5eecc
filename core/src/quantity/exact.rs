//! Exact fractions: what a number is while it is being read or printed, so that no digit depends on floating point.

/// A fraction of two whole numbers; the denominator is never negative.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Exact {
    num: i128,
    den: i128,
}

impl Exact {
    /// `num / den`. The denominator must not be negative; a zero is found by [`Self::over_zero`] before use.
    pub(super) const fn of(num: i128, den: i128) -> Self {
        Self { num, den }
    }

    /// `num / den`, or nothing when the denominator is not above zero.
    pub(super) fn ratio(num: i128, den: i128) -> Option<Self> {
        (den > 0).then_some(Self { num, den })
    }

    /// The sum, or nothing when it does not fit.
    pub(super) fn plus(self, other: Self) -> Option<Self> {
        let left = self.num.checked_mul(other.den)?;
        let right = other.num.checked_mul(self.den)?;
        Some(Self { num: left.checked_add(right)?, den: self.den.checked_mul(other.den)? })
    }

    /// The product, or nothing when it does not fit.
    pub(super) fn times(self, other: Self) -> Option<Self> {
        Some(Self { num: self.num.checked_mul(other.num)?, den: self.den.checked_mul(other.den)? })
    }

    /// The quotient, or nothing when it does not fit or `other` is not above zero.
    pub(super) fn over(self, other: Self) -> Option<Self> {
        self.times(Self::ratio(other.den, other.num)?)
    }

    /// The value with the other sign.
    pub(super) const fn negated(self) -> Self {
        Self { num: -self.num, den: self.den }
    }

    /// Whether the denominator is zero, so that there is no value.
    pub(super) const fn over_zero(self) -> bool {
        self.den == 0
    }

    /// Whether the value is one or more.
    pub(super) const fn reaches_one(self) -> bool {
        self.num >= self.den
    }

    /// Whether the value is a whole number.
    pub(super) const fn is_whole(self) -> bool {
        self.num % self.den == 0
    }

    /// The nearest whole number, halves away from zero.
    pub(super) const fn rounded(self) -> i128 {
        let whole = self.num / self.den;
        let rest = self.num % self.den;
        // Twice the remainder against the denominator, without the doubling that could overflow.
        if rest.unsigned_abs() >= self.den.unsigned_abs() - rest.unsigned_abs() {
            whole + rest.signum()
        } else {
            whole
        }
    }
}

/// Ten to the power `exponent`, or nothing when it does not fit.
pub(super) fn power_of_ten(exponent: u32) -> Option<i128> {
    10_i128.checked_pow(exponent)
}
