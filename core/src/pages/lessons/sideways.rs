//! Which way a light table gives.
use super::plan::{Closing, Plan, Unit};
use super::studied::Studied;
use super::table::{give, load, sag, two_stages};
use crate::design::Design;
use crate::pages::document::Block;
use crate::quantity::{Amount, System};
use crate::report::PUSH;
use crate::share::lesson::Lesson;

pub(super) static PLAN: Plan = Plan {
    which: Lesson::Sideways,
    scene: |known, system| {
        format!(
            "Under its load of {} this table sags as the dashed curve says. Now a hand leans on the empty deck from the side, across the \
             table, with {}.",
            Amount::Force(load(known)).text(system),
            Amount::Force(PUSH).text(system)
        )
    },
    question: "How far does the deck give sideways?",
    designs: || vec![unbraced()],
    sideways: true,
    given: Some(("sag under the load", |known, height| sag(known, 0, height))),
    sought: ("Give sideways under the push", |known, height| give(known, 0, height)),
    unit: Unit::Give,
    why,
    part: "base",
    formula: "give = push · Σ (1 / stiffness of all that bends or turns)",
    source: "Frame in space at each height, best guess of the stiffnesses; see the page on sources for its limits.",
    closing: Closing {
        ask: "Where does thicker stock for the arms help most?",
        choices: ["Sideways: an arm bends about its thin way.", "Downwards.", "Both alike."],
        right: 0,
        told: "A plank on edge is as stiff as its width to the third power, a plank pushed flat as its thickness to the third. The thickness is what the sideways push meets.",
    },
};

/// The two-stage table without its straps.
pub(super) fn unbraced() -> Design {
    let mut design = two_stages();
    design.arms.straps_a = false;
    design.arms.straps_b = false;
    design
}

fn why(known: &Studied, system: System) -> Vec<Block> {
    let high = known.lift()[1];
    let (down, across) = (sag(known, 0, high), give(known, 0, high));
    let ratio = (across / PUSH) / (down / load(known));
    let words = |metres: f64| Amount::Give(metres).text(system);
    vec![
        Block::text(format!(
            "At full height the load presses the deck down by {}, and a push of {} moves it {} sideways. Newton for newton it is {} times as \
             soft that way.",
            words(down),
            Amount::Force(PUSH).text(system),
            words(across),
            format_args!("{ratio:.0}")
        )),
        Block::text(
            "Downwards the arms are planks on edge, and the screw holds them. Sideways the same planks bend about their thin way, and nothing \
             but pins and boards keeps the left arm abreast of the right one. A table that feels \
             flimsy is rarely too weak to carry: it wants bracing across.",
        ),
    ]
}
