//! Several short stages instead of a long one.
use super::plan::{Closing, Plan, Unit};
use super::studied::Studied;
use super::table::{of, still, two_stages};
use crate::design::Design;
use crate::pages::document::Block;
use crate::quantity::{Amount, Count, Length, System};
use crate::share::lesson::Lesson;

pub(super) static PLAN: Plan = Plan {
    which: Lesson::Stages,
    scene: |known, system| {
        let [short, long] =
            [0, 1].map(|table| of(known, table, |report| report.design.lift.arm_length.to_m()));
        format!(
            "Two tables rise equally high. One has a single pair of arms, {} long: its screw force is the dashed curve. The other, drawn here, \
             stands on two pairs of arms of {}, and is half as long.",
            Amount::Size(long).text(system),
            Amount::Size(short).text(system)
        )
    },
    question: "How hard must the screw of the two-stage table pull?",
    designs: || vec![two_stages(), long()],
    sideways: false,
    given: Some(("one stage of long arms", |known, height| still(known, 1, height))),
    sought: ("Force along the screw, no friction", |known, height| still(known, 0, height)),
    unit: Unit::Thrust,
    why,
    part: "A1",
    formula: "F = n W / tan θ",
    source: "Principle of virtual work, arms without weight; n is the number of stages, θ the slope of all arms.",
    closing: Closing {
        ask: "Three stages of arms a third as long: what does the screw need, against one long stage?",
        choices: ["The same.", "Three times the force over a third of the way.", "A third of the force."],
        right: 1,
        told: "Each stage adds its rise to the others, so the deck runs three times as fast as the wheels could drive it with one.",
    },
};

fn long() -> Design {
    let mut design = two_stages();
    design.lift.stages = Count::of(1);
    design.lift.arm_length = Length::mm(1040.0);
    design.frames.base_length = Length::mm(1300.0);
    design.frames.deck_length = Length::mm(1300.0);
    design.frames.deck_rail_length = Length::mm(1200.0);
    design.drive.screw_length = Length::mm(1300.0);
    design.running.caster_right = Length::mm(1040.0);
    design
}

/// How far the nut runs over the whole lift, m.
fn way(known: &Studied, table: usize) -> f64 {
    of(known, table, |report| report.turns() * report.design.drive.lead.to_m())
}

fn why(known: &Studied, system: System) -> Vec<Block> {
    let low = known.lift()[0];
    let thrust = |table| Amount::Thrust(still(known, table, low)).text(system);
    let size = |table| Amount::Size(way(known, table)).text(system);
    vec![
        Block::text(format!(
            "Twice, give or take the weight of the arms: at the bottom {} against {}. Both tables’ arms lie at the same slope, but for each \
             step of the wheels the deck rises twice as far when two pairs stand on one another.",
            thrust(0),
            thrust(1)
        )),
        Block::text(format!(
            "The work is the same, and so are the areas: the nut runs {} instead of {}. A second stage buys a short table and a short screw, \
             and pays with force in every pin, and with twice the pins to rattle.",
            size(0),
            size(1)
        )),
    ]
}
