//! Whether the screw holds by itself and is long enough.
use crate::catalogue::friction::SHAKEN;
use crate::catalogue::thread::holding_friction;
use crate::design::{Design, DriveKind};
use crate::quantity::{Amount, Length, Phrase};
use crate::report::finding::{Finding, Grade, Spot};
use crate::report::{Report, Station};

/// Whether the load can turn the screw back, at rest and shaken. The bearing's friction is not counted on when shaken.
pub(super) fn holding(report: &Report) -> Finding {
    let drive = &report.design.drive;
    let holds = report.stations.first().is_some_and(|station| station.torque.self_locking);
    let needed = needed_friction(&report.design);
    let friction = drive.thread_friction.value();
    let (grade, phrase) = if !holds {
        let (torque, height) = report.greatest(|station| -station.torque.lower);
        let phrase = Phrase::new("The screw does not hold by itself: let go and the deck runs down, with ")
            .with(Amount::Torque(torque))
            .and(" at the crank at deck ")
            .with(Amount::Size(height))
            .and(".");
        (Grade::Over, phrase)
    } else if SHAKEN.value() * friction < needed {
        let phrase = Phrase::new("The screw holds by itself, but shaken it may creep: thread friction ")
            .with(Amount::Number(friction))
            .and(", of which ")
            .with(Amount::Share(SHAKEN.value()))
            .and(" can be counted on, against ")
            .with(Amount::Number(needed))
            .and(" needed.");
        (Grade::Watch, phrase)
    } else {
        let phrase = Phrase::new("The screw holds by itself, also shaken: thread friction ")
            .with(Amount::Number(friction))
            .and(", needed ")
            .with(Amount::Number(needed))
            .and(".");
        (Grade::Fine, phrase)
    };
    let remedy = (grade != Grade::Fine).then(|| {
        Phrase::new("Fit a brake or a latch, or take a lead of ")
            .with(Amount::Give(lead_that_holds(&report.design)))
            .and(" or less.")
    });
    Finding { grade, ratio: needed / friction, phrase, remedy, height: None, spot: Spot::Screw, curve: None }
}

fn needed_friction(design: &Design) -> f64 {
    holding_friction(design.drive.lead, design.drive.mean, design.drive.flank)
}

/// The lead at which shaken friction just holds, m.
fn lead_that_holds(design: &Design) -> f64 {
    design.drive.lead.to_m() * SHAKEN.value() * design.drive.thread_friction.value() / needed_friction(design)
}

/// A carriage screw must reach from its bearing through the nut at both ends of the lift.
pub(super) fn length(report: &Report) -> Option<Finding> {
    let drive = &report.design.drive;
    let carriage = matches!(drive.kind, DriveKind::BaseCarriage | DriveKind::TopCarriage);
    let (reach, height) = report.greatest(|station: &Station| station.state.screw_length);
    let needed = reach + drive.nut_length.to_m();
    (carriage && drive.screw_length < Length::m(needed)).then(|| Finding {
        grade: Grade::Over,
        ratio: needed / drive.screw_length.to_m(),
        phrase: Phrase::new("The screw is ")
            .with(Amount::Size(drive.screw_length.to_m()))
            .and(" long; with the nut it must reach ")
            .with(Amount::Size(needed))
            .and(" at deck ")
            .with(Amount::Size(height))
            .and("."),
        remedy: None,
        height: Some(height),
        spot: Spot::Screw,
        curve: None,
    })
}
