//! The two wheel axles with the tubes the arms turn on, their wheels and what keeps those in place.
use super::arms::{arm_spread, arm_thickness};
use super::hole::{Contact, Hole, Joint, Purpose};
use super::part::{Form, Part, Rides};
use super::place::{Block, about};
use super::solid::{steel_bar, steel_flat, steel_ring};
use crate::catalogue::steel::Section;
use crate::design::{Design, DriveKind};
use crate::quantity::Length;

/// A ball bearing weighs so much of a solid ring of its size: common practice, no source (0.7 for deep-groove bearings).
const BEARING_FILL: f64 = 0.7;

/// Washers and clearance between the tube's ends and the arms, both sides together.
const TUBE_CLEARANCE: Length = Length::mm(6.0);

/// A washer that runs along the rail's inner side beside the wheel: its thickness, and how far it stands out below the wheel.
const FLANGE: Length = Length::mm(3.0);
const FLANGE_LIP: Length = Length::mm(7.0);

/// Play of a wheel on its axle between flange and collar.
const WHEEL_PLAY: Length = Length::mm(0.5);

/// A shaft collar is so much wider across and so long, in axle diameters (rounded proportions of DIN 705, from memory).
const COLLAR_OUTSIDE: f64 = 1.6;
const COLLAR_WIDTH: f64 = 0.7;

/// Length of a drilled steel plug in the tube, in sides of the tube.
const PLUG: f64 = 0.2;

/// From the screw's hole in the tube to the end of an axle's half.
const STUB_BACK: Length = Length::mm(10.0);

/// From the middle of the arm that turns on the axle to the middle of the wheel, across; never negative.
#[must_use]
pub fn wheel_overhang(design: &Design, deck: bool) -> Length {
    (design.running.wheel_place - Length::m(arm_spread(design, !deck).to_m() / 2.0)).max(Length::ZERO)
}

/// How far the driven axle's halves stand out of the tube that the screw pushes, to the middle of the arm, across; none where the screw
/// pushes no axle.
#[must_use]
pub fn stub(design: &Design, deck: bool) -> Option<Length> {
    let spread = arm_spread(design, !deck);
    is_driven(design, deck)
        .then(|| Length::from_steps((spread - tube_length(design, spread)).steps() / 2).max(Length::ZERO))
}

/// Whether the screw pushes the axle of the base wheels, or of the deck wheels.
fn is_driven(design: &Design, deck: bool) -> bool {
    has_tube(design) && deck == (design.drive.kind == DriveKind::TopCarriage)
}

/// Thickness of the flange washer that guides the base or the deck wheels along their rails: what there is room for between the outer arm
/// and the wheel, a usual washer at most; zero where there is none.
#[must_use]
pub fn flange_thickness(design: &Design, deck: bool) -> Length {
    let wanted = if deck { design.sway.guide_deck } else { design.sway.guide_base };
    if !wanted {
        return Length::ZERO;
    }
    let outer_face = Length::from_steps(design.frames.spread.steps() / 2 + arm_thickness(design).steps() / 2);
    let room =
        design.running.wheel_place - Length::from_steps(design.running.wheel_width.steps() / 2) - outer_face;
    (room - WHEEL_PLAY).max(Length::ZERO).min(FLANGE)
}

/// Play beside a wheel.
#[must_use]
pub const fn bearing_gap() -> Length {
    WHEEL_PLAY
}

/// Width of the collar outside a wheel.
#[must_use]
pub fn collar_width(design: &Design) -> Length {
    Length::m(COLLAR_WIDTH * design.running.axle.to_m())
}

/// Whether the wheel axles carry a tube between the arms.
#[must_use]
pub const fn has_tube(design: &Design) -> bool {
    matches!(design.drive.kind, DriveKind::BaseCarriage | DriveKind::TopCarriage)
}

/// Length of the tube between two arms that stand so far apart, middle to middle.
#[must_use]
pub fn tube_length(design: &Design, spread: Length) -> Length {
    (spread - arm_thickness(design) - TUBE_CLEARANCE).max(Length::ZERO)
}

pub(super) fn parts(design: &Design) -> Vec<Part> {
    let mut list = carriage(design, false);
    list.extend(carriage(design, true));
    list
}

