//! From what the builder decided to what the mechanics takes: sizes become masses, stiffnesses and clearances.
//!
//! Plain `f64` in SI. Nothing is solved here but the two stops of the carriage, which follow from the lowest and the highest deck.
use super::fault::Fault;
use super::loads::GRAVITY;
use super::mechanism::{
    Anchor, Arm, Attachment, Base, Centre, Clearance, Drive, DriveKind, DriveStiffness, Friction,
    JointStiffness, Load, Lump, Mechanism, PerJoint, Rails, Range, Screw,
};
use super::names::{ArmId, Side};
use super::solver::Solver;
use super::springs::wheel_stiffness;
use super::stiffness;
use crate::catalogue::steel::{STEEL_MODULUS, Section};
use crate::design::{self, BearingEnd, Design, StrutEnd};
use crate::parts::{ArmName, Part, Rides, ScrewBar, arm_thickness, parts, screw_bars};
use crate::quantity::Length;

/// The idealised mechanism of a design, its carriage stopped at the lowest and the highest deck.
///
/// # Errors
/// Every [`Fault`] that keeps the mechanism from being computed: the lowest or highest deck out of the linkage's reach
/// among them. The inputs are expected to lie in their ranges (see [`design::check`]).
pub fn idealise(design: &Design) -> Result<Mechanism, Vec<Fault>> {
    let mut mechanism = free(design);
    let solver = Solver::new(&mechanism)?;
    let stop = |deck: Length| {
        solver.pose_at_height(deck.to_m()).map(|pose| pose.carriage_x).map_err(|fault| vec![fault])
    };
    mechanism.range.x_max = Some(stop(design.lift.lowest)?);
    mechanism.range.x_min = Some(stop(design.lift.highest)?);
    Ok(mechanism)
}

/// The mechanism without stops.
#[must_use]
pub fn free(design: &Design) -> Mechanism {
    let list = parts(design);
    let stages = usize::try_from(design.lift.stages.get()).unwrap_or(1);
    let (top_mass, top_cg_x) = frame(&list, |rides| if let Rides::Deck(x) = rides { Some(x) } else { None });
    let (base_mass, base_cg_x) =
        frame(&list, |rides| if let Rides::Base(x) = rides { Some(x) } else { None });
    Mechanism {
        n: stages,
        length: design.lift.arm_length.to_m(),
        c: Centre::Same(design.lift.centre.value()),
        sides: 2.0,
        db: design.lift.base_axle.to_m(),
        dt: design.lift.deck_axle.to_m(),
        h_base: design.lift.pin_line.to_m(),
        h_deck: design.lift.deck_stack.to_m(),
        arm: arm(design, &list, stages),
        lumps: lumps(&list),
        top_mass,
        top_cg_x,
        base_carriage_mass: total(&list, |rides| rides == Rides::BaseCarriage),
        top_carriage_mass: total(&list, |rides| rides == Rides::DeckCarriage),
        base_mass,
        base_cg_x,
        load: load(design),
        drive: Drive { kind: drive_kind(design), stiff: drive_stiffness(design) },
        friction: friction(design),
        screw: Some(screw(design)),
        joint_k: joint_stiffness(design),
        base: base(design),
        top: rails(design, design.frames.deck_rail_depth.to_m()),
        clearance: clearance(design),
        range: Range { x_max: None, x_min: None, gap: design.arms.gap.to_m() },
        model3d: None,
        strength: None,
    }
}

fn total(list: &[Part], rides: impl Fn(Rides) -> bool) -> f64 {
    list.iter().flat_map(Part::loads).filter(|(on, _)| rides(*on)).map(|(_, mass)| mass).sum()
}

