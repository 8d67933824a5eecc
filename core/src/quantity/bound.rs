//! Bounds as text: a size that must be reached or must not be passed, in whole lines of the reader's rule, never on the wrong side of it.
//!
//! What is read and entered keeps to the bound: what must be at least is rounded up, what must be at most is rounded down. Functions take metres.
use super::digits::{Setting, decimal, mixed};
use super::figures::{Figure, NO_VALUE};
use super::kind::System;

/// On which side of a bound a size must lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bound {
    /// It may be larger.
    Least,
    /// It may be smaller.
    Most,
}

/// Stored steps in a metre and in an inch.
const STEPS_OF_METRE: f64 = 1.6e6;
const STEPS_OF_INCH: i128 = 40_640;

/// A size this little beyond a stored step counts as that step: what is left of computing in binary, steps.
const NOISE: f64 = 1e-3;

/// Sizes nearer than this are the same, m: more than [`NOISE`], much less than a stored step.
const SAME: f64 = 1e-9;

/// Whether a size passes what it must keep within, m.
#[must_use]
pub fn passes(size: f64, within: f64) -> bool {
    size - within > SAME
}

impl Bound {
    /// So many parts, `parts` of which make `steps` stored steps, on the right side of a bound; nothing where it is not finite.
    ///
    /// It is brought to a stored step first: a line of the rule that is no whole step is then read as one that keeps to it, too.
    #[allow(clippy::cast_possible_truncation, reason = "saturates far beyond any size")]
    fn parts(self, metres: f64, parts: i128, steps: i128) -> Option<i128> {
        let (sign, way) = match self {
            Self::Least => (-1, -1.0),
            Self::Most => (1, 1.0),
        };
        let within = (way * metres * STEPS_OF_METRE + NOISE).floor();
        within.is_finite().then(|| sign * (i128::from(within as i64) * parts).div_euclid(steps))
    }
}

/// Whole mm, or sixteenths of an inch.
#[must_use]
pub fn size(metres: f64, bound: Bound, system: System) -> Figure {
    match system {
        System::Metric => figure(bound.parts(metres, 1, 1600), |parts| decimals(parts, 0), "mm"),
        System::Inch => figure(bound.parts(metres, 16, STEPS_OF_INCH), |parts| mixed(parts, 16), "in"),
    }
}

/// Tenths of a mm, or thousandths of an inch.
#[must_use]
pub fn give(metres: f64, bound: Bound, system: System) -> Figure {
    match system {
        System::Metric => figure(bound.parts(metres, 10, 1600), |parts| decimals(parts, 1), "mm"),
        System::Inch => figure(bound.parts(metres, 1000, STEPS_OF_INCH), |parts| decimals(parts, 3), "in"),
    }
}

fn decimals(scaled: i128, decimals: u32) -> String {
    decimal(scaled, Setting { decimals, trimmed: false, grouped: true })
}

fn figure(parts: Option<i128>, told: fn(i128) -> String, unit: &'static str) -> Figure {
    Figure { number: parts.map_or_else(|| NO_VALUE.to_owned(), told), unit }
}

#[cfg(test)]
mod tests {
    use super::{Bound, give, size};
    use crate::quantity::{Kind, Length, System, read};

    /// What is shown of any size is read back as one on the right side of it, and within one line of the rule.
    #[test]
    fn what_is_shown_keeps_to_the_bound() {
        for steps in (-50_000..50_000).step_by(37).chain([0, 1600, 635, 2540, 40_640, 1_009_728]) {
            let length = Length::from_steps(steps);
            for system in [System::Metric, System::Inch] {
                for (shown, line) in [(size as fn(f64, Bound, System) -> _, 2540), (give, 161)] {
                    let back = |bound| {
                        let text = shown(length.to_m(), bound, system).to_string();
                        read(&text, Kind::Length, system).ok()
                    };
                    let (most, least) = (back(Bound::Most), back(Bound::Least));
                    assert!(
                        most.is_some_and(|most| (steps - line..=steps).contains(&most)),
                        "{steps} {most:?}"
                    );
                    assert!(
                        least.is_some_and(|least| (steps..=steps + line).contains(&least)),
                        "{steps} {least:?}"
                    );
                }
            }
        }
    }

    #[test]
    fn what_is_a_line_already_stays() {
        for bound in [Bound::Least, Bound::Most] {
            assert_eq!(size(0.1 + 0.2, bound, System::Metric).to_string(), "300\u{A0}mm");
            assert_eq!(size(0.0254 * 2.5, bound, System::Inch).to_string(), "2 1/2\u{A0}in");
            assert_eq!(give(0.0046, bound, System::Metric).to_string(), "4.6\u{A0}mm");
            assert_eq!(size(f64::NAN, bound, System::Metric).number, "—");
        }
    }
}
