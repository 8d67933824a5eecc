//! How low, how high, on how many stages.
use super::field::{inputs, mm, ratio};
use crate::quantity::{Count, Length, Ratio};

inputs! {
    /// How low, how high, on how many pairs of crossed arms.
    lift: Lift {
        /// Pairs of crossed arms standing on one another.
        stages: Count = 2, 1 => 4, "st", "Stages";
        /// Length of an arm from the pin at one end to the pin at the other.
        arm_length: Length = mm(520.0), mm(120.0) => mm(3000.0), "al", "Arm, pin to pin";
        /// Where the centre pin sits along the arm, from its lower end.
        centre: Ratio = ratio(0.5), ratio(0.4) => ratio(0.6), "ac", "Centre pin at";
        /// Deck surface above the floor in the lowest position, over the fixed pivots.
        lowest: Length = mm(520.0), mm(50.0) => mm(6000.0), "lo", "Lowest deck";
        /// Deck surface above the floor in the highest position, over the fixed pivots.
        highest: Length = mm(1160.0), mm(60.0) => mm(12000.0), "hi", "Highest deck";
        /// Height of the lower fixed pivots above the floor.
        pin_line: Length = mm(160.0), mm(20.0) => mm(1500.0), "pl", "Base pin line";
        /// Height of the deck surface above the upper fixed pivots.
        deck_stack: Length = mm(82.0), mm(5.0) => mm(1000.0), "dh", "Deck above its pins";
        /// Height of the base wheel axle above the lower fixed pivots; keep it at 0 for a deck that rises straight.
        base_axle: Length = mm(0.0), mm(-80.0) => mm(80.0), "db", "Base axle above pins";
        /// Height of the deck wheel axle above the upper fixed pivots; keep it equal to the base axle for a level deck.
        deck_axle: Length = mm(0.0), mm(-80.0) => mm(80.0), "dt", "Deck axle above pins";
    }
}
