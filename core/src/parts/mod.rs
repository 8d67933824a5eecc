//! What the table is made of: one list, from which the mechanics takes its masses and the workshop its cutting.

mod arms;
mod carriages;
mod corner;
mod deck;
mod fastener;
mod fastening;
mod frames;
mod hole;
mod lap;
mod loose;
mod part;
mod pivots;
mod place;
mod screw;
mod sheet;
mod small;
mod solid;
pub mod stack;
mod within;

pub use arms::{arm_offset, arm_spread, arm_thickness, strap_bolt, strap_span};
pub use carriages::{flange_thickness, has_tube, stub, wheel_overhang};
pub use corner::{Corner, rounded};
pub use fastener::{BoltSize, WoodScrew};
pub use fastening::{CLEAT_SCREWS, CLEATS, STOP_SCREWS, fastenings};
pub use frames::{frame_thickness, rail_cuts, rail_middle};
pub use hole::{Contact, Hole, Housing, Joint, Purpose};
pub use lap::{caster_places, deck_reach, plank_end, plank_reach, plate_screws, rail_faces};
pub use part::{ArmName, Form, Grain, Part, Rides};
pub use pivots::{Layer, Line, arm_hole, arm_joints, axle_bush, cheek_laps, line, lines, spacer_outside};
pub use place::{Block, Outline};
pub use screw::{HANDLE_THICK, ScrewBar, crank_out, crank_reach, crank_room, crank_under, screw_bars};
pub use sheet::sheet_areas;

use crate::design::Design;

/// Every piece of the table, arms first, numbered in that order; pieces made alike share a number.
#[must_use]
pub fn parts(design: &Design) -> Vec<Part> {
    let mut list = arms::parts(design);
    list.extend(frames::parts(design));
    list.extend(deck::parts(design));
    list.extend(carriages::parts(design));
    list.extend(screw::parts(design));
    list.extend(loose::parts(design));
    number(&mut list);
    list
}

fn number(list: &mut [Part]) {
    let mut next = 1;
    for at in 0..list.len() {
        let (before, rest) = list.split_at_mut(at);
        let part = &mut rest[0];
        part.number = before.iter().find(|other| other.alike(part)).map_or(next, |other| other.number);
        if part.number == next {
            next += 1;
        }
    }
}
