//! Screw, nut, the tube that holds the thrust bearing, and the crank.
use super::arms::{arm_spread, through_bolts};
use super::carriages::{cross_bar, plug, screw_hole};
use super::hole::{Contact, Hole, Purpose};
use super::part::{ArmName, Form, Part, Rides};
use super::place::{Block, about};
use super::small::Small;
use super::solid::{bronze_ring, steel_bar, steel_flat, steel_ring};
use crate::catalogue::bearing::{BEARINGS, Duty};
use crate::catalogue::steel::Section;
use crate::design::{BearingEnd, Design, DriveKind, StrutEnd};
use crate::quantity::Length;

/// A nut is about 1.9 thread diameters across: common practice, no source.
const NUT_ACROSS: f64 = 1.9;

/// Flat bar of the crank's arm, and mass of its handle, kg: common practice, no source.
const CRANK_FLAT: [Length; 2] = [Length::mm(25.0), Length::mm(10.0)];
const HANDLE_MASS: f64 = 0.3;

/// Thickness of the handle, as a part of the crank's radius: common practice, no source.
pub const HANDLE_THICK: f64 = 0.2;

/// The tube that holds the bearing stands out of its seats by this much at both ends together.
const SEAT_LAP: Length = Length::mm(20.0);

/// The crank turns this far outside the bearing, in sides of its tube.
const CRANK_OUT: f64 = 1.5;

/// Thickness of the nut's flange, and of a plain thrust washer: common practice, no source.
const FLANGE: Length = Length::mm(8.0);
const PLAIN_WASHER: Length = Length::mm(3.0);

/// A shaft collar is so much wider across and so long, in screw diameters (rounded proportions of DIN 705, from memory).
const COLLAR_OUTSIDE: f64 = 1.6;
const COLLAR_WIDTH: f64 = 0.7;

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

/// How far a crank of a radius reaches from its axis, handle and all, m.
#[must_use]
pub fn crank_reach(radius: Length) -> f64 {
    radius.to_m() * (1.0 + HANDLE_THICK / 2.0)
}

/// How far outside its bearing the crank turns, m.
#[must_use]
pub fn crank_out(design: &Design) -> f64 {
    let [bar, _] = screw_bars(design);
    let side = if bar.on_frame { design.drive.anchor_bar } else { design.drive.cross_bar };
    (CRANK_OUT * side.to_m()).max(2.0 * design.drive.major.to_m())
}

/// The longest crank whose handle clears the floor, in whole millimetres, where the screw lies along the base; any other screw is taken to
/// lie as low, on the safe side.
#[must_use]
pub fn crank_room(design: &Design) -> Length {
    let drive = &design.drive;
    let lower = match drive.kind {
        DriveKind::BaseCarriage => design.lift.base_axle,
        DriveKind::Strut if drive.foot == StrutEnd::Base => drive.foot_y.min(Length::ZERO),
        _ => Length::ZERO,
    };
    crank_under((design.lift.pin_line + lower).to_m())
}

/// The longest crank whose handle clears the floor with its axis so high above it, m, in whole millimetres.
#[must_use]
pub fn crank_under(axis: f64) -> Length {
    Length::mm((axis * 1e3 / (1.0 + HANDLE_THICK / 2.0)).floor().max(0.0))
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
    let axle =
        if drive.kind == DriveKind::TopCarriage { design.lift.deck_axle } else { design.lift.base_axle };
    let axle = axle.to_m();
    let far = bearing + inwards * drive.screw_length.to_m();
    let crank_x = bearing - inwards * crank_out(design);
    let reach = drive.crank.to_m();
    let mut list = vec![
        screw(design, frame(bearing.midpoint(far))).at(vec![Block::square(
            [bearing.min(far), bearing.max(far)],
            about(axle, drive.major),
            [0.0, drive.major.to_m() / 2.0],
        )]),
        anchor_tube(design, frame(bearing)).at(vec![Block::square(
            about(bearing, drive.anchor_bar),
            about(axle, drive.anchor_bar),
            [0.0, tube_length(design).to_m() / 2.0],
        )]),
        crank(design, frame(crank_x)).at(vec![Block::square(
            about(crank_x, CRANK_FLAT[0]),
            [axle - reach, axle + reach],
            [0.0, reach],
        )]),
    ];
    list.extend(nut(design, nut_rides));
    list.extend(thrust(design, frame(bearing)));
    list
}

