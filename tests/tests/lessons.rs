//! Is what the lessons say true? Each lesson's claim, by its own tables and by formulas from outside where there are any.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test may fail by panicking")]

use core::f64::consts::PI;
use risewright::drawing::{Layout, View as Room};
use risewright::mechanics::GRAVITY;
use risewright::pages::{Reader, Studied, page, study};
use risewright::quantity::System;
use risewright::report::{Case, Report, analyse};
use risewright::share::address::View;
use risewright::share::lesson::Lesson;
use std::rc::Rc;

fn known(lesson: Lesson) -> Studied {
    study(lesson).expect("the tables of a lesson stand")
}

fn work(report: &Report) -> f64 {
    report
        .stations
        .windows(2)
        .map(|pair| {
            0.5 * (pair[0].still() + pair[1].still())
                * (pair[1].state.screw_length - pair[0].state.screw_length).abs()
        })
        .sum()
}

/// Virtual work (any text on statics): without friction the screw's work is the work of lifting. Weights on the arms rise by their share.
#[test]
fn the_bottom_is_hard_because_work_is_kept() {
    let known = known(Lesson::Bottom);
    let report = &known.reports[0];
    assert!(known.sought.windows(2).all(|pair| pair[0] > pair[1]), "the force falls all the way");
    assert!(known.sought[0] > 5.0 * known.sought[known.sought.len() - 1]);
    let mechanism = report.mechanism();
    let lumps: f64 = mechanism.lumps.iter().map(|lump| lump.mass * lump.f).sum();
    let masses =
        mechanism.top_mass + mechanism.top_carriage_mass + mechanism.arm.mass * mechanism.sides + lumps;
    let lifted = (mechanism.load.weight + GRAVITY * masses) * (report.highest() - report.lowest());
    let done = work(report);
    assert!((done / lifted - 1.0).abs() < 1e-3, "{done} J in, {lifted} J out");
}

#[test]
fn the_place_of_the_load_changes_the_wheels_only() {
    let known = known(Lesson::Place);
    for (one, other) in known.sought.iter().zip(&known.given) {
        assert!((one / other - 1.0).abs() < 1e-9, "{one} {other}");
    }
    for (far, near) in known.reports[0].stations.iter().zip(&known.reports[1].stations) {
        let [far, near] = [far, near].map(|station| station.state.rest.top_wheel);
        assert!(far > 1.5 * near, "{far} {near}");
    }
}

/// F = n W / tan theta (virtual work, arms without weight); the weight of the arms is what is left.
#[test]
fn two_stages_need_twice_the_force_over_half_the_way() {
    let known = known(Lesson::Stages);
    for (two, one) in known.sought.iter().zip(&known.given) {
        assert!((two / one / 2.0 - 1.0).abs() < 0.06, "{two} {one}");
    }
    let way = |report: &Report| report.turns() * report.design.drive.lead.to_m();
    let ways = way(&known.reports[1]) / way(&known.reports[0]);
    assert!((ways - 2.0).abs() < 1e-9, "{ways}");
}

/// eta = tan l / tan(l + p) of the thread by itself, with the flank in the angle of friction (power screws, any text on machine elements).
#[test]
fn a_screw_that_holds_wastes_more_than_half() {
    let known = known(Lesson::Holding);
    let report = &known.reports[0];
    let drive = &report.design.drive;
    let slope = drive.lead.to_m() / (PI * drive.mean.to_m());
    let friction = drive.thread_friction.value() / drive.flank.to_radians().cos();
    assert!(slope < friction, "it holds by itself");
    let thread = slope / (slope.atan() + friction.atan()).tan();
    assert!(thread < 0.5, "{thread}");
    let screw = report.mechanism().screw.as_ref().expect("a screw");
    let whole = drive.lead.to_m() / (2.0 * PI * screw.torque_against(1.0));
    assert!(whole < thread, "the collar takes more: {whole} {thread}");
    assert!(known.sought.iter().zip(&known.given).all(|(real, ideal)| *real > 2.0 * ideal));
}

