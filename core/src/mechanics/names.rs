//! Names of arms and joints, and their place in the lists of results.
//!
//! Stages count from the base, from 1. Arm A of a stage runs from bottom left to top right, arm B from bottom
//! right to top left.

use serde::{Deserialize, Serialize};
use std::fmt;

/// The largest number of stages the mechanics accepts.
pub const MAX_STAGES: usize = 8;

/// Which of the two crossing arms of a stage.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Bottom left to top right.
    A,
    /// Bottom right to top left.
    B,
}

/// One arm, written `A1`, `B3`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[serde(try_from = "String", into = "String")]
pub struct ArmId {
    /// Which of the two arms.
    pub side: Side,
    /// Stage, from 1.
    pub stage: usize,
}

impl ArmId {
    /// Arm A of a stage.
    pub fn a(stage: usize) -> Self {
        Self { side: Side::A, stage }
    }

    /// Arm B of a stage.
    pub fn b(stage: usize) -> Self {
        Self { side: Side::B, stage }
    }

    /// Place in every list of arms: A1, B1, A2, B2, ...; stage 0 is taken as stage 1.
    pub fn index(self) -> usize {
        2 * self.stage.saturating_sub(1) + usize::from(self.side == Side::B)
    }

    /// All arms of `n` stages in the order of [`ArmId::index`].
    pub fn all(n: usize) -> impl Iterator<Item = Self> {
        (1..=n).flat_map(|stage| [Self::a(stage), Self::b(stage)])
    }
}

impl fmt::Display for ArmId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?}{}", self.side, self.stage)
    }
}

impl From<ArmId> for String {
    fn from(arm: ArmId) -> Self {
        arm.to_string()
    }
}

impl TryFrom<String> for ArmId {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        let stage = |digits: &str| digits.parse().ok().filter(|stage| (1..=MAX_STAGES).contains(stage));
        let arm = match (text.strip_prefix('A'), text.strip_prefix('B')) {
            (Some(digits), _) => stage(digits).map(Self::a),
            (_, Some(digits)) => stage(digits).map(Self::b),
            _ => None,
        };
        arm.ok_or_else(|| format!("`{text}` is not an arm: write A or B and the stage, such as A1"))
    }
}

/// One pivot of the linkage. Its force is reported on the second of the two bodies it joins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JointId {
    /// Base fixed pivot: base, A1.
    Bl,
    /// Base wheel axle: axle, B1.
    Br,
    /// Centre pin of a stage: A, B.
    C(usize),
    /// Left side pivot above stage i: B_i, A_(i+1).
    Jl(usize),
    /// Right side pivot above stage i: A_i, B_(i+1).
    Jr(usize),
    /// Top fixed pivot: B_n, top frame.
    Tl,
    /// Top wheel axle: A_n, axle.
    Tr,
}

/// The kinds of pivot that share one size, clearance or stiffness.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "the names are those of JointId")]
pub enum JointKind {
    Bl,
    Br,
    C,
    J,
    Tl,
    Tr,
}

impl JointId {
    /// Place in every list of joints of an `n`-stage linkage: BL, BR, C1, JL1, JR1, C2, ..., TL, TR.
    pub fn index(self, n: usize) -> usize {
        match self {
            Self::Bl => 0,
            Self::Br => 1,
            Self::C(stage) => 3 * stage.saturating_sub(1) + 2,
            Self::Jl(level) => 3 * level,
            Self::Jr(level) => 3 * level + 1,
            Self::Tl => 3 * n,
            Self::Tr => 3 * n + 1,
        }
    }

    /// All joints of an `n`-stage linkage in the order of [`JointId::index`].
    pub fn all(n: usize) -> impl Iterator<Item = Self> {
        (0..3 * n + 2).map(move |index| Self::at(index, n))
    }

    /// The joint at a place of the list of an `n`-stage linkage.
    pub fn at(index: usize, n: usize) -> Self {
        let level = index / 3;
        match index % 3 {
            0 if level == 0 => Self::Bl,
            0 if level == n => Self::Tl,
            0 => Self::Jl(level),
            1 if level == 0 => Self::Br,
            1 if level == n => Self::Tr,
            1 => Self::Jr(level),
            _ => Self::C(level + 1),
        }
    }

    /// The kind of pivot.
    pub fn kind(self) -> JointKind {
        match self {
            Self::Bl => JointKind::Bl,
            Self::Br => JointKind::Br,
            Self::C(_) => JointKind::C,
            Self::Jl(_) | Self::Jr(_) => JointKind::J,
            Self::Tl => JointKind::Tl,
            Self::Tr => JointKind::Tr,
        }
    }

    /// The two bodies it joins in an `n`-stage linkage. An axle stands for the frame that guides it: the base for
    /// BR, the top frame for TR.
    pub fn bodies(self, n: usize) -> [Body; 2] {
        match self {
            Self::Bl => [Body::Base, Body::Arm(ArmId::a(1))],
            Self::Br => [Body::Base, Body::Arm(ArmId::b(1))],
            Self::C(stage) => [Body::Arm(ArmId::a(stage)), Body::Arm(ArmId::b(stage))],
            Self::Jl(level) => [Body::Arm(ArmId::b(level)), Body::Arm(ArmId::a(level + 1))],
            Self::Jr(level) => [Body::Arm(ArmId::a(level)), Body::Arm(ArmId::b(level + 1))],
            Self::Tl => [Body::Arm(ArmId::b(n)), Body::Top],
            Self::Tr => [Body::Arm(ArmId::a(n)), Body::Top],
        }
    }
}

impl fmt::Display for JointId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Bl => f.write_str("BL"),
            Self::Br => f.write_str("BR"),
            Self::C(stage) => write!(f, "C{stage}"),
            Self::Jl(level) => write!(f, "JL{level}"),
            Self::Jr(level) => write!(f, "JR{level}"),
            Self::Tl => f.write_str("TL"),
            Self::Tr => f.write_str("TR"),
        }
    }
}

/// A rigid body of the linkage.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Body {
    /// The base frame, which stands still.
    Base,
    /// An arm.
    Arm(ArmId),
    /// The top frame with the deck.
    Top,
}
