//! The screw's bearing tube and the crank, seen from the end.
use super::{Carrier, EndSubject};
use crate::design::DriveKind;
use crate::drawing::elevation::drive::CRANK_BAR;
use crate::drawing::outline::{Outline, Stroke};
use crate::parts::{HANDLE_THICK, arm_spread, arm_thickness};

/// The tubes that hold the screw, and the crank.
pub(super) fn drive(subject: &EndSubject<'_>) -> Vec<Stroke> {
    let drive = &subject.side.design.drive;
    let screw = subject.side.screw_end();
    let carrier = carrier(subject);
    let mut strokes = Vec::new();
    let tube = |half: f64, y: f64, side: f64| {
        subject.block("w steel", carrier, [-half, half], [y - side / 2.0, y + side / 2.0])
    };
    match drive.kind {
        DriveKind::BaseCarriage | DriveKind::TopCarriage => {
            strokes.push(tube(subject.pieces.bearing_tube, screw.held[0].y, screw.tubes[0]));
        }
        // Both ends of a free screw are held by tubes between the arms B, or across a frame.
        DriveKind::SidePivots | DriveKind::Strut => {
            let between =
                (arm_spread(subject.side.design, true) - arm_thickness(subject.side.design)).to_mm() / 2.0;
            for (at, side) in screw.held.into_iter().zip(screw.tubes) {
                strokes.push(tube(between, at.y, side));
            }
        }
    }
    strokes.extend(crank(subject));
    strokes
}

/// What the drive's ends move with.
fn carrier(subject: &EndSubject<'_>) -> Carrier {
    if subject.side.design.drive.kind == DriveKind::TopCarriage { Carrier::Deck } else { Carrier::Ground }
}

/// The crank on the screw's end, standing upright.
pub(super) fn crank(subject: &EndSubject<'_>) -> Vec<Stroke> {
    let drive = &subject.side.design.drive;
    let screw = subject.side.screw_end();
    let carrier = carrier(subject);
    let (foot, up) = (screw.crank.y, screw.up.y.abs());
    let radius = drive.crank.to_mm();
    let half = CRANK_BAR * radius / 2.0;
    let tip = foot + up * radius;
    let circle = |class, y: f64, radius: f64| Stroke {
        class,
        outline: Outline::Circle { centre: subject.at(carrier, 0.0, y), radius },
    };
    vec![
        subject.block("w steel", carrier, [-half, half], [foot - half, tip + half]),
        circle("w steel", foot, drive.major.to_mm() / 2.0),
        circle("w ply", tip, (HANDLE_THICK * radius / 2.0).max(half)),
    ]
}