#[test]
fn flimsy_is_sideways() {
    let known = known(Lesson::Sideways);
    let weight = known.reports[0].mechanism().load.weight;
    for (across, down) in known.sought.iter().zip(&known.given) {
        assert!(across / 50.0 > 2.0 * down / weight, "{across} m for 50 N, {down} m for {weight} N");
    }
}

#[test]
fn play_adds_up_and_most_where_the_arms_lie_flat() {
    let known = known(Lesson::Play);
    let last = known.sought.len() - 1;
    assert!(known.sought.iter().zip(&known.given).all(|(deck, hole)| *deck > 10.0 * hole));
    assert!(known.sought[0] > 2.0 * known.sought[last]);
    let mut halved = known.reports[0].design.clone();
    let steps =
        |length: risewright::quantity::Length| risewright::quantity::Length::from_steps(length.steps() / 2);
    halved.running.clearance = steps(halved.running.clearance);
    halved.running.axle_clearance = steps(halved.running.axle_clearance);
    let halved = analyse(&halved).expect("stands").at(known.heights[0]).deflection.drop.lash;
    assert!(halved < 0.8 * known.sought[0], "half the clearances: {halved} of {}", known.sought[0]);
}

/// Moments about the deck's pivots: the wheels bear the load times its place over theirs, and the deck in the same way; what rides on
/// the axle itself rests on the arms.
#[test]
fn at_full_height_the_wheels_carry_more_than_the_load() {
    let known = known(Lesson::Overhang);
    let report = &known.reports[0];
    let mechanism = report.mechanism();
    let (low, high) = (report.at(report.lowest()), report.at(report.highest()));
    assert!(
        low.state.rest.top_wheel < mechanism.load.weight && high.state.rest.top_wheel > mechanism.load.weight
    );
    assert!(!low.state.uplift.top_pivot && high.state.uplift.top_pivot);
    for station in [low, high] {
        let axle = station.pose.top_axle.x - station.pose.top.origin.x;
        let moment =
            mechanism.load.weight * mechanism.load.xw + GRAVITY * mechanism.top_mass * mechanism.top_cg_x;
        let wheels = moment / axle;
        let own = station.state.rest.top_wheel;
        assert!((own / wheels - 1.0).abs() < 1e-9, "{own} {wheels}");
    }
}

#[test]
fn small_errors_of_holes_tilt_the_deck_and_most_at_the_top() {
    let known = known(Lesson::Drilling);
    assert!(known.sought.windows(2).all(|pair| pair[1] > pair[0]));
    assert!(known.sought.iter().zip(&known.given).all(|(tilt, hole)| *tilt > 4.0 * hole));
}

#[test]
fn the_bar_that_sets_the_sag_does_not_stop_the_sway() {
    let known = known(Lesson::Cures);
    let sag = |table: usize| known.reports[table].at(known.heights[0]).sag().total();
    assert!(sag(0) < 0.9 * sag(1), "a stouter bar: {} of {}", sag(0), sag(1));
    assert!((sag(2) / sag(1) - 1.0).abs() < 0.02, "straps do nothing for the sag");
    for (after, before) in known.sought.iter().zip(&known.given) {
        assert!((after / before - 1.0).abs() < 0.02, "{after} {before}");
    }
    let high = known.heights[known.heights.len() - 1];
    let give = |table: usize| known.sways[table].give(Case::Middle, high).expect("computed");
    assert!(give(2) < 0.7 * give(1), "straps: {} of {}", give(2), give(1));
}

