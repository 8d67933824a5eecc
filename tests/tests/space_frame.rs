//! The table in space against an outside frame library, an independent solver, the planar solver, and the laws of
//! elastic frames.
//!
//! Beams, portals and columns by themselves are held to textbook formulas inside `frame3`, where they can be reached.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod tables;

use glam::{DVec2, DVec3};
use proptest::prelude::*;
use risewright::mechanics::frame3::{DeckLoad, Displacement, Frame3, Line, Part, Shape, Stiffness3};
use risewright::mechanics::mechanism::{Attachment, DriveKind};
use risewright::mechanics::space::{Brace, Diagonal, Space};
use risewright::mechanics::{ArmId, Detail, Mechanism, Pose, Solver};
use serde_json::{Value, json};
use tables::{Table, config, merge, tables};

const FRAMES: &str = include_str!("../reference/space/frames.json");
const VARIANTS: &str = include_str!("../reference/space/variants.json");
const CASES: [&str; 4] = [
    include_str!("../reference/cases/03_n2_base_paper_lift.json"),
    include_str!("../reference/cases/22_n1_boards_and_diagonal.json"),
    include_str!("../reference/cases/23_demo_paper_lift.json"),
    include_str!("../reference/cases/24_demo_potting_bench.json"),
];

/// Drives the space frame is made for.
const AXLES: &[&str] = &["base_carriage", "top_carriage"];

/// A table at one height, in space.
struct Standing {
    mechanism: Mechanism,
    pose: Pose,
    frame: Frame3,
    stiffness: Stiffness3,
}

impl Standing {
    fn new(mechanism: Mechanism, pose: Pose) -> Self {
        let frame = Frame3::new(&mechanism, &pose).unwrap();
        let stiffness = frame.answers();
        Self { mechanism, pose, frame, stiffness }
    }

    fn at(input: &Value, height: &Value) -> Self {
        let mechanism: Mechanism = serde_json::from_value(input.clone()).unwrap();
        let pose = Solver::new(&mechanism).unwrap().pose_at_height(height.as_f64().unwrap()).unwrap();
        Self::new(mechanism, pose)
    }

    fn of(table: &Table) -> Self {
        Self::new(table.mechanism.clone(), table.pose())
    }

    fn space(&self) -> &Space {
        self.mechanism.model3d.as_ref().unwrap()
    }

    /// The deck's corner from its reference point on the side of `sign`.
    fn corner(&self, sign: f64) -> DVec3 {
        self.pose.top.global(DVec2::new(self.space().corner_dx, 0.0)).extend(sign * self.space().corner_z)
    }

    /// Drop of the other corner under one newton on one.
    fn other_corner(&self) -> f64 {
        let load = DeckLoad::force_at(self.corner(1.0), DVec3::NEG_Y);
        -self.frame.shape(&load).deck.at(self.corner(-1.0)).y
    }

    /// An answer by its key in the reference files.
    fn answer(&self, key: &str) -> Option<f64> {
        let stiffness = &self.stiffness;
        match key {
            "k_sway" => Some(stiffness.sway),
            "k_twist" => Some(stiffness.twist),
            "k_roll" => Some(stiffness.roll),
            "k_push" => Some(stiffness.push),
            "k_vert" => Some(stiffness.vertical),
            "corner_flex" => Some(stiffness.corner_flex),
            "other_corner_flex" => Some(self.other_corner()),
            "roll_by_sway" => Some(self.frame.shape(&DeckLoad::force(DVec3::Z)).deck.turn.x),
            "base_wheel_by_sway" => Some(self.frame.wheel_loads(0.0)[0]),
            "lambda_cr" => stiffness.lambda,
            "k_sway_pdelta" => stiffness.sway_pdelta,
            "k_twist_pdelta" => stiffness.twist_pdelta,
            _ => panic!("no such answer: {key}"),
        }
    }

