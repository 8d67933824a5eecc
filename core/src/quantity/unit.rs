//! The units that are understood, how many steps each is, and how people spell them.

use super::exact::Exact;
use super::kind::{Kind, System};

/// One unit of one kind.
#[derive(Debug, PartialEq)]
pub(super) struct Unit {
    /// How it is printed.
    pub(super) symbol: &'static str,
    pub(super) kind: Kind,
    /// Steps of the kind in one unit.
    pub(super) steps: Exact,
    /// How it is written, in lower case.
    names: &'static [&'static str],
}

const fn unit(
    symbol: &'static str,
    kind: Kind,
    num: i128,
    den: i128,
    names: &'static [&'static str],
) -> Unit {
    Unit { symbol, kind, steps: Exact::of(num, den), names }
}

// Exact by definition: 1 in = 25.4 mm, 1 lb = 0.45359237 kg (international yard and pound, 1959),
// 1 lbf = 1 lb x 9.80665 m/s2; 1 psi = 1 lbf/in2.
const MM: Unit = unit("mm", Kind::Length, 1600, 1, &["mm", "millimetre", "millimetres", "millimeters"]);
const CM: Unit = unit("cm", Kind::Length, 16_000, 1, &["cm"]);
const M: Unit = unit("m", Kind::Length, 1_600_000, 1, &["m", "metre", "metres", "meter", "meters"]);
const INCH: Unit = unit("in", Kind::Length, 40_640, 1, &["in", "\"", "inch", "inches"]);
const FOOT: Unit = unit("ft", Kind::Length, 487_680, 1, &["ft", "'", "foot", "feet"]);
const THOU: Unit = unit("thou", Kind::Length, 4064, 100, &["thou"]);

const KG: Unit = unit("kg", Kind::Mass, 100_000_000, 1, &["kg", "kgs", "kilo", "kilos"]);
const GRAM: Unit = unit("g", Kind::Mass, 100_000, 1, &["g"]);
const LB: Unit = unit("lb", Kind::Mass, 45_359_237, 1, &["lb", "lbs", "#", "pound", "pounds"]);
const OZ: Unit = unit("oz", Kind::Mass, 45_359_237, 16, &["oz", "ounce", "ounces"]);

const NEWTON: Unit = unit("N", Kind::Force, 1000, 1, &["n", "newton", "newtons"]);
const KN: Unit = unit("kN", Kind::Force, 1_000_000, 1, &["kn"]);
// Where a force is wanted, a pound can only be a pound of force.
const LBF: Unit =
    unit("lbf", Kind::Force, 44_482_216_152_605, 10_000_000_000, &["lbf", "lb", "lbs", "pound", "pounds"]);

const PURE: Unit = unit("", Kind::Ratio, 100_000, 1, &[]);
const PERCENT: Unit = unit("%", Kind::Ratio, 1000, 1, &["%", "percent", "per cent"]);

const PA: Unit = unit("Pa", Kind::Stress, 1, 1000, &["pa"]);
const KPA: Unit = unit("kPa", Kind::Stress, 1, 1, &["kpa"]);
const MPA: Unit = unit("MPa", Kind::Stress, 1000, 1, &["mpa", "n/mm2", "n/mm²", "n/mm^2"]);
const GPA: Unit = unit("GPa", Kind::Stress, 1_000_000, 1, &["gpa", "kn/mm2", "kn/mm²", "kn/mm^2"]);
const PSI: Unit = unit("psi", Kind::Stress, 44_482_216_152_605, 6_451_600_000_000, &["psi"]);
const KSI: Unit = unit("ksi", Kind::Stress, 44_482_216_152_605, 6_451_600_000, &["ksi"]);
const MPSI: Unit = unit("Mpsi", Kind::Stress, 44_482_216_152_605, 6_451_600, &["mpsi"]);

const KG_M3: Unit = unit("kg/m³", Kind::Density, 10, 1, &["kg/m3", "kg/m³", "kg/m^3"]);
const G_CM3: Unit = unit("g/cm³", Kind::Density, 10_000, 1, &["g/cm3", "g/cm³", "g/cm^3"]);
const LB_FT3: Unit = unit(
    "lb/ft³",
    Kind::Density,
    4_535_923_700_000,
    28_316_846_592,
    &["lb/ft3", "lb/ft³", "lb/ft^3", "lbs/ft3", "pcf"],
);

