//! The two wheel axles with the tubes the arms turn on.
use super::arms::{arm_spread, arm_thickness};
use super::part::{Material, Part, Rides};
use super::solid::{steel_bar, steel_ring};
use crate::catalogue::steel::Section;
use crate::design::{Design, DriveKind};
use crate::quantity::Length;

/// A ball bearing weighs so much of a solid ring of its size: common practice, no source (0.7 for deep-groove bearings).
const BEARING_FILL: f64 = 0.7;

/// Washers and clearance between the tube's ends and the arms, both sides together.
const TUBE_CLEARANCE: Length = Length::mm(6.0);

/// From the middle of the arm that turns on the axle to the middle of the wheel, across; never negative.
#[must_use]
pub fn wheel_overhang(design: &Design, deck: bool) -> Length {
    (design.running.wheel_place - Length::m(arm_spread(design, !deck).to_m() / 2.0)).max(Length::ZERO)
}

pub(super) fn parts(design: &Design) -> Vec<Part> {
    let mut list = carriage(design, Rides::BaseCarriage, arm_spread(design, true));
    list.extend(carriage(design, Rides::DeckCarriage, arm_spread(design, false)));
    list
}

/// Axle, wheels and, for a carriage drive, a tube between the arms: the driven axle needs it, the other is made alike.
fn carriage(design: &Design, rides: Rides, span: Length) -> Vec<Part> {
    let (running, drive) = (&design.running, &design.drive);
    let axle = running.wheel_place * 2 + running.wheel_width + running.axle;
    let mut list = vec![
        Part {
            name: "Wheel axle",
            rides,
            count: 1,
            material: Material::Steel,
            size: [axle, running.axle, running.axle],
            layers: 1,
            mass: steel_bar(Section::RoundBar { diameter: running.axle }, axle),
        },
        Part {
            name: "Wheel",
            rides,
            count: 2,
            material: Material::Bought,
            size: [running.wheel, running.wheel, running.wheel_width],
            layers: 1,
            mass: BEARING_FILL * steel_ring(running.wheel_width, running.wheel, running.axle),
        },
    ];
    if matches!(drive.kind, DriveKind::BaseCarriage | DriveKind::TopCarriage) {
        list.push(cross_bar(design, rides, span));
    }
    list
}

/// The tube between two arms of one name that carries an end of the screw at its middle.
pub(super) fn cross_bar(design: &Design, rides: Rides, span: Length) -> Part {
    let drive = &design.drive;
    let length = (span - arm_thickness(design) - TUBE_CLEARANCE).max(Length::ZERO);
    Part {
        name: "Cross-bar",
        rides,
        count: 1,
        material: Material::Steel,
        size: [length, drive.cross_bar, drive.cross_wall],
        layers: 1,
        mass: steel_bar(Section::SquareTube { side: drive.cross_bar, wall: drive.cross_wall }, length),
    }
}
