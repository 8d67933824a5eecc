//! What stands on the deck, and what pushes it.
use super::field::{inputs, mm};
use crate::quantity::{Force, Length, Mass};

inputs! {
    /// What stands on the deck, and what pushes it.
    load: Load {
        /// Weight of the load.
        mass: Mass = 8_000_000_000, 0 => 200_000_000_000, "lm", "Weight";
        /// Middle of the load along the table, from the fixed pivots.
        centre: Length = mm(170.0), mm(-3000.0) => mm(5000.0), "lx", "Centre from pivots";
        /// Length of the load along the table.
        length: Length = mm(700.0), mm(0.0) => mm(5000.0), "ll", "Length";
        /// Height of the load; its weight is taken to sit in the middle.
        height: Length = mm(300.0), mm(0.0) => mm(3000.0), "lh", "Height";
        /// Middle of the load off the middle of the table, across it.
        across: Length = mm(0.0), mm(-1500.0) => mm(1500.0), "lz", "Off the middle";
        /// Level push on the deck along the table; positive away from the fixed pivots.
        push: Force = 0, -5_000_000 => 5_000_000, "lp", "Push along";
        /// Height of that push above the deck surface.
        push_height: Length = mm(0.0), mm(-500.0) => mm(3000.0), "lq", "Push above deck", when |d| d.load.push.steps() != 0;
    }
}
