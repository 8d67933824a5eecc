//! In which order the arms are drilled so that they match, and why.
use crate::design::Design;
use crate::parts::{Form, Part, Purpose};
use crate::quantity::figures::Fit;
use crate::quantity::{Amount, Length, Phrase, Ratio};

/// One step, and the reason for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Note {
    /// What to do.
    pub what: Phrase,
    /// Why it is done so.
    pub why: Phrase,
}

/// How far holes that nothing turns in may be off, m (common practice, no source).
const IDLE: f64 = 1e-3;

fn note(what: Phrase, why: &'static str) -> Note {
    Note { what, why: Phrase::new(why) }
}

/// What a stop is set to: the holes of the pivots come out as exact as this.
fn size(length: Length) -> Amount {
    Amount::Pinned(length.to_m())
}

/// How the drill guide is made and used; nothing where none is cut.
fn guided(parts: &[Part]) -> Option<Note> {
    let guide = parts.iter().find(|part| part.name == "Drill guide")?;
    let mut bits: Vec<Length> = parts
        .iter()
        .filter(|part| part.form == Form::Sheet && part.name.starts_with("Arm"))
        .flat_map(|part| &part.holes)
        .filter(|hole| matches!(hole.purpose, Purpose::Bushing | Purpose::Pivot))
        .map(|hole| hole.diameter)
        .collect();
    bits.sort_unstable();
    bits.dedup();
    let mut what = Phrase::new(format!(
        "Where no press is at hand, or a piece does not go under it, the drill guide (part {}) holds the bit. Have it bored square through on a press, a hole for each bit, ",
        guide.number
    ));
    for (at, bit) in bits.iter().enumerate() {
        what = what.and(if at > 0 { " and " } else { "" }).with(Amount::Bit(*bit, Fit::Close));
    }
    Some(note(
        what.and(", each where two lines cross that run square over its face and down its sides. Mark one arm of a pair from the hole table, clamp the other beneath it, clamp the guide on top with its lines on those of the mark, and drill through both."),
        "A bit held by hand leans; the guide is as thick as the frames and holds it square to the face.",
    ))
}

/// The order of work for the arms of a design.
#[must_use]
pub fn order(design: &Design, parts: &[Part]) -> Vec<Note> {
    let arms = &design.arms;
    let count: u32 = parts
        .iter()
        .filter(|part| part.form == Form::Sheet && part.name.starts_with("Arm"))
        .map(|part| part.count)
        .sum();
    let lower = design.lift.arm_length.to_m() * design.lift.centre.value();
    let mut notes = vec![
        note(
            Phrase::new(format!("Rip all {count} arms ")).with(Amount::Ruled(arms.width.to_m())).and(" wide against one fence setting, and mark on each the lower end and the edge that ran along the fence: the datum."),
            "Every hole is measured from the same end and edge, so a width that is off moves all arms alike.",
        ),
        note(
            Phrase::new("Drill the centre hole of every arm at a fence and an end stop, ")
                .with(size(arms.end + Length::m(lower)))
                .and(" from the lower end, in the middle of the width."),
            "One fence and one stop, never moved between arms: an error of setting is the same in all.",
        ),
        note(
            Phrase::new("Screw a pin that fits the centre holes to a board under the drill, ")
                .with(Amount::Pinned(lower))
                .and(" from the drill's axis, and a fence beside it. Drill a test piece and measure before the first arm."),
            "The distance from pin to drill is the only size that counts now; it is set once.",
        ),
        note(
            Phrase::new("Lay the left and the right arm with the same letter and number face to face on the pin and drill one end hole through both."),
            "Both sides of the table get the same errors, so that the deck neither leans nor twists.",
        ),
    ];
    if design.lift.centre == Ratio::of(0.5) {
        notes.push(note(
            Phrase::new("Turn the pair end for end about the pinned centre and drill the other end hole with the same setting."),
            "Both halves of an arm come out alike. Two halves too long by the same amount still make a rhombus: the deck rises level, only a hair higher.",
        ));
    } else {
        let upper = design.lift.arm_length.to_m() - lower;
        notes.push(note(
            Phrase::new("Move the pin to ").with(Amount::Pinned(upper)).and(" from the drill's axis for all upper ends together."),
            "With the centre off the middle both halves differ: each needs a setting of its own, used for every arm.",
        ));
    }
    notes.extend(guided(parts));
    notes.extend([
        note(
            Phrase::new("Stack all arms of one length on three bolts without bushings. They must go through together without a hammer."),
            "An arm that does not fit the stack is found before it is glued to anything.",
        ),
        Note {
            what: Phrase::new("Press in the bushings flush, then cut the recesses for the cross boards, then drill the screw holes."),
            why: Phrase::new("Holes and recesses that nothing turns in come last: they may be off by ").with(Amount::Slack(IDLE)).and("."),
        },
    ]);
    notes
}