    /// Fails where an answer is off by more than its tolerance, as a share of the wanted value or of `least`.
    fn hold(&self, name: &Value, expected: &Value, tolerance: impl Fn(&str) -> f64) {
        let critical = expected["lambda_cr"].as_f64().unwrap();
        for (key, want) in expected.as_object().unwrap() {
            // Of the reference solver's own matrix, or left out there as rounding.
            if matches!(key.as_str(), "cond" | "sway_yaw_coupling" | "sway_roll_coupling") {
                continue;
            }
            let have = self.answer(key);
            if key.ends_with("pdelta") && critical < 2.0 {
                // Meaningless near the critical load, and beyond it none.
                assert!(critical > 1.0 || have.is_none(), "{name}: {key} beyond the critical load");
                continue;
            }
            let (have, want) = (have.unwrap(), want.as_f64().unwrap());
            // A corner that hardly moves at all is as exact as the loaded one.
            let scale = if key == "other_corner_flex" { self.stiffness.corner_flex } else { want.abs() };
            let error = (have - want).abs() / scale;
            assert!(error <= tolerance(key), "{name}: {key} is {have} instead of {want}, off by {error:.1e}");
        }
    }
}

#[test]
fn frames_agree_with_an_outside_library() {
    let file = parse(FRAMES);
    let frames = file["frames"].as_array().unwrap();
    assert!(frames.len() >= 15, "the number of frames may rise, never fall");
    for frame in frames {
        let standing = Standing::at(&frame["input"], &frame["height"]);
        let second_order = |key: &str| key.starts_with("lambda") || key.ends_with("pdelta");
        standing.hold(&frame["name"], &frame["expected"], |key| if second_order(key) { 5e-3 } else { 1e-3 });
    }
}

#[test]
fn frames_agree_with_an_independent_solver() {
    for case in CASES.map(parse) {
        let heights = case["input"]["heights"].as_array().unwrap();
        let rows = case["expected"].as_array().unwrap();
        assert!(heights.len() == rows.len() && heights.len() >= 5);
        for (height, row) in heights.iter().zip(rows) {
            Standing::at(&case["input"], height).hold(height, &row["m3d"], |_| 1e-4);
        }
    }
}

/// The three numbers of a cell such as `1.43/0.56/0.45`, each with half a unit of its last printed digit.
fn cell(text: &Value) -> Vec<(f64, f64)> {
    let numbers = text.as_str().unwrap().split('/');
    numbers
        .map(|number| {
            let decimals = number.split_once('.').map_or(0, |(_, digits)| digits.len());
            (number.parse().unwrap(), 0.5 * 0.1_f64.powi(i32::try_from(decimals).unwrap()))
        })
        .collect()
}

#[test]
fn what_changes_what_agrees_with_an_independent_solver() {
    let file = parse(VARIANTS);
    let heights = file["heights"].as_array().unwrap();
    let variants = file["variants"].as_array().unwrap();
    assert!(variants.len() >= 16);
    let mut ratios: Vec<Vec<(f64, f64)>> = vec![Vec::new(); heights.len()];
    for variant in variants {
        let mut input = file["base"].clone();
        merge(&mut input, variant["change"].clone());
        for (place, height) in heights.iter().enumerate() {
            let standing = Standing::at(&input, height);
            let columns = [
                ("sway", standing.stiffness.sway / 1e3),
                ("twist", standing.stiffness.twist / 1e3),
                ("vertical", standing.stiffness.vertical / 1e3),
                ("corner", standing.stiffness.corner_flex * 100.0 * 1e3),
            ];
            for (column, have) in columns {
                let (want, half_unit) = cell(&variant[column])[place];
                let off = (have - want).abs();
                let name = &variant["name"];
                assert!(
                    off <= half_unit + 0.005 * want,
                    "{name} at {height}: {column} {have} instead of {want}"
                );
            }
            ratios[place].push((standing.stiffness.lambda.unwrap(), cell(&variant["lambda"])[place].0));
        }
    }
    // The printed critical loads come from other geometric matrices: they rank the variants.
    for at_height in ratios {
        for (have, want) in &at_height {
            for (other, wanted_other) in &at_height {
                assert!(
                    *wanted_other < 1.25 * want || other > have,
                    "{have} {want} against {other} {wanted_other}"
                );
            }
        }
    }
}

