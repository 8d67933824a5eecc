//! The lessons, by the words they have in the address.

/// A lesson: one thing about lifting tables, to guess, to see and to explain.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Lesson {
    /// Why the lowest part of the lift is the hardest.
    Bottom,
    /// What changes where the load stands elsewhere.
    Place,
    /// Several short stages instead of a long one.
    Stages,
    /// What it costs that a screw holds by itself.
    Holding,
    /// Which way a light table gives.
    Sideways,
    /// How the play of many pivots adds up.
    Play,
    /// What stands out over the wheels at full height.
    Overhang,
    /// How little a hole may be off.
    Drilling,
    /// Two ways to give, two remedies.
    Cures,
    /// How heavy a load may be before the table falls over sideways.
    Tall,
}

impl Lesson {
    /// Every lesson in its order.
    pub const ALL: [Self; 10] = [
        Self::Bottom,
        Self::Place,
        Self::Stages,
        Self::Holding,
        Self::Sideways,
        Self::Play,
        Self::Overhang,
        Self::Drilling,
        Self::Cures,
        Self::Tall,
    ];

    /// Its word in the address, for ever.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Bottom => "lesson-bottom",
            Self::Place => "lesson-place",
            Self::Stages => "lesson-stages",
            Self::Holding => "lesson-holding",
            Self::Sideways => "lesson-sideways",
            Self::Play => "lesson-play",
            Self::Overhang => "lesson-overhang",
            Self::Drilling => "lesson-drilling",
            Self::Cures => "lesson-cures",
            Self::Tall => "lesson-tall",
        }
    }

    /// Its title.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Bottom => "Why the bottom is so hard",
            Self::Place => "Where the load stands",
            Self::Stages => "Stages trade force for length",
            Self::Holding => "What it costs to hold",
            Self::Sideways => "Flimsy is sideways, not down",
            Self::Play => "Play adds up",
            Self::Overhang => "Overhang at full height",
            Self::Drilling => "Small error, big tilt",
            Self::Cures => "Two illnesses, two cures",
            Self::Tall => "The tall load",
        }
    }

    /// Its number, counted from one.
    #[must_use]
    pub const fn number(self) -> usize {
        self as usize + 1
    }
}
