//! Parts cut free: what acts on each is in equilibrium, what one part does to another the other does to it, and the forces are those of an
//! independent solver.
//!
//! The laws are Newton's third law and the equilibrium of a rigid body.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

mod odd;
mod tables;

use glam::DVec2;
use proptest::prelude::*;
use risewright::design::Demo;
use risewright::mechanics::statics::Forces;
use risewright::mechanics::{
    Acting, ArmId, Cause, Detail, FreeBody, Freed, JointId, Mechanism, Pose, Solver,
};
use risewright::report::{Doing, analyse};
use serde_json::Value;
use tables::{any_table, config};

/// Rounding of a well-conditioned system, as a share of the largest force or moment.
const ROUNDING: f64 = 1e-9;
/// Friction is taken in rounds until it changes less than this share of the largest force.
const SETTLED: f64 = 1e-11;
/// As close as the reference solver's own digits, as a share of the largest force.
const REFERENCE: f64 = 1e-6;

/// All parts in one state.
fn bodies(solver: &Solver, pose: &Pose, forces: &Forces) -> Vec<FreeBody> {
    Freed::all(pose.n).map(|part| solver.body(pose, forces, part).unwrap()).collect()
}

/// A length over which the largest force would make the largest moment, m.
fn reach(pose: &Pose) -> f64 {
    pose.arm_length + pose.deck_height
}

/// What is wrong with the equilibrium of a part.
fn unbalanced(body: &FreeBody, largest: f64, reach: f64, tolerance: f64) -> Option<String> {
    let (force, moment) = (body.force(), body.moment());
    let off = force.length() > tolerance * largest || moment.abs() > tolerance * largest * reach;
    off.then(|| format!("{}: {force} N, {moment} N m", body.part))
}

/// What is wrong between the parts: every force that comes from another part has its opposite there.
fn unanswered(bodies: &[FreeBody], largest: f64) -> Vec<String> {
    let mut wrong = Vec::new();
    for body in bodies {
        for one in &body.acting {
            let Some(other) = one.from.and_then(|from| bodies.iter().find(|body| body.part == from)) else {
                continue;
            };
            let same = |two: &&Acting| {
                two.cause == one.cause
                    && two.from == Some(body.part)
                    && (two.at - one.at).length() < 1e-9
                    && (two.force + one.force).length() <= ROUNDING * largest
                    && (two.couple + one.couple).abs() <= ROUNDING * largest
            };
            if other.acting.iter().filter(same).count() != 1 {
                wrong.push(format!("{}: {:?} is not answered by {}", body.part, one.cause, other.part));
            }
        }
    }
    wrong
}

/// What the screw does to all parts together: no force and no moment.
fn of_the_screw(bodies: &[FreeBody]) -> (DVec2, f64) {
    bodies
        .iter()
        .flat_map(|body| &body.acting)
        .filter(|one| matches!(one.cause, Cause::Screw | Cause::ScrewRubbing))
        .fold((DVec2::ZERO, 0.0), |(force, moment), one| {
            (force + one.force, moment + one.moment(DVec2::ZERO))
        })
}

/// Complaints about all parts in one state.
fn judge(solver: &Solver, pose: &Pose, forces: &Forces, tolerance: f64) -> Vec<String> {
    let bodies = bodies(solver, pose, forces);
    let largest = bodies.iter().map(FreeBody::largest).fold(1.0, f64::max);
    let has_casters = solver.mechanism().base.casters.is_some();
    let mut wrong: Vec<String> = bodies
        .iter()
        .filter(|body| has_casters || body.part != Freed::Base)
        .filter_map(|body| unbalanced(body, largest, reach(pose), tolerance))
        .collect();
    wrong.extend(unanswered(&bodies, largest));
    let (force, moment) = of_the_screw(&bodies);
    if force.length() > tolerance * largest || moment.abs() > tolerance * largest * reach(pose) {
        wrong.push(format!("the screw: {force} N, {moment} N m"));
    }
    wrong
}