fn parse(text: &str) -> Value {
    serde_json::from_str(text).unwrap()
}

fn board(arm: ArmId, f: f64, k_conn: Option<f64>) -> Brace {
    Brace { arm, f, h_along: 0.07, h_perp: 0.018, e: 9e9, g: 6e8, k_conn }
}

/// Everything of the frame that the plane does not have, for `n` stages.
fn depth(n: usize) -> impl Strategy<Value = Value> {
    let sizes = (0.3..0.7, 0.02..0.06, 0.008..0.02, 0.015..0.05, -0.05..0.08);
    let springs = (1e6..2e7, 1e6..2e7, 50.0..4000.0, prop_oneof![Just(0.0), 1.0..100.0], 1e6..1e7);
    let guides = prop_oneof![Just(0.0), 1e5..2e6];
    let deck = (0.1..0.5, -0.3..0.5, 0.1..0.4, 0.0..0.4);
    let arm = (0..2usize, 1..=n).prop_map(|(side, stage)| format!("{}{stage}", ["A", "B"][side]));
    let boards = proptest::collection::vec(
        (arm.clone(), 0.05..0.95, prop_oneof![Just(None), (100.0..5000.0).prop_map(Some)]),
        0..5,
    );
    let diagonals = proptest::collection::vec((arm, 0.0..0.4, 0.6..1.0, 1e5..6e6), 0..3);
    (sizes, springs, guides, deck, boards, diagonals).prop_map(
        |(
            (b, offset, d_pin, d_axle, outside),
            (slip, axial, rock, rz, wheel),
            guide,
            (ref_x, corner_dx, corner_z, h_cg),
            boards,
            diagonals,
        )| {
            let boards: Vec<Value> = boards
                .into_iter()
                .map(|(arm, f, k)| {
                    json!({"arm": arm, "f": f, "h_along": 0.07, "h_perp": 0.018, "E": 9e9, "G": 6e8, "k_conn": k})
                })
                .collect();
            let diagonals: Vec<Value> = diagonals
                .into_iter()
                .map(|(arm, f1, f2, ea)| json!({"arm": arm, "f1": f1, "f2": f2, "EA": ea}))
                .collect();
            json!({
                "b": b, "arm_offset": offset, "d_pin": d_pin, "d_axle": d_axle, "wheel_z": 0.5 * b + outside,
                "ref_x": ref_x, "corner_dx": corner_dx, "corner_z": corner_z, "h_cg": h_cg,
                "joint": {"slip": slip, "axial": axial, "rock": rock, "rz": rz},
                "k_wheel": wheel, "k_lateral_base": guide, "k_lateral_top": 0.5 * guide,
                "braces": boards, "diagonals": diagonals, "pdelta_W": 500.0,
            })
        },
    )
}

/// Random tables with a frame in space.
fn frames() -> impl Strategy<Value = Table> {
    tables(AXLES, false)
        .prop_flat_map(|table| {
            let n = table.mechanism.n;
            (Just(table), depth(n))
        })
        .prop_map(|(table, space)| {
            table.with(|m| {
                m.sides = 2.0;
                m.model3d = serde_json::from_value(space).unwrap();
            })
        })
}

fn space_of(m: &mut Mechanism) -> &mut Space {
    m.model3d.as_mut().unwrap()
}

/// Changes of a table of which each makes some part stiffer or adds one.
fn stiffer(n: usize, change: usize, m: &mut Mechanism) {
    let (arm, other) = (ArmId::a(1 + change % n), ArmId::b(1 + change % n));
    let scale = |value: &mut f64| *value *= 1.7;
    match change % 16 {
        0 => space_of(m).braces.push(board(arm, 0.3, None)),
        1 => space_of(m).braces.push(board(other, 0.7, Some(800.0))),
        2 => space_of(m).diagonals.push(Diagonal { arm, f1: 0.1, f2: 0.9, ea: 1e6 }),
        3 => scale(&mut space_of(m).joint.slip),
        4 => scale(&mut space_of(m).joint.axial),
        5 => scale(&mut space_of(m).joint.rock),
        6 => space_of(m).joint.rz += 50.0,
        7 => scale(&mut space_of(m).k_wheel),
        8 => space_of(m).k_lateral_base += 1e6,
        9 => space_of(m).k_lateral_top += 1e6,
        10 => space_of(m).k_yaw_carriage += 1e4,
        11 => scale(&mut space_of(m).d_axle),
        12 => scale(&mut space_of(m).d_pin),
        13 => m.drive.stiff.k_end = m.drive.stiff.k_end.map(|k| 2.0 * k),
        14 => m.arm.e = m.arm.e.map(|e| 1.5 * e),
        _ => scale(&mut m.arm.t),
    }
}

