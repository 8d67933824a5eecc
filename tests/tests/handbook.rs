//! Worked examples and tables of handbooks, held at the tolerance each source allows.
//!
//! Every check names its source. Where a source prints no answer the value was computed from its formula and its
//! problem's data, by hand or with an independent frame solver; it says so.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

mod tables;

use risewright::mechanics::beam::Beam;
use risewright::mechanics::mechanism::Screw;
use risewright::mechanics::section::{Diagram, ElasticLine, PointLoad, Softness, Spread};
use risewright::mechanics::{ArmId, Detail, JointId, Mechanism, Pose, Solver, State};
use serde_json::{Value, json};
use tables::{Table, close};

const SHIGLEY_8_1: &str = "Shigley's Mechanical Engineering Design, 9th ed. (2009), example 8-1, p. 419; results computed from its formulas";
const STATICS_TEXT: &str = "open statics text, section 5.6.1, problem 2; published 2840 lbf in";
const MERIAM_7_51: &str = "Meriam, Kraige, Bolton: Statics, 9th ed., problem 7/51; computed";
const SHIGLEY_8_5: &str =
    "Shigley's Mechanical Engineering Design, 9th ed. (2009), equation 8-5, p. 417; computed";
const SELF_LOCKING: &str =
    "mu >= tan(lead angle) cos(flank angle), from Shigley equation 8-6 at zero torque; computed";
const SAXENA: &str = "Saxena 2016, with the signs of virtual work; Spackman, NOSC TD 1550 (1989); computed and checked with a frame solver";
const FRAME: &str = "virtual work and an independent frame solver (PyNite), computed";
const AISC: &str = "AISC Manual, table 3-23; Shigley table A-9, case 10";
const WOOD: &str =
    "USDA Wood Handbook, equation 9-2 (GTR-190); constants from memory, checked by integration";

#[track_caller]
fn hold(source: &str, have: f64, want: f64, tolerance: f64) {
    assert!(close(have, want, tolerance, want), "have {have}, want {want}: {source}");
}

/// Example 8-1: a double square thread, 32 mm outside, pitch 4 mm, collar 40 mm, 6400 N. Mean diameter 30 mm, lead 8 mm.
fn shigley() -> Screw {
    screw(json!({"d_mean": 0.030, "lead": 0.008, "mu_thread": 0.08, "mu_collar": 0.08, "d_collar": 0.040}))
}

fn screw(value: Value) -> Screw {
    serde_json::from_value(value).unwrap()
}

/// A trapezoidal thread without collar, sizes in mm.
fn trapezoidal(d: f64, pitch: f64, lead: f64, mu: f64) -> Screw {
    let half_angle = 15.0_f64.to_radians();
    screw(
        json!({"d_mean": (d - pitch / 2.0) * 1e-3, "lead": lead * 1e-3, "mu_thread": mu, "half_angle": half_angle}),
    )
}

#[test]
fn square_thread_with_collar() {
    let screw = shigley();
    let raise = screw.torque_raising(6400.0);
    hold(SHIGLEY_8_1, raise, 26.17695, 3e-4);
    hold(SHIGLEY_8_1, screw.torque_lowering(6400.0), 9.77443, 6e-4);
    hold(SHIGLEY_8_1, screw.efficiency(6400.0, raise).unwrap(), 0.311294, 1e-3);
    // The thread alone runs down: only its collar holds it.
    let bare = Screw { mu_collar: 0.0, ..screw };
    hold(SHIGLEY_8_1, bare.torque_lowering(6400.0), -0.46557, 1e-4);
    assert!(screw.is_self_locking() && !bare.is_self_locking());
}

#[test]
fn square_thread_in_inches() {
    const LBF_IN: f64 = 4.448_221_615_260_5 * 0.0254;
    let jack = screw(json!({"d_mean": 2.0 * 0.0254, "lead": 0.5 * 0.0254, "mu_thread": 0.2}));
    hold(STATICS_TEXT, jack.torque_raising(10_000.0 * 4.448_221_615_260_5) / LBF_IN, 2840.99, 5e-4);
}

