//! How heavy a load may be before the table falls over sideways.
use super::plan::{Closing, Plan, Unit};
use super::sideways::unbraced;
use super::studied::Studied;
use super::table::of;
use crate::design::Design;
use crate::pages::document::Block;
use crate::quantity::{Amount, Length, System};
use crate::report::{Case, LEAST_MULTIPLE};
use crate::share::lesson::Lesson;

pub(super) static PLAN: Plan = Plan {
    which: Lesson::Tall,
    scene: |known, system| {
        let [tall, flat] = [0, 1].map(|table| {
            Amount::Size(of(known, table, |report| report.design.load.height.to_m())).text(system)
        });
        format!(
            "Nobody pushes this table. Weight is put on it, always straight, until at some weight it leans over sideways all by itself. The \
             dashed curve is that weight for a load {flat} high; now the same is stacked {tall} high."
        )
    },
    question: "Under what weight does the tall load lean over, at each height of the deck?",
    designs: || [800.0, 100.0].map(stacked).to_vec(),
    sideways: true,
    given: Some(("the same weight lying flat", |known, height| leans(known, 1, height))),
    sought: ("Weight under which it leans over", |known, height| leans(known, 0, height)),
    unit: Unit::Mass,
    why,
    part: "deck",
    formula: "K u = λ K_G u",
    source: "Linear buckling of the frame in space (after Euler, 1744, for a column): λ is the critical load as a multiple of the load.",
    closing: Closing {
        ask: "Which of these helps most against leaning over?",
        choices: ["Stronger wood.", "Bracing across, and the load’s weight low.", "A stronger screw."],
        right: 1,
        told: "Only stiffness against the lean and a short lever of the weight count; nothing here is about to break.",
    },
};

/// The unbraced table with a load of a height, mm.
fn stacked(height: f64) -> Design {
    let mut design = unbraced();
    design.load.height = Length::mm(height);
    design
}

fn mass(known: &Studied, _: f64) -> f64 {
    of(known, 0, |report| report.design.load.mass.to_kg())
}

/// The weight under which a table leans over at a height, m; in kg.
fn leans(known: &Studied, table: usize, height: f64) -> f64 {
    let multiple = known.sways.get(table).and_then(|sway| sway.multiple(Case::Middle, height));
    multiple.map_or(f64::NAN, |multiple| multiple * mass(known, height))
}

fn why(known: &Studied, system: System) -> Vec<Block> {
    let [low, high] = known.lift();
    let words = |kilograms: f64| Amount::Mass(kilograms).text(system);
    vec![
        Block::text(format!(
            "Stacked tall it leans over under {} at the bottom and {} at the top; lying flat it takes {} and {}. A table that leans a little \
             lets its load out to the side, and the load makes it lean more. Stiffness pulls back, weight pulls on. At the critical load they \
             are even, and the higher the weight sits, the further the same roll of the deck lets it out.",
            words(leans(known, 0, low)),
            words(leans(known, 0, high)),
            words(leans(known, 1, low)),
            words(leans(known, 1, high))
        )),
        Block::text(format!(
            "Most people fear the top. This deck rolls most easily at the bottom: it is the flat arms again, where a little give in every part \
             is much at the deck. Because no shop-built table is as straight as this sum has it, at least {LEAST_MULTIPLE:.0} times the load \
             is wanted at every height; for {} the tall stack reaches {:.1} times at its worst.",
            words(mass(known, low)),
            known.heights.iter().map(|height| leans(known, 0, *height)).fold(f64::INFINITY, f64::min)
                / mass(known, low)
        )),
    ]
}
