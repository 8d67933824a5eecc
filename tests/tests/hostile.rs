//! Input that no table can have: every one ends in a sentence or in numbers, never in a panic or a missing number.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

#[path = "../hunt/mod.rs"]
mod hunt;
mod tables;

use hunt::answer::answer;
use hunt::model::{complete, numbers};
use proptest::prelude::*;
use risewright::mechanics::{Detail, Mechanism, Solver};
use serde_json::{Value, json};
use tables::{any_table, config};

const WHOLE: &str = include_str!("../reference/cases/21_n3_top_uneven_push.json");
const STRUT: &str = include_str!("../reference/cases/08_n1_strut_base_arm.json");

/// What may stand where a number belongs.
const STRANGE: [f64; 14] = [
    0.0,
    -0.0,
    1.0,
    -1.0,
    1e-300,
    -1e-300,
    1e-9,
    1e9,
    -1e9,
    1e16,
    1e300,
    -1e300,
    f64::MAX,
    f64::MIN_POSITIVE,
];

fn input(case: &str) -> Value {
    let case: Value = serde_json::from_str(case).unwrap();
    case["input"].clone()
}

/// Either a sentence or a complete answer.
fn ends_well(input: &Value) -> Result<(), String> {
    match answer(&input.to_string()) {
        Ok(answer) => complete(input, &answer),
        Err(sentence) if sentence.contains("NaN") || sentence.trim().is_empty() => Err(sentence),
        Err(_) => Ok(()),
    }
}

#[test]
fn one_strange_number_at_every_place() {
    let mut tried = 0;
    for case in [WHOLE, STRUT] {
        let input = input(case);
        let mut places = Vec::new();
        numbers(&input, "", &mut places);
        for place in places {
            for strange in STRANGE {
                let mut changed = input.clone();
                *changed.pointer_mut(&place).unwrap() = json!(strange);
                ends_well(&changed).unwrap_or_else(|fault| panic!("{place} = {strange}: {fault}"));
                tried += 1;
            }
        }
    }
    assert!(tried > 1500, "only {tried} tried");
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn several_strange_numbers(picks in proptest::collection::vec((any::<prop::sample::Index>(), 0..STRANGE.len()), 2..6)) {
        let mut input = input(WHOLE);
        let mut places = Vec::new();
        numbers(&input, "", &mut places);
        for (place, strange) in picks {
            *input.pointer_mut(place.get(&places[..]).as_str()).unwrap() = json!(STRANGE[strange]);
        }
        prop_assert_eq!(ends_well(&input), Ok(()));
    }

    /// Any height and any angle, from beneath the floor to the sky.
    #[test]
    fn any_height_any_angle(table in any_table(), height in -3.0..8.0, theta in -1.0..4.0) {
        let solver = table.solver();
        for pose in [solver.pose_at_height(height), solver.pose_at_angle(theta), solver.pose_at_carriage(height)] {
            let Ok(pose) = pose else { continue };
            let placed = pose.arms.iter().all(|arm| arm.origin.is_finite() && arm.along.is_finite());
            prop_assert!(placed && pose.top.origin.is_finite() && pose.deck_height.is_finite());
            if let Ok(state) = solver.state(&pose, Detail::ALL) {
                prop_assert!(state.rest.is_finite());
                let motion = state.motion.unwrap();
                prop_assert!(motion.raise.is_finite() && motion.lower.is_finite());
                let drop = state.deflection.unwrap().drop;
                prop_assert!(drop.total().is_finite() && drop.play.is_finite());
            }
        }
    }

    /// The height that a pose was asked for is the height it has.
    #[test]
    fn heights_come_back(table in any_table()) {
        let (solver, pose) = (table.solver(), table.pose());
        let again = solver.pose_at_height(pose.deck_height).unwrap();
        prop_assert!((again.deck_height - pose.deck_height).abs() < 1e-12);
        // The rising branch: the least angle with that height.
        prop_assert!(again.theta[0] <= pose.theta[0] + 1e-6);
    }
}

fn sound() -> Mechanism {
    serde_json::from_value(input(WHOLE)).unwrap()
}

