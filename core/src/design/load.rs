//! What stands on the deck, and what pushes it.
use super::field::{inputs, mm, ratio};
use crate::quantity::{Force, Length, Mass, Ratio};

inputs! {
    /// What stands on the deck, and what pushes it.
    load: Load {
        /// Weight of the load.
        mass: Mass = 8_000_000_000, 0 => 200_000_000_000, "lm", "Weight";
        /// Middle of the load along the table, from the fixed pivots.
        centre: Length = mm(170.0), mm(-3000.0) => mm(5000.0), "lx", "Centre from pivots";
        /// Length of the load along the table.
        length: Length = mm(700.0), mm(0.0) => mm(5000.0), "ll", "Length";
        /// Width of the load across the table.
        width: Length = mm(500.0), mm(0.0) => mm(5000.0), "lw", "Width across";
        /// Height of the load.
        height: Length = mm(300.0), mm(0.0) => mm(3000.0), "lh", "Height";
        /// How high the centre of gravity of the load lies above the deck, as a part of its height: a half where it is alike all through. It does not show in sag or push, but a high one can halve the load at which the table collapses sideways.
        centre_height: Ratio = ratio(0.5), ratio(0.0) => ratio(1.0), "lc", "Weight sits at";
        /// Middle of the load off the middle of the table, across it.
        across: Length = mm(0.0), mm(-1500.0) => mm(1500.0), "lz", "Off the middle";
        /// Level push on the deck along the table; positive away from the fixed pivots.
        push: Force = 0, -5_000_000 => 5_000_000, "lp", "Push along";
        /// Height of that push above the deck surface.
        push_height: Length = mm(0.0), mm(-500.0) => mm(3000.0), "lq", "Push above deck", when |d| d.load.push.steps() != 0;
    }
}

impl Load {
    /// How high the centre of gravity of the load lies above the deck, m.
    #[must_use]
    pub const fn rise(&self) -> f64 {
        self.height.to_m() * self.centre_height.value()
    }
}
