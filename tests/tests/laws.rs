//! What must hold for every table, tried on random ones: virtual work, equilibrium, energy, scale and symmetry.
//!
//! The laws are those of statics; where a closed form is used it stands beside the check.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

#[path = "../../core/benches/dense/mod.rs"]
mod dense;
mod tables;

use glam::DVec2;
use proptest::prelude::*;
use risewright::mechanics::mechanism::{Anchor, Centre, DriveKind};
use risewright::mechanics::{ArmId, Body, Detail, GRAVITY, JointId, Mechanism, Pose, Solver, State};
use tables::{DRIVES, Table, any_table, close, config, massless, tables};

/// Rounding of a well-conditioned system, as a share of the largest force.
const ROUNDING: f64 = 1e-9;

const AXLES: &[&str] = &["base_carriage", "top_carriage"];
const BASE: &[&str] = &["base_carriage"];

fn base_drive(m: &mut Mechanism) {
    m.drive.kind = DriveKind::BaseCarriage { anchor: Anchor::FixedEnd, x_anchor: -0.05 };
}

fn top_drive(m: &mut Mechanism) {
    m.drive.kind = DriveKind::TopCarriage { anchor: Anchor::FixedEnd, x_anchor: -0.05 };
}

fn scale_of(state: &State) -> f64 {
    state.rest.largest().max(1.0)
}

/// Potential energy of all loads, from masses and places alone, J.
fn potential(m: &Mechanism, pose: &Pose) -> f64 {
    let arm_point = |arm: ArmId, f: f64| pose.arm(arm).point(DVec2::new(f * m.length, 0.0)).y;
    let deck = |x: f64, y: f64| pose.top.point(DVec2::new(x, y));
    let arms: f64 = ArmId::all(m.n).map(|arm| m.sides * m.arm.mass * arm_point(arm, 0.5)).sum();
    let lumps: f64 = m.lumps.iter().map(|lump| lump.mass * arm_point(lump.arm, lump.f)).sum();
    let top = m.top_mass * deck(m.top_cg_x, 0.0).y + m.top_carriage_mass * pose.joint(JointId::Tr).y;
    let axle = m.base_carriage_mass * pose.joint(JointId::Br).y;
    let live = m.load.weight * deck(m.load.xw, m.load.yw.unwrap_or(m.h_deck)).y;
    GRAVITY * (arms + lumps + top + axle) + live
        - m.load.push * deck(m.load.xw, m.load.yp.unwrap_or(m.h_deck)).x
}

/// Rate of a function of the angle, by central differences of two widths.
fn rate(theta: f64, function: impl Fn(f64) -> f64) -> f64 {
    let central = |h: f64| (function(theta + h) - function(theta - h)) / (2.0 * h);
    (4.0 * central(1e-4) - central(2e-4)) / 3.0
}

fn all_stiffer(m: &mut Mechanism, factor: f64) {
    let scale = |value: &mut Option<f64>| *value = value.map(|value| value * factor);
    m.arm.g *= factor;
    scale(&mut m.arm.e);
    let pins = &mut m.joint_k.pins;
    for k in [&mut pins.c, &mut pins.j, &mut pins.bl, &mut pins.br, &mut pins.tl, &mut pins.tr] {
        scale(k);
    }
    let others = [
        &mut m.joint_k.wheel_base,
        &mut m.joint_k.wheel_top,
        &mut m.base.ei,
        &mut m.base.kga,
        &mut m.base.k_caster,
        &mut m.top.ei,
        &mut m.top.kga,
        &mut m.drive.stiff.e,
        &mut m.drive.stiff.k_end,
    ];
    others.into_iter().for_each(scale);
}

fn heavier(m: &mut Mechanism, factor: f64) {
    m.load.weight *= factor;
    m.load.push *= factor;
    m.arm.mass *= factor;
    m.top_mass *= factor;
    m.base_carriage_mass *= factor;
    m.top_carriage_mass *= factor;
    m.lumps.iter_mut().for_each(|lump| lump.mass *= factor);
}

/// A table without mass or push.
fn ideal(table: &Table) -> Table {
    table.with(|m| {
        massless(m);
        m.load.push = 0.0;
    })
}

