//! Deck rails, base beams and deck panel: what is left of them where something is let in, and how the panel bends across its grain.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use risewright::checks::{Check, Verdict};
use risewright::design::{Demo, Design, WoodSort};
use risewright::mechanics::JointId;
use risewright::quantity::{Amount, Length, System};
use risewright::report::{Report, analyse};
use risewright::share::link;

fn report(design: &Design) -> Report {
    analyse(design).unwrap_or_else(|unsound| panic!("{:?}", unsound.phrases()))
}

fn linked(text: &str) -> Design {
    link::decode(text).unwrap()
}

fn check<'a>(report: &'a Report, id: &str) -> &'a Check {
    report.check(id).unwrap_or_else(|| panic!("no check {id}"))
}

fn stress(check: &Check) -> f64 {
    let Amount::Stress(stress) = check.demand else { panic!("{:?} is no stress", check.demand) };
    stress
}

/// Beams 30 mm deep, 120 kg over the pivots, casters well outside them.
const SHALLOW: &str = "a.bd111c.ch3lmo.ca16v7k.lm5ighn9c.lx0";

/// Statics: the beams on their casters, by the levers, meet half their thickness over the pivots, where they bend most.
#[test]
fn a_beam_is_halved_where_its_cheek_is_let_in() {
    let design = linked(SHALLOW);
    let report = report(&design);
    let beams = check(&report, "base-beams");
    let station = report.at(beams.height);
    let (rest, running) = (&station.state.rest, &design.running);
    let [left, right] = [running.caster_left, running.caster_right].map(Length::to_m);
    let down = [(0.0, rest.joint(JointId::Bl).y), (station.pose.carriage_x, rest.base_wheel)];
    let at_left: f64 = down.iter().map(|(x, force)| force * (right - x) / (right - left)).sum();
    let moment = -left * at_left / 2.0;
    let (depth, thick) = (design.frames.beam_depth.to_m(), 2.0 * design.arms.thickness.to_m());
    let by_hand = 6.0 * moment / (thick / 2.0 * depth * depth);
    // The worst of three states, of which this is the one without friction.
    assert!((stress(beams) / by_hand - 1.0).abs() < 0.02, "{} by hand {by_hand}", stress(beams));
    assert_eq!(beams.verdict, Verdict::Over);
    assert!(beams.numbers.text(System::Metric).ends_with("where the base pivot cheek is let in"));
    // Shear on what the cheek's bolts leave of that half: 3/2 V / A.
    let sheared = stress(check(&report, "base-beams-shear"));
    assert!(sheared > 1.5 * at_left / 2.0 / (thick / 2.0 * depth), "{sheared}");
    assert!(check(&report, "base-beams-shear").numbers.text(System::Metric).ends_with("at a bolt"));
}

/// What is cut away never makes a beam stronger.
#[test]
fn wider_planks_never_use_beams_less() {
    let narrow = Demo::PaperLift.design();
    let mut wide = narrow.clone();
    wide.frames.plank_width = Length::mm(220.0);
    let [narrow, wide] = [narrow, wide].map(|design| report(&design));
    for id in ["base-beams", "base-beams-shear"] {
        assert!(check(&wide, id).ratio >= check(&narrow, id).ratio, "{id}");
    }
    // Planks that reach under the pivots cut depth and thickness away at one place.
    let text = check(&wide, "base-beams").numbers.text(System::Metric);
    assert!(check(&wide, "base-beams").ratio > 1.5 * check(&narrow, "base-beams").ratio, "{text}");
}

/// EN 1995-1-1/A1:2008, 6.1.7: k_cr 0.67 for solid wood (value from memory), 1 for panels.
#[test]
fn cracks_count_in_solid_wood() {
    let plywood = Demo::PaperLift.design();
    let mut solid = plywood.clone();
    solid.strength.sort = WoodSort::Softwood;
    let [plywood, solid] = [plywood, solid].map(|design| report(&design));
    for id in ["base-beams-shear", "deck-rails-shear"] {
        assert!((check(&plywood, id).ratio / check(&solid, id).ratio - 0.67).abs() < 1e-9, "{id}");
    }
}

/// A beam that is cut right through does not hold, in figures.
#[test]
fn a_beam_cut_through_does_not_hold() {
    let mut design = Demo::PaperLift.design();
    design.frames.beam_depth = Length::mm(18.0);
    let report = report(&design);
    for id in ["base-beams", "base-beams-shear"] {
        assert_eq!(check(&report, id).verdict, Verdict::Over, "{id}");
        assert!(stress(check(&report, id)).is_finite());
    }
}
