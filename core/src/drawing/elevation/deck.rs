//! The deck panel with its rails, the wheel's rail beneath and the cheek of the upper fixed pivot.
use super::base::rail;
use super::{Axes, Subject, stroke};
use crate::drawing::outline::{Outline, Stroke};
use glam::DVec2;

/// Where the panel begins and ends along the deck.
fn ends(subject: &Subject<'_>) -> [f64; 2] {
    let frames = &subject.design.frames;
    [frames.deck_left.to_mm(), frames.deck_left.to_mm() + frames.deck_length.to_mm()]
}

/// The deck panel.
pub(super) fn panel(subject: &Subject<'_>) -> Outline {
    subject.deck().block(ends(subject), [-subject.design.frames.deck_thickness.to_mm(), 0.0])
}

/// The cheek that holds the upper fixed pivot.
pub(super) fn cheeks(subject: &Subject<'_>) -> Vec<Stroke> {
    let design = subject.design;
    let wide = design.arms.end.to_mm();
    let top = -design.frames.deck_thickness.to_mm();
    let bottom = -(design.lift.deck_stack.to_mm() + design.running.pin.to_mm());
    let high = (top - bottom).max(0.0);
    let round = (design.running.pin.to_mm() * 1.5).min(wide).min(high / 2.0);
    let deck = subject.deck();
    let down = Axes { origin: deck.point(0.0, top), along: -deck.along.perp() };
    vec![stroke("w ply", down.rounded([0.0, high], [-wide, wide], [0.0, round]))]
}

/// Where the side rail begins and ends along the deck, and its lower edge, mm.
fn rail_place(subject: &Subject<'_>) -> ([f64; 2], f64) {
    let frames = &subject.design.frames;
    let [left, right] = ends(subject);
    let (middle, half) = ((left + right) / 2.0, frames.deck_rail_length.to_mm() / 2.0);
    let low = -frames.deck_thickness.to_mm() - frames.deck_rail_depth.to_mm();
    ([middle - half, middle + half], low)
}

/// The side rail.
pub(super) fn side_rail(subject: &Subject<'_>) -> Outline {
    let (ends, low) = rail_place(subject);
    subject.deck().block(ends, [low, -subject.design.frames.deck_thickness.to_mm()])
}

/// Panel, side rail, strip and the rail around the wheel's run.
pub(super) fn deck(subject: &Subject<'_>) -> Vec<Stroke> {
    let (frames, running) = (&subject.design.frames, &subject.design.running);
    let deck = subject.deck();
    let (rail_ends, low) = rail_place(subject);
    let strip = frames.strip_thickness.to_mm();
    let wheel = running.wheel.to_mm() / 2.0;
    let axle = subject.design.lift.deck_axle.to_mm() - subject.design.lift.deck_stack.to_mm();
    let keeper = axle - wheel - running.rail_gap.to_mm() - strip / 2.0;
    let run = [subject.runs[1][0] - wheel * 1.4, subject.runs[1][1] + wheel * 1.4];
    vec![
        stroke("w ply", side_rail(subject)),
        stroke("w", deck.line((rail_ends[0], low - strip / 2.0), (rail_ends[1], low - strip / 2.0))),
        rail(deck, run, [low - strip, keeper]),
        stroke("w ply", panel(subject)),
    ]
}

/// The middle of a deck rail, mm.
pub(super) fn rail_middle(subject: &Subject<'_>) -> DVec2 {
    let frames = &subject.design.frames;
    let [left, right] = ends(subject);
    let depth = frames.deck_thickness.to_mm() + frames.deck_rail_depth.to_mm() / 2.0;
    subject.deck().point((left + right) / 2.0, -depth)
}