proptest! {
    #![proptest_config(config())]

    /// A level deck that does not drift feels neither where the load stands nor a push; the pivots do.
    #[test]
    fn drive_force_does_not_depend_on_place_or_push(table in tables(DRIVES, true), xw in -0.3..1.0, push in 20.0..200.0) {
        let moved = table.with(|m| (m.load.xw, m.load.push) = (xw, m.load.push + push));
        let (here, there) = (table.at_rest(), moved.at_rest());
        prop_assert!(close(here.rest.drive, there.rest.drive, ROUNDING, scale_of(&here) + scale_of(&there)));
        let wheel = (here.rest.base_wheel - there.rest.base_wheel).abs();
        let pivot = (here.rest.joint(JointId::Bl) - there.rest.joint(JointId::Bl)).length();
        prop_assert!(wheel + pivot > 1.0, "a push of {push} N must be felt somewhere");
    }

    /// Everything, friction included, is in proportion to the loads.
    #[test]
    fn forces_scale_with_loads(table in any_table(), factor in 0.2..5.0) {
        let (one, more) = (table.state(), table.with(|m| heavier(m, factor)).state());
        let (slow, fast) = (one.motion.as_ref().unwrap(), more.motion.as_ref().unwrap());
        for (a, b) in [(&one.rest, &more.rest), (&slow.raise, &fast.raise), (&slow.lower, &fast.lower)] {
            let scale = factor * a.largest();
            prop_assert!(close(b.drive, factor * a.drive, ROUNDING, scale));
            for (a, b) in a.joints.iter().zip(&b.joints) {
                prop_assert!((*b - factor * *a).length() <= ROUNDING * scale);
            }
        }
    }

    /// Twice as stiff gives way half as far; twice the live load twice as far.
    #[test]
    fn drop_is_linear(table in any_table()) {
        let drop = |table: &Table| table.at_rest().deflection.unwrap().drop.total();
        let table = table.with(|m| m.load.push = 0.0);
        let once = drop(&table);
        prop_assert!(close(drop(&table.with(|m| all_stiffer(m, 2.0))), once / 2.0, ROUNDING, once));
        prop_assert!(close(drop(&table.with(|m| m.load.weight *= 2.0)), once * 2.0, ROUNDING, once));
    }

    /// Maxwell: the drop by a unit push is the shift by a unit weight, and the drop by a unit couple the tilt by it.
    #[test]
    fn displacements_are_reciprocal(table in any_table()) {
        let weight = table.with(|m| (m.load.weight, m.load.push) = (1.0, 0.0)).at_rest();
        let push = table.with(|m| (m.load.weight, m.load.push) = (0.0, 1.0)).at_rest();
        let at = DVec2::new(table.mechanism.load.xw, table.mechanism.load.yp.unwrap());
        let shift = weight.shape.as_ref().unwrap().deck(at).x;
        let scale = weight.deflection.unwrap().drop.total() + shift.abs();
        prop_assert!(close(push.deflection.unwrap().drop.total(), shift, 1e-8, scale));

        // Two opposite pushes one metre apart are a clockwise couple; rigid deck rails, so that its place is nothing.
        let rigid = table.with(|m| (m.top.ei, m.load.weight, m.load.push) = (None, 0.0, 1.0));
        let high = rigid.with(|m| m.load.yp = Some(1.2)).at_rest().deflection.unwrap().drop.total();
        let low = rigid.with(|m| m.load.yp = Some(0.2)).at_rest().deflection.unwrap().drop.total();
        let by_weight = rigid.with(|m| (m.load.weight, m.load.push) = (1.0, 0.0)).at_rest();
        // A level couple on a tilted frame stands 1 m apart across the push's direction: cos(phi) of it counts.
        let lever = table.pose().phi.cos();
        let tilt = by_weight.deflection.unwrap().tilt.total();
        prop_assert!(close((low - high) / lever, tilt, 1e-8, high.abs() + low.abs() + tilt.abs()));
    }

    /// Without mass F = n W cot(theta).
    #[test]
    fn ideal_drive_force(table in tables(AXLES, true)) {
        let ideal = ideal(&table);
        let (n, weight) = (ideal.mechanism.n as f64, ideal.mechanism.load.weight);
        let want = n * weight / table.theta.tan();
        prop_assert!(close(ideal.at_rest().rest.drive, want, ROUNDING, want));
    }

    /// All lengths and sections s times as large under the same weight: same forces, moments s times, bending 1/s
    /// times, slip the same.
    #[test]
    fn size_does_not_change_forces(table in tables(AXLES, false), s in 0.5..2.0) {
        let small = ideal(&table);
        let large = small.with(|m| {
            let load = &mut m.load;
            (load.yw, load.yp) = (load.yw.map(|y| y * s), load.yp.map(|y| y * s));
            for length in [&mut m.length, &mut m.db, &mut m.dt, &mut m.arm.w, &mut m.arm.t, &mut load.xw] {
                *length *= s;
            }
            if let DriveKind::BaseCarriage { x_anchor, .. } | DriveKind::TopCarriage { x_anchor, .. } = &mut m.drive.kind {
                *x_anchor *= s;
            }
        });
        let (small, large) = (small.at_rest(), large.at_rest());
        let scale = scale_of(&small);
        prop_assert!(close(large.rest.drive, small.rest.drive, ROUNDING, scale));
        for (a, b) in small.sections.as_ref().unwrap().iter().zip(large.sections.as_ref().unwrap()) {
            prop_assert!(close(b.moment, s * a.moment, ROUNDING, s * (a.moment + scale * 1e-3)));
        }
        let (small, large) = (small.deflection.unwrap().drop, large.deflection.unwrap().drop);
        prop_assert!(close(large.arms, small.arms / s, ROUNDING, small.arms));
        prop_assert!(close(large.joints, small.joints, ROUNDING, small.joints));
    }

    /// Base, top and every side pivot need the same drive force, since all carriages move alike.
    #[test]
    fn place_of_drive_does_not_matter(table in tables(&["mid_pivot"], true)) {
        let mut drives = vec![table.with(base_drive), table.with(top_drive)];
        for level in 1..table.mechanism.n {
            drives.push(table.with(|m| m.drive.kind = DriveKind::MidPivot { level }));
        }
        let forces: Vec<f64> = drives.iter().map(|table| table.at_rest().rest.drive).collect();
        for force in &forces {
            prop_assert!(close(*force, forces[0], ROUNDING, forces[0]), "{forces:?}");
        }
    }

    /// Virtual work: F ds = dU, the energy from masses and places alone.
    #[test]
    fn drive_force_is_the_slope_of_energy(table in any_table()) {
        let solver = table.solver();
        let pose = |theta: f64| solver.pose_at_angle(theta).unwrap();
        let slope = rate(table.theta, |theta| potential(&table.mechanism, &pose(theta)));
        let state = table.at_rest();
        let travel_rate = table.pose().deck_rate() / state.advantage;
        let scale = scale_of(&state) + (slope / travel_rate).abs();
        prop_assert!(close(state.rest.drive, slope / travel_rate, 1e-6, scale));
        let sigma = if rate(table.theta, |theta| length(&solver, theta)) * table.pose().deck_rate() > 0.0 { 1.0 } else { -1.0 };
        prop_assert!(close(state.screw_force, sigma * state.rest.drive, ROUNDING, scale));
        let geometric = sigma * rate(table.theta, |theta| length(&solver, theta));
        prop_assert!(close(travel_rate, geometric, 1e-6, geometric));
    }

    /// The work of the screw between two angles is the energy gained, whatever the way.
    #[test]
    fn work_is_energy(table in any_table()) {
        let solver = table.solver();
        let pose = |theta: f64| solver.pose_at_angle(theta).unwrap();
        let integrand = |theta: f64| {
            let state = solver.state(&pose(theta), Detail::FORCES).unwrap();
            state.rest.drive * pose(theta).deck_rate() / state.advantage
        };
        let (low, high) = (table.theta, table.theta + 0.02);
        let simpson = (0..20).map(|step| {
            let h = (high - low) / 20.0;
            let at = low + h * f64::from(step);
            h / 6.0 * (integrand(at) + 4.0 * integrand(at + h / 2.0) + integrand(at + h))
        });
        let gained = potential(&table.mechanism, &pose(high)) - potential(&table.mechanism, &pose(low));
        let scale = gained.abs() + table.mechanism.load.weight * 0.02;
        prop_assert!(close(simpson.sum(), gained, 1e-6, scale));
    }

    /// Closed forms for massless arms on a base carriage: wheels, pivots, centre pin and its bending moments.
    #[test]
    fn closed_forms_of_the_ideal_table(table in tables(BASE, true)) {
        let table = ideal(&table);
        let (pose, state) = (table.pose(), table.at_rest());
        let (w, xw, weight, n) = (pose.carriage_x, table.mechanism.load.xw, table.mechanism.load.weight, table.mechanism.n);
        let rest = &state.rest;
        let scale = scale_of(&state);
        let wheel = weight * xw / w;
        prop_assert!(close(rest.base_wheel, wheel, ROUNDING, scale));
        prop_assert!(close(rest.top_wheel, wheel, ROUNDING, scale));
        prop_assert!((rest.joint(JointId::Bl) - DVec2::new(rest.drive, weight - wheel)).length() < ROUNDING * scale);
        prop_assert!((rest.joint(JointId::Tl) - DVec2::new(0.0, weight - wheel)).length() < ROUNDING * scale);
        if n == 1 {
            let pin = (weight / table.theta.tan()).hypot(weight * (2.0 * xw / w - 1.0));
            prop_assert!(close(rest.joint(JointId::C(1)).length(), pin, ROUNDING, scale));
        }
        let diagrams = table.solver().diagrams(&pose, rest).unwrap();
        let middle = table.mechanism.length / 2.0;
        for stage in 1..=n {
            let above = (n - stage) as f64;
            let wanted = [weight * (above * w + xw) / 2.0, weight * ((above + 1.0) * w - xw) / 2.0];
            for (arm, want) in [ArmId::a(stage), ArmId::b(stage)].into_iter().zip(wanted) {
                let [before, behind] = diagrams[arm.index()].around(middle).unwrap();
                prop_assert!(close(before.m.abs(), want.abs(), ROUNDING, scale));
                prop_assert!(close(behind.m, before.m, ROUNDING, scale));
            }
        }
    }

    /// Bending of the worst stage under a centred load: 2n - 1 times that of the far stage, with the screw at level j
    /// only 2 max(j, n - j) - 1 times W w/4.
    #[test]
    fn screw_in_the_middle_spares_the_arms(table in tables(&["mid_pivot"], true)) {
        let n = table.mechanism.n;
        let w = table.pose().carriage_x;
        let centred = ideal(&table).with(|m| m.load.xw = w / 2.0);
        let unit = centred.mechanism.load.weight * w / 4.0;
        let worst = |table: Table| table.at_rest().sections.unwrap().iter().fold(0.0, |most: f64, arm| most.max(arm.moment)) / unit;
        let whole = (2 * n - 1) as f64;
        prop_assert!(close(worst(centred.with(base_drive)), whole, ROUNDING, whole));
        prop_assert!(close(worst(centred.with(top_drive)), whole, ROUNDING, whole));
        for level in 1..n {
            let want = (2 * level.max(n - level) - 1) as f64;
            let spared = centred.with(|m| m.drive.kind = DriveKind::MidPivot { level });
            prop_assert!(close(worst(spared), want, ROUNDING, whole));
        }
    }

    /// Friction makes raising harder and lowering easier, more of it more so; without it all three are the same.
    #[test]
    fn friction_widens_the_dead_band(table in any_table(), less in 0.0..1.0) {
        let of = |factor: f64| {
            let state = table.with(|m| {
                m.friction.mu_pin *= factor;
                m.friction.crr_base *= factor;
                m.friction.crr_top *= factor;
            }).state();
            let motion = state.motion.unwrap();
            (motion.raise.drive, state.rest.drive, motion.lower.drive)
        };
        let (raise, rest, lower) = of(1.0);
        let noise = ROUNDING * (raise.abs() + lower.abs() + 1.0);
        prop_assert!(raise >= rest - noise && rest >= lower - noise);
        let (less_raise, _, less_lower) = of(less);
        prop_assert!(less_raise <= raise + noise && less_lower >= lower - noise);
        let (free_raise, _, free_lower) = of(0.0);
        prop_assert!(close(free_raise, rest, ROUNDING, rest) && close(free_lower, rest, ROUNDING, rest));
        let rubs = table.mechanism.friction.mu_pin > 1e-3;
        prop_assert!(!rubs || (raise > rest && rest > lower));
    }

    /// Power balance of the moving table: the screw's work is the energy gained and what friction eats.
    #[test]
    fn friction_eats_what_is_missing(table in any_table()) {
        let (pose, state, m) = (table.pose(), table.state(), &table.mechanism);
        let travel_rate = pose.deck_rate() / state.advantage;
        let gained = state.rest.drive * travel_rate;
        let motion = state.motion.as_ref().unwrap();
        for (forces, way) in [(&motion.raise, 1.0), (&motion.lower, -1.0)] {
            let mut eaten = 0.0;
            for joint in JointId::all(m.n) {
                let [first, second] = joint.bodies(m.n).map(|body| pose.frame(body).spin);
                let radius = m.friction.mu_pin * m.friction.r.of(joint.kind());
                eaten += radius * forces.joint(joint).length() * (second - first).abs();
            }
            eaten += m.friction.crr_base * (forces.base_wheel * pose.carriage_rate).abs();
            eaten += m.friction.crr_top * (forces.top_wheel * pose.top_axle_rate).abs();
            eaten += in_the_ends_of_the_screw(&table, &pose, forces);
            let scale = gained.abs() + eaten;
            prop_assert!(close(forces.drive * travel_rate, gained + way * eaten, 1e-8, scale));
        }
    }

    /// Every body is in equilibrium, at rest and moving, checked on the equations written out in full; and the base
    /// and the floor carry all weights and the push.
    #[test]
    fn every_body_is_in_equilibrium(table in any_table()) {
        let (solver, pose, state) = (table.solver(), table.pose(), table.state());
        let system = solver.equilibrium(&pose).unwrap();
        let matrix = dense::matrix(&pose, system.screw());
        let motion = state.motion.as_ref().unwrap();
        for forces in [&state.rest, &motion.raise, &motion.lower] {
            let mut loads = solver.loads(&pose);
            loads.add_rubbing(&pose, system.screw(), &forces.rubbing);
            let side = dense::right_side(&pose, &loads);
            let residual = (&matrix * dense::unknowns(forces) - &side).amax();
            prop_assert!(residual <= ROUNDING * forces.largest().max(1.0), "residual {residual}");
        }
        let m = &table.mechanism;
        let arms = m.sides * m.arm.mass * 2.0 * m.n as f64 + m.lumps.iter().map(|lump| lump.mass).sum::<f64>();
        let weight = GRAVITY * (arms + m.top_mass + m.base_carriage_mass + m.top_carriage_mass) + m.load.weight;
        if !matches!(m.drive.kind, DriveKind::Strut { .. }) {
            let on_base = state.rest.joint(JointId::Bl).y + state.rest.base_wheel;
            prop_assert!(close(on_base, weight, ROUNDING, scale_of(&state)));
        }
        let on_floor: f64 = state.casters.unwrap().iter().sum();
        prop_assert!(close(on_floor, weight + GRAVITY * m.base_mass, ROUNDING, scale_of(&state)));
    }

    /// Play stays within the free travel, needs clearance, and lets a single weight only sink.
    #[test]
    fn play_is_bounded(table in any_table()) {
        let resting = table.with(|m| (m.clearance.rail_gap_base, m.clearance.rail_gap_top) = (0.0, 0.0));
        let deflection = resting.at_rest().deflection.unwrap();
        for movement in [deflection.drop, deflection.tilt, deflection.drift] {
            prop_assert!(movement.play.abs() <= movement.lash * (1.0 + ROUNDING));
        }
        let tight = table.with(|m| m.clearance = Default::default()).at_rest().deflection.unwrap();
        prop_assert!(tight.drop.play.abs() + tight.drop.lash + tight.tilt.lash + tight.drift.lash <= 0.0);
        let single = ideal(&table).at_rest().deflection.unwrap();
        prop_assert!(single.drop.play >= -1e-15);
    }

    /// Play in the eyes at both ends of a screw lets the deck travel as far as twice that play in its nut: geometry.
    #[test]
    fn play_in_two_eyes_is_play_in_the_nut(table in tables(&["mid_pivot"], true), play in 1e-4..2e-3) {
        let lash = |eyes: f64, nut: f64| {
            let loose = table.with(|m| {
                m.clearance = Default::default();
                m.clearance.pins.d = Some(eyes);
                m.clearance.screw_backlash = nut;
            });
            loose.at_rest().deflection.unwrap().drop.lash
        };
        let (eyes, nut) = (lash(play, 0.0), lash(0.0, 2.0 * play));
        prop_assert!(eyes > 0.0 && (eyes / nut - 1.0).abs() < ROUNDING);
    }

    /// Upside down, with the order of the stages and every centre pin reversed, a base drive is a top drive.
    #[test]
    fn upside_down_base_is_top(table in tables(BASE, false)) {
        let upright = ideal(&table).with(|m| (m.db, m.dt) = (0.0, 0.0));
        let centre: Vec<f64> = upright.pose().centre.iter().rev().map(|c| 1.0 - c).collect();
        let turned = upright.with(|m| {
            top_drive(m);
            m.c = Centre::Each(centre);
        });
        let solver = turned.solver();
        let pose = solver.pose_at_carriage(upright.pose().top_axle.x).unwrap();
        let state = solver.state(&pose, Detail::FORCES).unwrap();
        prop_assert!(close(pose.deck_height, upright.pose().deck_height, ROUNDING, 1.0));
        prop_assert!(close(state.rest.drive, upright.at_rest().rest.drive, 1e-8, state.rest.drive));
    }

    /// Clapeyron: half the weight times its drop is the strain energy. Rails rigid: the plane frame checks those. Base
    /// axle level with the pivot: else the floor feels a couple that is not counted as bending the base.
    #[test]
    fn work_of_the_weight_is_strain_energy(table in any_table()) {
        let table = ideal(&table).with(|m| (m.top.ei, m.base.ei, m.db) = (None, None, 0.0));
        let (m, state, pose) = (&table.mechanism, table.at_rest(), table.pose());
        let rest = &state.rest;
        let slips = JointId::all(m.n).map(|joint| rest.joint(joint).length_squared() / m.joint_k.pins.own(joint.kind()).unwrap());
        let wheels = rest.base_wheel.powi(2) / m.joint_k.wheel_base.unwrap() + rest.top_wheel.powi(2) / m.joint_k.wheel_top.unwrap();
        let [left, right] = state.casters.unwrap();
        let casters = (left.powi(2) + right.powi(2)) / m.base.k_caster.unwrap();
        let screw = rest.drive.powi(2) / state.drive_stiffness.unwrap();
        let area = m.sides * m.arm.w * m.arm.t;
        let (e, inertia) = (m.arm.e.unwrap(), area * m.arm.w.powi(2) / 12.0);
        let density = |section: risewright::mechanics::Section| {
            section.m.powi(2) / (e * inertia) + section.n.powi(2) / (e * area) + section.v.powi(2) / (m.arm.kappa * m.arm.g * area)
        };
        let mut arms = 0.0;
        for piece in table.solver().diagrams(&pose, rest).unwrap().iter().flat_map(|arm| &arm.pieces) {
            let (a, b) = (piece.from, piece.to);
            arms += (b - a) / 6.0 * (density(piece.at(a)) + 4.0 * density(piece.at((a + b) / 2.0)) + density(piece.at(b)));
        }
        let energy = (slips.sum::<f64>() / m.sides + wheels / m.sides + casters + screw + arms) / 2.0;
        let work = m.load.weight * state.deflection.unwrap().drop.total() / 2.0;
        prop_assert!(close(work, energy, 1e-8, energy), "work {work}, energy {energy}");
    }
}

