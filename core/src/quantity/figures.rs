//! Results as text: computed figures, given in SI, with the digits a reader can use and no more.
//!
//! Every function takes SI and the reader's units. Figures carry the true minus sign and a no-break space before the
//! unit; digits stand in groups from 10 000 up; what rounds to zero has no sign. Where there is no finite value an em dash stands
//! instead of a number. Computed sizes in inches are always to the nearest sixteenth, so they carry no mark for rounding.
//!
//! What a builder sets follows one rule in inches, since rules, fences and bits are divided so: sixty-fourths, led by `≈` where none is exact
//! ([`marked`], [`ruled`], [`laid`], [`slack`]); a limit is the next sixty-fourth below ([`within`]); a bit is one that is sold ([`bit`]).
//! Thousandths are kept where a caliper or a gauge is set: stock thinner than an eighth, places of pivot holes ([`pinned`]), and how exact
//! they must be ([`drilled`]).

use core::fmt;

use super::digits::{Setting, decimal, mixed};
use super::exact::power_of_ten;
use super::kind::{Kind, System};
use super::print::{Style, print, set};
use super::types::Length;

/// A computed figure: number and unit apart, so that a column can name the unit once.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Figure {
    /// The number, or an em dash where there is none.
    pub number: String,
    /// The unit, empty for plain numbers.
    pub unit: &'static str,
}

impl Figure {
    /// Whether it shows nothing but noughts.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        self.number.contains('0') && self.number.chars().all(|sign| matches!(sign, '0' | '.'))
    }
}

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        set(f, &self.number, self.unit)
    }
}

pub(super) const NO_VALUE: &str = "—";
pub(crate) const METRE_IN_INCHES: f64 = 1.0 / 0.0254;
const KILOGRAM_IN_POUNDS: f64 = 1.0 / 0.453_592_37;
pub(crate) const NEWTON_IN_LBF: f64 = 1.0 / 4.448_221_615_260_5;
const PASCAL_IN_PSI: f64 = 0.0254 * 0.0254 * NEWTON_IN_LBF;

/// The value with so many decimals.
fn figure(value: f64, decimals: u32, unit: &'static str) -> Figure {
    let scaled = power_of_ten(decimals).and_then(|tens| scaled(value, tens as f64));
    let number = match scaled {
        Some(scaled) => decimal(scaled, Setting { decimals, trimmed: false, grouped: true }),
        None => NO_VALUE.to_owned(),
    };
    Figure { number, unit }
}

/// The nearest whole number to `value * scale`, or nothing where that is not finite.
#[allow(
    clippy::cast_possible_truncation,
    reason = "finite, rounded, and saturating far beyond any figure shown"
)]
fn scaled(value: f64, scale: f64) -> Option<i128> {
    let scaled = (value * scale).round();
    scaled.is_finite().then_some(scaled as i128)
}

/// A screw or joint force for tables, from newtons: kN with two decimals, or whole lbf.
#[must_use]
pub fn large_force(newtons: f64, system: System) -> Figure {
    match system {
        System::Metric => figure(newtons / 1e3, 2, "kN"),
        System::Inch => figure(newtons * NEWTON_IN_LBF, 0, "lbf"),
    }
}

/// A screw or joint force on the drawing, from newtons: kN with one decimal, or whole lbf.
#[must_use]
pub fn drawn_force(newtons: f64, system: System) -> Figure {
    match system {
        System::Metric => figure(newtons / 1e3, 1, "kN"),
        System::Inch => large_force(newtons, system),
    }
}

/// A hand or wheel force, from newtons: whole N or lbf.
#[must_use]
pub fn small_force(newtons: f64, system: System) -> Figure {
    match system {
        System::Metric => figure(newtons, 0, "N"),
        System::Inch => large_force(newtons, system),
    }
}

/// The number of [`small_force`] before it is rounded: N or lbf.
#[must_use]
pub const fn small_force_number(newtons: f64, system: System) -> f64 {
    match system {
        System::Metric => newtons,
        System::Inch => newtons * NEWTON_IN_LBF,
    }
}

/// A size or height, from metres: whole mm, or inches to the nearest sixteenth.
#[must_use]
pub fn size(metres: f64, system: System) -> Figure {
    match system {
        System::Metric => figure(metres * 1e3, 0, "mm"),
        System::Inch => {
            let number = match scaled(metres, 16.0 * METRE_IN_INCHES) {
                Some(sixteenths) => mixed(sixteenths, 16),
                None => NO_VALUE.to_owned(),
            };
            Figure { number, unit: "in" }
        }
    }
}

