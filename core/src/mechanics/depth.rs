//! From a design to the third dimension of its mechanism.
//!
//! Plain `f64` in SI. Where several parts give one behind the other, their springs say so: see [`Springs`].
use super::loads::GRAVITY;
use super::mechanism::Mechanism;
use super::names::{ArmId, Side};
use super::space::{Brace, Diagonal, Space, SpaceJoint};
use super::springs::{Firmness, Spring, Springs};
use crate::catalogue::steel::Section;
use crate::design::{Design, DriveKind};
use crate::parts::{arm_offset, arm_spread};
use core::f64::consts::PI;

/// Whether the side guides touch their rails.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Guides {
    /// They do, and hold.
    Touching,
    /// The wheels stand within the guides' play: nothing holds them sideways.
    Free,
}

/// The frame in space of a design whose mechanism is given, with one guess of its stiffnesses.
///
/// The reference point lies on the deck under the load; the corner is the one farther from it.
#[must_use]
pub fn in_space(design: &Design, mechanism: &Mechanism, firmness: Firmness, guides: Guides) -> Space {
    sprung(design, mechanism, guides, |spring| spring.of(firmness))
}

/// The same with the best guess of every stiffness but those of one title.
#[must_use]
pub fn in_space_but(
    design: &Design,
    mechanism: &Mechanism,
    title: &str,
    firmness: Firmness,
    guides: Guides,
) -> Space {
    sprung(design, mechanism, guides, |spring| {
        spring.of(if spring.title == title { firmness } else { Firmness::Middle })
    })
}

/// The frame with the stiffness that is chosen of every spring.
fn sprung(design: &Design, mechanism: &Mechanism, guides: Guides, chosen: impl Fn(&Spring) -> f64) -> Space {
    let springs = Springs::of(design);
    let (frames, load) = (&design.frames, &design.load);
    let [left, right] =
        [frames.deck_left, frames.deck_left + frames.deck_length].map(|edge| (edge - load.centre).to_m());
    let hold = |value: f64| if guides == Guides::Touching { value } else { 0.0 };
    Space {
        b: arm_spread(design, false).to_m(),
        arm_offset: arm_offset(design).to_m(),
        d_pin: design.running.pin.to_m(),
        d_axle: axle_diameter(design),
        wheel_z: design.running.wheel_place.to_m(),
        ref_x: load.centre.to_m(),
        corner_dx: if left.abs() > right.abs() { left } else { right },
        corner_z: 0.5 * frames.deck_width.to_m(),
        h_cg: load.rise(),
        joint: SpaceJoint {
            slip: chosen(&springs.slip),
            axial: chosen(&springs.axial),
            rock: chosen(&springs.rock),
            rz: 0.0,
        },
        k_wheel: chosen(&springs.wheel),
        k_lateral_base: hold(chosen(&springs.guides[0])),
        k_lateral_top: hold(chosen(&springs.guides[1])),
        k_yaw_carriage: hold(chosen(&springs.square)),
        braces: braces(design, mechanism.n, chosen(&springs.board_end)),
        diagonals: diagonals(design, mechanism.n, springs.straps.map(|spring| chosen(&spring))),
        pdelta_w: weight_above(mechanism),
        no_shear: false,
    }
}

/// Diameter of a round bar that bends like the cross-bar, or that of the axle where there is none, m. The softness of the
/// stubs outside the tube is in the wheels.
fn axle_diameter(design: &Design) -> f64 {
    let drive = &design.drive;
    if !matches!(drive.kind, DriveKind::BaseCarriage | DriveKind::TopCarriage) {
        return design.running.axle.to_m();
    }
    let tube = Section::SquareTube { side: drive.cross_bar, wall: drive.cross_wall };
    (64.0 * tube.second_moment() / PI).sqrt().sqrt()
}

fn of_side(b: bool, stage: usize) -> ArmId {
    ArmId { side: if b { Side::B } else { Side::A }, stage }
}

/// Two boards on every arm that has them.
fn braces(design: &Design, stages: usize, end: f64) -> Vec<Brace> {
    let arms = &design.arms;
    let place = arms.board_place.value();
    let brace = |arm, f| Brace {
        arm,
        f,
        h_along: arms.board_width.to_m(),
        h_perp: arms.board_thickness.to_m(),
        e: arms.modulus.to_pa(),
        g: arms.shear_modulus.to_pa(),
        k_conn: Some(end),
    };
    [(false, arms.boards_a), (true, arms.boards_b)]
        .into_iter()
        .filter(|(_, has)| *has)
        .flat_map(|(b, _)| (1..=stages).map(move |stage| of_side(b, stage)))
        .flat_map(|arm| [brace(arm, place), brace(arm, 1.0 - place)])
        .collect()
}

/// A crossed pair on every arm that has straps.
fn diagonals(design: &Design, stages: usize, ea: [f64; 2]) -> Vec<Diagonal> {
    let place = design.arms.board_place.value();
    [false, true]
        .into_iter()
        .zip(ea)
        .filter(|(_, ea)| *ea > 0.0)
        .flat_map(|(b, ea)| {
            (1..=stages).map(move |stage| Diagonal { arm: of_side(b, stage), f1: place, f2: 1.0 - place, ea })
        })
        .collect()
}

/// What presses the table down from above: the load, the deck with its carriage, and half of the arms, N.
fn weight_above(mechanism: &Mechanism) -> f64 {
    let lumps: f64 = mechanism.lumps.iter().map(|lump| lump.mass).sum();
    let arms = 4.0 * mechanism.n as f64 * mechanism.arm.mass + lumps;
    mechanism.load.weight + GRAVITY * (mechanism.top_mass + mechanism.top_carriage_mass + 0.5 * arms)
}