#[test]
fn every_part_of_every_design_is_in_equilibrium() {
    let designs = odd::designs()
        .into_iter()
        .chain(Demo::ALL.into_iter().map(|demo| (format!("{demo:?}"), demo.design())));
    let mut wrong = Vec::new();
    let mut seen = 0;
    for (name, design) in designs {
        let report = analyse(&design).unwrap();
        for part in [0.0, 0.03, 0.25, 0.6, 1.0] {
            let station = report.at(report.lowest() + part * (report.highest() - report.lowest()));
            for doing in Doing::ALL {
                let bodies: Vec<FreeBody> = Freed::all(station.pose.n)
                    .map(|part| report.body(&station, doing, part).unwrap())
                    .collect();
                let largest = bodies.iter().map(FreeBody::largest).fold(1.0, f64::max);
                seen += bodies.len();
                wrong.extend(
                    bodies
                        .iter()
                        .filter_map(|body| unbalanced(body, largest, reach(&station.pose), ROUNDING))
                        .chain(unanswered(&bodies, largest))
                        .map(|line| format!("{name} at {}, {doing:?}: {line}", station.height)),
                );
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    // Two arms a stage, deck, two carriages and base; three states at five heights of fourteen designs.
    assert!(seen >= 14 * 5 * 3 * 6, "only {seen} parts were judged");
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn every_part_of_every_table_is_in_equilibrium(table in any_table()) {
        let (solver, pose) = (table.solver(), table.pose());
        let state = solver.state(&pose, Detail { motion: true, ..Detail::FORCES }).unwrap();
        let motion = state.motion.unwrap();
        for (forces, tolerance) in
            [(&state.rest, ROUNDING), (&motion.raise, ROUNDING + SETTLED), (&motion.lower, ROUNDING + SETTLED)]
        {
            let wrong = judge(&solver, &pose, forces, tolerance);
            prop_assert!(wrong.is_empty(), "{wrong:#?}");
        }
    }
}

/// The forces on an arm by hand: tension of the screw, weight and supports of a single stage with massless arms. Taking moments about the
/// fixed pivots, the wheels carry W x / w and the pivots the rest; cut at the centre pin, the base carries H = W / tan(theta) sideways for a
/// table of n = 1 (statics of a frame of two crossing bars).
#[test]
fn an_arm_agrees_with_the_closed_form() {
    let case = case("01_n1_base_ideal");
    let mechanism: Mechanism = serde_json::from_value(case["input"].clone()).unwrap();
    let solver = Solver::new(&mechanism).unwrap();
    for theta in [0.2_f64, 0.6, 1.1] {
        let pose = solver.pose_at_angle(theta).unwrap();
        let state = solver.state(&pose, Detail::FORCES).unwrap();
        let arm = solver.body(&pose, &state.rest, Freed::Arm(ArmId::a(1))).unwrap();
        let (weight, width) = (mechanism.load.weight, mechanism.length * theta.cos());
        let on_wheels = weight * mechanism.load.xw / width;
        let sideways = weight / theta.tan();
        let force = |joint| {
            arm.acting.iter().find(|one| one.cause == Cause::Joint(joint)).map(|one| one.force).unwrap()
        };
        let close = |have: DVec2, want: DVec2| {
            assert!((have - want).length() < 1e-9 * sideways.max(weight), "{have} for {want} at {theta}");
        };
        close(force(JointId::Bl), DVec2::new(sideways, weight - on_wheels));
        close(force(JointId::Tr), DVec2::new(0.0, -on_wheels));
        close(force(JointId::C(1)), DVec2::new(-sideways, 2.0 * on_wheels - weight));
    }
}

fn case(name: &str) -> Value {
    let path = format!("{}/reference/cases/{name}.json", env!("CARGO_MANIFEST_DIR"));
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

/// Source of every expected figure: independent reference solver, unpublished (tests/reference/cases).
#[test]
fn forces_on_parts_agree_with_an_independent_solver() {
    let names = [
        "03_n2_base_paper_lift",
        "05_n2_mid_pivot",
        "08_n1_strut_base_arm",
        "11_n1_left_overhang_uplift",
        "21_n3_top_uneven_push",
        "23_demo_paper_lift",
        "24_demo_potting_bench",
    ];
    let mut held = 0;
    for name in names {
        let case = case(name);
        let mechanism: Mechanism = serde_json::from_value(case["input"].clone()).unwrap();
        let solver = Solver::new(&mechanism).unwrap();
        for row in case["expected"].as_array().unwrap() {
            let pose = solver.pose_at_height(row["deck_height"].as_f64().unwrap()).unwrap();
            let forces = solver.state(&pose, Detail::FORCES).unwrap().rest;
            let bodies = bodies(&solver, &pose, &forces);
            let largest = forces.largest();
            let number = |value: &Value| value.as_f64().unwrap();
            for body in &bodies {
                for one in &body.acting {
                    let want = match one.cause {
                        Cause::Joint(joint) => {
                            let force = &row["joints"][joint.to_string()];
                            let on_second = DVec2::new(number(&force[0]), number(&force[1]));
                            // The reference tells the force on the second of the two bodies; an axle is one of its own.
                            let second = match (joint, body.part) {
                                (JointId::Br, Freed::BaseCarriage) => false,
                                (JointId::Tr, Freed::DeckCarriage) => true,
                                (_, Freed::Arm(arm)) => {
                                    joint.bodies(pose.n)[1] == risewright::mechanics::Body::Arm(arm)
                                }
                                (_, part) => part == Freed::Deck,
                            };
                            if second { on_second } else { -on_second }
                        }
                        Cause::Wheels(JointId::Br) => {
                            let up = DVec2::new(0.0, number(&row["NB"]));
                            if body.part == Freed::Base { -up } else { up }
                        }
                        Cause::Caster(0) => DVec2::new(0.0, number(&row["caster_left"])),
                        Cause::Caster(1) => DVec2::new(0.0, number(&row["caster_right"])),
                        _ => continue,
                    };
                    held += 1;
                    let off = (one.force - want).length();
                    assert!(
                        off <= REFERENCE * largest,
                        "{name}: {:?} on {}: {} for {want}",
                        one.cause,
                        body.part,
                        one.force
                    );
                }
            }
        }
    }
    assert!(held > 500, "only {held} forces were compared");
}

#[test]
fn a_part_is_found_by_its_word() {
    for n in [1, 3, 8] {
        let all: Vec<Freed> = Freed::all(n).collect();
        assert_eq!(all.len(), 2 * n + 4);
        for part in all {
            assert_eq!(Freed::of(&part.to_string(), n), Some(part));
        }
        assert_eq!(Freed::of(&format!("A{}", n + 1), n), None);
        assert_eq!(Freed::of("", n), None);
    }
}
