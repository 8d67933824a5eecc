//! Whether a mechanism can be computed at all: every number finite and within what a table can be.
//!
//! Plain `f64` in SI. The bounds are wide on purpose: they keep numbers from overflowing, not designs from being
//! poor.

use super::fault::Fault;
use super::mechanism::{Attachment, Centre, DriveKind, Mechanism, PerJoint, Screw};
use super::names::{ArmId, MAX_STAGES};
use super::space::{Space, Strength};
use std::f64::consts::{FRAC_PI_2, PI};

/// Largest length or coordinate, m.
const LENGTH: f64 = 1e3;
/// Smallest length that has to be more than nothing, m.
const SHORTEST: f64 = 1e-6;
/// Largest mass, kg.
const MASS: f64 = 1e7;
/// Largest force, N.
const FORCE: f64 = 1e9;
/// Smallest and largest stiffness or modulus of any kind, in its own SI unit.
const SOFTEST: f64 = 1e-3;
const STIFFEST: f64 = 1e18;
/// Largest coefficient of friction.
const FRICTION: f64 = 10.0;
/// Nearest a centre pin may come to an end of its arm, as a fraction.
const CENTRE: f64 = 0.05;

struct Check {
    faults: Vec<Fault>,
}

impl Check {
    fn within(&mut self, place: impl Into<String>, value: f64, low: f64, high: f64) {
        if !(low..=high).contains(&value) {
            self.faults.push(Fault::new(place, format!("is {value} but must lie between {low} and {high}")));
        }
    }

    fn optional(&mut self, place: &str, value: Option<f64>, low: f64, high: f64) {
        if let Some(value) = value {
            self.within(place, value, low, high);
        }
    }

    fn size(&mut self, place: &str, value: f64) {
        self.within(place, value, SHORTEST, LENGTH);
    }

    fn coordinate(&mut self, place: &str, value: f64) {
        self.within(place, value, -LENGTH, LENGTH);
    }

    fn mass(&mut self, place: &str, value: f64) {
        self.within(place, value, 0.0, MASS);
    }

    fn stiffness(&mut self, place: &str, value: Option<f64>) {
        self.optional(place, value, SOFTEST, STIFFEST);
    }

    /// A stiffness that may be zero, which leaves its term out.
    fn stiffness_or_zero(&mut self, place: &str, value: Option<f64>) {
        self.stiffness(place, value.filter(|value| value.abs() > 0.0));
    }

    fn arm(&mut self, place: &str, arm: ArmId, stages: usize) {
        if !(1..=stages).contains(&arm.stage) {
            self.say(place, format!("names arm {arm}, but there are only {stages} stages"));
        }
    }

    fn per_joint(&mut self, place: &str, values: &PerJoint, low: f64, high: f64) {
        let named = [
            ("default", values.default),
            ("C", values.c),
            ("J", values.j),
            ("BL", values.bl),
            ("BR", values.br),
            ("TL", values.tl),
            ("TR", values.tr),
            ("D", values.d),
        ];
        for (key, value) in named {
            self.optional(&format!("{place}.{key}"), value, low, high);
        }
    }

    fn say(&mut self, place: &str, text: impl Into<String>) {
        self.faults.push(Fault::new(place, text));
    }
}

/// Everything that keeps `mechanism` from being computed, in the order of its keys; empty when nothing does.
pub fn check(mechanism: &Mechanism) -> Vec<Fault> {
    let mut check = Check { faults: Vec::new() };
    if !(1..=MAX_STAGES).contains(&mechanism.n) {
        check.say("n", format!("is {} but there must be 1 to {MAX_STAGES} stages", mechanism.n));
        return check.faults;
    }
    linkage(&mut check, mechanism);
    masses(&mut check, mechanism);
    drive(&mut check, mechanism);
    resistance(&mut check, mechanism);
    supports(&mut check, mechanism);
    if let Some(space) = &mechanism.model3d {
        space_frame(&mut check, space, mechanism.n);
    }
    if let Some(strength) = &mechanism.strength {
        strength_sizes(&mut check, strength);
    }
    check.faults
}

