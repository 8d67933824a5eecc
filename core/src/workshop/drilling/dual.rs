//! Numbers that carry their rate of change: exact derivatives of whatever is computed with them.

use core::ops::{Add, Div, Mul, Neg, Sub};

/// A value and its derivative by one parameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Dual {
    pub value: f64,
    pub rate: f64,
}

impl Dual {
    pub(super) const fn new(value: f64, rate: f64) -> Self {
        Self { value, rate }
    }

    pub(super) const fn still(value: f64) -> Self {
        Self::new(value, 0.0)
    }

    pub(super) fn sqrt(self) -> Self {
        let root = self.value.sqrt();
        Self::new(root, self.rate / (2.0 * root))
    }

    pub(super) fn atan2(self, x: Self) -> Self {
        let square = self.value * self.value + x.value * x.value;
        Self::new(libm::atan2(self.value, x.value), (x.value * self.rate - self.value * x.rate) / square)
    }

    pub(super) fn asin(self) -> Self {
        Self::new(libm::asin(self.value), self.rate / ((1.0 - self.value) * (1.0 + self.value)).sqrt())
    }
}

impl Add for Dual {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.value + other.value, self.rate + other.rate)
    }
}

impl Sub for Dual {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.value - other.value, self.rate - other.rate)
    }
}

impl Mul for Dual {
    type Output = Self;
    fn mul(self, other: Self) -> Self {
        Self::new(self.value * other.value, self.rate * other.value + self.value * other.rate)
    }
}

impl Div for Dual {
    type Output = Self;
    fn div(self, other: Self) -> Self {
        let value = self.value / other.value;
        Self::new(value, (self.rate - value * other.rate) / other.value)
    }
}

impl Neg for Dual {
    type Output = Self;
    fn neg(self) -> Self {
        Self::new(-self.value, -self.rate)
    }
}

/// A point or vector of the plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Point {
    pub x: Dual,
    pub y: Dual,
}

impl Point {
    pub(super) const fn still(x: f64, y: f64) -> Self {
        Self { x: Dual::still(x), y: Dual::still(y) }
    }

    pub(super) fn minus(self, other: Self) -> Self {
        Self { x: self.x - other.x, y: self.y - other.y }
    }

    pub(super) fn plus(self, other: Self) -> Self {
        Self { x: self.x + other.x, y: self.y + other.y }
    }

    pub(super) fn times(self, factor: Dual) -> Self {
        Self { x: self.x * factor, y: self.y * factor }
    }

    /// Turned by +90 degrees.
    pub(super) fn perp(self) -> Self {
        Self { x: -self.y, y: self.x }
    }

    pub(super) fn dot(self, other: Self) -> Dual {
        self.x * other.x + self.y * other.y
    }

    pub(super) fn square(self) -> Dual {
        self.dot(self)
    }
}
