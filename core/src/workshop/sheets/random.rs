//! Numbers that look random and are the same on every machine.

/// SplitMix64: Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014, doi 10.1145/2714064.2660195.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Random(u64);

impl Random {
    pub(super) const fn new(seed: u64) -> Self {
        Self(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut word = self.0;
        word = (word ^ (word >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        word = (word ^ (word >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        word ^ (word >> 31)
    }

    /// A whole number from zero to below `end`; zero where that is zero.
    pub(super) fn below(&mut self, end: usize) -> usize {
        let wide = u128::from(self.next()) * end as u128;
        usize::try_from(wide >> 64).unwrap_or(0)
    }

    /// A number from zero to below one.
    pub(super) fn unit(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }
}