/// Mass of a frame and the place of its middle.
fn frame(list: &[Part], place: impl Fn(Rides) -> Option<f64>) -> (f64, f64) {
    let pieces = || list.iter().flat_map(Part::loads).filter_map(|(on, mass)| place(on).map(|x| (mass, x)));
    let mass: f64 = pieces().map(|(mass, _)| mass).sum();
    let moment: f64 = pieces().map(|(mass, x)| mass * x).sum();
    (mass, if mass > 0.0 { moment / mass } else { 0.0 })
}

/// All arms weigh the same here: the mean, with bushings and bolts.
fn arm(design: &Design, list: &[Part], stages: usize) -> Arm {
    let all = total(list, |rides| matches!(rides, Rides::Arm(_)));
    Arm {
        w: design.arms.width.to_m(),
        t: arm_thickness(design).to_m(),
        e: Some(design.arms.modulus.to_pa()),
        g: design.arms.shear_modulus.to_pa(),
        kappa: 5.0 / 6.0,
        mass: all / (4.0 * stages as f64),
        end_margin: design.arms.end.to_m(),
    }
}

fn arm_id(arm: ArmName) -> ArmId {
    ArmId { side: if arm.b { Side::B } else { Side::A }, stage: arm.stage }
}

fn lumps(list: &[Part]) -> Vec<Lump> {
    list.iter()
        .flat_map(Part::loads)
        .filter_map(|(on, mass)| match on {
            Rides::OnArm(arm, f) => Some(Lump { arm: arm_id(arm), f, mass }),
            _ => None,
        })
        .collect()
}

fn load(design: &Design) -> Load {
    Load {
        weight: design.load.mass.to_kg() * GRAVITY,
        xw: design.load.centre.to_m(),
        yw: None,
        push: design.load.push.to_n(),
        yp: Some((design.lift.deck_stack + design.load.push_height).to_m()),
    }
}

fn drive_kind(design: &Design) -> DriveKind {
    let drive = &design.drive;
    let anchor = match drive.bearing_end {
        BearingEnd::Fixed => Anchor::FixedEnd,
        BearingEnd::Far => Anchor::FarEnd,
    };
    let x_anchor = drive.bearing_place.to_m();
    match drive.kind {
        design::DriveKind::BaseCarriage => DriveKind::BaseCarriage { anchor, x_anchor },
        design::DriveKind::TopCarriage => DriveKind::TopCarriage { anchor, x_anchor },
        design::DriveKind::SidePivots => {
            DriveKind::MidPivot { level: usize::try_from(drive.level.get()).unwrap_or(1) }
        }
        design::DriveKind::Strut => DriveKind::Strut {
            p: attachment(drive.foot, drive.foot_x, drive.foot_y, drive.foot_part.value(), drive.foot_off),
            q: attachment(drive.head, drive.head_x, drive.head_y, drive.head_part.value(), drive.head_off),
        },
    }
}

fn attachment(end: StrutEnd, x: Length, y: Length, f: f64, off: Length) -> Attachment {
    match end {
        StrutEnd::Base => Attachment::Base { x: x.to_m(), y: y.to_m() },
        StrutEnd::Deck => Attachment::Top { x: x.to_m(), y: y.to_m() },
        _ => Attachment::Arm { arm: strut_arm(end), f, off: off.to_m() },
    }
}

fn strut_arm(end: StrutEnd) -> ArmId {
    let stage = usize::try_from(end.stage().unwrap_or(1)).unwrap_or(1);
    ArmId { side: if end.is_b() { Side::B } else { Side::A }, stage }
}

/// The screw's core and, one behind the other: nut, thrust bearing, the cross-bars that carry its ends, and the wood that holds them.
fn drive_stiffness(design: &Design) -> DriveStiffness {
    let drive = &design.drive;
    let [first, second] = screw_bars(design).map(|bar| bar_stiffness(design, bar));
    DriveStiffness {
        e: Some(STEEL_MODULUS.to_pa()),
        area: Some(Section::RoundBar { diameter: drive.root }.area()),
        k_end: Some(stiffness::series([first, second, stiffness::NUT, stiffness::THRUST_BEARING])),
    }
}

