//! Two designs side by side: the inputs in which they differ, and what follows.
use super::{Amount, Finding, Grade, Report};
use crate::design::{Design, Field};
use crate::quantity::{Money, Phrase};
use crate::workshop::cost;
use crate::workshop::hardware::Weights;

/// An input in which two designs differ.
#[derive(Clone, Copy, Debug)]
pub struct Changed {
    /// Which one.
    pub field: &'static Field,
    /// The first design's value, in steps.
    pub first: i64,
    /// The second design's.
    pub second: i64,
}

/// What less and more of a figure mean.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sense {
    /// What one calls less of it.
    pub less: &'static str,
    /// What one calls more of it.
    pub more: &'static str,
    /// Whether less is better; none where that depends on what one wants.
    pub less_is_better: Option<bool>,
}

/// A result of two designs.
#[derive(Clone, Debug, PartialEq)]
pub struct Compared {
    /// What it is.
    pub title: &'static str,
    /// The first design's figure.
    pub first: Amount,
    /// The second design's.
    pub second: Amount,
    /// How much more the second has than the first, as a share of the first; none where that has nothing, or where either pulls
    /// the other way.
    pub change: Option<f64>,
    /// What less and more mean.
    pub sense: Sense,
    /// What the figures belong to, such as the name of a check, in the first and in the second; empty where the title says all.
    pub of: [&'static str; 2],
}

impl Compared {
    /// Whether the second is better than the first; none where they are the same to a thousandth, or where that depends.
    #[must_use]
    pub fn better(&self) -> Option<bool> {
        let change = self.change.filter(|change| change.abs() >= SAME)?;
        Some((change < 0.0) == self.sense.less_is_better?)
    }

    /// What one calls the second beside the first: `easier`, `heavier`; none where they are the same to a thousandth.
    #[must_use]
    pub fn words(&self) -> Option<&'static str> {
        let change = self.change.filter(|change| change.abs() >= SAME)?;
        Some(if change < 0.0 { self.sense.less } else { self.sense.more })
    }
}

/// What is over or to watch in one design, and is not, or not as much, in the other.
#[derive(Clone, Debug, PartialEq)]
pub struct Turned {
    /// The finding: the second design's, or the first's where the second has none.
    pub phrase: Phrase,
    /// How bad it is in the first; none where nothing is found.
    pub first: Option<Grade>,
    /// How bad it is in the second.
    pub second: Option<Grade>,
}

/// Two designs side by side.
#[derive(Clone, Debug)]
pub struct Difference {
    /// The inputs that differ, in the order of the inputs.
    pub inputs: Vec<Changed>,
    /// Findings that differ: what is over in the second first, what is gone in it last.
    pub findings: Vec<Turned>,
    /// The results, in the order in which one asks for them.
    pub results: Vec<Compared>,
    /// What the second costs more than the first; none where a price that matters has not been entered.
    pub cost: Option<Money>,
}

/// A change by less than this share is none.
const SAME: f64 = 1e-3;

const fn sense(less: &'static str, more: &'static str, less_is_better: Option<bool>) -> Sense {
    Sense { less, more, less_is_better }
}

/// What differs from the first report to the second. An input that neither design shows is left out: it changes nothing.
#[must_use]
pub fn difference(first: &Report, second: &Report) -> Difference {
    Difference {
        inputs: inputs(&first.design, &second.design),
        findings: findings(first, second),
        results: results(first, second),
        cost: cost::added(&first.design, &second.design),
    }
}

fn inputs(first: &Design, second: &Design) -> Vec<Changed> {
    Design::fields()
        .filter(|field| field.shown(first) || field.shown(second))
        .map(|field| Changed { field, first: field.get(first), second: field.get(second) })
        .filter(|changed| changed.first != changed.second)
        .collect()
}

fn findings(first: &Report, second: &Report) -> Vec<Turned> {
    let grade = |report: &Report, found: &Finding| {
        report.faults().find(|other| other.is_like(found)).map(|other| other.grade)
    };
    let now = second.faults().map(|found| Turned {
        phrase: found.phrase.clone(),
        first: grade(first, found),
        second: Some(found.grade),
    });
    let gone = first.faults().filter(|found| grade(second, found).is_none()).map(|found| Turned {
        phrase: found.phrase.clone(),
        first: Some(found.grade),
        second: None,
    });
    let mut turned: Vec<Turned> = now.chain(gone).filter(|turned| turned.first != turned.second).collect();
    let rank = |grade: Option<Grade>| grade.unwrap_or(Grade::Fine);
    turned.sort_by_key(|turned| rank(turned.second));
    turned
}

fn results(first: &Report, second: &Report) -> Vec<Compared> {
    let result = |title, figure: &dyn Fn(&Report) -> f64, amount: fn(f64) -> Amount, sense| {
        let [one, other] = [first, second].map(figure);
        let change =
            (one > 0.0 && other >= 0.0).then(|| other / one - 1.0).filter(|change| change.is_finite());
        Compared { title, first: amount(one), second: amount(other), change, sense, of: [""; 2] }
    };
    let better = |less, more| sense(less, more, Some(true));
    let mass = |report: &Report| Weights::of(&report.parts).table().to_kg();
    let mut results = vec![
        result(
            "Hardest crank, raising",
            &|report| report.greatest(super::Station::crank_raise).0,
            Amount::Force,
            better("easier", "harder"),
        ),
        result(
            "Greatest screw force, raising",
            &|report| report.greatest(super::Station::raise).0,
            Amount::Thrust,
            better("less", "more"),
        ),
        result("Turns, lowest to highest", &Report::turns, Amount::Turns, sense("fewer", "more", None)),
        result("Lowest deck", &Report::lowest, Amount::Size, sense("lower", "higher", None)),
        result("Highest deck", &Report::highest, Amount::Size, sense("lower", "higher", None)),
        result(
            "Greatest sag at the load",
            &|report| report.greatest(|station| station.sag().total()).0,
            Amount::Give,
            better("stiffer", "softer"),
        ),
        result(
            "Most on the base wheels",
            &|report| report.greatest(|station| station.motion.raise.base_wheel).0,
            Amount::Force,
            better("less", "more"),
        ),
        result(
            "Most on the deck wheels",
            &|report| report.greatest(|station| station.motion.raise.top_wheel).0,
            Amount::Force,
            better("less", "more"),
        ),
    ];
    if let (Some(one), Some(other)) = (first.weakest(), second.weakest()) {
        let ratio = |report: &Report| report.weakest().map_or(f64::NAN, |check| check.ratio);
        let found = result("Weakest check, of its limit", &ratio, Amount::Number, better("safer", "weaker"));
        results.push(Compared { of: [one.title, other.title], ..found });
    }
    results.push(result("Weight of the table", &mass, Amount::Mass, better("lighter", "heavier")));
    results
}
