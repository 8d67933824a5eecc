//! How far pieces must lie on each other, so that what joins them finds wood.
use super::frames::{CASTER_PLATE, frame_thickness, rail_middle};
use super::small::Small;
use crate::design::Design;
use crate::quantity::Length;

/// A screw keeps so many of its diameters from a panel's edge (EN 1995-1-1, 8.3.1.3: plywood, edge without force; from memory).
const EDGE: i64 = 3;

/// A halving wants wood on wood over its whole width but this part of it (common practice, no source).
const SPARED: i64 = 4;

/// The screws of a caster stand this far from the middle of its plate, as a part of half the plate (common practice, no source).
const PLATE_SCREWS: f64 = 0.75;

fn part(length: Length, by: i64) -> Length {
    Length::from_steps(length.steps() / by)
}

/// Half the width a deck must have at least: past the screws in the middles of its rails.
#[must_use]
pub fn deck_reach(design: &Design) -> Length {
    let screw = Small::of(design).panel_screw(design.frames.deck_thickness);
    rail_middle(design) + screw.diameter * EDGE
}

/// Half the length a base plank must have at least: halved over the beams.
#[must_use]
pub fn plank_reach(design: &Design) -> Length {
    let thick = frame_thickness(design);
    rail_middle(design) + part(thick, 2) - part(thick, SPARED)
}

/// Inner and outer face of rails and beams, from the middle of the table.
#[must_use]
pub fn rail_faces(design: &Design) -> [Length; 2] {
    let (middle, half) = (rail_middle(design), part(frame_thickness(design), 2));
    [middle - half, middle + half]
}

/// From the middle of a caster's plate to its screws, along and across.
#[must_use]
pub fn plate_screws(design: &Design) -> Length {
    Length::m(PLATE_SCREWS * CASTER_PLATE * design.running.caster_wheel.to_m())
}

/// Where the wood above the casters ends, from the middle of the table: planks or, where they are shorter, beams.
#[must_use]
pub fn plank_end(design: &Design) -> Length {
    let [_, beam] = rail_faces(design);
    part(design.frames.deck_width, 2).max(beam)
}

/// From where to where a caster may stand along the base, its plank halved over the beams; from the fixed pivots.
#[must_use]
pub fn caster_places(design: &Design) -> [Length; 2] {
    let frames = &design.frames;
    let in_from_end = part(frames.plank_width, 2) - part(frames.plank_width, SPARED);
    [frames.base_left + in_from_end, frames.base_left + frames.base_length - in_from_end]
}
