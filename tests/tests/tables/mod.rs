//! Random valid tables of every kind of drive, with everything switched on.

#![allow(dead_code, reason = "no single test uses all of it")]

use proptest::prelude::*;
use proptest::test_runner::Config;
use risewright::mechanics::{Detail, Mechanism, Pose, Solver, State};
use serde_json::{Value, json};

/// A table at one angle of its arms.
#[derive(Clone, Debug)]
pub struct Table {
    pub mechanism: Mechanism,
    pub theta: f64,
}

impl Table {
    pub fn new(mechanism: Mechanism, theta: f64) -> Self {
        Self { mechanism, theta }
    }

    /// The same table, changed.
    pub fn with(&self, change: impl FnOnce(&mut Mechanism)) -> Self {
        let mut table = self.clone();
        change(&mut table.mechanism);
        table
    }

    pub fn solver(&self) -> Solver {
        Solver::new(&self.mechanism).unwrap()
    }

    pub fn pose(&self) -> Pose {
        self.solver().pose_at_angle(self.theta).unwrap()
    }

    pub fn state(&self) -> State {
        self.solver().state(&self.pose(), Detail::ALL).unwrap()
    }

    /// The state of a table that need not be able to move: a change can make one jam that was sound.
    pub fn at_rest(&self) -> State {
        self.solver().state(&self.pose(), Detail { motion: false, ..Detail::ALL }).unwrap()
    }

    /// Whether the table can be solved here with a screw that is not near a dead point.
    fn is_sound(&self) -> bool {
        let Ok(solver) = Solver::new(&self.mechanism) else { return false };
        let Ok(pose) = solver.pose_at_angle(self.theta) else { return false };
        let upright = pose.width.iter().any(|width| *width < 0.15 * self.mechanism.length);
        let flat = pose.theta.iter().any(|theta| *theta < 0.12);
        !upright && !flat && solver.state(&pose, Detail::ALL).is_ok_and(|state| state.advantage.abs() < 30.0)
    }
}

/// More designs on demand by the environment variable `PROPTEST_CASES`.
pub fn config() -> Config {
    Config { failure_persistence: None, ..Config::default() }
}

/// Puts the entries of one JSON object into another, nested ones into nested ones.
pub fn merge(into: &mut Value, from: Value) {
    match (into, from) {
        (Value::Object(into), Value::Object(from)) => {
            for (key, value) in from {
                merge(into.entry(key).or_insert(Value::Null), value);
            }
        }
        (into, from) => *into = from,
    }
}

fn attachment(n: usize) -> impl Strategy<Value = Value> {
    let on_arm = (0..2usize, 1..=n, 0.1..0.9, -0.05..0.05).prop_map(
        |(side, stage, f, off)| json!({"body": format!("{}{stage}", ["A", "B"][side]), "f": f, "off": off}),
    );
    let on_frame = (0..2usize, -0.1..1.0, -0.08..0.08)
        .prop_map(|(frame, x, y)| json!({"body": (["base", "top"][frame]), "x": x, "y": y}));
    prop_oneof![on_arm, on_frame]
}

fn stages(drive: &str) -> std::ops::RangeInclusive<usize> {
    if drive == "mid_pivot" { 2..=5 } else { 1..=5 }
}

/// A drive of one kind.
fn drive(kind: &'static str, n: usize) -> BoxedStrategy<Value> {
    match kind {
        "mid_pivot" => (1..n).prop_map(|level| json!({"kind": "mid_pivot", "level": level})).boxed(),
        "strut" => {
            (attachment(n), attachment(n)).prop_map(|(p, q)| json!({"kind": "strut", "P": p, "Q": q})).boxed()
        }
        _ => any::<bool>()
            .prop_map(move |far| {
                let (anchor, x) = if far { ("far_end", 1.6) } else { ("fixed_end", -0.05) };
                json!({"kind": kind, "anchor": anchor, "x_anchor": x})
            })
            .boxed(),
    }
}

/// Centre pins in the middle or not, wheel axles level with the pivots or not.
fn geometry(n: usize, level: bool) -> BoxedStrategy<Value> {
    let even = Just(json!({}));
    if level {
        return even.boxed();
    }
    let same = (0.485..0.515).prop_map(|c: f64| json!({"c": c}));
    let each = proptest::collection::vec(0.485..0.515, n).prop_map(|c: Vec<f64>| json!({"c": c}));
    let centre = prop_oneof![even.clone(), same, each];
    let offsets =
        prop_oneof![even, (-0.012..0.012, -0.012..0.012).prop_map(|(db, dt)| json!({"db": db, "dt": dt}))];
    (centre, offsets)
        .prop_map(|(mut centre, offsets)| {
            merge(&mut centre, offsets);
            centre
        })
        .boxed()
}

