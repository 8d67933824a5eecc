//! Arms, cross boards and straps.
use super::fastener::BoltSize;
use super::hole::{Hole, Housing, Purpose};
use super::part::{ArmName, Form, Part, Rides};
use super::pivots::{self, arm_hole, arm_joints};
use super::place::{Block, about};
use super::small::Small;
use super::solid::{block, steel_flat};
use crate::design::Design;
use crate::order::order;
use crate::quantity::Length;

/// A cross board is let into an arm by this part of the arm's thickness.
const LET_IN: i64 = 6;

/// Thickness of a glued arm.
#[must_use]
pub fn arm_thickness(design: &Design) -> Length {
    design.arms.thickness * design.arms.layers.get()
}

/// Distance of the two arms of a pair, middle to middle, across the table.
#[must_use]
pub fn arm_offset(design: &Design) -> Length {
    arm_thickness(design) + design.arms.spacer
}

/// Distance of the two arms of one name, middle to middle, across the table; A stands outside B.
#[must_use]
pub fn arm_spread(design: &Design, b: bool) -> Length {
    if b { design.frames.spread - arm_offset(design) * 2 } else { design.frames.spread }
}

pub(super) fn layers(count: i64) -> u32 {
    u32::try_from(count).unwrap_or(1)
}

const fn has_boards(design: &Design, b: bool) -> bool {
    if b { design.arms.boards_b } else { design.arms.boards_a }
}

pub(super) fn parts(design: &Design) -> Vec<Part> {
    let stages = usize::try_from(design.lift.stages.get()).unwrap_or(1);
    let mut list = Vec::new();
    for stage in 1..=stages {
        for b in [false, true] {
            let arm = ArmName { stage, b };
            list.push(timber(design, arm, stages));
            list.extend(pivots::of_arm(design, arm));
            if has_boards(design, b) {
                list.extend(boards(design, arm));
            }
            if if b { design.arms.straps_b } else { design.arms.straps_a } {
                list.extend(straps(design, arm));
            }
        }
    }
    list
}

/// Along an arm from its lower end to a part of its length between the pins.
fn along(design: &Design, part: f64) -> Length {
    design.arms.end + Length::m(part * design.lift.arm_length.to_m())
}

fn timber(design: &Design, arm: ArmName, stages: usize) -> Part {
    let upper_end = if arm.stage < stages { design.arms.long_end } else { design.arms.end };
    let length = design.lift.arm_length + design.arms.end + upper_end;
    let thick = arm_thickness(design);
    let size = [length, design.arms.width, thick];
    let middle = Length::from_steps(design.arms.width.steps() / 2);
    let purpose = if design.running.bush > design.running.pin { Purpose::Bushing } else { Purpose::Pivot };
    let mut holes: Vec<Hole> = arm_joints(stages, arm)
        .into_iter()
        .zip([0.0, design.lift.centre.value(), 1.0])
        .map(|(joint, part)| Hole {
            along: along(design, part),
            across: middle,
            diameter: arm_hole(design, joint),
            purpose,
            joint: Some(joint),
        })
        .collect();
    let mut housings = Vec::new();
    if has_boards(design, arm.b) {
        let screw = Small::of(design).board_screw(thick - let_in(design));
        for place in board_places(design) {
            let at = along(design, place);
            for off in board_screws(design) {
                holes.push(Hole {
                    along: at + off,
                    across: middle,
                    diameter: screw.clearance_hole(),
                    purpose: Purpose::Countersunk,
                    joint: None,
                });
            }
            housings.push(Housing {
                along: at,
                across: middle,
                length: design.arms.board_width,
                width: design.arms.board_thickness,
                depth: let_in(design),
                takes: "Cross board",
            });
        }
    }
    order(&mut holes, |one, other| one.along.cmp(&other.along));
    let z = about(arm_spread(design, arm.b).to_m() / 2.0, thick);
    let start = -design.arms.end.to_m();
    // The ends are rounded off to half the width, or to the pin where it sits nearer.
    let corners = [design.arms.end, upper_end].map(|end| end.min(middle));
    Part::new(
        if arm.b { "Arm B" } else { "Arm A" },
        Rides::Arm(arm),
        Form::Sheet,
        size,
        block(design.arms.density, size),
    )
    .times(2)
    .along_grain()
    .joined("layers glued face to face")
    .drilled(holes)
    .housed(housings)
    .rounded(corners)
    .at(vec![
        Block::square([start, start + length.to_m()], about(0.0, design.arms.width), z)
            .rounded(corners[0].min(corners[1]).to_m()),
    ])
    .glued(layers(design.arms.layers.get()))
    .hollowed(design.arms.density)
}

