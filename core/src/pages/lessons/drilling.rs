//! How little a hole may be off.
use super::plan::{Closing, Plan, Unit};
use super::studied::Studied;
use super::table::{of, two_stages};
use crate::pages::document::Block;
use crate::quantity::{Amount, System, figures};
use crate::share::lesson::Lesson;
use crate::workshop::drilling::{Method, exactness};

pub(super) static PLAN: Plan = Plan {
    which: Lesson::Drilling,
    scene: |known, system| {
        format!(
            "Every hole in every arm was drilled by itself and is within {} of its mark: the dashed line. The deck is {} long.",
            figures::drilled(error(known, 0.0), system),
            Amount::Size(of(known, 0, |report| report.design.frames.deck_length.to_m())).text(system)
        )
    },
    question: "How far is the deck out of level, from end to end?",
    designs: || vec![two_stages()],
    sideways: false,
    given: Some(("error of one hole", error)),
    sought: ("Deck out of level, likely", |known, height| tilt(known, Method::Alone, height)),
    unit: Unit::Give,
    why,
    part: "deck",
    formula: "tilt = √ Σ (∂tilt/∂hole · error)²",
    source: "Root of the sum of squares of independent errors, the usual law of their propagation (JCGM 100, 5.1.2); derivatives of the linkage.",
    closing: Closing {
        ask: "You can buy a better drill or drill left and right, and both ends, against one stop. Which?",
        choices: ["The better drill.", "The one stop.", "Neither helps."],
        right: 1,
        told: "An error that is the same in every arm makes a slightly other table, but a level one. Only differences tilt.",
    },
};

fn error(known: &Studied, _: f64) -> f64 {
    of(known, 0, |report| report.design.shop.drilling.to_m())
}

/// How far the deck is likely out of level, end to end, at a height, m.
fn tilt(known: &Studied, method: Method, height: f64) -> f64 {
    of(known, 0, |report| {
        let design = &report.design;
        let size = design.shop.drilling.to_m() * design.frames.deck_length.to_m();
        exactness(design, report.solver(), method, height)
            .map_or(f64::NAN, |exact| exact.tilt.times(size).rss)
    })
}

fn why(known: &Studied, system: System) -> Vec<Block> {
    let [low, high] = known.lift();
    let words = |method, height| Amount::Give(tilt(known, method, height)).text(system);
    vec![
        Block::text(format!(
            "At the bottom the deck is likely {} out of level, at the top {}. An arm that is too long lifts its end by its error times the \
             sine of the slope, and meanwhile the two places on which the deck rests come closer together. So the tilt grows as the tangent of \
             the slope, and every stage adds its own.",
            words(Method::Alone, low),
            words(Method::Alone, high)
        )),
        Block::text(format!(
            "The same error, but the same in every half arm, drilled about a pinned centre against one stop: {} at the top. The rhombus \
             stays a rhombus, and the deck stays level. Not how well you drill counts, but how alike.",
            words(Method::Turned, high)
        )),
    ]
}
