//! Printing a quantity: short for reading, or so that it reads back to the very same step.

use core::fmt;

use super::digits::{Setting, decimal, mixed};
use super::exact::{Exact, power_of_ten};
use super::kind::{Kind, System};
use super::unit::Unit;

/// How exactly a value is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Style {
    /// For reading: few digits, groups of three set apart, a mark where inches are rounded.
    Short,
    /// For edit fields: as many digits as bring back the same step, and no groups.
    Full,
}

/// A value as text: number and unit apart, so that a column can name the unit once.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Printed {
    /// The number, with the true minus sign; `≈` leads where a fraction of an inch was rounded.
    pub number: String,
    /// The unit, empty for plain numbers.
    pub unit: &'static str,
    /// Whether the number stands for another step than the one printed.
    pub rounded: bool,
}

impl Printed {
    /// Number and unit with a no-break space between them.
    #[must_use]
    pub fn text(&self) -> String {
        self.to_string()
    }
}

impl fmt::Display for Printed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        set(f, &self.number, self.unit)
    }
}

/// Number and unit, with a no-break space between them unless the unit is a degree sign or none.
pub(super) fn set(f: &mut fmt::Formatter<'_>, number: &str, unit: &str) -> fmt::Result {
    match unit {
        "" | "°" => write!(f, "{number}{unit}"),
        unit => write!(f, "{number}\u{A0}{unit}"),
    }
}

/// `steps` of `kind` in the usual unit of `system`.
///
/// Inches are fractions: exact ones in sixteenths, thirty-seconds or sixty-fourths. Where none is exact, `Full` gives
/// decimals, and `Short` the nearest sixteenth from one inch up, the nearest sixty-fourth from an eighth up and
/// thousandths below, led by `≈`. What is printed reads back to the same step unless `rounded` says otherwise; `Full`
/// never rounds a value that [`read`](super::read()) accepts.
#[must_use]
pub fn print(steps: i64, kind: Kind, system: System, style: Style) -> Printed {
    let unit = Unit::usual(kind, system);
    if kind == Kind::Switch {
        let number = if steps == 0 { "no" } else { "yes" };
        return Printed { number: number.to_owned(), unit: "", rounded: steps != 0 && steps != 1 };
    }
    if (kind, system) == (Kind::Length, System::Inch)
        && let Some(printed) = inches(steps, unit, style)
    {
        return printed;
    }
    if kind == Kind::Money && steps % 100 != 0 {
        let setting = Setting { decimals: 2, trimmed: false, grouped: style == Style::Short };
        return Printed { number: decimal(i128::from(steps), setting), unit: "", rounded: false };
    }
    match style {
        Style::Short => decimals(steps, unit, short_decimals(kind, system), true),
        Style::Full => (0..MOST_DECIMALS)
            .map(|places| decimals(steps, unit, places, false))
            .find(|printed| !printed.rounded)
            .unwrap_or_else(|| decimals(steps, unit, MOST_DECIMALS, false)),
    }
}

/// Enough for every step of every unit: a step of mass is 2.2e-8 lb.
const MOST_DECIMALS: u32 = 8;

/// Decimals for reading.
const fn short_decimals(kind: Kind, system: System) -> u32 {
    match (kind, system) {
        (Kind::Length | Kind::Mass, System::Metric) | (Kind::Money | Kind::Rate | Kind::Angle, _) => 2,
        (Kind::Length | Kind::Ratio, _) => 3,
        (Kind::Mass | Kind::Density, System::Inch) | (Kind::Pace, _) => 1,
        (Kind::Stress, System::Metric) => 1,
        (_, _) => 0,
    }
}

/// The value with so many decimals, zeros at the end left out.
fn decimals(steps: i64, unit: &Unit, places: u32, grouped: bool) -> Printed {
    let value = Exact::of(i128::from(steps), 1);
    let scaled = power_of_ten(places).and_then(|tens| {
        let scale = Exact::of(tens, 1);
        let scaled = value.over(unit.steps)?.times(scale)?.rounded();
        let back = Exact::of(scaled, tens).times(unit.steps)?.rounded();
        Some((scaled, back != i128::from(steps)))
    });
    // Nothing here overflows for any i64 and the decimals used; if it did, the bare steps would be the honest answer.
    let (scaled, rounded) = scaled.unwrap_or((i128::from(steps), true));
    Printed {
        number: decimal(scaled, Setting { decimals: places, trimmed: true, grouped }),
        unit: unit.symbol,
        rounded,
    }
}

/// Inches as a fraction, or nothing where decimals are the better answer.
fn inches(steps: i64, unit: &Unit, style: Style) -> Option<Printed> {
    const STEPS_OF_INCH: u64 = 40_640;
    const FINEST: u32 = 64;
    let whole =
        |parts: u32| Exact::of(i128::from(steps), 1).over(unit.steps)?.times(Exact::of(parts.into(), 1));
    let exact = whole(FINEST)?;
    if exact.is_whole() {
        return Some(Printed { number: mixed(exact.rounded(), FINEST), unit: unit.symbol, rounded: false });
    }
    if style == Style::Full {
        return None;
    }
    let size = steps.unsigned_abs();
    let number = if size >= STEPS_OF_INCH {
        mixed(whole(16)?.rounded(), 16)
    } else if size >= STEPS_OF_INCH / 8 {
        mixed(exact.rounded(), FINEST)
    } else {
        let printed = decimals(steps, unit, short_decimals(Kind::Length, System::Inch), true);
        if !printed.rounded {
            return Some(printed);
        }
        printed.number
    };
    Some(Printed { number: format!("≈{number}"), unit: unit.symbol, rounded: true })
}
