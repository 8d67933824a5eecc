//! Arms, their bushings and bolts, cross boards and straps.
use super::part::{ArmName, Material, Part, Rides};
use super::solid::{block, bolt, bronze_ring, steel_flat};
use crate::design::Design;
use crate::quantity::Length;

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

fn layers(count: i64) -> u32 {
    u32::try_from(count).unwrap_or(1)
}

pub(super) fn parts(design: &Design) -> Vec<Part> {
    let stages = usize::try_from(design.lift.stages.get()).unwrap_or(1);
    let mut list = Vec::new();
    for stage in 1..=stages {
        for b in [false, true] {
            let arm = ArmName { stage, b };
            list.push(timber(design, arm, stage < stages));
            list.push(bushings(design, arm));
            list.push(bolts(design, arm));
            if if b { design.arms.boards_b } else { design.arms.boards_a } {
                list.extend(boards(design, arm));
            }
            if if b { design.arms.straps_b } else { design.arms.straps_a } {
                list.push(straps(design, arm));
            }
        }
    }
    list
}

fn timber(design: &Design, arm: ArmName, below_another: bool) -> Part {
    let upper_end = if below_another { design.arms.long_end } else { design.arms.end };
    let length = design.lift.arm_length + design.arms.end + upper_end;
    let thick = arm_thickness(design);
    let size = [length, design.arms.width, thick];
    Part {
        name: if arm.b { "Arm B" } else { "Arm A" },
        rides: Rides::Arm(arm),
        count: 2,
        material: Material::Sheet,
        size,
        layers: layers(design.arms.layers.get()),
        mass: block(design.arms.density, size),
    }
}

/// Three bushings an arm: at both ends and in the middle.
fn bushings(design: &Design, arm: ArmName) -> Part {
    let thick = arm_thickness(design);
    Part {
        name: "Bushing",
        rides: Rides::Arm(arm),
        count: 6,
        material: Material::Bronze,
        size: [thick, design.running.bush, design.running.pin],
        layers: 1,
        mass: bronze_ring(thick, design.running.bush, design.running.pin),
    }
}

/// The pivot bolts that belong to an arm: its own end pivot and, on A, the centre pivot.
fn bolts(design: &Design, arm: ArmName) -> Part {
    let grip = arm_thickness(design) + arm_offset(design);
    Part {
        name: "Pivot bolt",
        rides: Rides::Arm(arm),
        count: if arm.b { 2 } else { 4 },
        material: Material::Steel,
        size: [grip, design.running.pin, design.running.pin],
        layers: 1,
        mass: bolt(design.running.pin, grip),
    }
}

/// Two boards between the arms of one name, let in by a sixth of the arm's thickness at both ends.
fn boards(design: &Design, arm: ArmName) -> [Part; 2] {
    let thick = arm_thickness(design).to_m();
    let length = Length::m(arm_spread(design, arm.b).to_m() - thick + thick / 3.0);
    let size = [length, design.arms.board_width, design.arms.board_thickness];
    let place = design.arms.board_place.value();
    [place, 1.0 - place].map(|part| Part {
        name: "Cross board",
        rides: Rides::OnArm(arm, part),
        count: 1,
        material: Material::Sheet,
        size,
        layers: 1,
        mass: block(design.arms.density, size),
    })
}

/// Two crossed straps from board to board.
fn straps(design: &Design, arm: ArmName) -> Part {
    let along = design.lift.arm_length.to_m() * (1.0 - 2.0 * design.arms.board_place.value());
    let length = Length::m(libm::hypot(along, arm_spread(design, arm.b).to_m()));
    let size = [length, design.arms.strap_width, design.arms.strap_thickness];
    Part {
        name: "Strap",
        rides: Rides::OnArm(arm, 0.5),
        count: 2,
        material: Material::Steel,
        size,
        layers: 1,
        mass: steel_flat(size),
    }
}