#[test]
fn the_tall_load_leans_over_first_and_at_the_bottom() {
    let known = known(Lesson::Tall);
    assert!(known.sought.iter().zip(&known.given).all(|(tall, flat)| *tall < 0.75 * flat));
    assert!(known.sought.windows(2).all(|pair| pair[0] < pair[1]));
    let roll: Vec<f64> = known.sways[0].middle.iter().map(|stiffness| stiffness.roll).collect();
    assert!(roll[0] < roll[roll.len() - 1], "it rolls most easily at the bottom: {roll:?}");
}

/// The three beats: nothing of the truth before the guess is made, then only where the deck has been.
#[test]
fn the_truth_is_shown_where_the_deck_has_been() {
    let report = Rc::new(analyse(&risewright::design::paper_lift()).expect("stands"));
    let reader = Reader { system: System::Metric, address: String::new(), date: String::new() };
    for lesson in Lesson::ALL {
        let view = View::Lesson(lesson);
        assert_eq!(View::of(lesson.word()), Some(view));
        let mut page = page(view, &report).expect("a page");
        let room = Room::new(860, 460, Layout::Wide, System::Metric);
        assert!(page.live(&room, 0.5, 0.0).is_none());
        while page.advance() {}
        page.answer("g3", "0.25", &reader);
        let guess = page.live(&room, 0.0, 0.0).expect("a picture");
        assert!(!guess.moving.contains("c-raise"), "{}", lesson.word());
        let sketch = guess.sketch.expect("something to sketch on");
        assert_eq!(sketch.ys.len(), 9);
        assert!(sketch.left < sketch.right && sketch.ys.windows(2).all(|pair| pair[0] > pair[1]));
        page.answer("beat", "see", &reader);
        let length = |picture: &risewright::pages::Live| {
            let curve = picture.moving.split("class=\"c-raise\"").nth(1).unwrap_or("");
            curve.split('/').next().unwrap_or("").matches('L').count()
        };
        let [low, high] = guess.lift;
        page.live(&room, low, 0.0);
        let half = page.live(&room, 0.5 * (low + high), 0.0).expect("a picture");
        let back = page.live(&room, low, 0.0).expect("a picture");
        assert_eq!(length(&half), length(&back), "what was seen stays seen");
        let whole = page.live(&room, high, 0.0).expect("a picture");
        assert!(length(&half) > 10 && length(&whole) > length(&half) + 10, "{}", lesson.word());
        assert!(half.sketch.is_none());
        for (beat, system) in [("see", System::Inch), ("why", System::Metric), ("why", System::Inch)] {
            page.answer("beat", beat, &reader);
            let html = page.document(&Reader { system, ..reader.clone() }).html();
            assert!(!html.contains("NaN") && !html.contains("inf ") && html.contains("worksheet"), "{html}");
        }
    }
}

/// The line that stands there before is nobody's guess: nothing is judged by it. What was guessed is held against the truth, but only when the
/// reader has looked.
#[test]
fn only_a_guess_is_judged_and_only_at_the_end() {
    let report = Rc::new(analyse(&risewright::design::paper_lift()).expect("stands"));
    let reader = Reader { system: System::Metric, address: String::new(), date: String::new() };
    for lesson in Lesson::ALL {
        let mut page = page(View::Lesson(lesson), &report).expect("a page");
        while page.advance() {}
        let mut told = |key: &str, text: &str| {
            page.answer(key, text, &reader);
            page.document(&reader).html()
        };
        let judged = |html: &str| html.contains("close: ") || html.contains("are close");
        for beat in ["see", "why"] {
            let html = told("beat", beat);
            assert!(html.contains("You made no guess") && !judged(&html), "{} {beat}", lesson.word());
        }
        told("beat", "guess");
        told("g4", "0.3");
        let see = told("beat", "see");
        assert!(!judged(&see) && !see.contains("your guess</th>"), "{}", lesson.word());
        let why = told("beat", "why");
        assert!(judged(&why) && why.contains("your guess</th>"), "{}", lesson.word());
        assert!(!why.contains("You made no guess"), "{}", lesson.word());
    }
}