fn linkage(check: &mut Check, m: &Mechanism) {
    check.size("L", m.length);
    if let Centre::Each(list) = &m.c
        && list.len() != m.n
    {
        check.say("c", format!("lists {} fractions for {} stages", list.len(), m.n));
    }
    for stage in 1..=m.n {
        if let Some(c) = m.c.of(stage) {
            check.within(format!("c[{stage}]"), c, CENTRE, 1.0 - CENTRE);
        }
    }
    check.within("sides", m.sides, 1.0, 100.0);
    check.coordinate("db", m.db);
    check.coordinate("dt", m.dt);
    check.coordinate("h_base", m.h_base);
    check.coordinate("h_deck", m.h_deck);
    check.size("arm.w", m.arm.w);
    check.size("arm.t", m.arm.t);
    check.stiffness("arm.E", m.arm.e);
    check.stiffness_or_zero("arm.G", Some(m.arm.g));
    check.within("arm.kappa", m.arm.kappa, 0.1, 1.0);
    check.within("arm.end_margin", m.arm.end_margin, 0.0, LENGTH);
    check.optional("range.x_max", m.range.x_max, SHORTEST, LENGTH);
    check.optional("range.x_min", m.range.x_min, 0.0, LENGTH);
    check.within("range.gap", m.range.gap, 0.0, LENGTH);
    if let (Some(low), Some(high)) = (m.range.x_min, m.range.x_max)
        && low >= high
    {
        check.say("range", "leaves the carriage no travel: x_min must be less than x_max");
    }
}

fn masses(check: &mut Check, m: &Mechanism) {
    check.mass("arm.mass", m.arm.mass);
    for (place, lump) in m.lumps.iter().enumerate() {
        check.arm(&format!("lumps[{place}].arm"), lump.arm, m.n);
        check.within(format!("lumps[{place}].f"), lump.f, 0.0, 1.0);
        check.mass(&format!("lumps[{place}].mass"), lump.mass);
    }
    check.mass("top_mass", m.top_mass);
    check.coordinate("top_cg_x", m.top_cg_x);
    check.mass("base_carriage_mass", m.base_carriage_mass);
    check.mass("top_carriage_mass", m.top_carriage_mass);
    check.mass("base_mass", m.base_mass);
    check.coordinate("base_cg_x", m.base_cg_x);
    check.within("load.W", m.load.weight, 0.0, FORCE);
    check.coordinate("load.xw", m.load.xw);
    check.within("load.P", m.load.push, -FORCE, FORCE);
    check.optional("load.yw", m.load.yw, -LENGTH, LENGTH);
    check.optional("load.yp", m.load.yp, -LENGTH, LENGTH);
}

fn drive(check: &mut Check, m: &Mechanism) {
    match &m.drive.kind {
        DriveKind::BaseCarriage { x_anchor, .. } | DriveKind::TopCarriage { x_anchor, .. } => {
            check.coordinate("drive.x_anchor", *x_anchor);
        }
        DriveKind::MidPivot { level } => {
            if !(1..m.n).contains(level) {
                let between =
                    format!("is {level}, but a screw between side pivots needs a level from 1 to n - 1");
                check.say("drive.level", between);
            }
        }
        DriveKind::Strut { p, q } => {
            for (place, end) in [("drive.P", p), ("drive.Q", q)] {
                match *end {
                    Attachment::Base { x, y } | Attachment::Top { x, y } => {
                        check.coordinate(&format!("{place}.x"), x);
                        check.coordinate(&format!("{place}.y"), y);
                    }
                    Attachment::Arm { arm, f, off } => {
                        check.arm(&format!("{place}.body"), arm, m.n);
                        check.within(format!("{place}.f"), f, 0.0, 1.0);
                        check.coordinate(&format!("{place}.off"), off);
                    }
                }
            }
        }
    }
    check.stiffness("drive.stiff.E", m.drive.stiff.e);
    check.optional("drive.stiff.A", m.drive.stiff.area, 1e-12, 1e3);
    check.stiffness("drive.stiff.k_end", m.drive.stiff.k_end);
}

fn resistance(check: &mut Check, m: &Mechanism) {
    check.within("friction.mu_pin", m.friction.mu_pin, 0.0, FRICTION);
    check.per_joint("friction.r", &m.friction.r, 0.0, LENGTH);
    check.within("friction.crr_base", m.friction.crr_base, 0.0, FRICTION);
    check.within("friction.crr_top", m.friction.crr_top, 0.0, FRICTION);
    if let Some(screw) = &m.screw {
        thread(check, screw);
    }
    check.per_joint("clearance", &m.clearance.pins, 0.0, LENGTH);
    check.within("clearance.rail_gap_base", m.clearance.rail_gap_base, 0.0, LENGTH);
    check.within("clearance.rail_gap_top", m.clearance.rail_gap_top, 0.0, LENGTH);
    check.within("clearance.screw_backlash", m.clearance.screw_backlash, 0.0, LENGTH);
}

fn thread(check: &mut Check, screw: &Screw) {
    check.size("screw.d_mean", screw.d_mean);
    check.size("screw.lead", screw.lead);
    check.within("screw.mu_thread", screw.mu_thread, 0.0, FRICTION);
    check.within("screw.half_angle", screw.half_angle, 0.0, 0.99 * FRAC_PI_2);
    check.within("screw.mu_collar", screw.mu_collar, 0.0, FRICTION);
    check.within("screw.d_collar", screw.d_collar, 0.0, LENGTH);
    check.optional("screw.crank_radius", screw.crank_radius, SHORTEST, LENGTH);
    if screw.mu_flank() * screw.lead >= PI * screw.d_mean {
        check.say("screw", "cannot be turned: friction times lead exceeds the thread's circumference");
    }
}