#[test]
fn a_self_locking_square_thread_wastes_half() {
    // Same text, problem 3: without collar the efficiency of a self-locking square thread stays below one half.
    for mu in [0.02, 0.1, 0.3, 0.6] {
        let d: f64 = 0.02;
        let lead = std::f64::consts::PI * d * mu * (1.0 - 1e-9);
        let screw = screw(json!({"d_mean": d, "lead": lead, "mu_thread": mu}));
        assert!(screw.is_self_locking());
        assert!(screw.efficiency(1.0, screw.torque_raising(1.0)).unwrap() < 0.5, "{STATICS_TEXT}, problem 3");
    }
}

#[test]
fn frictionless_screw() {
    let screw = screw(json!({"d_mean": 0.02, "lead": 0.060, "mu_thread": 0.0}));
    hold(MERIAM_7_51, 10.0 / screw.torque_raising(1.0), 1047.198, 1e-6);
}

#[test]
fn trapezoidal_threads() {
    for (d, wanted) in [(16.0, [1.7483519, 0.4441475, 0.3641]), (20.0, [2.0568362, 0.7527346, 0.3095])] {
        let screw = trapezoidal(d, 4.0, 4.0, 0.15);
        let raise = screw.torque_raising(1000.0);
        hold(SHIGLEY_8_5, raise, wanted[0], 1e-5);
        hold(SHIGLEY_8_5, screw.torque_lowering(1000.0), wanted[1], 1e-5);
        hold(SHIGLEY_8_5, screw.efficiency(1000.0, raise).unwrap(), wanted[2], 2e-4);
    }
}

#[test]
fn threads_lock_from_their_friction_on() {
    let threads = [(10.0, 2.0, 2.0), (16.0, 4.0, 4.0), (20.0, 4.0, 4.0), (20.0, 4.0, 8.0)];
    for ((d, pitch, lead), mu) in threads.into_iter().zip([0.06833, 0.08785, 0.06833, 0.13665]) {
        let locks = |mu: f64| trapezoidal(d, pitch, lead, mu).is_self_locking();
        assert!(locks(mu * 1.0001) && !locks(mu * 0.9999), "Tr{d}x{lead} at {mu}: {SELF_LOCKING}");
    }
}

/// A table of `n` stages with arms of one metre between their pivots, the load in the middle or at a share of the
/// width from the fixed side. An arm's weight sits at its middle, as in the sources.
struct Scissor {
    n: usize,
    degrees: f64,
    load: f64,
    share: f64,
    arm_weight: f64,
    drive: Value,
}

impl Scissor {
    fn new(n: usize, degrees: f64) -> Self {
        let drive = json!({"kind": "base_carriage", "anchor": "fixed_end", "x_anchor": -0.1});
        Self { n, degrees, load: 1000.0, share: 0.5, arm_weight: 0.0, drive }
    }

    fn solve(&self) -> (Pose, State, Solver) {
        let theta = self.degrees.to_radians();
        let lumps: Vec<Value> = ArmId::all(self.n)
            .map(|arm| json!({"arm": arm.to_string(), "f": 0.5, "mass": self.arm_weight / risewright::mechanics::GRAVITY}))
            .collect();
        let mechanism: Mechanism = serde_json::from_value(json!({
            "n": self.n, "L": 1.0, "arm": {"w": 0.05, "t": 0.02}, "lumps": lumps, "drive": self.drive,
            "load": {"W": self.load, "xw": self.share * theta.cos()},
        }))
        .unwrap();
        let table = Table::new(mechanism, theta);
        let (pose, solver) = (table.pose(), table.solver());
        let state = solver.state(&pose, Detail::ALL).unwrap();
        (pose, state, solver)
    }

    fn drive_force(&self) -> f64 {
        self.solve().1.rest.drive
    }
}

#[test]
fn screw_between_the_bottom_feet() {
    let wanted = [3732.051, 1732.051, 1000.0, 7464.102, 3464.102, 2000.0];
    let cases = [(1, 15.0), (1, 30.0), (1, 45.0), (2, 15.0), (2, 30.0), (2, 45.0)];
    for ((n, degrees), want) in cases.into_iter().zip(wanted) {
        hold(FRAME, Scissor::new(n, degrees).drive_force(), want, 2e-7);
    }
    for (n, want) in [(1, 1818.653), (2, 3810.512)] {
        hold(FRAME, Scissor { arm_weight: 50.0, ..Scissor::new(n, 30.0) }.drive_force(), want, 2e-7);
    }
    // n (W + Wa/2) / tan(theta) for any number of stages, load anywhere.
    for n in 1..=8 {
        let scissor = Scissor { arm_weight: 30.0, share: 0.3, ..Scissor::new(n, 27.0) };
        let want = n as f64 * (1000.0 + n as f64 * 30.0) / 27.0_f64.to_radians().tan();
        hold(SAXENA, scissor.drive_force(), want, 1e-9);
    }
}

