//! Screw, nut, the tube that holds the thrust bearing, and the crank.
use super::arms::arm_spread;
use super::carriages::cross_bar;
use super::part::{ArmName, Material, Part, Rides};
use super::solid::{bronze_ring, steel_bar, steel_flat};
use crate::catalogue::steel::Section;
use crate::design::{BearingEnd, Design, DriveKind, StrutEnd};
use crate::quantity::Length;

/// A nut is about 1.9 thread diameters across: common practice, no source.
const NUT_ACROSS: f64 = 1.9;

/// Flat bar of the crank's arm, and mass of its handle, kg: common practice, no source.
const CRANK_FLAT: [Length; 2] = [Length::mm(25.0), Length::mm(10.0)];
const HANDLE_MASS: f64 = 0.3;

/// The tube that holds the bearing stands out of its seats by this much at both ends together.
const SEAT_LAP: Length = Length::mm(20.0);

/// A bar across the table that carries one end of the screw at its middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScrewBar {
    /// Its section.
    pub section: Section,
    /// Its free length.
    pub span: Length,
    /// Whether it is seated in a frame; else it turns with two arms.
    pub on_frame: bool,
}

/// The bars at both ends of the screw: of a screw along a rail the one that holds the thrust bearing first.
#[must_use]
pub fn screw_bars(design: &Design) -> [ScrewBar; 2] {
    let drive = &design.drive;
    let on_arms = |b: bool| ScrewBar {
        section: Section::SquareTube { side: drive.cross_bar, wall: drive.cross_wall },
        span: arm_spread(design, b),
        on_frame: false,
    };
    let on_frame = ScrewBar {
        section: Section::SquareTube { side: drive.anchor_bar, wall: drive.anchor_wall },
        span: drive.anchor_span,
        on_frame: true,
    };
    let at_strut_end = |end: StrutEnd| if end.stage().is_some() { on_arms(end.is_b()) } else { on_frame };
    match drive.kind {
        DriveKind::BaseCarriage => [on_frame, on_arms(true)],
        DriveKind::TopCarriage => [on_frame, on_arms(false)],
        DriveKind::SidePivots => [on_arms(true), on_arms(false)],
        DriveKind::Strut => [at_strut_end(drive.foot), at_strut_end(drive.head)],
    }
}

pub(super) fn parts(design: &Design) -> Vec<Part> {
    match design.drive.kind {
        DriveKind::BaseCarriage => carriage_drive(design, Rides::Base, Rides::BaseCarriage),
        DriveKind::TopCarriage => carriage_drive(design, Rides::Deck, Rides::DeckCarriage),
        DriveKind::SidePivots => {
            let stage = usize::try_from(design.drive.level.get()).unwrap_or(1);
            between(
                design,
                Rides::OnArm(ArmName { stage, b: true }, 1.0),
                Rides::OnArm(ArmName { stage, b: false }, 1.0),
            )
        }
        DriveKind::Strut => {
            let drive = &design.drive;
            between(
                design,
                strut_end(drive.foot, drive.foot_x, drive.foot_part.value()),
                strut_end(drive.head, drive.head_x, drive.head_part.value()),
            )
        }
    }
}

fn strut_end(end: StrutEnd, x: Length, part: f64) -> Rides {
    match end {
        StrutEnd::Base => Rides::Base(x.to_m()),
        StrutEnd::Deck => Rides::Deck(x.to_m()),
        arm => {
            let stage = usize::try_from(arm.stage().unwrap_or(1)).unwrap_or(1);
            Rides::OnArm(ArmName { stage, b: arm.is_b() }, part)
        }
    }
}

/// The screw rides with its bearing, the nut with the carriage.
fn carriage_drive(design: &Design, frame: fn(f64) -> Rides, nut_rides: Rides) -> Vec<Part> {
    let drive = &design.drive;
    let inwards = if drive.bearing_end == BearingEnd::Fixed { 1.0 } else { -1.0 };
    let bearing = drive.bearing_place.to_m();
    vec![
        screw(design, frame(bearing + inwards * drive.screw_length.to_m() / 2.0), drive.screw_length),
        nut(design, nut_rides),
        anchor_tube(design, frame(bearing)),
        crank(design, frame(bearing - inwards * 1.5 * drive.anchor_bar.to_m())),
    ]
}

/// A screw that hangs between two moving points: half of it rides with each, on a cross-bar where that is an arm and on
/// a bearing tube where it is a frame.
fn between(design: &Design, first: Rides, second: Rides) -> Vec<Part> {
    let half = Length::from_steps(design.drive.screw_length.steps() / 2);
    let mut list = vec![
        screw(design, first, half),
        screw(design, second, half),
        nut(design, second),
        crank(design, first),
    ];
    list.extend([first, second].map(|rides| match rides {
        Rides::OnArm(arm, _) => cross_bar(design, rides, arm_spread(design, arm.b)),
        _ => anchor_tube(design, rides),
    }));
    list
}

/// The tube across a frame that holds an end of the screw.
fn anchor_tube(design: &Design, rides: Rides) -> Part {
    let drive = &design.drive;
    let length = drive.anchor_span + SEAT_LAP;
    Part {
        name: "Bearing tube",
        rides,
        count: 1,
        material: Material::Steel,
        size: [length, drive.anchor_bar, drive.anchor_wall],
        layers: 1,
        mass: steel_bar(Section::SquareTube { side: drive.anchor_bar, wall: drive.anchor_wall }, length),
    }
}

fn screw(design: &Design, rides: Rides, length: Length) -> Part {
    let drive = &design.drive;
    Part {
        name: "Screw",
        rides,
        count: 1,
        material: Material::Steel,
        size: [length, drive.major, drive.major],
        layers: 1,
        mass: steel_bar(Section::RoundBar { diameter: drive.mean }, length),
    }
}

fn nut(design: &Design, rides: Rides) -> Part {
    let drive = &design.drive;
    let across = Length::m(NUT_ACROSS * drive.major.to_m());
    Part {
        name: "Nut",
        rides,
        count: 1,
        material: Material::Bronze,
        size: [drive.nut_length, across, across],
        layers: 1,
        mass: bronze_ring(drive.nut_length, across, drive.major),
    }
}

fn crank(design: &Design, rides: Rides) -> Part {
    let size = [design.drive.crank, CRANK_FLAT[0], CRANK_FLAT[1]];
    Part {
        name: "Crank",
        rides,
        count: 1,
        material: Material::Bought,
        size,
        layers: 1,
        mass: steel_flat(size) + HANDLE_MASS,
    }
}
