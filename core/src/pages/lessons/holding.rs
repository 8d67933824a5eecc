//! What it costs that a screw holds by itself.
use super::plan::{Closing, Plan, Unit};
use super::studied::Studied;
use super::table::{of, two_stages};
use crate::pages::document::Block;
use crate::quantity::{Amount, System};
use crate::report::Report;
use crate::share::lesson::Lesson;
use core::f64::consts::PI;

pub(super) static PLAN: Plan = Plan {
    which: Lesson::Holding,
    scene: |known, system| {
        format!(
            "Let go of this crank at any height and the deck stays where it is: the screw holds by itself. The dashed curve is the force on \
             the handle, on a radius of {}, if nothing in the table had friction.",
            Amount::Size(of(known, 0, |report| report.design.drive.crank.to_m())).text(system)
        )
    },
    question: "How hard must one turn the handle to raise the real table?",
    designs: || vec![two_stages()],
    sideways: false,
    given: Some(("without any friction", ideal)),
    sought: ("Force on the handle, raising", |known, height| {
        of(known, 0, |report| report.at(height).crank_raise())
    }),
    unit: Unit::Hand,
    why,
    part: "base-carriage",
    formula: "η = tan λ / tan(λ + φ);   λ ≤ φ  ⇒  η ≤ (1 − tan² φ) / 2 < ½",
    source: "Inclined plane unrolled from a thread, as in any text on power screws: λ is the slope of the thread, φ its angle of friction; \
             it holds where λ ≤ φ.",
    closing: Closing {
        ask: "A screw with four times the lead and the same friction: what then?",
        choices: [
            "It wastes less, and may run back by itself.",
            "It wastes less and still holds.",
            "It wastes more.",
        ],
        right: 0,
        told: "A steeper thread gives more of the work to the load, in both directions. Past the angle of friction the load drives the screw, and one needs a brake.",
    },
};

fn ideal(known: &Studied, height: f64) -> f64 {
    of(known, 0, |report| {
        let drive = &report.design.drive;
        report.at(height).torque_ideal(drive.lead.to_m()) / drive.crank.to_m()
    })
}

/// The share of the work at the crank that the screw passes on.
pub(super) fn efficiency(report: &Report) -> f64 {
    let lead = report.design.drive.lead.to_m();
    report.mechanism().screw.as_ref().map_or(f64::NAN, |screw| lead / (2.0 * PI * screw.torque_against(1.0)))
}

fn why(known: &Studied, system: System) -> Vec<Block> {
    let low = known.lift()[0];
    let hand = |newtons: f64| Amount::Force(newtons).text(system);
    let share = of(known, 0, efficiency);
    let percent = |share: f64| Amount::Share(share).text(system);
    vec![
        Block::text(format!(
            "At the bottom {} instead of {}. Of every turn’s work the screw and its bearing pass on {}; pins and wheels take their part of \
             that. The rest warms thread and collar.",
            hand(of(known, 0, |report| report.at(low).crank_raise())),
            hand(ideal(known, low)),
            percent(share)
        )),
        Block::text(
            "It cannot be otherwise. Going up, friction stands against the hand together with the load. For the load not to run the screw back, \
             friction must be at least as strong as the load’s own share. So the hand always pays the load once and friction at least once more: \
             less than half arrives.",
        ),
    ]
}