/// Axle, wheels and, for a carriage drive, a tube between the arms: the driven axle needs it, the other is made alike.
fn carriage(design: &Design, deck: bool) -> Vec<Part> {
    let running = &design.running;
    let rides = if deck { Rides::DeckCarriage } else { Rides::BaseCarriage };
    let (joint, rail) =
        if deck { (Joint::DeckAxle, Contact::DeckRail) } else { (Joint::BaseAxle, Contact::BaseRail) };
    let collar = collar_width(design);
    let axle = (running.wheel_place + WHEEL_PLAY + collar) * 2 + running.wheel_width;
    let outside = Length::m(COLLAR_OUTSIDE * running.axle.to_m());
    let wheel = about(running.wheel_place.to_m(), running.wheel_width);
    let flange = flange_thickness(design, deck);
    let round = |diameter: Length, z| vec![Block::round([0.0, 0.0], diameter.to_m() / 2.0, z)];
    let driven = is_driven(design, deck);
    let mut list = vec![
        axle_part(design, rides, axle, driven).touching(Contact::Pivot(joint)),
        Part::new(
            "Wheel",
            rides,
            Form::Bearing,
            [running.wheel_width, running.wheel, running.axle],
            BEARING_FILL * steel_ring(running.wheel_width, running.wheel, running.axle),
        )
        .times(2)
        .joined("on the axle between flange washer and collar")
        .at(round(running.wheel, wheel))
        .touching(rail)
        .touching(Contact::Pivot(joint)),
        Part::new(
            "Collar",
            rides,
            Form::Bought,
            [collar, outside, running.axle],
            steel_ring(collar, outside, running.axle),
        )
        .times(2)
        .joined("grub screw on the axle")
        .at(round(outside, [wheel[1], wheel[1] + (WHEEL_PLAY + collar).to_m()])),
    ];
    if flange > Length::ZERO {
        let across = running.wheel + FLANGE_LIP * 2;
        list.push(
            Part::new(
                "Flange washer",
                rides,
                Form::Washer,
                [flange, across, running.axle],
                steel_ring(flange, across, running.axle),
            )
            .times(2)
            .joined("beside the wheel, along the rail's inner side")
            .at(round(across, [wheel[0] - flange.to_m(), wheel[0]]))
            .touching(rail)
            .touching(Contact::Pivot(joint)),
        );
    }
    if has_tube(design) {
        let span = arm_spread(design, !deck);
        list.push(cross_bar(design, rides, span, driven).touching(Contact::Pivot(joint)));
        list.push(plug(design, rides).times(if driven { 4 } else { 2 }));
    }
    list
}

/// The axle: one bar right through, or, where the screw passes through the middle of the tube, two halves that end before it.
fn axle_part(design: &Design, rides: Rides, length: Length, driven: bool) -> Part {
    let diameter = design.running.axle;
    let half = Length::from_steps(length.steps() / 2);
    let inner = if driven { screw_hole(design) + STUB_BACK * 2 } else { Length::ZERO };
    let inner = Length::from_steps(inner.steps() / 2).min(half);
    let (name, count, each, how) = if driven {
        (
            "Half axle",
            2,
            half - inner,
            "in two plugs of the tube and pinned, clear of the screw, collar outside",
        )
    } else {
        ("Wheel axle", 1, length, "through the tube's plugs, collars at both ends")
    };
    let mass = steel_bar(Section::RoundBar { diameter }, each);
    Part::new(name, rides, Form::RoundBar, [each, diameter, diameter], mass)
        .times(count)
        .joined(how)
        .at(vec![Block::round([0.0, 0.0], diameter.to_m() / 2.0, [inner.to_m(), half.to_m()])])
}

/// The hole through a tube that the screw passes freely.
pub(super) fn screw_hole(design: &Design) -> Length {
    design.drive.major + Length::m(design.drive.major.to_m() / 10.0)
}

/// The tube between two arms of one name; one that carries an end of the screw has a hole for it at its middle.
pub(super) fn cross_bar(design: &Design, rides: Rides, span: Length, drilled: bool) -> Part {
    let drive = &design.drive;
    let length = tube_length(design, span);
    let half = length.to_m() / 2.0;
    let holes = if drilled {
        vec![Hole {
            along: Length::m(half),
            across: Length::from_steps(drive.cross_bar.steps() / 2),
            diameter: screw_hole(design),
            purpose: Purpose::Passage,
            joint: None,
        }]
    } else {
        Vec::new()
    };
    let middle = match rides {
        Rides::OnArm(_, part) => part * design.lift.arm_length.to_m(),
        _ => 0.0,
    };
    Part::new(
        "Cross-bar",
        rides,
        Form::SquareTube,
        [length, drive.cross_bar, drive.cross_wall],
        steel_bar(Section::SquareTube { side: drive.cross_bar, wall: drive.cross_wall }, length),
    )
    .joined("on the axle between the arms, a drilled plug in each end")
    .drilled(holes)
    .at(vec![Block::square(about(middle, drive.cross_bar), about(0.0, drive.cross_bar), [0.0, half])])
    .touching(Contact::Screw)
}

/// The steel plugs that hold the axle in the middle of the tube.
pub(super) fn plug(design: &Design, rides: Rides) -> Part {
    let drive = &design.drive;
    let inside = (drive.cross_bar - drive.cross_wall * 2).max(Length::ZERO);
    let long = Length::m(PLUG * drive.cross_bar.to_m());
    let mid = Length::from_steps(inside.steps() / 2);
    let bar = steel_bar(Section::RoundBar { diameter: design.running.axle }, long);
    let holes = vec![Hole {
        along: mid,
        across: mid,
        diameter: design.running.axle,
        purpose: Purpose::Pivot,
        joint: None,
    }];
    Part::new(
        "Tube plug",
        rides,
        Form::FlatBar,
        [inside, inside, long],
        (steel_flat([inside, inside, long]) - bar).max(0.0),
    )
    .times(2)
    .joined("driven into the tube and pinned")
    .drilled(holes)
}
