//! What the builder wants to build: every input, with its default, its range and its meaning.
//!
//! A [`Design`] holds numbers only, in whole steps; the catalogue fills them in and never stands between a design and
//! its numbers, so that an old design means the same for ever.

mod arms;
mod check;
mod choice;
mod demo;
mod drive;
mod field;
mod frames;
mod lift;
mod load;
mod running;
mod shop;
mod stock;
mod strength;
mod sway;

pub use arms::Arms;
pub use check::{Fault, check};
pub use choice::{BearingEnd, Cutting, DowelRule, DriveKind, StrutEnd, Wear, WoodSort};
pub use demo::{Demo, paper_lift, potting_bench};
pub use drive::Drive;
pub use field::{Field, Group, Stored};
pub use frames::Frames;
pub use lift::Lift;
pub use load::Load;
pub use running::Running;
pub use shop::Shop;
pub use stock::{
    bearing, bolt_class, panel, screw_words, set_bearing, set_bolt_class, set_ends, set_panel, set_sheet,
    set_thread, sheet, thread,
};
pub use strength::Strength;
pub use sway::Sway;

/// The longest name a design may have, in characters.
pub const NAME_LIMIT: usize = 60;

/// The longest name a design may have, in bytes of UTF-8: what a link can carry of any script beside every input.
pub const NAME_BYTES: usize = 120;

/// Everything the builder has decided. The default is the metric demo.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Design {
    /// What the builder calls it: plain text, at most [`NAME_LIMIT`] characters.
    pub name: String,
    /// How low, how high, on how many stages.
    pub lift: Lift,
    /// Stock, width, holes and bracing of the arms.
    pub arms: Arms,
    /// The base frame and the deck.
    pub frames: Frames,
    /// Screw, nut, bearing and crank.
    pub drive: Drive,
    /// Wheels, pins and casters.
    pub running: Running,
    /// What keeps the deck from giving way sideways.
    pub sway: Sway,
    /// What stands on the deck.
    pub load: Load,
    /// What the materials and bought parts stand.
    pub strength: Strength,
    /// The sheet the parts come from.
    pub shop: Shop,
}

impl Default for Design {
    fn default() -> Self {
        paper_lift()
    }
}

impl Design {
    /// Every input, in the order of the groups.
    pub fn fields() -> impl Iterator<Item = &'static Field> {
        [
            lift::FIELDS,
            arms::FIELDS,
            frames::FIELDS,
            drive::FIELDS,
            running::FIELDS,
            sway::FIELDS,
            load::FIELDS,
            strength::FIELDS,
            shop::FIELDS,
        ]
        .into_iter()
        .flatten()
    }

    /// The input with a key, if there is one.
    #[must_use]
    pub fn field(key: &str) -> Option<&'static Field> {
        Self::fields().find(|field| field.key == key)
    }

    /// Gives it a name: control characters fall away, the rest is cut at [`NAME_LIMIT`] characters and [`NAME_BYTES`] bytes, between characters.
    pub fn rename(&mut self, name: &str) {
        self.name.clear();
        for sign in name.chars().filter(|sign| !sign.is_control()).take(NAME_LIMIT) {
            if self.name.len() + sign.len_utf8() > NAME_BYTES {
                break;
            }
            self.name.push(sign);
        }
    }
}