/// A bar that holds an end of the screw, at a frame with the wood behind its two seats.
fn bar_stiffness(design: &Design, bar: ScrewBar) -> f64 {
    let bent = stiffness::bar_at_middle(steel_ei(bar.section), bar.span.to_m());
    if !bar.on_frame {
        return bent;
    }
    let drive = &design.drive;
    let pressed = 2.0 * drive.anchor_bar.to_m() * frame_thickness(design);
    let seats = stiffness::block(design.arms.modulus.to_pa(), pressed, drive.seat_depth.to_m());
    stiffness::series([bent, seats])
}

/// Bending stiffness of a steel bar, N m2.
fn steel_ei(section: Section) -> f64 {
    STEEL_MODULUS.to_pa() * section.second_moment()
}

fn frame_thickness(design: &Design) -> f64 {
    (design.arms.thickness * design.frames.layers.get()).to_m()
}

fn friction(design: &Design) -> Friction {
    let running = &design.running;
    let axle = Some(running.axle.to_m() / 2.0);
    Friction {
        mu_pin: running.pin_friction.value(),
        r: PerJoint { default: Some(running.pin.to_m() / 2.0), br: axle, tr: axle, ..PerJoint::default() },
        crr_base: running.rolling.value(),
        crr_top: running.rolling.value(),
    }
}

/// The screw with its nut and bearing, as friction sees them.
pub(crate) fn screw(design: &Design) -> Screw {
    let drive = &design.drive;
    Screw {
        d_mean: drive.mean.to_m(),
        lead: drive.lead.to_m(),
        mu_thread: drive.thread_friction.value(),
        half_angle: drive.flank.to_radians(),
        mu_collar: drive.collar_friction.value(),
        d_collar: drive.collar.to_m(),
        crank_radius: Some(drive.crank.to_m()),
    }
}

/// Bushings slip in wood as dowels; an axle is steel and counts double. A wheel gives with its strip and with the axle that
/// stands out of the arm.
fn joint_stiffness(design: &Design) -> JointStiffness {
    let pin = stiffness::slip(design.arms.density.to_kg_m3(), design.running.bush.to_m());
    let wheel = |deck: bool| Some(wheel_stiffness(design, deck));
    JointStiffness {
        pins: PerJoint {
            c: Some(pin),
            j: Some(pin),
            bl: Some(pin),
            tl: Some(pin),
            br: Some(2.0 * pin),
            tr: Some(2.0 * pin),
            ..PerJoint::default()
        },
        wheel_base: wheel(false),
        wheel_top: wheel(true),
    }
}

/// Two rails of a depth, bare: the panel on them does not help, and their shear, which it more than makes up for, is left out.
fn rails(design: &Design, depth: f64) -> Rails {
    let width = 2.0 * frame_thickness(design);
    Rails { ei: Some(design.arms.modulus.to_pa() * stiffness::rectangle(width, depth)), kga: None }
}

fn base(design: &Design) -> Base {
    let beams = rails(design, design.frames.beam_depth.to_m());
    Base {
        casters: Some([design.running.caster_left.to_m(), design.running.caster_right.to_m()]),
        ei: beams.ei,
        kga: beams.kga,
        k_caster: Some(2.0 * design.running.caster_stiffness.to_n_per_m()),
    }
}

fn clearance(design: &Design) -> Clearance {
    let running = &design.running;
    let slack = design.sway.wear.slack();
    let (pin, axle) = (slack * running.clearance.to_m(), Some(slack * running.axle_clearance.to_m()));
    Clearance {
        pins: PerJoint { default: Some(pin), br: axle, tr: axle, d: Some(pin), ..PerJoint::default() },
        rail_gap_base: running.rail_gap.to_m(),
        rail_gap_top: running.rail_gap.to_m(),
        screw_backlash: design.drive.backlash.to_m(),
    }
}
