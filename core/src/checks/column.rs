//! Slender bars pressed along their axis.
//!
//! Plain `f64` in SI.
use core::f64::consts::PI;

/// The push at which a bar of bending stiffness `ei` buckles over the length `length`, N: pi^2 EI / l^2 (Euler; any text on the
/// strength of materials). `length` is the free length times the end factor. Infinite for no length.
#[must_use]
pub fn euler(ei: f64, length: f64) -> f64 {
    PI * PI * ei / (length * length)
}

/// A steel column, slender or stout.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Column {
    /// Modulus of elasticity, Pa.
    pub modulus: f64,
    /// Yield strength, Pa.
    pub yield_strength: f64,
    /// Area of its section, m2.
    pub area: f64,
    /// Radius of gyration of its section, m: a quarter of the diameter of a round bar.
    pub gyration: f64,
    /// Free length times the end factor K, m. K = 1/sqrt(C) with the end-condition constant C of Shigley 9e table 4-2.
    pub length: f64,
}

impl Column {
    /// A round bar.
    #[must_use]
    pub fn round(diameter: f64, length: f64, modulus: f64, yield_strength: f64) -> Self {
        Self {
            modulus,
            yield_strength,
            area: PI / 4.0 * diameter * diameter,
            gyration: diameter / 4.0,
            length,
        }
    }

    /// Length over radius of gyration.
    #[must_use]
    pub fn slenderness(&self) -> f64 {
        self.length / self.gyration
    }

    /// The slenderness above which Euler's formula holds and below which Johnson's: sqrt(2 pi^2 E / Sy).
    #[must_use]
    pub fn stout_below(&self) -> f64 {
        (2.0 * PI * PI * self.modulus / self.yield_strength).sqrt()
    }

    /// The push at which it fails, N: Euler's when slender, else J. B. Johnson's parabola Sy - (Sy lambda / 2 pi)^2 / E, which meets it
    /// at half the yield strength (Shigley's Mechanical Engineering Design 9e, sections 4-12 and 4-13, equations 4-44 and 4-48).
    #[must_use]
    pub fn critical(&self) -> f64 {
        let slender = self.slenderness();
        if slender > self.stout_below() {
            euler(self.modulus * self.area * self.gyration * self.gyration, self.length)
        } else {
            let bent = self.yield_strength * slender / (2.0 * PI);
            self.area * (self.yield_strength - bent * bent / self.modulus)
        }
    }
}