fn loads(n: usize) -> impl Strategy<Value = Value> {
    let lump = (0..2usize, 1..=n, 0.0..=1.0, 0.1..2.0).prop_map(
        |(side, stage, f, mass)| json!({"arm": format!("{}{stage}", ["A", "B"][side]), "f": f, "mass": mass}),
    );
    let lumps = proptest::collection::vec(lump, 0..4);
    let push = prop_oneof![Just(0.0), -150.0..150.0];
    let masses = (0.0..3.0, 0.0..20.0, 0.0..4.0, 0.0..4.0);
    (lumps, push, masses, 100.0..2000.0, -0.3..1.0, 0.0..0.3, 0.0..0.6).prop_map(
        |(lumps, push, (arm, top, base_axle, top_axle), weight, xw, yw, yp)| {
            json!({
                "lumps": lumps, "arm": {"mass": arm}, "top_mass": top, "top_cg_x": 0.3,
                "base_carriage_mass": base_axle, "top_carriage_mass": top_axle,
                "base_mass": 12.0, "base_cg_x": 0.3,
                "load": {"W": weight, "xw": xw, "yw": yw, "P": push, "yp": yp},
            })
        },
    )
}

fn yielding() -> impl Strategy<Value = Value> {
    let stiffness = (1e6..3e7, 1e6..3e7, 1e6..2e7, 5e5..2e6, 1e4..5e4);
    let shear = prop_oneof![Just(0.0), 1e5..1e7];
    (stiffness, shear, 0.02..0.05, 6e9..1.3e10, 1.0..3.0).prop_map(
        |((joint, axle, wheel, caster, rail), shear, thickness, e, sides)| {
            json!({
                "sides": f64::round(sides), "arm": {"w": 0.07, "t": thickness, "E": e, "G": e / 15.0},
                "joint_k": {"C": joint, "J": joint, "BL": joint, "BR": axle, "TL": joint, "TR": axle,
                            "wheel_base": wheel, "wheel_top": 0.8 * wheel},
                "base": {"casters": [-0.06, 0.8], "EI": rail, "kGA": shear, "k_caster": caster},
                "top": {"EI": 0.7 * rail, "kGA": shear},
                "drive": {"stiff": {"E": 2.05e11, "A": 1.5e-4, "k_end": wheel}},
            })
        },
    )
}

fn resistance() -> impl Strategy<Value = Value> {
    let rolling = (0.0..0.05, 0.0..0.05);
    let thread = (0.01..0.03, 0.002..0.012, 0.05..0.25);
    (0.0..0.3, 0.004..0.009, rolling, thread, 0.0..5e-4).prop_map(
        |(mu, r, (base, top), (d, lead, mu_thread), play)| {
            json!({
                "friction": {"mu_pin": mu, "r": {"default": r, "C": 1.2 * r, "D": 0.9 * r},
                             "crr_base": base, "crr_top": top},
                "screw": {"d_mean": d, "lead": lead, "mu_thread": mu_thread, "half_angle": 0.2618,
                          "mu_collar": 0.1, "d_collar": 1.5 * d, "crank_radius": 0.12},
                "clearance": {"default": play, "BR": 1.5 * play, "D": play, "rail_gap_base": 3.0 * play,
                              "rail_gap_top": 2.0 * play, "screw_backlash": play},
            })
        },
    )
}

/// Tables with drives of the kinds named; `level`: centre pins in the middle, axles level with the pivots.
pub fn tables(kinds: &'static [&'static str], level: bool) -> impl Strategy<Value = Table> {
    let kind = proptest::sample::select(kinds);
    kind.prop_flat_map(|kind| (Just(kind), stages(kind)))
        .prop_flat_map(move |(kind, n)| {
            let parts =
                (drive(kind, n), geometry(n, level), loads(n), yielding(), resistance(), 0.4..1.1, 0.25..1.2);
            parts.prop_map(move |(drive, geometry, loads, yielding, resistance, length, theta)| {
                let mut all = json!({"n": n, "L": length, "h_base": 0.14, "h_deck": 0.05, "drive": drive});
                for part in [geometry, loads, yielding, resistance] {
                    merge(&mut all, part);
                }
                Table::new(serde_json::from_value(all).unwrap(), theta)
            })
        })
        .prop_filter("beyond its reach, jammed or at a dead point", Table::is_sound)
}

/// Every kind of drive.
pub const DRIVES: &[&str] = &["base_carriage", "top_carriage", "mid_pivot", "strut"];

/// Tables of every kind.
pub fn any_table() -> impl Strategy<Value = Table> {
    tables(DRIVES, false)
}

/// Takes every mass off.
pub fn massless(m: &mut Mechanism) {
    m.arm.mass = 0.0;
    m.lumps.clear();
    (m.top_mass, m.base_mass, m.base_carriage_mass, m.top_carriage_mass) = (0.0, 0.0, 0.0, 0.0);
}

/// Whether two values agree to a share `tolerance` of `scale`.
pub fn close(have: f64, want: f64, tolerance: f64, scale: f64) -> bool {
    (have - want).abs() <= tolerance * scale.abs()
}
