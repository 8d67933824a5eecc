//! How the play of many pivots adds up.
use super::plan::{Closing, Plan, Unit};
use super::studied::Studied;
use super::table::{of, two_stages};
use crate::pages::document::Block;
use crate::quantity::{Amount, System};
use crate::share::lesson::Lesson;

pub(super) static PLAN: Plan = Plan {
    which: Lesson::Play,
    scene: |known, system| {
        format!(
            "Each pin has {} more room in its hole than it needs: the dashed line. Nothing bends in this lesson; only what is loose counts.",
            Amount::Give(clearance(known, 0.0)).text(system)
        )
    },
    question: "How far can one move the deck up and down at the load before the last pin touches?",
    designs: || vec![two_stages()],
    sideways: false,
    given: Some(("room in one hole", clearance)),
    sought: ("Free travel of the deck", lash),
    unit: Unit::Give,
    why,
    part: "A1",
    formula: "travel = Σ |force in the joint for a unit load| · clearance",
    source: "Principle of virtual work with the clearances as displacements, after the unit-load method of structural analysis.",
    closing: Closing {
        ask: "What halves it?",
        choices: ["A stiffer screw.", "Bushes that halve the room in each hole.", "A heavier load."],
        right: 1,
        told: "Play goes with the clearances and with nothing else. A load only takes it up on one side.",
    },
};

fn clearance(known: &Studied, _: f64) -> f64 {
    of(known, 0, |report| report.design.running.clearance.to_m())
}

fn lash(known: &Studied, height: f64) -> f64 {
    of(known, 0, |report| report.at(height).deflection.drop.lash)
}

fn why(known: &Studied, system: System) -> Vec<Block> {
    let [low, high] = known.lift();
    let words = |metres: f64| Amount::Give(metres).text(system);
    let times = format!("{:.0}", lash(known, low) / clearance(known, low));
    vec![
        Block::text(format!(
            "At the bottom {}, {times} times the room in one hole; at the top {}. Every joint stands between screw and deck, and each passes \
             its room on, multiplied by the force that runs through it.",
            words(lash(known, low)),
            words(lash(known, high))
        )),
        Block::text(
            "And here the flat arms strike again. A unit of load on the deck is many units in the pins when the arms lie flat, and by the same \
             lever a little room in the pins is much room at the deck. Force up, play up: one ratio serves both.",
        ),
    ]
}