const A_MINUTE: Unit =
    unit("/min", Kind::Pace, 10, 1, &["/min", "rpm", "1/min", "r/min", "turns/min", "turns a minute"]);
const DEGREE: Unit = unit("°", Kind::Angle, 100, 1, &["°", "deg", "degree", "degrees"]);

const N_MM: Unit = unit("N/mm", Kind::Stiffness, 1, 1, &["n/mm", "kn/m"]);
const KN_MM: Unit = unit("kN/mm", Kind::Stiffness, 1000, 1, &["kn/mm", "mn/m"]);
const N_M: Unit = unit("N/m", Kind::Stiffness, 1, 1000, &["n/m"]);
const LBF_IN: Unit =
    unit("lbf/in", Kind::Stiffness, 44_482_216_152_605, 254_000_000_000_000, &["lbf/in", "lb/in"]);

const PIECE: Unit = unit("", Kind::Count, 1, 1, &[]);
const PRICE: Unit = unit("", Kind::Money, 100, 1, &[]);
// A foot of a bar at one a metre costs 0.3048, exactly.
const A_METRE: Unit = unit("/m", Kind::Rate, 100, 1, &["/m", "a metre", "a meter", "per metre", "per meter"]);
const A_FOOT: Unit = unit("/ft", Kind::Rate, 1_000_000, 3048, &["/ft", "a foot", "per foot"]);
const PLACE: Unit = unit("", Kind::Choice, 1, 1, &[]);
const SWITCH: Unit = unit("", Kind::Switch, 1, 1, &[]);

/// Every unit with a name. A pound stands for a weight first.
const NAMED: [&Unit; 32] = [
    &MM, &CM, &M, &INCH, &FOOT, &THOU, &KG, &GRAM, &LB, &OZ, &NEWTON, &KN, &LBF, &PERCENT, &PA, &KPA, &MPA,
    &GPA, &PSI, &KSI, &MPSI, &KG_M3, &G_CM3, &LB_FT3, &A_MINUTE, &DEGREE, &N_MM, &KN_MM, &N_M, &LBF_IN,
    &A_METRE, &A_FOOT,
];

/// The unit in which values of a kind stand in files, and how many steps it has.
#[must_use]
pub fn metric_unit(kind: Kind) -> (&'static str, i64) {
    let unit = Unit::usual(kind, System::Metric);
    (unit.symbol, i64::try_from(unit.steps.rounded()).unwrap_or(1))
}

impl Unit {
    /// The unit of a bare number, and of every printed one.
    pub(super) const fn usual(kind: Kind, system: System) -> &'static Self {
        match (kind, system) {
            (Kind::Length, System::Metric) => &MM,
            (Kind::Length, System::Inch) => &INCH,
            (Kind::Mass, System::Metric) => &KG,
            (Kind::Mass, System::Inch) => &LB,
            (Kind::Force, System::Metric) => &NEWTON,
            (Kind::Force, System::Inch) => &LBF,
            (Kind::Stress, System::Metric) => &MPA,
            (Kind::Stress, System::Inch) => &PSI,
            (Kind::Density, System::Metric) => &KG_M3,
            (Kind::Density, System::Inch) => &LB_FT3,
            (Kind::Ratio, _) => &PURE,
            (Kind::Pace, _) => &A_MINUTE,
            (Kind::Angle, _) => &DEGREE,
            (Kind::Stiffness, System::Metric) => &N_MM,
            (Kind::Stiffness, System::Inch) => &LBF_IN,
            (Kind::Count, _) => &PIECE,
            (Kind::Money, _) => &PRICE,
            (Kind::Rate, System::Metric) => &A_METRE,
            (Kind::Rate, System::Inch) => &A_FOOT,
            (Kind::Choice, _) => &PLACE,
            (Kind::Switch, _) => &SWITCH,
        }
    }

    /// The unit of that name (in lower case), one of the wanted kind before any other.
    pub(super) fn named(name: &str, kind: Kind) -> Option<&'static Self> {
        let mut known = NAMED.iter().copied().filter(|unit| unit.names.contains(&name));
        let first = known.next()?;
        Some(if first.kind == kind { first } else { known.find(|unit| unit.kind == kind).unwrap_or(first) })
    }

    /// The smaller unit that may follow this one, as inches follow feet.
    pub(super) fn smaller(&self) -> Option<&'static Self> {
        match self.symbol {
            "ft" => Some(&INCH),
            "lb" => Some(&OZ),
            _ => None,
        }
    }
}
