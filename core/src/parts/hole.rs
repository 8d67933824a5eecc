//! Holes and recesses of a part, and the joints they belong to.
use crate::quantity::Length;

/// A line across the table about which parts turn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Joint {
    /// The lower fixed pivots.
    BasePivot,
    /// The wheel axle on the base rails.
    BaseAxle,
    /// The centre pins of a stage, from 1.
    Centre(usize),
    /// The left side pivots above a stage.
    Left(usize),
    /// The right side pivots above a stage.
    Right(usize),
    /// The upper fixed pivots.
    DeckPivot,
    /// The wheel axle under the deck.
    DeckAxle,
}

impl Joint {
    /// Every joint of a table of so many stages, from the base up.
    pub fn all(stages: usize) -> impl Iterator<Item = Self> {
        let inner = (1..=stages).flat_map(move |stage| {
            let sides = (stage < stages).then_some([Self::Left(stage), Self::Right(stage)]);
            core::iter::once(Self::Centre(stage)).chain(sides.into_iter().flatten())
        });
        [Self::BasePivot, Self::BaseAxle].into_iter().chain(inner).chain([Self::DeckPivot, Self::DeckAxle])
    }

    /// What it is called.
    #[must_use]
    pub fn title(self) -> String {
        match self {
            Self::BasePivot => "Base pivot".into(),
            Self::BaseAxle => "Base axle".into(),
            Self::Centre(stage) => format!("Centre pin {stage}"),
            Self::Left(stage) => format!("Left side pivot above stage {stage}"),
            Self::Right(stage) => format!("Right side pivot above stage {stage}"),
            Self::DeckPivot => "Deck pivot".into(),
            Self::DeckAxle => "Deck axle".into(),
        }
    }

    /// Whether arms turn here on the wheel axle instead of a bolt.
    #[must_use]
    pub const fn is_axle(self) -> bool {
        matches!(self, Self::BaseAxle | Self::DeckAxle)
    }
}

/// What two parts may touch each other at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Contact {
    /// A joint.
    Pivot(Joint),
    /// The rails the base wheels run on.
    BaseRail,
    /// The rails the deck wheels run on.
    DeckRail,
    /// The screw and what it passes through.
    Screw,
}

/// What a hole is for: decides the bit and how exact it must be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Purpose {
    /// A bushing is pressed in.
    Bushing,
    /// A pivot bolt passes without a bushing and must not rattle.
    Pivot,
    /// A bolt passes freely.
    Clearance,
    /// The screw passes freely.
    Passage,
    /// A wood screw passes freely, its head let in.
    Countersunk,
    /// A wood screw cuts its thread.
    Pilot,
}

impl Purpose {
    /// Its name in the hole table.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Bushing => "bushing",
            Self::Pivot => "pivot",
            Self::Clearance => "clearance",
            Self::Passage => "passage",
            Self::Countersunk => "clearance, countersunk",
            Self::Pilot => "pilot",
        }
    }
}

/// A round hole through a part, square to its face. Places are measured from the datum: the left or lower end and the lower edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hole {
    /// From the datum end to its middle.
    pub along: Length,
    /// From the datum edge to its middle.
    pub across: Length,
    /// Its diameter.
    pub diameter: Length,
    /// What it is for.
    pub purpose: Purpose,
    /// The joint whose line runs through it.
    pub joint: Option<Joint>,
}

impl Hole {
    /// Whether another hole is bored the same in the same place, for whatever joint.
    #[must_use]
    pub fn alike(&self, other: &Self) -> bool {
        self.along == other.along
            && self.across == other.across
            && self.diameter == other.diameter
            && self.purpose == other.purpose
    }
}

/// A rectangular recess in a part's face, with its middle from the datum; as deep as the part where it is a notch in the edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Housing {
    /// From the datum end to its middle.
    pub along: Length,
    /// From the datum edge to its middle.
    pub across: Length,
    /// Its size along the part.
    pub length: Length,
    /// Its size across the part.
    pub width: Length,
    /// How deep it goes.
    pub depth: Length,
    /// What goes into it.
    pub takes: &'static str,
}
