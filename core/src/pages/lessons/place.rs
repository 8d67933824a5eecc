//! What changes where the load stands elsewhere.
use super::plan::{Closing, Plan, Unit};
use super::studied::Studied;
use super::table::{of, one_stage, still};
use crate::design::Design;
use crate::pages::document::Block;
use crate::quantity::{Amount, Length, System};
use crate::share::lesson::Lesson;

pub(super) static PLAN: Plan = Plan {
    which: Lesson::Place,
    scene: |known, system| {
        let [wheels, pivots] = places(known).map(|place| Amount::Size(place).text(system));
        format!(
            "The same box twice. First its middle stood {pivots} from the fixed pivots: the dashed curve. Now it has been moved to {wheels}, \
             towards the wheels."
        )
    },
    question: "How hard must the screw pull now?",
    designs: || vec![table(300.0), table(100.0)],
    sideways: false,
    given: Some(("with the load near the pivots", |known, height| still(known, 1, height))),
    sought: ("Force along the screw, no friction", |known, height| still(known, 0, height)),
    unit: Unit::Thrust,
    why,
    part: "deck",
    formula: "F ds = W dh",
    source: "Principle of virtual work: only how far the weight rises counts, and a level deck rises alike everywhere.",
    closing: Closing {
        ask: "The box goes out past the wheels. What fails first?",
        choices: ["The screw.", "The deck’s pivots, which are not made to hold down.", "The crank."],
        right: 1,
        told: "Past the wheels the deck wants to turn over them, and its pivots must pull it down. The screw still feels nothing of it.",
    },
};

fn table(centre: f64) -> Design {
    let mut design = one_stage();
    design.load.length = Length::mm(200.0);
    design.load.centre = Length::mm(centre);
    design
}

fn places(known: &Studied) -> [f64; 2] {
    [0, 1].map(|table| of(known, table, |report| report.design.load.centre.to_m()))
}

fn why(known: &Studied, system: System) -> Vec<Block> {
    let middle = 0.5 * (known.lift()[0] + known.lift()[1]);
    let force = |newtons: f64| Amount::Force(newtons).text(system);
    let [far, near] = [0, 1].map(|table| of(known, table, |report| report.at(middle).state.rest.top_wheel));
    vec![
        Block::text(format!(
            "Nothing changes: at {} the screw needs {} either way. The deck stays level, so every place on it rises by the same amount for \
             a turn of the crank. Equal rise, equal work, equal force.",
            Amount::Size(middle).text(system),
            Amount::Thrust(still(known, 0, middle)).text(system)
        )),
        Block::text(format!(
            "What does change is who carries it. At that height the deck’s wheels bear {} with the load near the pivots and {} with it near \
             the wheels; the pivots bear the rest. So the wheels, the rails and the bending of the arms decide where the load may stand.",
            force(near),
            force(far)
        )),
        Block::text("With friction a little of it comes back: heavier wheels and pins drag more."),
    ]
}
