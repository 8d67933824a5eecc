//! The base frame and the deck.
use super::field::{inputs, mm};
use crate::quantity::{Count, Length};

inputs! {
    /// The base frame and the deck.
    frames: Frames {
        /// Distance of the two outer arms A, middle to middle, across the table.
        spread: Length = mm(440.0), mm(60.0) => mm(3000.0), "fb", "Arms apart, middles";
        /// Length of the deck panel along the table.
        deck_length: Length = mm(680.0), mm(60.0) => mm(5000.0), "dl", "Deck length";
        /// Width of the deck panel across the table.
        deck_width: Length = mm(557.0), mm(60.0) => mm(3000.0), "dw", "Deck width";
        /// Thickness of the deck panel.
        deck_thickness: Length = mm(18.0), mm(3.0) => mm(100.0), "dk", "Deck thickness";
        /// Thickness of a hard sheet laid on the deck to wear in its place; 0 for none. The deck's height includes it.
        wear: Length = mm(0.0), mm(0.0) => mm(20.0), "fw", "Wear sheet";
        /// Left edge of the deck from the fixed pivots; negative is out over them.
        deck_left: Length = mm(-120.0), mm(-3000.0) => mm(3000.0), "dx", "Deck's left edge";
        /// Left end of the two rails under the deck, from the fixed pivots.
        deck_rail_left: Length = mm(-90.0), mm(-3000.0) => mm(3000.0), "rx", "Deck rails' left end";
        /// Length of the two rails under the deck.
        deck_rail_length: Length = mm(620.0), mm(60.0) => mm(5000.0), "rl", "Deck rails, length";
        /// Depth of a deck rail.
        deck_rail_depth: Length = mm(40.0), mm(5.0) => mm(400.0), "rd", "Deck rails, depth";
        /// Length of the two base beams.
        base_length: Length = mm(780.0), mm(60.0) => mm(5000.0), "bl", "Base beams, length";
        /// Left end of the base beams from the fixed pivots.
        base_left: Length = mm(-160.0), mm(-3000.0) => mm(3000.0), "bx", "Base's left end";
        /// Depth of a base beam.
        beam_depth: Length = mm(60.0), mm(5.0) => mm(400.0), "bd", "Base beams, depth";
        /// Layers of stock in rails, beams, planks and pivot cheeks.
        layers: Count = 2, 1 => 4, "fl", "Layers in frames";
        /// Width of the two planks across the base, over the casters.
        plank_width: Length = mm(80.0), mm(10.0) => mm(500.0), "kw", "Base planks, width";
        /// Thickness of the steel strips on which the wheels run.
        strip_thickness: Length = mm(4.0), mm(0.0) => mm(20.0), "sk", "Wheel strip, thickness";
        /// Width of the steel strips on which the wheels run.
        strip_width: Length = mm(20.0), mm(0.0) => mm(100.0), "sv", "Wheel strip, width";
    }
}