fn let_in(design: &Design) -> Length {
    Length::from_steps(arm_thickness(design).steps() / LET_IN)
}

fn board_places(design: &Design) -> [f64; 2] {
    let place = design.arms.board_place.value();
    [place, 1.0 - place]
}

/// The two screws an end of a board, along the arm from the board's middle.
fn board_screws(design: &Design) -> [Length; 2] {
    let off = Length::from_steps(design.arms.board_width.steps() / 4);
    [-off, off]
}

/// Two boards between the arms of one name, let into both, each with its screws.
fn boards(design: &Design, arm: ArmName) -> Vec<Part> {
    let arms = &design.arms;
    let thick = arm_thickness(design);
    let length = arm_spread(design, arm.b) - thick + let_in(design) * 2;
    let size = [length, arms.board_width, arms.board_thickness];
    let screw = Small::of(design).board_screw(thick - let_in(design));
    board_places(design)
        .into_iter()
        .flat_map(|place| {
            let rides = Rides::OnArm(arm, place);
            let middle = place * design.lift.arm_length.to_m();
            [
                Part::new("Cross board", rides, Form::Sheet, size, block(arms.density, size))
                    .along_grain()
                    .joined("glued into housings, two screws an end")
                    .at(vec![Block::square(
                        about(middle, arms.board_width),
                        about(0.0, arms.board_thickness),
                        [0.0, length.to_m() / 2.0],
                    )]),
                Part::new(
                    "Board screw",
                    rides,
                    Form::WoodScrew,
                    [screw.length, screw.diameter, screw.length - (thick - let_in(design))],
                    screw.mass(),
                )
                .times(4),
            ]
        })
        .collect()
}

/// From the arm's inner face to the bolts of a strap, and from them to the strap's end.
const STRAP_IN: Length = Length::mm(30.0);
const STRAP_END: Length = Length::mm(15.0);

/// Between the outer bolts of a strap between the arms of one name.
#[must_use]
pub fn strap_span(design: &Design, b: bool) -> Length {
    let along = design.lift.arm_length.to_m() * (1.0 - 2.0 * design.arms.board_place.value());
    let inside = (arm_spread(design, b) - arm_thickness(design) - STRAP_IN * 2).max(Length::ZERO);
    Length::m(libm::hypot(along, inside.to_m()))
}

/// The bolts of a strap, two an end.
#[must_use]
pub fn strap_bolt(design: &Design) -> BoltSize {
    Small::of(design).thin_bolt()
}

/// Two crossed straps from board to board, two bolts an end.
fn straps(design: &Design, arm: ArmName) -> Vec<Part> {
    let arms = &design.arms;
    let length = strap_span(design, arm.b) + STRAP_END * 2;
    let size = [length, arms.strap_width, arms.strap_thickness];
    let rides = Rides::OnArm(arm, 0.5);
    let bolt = strap_bolt(design);
    let mid = Length::from_steps(arms.strap_width.steps() / 2);
    let hole = |along| Hole {
        along,
        across: mid,
        diameter: bolt.clearance_hole(),
        purpose: Purpose::Clearance,
        joint: None,
    };
    let pair = arms.strap_width;
    let holes = [STRAP_END, STRAP_END + pair, length - STRAP_END - pair, length - STRAP_END].map(hole);
    let mut list = vec![
        Part::new("Strap", rides, Form::FlatBar, size, steel_flat(size))
            .times(2)
            .joined("two bolts an end through the cross boards")
            .drilled(holes.to_vec()),
    ];
    list.extend(through_bolts(
        rides,
        bolt,
        arms.board_thickness + arms.strap_thickness,
        8,
        ["Strap bolt", "Strap nut", "Strap washer"],
    ));
    list
}

/// Bolts with nut and two washers through a stack of a thickness.
pub(super) fn through_bolts(
    rides: Rides,
    bolt: BoltSize,
    stack: Length,
    count: u32,
    [name, nut, washer]: [&'static str; 3],
) -> [Part; 3] {
    let [outside, thick] = bolt.washer();
    let grip = stack + thick * 2;
    let length = bolt.length(grip);
    [
        Part::new(name, rides, Form::Bolt, [length, bolt.diameter, grip], bolt.bolt_mass(length))
            .times(count),
        Part::new(nut, rides, Form::LockNut, [bolt.nut(), bolt.diameter, bolt.flats()], bolt.nut_mass())
            .times(count),
        Part::new(washer, rides, Form::Washer, [thick, outside, bolt.diameter], bolt.washer_mass())
            .times(2 * count),
    ]
}