#[test]
fn pins_and_moments_of_single_and_double_scissors() {
    let pin = |scissor: &Scissor, stage| scissor.solve().1.rest.joint(JointId::C(stage));
    hold(FRAME, pin(&Scissor::new(1, 30.0), 1).length(), 1732.051, 2e-7);
    hold(FRAME, pin(&Scissor::new(2, 30.0), 1).length(), 5196.152, 2e-7);
    hold(FRAME, pin(&Scissor::new(2, 30.0), 2).length(), 1732.051, 2e-7);

    let eccentric = Scissor { share: 0.2, ..Scissor::new(1, 30.0) };
    let rest = eccentric.solve().1.rest;
    hold(FRAME, rest.joint(JointId::Bl).y, 800.0, 1e-5);
    hold(FRAME, rest.base_wheel, 200.0, 1e-5);
    hold(FRAME, rest.joint(JointId::C(1)).x.abs(), 1732.051, 1e-5);
    hold(FRAME, rest.joint(JointId::C(1)).y.abs(), 600.0, 1e-5);
    hold(FRAME, rest.joint(JointId::C(1)).length(), 1833.03, 1e-5);

    let moment = |n| Scissor::new(n, 30.0).solve().1.sections.unwrap()[0].moment;
    hold(FRAME, moment(1), 216.506, 3e-6);
    hold(FRAME, moment(2), 649.519, 3e-6);
}

#[test]
fn inclined_struts() {
    // Saxena's b along the ground from the fixed foot, a along the arm from its lower end, both in arm lengths; the
    // strut ends on stage i + 1. A pull is negative.
    let strut = |degrees, n, foot: f64, arm: ArmId, f: f64| Scissor {
        drive: json!({"kind": "strut", "P": {"body": "base", "x": foot, "y": 0.0},
                      "Q": {"body": arm.to_string(), "f": f}}),
        ..Scissor::new(n, degrees)
    };
    let cases = [
        (strut(30.0, 1, 0.0, ArmId::b(1), 0.25), -2645.751),
        (strut(20.0, 1, 0.2, ArmId::b(1), 0.4), -15718.78),
        (strut(25.0, 2, 0.1, ArmId::b(1), 0.3), -8053.163),
        (strut(20.0, 1, 0.9, ArmId::a(1), 0.6), 2003.969),
        (strut(25.0, 2, 0.8, ArmId::a(2), 0.5), 1400.735),
    ];
    for (scissor, want) in cases {
        hold(SAXENA, scissor.solve().1.screw_force, want, 1e-6);
    }
}

#[test]
fn rise_of_a_turn() {
    let (_, state, _) = Scissor::new(1, 20.0).solve();
    hold("lead n / tan(theta), computed", state.advantage * 0.004, 10.98991e-3, 1e-6);
}

#[test]
fn from_load_to_crank() {
    let scissor = Scissor { arm_weight: 100.0, ..Scissor::new(1, 20.0) };
    let force = scissor.drive_force();
    let screw = trapezoidal(16.0, 4.0, 4.0, 0.15);
    hold(SAXENA, force, 3022.225, 1e-5);
    hold(SHIGLEY_8_5, screw.torque_raising(force), 5.28391, 1e-5);
    hold(SHIGLEY_8_5, screw.torque_lowering(force), 1.34231, 1e-5);
    hold(SHIGLEY_8_5, screw.torque_raising(force) / 0.150, 35.226, 1e-5);
}