fn supports(check: &mut Check, m: &Mechanism) {
    check.per_joint("joint_k", &m.joint_k.pins, SOFTEST, STIFFEST);
    check.stiffness("joint_k.wheel_base", m.joint_k.wheel_base);
    check.stiffness("joint_k.wheel_top", m.joint_k.wheel_top);
    if let Some([left, right]) = m.base.casters {
        check.coordinate("base.casters[0]", left);
        check.coordinate("base.casters[1]", right);
        if right - left < SHORTEST {
            check.say("base.casters", "must be given from left to right, apart from each other");
        }
    }
    check.stiffness("base.EI", m.base.ei);
    check.stiffness_or_zero("base.kGA", m.base.kga);
    check.stiffness("base.k_caster", m.base.k_caster);
    check.stiffness("top.EI", m.top.ei);
    check.stiffness_or_zero("top.kGA", m.top.kga);
}

fn space_frame(check: &mut Check, s: &Space, stages: usize) {
    let sizes = [
        ("model3d.b", s.b),
        ("model3d.d_pin", s.d_pin),
        ("model3d.d_axle", s.d_axle),
        ("model3d.wheel_z", s.wheel_z),
    ];
    for (place, value) in sizes {
        check.size(place, value);
    }
    check.within("model3d.arm_offset", s.arm_offset, 0.0, LENGTH);
    check.coordinate("model3d.ref_x", s.ref_x);
    check.coordinate("model3d.corner_dx", s.corner_dx);
    check.coordinate("model3d.corner_z", s.corner_z);
    check.coordinate("model3d.h_cg", s.h_cg);
    let needed = [
        ("model3d.joint.slip", s.joint.slip),
        ("model3d.joint.axial", s.joint.axial),
        ("model3d.joint.rock", s.joint.rock),
        ("model3d.k_wheel", s.k_wheel),
    ];
    for (place, value) in needed {
        check.stiffness(place, Some(value));
    }
    let may_be_zero = [
        ("model3d.joint.rz", s.joint.rz),
        ("model3d.k_lateral_base", s.k_lateral_base),
        ("model3d.k_lateral_top", s.k_lateral_top),
        ("model3d.k_yaw_carriage", s.k_yaw_carriage),
    ];
    for (place, value) in may_be_zero {
        check.stiffness_or_zero(place, Some(value));
    }
    check.within("model3d.pdelta_W", s.pdelta_w, 0.0, FORCE);
    for (index, brace) in s.braces.iter().enumerate() {
        let place = |key: &str| format!("model3d.braces[{index}].{key}");
        check.arm(&place("arm"), brace.arm, stages);
        check.within(place("f"), brace.f, 0.0, 1.0);
        check.size(&place("h_along"), brace.h_along);
        check.size(&place("h_perp"), brace.h_perp);
        check.stiffness(&place("E"), Some(brace.e));
        check.stiffness(&place("G"), Some(brace.g));
        check.stiffness(&place("k_conn"), brace.k_conn);
    }
    for (index, diagonal) in s.diagonals.iter().enumerate() {
        let place = |key: &str| format!("model3d.diagonals[{index}].{key}");
        check.arm(&place("arm"), diagonal.arm, stages);
        check.within(place("f1"), diagonal.f1, 0.0, 1.0);
        check.within(place("f2"), diagonal.f2, 0.0, 1.0);
        check.stiffness(&place("EA"), Some(diagonal.ea));
    }
}

fn strength_sizes(check: &mut Check, s: &Strength) {
    check.within("strength.hole_d", s.hole_d, 0.0, LENGTH);
    check.size("strength.d_pin", s.d_pin);
    check.within("strength.pin_arm", s.pin_arm, 0.0, LENGTH);
    check.within("strength.K_out", s.k_out, 0.1, 10.0);
    let Some(screw) = &s.screw else { return };
    let sizes = [
        ("strength.screw.d_root", screw.d_root),
        ("strength.screw.d_mean", screw.d_mean),
        ("strength.screw.d_major", screw.d_major),
        ("strength.screw.pitch", screw.pitch),
        ("strength.screw.thread_h", screw.thread_h),
        ("strength.screw.nut_len", screw.nut_len),
        ("strength.screw.washer_D", screw.washer_outer),
    ];
    for (place, value) in sizes {
        check.size(place, value);
    }
    check.within("strength.screw.washer_d", screw.washer_inner, 0.0, screw.washer_outer);
    check.stiffness("strength.screw.E", Some(screw.e));
    check.stiffness("strength.screw.Sy", Some(screw.sy));
    check.within("strength.screw.K", screw.k, 0.1, 10.0);
}