fn load(parts: [f64; 6]) -> DeckLoad {
    let [x, y, z, a, b, c] = parts;
    DeckLoad { force: DVec3::new(x, y, z), couple: DVec3::new(a, b, c) }
}

fn any_load() -> impl Strategy<Value = DeckLoad> {
    proptest::array::uniform6(-1.0..1.0).prop_map(load)
}

/// Work of a load on a motion of the deck.
fn work(load: &DeckLoad, motion: &Displacement) -> f64 {
    load.force.dot(motion.shift) + load.couple.dot(motion.turn)
}

fn mirrored(load: &DeckLoad) -> DeckLoad {
    let (force, couple) = (load.force, load.couple);
    DeckLoad {
        force: DVec3::new(force.x, force.y, -force.z),
        couple: DVec3::new(-couple.x, -couple.y, couple.z),
    }
}

fn line(shape: &Shape, part: Part) -> &Line {
    shape.lines.iter().find(|line| line.part == part).unwrap()
}

proptest! {
    #![proptest_config(config())]

    /// Without a third dimension the frame is the planar linkage: its drop is arms, pins, wheels and screw.
    #[test]
    fn flattened_it_is_the_planar_table(table in frames()) {
        let flat = table.with(|m| {
            let space = space_of(m);
            (space.arm_offset, space.wheel_z, space.d_axle) = (0.0, 0.5 * space.b, 0.4);
            space.joint.rz = 0.0;
            space.braces.clear();
            space.diagonals.clear();
            let (slip, wheel, ref_x) = (space.joint.slip, space.k_wheel, space.ref_x);
            let pins = &mut m.joint_k.pins;
            for k in [&mut pins.c, &mut pins.j, &mut pins.bl, &mut pins.br, &mut pins.tl, &mut pins.tr] {
                *k = Some(slip);
            }
            (m.joint_k.wheel_base, m.joint_k.wheel_top) = (Some(wheel), Some(wheel));
            (m.base, m.top) = Default::default();
            (m.load.weight, m.load.push, m.load.xw, m.load.yw) = (1.0, 0.0, ref_x, None);
        });
        let planar = flat.at_rest().deflection.unwrap().drop.total();
        let drop = Standing::of(&flat).stiffness.vertical.recip();
        prop_assert!((drop / planar - 1.0).abs() < 1e-3, "{drop} in space, {planar} in the plane");
    }

    /// What a load does to the place of another is what that does to the place of the first (Maxwell and Betti), and
    /// every load does work.
    #[test]
    fn the_deck_is_elastic(table in frames(), one in any_load(), other in any_load()) {
        let frame = Standing::of(&table).frame;
        let (by_one, by_other) = (frame.shape(&one).deck, frame.shape(&other).deck);
        let (own, others) = (work(&one, &by_one), work(&other, &by_other));
        prop_assert!(own > 0.0 && others > 0.0);
        let (there, back) = (work(&other, &by_one), work(&one, &by_other));
        prop_assert!((there - back).abs() < 1e-7 * (own * others).sqrt(), "{there} and {back}");
    }

    /// A mirrored load does the mirrored thing, to the deck and to every arm.
    #[test]
    fn left_and_right_are_alike(table in frames(), load in any_load()) {
        let standing = Standing::of(&table);
        let (shape, image) = (standing.frame.shape(&load), standing.frame.shape(&mirrored(&load)));
        let scale = shape.deck.shift.length() + shape.deck.turn.length();
        for arm in ArmId::all(table.mechanism.n) {
            let (right, left) = (line(&shape, Part::RightArm(arm)), line(&image, Part::LeftArm(arm)));
            prop_assert_eq!(right.points.len(), left.points.len());
            for ((at, motion), (other_at, other)) in right.points.iter().zip(&left.points) {
                let flip = DVec3::new(1.0, 1.0, -1.0);
                prop_assert!((*at - flip * *other_at).length() < 1e-12);
                prop_assert!((motion.shift - flip * other.shift).length() < 1e-9 * scale);
            }
        }
        let other_side = table.with(|m| space_of(m).corner_z *= -1.0);
        let (here, there) = (standing.stiffness.corner_flex, Standing::of(&other_side).stiffness.corner_flex);
        prop_assert!((here / there - 1.0).abs() < 1e-9, "{here} and {there}");
        let upright = standing.frame.shape(&DeckLoad::force(DVec3::NEG_Y)).deck;
        prop_assert!(upright.shift.z.abs() + upright.turn.x.abs() + upright.turn.y.abs() < 1e-12 * scale);
    }

    /// The drawn ends of parts that are pinned together stay together but for what their pins yield.
    #[test]
    fn the_shape_holds_together(table in frames()) {
        let standing = Standing::of(&table.with(|m| {
            let joint = &mut space_of(m).joint;
            (joint.slip, joint.axial) = (1e11, 1e11);
        }));
        let shape = standing.frame.shape(&DeckLoad::force(DVec3::Z));
        let top = ArmId::b(table.mechanism.n);
        for part in [Part::RightArm(top), Part::LeftArm(top)] {
            let (at, end) = *line(&shape, part).points.last().unwrap();
            let deck = shape.deck.at(at - shape.reference);
            prop_assert!((end.shift - deck).length() < 1e-4 * shape.deck.shift.length());
        }
        let foot = line(&shape, Part::RightArm(ArmId::a(1))).points[0].1;
        prop_assert!(foot.shift.length() < 1e-4 * shape.deck.shift.length());
    }

    /// No stiffness falls when a part is added or made stiffer (Rayleigh).
    #[test]
    fn stiffer_parts_never_make_it_softer(table in frames(), change in 0_usize..64) {
        let before = Standing::of(&table).stiffness;
        let after = Standing::of(&table.with(|m| stiffer(m.n, change, m))).stiffness;
        let pairs = [
            ("sway", before.sway, after.sway),
            ("twist", before.twist, after.twist),
            ("roll", before.roll, after.roll),
            ("push", before.push, after.push),
            ("vertical", before.vertical, after.vertical),
            ("corner", before.corner_flex.recip(), after.corner_flex.recip()),
        ];
        for (name, before, after) in pairs {
            prop_assert!(after >= before * (1.0 - 1e-6), "{name} fell from {before} to {after} by change {change}");
        }
    }

    /// The critical load is a load: half the weight, twice the ratio. It falls when the load stands higher, and the
    /// softened stiffnesses tend to the linear ones as the weight vanishes.
    #[test]
    fn the_critical_load_is_a_load(table in frames()) {
        let with = |weight: f64, height: f64| {
            Standing::of(&table.with(|m| (space_of(m).pdelta_w, space_of(m).h_cg) = (weight, height))).stiffness
        };
        let (full, half) = (with(500.0, 0.1), with(250.0, 0.1));
        let (ratio, doubled) = (full.lambda.unwrap(), half.lambda.unwrap());
        prop_assert!((doubled / ratio - 2.0).abs() < 1e-4, "{ratio} and {doubled}");
        prop_assert!(with(500.0, 0.5).lambda.unwrap() <= ratio * (1.0 + 1e-5));
        prop_assert_eq!(full.sway_pdelta.is_some(), ratio > 1.0);
        let light = with(500.0 * 1e-6 * ratio, 0.1);
        prop_assert!((light.sway_pdelta.unwrap() / light.sway - 1.0).abs() < 1e-3);
        let none = with(0.0, 0.1);
        prop_assert!(none.lambda.is_none());
        prop_assert!((none.sway_pdelta.unwrap() / none.sway - 1.0).abs() < 1e-12);
    }

    /// The push that lifts a wheel leaves that wheel nothing, and no wheel of the other axle less than nothing.
    #[test]
    fn the_lifting_push_just_lifts(table in frames(), height in 0.0..0.5) {
        let standing = Standing::of(&table);
        let rest = table.solver().state(&standing.pose, Detail::FORCES).unwrap().rest;
        let lift = standing.frame.wheel_lift(&rest, height).unwrap();
        let left_over = standing
            .frame
            .wheel_loads(height)
            .into_iter()
            .zip([rest.base_wheel, rest.top_wheel])
            .map(|(by_push, total)| 0.5 * total - lift.push * by_push.abs())
            .fold(f64::INFINITY, f64::min);
        let lifted_at_rest = rest.base_wheel.min(rest.top_wheel) <= 0.0;
        prop_assert!(left_over.abs() < 1e-9 * rest.largest() || (lifted_at_rest && lift.push <= 0.0));
    }

    /// Whatever is asked, there is an answer in numbers or a reason why there is none.
    #[test]
    fn hostile_numbers_get_an_answer_or_a_reason(table in frames(), exponents in proptest::array::uniform12(-6..19_i32)) {
        let wild = table.with(|m| {
            let power = |at: usize| 10_f64.powi(exponents[at]);
            let space = space_of(m);
            (space.joint.slip, space.joint.axial, space.joint.rock) = (power(0), power(1), power(2));
            (space.joint.rz, space.k_wheel, space.k_lateral_base) = (power(3), power(4), power(5));
            (space.k_yaw_carriage, space.pdelta_w, space.d_pin) = (power(6), power(7), power(8));
            (space.arm_offset, m.arm.e, m.arm.g) = (power(9), Some(power(10)), power(11));
        });
        let pose = table.pose();
        if let Ok(frame) = Frame3::new(&wild.mechanism, &pose) {
            let answers = frame.answers();
            let all = [answers.sway, answers.twist, answers.roll, answers.push, answers.vertical, answers.corner_flex];
            prop_assert!(all.iter().all(|value| value.is_finite() && *value > 0.0), "{answers:?}");
            prop_assert!(answers.lambda.is_none_or(|lambda| lambda.is_finite() && lambda > 0.0), "{answers:?}");
        }
    }
}