/// 24 scissors, columns as in the head of the file. Its figures are rounded to hundredths.
#[test]
fn table_of_scissors() {
    let text = include_str!("../reference/scissor_cases.csv");
    let rows: Vec<Vec<f64>> = text
        .lines()
        .skip(1)
        .map(|line| line.split(',').map(|cell| cell.parse().unwrap_or(f64::NAN)).collect())
        .collect();
    assert_eq!(rows.len(), 24);
    let near =
        |have: f64, want: f64| assert!((have - want).abs() <= 0.0051, "have {have}, want {want}: {FRAME}");
    for row in rows {
        let n = if row[0] > 1.5 { 2 } else { 1 };
        let scissor = Scissor { load: row[3], share: row[4], arm_weight: row[5], ..Scissor::new(n, row[2]) };
        let (pose, state, solver) = scissor.solve();
        let rest = &state.rest;
        near(rest.drive, row[6]);
        near(rest.drive, row[7]);
        near(rest.joint(JointId::Bl).y, row[9]);
        near(rest.base_wheel, row[10]);
        near(rest.joint(JointId::C(1)).x.abs(), row[11]);
        near(rest.joint(JointId::C(1)).y.abs(), row[12]);
        near(rest.joint(JointId::C(1)).length(), row[13]);
        if n == 2 {
            near(rest.joint(JointId::C(2)).length(), row[14]);
            near(rest.joint(JointId::Jl(1)).length(), row[15]);
            near(rest.joint(JointId::Jr(1)).length(), row[16]);
        }
        let middle = solver.diagrams(&pose, rest).unwrap().iter().fold(0.0, |most: f64, arm| {
            let [before, behind] = arm.around(0.5).unwrap();
            most.max(before.m.abs()).max(behind.m.abs())
        });
        near(middle, row[17]);
    }
}

/// A bar 18 x 70 mm, E = 11000 MPa, G = 690 MPa, as the rows of beam_cases.csv were computed; N and m.
fn rail(left: f64, right: f64) -> Beam {
    let (b, h, e, g) = (0.018, 0.070, 11e9, 690e6);
    let softness =
        Softness { axial: 0.0, bending: 12.0 / (e * b * h * h * h), shear: 1.0 / (5.0 / 6.0 * g * b * h) };
    Beam { supports: [left, right], softness }
}

fn down(s: f64, force: f64) -> PointLoad {
    PointLoad { s, across: -force, ..PointLoad::default() }
}

fn sag(beam: Beam, loads: &[PointLoad], at: f64) -> f64 {
    -beam.line(loads).at(at).across
}

/// The deflection in mm without and with shear, and the largest moment in N mm.
fn beam_row(name: &str) -> [f64; 3] {
    let line = include_str!("../reference/beam_cases.csv").lines().find(|line| line.contains(name)).unwrap();
    let cells: Vec<f64> = line.rsplit(',').map(|cell| cell.parse().unwrap_or(f64::NAN)).collect();
    [cells[4], cells[2], cells[1]]
}

#[test]
fn deck_rails_as_beams() {
    let beam = rail(0.0, 0.6);
    let cases: [(&str, Vec<PointLoad>, f64); 4] = [
        ("SS centre P", vec![down(0.3, 400.0)], 0.3),
        ("SS two P at a=150", vec![down(0.15, 400.0), down(0.45, 400.0)], 0.3),
        ("SS P at a=200", vec![down(0.2, 400.0)], 0.2),
        ("Overhang tip P, span 600", vec![down(0.75, 400.0)], 0.75),
    ];
    let rigid_in_shear = Beam { softness: Softness { shear: 0.0, ..beam.softness }, ..beam };
    for (name, loads, at) in cases {
        let [bending, total, moment] = beam_row(name);
        // The table rounds to hundredths of a micrometre.
        hold(WOOD, sag(rigid_in_shear, &loads, at) * 1e3, bending, 5e-5);
        hold(WOOD, sag(beam, &loads, at) * 1e3, total, 5e-5);
        hold(WOOD, beam.diagram(&loads).extremes().moment * 1e3, moment, 1e-6);
    }
    // Upwards between the supports by a load on the overhang, greatest at l / sqrt(3).
    let [upwards, ..] = beam_row("Overhang tip P upward");
    let at = 0.6 / 3.0_f64.sqrt();
    hold(AISC, -sag(rigid_in_shear, &[down(0.75, 400.0)], at) * 1e3, upwards, 5e-5);
}

