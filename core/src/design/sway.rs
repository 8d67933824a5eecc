//! What keeps the deck from giving way sideways, twisting and rattling.
use super::Design;
use super::choice::Wear;
use super::field::{inputs, mm, ratio};
use crate::quantity::{Force, Length, Ratio, Stiffness};

const fn guided(design: &Design) -> bool {
    design.sway.guide_base || design.sway.guide_deck
}

const fn boarded(design: &Design) -> bool {
    design.arms.boards_a || design.arms.boards_b
}

const fn measured(design: &Design) -> bool {
    design.sway.test_pull.steps() > 0
}

inputs! {
    /// What keeps the deck from giving way sideways, twisting and rattling.
    sway: Sway {
        /// Flange washers beside the base wheels that run along the inner side of the base beams.
        guide_base: bool = 1, 0 => 1, "ga", "Side guides below";
        /// Flange washers beside the deck wheels that run along the inner side of the deck rails.
        guide_deck: bool = 1, 0 => 1, "gb", "Side guides above";
        /// Play of a side guide before it touches its rail, to either side.
        guide_play: Length = mm(0.5), mm(0.0) => mm(20.0), "gp", "Guide play, a side", when guided;
        /// Give of one side guide once it touches. Assumed: 500 N/mm for a flange washer on plywood.
        guide_stiffness: Stiffness = 500, 5 => 20_000, "gk", "Guide stiffness", when guided;
        /// Distance along the rail of two side guides on each end of the driven axle, which keep it square to the rails; 0 for one guide an end, which cannot.
        guide_span: Length = mm(0.0), mm(0.0) => mm(1000.0), "gs", "Two guides apart", when guided;
        /// Outside diameter of wide washers that springs press firmly on the arms at every pivot; 0 where pivots run loose.
        hub: Length = mm(0.0), mm(0.0) => mm(300.0), "gh", "Hub washers, sprung";
        /// How far the pivots are worn: broken in, they rock twice as easily and have half as much play again; worn, ten times as easily with three times the play (assumed).
        wear: Wear = 0, 0 => 2, "gw", "Pivots are";
        /// How tightly the ends of the cross boards sit in their housings: 1 if they press over their whole end, about a half where they are glued well.
        board_fit: Ratio = ratio(0.5), ratio(0.02) => ratio(1.0), "gf", "Board ends, fit", when boarded;
        /// Pull on a luggage scale in the joint test: one arm of a free pair clamped, the other pulled square to its face. 0 where no joint has been tested.
        test_pull: Force = 0, 0 => 500_000, "gt", "Joint test, pull";
        /// How far from the bolt the scale was hooked on, along the pulled arm.
        test_reach: Length = mm(400.0), mm(50.0) => mm(2000.0), "gr", "Joint test, reach", when measured;
        /// How far the arm came away there from rest to the full pull, by a ruler, free play not counted.
        test_give: Length = mm(5.0), mm(0.2) => mm(300.0), "gd", "Joint test, gives", when measured;
    }
}

impl Wear {
    /// What is left of the stiffness of a pivot against rocking. Assumed.
    #[must_use]
    pub const fn firm(self) -> f64 {
        match self {
            Self::New => 1.0,
            Self::BrokenIn => 0.5,
            Self::Worn => 0.1,
        }
    }

    /// The play of a pivot as a multiple of that when new. Assumed.
    #[must_use]
    pub const fn slack(self) -> f64 {
        match self {
            Self::New => 1.0,
            Self::BrokenIn => 1.5,
            Self::Worn => 3.0,
        }
    }
}
