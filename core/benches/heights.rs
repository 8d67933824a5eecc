//! How long one height and an analysis of 200 heights take, with all planar results: forces, friction both ways,
//! torques, section forces, deflection, play and the bent shape. Beside it what the linear algebra alone would take
//! with a dense LU for every right-hand side.

#![allow(clippy::unwrap_used, reason = "a benchmark may stop where its own mechanism is at fault")]
#![allow(clippy::disallowed_types, reason = "a benchmark reads the clock")]
#![allow(dead_code, reason = "dense.rs also serves the checks of equilibrium, which need more of it")]

mod dense;

use nalgebra::DVector;
use risewright::mechanics::{Detail, Mechanism, Pose, Solver};
use std::hint::black_box;
use std::time::Instant;

const HEIGHTS: usize = 200;
const SECONDS: f64 = 0.3;

fn mechanism(n: usize) -> Mechanism {
    serde_json::from_value(serde_json::json!({
        "n": n, "L": 0.6, "h_base": 0.13, "h_deck": 0.05,
        "arm": {"w": 0.065, "t": 0.018, "E": 1e10, "G": 6.5e8, "mass": 0.5, "end_margin": 0.03},
        "lumps": [{"arm": "B1", "f": 0.25, "mass": 0.4}],
        "top_mass": 9.0, "top_cg_x": 0.3, "base_carriage_mass": 1.2, "base_mass": 14.0, "base_cg_x": 0.3,
        "load": {"W": 850.0, "xw": 0.28},
        "drive": {"kind": "base_carriage", "anchor": "far_end", "x_anchor": 0.72,
                  "stiff": {"E": 2.05e11, "A": 1.1e-4, "k_end": 2.5e7}},
        "friction": {"mu_pin": 0.2, "r": {"default": 0.006}, "crr_base": 0.02, "crr_top": 0.02},
        "screw": {"d_mean": 0.0145, "lead": 0.003, "mu_thread": 0.15, "half_angle": 0.2618,
                  "mu_collar": 0.12, "d_collar": 0.024, "crank_radius": 0.11},
        "joint_k": {"C": 7e6, "J": 7e6, "BL": 7e6, "BR": 7e6, "TL": 7e6, "TR": 7e6,
                    "wheel_base": 4e6, "wheel_top": 4e6},
        "base": {"casters": [-0.03, 0.68], "EI": 2.5e4, "k_caster": 1.5e6}, "top": {"EI": 1.6e4},
        "range": {"x_max": 0.57, "x_min": 0.25, "gap": 0.003},
        "clearance": {"default": 3e-4, "rail_gap_base": 1e-3, "rail_gap_top": 1e-3},
    }))
    .unwrap()
}

fn poses(solver: &Solver) -> Vec<Pose> {
    let limits = solver.limits();
    let (low, high) = (limits.height_low.unwrap(), limits.height_high.unwrap());
    let at = |step: usize| low + (high - low) * (step as f64 + 0.5) / HEIGHTS as f64;
    (0..HEIGHTS).map(|step| solver.pose_at_height(at(step)).unwrap()).collect()
}

/// Seconds one run of `job` takes, the best of many.
fn time(mut job: impl FnMut()) -> f64 {
    let begin = Instant::now();
    let mut best = f64::INFINITY;
    while begin.elapsed().as_secs_f64() < SECONDS {
        let start = Instant::now();
        job();
        best = best.min(start.elapsed().as_secs_f64());
    }
    best
}

fn main() {
    println!(
        " n  forces only  all planar  200 heights | right-hand sides  dense LU each   against all planar"
    );
    println!("         us/height   us/height           ms |        a height      us/height");
    for n in 1..=8 {
        let solver = Solver::new(&mechanism(n)).unwrap();
        let poses = poses(&solver);
        let analyse = |detail: Detail| {
            for pose in &poses {
                let pose = solver.pose_at_height(black_box(pose.deck_height)).unwrap();
                black_box(solver.state(&pose, detail).unwrap());
            }
        };
        let forces = time(|| analyse(Detail::FORCES));
        let all = time(|| analyse(Detail::ALL));

        // At rest, live load, three unit cases, and every round of friction.
        let sides: Vec<usize> = poses
            .iter()
            .map(|pose| {
                let motion = solver.state(pose, Detail::ALL).unwrap().motion.unwrap();
                5 + motion.raise.rubbing.rounds + motion.lower.rubbing.rounds
            })
            .collect();
        let dense = time(|| {
            for (pose, count) in poses.iter().zip(&sides) {
                let screw = *solver.equilibrium(pose).unwrap().screw();
                let side: DVector<f64> = dense::right_side(pose, &solver.loads(pose));
                let matrix = dense::matrix(pose, &screw);
                for _ in 0..*count {
                    black_box(black_box(&matrix).clone().lu().solve(&side));
                }
            }
        });
        let a_height = |seconds: f64| seconds * 1e6 / HEIGHTS as f64;
        println!(
            "{n:2}  {:11.2} {:11.2} {:12.2} | {:16.1} {:14.1} {:18.1} x",
            a_height(forces),
            a_height(all),
            all * 1e3,
            sides.iter().sum::<usize>() as f64 / HEIGHTS as f64,
            a_height(dense),
            dense / all,
        );
    }
}
