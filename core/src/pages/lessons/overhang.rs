//! What stands out over the wheels at full height.
use super::plan::{Closing, Plan, Unit};
use super::studied::Studied;
use super::table::{load, of, one_stage};
use crate::design::Design;
use crate::pages::document::Block;
use crate::quantity::{Amount, Length, System};
use crate::share::lesson::Lesson;

pub(super) static PLAN: Plan = Plan {
    which: Lesson::Overhang,
    scene: |known, system| {
        format!(
            "The middle of the load stands {} from the fixed pivots and stays there. As the deck rises, the wheels under it run in towards the \
             pivots. The dashed line is the weight of the load, {}.",
            Amount::Size(of(known, 0, |report| report.design.load.centre.to_m())).text(system),
            Amount::Force(load(known)).text(system)
        )
    },
    question: "How much do the wheels under the deck carry?",
    designs: || vec![table()],
    sideways: false,
    given: Some(("weight of the load", |known, _| load(known))),
    sought: ("Force on the deck’s wheels", wheels),
    unit: Unit::Thrust,
    why,
    part: "deck",
    formula: "R = W a / x",
    source: "Moments about the deck’s pivots: a from them to the middle of the load, x to the wheels.",
    closing: Closing {
        ask: "Where may the load safely stand at any height?",
        choices: [
            "Anywhere on the deck.",
            "Between the pivots and where the wheels are at the bottom.",
            "Between the pivots and where the wheels are at the top.",
        ],
        right: 2,
        told: "The wheels come nearest at full height. What stands between there and the pivots is always held from both sides.",
    },
};

fn table() -> Design {
    let mut design = one_stage();
    design.load.centre = Length::mm(320.0);
    design
}

fn wheels(known: &Studied, height: f64) -> f64 {
    of(known, 0, |report| report.at(height).state.rest.top_wheel)
}

fn axle(known: &Studied, height: f64) -> f64 {
    of(known, 0, |report| report.at(height).pose.top_axle.x - report.at(height).pose.top.origin.x)
}

fn why(known: &Studied, system: System) -> Vec<Block> {
    let [low, high] = known.lift();
    let force = |newtons: f64| Amount::Force(newtons).text(system);
    let size = |metres: f64| Amount::Size(metres).text(system);
    vec![
        Block::text(format!(
            "At the bottom the wheels stand {} from the pivots and carry {}; at the top they stand {} from them and carry {}, more than the \
             load weighs.",
            size(axle(known, low)),
            force(wheels(known, low)),
            size(axle(known, high)),
            force(wheels(known, high))
        )),
        Block::text(
            "How can a part carry more than all? Because another pulls. Once the load’s middle is past the wheels, the deck is a seesaw over \
             them, and the pivots at the other end must hold it down. A bracket that was made to bear, with its screws in the pull direction, \
             then comes off without warning. Either the load stays inside, or the pivots are made to hold both ways.",
        ),
    ]
}
