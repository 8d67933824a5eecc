//! What holds a screw that hangs between two points: not worked out, and said wherever one might take it for done.
use super::Report;
use crate::design::{Design, DriveKind, Stored, StrutEnd};
use crate::quantity::{Amount, Phrase};

/// Where the thrust of such a screw enters at its two ends, in words; none for a screw along a rail, whose ends are parts and checked.
fn ends(design: &Design) -> Option<[&'static str; 2]> {
    let drive = &design.drive;
    let word = |end: StrutEnd| {
        let choice = StrutEnd::CHOICES.iter().find(|(value, _)| *value == end.to_steps());
        choice.map_or("", |(_, word)| *word)
    };
    match drive.kind {
        DriveKind::BaseCarriage | DriveKind::TopCarriage => None,
        DriveKind::SidePivots => Some(["left side pivots", "right side pivots"]),
        DriveKind::Strut => Some([word(drive.foot), word(drive.head)]),
    }
}

impl Report {
    /// Whether pins, holes and seats at the ends of the screw are left to the builder.
    #[must_use]
    pub fn leaves_ends(&self) -> bool {
        ends(&self.design).is_some()
    }

    /// That pins, holes and seats at the ends of the screw are left to the builder, and the force they must carry: the greatest along the screw at rest,
    /// raising and lowering, of the whole table. None where they are parts and checked.
    #[must_use]
    pub fn ends_left(&self) -> Option<Phrase> {
        let [foot, head] = ends(&self.design)?;
        let (force, height) = self.greatest(|station| {
            [station.still(), station.raise(), station.lower()]
                .into_iter()
                .fold(0.0, |most, force| force.abs().max(most))
        });
        Some(
            Phrase::new(format!(
                "Pins, holes and seats at both ends of the screw, {foot} and {head}, are not worked out and left to you: each end must carry "
            ))
                .with(Amount::Thrust(force))
                .and(" along the screw, half of it on either side of the table, at deck ")
                .with(Amount::Size(height))
                .and("."),
        )
    }
}