const STEPS_OF_64TH: i64 = 635;
const STEPS_OF_EIGHTH: i64 = 8 * STEPS_OF_64TH;
const STEPS_OF_HALF_MM: i64 = 800;

/// So many sixty-fourths of an inch.
fn fraction(sixty_fourths: i64) -> Figure {
    Figure { number: mixed(i128::from(sixty_fourths), 64), unit: "in" }
}

/// The nearest sixty-fourth, led by `≈` where it is not the length itself.
fn nearest(length: Length) -> Figure {
    let near = fraction((length.steps() + STEPS_OF_64TH / 2).div_euclid(STEPS_OF_64TH));
    if length.steps() % STEPS_OF_64TH == 0 {
        return near;
    }
    Figure { number: format!("≈{}", near.number), unit: near.unit }
}

/// Thousandths of an inch, zeros at the end left out.
fn thousandths(length: Length) -> Figure {
    trimmed(figure(length.to_m() * METRE_IN_INCHES, 3, "in"))
}

/// A size or place to be marked out, cut or drilled: mm to a tenth, or the nearest sixty-fourth of an inch, led by `≈` where it is not
/// exact; what is thinner than an eighth and no sixty-fourth is stock by gauge and given in thousandths. Zeros at the end are left out.
#[must_use]
pub fn marked(length: Length, system: System) -> Figure {
    match system {
        System::Metric => trimmed(figure(length.to_mm(), 1, "mm")),
        System::Inch if length.steps() % STEPS_OF_64TH != 0 && length.steps().abs() < STEPS_OF_EIGHTH => {
            thousandths(length)
        }
        System::Inch => nearest(length),
    }
}

/// A place that must be met closer than a rule can be read, as those of pivot holes: mm to a tenth, or inches as an exact fraction and to
/// the thousandth where none is exact. Half a sixty-fourth, 0.2 mm, would take most of what such a hole may be off.
#[must_use]
pub fn pinned(length: Length, system: System) -> Figure {
    match system {
        System::Inch if length.steps() % STEPS_OF_64TH != 0 => thousandths(length),
        _ => marked(length, system),
    }
}

/// A computed size that is laid out with a rule, from metres: whole mm, or inches as [`marked`].
#[must_use]
pub fn ruled(metres: f64, system: System) -> Figure {
    match system {
        System::Metric => size(metres, system),
        System::Inch if metres.is_finite() => marked(Length::m(metres), system),
        System::Inch => Figure { number: NO_VALUE.to_owned(), unit: "in" },
    }
}

/// A size as it was entered, to be laid out with a rule: mm with all their digits, or inches as [`marked`].
#[must_use]
pub fn laid(length: Length, system: System) -> Figure {
    match system {
        System::Metric => {
            let printed = print(length.steps(), Kind::Length, system, Style::Short);
            Figure { number: printed.number, unit: printed.unit }
        }
        System::Inch => marked(length, system),
    }
}

/// A gap to be set with a rule or a strip of stock, from metres: mm with one decimal, or the nearest sixty-fourth of an inch.
#[must_use]
pub fn slack(metres: f64, system: System) -> Figure {
    match system {
        System::Inch if metres.is_finite() => nearest(Length::m(metres)),
        _ => sag(metres, system),
    }
}

/// By how much two sizes measured with a rule may differ, from metres: mm with one decimal, or whole sixty-fourths of an inch, never more but
/// one at least, since a rule shows no less.
#[must_use]
pub fn within(metres: f64, system: System) -> Figure {
    match system {
        System::Inch if metres.is_finite() => {
            fraction(Length::m(metres).steps().div_euclid(STEPS_OF_64TH).max(1))
        }
        _ => sag(metres, system),
    }
}

/// How far a nut travels in one turn as the part of an inch that threads to the inch give, as 1/6 for six; nothing where they do not, and
/// in millimetres.
#[must_use]
pub fn threads(lead: Length, system: System) -> Option<Figure> {
    /// Ridges side by side on a screw that is sold.
    const STARTS: u32 = 4;
    if system == System::Metric {
        return None;
    }
    (1..=STARTS).find_map(|starts| {
        let starts = f64::from(starts);
        let threads = (starts / (lead.to_m() * METRE_IN_INCHES)).round();
        let exact = threads > starts && Length::inch(starts / threads) == lead;
        exact.then(|| Figure { number: format!("{starts:.0}/{threads:.0}"), unit: "in" })
    })
}

/// How a bit goes with what goes through its hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    /// Something is pressed in or turns in it: the hole is as wide as that.
    Close,
    /// Something passes it: no narrower.
    Free,
    /// A screw cuts its thread in it: as near as can be.
    Thread,
}

