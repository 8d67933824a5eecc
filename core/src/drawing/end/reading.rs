//! The table of sideways figures at the deck's height.
use crate::drawing::chart::Unit;
use crate::drawing::reading::{Reading, ReadingRow};
use crate::quantity::System;
use crate::quantity::figures::{self, Figure};
use crate::report::{Case, Station, SwayReport};

/// The values at a station; an em dash where one is not known yet or there is none.
pub(super) fn reading(sway: Option<&SwayReport>, station: &Station, system: System) -> Reading {
    let height = station.height;
    let empty = SwayReport::default();
    let sway = sway.unwrap_or(&empty);
    let none = f64::NAN;
    let row = |name,
               figure: &dyn Fn(Case) -> Option<f64>,
               unit: &'static str,
               words: &dyn Fn(f64) -> Figure| ReadingRow {
        name,
        values: [Case::Middle, Case::Soft, Case::Stiff]
            .map(|case| words(figure(case).unwrap_or(none)).number)
            .into(),
        unit,
    };
    let give = |metres: f64| figures::sag(metres, system);
    let single = |name, value: Option<f64>| {
        let figure = give(value.unwrap_or(none));
        ReadingRow { name, values: vec![figure.number], unit: figure.unit }
    };
    let rattle = sway.rattle(height);
    let millimetres = give(0.0).unit;
    Reading {
        heading: format!("At {}", figures::size(height, system)),
        columns: ["middle", "soft", "stiff"],
        rows: vec![
            row("Gives sideways", &|case| sway.give(case, height), millimetres, &give),
            row("Twists", &|case| sway.twist(case, height), Unit::Twist.symbol(system), &|radians| {
                Unit::Twist.figure(radians, system)
            }),
            row("Critical load", &|case| sway.multiple(case, height), "times", &figures::factor),
        ],
        carried: format!("sideways, {millimetres}"),
        loads: vec![
            single("rattles, at least", rattle.map(|rattle| rattle.least)),
            single("rattles, at most", rattle.map(|rattle| rattle.most)),
            single("gives, loaded", sway.loaded_give(Case::Middle, height)),
            single("gives, no guides", sway.give(Case::Unguided, height)),
        ],
        gives: String::new(),
        sag: Vec::new(),
    }
}
