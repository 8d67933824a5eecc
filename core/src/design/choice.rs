//! Inputs that are a choice among few.
use super::field::Stored;
use crate::quantity::Kind;

macro_rules! choices {
    ($(#[$meta:meta])* $Name:ident { $( $(#[$vmeta:meta])* $Variant:ident = $value:literal $words:literal, )+ }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum $Name { $( $(#[$vmeta])* $Variant = $value, )+ }

        impl Stored for $Name {
            const KIND: Kind = Kind::Choice;
            const CHOICES: &'static [(i64, &'static str)] = &[$( ($value, $words), )+];

            fn to_steps(self) -> i64 {
                self as i64
            }

            fn of_steps(steps: i64) -> Self {
                [$( Self::$Variant, )+].into_iter().find(|choice| *choice as i64 == steps).unwrap_or([$( Self::$Variant, )+][0])
            }
        }
    };
}

choices! {
    /// What the screw moves.
    DriveKind {
        /// The wheel axle on the base rails.
        BaseCarriage = 0 "base carriage",
        /// The wheel axle under the deck.
        TopCarriage = 1 "deck carriage",
        /// The two side pivots between two stages, towards each other.
        SidePivots = 2 "side pivots",
        /// A screw that stands inclined between two points.
        Strut = 3 "inclined strut",
    }
}

choices! {
    /// The sort of wood, as the rules for pins in it tell them apart.
    WoodSort {
        /// Veneers glued crosswise: holds a pin alike in every direction.
        Plywood = 0 "plywood",
        /// Conifers.
        Softwood = 1 "softwood",
        /// Broadleaved trees.
        Hardwood = 2 "hardwood",
    }
}

choices! {
    /// By which rule a pin holds in wood.
    DowelRule {
        /// EN 1995-1-1, section 8.
        Eurocode = 0 "EN 1995-1-1",
        /// National Design Specification for Wood Construction, chapter 12.
        Nds = 1 "NDS",
    }
}

choices! {
    /// At which end of the screw the thrust bearing sits.
    BearingEnd {
        /// Beside the fixed pivots: the screw pulls the carriage.
        Fixed = 0 "fixed pivots, pulls",
        /// Beyond the carriage: the screw pushes it.
        Far = 1 "far end, pushes",
    }
}

choices! {
    /// What an end of an inclined strut is joined to.
    StrutEnd {
        /// The base frame, at a point from the lower fixed pivot.
        Base = 0 "base",
        /// The deck frame, at a point from the upper fixed pivot.
        Deck = 1 "deck",
        /// The arm A of stage 1.
        A1 = 2 "arm A1",
        /// The arm B of stage 1.
        B1 = 3 "arm B1",
        /// The arm A of stage 2.
        A2 = 4 "arm A2",
        /// The arm B of stage 2.
        B2 = 5 "arm B2",
        /// The arm A of stage 3.
        A3 = 6 "arm A3",
        /// The arm B of stage 3.
        B3 = 7 "arm B3",
        /// The arm A of stage 4.
        A4 = 8 "arm A4",
        /// The arm B of stage 4.
        B4 = 9 "arm B4",
    }
}

impl StrutEnd {
    /// The stage of the arm it is joined to, 1 to 4; none for base and deck.
    #[must_use]
    pub const fn stage(self) -> Option<i64> {
        let value = self as i64;
        if value < 2 { None } else { Some(value / 2) }
    }

    /// Whether that arm is a B.
    #[must_use]
    pub const fn is_b(self) -> bool {
        self.stage().is_some() && (self as i64) % 2 == 1
    }
}

choices! {
    /// How far the pivots are worn.
    Wear {
        /// As made.
        New = 0 "new",
        /// After some weeks of use.
        BrokenIn = 1 "broken in",
        /// Holes worn wide.
        Worn = 2 "worn",
    }
}

choices! {
    /// How a sheet is cut up.
    Cutting {
        /// Straight through from edge to edge, as a panel saw or a hand saw on a rail does.
        Straight = 0 "panel saw, edge to edge",
        /// Along any outline, as a router does.
        Free = 1 "router, any outline",
    }
}
