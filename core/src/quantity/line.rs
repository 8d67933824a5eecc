//! Lines of the reader's rule: values in which a limit is told, so that what is read is within it.
use super::kind::{Kind, System};

/// How far apart lines are, in steps, the coarser first: millimetres and tenths of them, sixteenths and sixty-fourths of an inch, thousandths of a
/// plain number. Other kinds have none.
const fn rule(kind: Kind, system: System) -> &'static [i64] {
    match (kind, system) {
        (Kind::Length, System::Metric) => &[1600, 160],
        (Kind::Length, System::Inch) => &[2540, 635],
        (Kind::Ratio, _) => &[100],
        _ => &[],
    }
}

/// The values at or before the limit `end` that stand at lines, seen from a value `from` within the limit; the coarser line first, none where no line lies
/// between.
pub fn inwards(kind: Kind, end: i64, from: i64, system: System) -> impl Iterator<Item = i64> {
    let within = (from.min(end), from.max(end));
    rule(kind, system)
        .iter()
        .map(move |line| if end < from { -((-end).div_euclid(*line)) } else { end.div_euclid(*line) } * line)
        .filter(move |value| (within.0..=within.1).contains(value) && *value != from)
}
