//! Two ways to give, two remedies.
use super::plan::{Closing, Plan, Unit};
use super::sideways::unbraced;
use super::studied::Studied;
use super::table::{give, of, sag};
use crate::design::Design;
use crate::pages::document::{Block, Cell, Table};
use crate::quantity::{Amount, Length, System};
use crate::report::PUSH;
use crate::share::lesson::Lesson;

pub(super) static PLAN: Plan = Plan {
    which: Lesson::Cures,
    scene: |known, system| {
        let [stout, slender] = [0, 1].map(|table| {
            Amount::Size(of(known, table, |report| report.design.drive.cross_bar.to_m())).text(system)
        });
        format!(
            "This table sags, and it gives sideways: the dashed curve, under {}. The builder takes out the cross-bar that the nut pushes, a \
             tube of {slender}, and puts in one of {stout}.",
            Amount::Force(PUSH).text(system)
        )
    },
    question: "How far does it give sideways now?",
    designs: || {
        let mut stout = slender();
        stout.drive.cross_bar = Length::mm(60.0);
        let mut strapped = slender();
        (strapped.arms.straps_a, strapped.arms.straps_b) = (true, true);
        vec![stout, slender(), strapped]
    },
    sideways: true,
    given: Some(("before, with the slender bar", |known, height| give(known, 1, height))),
    sought: ("Give sideways, with the stout bar", |known, height| give(known, 0, height)),
    unit: Unit::Give,
    why,
    part: "A1",
    formula: "δ = Σ Nᵢ nᵢ Lᵢ / (E A)ᵢ + …: a part counts only where the unit load passes through it",
    source: "Unit-load method of structural analysis.",
    closing: Closing {
        ask: "A deck dips at the front when loaded and is steady from the side. What helps?",
        choices: ["Crossed straps between the arms.", "A stiffer bar and a shorter screw.", "Wider casters."],
        right: 1,
        told: "Dipping goes through the screw and what holds it. Straps lie across that path and carry nothing of it.",
    },
};

fn slender() -> Design {
    let mut design = unbraced();
    design.drive.cross_bar = Length::mm(35.0);
    design
}

fn why(known: &Studied, system: System) -> Vec<Block> {
    let [low, high] = known.lift();
    let words = |metres: f64| Cell::number(Amount::Give(metres).text(system));
    let rows = [(1, "slender bar, no straps"), (0, "stout bar"), (2, "slender bar, straps on all arms")].map(
        |(table, name)| {
            vec![Cell::words(name), words(sag(known, table, low)), words(give(known, table, high))]
        },
    );
    vec![
        Block::text(
            "Not at all worth speaking of. Screw, nut and bar hold the arms up, and the load’s weight passes through them: a stouter bar lessens \
             the sag. A push from the side passes through boards, pins and the thin way of the arms, and the bar lies beside that path.",
        ),
        Block::Table(Table {
            caption: "Each remedy against each illness".into(),
            head: ["", "sag at the bottom", "give at the top"].map(String::from).to_vec(),
            rows: rows.to_vec(),
            foot: Vec::new(),
        }),
        Block::text(
            "So before you buy steel, ask which way it moves. Then follow the force, and stiffen what it passes through.",
        ),
    ]
}
