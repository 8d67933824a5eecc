//! Whether the arms clear the frames, the wheels stay on their rails, and the parts add up to the heights.
use crate::quantity::{Amount, Phrase, passes};
use crate::report::finding::{Finding, Grade, Spot};
use crate::report::{Report, Station};

/// Arms steeper than this stand unsteadily and press hard on their wheels: 65 degrees (common practice, no source).
const STEEP: f64 = 65.0 * core::f64::consts::PI / 180.0;

/// The parts may miss a height by this much before it is worth a word, m: a washer's thickness.
const PACKING: f64 = 0.0015;

fn finding(
    grade: Grade,
    ratio: f64,
    phrase: Phrase,
    remedy: Phrase,
    height: Option<f64>,
    spot: Spot,
) -> Finding {
    Finding { grade, ratio, phrase, remedy: Some(remedy), cure: None, height, spot, curve: None }
}

/// Arms too steep at the top.
pub(super) fn stands(report: &Report) -> Option<Finding> {
    let (angle, height) = report.greatest(|station| station.pose.theta.iter().copied().fold(0.0, f64::max));
    (angle > STEEP).then(|| {
        finding(
            Grade::Watch,
            angle / STEEP,
            Phrase::new("The arms stand at ")
                .with(Amount::Angle(angle))
                .and(" at deck ")
                .with(Amount::Size(height))
                .and(": the wheels come close to the pivots and the table stands unsteadily."),
            match steepest(report) {
                Some(height) => Phrase::new("A highest deck of ")
                    .with(Amount::AtMost(height))
                    .and(" keeps the arms below ")
                    .with(Amount::Angle(STEEP))
                    .and("; so do longer arms."),
                None => Phrase::new("Longer arms keep below ").with(Amount::Angle(STEEP)).and("."),
            },
            Some(height),
            Spot::Arms,
        )
    })
}

/// A lift smaller than this is none, m: more than a line of any rule.
const LIFT: f64 = 0.002;

/// The greatest deck height of the sweep at which no arm is too steep, m; none where that leaves no lift.
fn steepest(report: &Report) -> Option<f64> {
    let flat = |station: &&Station| station.pose.theta.iter().all(|theta| *theta <= STEEP);
    let height = report.stations.iter().rev().find(flat)?.height;
    (height > report.lowest() + LIFT).then_some(height)
}

/// The square tips of the arms sweep a circle about the end pins; base and deck must stay outside it.
pub(super) fn clears(report: &Report) -> Vec<Finding> {
    let design = &report.design;
    let needed = report.limits().pin_clearance_needed;
    let under_deck = (design.lift.deck_stack - design.frames.deck_thickness - design.frames.wear).to_m();
    let over_casters = (design.lift.pin_line - design.running.caster_height).to_m();
    [
        (under_deck, "the deck panel", "upper", "Raise the deck above its pins", Spot::DeckPivot),
        (over_casters, "the caster plates", "lower", "Raise the base pin line", Spot::BasePivot),
    ]
    .into_iter()
    .filter(|(room, ..)| passes(needed, *room))
    .map(|(room, what, pins, help, spot)| {
        finding(
            Grade::Over,
            needed / room.max(1e-4),
            Phrase::new("The arm ends sweep ")
                .with(Amount::AtLeast(needed))
                .and(format!(" about their {pins} pins, but {what} is only "))
                .with(Amount::AtMost(room))
                .and(" away."),
            Phrase::new(format!("{help} by "))
                .with(Amount::AtLeast(needed - room))
                .and(", shorten the ends past the pins, or round them off."),
            None,
            spot,
        )
    })
    .collect()
}

/// The wheels must stay on their rails from the lowest to the highest deck.
pub(super) fn rails(report: &Report) -> Vec<Finding> {
    let frames = &report.design.frames;
    let radius = report.design.running.wheel.to_m() / 2.0;
    let deck_end = (frames.deck_rail_left + frames.deck_rail_length).to_m();
    let base_end = (frames.base_left + frames.base_length).to_m();
    let (far_base, low_base) = report.greatest(|station| station.pose.carriage_x);
    let (far_deck, low_deck) = report.greatest(|station| station.pose.top_axle.x);
    [
        (base_end, "base beams", Spot::Base, far_base, low_base),
        (deck_end, "deck rails", Spot::Deck, far_deck, low_deck),
    ]
    .into_iter()
    .filter_map(|(end, rail, spot, far, height)| {
        let missing = far + radius - end;
        passes(far + radius, end).then(|| {
            finding(
                Grade::Over,
                1.0 + missing / radius,
                Phrase::new("The wheels run off the ")
                    .and(rail)
                    .and(" by ")
                    .with(Amount::AtLeast(missing))
                    .and(" at deck ")
                    .with(Amount::Size(height))
                    .and("."),
                Phrase::new(format!("Make the {rail} longer by "))
                    .with(Amount::AtLeast(missing))
                    .and(", or raise the lowest deck."),
                Some(height),
                spot,
            )
        })
    })
    .collect()
}

/// Casters, beams, strip and wheel should add up to the base pin line, and the deck's parts to the deck above its pins.
pub(super) fn stack(report: &Report) -> Vec<Finding> {
    let (frames, running, lift) = (&report.design.frames, &report.design.running, &report.design.lift);
    let radius = running.wheel.to_m() / 2.0;
    let strip = frames.strip_thickness.to_m();
    let base =
        running.caster_height.to_m() + frames.beam_depth.to_m() + strip + radius - lift.base_axle.to_m();
    let deck = (frames.wear + frames.deck_thickness + frames.deck_rail_depth).to_m()
        + strip
        + radius
        + lift.deck_axle.to_m();
    [
        (base, lift.pin_line.to_m(), "Caster, beam, strip and wheel", "the base pin line", Spot::Base),
        (deck, lift.deck_stack.to_m(), "Deck, rail, strip and wheel", "the deck above its pins", Spot::Deck),
    ]
    .into_iter()
    .filter(|(sum, wanted, ..)| (sum - wanted).abs() > PACKING)
    .map(|(sum, wanted, parts, what, spot)| {
        let remedy = if sum < wanted {
            Phrase::new("Pack the rails up by ")
                .with(Amount::Size(wanted - sum))
                .and(", or change a size to fit.")
        } else {
            Phrase::new("Thinner by ")
                .with(Amount::Size(sum - wanted))
                .and(" somewhere, or change that height to fit.")
        };
        finding(
            Grade::Watch,
            (sum / wanted - 1.0).abs(),
            Phrase::new(format!("{parts} make "))
                .with(Amount::Size(sum))
                .and(format!(", but {what} is set to "))
                .with(Amount::Size(wanted))
                .and("."),
            remedy,
            None,
            spot,
        )
    })
    .collect()
}