/// Length of the screw from the places of its ends alone.
fn length(solver: &Solver, theta: f64) -> f64 {
    let pose = solver.pose_at_angle(theta).unwrap();
    solver.state(&pose, Detail::FORCES).unwrap().screw_length
}

/// What the end pins of a free screw eat, a unit of the angle.
fn in_the_ends_of_the_screw(
    table: &Table,
    pose: &Pose,
    forces: &risewright::mechanics::statics::Forces,
) -> f64 {
    use risewright::mechanics::drive::Action;
    let solver = table.solver();
    let screw = *solver.equilibrium(pose).unwrap().screw();
    let Action::Pins(ends) = screw.action else { return 0.0 };
    let friction = &table.mechanism.friction;
    let radius = friction.mu_pin * friction.r.d.or(friction.r.default).unwrap_or(0.0);
    let force = forces.drive.hypot(forces.rubbing.across);
    ends.iter().map(|end| radius * force * (spin(pose, end.body) - screw.spin).abs()).sum()
}

fn spin(pose: &Pose, body: Body) -> f64 {
    pose.frame(body).spin
}

/// Near upright the drive force vanishes, near flat it grows as n W / sin(theta).
#[test]
fn drive_force_at_the_ends_of_motion() {
    let mechanism: Mechanism = serde_json::from_str(
        r#"{"n": 3, "L": 0.6, "arm": {"w": 0.03, "t": 0.02}, "load": {"W": 900, "xw": 0.2},
            "drive": {"kind": "base_carriage", "x_anchor": -0.05}}"#,
    )
    .unwrap();
    let force = |theta: f64| Table::new(mechanism.clone(), theta).at_rest().rest.drive;
    assert!(close(force(1e-4) * 1e-4_f64.sin(), 2700.0, 1e-7, 2700.0));
    assert!(force(std::f64::consts::FRAC_PI_2 - 1e-6).abs() < 0.01);
}