/// The words of the fault that a change of a sound table makes.
fn fault(change: impl FnOnce(&mut Mechanism)) -> String {
    let mut mechanism: Mechanism = serde_json::from_value(parse(CASES[0])["input"].clone()).unwrap();
    let pose = Solver::new(&mechanism).unwrap().pose_at_height(0.8).unwrap();
    change(&mut mechanism);
    Frame3::new(&mechanism, &pose).unwrap_err().to_string()
}

#[test]
fn what_has_no_space_frame_is_said() {
    let base = Attachment::Base { x: 0.0, y: 0.0 };
    let arm = Attachment::Arm { arm: ArmId::a(1), f: 0.5, off: 0.0 };
    let along = "drive.kind: the side-to-side figures are computed for a screw along the base or along the top frame only";
    assert_eq!(fault(|m| m.drive.kind = DriveKind::MidPivot { level: 1 }), along);
    assert_eq!(fault(|m| m.drive.kind = DriveKind::Strut { p: base, q: arm }), along);
    assert!(fault(|m| m.model3d = None).starts_with("model3d: "));
    assert!(fault(|m| m.sides = 1.0).starts_with("sides: "));
    assert!(fault(|m| m.arm.e = None).starts_with("arm.E: "));
    assert!(fault(|m| m.arm.g = 0.0).starts_with("arm.G: "));
    assert!(fault(|m| space_of(m).arm_offset = 0.3).starts_with("model3d.arm_offset: "));
    assert!(fault(|m| m.n = 3).starts_with("n: "));
    assert!(fault(|m| space_of(m).k_wheel = f64::NAN).starts_with("model3d.k_wheel: "));
    assert!(fault(|m| space_of(m).joint.slip = 1e-3).starts_with("model3d: "));
}
