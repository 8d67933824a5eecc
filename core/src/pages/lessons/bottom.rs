//! Why the lowest part of the lift is the hardest.
use super::plan::{Closing, Plan, Unit};
use super::studied::Studied;
use super::table::{load, of, one_stage, still};
use crate::drawing::write as put;
use crate::mechanics::GRAVITY;
use crate::pages::document::{Block, Figure, Text};
use crate::quantity::{Amount, System};
use crate::report::Report;
use crate::share::lesson::Lesson;

pub(super) static PLAN: Plan = Plan {
    which: Lesson::Bottom,
    scene: |known, system| {
        let [low, high] = known.lift().map(|height| Amount::Size(height).text(system));
        format!(
            "One pair of crossed arms carries a load of {}, which stays the same all the way from {low} to {high}. A screw along the base \
             draws the wheels towards the pivots.",
            Amount::Force(load(known)).text(system)
        )
    },
    question: "How hard must the screw pull, from the bottom to the top?",
    designs: || vec![one_stage()],
    sideways: false,
    given: None,
    sought: ("Force along the screw, no friction", |known, height| still(known, 0, height)),
    unit: Unit::Thrust,
    why,
    part: "base-carriage",
    formula: "F = W / tan θ;   ∫ F ds = W · h",
    source: "Principle of virtual work: without friction, the work of the screw is the work of lifting. θ is the slope of the arms.",
    closing: Closing {
        ask: "Could another linkage between screw and deck make it easy all the way?",
        choices: [
            "Yes: the work would then be less.",
            "Yes: by a longer way of the screw at the bottom.",
            "No: the bottom is always the hardest.",
        ],
        right: 1,
        told: "The area stays. Whatever makes the force even spreads the same work over a longer way just where the arms lie flat.",
    },
};

/// The weight that rises as the deck does, N: what lies on the arms counts by how far up the arm it lies.
pub(super) fn raised(report: &Report) -> f64 {
    let mechanism = report.mechanism();
    let arms = mechanism.arm.mass * mechanism.sides;
    let lumps: f64 = mechanism.lumps.iter().map(|lump| lump.f * lump.mass).sum();
    mechanism.load.weight + GRAVITY * (mechanism.top_mass + mechanism.top_carriage_mass + arms + lumps)
}

/// The work of the screw over the whole lift without friction, N m: the force over the way of the nut, by the trapezoidal rule.
pub(super) fn work(report: &Report) -> f64 {
    report
        .stations
        .windows(2)
        .map(|pair| match pair {
            [low, high] => {
                0.5 * (low.still() + high.still()) * (high.state.screw_length - low.state.screw_length).abs()
            }
            _ => 0.0,
        })
        .sum()
}

fn why(known: &Studied, system: System) -> Vec<Block> {
    let [low, high] = known.lift();
    let thrust = |height| Amount::Thrust(still(known, 0, height)).text(system);
    let rise =
        |height: f64| of(known, 0, |report| report.at(height).rise_a_turn(report.design.drive.lead.to_m()));
    let (work, lifted) = (of(known, 0, work), of(known, 0, raised) * (high - low));
    let joule = |value: f64| format!("{value:.0}\u{A0}J");
    let mut blocks = vec![
        Block::text(format!(
            "At the bottom one turn of the crank lifts the deck by {}, at the top by {}. What moves fast pushes weakly: the screw needs {} \
             at the bottom and {} at the top.",
            Amount::Give(rise(low)).text(system),
            Amount::Give(rise(high)).text(system),
            thrust(low),
            thrust(high)
        )),
        Block::text(format!(
            "No linkage makes work. What the screw puts in, its force along its way, comes out as weight times rise: {} and {}. Two areas, \
             drawn to one scale, and equal.",
            joule(work),
            joule(lifted)
        )),
    ];
    blocks.extend(known.first().map(|report| areas(report, system)));
    blocks
}

/// Width for a metre and height for a newton, px; the left plot's room.
const PER_METRE: f64 = 700.0;
const TALL: f64 = 190.0;

fn areas(report: &Report, system: System) -> Block {
    let most = report.greatest(crate::report::Station::still).0;
    let per_newton = TALL / most;
    let start = report.stations.first().map_or(0.0, |station| station.state.screw_length);
    let way = report.stations.last().map_or(0.0, |station| (station.state.screw_length - start).abs());
    let rise = report.highest() - report.lowest();
    let (left, base) = (10.0, TALL + 26.0);
    let mut marks = String::new();
    put(&mut marks, format_args!("<path class=\"bend\" d=\"M{left:.2} {base:.2}"));
    for station in report.stations.iter().step_by(3).chain(report.stations.last()) {
        let x = left + PER_METRE * (station.state.screw_length - start).abs();
        put(&mut marks, format_args!("L{x:.2} {:.2}", base - per_newton * station.still()));
    }
    put(&mut marks, format_args!("V{base:.2}z\"/>"));
    let second = left + PER_METRE * way + 90.0;
    let (wide, tall) = (PER_METRE * rise, per_newton * raised(report));
    put(
        &mut marks,
        format_args!("<path class=\"bend\" d=\"M{second:.2} {base:.2}v-{tall:.2}h{wide:.2}v{tall:.2}z\"/>"),
    );
    for (x, wide) in [(left, PER_METRE * way), (second, wide)] {
        put(
            &mut marks,
            format_args!("<path class=\"axis none\" d=\"M{x:.2} 20V{base:.2}h{:.2}\"/>", wide + 14.0),
        );
    }
    let size = |metres: f64| Amount::Size(metres).text(system);
    let words = [
        (left + 6.0, 14.0, format!("screw force, at most {}", Amount::Thrust(most).text(system))),
        (left, base + 16.0, format!("way of the nut, {}", size(way))),
        (second + 6.0, base - tall - 8.0, format!("weight, {}", Amount::Force(raised(report)).text(system))),
        (second, base + 16.0, format!("rise, {}", size(rise))),
    ];
    for (x, y, words) in words {
        put(&mut marks, format_args!("<text x=\"{x:.2}\" y=\"{y:.2}\">{words}</text>"));
    }
    Block::Figure(Figure {
        marks,
        width: second + wide + 40.0,
        height: base + 24.0,
        label: "The work of the screw and the work of lifting as two areas of equal size.".into(),
        caption: Text::from(
            "Work in, work out, to one scale. The weight is that of the load, the deck and what rises of the arms.",
        ),
        true_scale: false,
    })
}