/// The bit for a hole: mm to a tenth, or a bit sold in inches, by sixty-fourths. Where a close fit has none, the bit is that of its own
/// metric size, or the hole is given in thousandths, to be reamed.
#[must_use]
pub fn bit(diameter: Length, fit: Fit, system: System) -> Figure {
    let (steps, exact) = (diameter.steps(), diameter.steps() % STEPS_OF_64TH == 0);
    match (system, fit) {
        (System::Metric, _) => marked(diameter, system),
        (_, Fit::Close) if !exact && steps % STEPS_OF_HALF_MM == 0 => marked(diameter, System::Metric),
        (_, Fit::Close) => pinned(diameter, system),
        (_, Fit::Free) => fraction((steps + STEPS_OF_64TH - 1).div_euclid(STEPS_OF_64TH)),
        (_, Fit::Thread) => fraction((steps + STEPS_OF_64TH / 2).div_euclid(STEPS_OF_64TH).max(1)),
    }
}

/// How exactly something is drilled, from metres: mm to a hundredth, zeros at the end left out, or thousandths of an inch.
#[must_use]
pub fn drilled(metres: f64, system: System) -> Figure {
    match system {
        System::Metric => trimmed(figure(metres * 1e3, 2, "mm")),
        System::Inch => figure(metres * METRE_IN_INCHES, 3, "in"),
    }
}

/// Without zeros at the end of its decimals.
fn trimmed(figure: Figure) -> Figure {
    if !figure.number.contains('.') {
        return figure;
    }
    let short = figure.number.trim_end_matches('0').trim_end_matches('.');
    Figure { number: short.to_owned(), unit: figure.unit }
}

/// Sag, play or sway, from metres: mm with one decimal, or thousandths of an inch.
#[must_use]
pub fn sag(metres: f64, system: System) -> Figure {
    match system {
        System::Metric => figure(metres * 1e3, 1, "mm"),
        System::Inch => figure(metres * METRE_IN_INCHES, 3, "in"),
    }
}

/// Turns of the crank, with one decimal.
#[must_use]
pub fn turns(turns: f64) -> Figure {
    figure(turns, 1, "turns")
}

/// A torque, from newton metres: N m with one decimal, or whole lbf in.
#[must_use]
pub fn torque(newton_metres: f64, system: System) -> Figure {
    match system {
        System::Metric => figure(newton_metres, 1, "N\u{A0}m"),
        System::Inch => figure(newton_metres * NEWTON_IN_LBF * METRE_IN_INCHES, 0, "lbf\u{A0}in"),
    }
}

/// A sum that should vanish: the figure, and a plain 0 where it shows nothing but noughts.
#[must_use]
pub fn left(figure: Figure) -> Figure {
    if figure.is_nothing() { Figure { number: "0".to_owned(), unit: figure.unit } } else { figure }
}

/// A share, from a ratio: whole percent.
#[must_use]
pub fn percent(ratio: f64) -> Figure {
    figure(ratio * 100.0, 0, "%")
}

/// How much of a capacity is used, or any other plain ratio, with two decimals.
#[must_use]
pub fn ratio(ratio: f64) -> Figure {
    figure(ratio, 2, "")
}

/// How many times something could grow before it gives way, with one decimal.
#[must_use]
pub fn factor(factor: f64) -> Figure {
    figure(factor, 1, "")
}

/// A stress, from pascals: MPa with one decimal, or whole psi.
#[must_use]
pub fn stress(pascals: f64, system: System) -> Figure {
    match system {
        System::Metric => figure(pascals / 1e6, 1, "MPa"),
        System::Inch => figure(pascals * PASCAL_IN_PSI, 0, "psi"),
    }
}

/// A weight, from kilograms: kg with one decimal, or whole lb.
#[must_use]
pub fn weight(kilograms: f64, system: System) -> Figure {
    match system {
        System::Metric => figure(kilograms, 1, "kg"),
        System::Inch => figure(kilograms * KILOGRAM_IN_POUNDS, 0, "lb"),
    }
}

/// The weight of a small part in a list, from kilograms: kg or lb with two decimals.
#[must_use]
pub fn part_weight(kilograms: f64, system: System) -> Figure {
    match system {
        System::Metric => figure(kilograms, 2, "kg"),
        System::Inch => figure(kilograms * KILOGRAM_IN_POUNDS, 2, "lb"),
    }
}

/// An angle, from radians: degrees with one decimal.
#[must_use]
pub fn angle(radians: f64) -> Figure {
    figure(radians.to_degrees(), 1, "°")
}

