//! Deck rails, base beams and deck panel: what is left of them where something is let in, and how the panel bends across its grain.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use risewright::catalogue::Family;
use risewright::catalogue::panel::PANELS;
use risewright::checks::{Check, Verdict};
use risewright::design::{Demo, Design, WoodSort, set_panel};
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

/// Statics: the beams on their casters, by the levers, meet half their thickness at the pivots' cheeks and half a frame's thickness less
/// depth over the planks.
#[test]
fn a_beam_is_halved_where_cheeks_and_planks_are_let_in() {
    for (text, place) in
        [(SHALLOW, "where the base plank is let in"), ("a", "where the base pivot cheek is let in")]
    {
        let design = linked(text);
        let report = report(&design);
        let beams = check(&report, "base-beams");
        let station = report.at(beams.height);
        let (rest, running, frames) = (&station.state.rest, &design.running, &design.frames);
        let [left, right] = [running.caster_left, running.caster_right].map(Length::to_m);
        let down = [(0.0, rest.joint(JointId::Bl).y), (station.pose.carriage_x, rest.base_wheel)];
        let at_left: f64 = down.iter().map(|(x, force)| force * (right - x) / (right - left)).sum();
        // One of two beams.
        let moment = |x: f64| {
            let loads: f64 = down.iter().map(|(at, force)| force * (x - at).max(0.0)).sum();
            (at_left * (x - left) - loads) / 2.0
        };
        let (depth, thick) = (frames.beam_depth.to_m(), 2.0 * design.arms.thickness.to_m());
        let half = |x: f64| 6.0 * moment(x) / (thick / 2.0 * depth * depth);
        let lapped = |x: f64| 6.0 * moment(x) / (thick * (depth - thick / 2.0) * (depth - thick / 2.0));
        let (end, plank) = (design.arms.end.to_m(), frames.plank_width.to_m() / 2.0);
        let by_hand = [half(-end), half(0.0), half(end), lapped(left + plank), lapped(right - plank)]
            .into_iter()
            .fold(0.0, f64::max);
        // The worst of three states, of which this is the one without friction.
        assert!((stress(beams) / by_hand - 1.0).abs() < 0.02, "{text}: {} by hand {by_hand}", stress(beams));
        assert!(beams.numbers.text(System::Metric).ends_with(place), "{text}");
        // Shear on what the cheek's bolts leave of that half: more than 3/2 V / A without their holes.
        let sheared = check(&report, "base-beams-shear");
        assert!(stress(sheared) > 1.5 * at_left / 2.0 / (thick / 2.0 * depth), "{text}: {}", stress(sheared));
        assert!(sheared.numbers.text(System::Metric).ends_with("at a bolt"), "{text}");
    }
    // Whole, these beams would hold: half of 25 MPa over the pivots, of 21.5 that may be used.
    assert_eq!(check(&report(&linked(SHALLOW)), "base-beams").verdict, Verdict::Over);
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

/// Graded softwood, C24 of EN 338.
const C24: &str = "a.am6jrnk.ageseo.ad38o.tq1.tbiio.ts334.tc1xg.td2p8";

/// EN 338:2016, class C24: E across the grain 0.37 GPa, pulled across the grain it holds 0.4 MPa; by hand with the strip's own sizes.
#[test]
fn a_deck_of_solid_wood_bends_across_its_grain() {
    let design = linked(C24);
    let report = report(&design);
    let (frames, load) = (&design.frames, &design.load);
    let span = 2.0 * design.running.wheel_place.to_m();
    let (weight, thick) = (load.mass.to_kg() * 9.806_65, frames.deck_thickness.to_m());
    let width = load.length.to_m().max(span / 2.0).min(frames.deck_length.to_m());
    let inertia = width * thick * thick * thick / 12.0;
    let bent = weight * span * span * span / (48.0 * 0.37e9 * inertia);
    let over = |id: &str| check(&report, id).ratio;
    let give = over("deck-panel-give") / (bent / (span / design.strength.stiffness.get() as f64));
    // Shear adds to it; E of the class is rounded to two digits.
    assert!((0.99..1.15).contains(&give), "{give}");
    let allowed = 0.4e6 * design.strength.duration.value() / design.strength.wood_safety.value();
    let wanted = weight * span / 4.0 / (width * thick * thick / 6.0) / allowed;
    assert!((over("deck-panel") / wanted - 1.0).abs() < 1e-9);
    assert!(over("deck-panel") > 10.0 && over("deck-panel-give") > 8.0);
    // And it is said, with what would be right.
    let said =
        report.faults().find(|finding| finding.phrase.text(System::Metric).contains("across the grain"));
    assert!(said.unwrap().remedy.as_ref().unwrap().text(System::Metric).contains("plywood"));
}

/// Birch plywood 18 mm across its face has 7.4 GPa and 33 MPa (Handbook of Finnish plywood, from memory): never more is taken, and no less than
/// four fifths. Softwood plywood of five equal layers has less of its own.
#[test]
fn plywood_is_weaker_across_its_face() {
    let design = Demo::PaperLift.design();
    let birch = report(&design);
    let kept = design.strength.duration.value() / design.strength.wood_safety.value();
    let Amount::Stress(bending) = check(&birch, "deck-panel").capacity else { panic!("no stress") };
    assert!((0.8..1.0).contains(&(bending / kept / 33e6)), "{bending}");
    let text = check(&birch, "deck-panel").numbers.text(System::Metric);
    assert!(text.contains("13 layers"), "{text}");
    let softwood = report(&Demo::PottingBench.design());
    let text = check(&softwood, "deck-panel-give").numbers.text(System::Metric);
    assert!(text.contains("5 layers"), "{text}");
}

/// Fibres lie every way.
#[test]
fn a_panel_without_grain_is_alike_both_ways() {
    let mut design = Demo::PaperLift.design();
    let mdf = PANELS.iter().find(|row| row.family == Family::Mdf).unwrap();
    set_panel(&mut design, mdf);
    let report = report(&design);
    let kept = design.strength.duration.value() / design.strength.wood_safety.value();
    let Amount::Stress(bending) = check(&report, "deck-panel").capacity else { panic!("no stress") };
    assert!((bending / kept / mdf.bending.to_pa() - 1.0).abs() < 1e-9);
}