#[test]
fn overhanging_deck_in_closed_form() {
    let (l, a, p) = (0.6, 0.15, 400.0);
    let beam = rail(0.0, l);
    let (ei, kga) = (beam.softness.bending.recip(), beam.softness.shear.recip());
    let tip = sag(beam, &[down(l + a, p)], l + a);
    hold(AISC, tip, p * a * a * (l + a) / (3.0 * ei) + p * a * (l + a) / (l * kga), 1e-9);
    // The same deck the other way round, as when the load stands left of the top pivot.
    hold(AISC, sag(rail(0.0, l), &[down(-a, p)], -a), tip, 1e-9);
    hold(
        WOOD,
        sag(beam, &[down(l / 2.0, p)], l / 2.0),
        p * l.powi(3) / (48.0 * ei) + p * l / (4.0 * kga),
        1e-9,
    );
}

/// Sag at a place of a bar under loads in order and a load spread evenly from the first to the last, N/m downwards.
fn bent(softness: Softness, loads: &[PointLoad], spread: f64) -> ElasticLine {
    ElasticLine::new(&Diagram::new(loads, Spread { along: 0.0, across: -spread }), softness)
}

fn up(s: f64, across: f64, couple: f64) -> PointLoad {
    PointLoad { s, across, couple, ..PointLoad::default() }
}

#[test]
fn spread_loads_and_bars_held_fast() {
    let softness = rail(0.0, 0.6).softness;
    let rigid_in_shear = Softness { shear: 0.0, ..softness };
    let (p, q) = (400.0, 1000.0);
    let even = [up(0.0, q * 0.3, 0.0), up(0.6, q * 0.3, 0.0)];
    let tip = [up(0.0, p, p * 0.3), up(0.3, -p, 0.0)];
    let shelf = [up(0.0, q * 0.3, q * 0.3 * 0.15), up(0.3, 0.0, 0.0)];
    let clamped = [up(0.0, p / 2.0, p * 0.6 / 8.0), up(0.3, -p, 0.0), up(0.6, p / 2.0, -p * 0.6 / 8.0)];
    let rows: [(&str, &[PointLoad], f64, f64); 4] = [
        ("SS UDL q", &even, q, 0.3),
        ("Cantilever tip P", &tip, 0.0, 0.3),
        ("Cantilever UDL", &shelf, q, 0.3),
        ("Fixed-fixed centre P", &clamped, 0.0, 0.3),
    ];
    for (name, loads, spread, at) in rows {
        let [bending, total, moment] = beam_row(name);
        let sag = |softness| {
            let line = bent(softness, loads, spread);
            let line = if name == "SS UDL q" { line.held_at(0.0, 0.6) } else { line };
            -line.at(at).across * 1e3
        };
        // The table rounds to hundredths of a micrometre.
        hold(WOOD, sag(rigid_in_shear), bending, 1e-4);
        hold(WOOD, sag(softness), total, 1e-4);
        let diagram = Diagram::new(loads, Spread { along: 0.0, across: -spread });
        hold(WOOD, diagram.extremes().moment * 1e3, moment, 1e-6);
    }
    // Held fast at both ends: the far end comes back to its place without a turn.
    let end = bent(rigid_in_shear, &clamped, 0.0).at(0.6);
    assert!(end.across.abs() < 1e-12 && end.turn.abs() < 1e-12, "{end:?}");
}

/// A short beam in which shear is worth a fifth: E 200 GPa, nu 0.3, l 1.44 m, A 31 cm2, I 2810 cm4, shear coefficient 2.42, 100 kN/m.
#[test]
fn short_beam_with_shear() {
    let source =
        "AFNOR VPCS SSLL02/89 (data read; the deflection computed from 5 p l^4 / 384 EI + k p l^2 / 8 GA)";
    let (e, l, area, inertia, p) = (2e11, 1.44, 31e-4, 2810e-8, 1e5);
    let g = e / (2.0 * 1.3);
    let softness = Softness { axial: 0.0, bending: 1.0 / (e * inertia), shear: 2.42 / (g * area) };
    let loads = [up(0.0, p * l / 2.0, 0.0), up(l, p * l / 2.0, 0.0)];
    let line = bent(softness, &loads, p).held_at(0.0, l);
    hold(source, -line.at(l / 2.0).across, 0.001_259_26, 1e-5);
}
