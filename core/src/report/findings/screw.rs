//! Whether the screw holds by itself and is long enough.
use super::strength::spot;
use crate::checks::Holding;
use crate::design::{Design, DriveKind};
use crate::quantity::{Amount, Kind, Length, Phrase};
use crate::report::finding::{Finding, Grade, Spot};
use crate::report::{Report, Station};

/// Whether the load can turn the screw back, at rest and shaken.
pub(super) fn holding(report: &Report) -> Option<Finding> {
    let check = report.check("screw-holding")?;
    let Holding { needed, friction, shaken } = Holding::of(&report.design);
    let counted = |words| {
        Phrase::new(words)
            .and(": ")
            .with(Amount::Number(shaken))
            .and(" of its thread friction of ")
            .with(Amount::Number(friction))
            .and(" is counted on then, ")
            .with(Amount::Number(needed))
            .and(" is needed.")
    };
    let grade = Grade::of(check.verdict);
    let phrase = match grade {
        Grade::Over => {
            let (torque, height) = report.greatest(|station| -station.torque.lower);
            Phrase::new("The screw does not hold by itself: let go and the deck runs down, with ")
                .with(Amount::Torque(torque))
                .and(" at the crank at deck ")
                .with(Amount::Size(height))
                .and(".")
        }
        Grade::Watch => counted("The screw holds by itself, but shaken it may creep"),
        Grade::Fine => counted("The screw holds by itself, also shaken"),
    };
    let remedy = (grade != Grade::Fine).then(|| {
        Phrase::new("Fit a brake or a latch, or take a lead of ")
            .with(Amount::GiveAtMost(lead_that_holds(&report.design)))
            .and(" or less.")
    });
    Some(Finding {
        grade,
        ratio: check.ratio,
        phrase,
        remedy,
        cure: None,
        height: None,
        spot: spot(check.member),
        curve: None,
    })
}

/// The lead at which shaken friction just holds, m.
fn lead_that_holds(design: &Design) -> f64 {
    let Holding { needed, shaken, .. } = Holding::of(design);
    design.drive.lead.to_m() * shaken / needed
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
            .with(Amount::Written(Kind::Length, drive.screw_length.steps()))
            .and(" long; with the nut it must reach ")
            .with(Amount::AtLeast(needed))
            .and(" at deck ")
            .with(Amount::Size(height))
            .and("."),
        remedy: Some(
            Phrase::new("Take one of ")
                .with(Amount::AtLeast(needed))
                .and(" at least, or raise the lowest deck."),
        ),
        cure: None,
        height: Some(height),
        spot: Spot::Screw,
        curve: None,
    })
}
