//! What belongs to the table but does not ride on it: the props to work beneath a raised deck, and the drill guide.
use super::frames::{BATTEN, frame_thickness};
use super::part::{Form, Part, Rides};
use super::solid::block;
use crate::design::Design;
use crate::quantity::Length;

/// Side of a prop, a squared batten of softwood.
const PROP: Length = Length::mm(45.0);

/// A prop is shorter than the gap it stands in by this, so that it can be set and the deck lowered onto it.
const ROOM_TO_SET: Length = Length::mm(5.0);

/// The guide block: three bolt diameters on either side of the hole.
const GUIDE: i64 = 6;

pub(super) fn parts(design: &Design) -> Vec<Part> {
    vec![prop(design), guide(design)]
}

/// A prop stands on each base beam under the deck rail with the deck at its highest.
fn prop(design: &Design) -> Part {
    let (frames, lift, running) = (&design.frames, &design.lift, &design.running);
    let above = frames.wear + frames.deck_thickness + frames.deck_rail_depth + frames.strip_thickness;
    let below = running.caster_height + frames.beam_depth + frames.strip_thickness;
    let length = (lift.highest - above - below - ROOM_TO_SET).max(Length::ZERO);
    let size = [length, PROP, PROP];
    Part::new("Prop", Rides::Aside, Form::Batten, size, block(BATTEN, size))
        .times(2)
        .joined("stands between base beam and deck rail, a cleat on both sides at either end")
}

/// A block drilled square on a press, to guide the bit by hand.
fn guide(design: &Design) -> Part {
    let side = design.running.pin * GUIDE;
    let size = [side, side, frame_thickness(design)];
    Part::new("Drill guide", Rides::Aside, Form::Sheet, size, block(design.arms.density, size))
        .glued(super::arms::layers(design.frames.layers.get()))
        .joined("clamped on the arm; not part of the table")
}