#[test]
fn faults_name_the_place() {
    type Change = fn(&mut Mechanism);
    let cases: [(&str, Change); 12] = [
        ("n", |m| m.n = 0),
        ("n", |m| m.n = usize::MAX),
        ("L", |m| m.length = f64::NAN),
        ("L", |m| m.length = 0.0),
        ("c", |m| m.c = risewright::mechanics::mechanism::Centre::Each(vec![0.5])),
        ("arm.w", |m| m.arm.w = -0.06),
        ("arm.E", |m| m.arm.e = Some(f64::INFINITY)),
        ("load.W", |m| m.load.weight = f64::NAN),
        ("range", |m| (m.range.x_min, m.range.x_max) = (Some(0.4), Some(0.3))),
        ("screw", |m| m.screw.as_mut().unwrap().mu_thread = 5.0),
        ("base.casters", |m| m.base.casters = Some([0.5, 0.5])),
        ("lumps[0].arm", |m| m.lumps[0].arm.stage = 7),
    ];
    for (place, change) in cases {
        let mut mechanism = sound();
        change(&mut mechanism);
        let faults = Solver::new(&mechanism).expect_err(place);
        assert!(faults.iter().any(|fault| fault.place == place), "{place}: {faults:?}");
    }
}

#[test]
fn every_fault_is_named_at_once() {
    let mut mechanism = sound();
    (mechanism.length, mechanism.arm.t, mechanism.load.xw) = (-1.0, 0.0, f64::NAN);
    assert_eq!(Solver::new(&mechanism).unwrap_err().len(), 3);
}

#[test]
fn flat_upright_and_out_of_reach() {
    let mechanism: Mechanism = serde_json::from_value(json!({
        "n": 2, "L": 0.6, "h_base": 0.1, "h_deck": 0.05, "arm": {"w": 0.04, "t": 0.02}, "load": {"W": 500, "xw": 0.2},
        "drive": {"kind": "base_carriage", "x_anchor": -0.05},
    }))
    .unwrap();
    let solver = Solver::new(&mechanism).unwrap();
    for height in [f64::NAN, f64::INFINITY, -1.0, 0.149, 1.36, 1e300] {
        assert!(solver.pose_at_height(height).is_err(), "{height}");
    }
    for theta in [0.0, std::f64::consts::FRAC_PI_2] {
        let pose = solver.pose_at_angle(theta).unwrap();
        let fault = solver.state(&pose, Detail::FORCES).unwrap_err();
        assert!(fault.text.contains("flat or upright"), "{fault}");
    }
}

#[test]
fn dead_points_and_jams_are_said() {
    let mut input = input(STRUT);
    // A strut from the base pivot along arm A turns with it and never changes its length.
    input["drive"]["P"] = json!({"body": "base", "x": 0.0, "y": 0.0});
    input["drive"]["Q"] = json!({"body": "A1", "f": 0.6});
    let sentence = answer(&input.to_string()).unwrap_err();
    assert!(sentence.contains("dead point"), "{sentence}");

    let mut input = self::input(WHOLE);
    input["friction"] = json!({"mu_pin": 5.0, "r": {"default": 0.2}});
    let sentence = answer(&input.to_string()).unwrap_err();
    assert!(sentence.contains("jams"), "{sentence}");
}

#[test]
fn text_that_is_no_mechanism() {
    let texts = ["", "{", "[]", "null", "{}", r#"{"n": -1}"#, r#"{"n": 1e99}"#, "{\"n\": \"two\"}"];
    for text in texts {
        let sentence = answer(text).unwrap_err();
        assert!(!sentence.is_empty(), "{text}");
    }
    let mut unknown_arm = input(WHOLE);
    unknown_arm["lumps"][0]["arm"] = json!("A99");
    assert!(answer(&unknown_arm.to_string()).unwrap_err().contains("A99"));
    let mut unknown_drive = input(WHOLE);
    unknown_drive["drive"]["kind"] = json!("rope");
    assert!(answer(&unknown_drive.to_string()).unwrap_err().contains("rope"));
}
