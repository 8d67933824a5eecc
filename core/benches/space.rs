//! How long the space frame takes at one height: built, factored and asked for everything linear, and with the critical
//! load as well.

#![allow(clippy::unwrap_used, reason = "a benchmark may stop where its own mechanism is at fault")]
#![allow(clippy::disallowed_types, reason = "a benchmark reads the clock")]

use risewright::mechanics::frame3::Frame3;
use risewright::mechanics::{Mechanism, Pose, Solver};
use serde_json::{Value, json};
use std::hint::black_box;
use std::time::Instant;

const ANGLES: usize = 24;
const SECONDS: f64 = 0.5;

/// A table with two boards on every arm and crossed bars on the arms A.
fn mechanism(n: usize) -> Mechanism {
    let arms = (1..=n).flat_map(|stage| [format!("A{stage}"), format!("B{stage}")]);
    let boards: Vec<Value> = arms
        .flat_map(|arm| [0.25, 0.75].map(|f| (arm.clone(), f)))
        .map(|(arm, f)| {
            json!({"arm": arm, "f": f, "h_along": 0.07, "h_perp": 0.018, "E": 9e9, "G": 6.2e8, "k_conn": 4000.0})
        })
        .collect();
    let diagonals: Vec<Value> = (1..=n)
        .map(|stage| json!({"arm": format!("A{stage}"), "f1": 0.25, "f2": 0.75, "EA": 1.2e6}))
        .collect();
    serde_json::from_value(json!({
        "n": n, "L": 0.52, "h_base": 0.16, "h_deck": 0.08,
        "arm": {"w": 0.075, "t": 0.036, "E": 9e9, "G": 6.2e8, "mass": 1.5},
        "load": {"W": 780.0, "xw": 0.17},
        "drive": {"kind": "base_carriage", "x_anchor": -0.1, "stiff": {"E": 2.05e11, "A": 1.9e-4, "k_end": 1.5e7}},
        "model3d": {
            "b": 0.44, "arm_offset": 0.04, "d_pin": 0.016, "d_axle": 0.048, "wheel_z": 0.248,
            "ref_x": 0.17, "corner_dx": 0.34, "corner_z": 0.28, "h_cg": 0.15,
            "joint": {"slip": 1.7e7, "axial": 5e6, "rock": 1800.0},
            "k_wheel": 6e6, "k_lateral_base": 5e5, "k_lateral_top": 5e5,
            "braces": boards, "diagonals": diagonals, "pdelta_W": 980.0,
        },
    }))
    .unwrap()
}

/// Milliseconds one run of `job` takes at one pose, the best of many.
fn time(poses: &[Pose], mut job: impl FnMut(&Pose)) -> f64 {
    let begin = Instant::now();
    let mut best = f64::INFINITY;
    while begin.elapsed().as_secs_f64() < SECONDS {
        let start = Instant::now();
        poses.iter().for_each(&mut job);
        best = best.min(start.elapsed().as_secs_f64());
    }
    best * 1e3 / poses.len() as f64
}

fn main() {
    println!(" n   linear, ms   with critical load, ms   (a height)");
    for n in 1..=8 {
        let mechanism = mechanism(n);
        let solver = Solver::new(&mechanism).unwrap();
        let poses: Vec<Pose> = (0..ANGLES)
            .map(|step| solver.pose_at_angle(0.25 + 0.8 * step as f64 / ANGLES as f64).unwrap())
            .collect();
        let linear = time(&poses, |pose| {
            black_box(Frame3::new(black_box(&mechanism), pose).unwrap());
        });
        let all = time(&poses, |pose| {
            black_box(Frame3::new(black_box(&mechanism), pose).unwrap().answers());
        });
        println!("{n:2} {linear:12.3} {all:24.3}");
    }
}
