//! Base, deck and casters seen from the end.
use super::{Carrier, EndSubject};
use crate::drawing::elevation::base::{AXLE, FORK_WIDE, PLATE, PLATE_THICK};
use crate::drawing::outline::Stroke;
use crate::mechanics::JointId;

/// Width of a caster's wheel as a part of its diameter (common practice, no source).
const CASTER_WIDE: f64 = 0.4;
/// Thickness of a caster's fork as a part of its wheel's diameter, and how far its axle stands out.
const FORK: f64 = 0.06;

/// The cheeks that hold the fixed pivots, of the base outside the arms A, of the deck in their plane.
pub(super) fn cheeks(subject: &EndSubject<'_>) -> Vec<Stroke> {
    let design = subject.side.design;
    let pin = design.running.pin.to_mm();
    let bottom = design.running.caster_height.to_mm();
    let pivot = subject.side.joint(JointId::Tl).y;
    let under =
        subject.side.deck_point().y - design.frames.deck_thickness.to_mm() - design.frames.wear.to_mm();
    let base = [bottom, design.lift.pin_line.to_mm() + 2.0 * pin];
    let deck = [pivot - pin, under.max(pivot)];
    subject
        .blocks("w ply", Carrier::Ground, subject.pieces.rail, base)
        .into_iter()
        .chain(subject.blocks("w ply", Carrier::Deck, subject.pieces.deck_cheek, deck))
        .collect()
}

/// The plank over the near casters, the beams halved over it, and the strips the wheels run on.
pub(super) fn base(subject: &EndSubject<'_>) -> Vec<Stroke> {
    let (frames, running) = (&subject.side.design.frames, &subject.side.design.running);
    let bottom = running.caster_height.to_mm();
    let top = bottom + frames.beam_depth.to_mm();
    let layers = frames.layers.get().clamp(1, 4);
    let layer = subject.side.design.arms.thickness.to_mm();
    let plank = bottom + (layer * layers as f64).min(frames.beam_depth.to_mm());
    let half = frames.deck_width.to_mm() / 2.0;
    let mut strokes = vec![subject.block("w ply", Carrier::Ground, [-half, half], [bottom, plank])];
    for joint in 1..layers {
        let y = (bottom + layer * joint as f64).min(plank);
        strokes.push(subject.line("glue", Carrier::Ground, (-half, y), (half, y)));
    }
    let rail = subject.pieces.rail;
    strokes.extend(rails(subject, Carrier::Ground, [bottom, top]));
    let strip = [rail[0], rail[0] + frames.strip_width.to_mm()];
    strokes.extend(subject.blocks(
        "n steel",
        Carrier::Ground,
        strip,
        [top, top + frames.strip_thickness.to_mm()],
    ));
    strokes
}

/// The two beams or deck rails between two heights, with the joints between their layers.
fn rails(subject: &EndSubject<'_>, carrier: Carrier, y: [f64; 2]) -> Vec<Stroke> {
    let rail = subject.pieces.rail;
    let layers = subject.side.design.frames.layers.get().clamp(1, 4);
    let mut strokes: Vec<Stroke> = subject.blocks("w ply", carrier, rail, y).into();
    for joint in 1..layers {
        let z = rail[0] + (rail[1] - rail[0]) * joint as f64 / layers as f64;
        strokes.extend([-z, z].map(|z| subject.line("glue", carrier, (z, y[0]), (z, y[1]))));
    }
    strokes
}

/// Lower and upper face of the deck panel as they are seen: its whole reach where it tilts.
fn panel_heights(subject: &EndSubject<'_>) -> [f64; 2] {
    let thick = subject.side.design.frames.deck_thickness.to_mm();
    let [left, right] = [subject.side.deck_left().y, subject.side.deck_edge().y];
    [left.min(right) - thick, left.max(right)]
}

/// The deck panel.
pub(super) fn panel(subject: &EndSubject<'_>, class: &'static str) -> Stroke {
    let half = subject.side.design.frames.deck_width.to_mm() / 2.0;
    subject.block(class, Carrier::Deck, [-half, half], panel_heights(subject))
}

/// Rails, strips and panel of the deck.
pub(super) fn deck(subject: &EndSubject<'_>) -> Vec<Stroke> {
    let frames = &subject.side.design.frames;
    let [under, _] = panel_heights(subject);
    let low = under - frames.deck_rail_depth.to_mm();
    let rail = subject.pieces.rail;
    let mut strokes = rails(subject, Carrier::Deck, [low, under]);
    let strip = [rail[0], rail[0] + frames.strip_width.to_mm()];
    strokes.extend(subject.blocks(
        "n steel",
        Carrier::Deck,
        strip,
        [low - frames.strip_thickness.to_mm(), low],
    ));
    strokes.push(panel(subject, "w ply"));
    strokes
}

/// The two near casters with their wheels on the floor.
pub(super) fn casters(subject: &EndSubject<'_>) -> Vec<Stroke> {
    let running = &subject.side.design.running;
    let wheel = running.caster_wheel.to_mm();
    let (top, middle) = (running.caster_height.to_mm(), running.caster_across.to_mm());
    let about = |half: f64| [middle - half, middle + half];
    let plate = top - PLATE_THICK * wheel;
    let (wide, axle) = (CASTER_WIDE * wheel / 2.0, AXLE * wheel);
    let fork = (wide + FORK * wheel).min(FORK_WIDE * wheel);
    let block = |class, z, y| subject.blocks(class, Carrier::Ground, z, y);
    [
        block("w sheet", about(wide), [0.0, wheel.min(plate)]),
        block("w steel", [middle - fork, middle - wide], [wheel / 2.0 - axle, plate]),
        block("w steel", [middle + wide, middle + fork], [wheel / 2.0 - axle, plate]),
        block("w steel", about(PLATE * wheel), [plate, top]),
    ]
    .into_iter()
    .flatten()
    .collect()
}
