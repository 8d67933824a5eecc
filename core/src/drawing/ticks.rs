//! Round numbers for axes.

/// Round values from zero, or from below it, to at least a greatest value.
#[derive(Clone, Debug, PartialEq)]
pub struct Ticks {
    /// Distance of two ticks.
    pub step: f64,
    /// First tick; zero unless there are values below zero.
    pub first: f64,
    /// Number of ticks, at least two.
    pub count: usize,
}

/// More ticks than this are never wanted.
const MOST: usize = 24;

impl Ticks {
    /// Ticks with a step of 1, 2 or 5 times a power of ten that reach from the lower of zero and `least` to `most`
    /// and beyond, as many as there may be but not more than `at_most` steps.
    ///
    /// Values that are not finite count as zero; an empty range gives zero to one.
    #[must_use]
    pub fn covering(least: f64, most: f64, at_most: usize) -> Self {
        let finite = |value: f64| if value.is_finite() { value } else { 0.0 };
        let (least, most) = (finite(least).min(0.0), finite(most).max(0.0));
        let range = most - least;
        if range <= f64::MIN_POSITIVE {
            return Self { step: 1.0, first: 0.0, count: 2 };
        }
        let wanted = at_most.clamp(1, MOST - 2);
        let mut step = below(range / (wanted as f64 + 1.0));
        loop {
            let first = (least / step + 1e-9).floor();
            let last = (most / step - 1e-9).ceil();
            let steps = last - first;
            if steps <= wanted as f64 || !steps.is_finite() {
                return Self { step, first: first * step, count: count(steps) + 1 };
            }
            step = next(step);
        }
    }

    /// The value of a tick, counted from the first.
    #[must_use]
    pub fn value(&self, index: usize) -> f64 {
        let value = self.first + index as f64 * self.step;
        if value.abs() < self.step * 1e-9 { 0.0 } else { value }
    }

    /// The last tick's value.
    #[must_use]
    pub fn last(&self) -> f64 {
        self.value(self.count.saturating_sub(1))
    }

    /// All values in order.
    pub fn values(&self) -> impl Iterator<Item = f64> + '_ {
        (0..self.count).map(|index| self.value(index))
    }

    /// Decimals that tell the ticks apart.
    #[must_use]
    pub fn decimals(&self) -> usize {
        let mut decimals = 0;
        let mut step = self.step;
        while decimals < 9 && !whole(step) {
            step *= 10.0;
            decimals += 1;
        }
        decimals
    }

    /// The text of a tick: true minus, no sign on zero.
    #[must_use]
    pub fn text(&self, value: f64) -> String {
        let decimals = self.decimals();
        if value < 0.0 { format!("−{:.decimals$}", -value) } else { format!("{value:.decimals$}") }
    }
}

fn whole(value: f64) -> bool {
    (value - value.round()).abs() < 1e-9
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "at most MOST by the caller's condition, and not negative"
)]
fn count(steps: f64) -> usize {
    if steps.is_finite() { steps.clamp(1.0, MOST as f64) as usize } else { 1 }
}

/// The largest round step that is not above `value`.
fn below(value: f64) -> f64 {
    let power = libm::pow(10.0, libm::floor(libm::log10(value)));
    [5.0, 2.0].into_iter().map(|first| first * power).find(|step| *step <= value).unwrap_or(power)
}

/// The round step after this one.
fn next(step: f64) -> f64 {
    let power = libm::pow(10.0, libm::floor(libm::log10(step) + 1e-9));
    match step / power {
        first if first < 1.5 => 2.0 * power,
        first if first < 3.5 => 5.0 * power,
        _ => 10.0 * power,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(ticks: &Ticks) -> Vec<String> {
        ticks.values().map(|value| ticks.text(value)).collect()
    }

    #[test]
    fn ticks_are_round_and_reach_beyond_the_curve() {
        assert_eq!(texts(&Ticks::covering(0.0, 9.8, 5)), ["0", "2", "4", "6", "8", "10"]);
        assert_eq!(texts(&Ticks::covering(0.0, 31.4, 4)), ["0", "10", "20", "30", "40"]);
        assert_eq!(texts(&Ticks::covering(-0.031, 0.512, 3)), ["−0.5", "0.0", "0.5", "1.0"]);
    }

    #[test]
    fn odd_ranges_end_and_never_count_too_many() {
        for (least, most) in [
            (0.0, 0.0),
            (f64::NAN, 3.0),
            (f64::NEG_INFINITY, f64::INFINITY),
            (-1e300, 1e300),
            (0.0, 5e-324),
            (0.0, 1e-300),
        ] {
            for at_most in [0, 1, 3, 1000] {
                let ticks = Ticks::covering(least, most, at_most);
                assert!(
                    (2..=MOST).contains(&ticks.count) && ticks.step > 0.0,
                    "{least} {most} {at_most} {ticks:?}"
                );
            }
        }
    }
}