/// A screw that hangs between two moving points: half of its weight rides with each, on a cross-bar where that is an arm and on
/// a bearing tube where it is a frame.
fn between(design: &Design, first: Rides, second: Rides) -> Vec<Part> {
    let mut list = vec![screw(design, first).and_on(second), crank(design, first)];
    list.extend(nut(design, second));
    list.extend(thrust(design, first));
    for rides in [first, second] {
        match rides {
            Rides::OnArm(arm, _) => {
                list.push(
                    cross_bar(design, rides, arm_spread(design, arm.b), true)
                        .joined("between the arms, on pins of your own through arms and plugs"),
                );
                // What pin goes through them is the builder's.
                list.push(
                    plug(design, rides)
                        .joined("driven into the tube and pinned, bored for a pin of your own")
                        .drilled(Vec::new()),
                );
            }
            _ => list.push(anchor_tube(design, rides)),
        }
    }
    list
}

fn tube_length(design: &Design) -> Length {
    design.drive.anchor_span + SEAT_LAP
}

/// The tube across a frame that holds an end of the screw.
fn anchor_tube(design: &Design, rides: Rides) -> Part {
    let drive = &design.drive;
    let length = tube_length(design);
    let hole = Hole {
        along: Length::from_steps(length.steps() / 2),
        across: Length::from_steps(drive.anchor_bar.steps() / 2),
        diameter: screw_hole(design),
        purpose: Purpose::Passage,
        joint: None,
    };
    Part::new(
        "Bearing tube",
        rides,
        Form::SquareTube,
        [length, drive.anchor_bar, drive.anchor_wall],
        steel_bar(Section::SquareTube { side: drive.anchor_bar, wall: drive.anchor_wall }, length),
    )
    .joined("bears with both ends on wood behind it")
    .drilled(vec![hole])
}

fn screw(design: &Design, rides: Rides) -> Part {
    let drive = &design.drive;
    let length = drive.screw_length;
    Part::new(
        "Screw",
        rides,
        Form::ThreadedBar,
        [length, drive.major, drive.lead],
        steel_bar(Section::RoundBar { diameter: drive.mean }, length),
    )
    .joined("turns in thrust bearing and nut")
    .touching(Contact::Screw)
}

/// The nut and the bolts of its flange.
fn nut(design: &Design, rides: Rides) -> Vec<Part> {
    let drive = &design.drive;
    let across = Length::m(NUT_ACROSS * drive.major.to_m());
    let body = Part::new(
        "Nut",
        rides,
        Form::Bought,
        [drive.nut_length, across, drive.major],
        bronze_ring(drive.nut_length, across, drive.major),
    )
    .joined("four bolts through its flange")
    .touching(Contact::Screw);
    let stack = drive.cross_wall.min(Length::mm(6.0)) + FLANGE;
    let mut list = vec![body];
    list.extend(through_bolts(
        rides,
        Small::of(design).thin_bolt(),
        stack,
        4,
        ["Nut flange bolt", "Nut flange lock nut", "Nut flange washer"],
    ));
    list
}

/// The thrust bearing of the screw's mean collar diameter, and the collar that takes the small force the other way.
fn thrust(design: &Design, rides: Rides) -> [Part; 2] {
    let drive = &design.drive;
    // A plain thrust washer or a bearing of no table: as wide as its mean diameter says.
    let [width, outside, bore] =
        BEARINGS.iter().find(|row| row.duty == Duty::Thrust && row.mean() == drive.collar).map_or_else(
            || [PLAIN_WASHER, drive.collar * 2 - drive.major, drive.major],
            |row| [row.width, row.outside, row.bore],
        );
    let collar = Length::m(COLLAR_WIDTH * drive.major.to_m());
    let round = Length::m(COLLAR_OUTSIDE * drive.major.to_m());
    [
        Part::new(
            "Thrust bearing",
            rides,
            Form::Bearing,
            [width, outside, bore],
            steel_ring(width, outside, bore),
        )
        .joined("between the screw's shoulder and its seat"),
        Part::new(
            "Screw collar",
            rides,
            Form::Bought,
            [collar, round, drive.major],
            steel_ring(collar, round, drive.major),
        )
        .joined("grub screw, keeps the screw from moving the other way"),
    ]
}

fn crank(design: &Design, rides: Rides) -> Part {
    let size = [design.drive.crank, CRANK_FLAT[0], CRANK_FLAT[1]];
    Part::new("Crank", rides, Form::Bought, size, steel_flat(size) + HANDLE_MASS)
        .joined("on the screw's end, pinned")
        .touching(Contact::Screw)
}