/// How far something turns that hardly turns at all, from radians: thousandths, which is mm in a metre; two decimals below ten, one above.
#[must_use]
pub fn twist(radians: f64) -> Figure {
    figure(radians * 1e3, if radians.abs() < 0.01 { 2 } else { 1 }, "mrad")
}

/// What a guessed stiffness is counted in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Guessed {
    /// Force for a shift, from N/m: N/mm, or lbf/in.
    Shift,
    /// Couple for a turn, from N m/rad: the same, or lbf in.
    Turn,
    /// Force for a strain, from N: kN, or lbf.
    Strain,
}

/// A guessed stiffness, with two digits that count: more would pretend to know it.
#[must_use]
pub fn guessed(value: f64, of: Guessed, system: System) -> Figure {
    let (per, unit) = match (of, system) {
        (Guessed::Shift, System::Metric) => (1e-3, "N/mm"),
        (Guessed::Shift, System::Inch) => (NEWTON_IN_LBF / METRE_IN_INCHES, "lbf/in"),
        (Guessed::Turn, System::Metric) => (1.0, "N\u{A0}m/rad"),
        (Guessed::Turn, System::Inch) => (NEWTON_IN_LBF * METRE_IN_INCHES, "lbf\u{A0}in/rad"),
        (Guessed::Strain, System::Metric) => (1e-3, "kN"),
        (Guessed::Strain, System::Inch) => (NEWTON_IN_LBF, "lbf"),
    };
    let shown = value * per;
    let mut step = 1.0;
    while shown.abs() / step >= 100.0 && step < 1e12 {
        step *= 10.0;
    }
    figure((shown / step).round() * step, 0, unit)
}

/// How hard it is to push the deck aside or down, from N/m: N/mm, or lbf/in, whole.
#[must_use]
pub fn stiffness(newtons_per_metre: f64, system: System) -> Figure {
    match system {
        System::Metric => figure(newtons_per_metre / 1e3, 0, "N/mm"),
        System::Inch => figure(newtons_per_metre * NEWTON_IN_LBF / METRE_IN_INCHES, 0, "lbf/in"),
    }
}

/// An area of sheet, from square metres: m2 or square feet with two decimals.
#[must_use]
pub fn area(square_metres: f64, system: System) -> Figure {
    const METRE_IN_FEET: f64 = METRE_IN_INCHES / 12.0;
    match system {
        System::Metric => figure(square_metres, 2, "m²"),
        System::Inch => figure(square_metres * METRE_IN_FEET * METRE_IN_FEET, 2, "ft²"),
    }
}

/// How long the crank is turned, from seconds: minutes with one decimal.
#[must_use]
pub fn minutes(seconds: f64) -> Figure {
    figure(seconds / 60.0, 1, "min")
}

/// The area of a section, from square metres: whole mm2, or square inches with three decimals.
#[must_use]
pub fn section_area(square_metres: f64, system: System) -> Figure {
    match system {
        System::Metric => figure(square_metres * 1e6, 0, "mm²"),
        System::Inch => figure(square_metres * METRE_IN_INCHES * METRE_IN_INCHES, 3, "in²"),
    }
}

/// A section modulus, from cubic metres: whole mm3, or cubic inches with four decimals.
#[must_use]
pub fn section_modulus(cubic_metres: f64, system: System) -> Figure {
    match system {
        System::Metric => figure(cubic_metres * 1e9, 0, "mm³"),
        System::Inch => figure(cubic_metres * METRE_IN_INCHES * METRE_IN_INCHES * METRE_IN_INCHES, 4, "in³"),
    }
}

/// A second moment of area, from m4: whole mm4, or in4 with four decimals.
#[must_use]
pub fn second_moment(metres_to_the_fourth: f64, system: System) -> Figure {
    const SQUARE: f64 = METRE_IN_INCHES * METRE_IN_INCHES;
    match system {
        System::Metric => figure(metres_to_the_fourth * 1e12, 0, "mm⁴"),
        System::Inch => figure(metres_to_the_fourth * SQUARE * SQUARE, 4, "in⁴"),
    }
}

/// A speed of the deck, from metres a second: whole mm/s, or in/s with two decimals.
#[must_use]
pub fn speed(metres_a_second: f64, system: System) -> Figure {
    match system {
        System::Metric => figure(metres_a_second * 1e3, 0, "mm/s"),
        System::Inch => figure(metres_a_second * METRE_IN_INCHES, 2, "in/s"),
    }
}

/// Work a second, from watts: whole W.
#[must_use]
pub fn power(watts: f64) -> Figure {
    figure(watts, 0, "W")
}
