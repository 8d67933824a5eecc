//! Inputs that must go together, each a rule in words.
use crate::design::{Design, DriveKind, StrutEnd};
use crate::parts::{arm_offset, arm_spread, arm_thickness, axle_bush};
use crate::quantity::{Amount, Length, Phrase};

/// Why a design cannot stand: the rule it breaks.
#[derive(Clone, Debug, PartialEq)]
pub struct Obstacle {
    /// The input to blame first, by its key.
    pub key: &'static str,
    /// The rule with its figures.
    pub phrase: Phrase,
}

impl Obstacle {
    pub(super) fn new(key: &'static str, phrase: Phrase) -> Self {
        Self { key, phrase }
    }
}

/// A size that is enough as it is shown.
pub(super) fn least(length: Length) -> Amount {
    Amount::AtLeast(length.to_m())
}

/// A size that is not too much as it is shown.
pub(super) fn most(length: Length) -> Amount {
    Amount::AtMost(length.to_m())
}

/// The first rule between two inputs that is broken; none when all go together.
pub(super) fn broken(design: &Design) -> Option<Obstacle> {
    heights(design)
        .or_else(|| holes(design))
        .or_else(|| across(design))
        .or_else(|| thread(design))
        .or_else(|| drive(design))
        .or_else(|| casters(design))
}

fn heights(design: &Design) -> Option<Obstacle> {
    let lift = &design.lift;
    (lift.highest <= lift.lowest).then(|| {
        Obstacle::new(
            "hi",
            Phrase::new("The highest deck must stand above the lowest, ").with(least(lift.lowest)).and("."),
        )
    })
}

fn holes(design: &Design) -> Option<Obstacle> {
    let (arms, running) = (&design.arms, &design.running);
    if running.bush < running.pin {
        let phrase = Phrase::new("A bushing is at least as wide as the bolt in it, ")
            .with(least(running.pin))
            .and(".");
        return Some(Obstacle::new("bo", phrase));
    }
    let on_axle = axle_bush(design);
    for (input, which, hole) in
        [("bo", "a bushing", running.bush), ("xd", "the bushing on a wheel axle", on_axle)]
    {
        if hole >= arms.width {
            let phrase = Phrase::new(format!("The hole for {which}, "))
                .with(Amount::Size(hole.to_m()))
                .and(" wide, must leave wood in an arm ")
                .with(most(arms.width))
                .and(" wide.");
            return Some(Obstacle::new(input, phrase));
        }
    }
    let widest = running.bush.max(on_axle);
    if arms.end * 2 <= widest {
        let phrase = Phrase::new("The arm must go on past its widest hole, ")
            .with(least(widest))
            .and(": by more than half of that.");
        return Some(Obstacle::new("ae", phrase));
    }
    if arms.end + arms.end >= design.lift.arm_length {
        return Some(Obstacle::new(
            "ae",
            Phrase::new("The ends past the pins must be shorter than half the arm."),
        ));
    }
    (running.axle >= running.wheel).then(|| {
        Obstacle::new(
            "xd",
            Phrase::new("The axle must be thinner than its wheel, ").with(most(running.wheel)).and("."),
        )
    })
}

fn across(design: &Design) -> Option<Obstacle> {
    let free = arm_spread(design, true) - arm_thickness(design);
    (free <= Length::ZERO).then(|| {
        let taken = arm_offset(design) * 2 + arm_thickness(design);
        Obstacle::new(
            "fb",
            Phrase::new("Two pairs of arms need more than ")
                .with(least(taken))
                .and(" from outer arm to outer arm."),
        )
    })
}

fn thread(design: &Design) -> Option<Obstacle> {
    let drive = &design.drive;
    if drive.root >= drive.mean || drive.mean >= drive.major {
        return Some(Obstacle::new(
            "sm",
            Phrase::new("A thread's mean diameter lies between its root, ")
                .with(Amount::GiveAtLeast(drive.root.to_m()))
                .and(", and its outside, ")
                .with(Amount::GiveAtMost(drive.major.to_m()))
                .and("."),
        ));
    }
    (drive.lead < drive.pitch).then(|| {
        Obstacle::new(
            "sl",
            Phrase::new("A turn moves the nut by at least one pitch, ")
                .with(Amount::GiveAtLeast(drive.pitch.to_m()))
                .and("."),
        )
    })
}

fn drive(design: &Design) -> Option<Obstacle> {
    let (drive, stages) = (&design.drive, design.lift.stages.get());
    match drive.kind {
        DriveKind::BaseCarriage | DriveKind::TopCarriage => None,
        DriveKind::SidePivots if stages < 2 => Some(Obstacle::new(
            "dr",
            Phrase::new("A screw between the side pivots needs two stages or more."),
        )),
        DriveKind::SidePivots => (drive.level.get() >= stages).then(|| {
            Obstacle::new(
                "dv",
                Phrase::new(format!(
                    "With {stages} stages the side pivots stand above stage 1 to {}.",
                    stages - 1
                )),
            )
        }),
        DriveKind::Strut => strut(design),
    }
}

fn strut(design: &Design) -> Option<Obstacle> {
    let (drive, stages) = (&design.drive, design.lift.stages.get());
    let beyond = |end: StrutEnd| end.stage().is_some_and(|stage| stage > stages);
    let none = |key| {
        Obstacle::new(key, Phrase::new(format!("There is no such arm: the table has {stages} stages.")))
    };
    if beyond(drive.foot) {
        Some(none("pa"))
    } else if beyond(drive.head) {
        Some(none("qa"))
    } else {
        (drive.foot == drive.head).then(|| {
            Obstacle::new("qa", Phrase::new("The strut must join two different parts of the table."))
        })
    }
}

/// Swivelled to their worst, by their trail towards the middle, the wheels must still stand apart: else the table stands on nothing.
fn casters(design: &Design) -> Option<Obstacle> {
    let running = &design.running;
    let trail = running.caster_trail;
    if running.caster_left >= running.caster_right {
        let phrase = Phrase::new("The right casters must stand to the right of the left ones, ")
            .with(least(running.caster_left))
            .and(" from the pivots.");
        return Some(Obstacle::new("cy", phrase));
    }
    if running.caster_left + trail * 2 >= running.caster_right {
        let phrase = Phrase::new(
            "Swivelled towards each other the wheels of the left and right casters must still stand apart: the right casters more than ",
        )
        .with(least(running.caster_left + trail * 2))
        .and(" from the pivots, twice the caster trail beyond the left ones.");
        return Some(Obstacle::new("cy", phrase));
    }
    (running.caster_across <= trail).then(|| {
        let phrase = Phrase::new(
            "Swivelled inwards the casters' wheels must still stand on their own side of the table: the casters farther off the middle than \
             their trail, ",
        )
        .with(least(trail))
        .and(".");
        Obstacle::new("cz", phrase)
    })
}
