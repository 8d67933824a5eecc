//! The base frame with its casters, and the deck.
use super::part::{Material, Part, Rides};
use super::solid::{block, steel_flat};
use crate::design::Design;
use crate::quantity::Length;

/// Mass of a caster for its height, kg/m: common practice, no source (0.65 kg at 100 mm, swivel with brake).
const CASTER_MASS_A_METRE: f64 = 6.5;

struct Frame<'a> {
    design: &'a Design,
    rides: Rides,
}

impl Frame<'_> {
    /// A piece of the frames' thickness.
    fn layered(&self, name: &'static str, length: Length, width: Length) -> Part {
        let layers = self.design.frames.layers.get();
        let thick = self.design.arms.thickness * layers;
        self.sheet(name, 2, [length, width, thick], u32::try_from(layers).unwrap_or(1))
    }

    fn sheet(&self, name: &'static str, count: u32, size: [Length; 3], layers: u32) -> Part {
        let mass = block(self.design.arms.density, size);
        Part { name, rides: self.rides, count, material: Material::Sheet, size, layers, mass }
    }

    fn strip(&self, length: Length) -> Part {
        let size = [length, self.design.frames.strip_width, self.design.frames.strip_thickness];
        Part {
            name: "Wheel strip",
            rides: self.rides,
            count: 2,
            material: Material::Steel,
            size,
            layers: 1,
            mass: steel_flat(size),
        }
    }
}

pub(super) fn parts(design: &Design) -> Vec<Part> {
    let (frames, running, lift) = (&design.frames, &design.running, &design.lift);
    let middle = |left: Length, length: Length| left.to_m() + length.to_m() / 2.0;
    let beams = Frame { design, rides: Rides::Base(middle(frames.base_left, frames.base_length)) };
    let planks = Frame {
        design,
        rides: Rides::Base((running.caster_left.to_m() + running.caster_right.to_m()) / 2.0),
    };
    let deck = Frame { design, rides: Rides::Deck(middle(frames.deck_left, frames.deck_length)) };
    let (base_pivots, deck_pivots) =
        (Frame { design, rides: Rides::Base(0.0) }, Frame { design, rides: Rides::Deck(0.0) });
    let rails = Frame { design, rides: Rides::Deck(middle(frames.deck_rail_left, frames.deck_rail_length)) };
    let deck_size = [frames.deck_length, frames.deck_width, frames.deck_thickness];
    let base_cheek = (lift.pin_line - running.caster_height).max(Length::ZERO) + running.pin * 2;
    let deck_cheek = (lift.deck_stack - frames.deck_thickness).max(Length::ZERO) + running.pin;
    let mut list = vec![
        deck.sheet("Deck", 1, deck_size, 1),
        rails.layered("Deck rail", frames.deck_rail_length, frames.deck_rail_depth),
        deck_pivots.layered("Deck pivot cheek", design.arms.end * 2, deck_cheek),
        beams.layered("Base beam", frames.base_length, frames.beam_depth),
        planks.layered("Base plank", frames.deck_width, frames.plank_width),
        base_pivots.layered("Base pivot cheek", design.arms.end * 2, base_cheek),
        Part {
            name: "Caster",
            rides: planks.rides,
            count: 4,
            material: Material::Bought,
            size: [running.caster_height, running.caster_wheel, running.caster_wheel],
            layers: 1,
            mass: CASTER_MASS_A_METRE * running.caster_height.to_m(),
        },
    ];
    if frames.strip_thickness > Length::ZERO && frames.strip_width > Length::ZERO {
        list.push(rails.strip(frames.deck_rail_length));
        list.push(beams.strip(frames.base_length));
    }
    list
}
