//! Stresses and critical forces of a mechanism by its sizes alone, before anything is said about materials' strength.
//!
//! Plain `f64` in SI; forces of one side. The checks of a design use the same formulas; this is the door for whole mechanisms that were not
//! made from a design.
use super::arm;
use super::bolt;
use super::column::Column;
use super::level::{Level, Loaded};
use super::thread::{Thread, mises};
use super::timber::Rectangle;
use crate::mechanics::space::{Strength, StrengthScrew};
use crate::mechanics::stiffness::rectangle;
use crate::mechanics::{ArmId, Fault, JointId, Mechanism, Solver};

/// Stresses and critical forces at one height.
#[derive(Clone, Debug, PartialEq)]
pub struct Bare {
    /// Greatest |M| / W + |N| / A on the net section at a centre hole, either side of the pin, in any state, Pa, and its arm.
    pub net_stress: (f64, ArmId),
    /// Greatest 3/2 |V| / A there, Pa.
    pub net_shear: f64,
    /// Greatest |M| / W + |N| / A on the gross section anywhere, Pa, and its arm.
    pub gross_stress: (f64, ArmId),
    /// Greatest push along an arm, N.
    pub compression: f64,
    /// Push at which an arm buckles in its plane and out of it, N; none without a modulus of elasticity.
    pub critical: Option<[f64; 2]>,
    /// Greatest force on a pivot, N, and which.
    pub pin: (f64, JointId),
    /// Shear stress of that pin, Pa.
    pub pin_shear: f64,
    /// Its bending stress in a lap joint, Pa.
    pub pin_bending: f64,
    /// Its average pressure on an arm, Pa.
    pub embedment: f64,
    /// The screw; none without its sizes.
    pub screw: Option<BareScrew>,
}

/// Stresses of the screw at one height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BareScrew {
    /// Stress along the root, Pa.
    pub axial: f64,
    /// Shear stress at the root, Pa.
    pub twist: f64,
    /// Von Mises stress at the root, Pa.
    pub mises: f64,
    /// Slenderness and critical push, N; none where the screw is only pulled.
    pub column: Option<(f64, f64)>,
    /// Pressure between the threads, Pa.
    pub pressure: f64,
    /// Shear stress in the nut's threads, Pa.
    pub shear_nut: f64,
    /// Pressure under its washer, Pa.
    pub washer: f64,
}

/// The stresses of a mechanism at one height; none where it says nothing of its sizes.
///
/// # Errors
/// Where the screw has no length.
pub fn bare(solver: &Solver, level: Level<'_>) -> Result<Option<Bare>, Fault> {
    let mechanism = solver.mechanism();
    let Some(sizes) = &mechanism.strength else { return Ok(None) };
    let gross = Rectangle { depth: mechanism.arm.w, thickness: mechanism.arm.t, hole: 0.0 };
    Ok(Some(stresses(mechanism, sizes, gross, &Loaded::new(solver, level, &gross)?)))
}

fn stresses(m: &Mechanism, sizes: &Strength, gross: Rectangle, at: &Loaded<'_>) -> Bare {
    let share = m.sides.recip();
    let net = Rectangle { hole: sizes.hole_d, ..gross };
    let n = at.level.pose.n;
    let greatest = |figure: &dyn Fn(ArmId) -> f64| {
        ArmId::all(n).fold((0.0, ArmId::a(1)), |most: (f64, ArmId), arm| {
            let value = figure(arm);
            if value > most.0 { (value, arm) } else { most }
        })
    };
    let at_centre = |arm: ArmId| [at.level.pose.centre_of(arm.stage) * m.length];
    let (pin, joint) = at.greatest_joint(share);
    Bare {
        net_stress: greatest(&|arm| arm::stress_at(at, arm, &at_centre(arm), &net) * share),
        net_shear: greatest(&|arm| arm::shear_at(at, arm, &at_centre(arm), &net) * share).0,
        gross_stress: greatest(&|arm| arm::stress_anywhere(at, arm, &gross) * share),
        compression: greatest(&|arm| arm::compression(at, arm) * share).0,
        critical: m.arm.e.map(|e| {
            let fraction = (1..=n)
                .map(|stage| at.level.pose.centre_of(stage))
                .fold(0.5, |most: f64, c| most.max(c).max(1.0 - c));
            arm::critical(
                [e * rectangle(m.arm.t, m.arm.w), e * rectangle(m.arm.w, m.arm.t)],
                [fraction * m.length, sizes.k_out * m.length],
            )
        }),
        pin: (pin, joint),
        pin_shear: bolt::shear(pin, sizes.d_pin),
        pin_bending: bolt::bending(bolt::lap_moment(pin, sizes.pin_arm), sizes.d_pin),
        embedment: bolt::pressure(pin, sizes.d_pin, m.arm.t),
        screw: sizes.screw.as_ref().map(|screw| screw_stresses(screw, at)),
    }
}

fn screw_stresses(sizes: &StrengthScrew, at: &Loaded<'_>) -> BareScrew {
    let thread = Thread {
        root: sizes.d_root,
        mean: sizes.d_mean,
        major: sizes.d_major,
        pitch: sizes.pitch,
        depth: sizes.thread_h,
        nut: sizes.nut_len,
    };
    let (force, torque) = (at.drive(), at.torque());
    let length = at.level.state.screw_length * sizes.k;
    let column = Column::round(sizes.d_root, length, sizes.e, sizes.sy);
    let (axial, twist) = (thread.axial(force), thread.twist(torque));
    BareScrew {
        axial,
        twist,
        mises: mises(axial, twist),
        column: (at.push() > 0.0).then(|| (column.slenderness(), column.critical())),
        pressure: thread.pressure(force),
        shear_nut: thread.shear_nut(force),
        washer: super::seat::under_washer(force, sizes.washer_outer, sizes.washer_inner),
    }
}
