//! What the builder must hear: a sentence, how bad it is, where and at which height it happens, and what would help.
use crate::checks::Verdict;
use crate::order::order;
use crate::quantity::Phrase;

/// How bad a finding is, worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Grade {
    /// A limit is passed.
    Over,
    /// Near a limit, or something to know before one builds.
    Watch,
    /// Looked at and good.
    Fine,
}

impl Grade {
    /// What a check says, as a grade: what is worth knowing only is no fault.
    #[must_use]
    pub const fn of(verdict: Verdict) -> Self {
        match verdict {
            Verdict::Over => Self::Over,
            Verdict::Watch => Self::Watch,
            Verdict::Note | Verdict::Fine => Self::Fine,
        }
    }

    /// Its word on page and paper.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Over => "Over",
            Self::Watch => "Watch",
            Self::Fine => "Fine",
        }
    }
}

/// The place in the drawing a finding belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spot {
    /// The crank's handle.
    Crank,
    /// The screw.
    Screw,
    /// The wheels on the base rails.
    BaseWheel,
    /// The wheels under the deck.
    DeckWheel,
    /// The lower fixed pivots.
    BasePivot,
    /// The upper fixed pivots.
    DeckPivot,
    /// The left pair of casters.
    LeftCaster,
    /// The right pair of casters.
    RightCaster,
    /// The middle of the arms.
    Arms,
    /// The deck.
    Deck,
    /// The base beams.
    Base,
}

/// The curve in a plot a finding belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Curve {
    /// Screw force, raising.
    ScrewForce,
    /// Sag at the load.
    Sag,
    /// How far the deck gives sideways.
    Give,
    /// Critical load as a multiple of the load.
    Multiple,
}

/// What is tried to find what would help.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cure {
    /// The steps that go with a check, by its id.
    Check(&'static str),
    /// Steps against the sag.
    Sag,
    /// A higher lowest deck and a longer crank.
    Crank,
    /// Casters or load moved, and the steps that go with the check.
    Tipping,
}

/// One thing found.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// How bad it is.
    pub grade: Grade,
    /// How far: demand over capacity, or any number that grows as things get worse; orders findings of one grade.
    pub ratio: f64,
    /// What was found: what, how much, at which height, against which limit.
    pub phrase: Phrase,
    /// What would help; none where nothing needs help, or where it has yet to be found.
    pub remedy: Option<Phrase>,
    /// How [`super::Report::remedy`] finds what would help, since that takes longer than the finding; none where there is nothing to find.
    pub cure: Option<Cure>,
    /// Deck height at which it happens, m; none where it holds at all heights.
    pub height: Option<f64>,
    /// Where in the drawing.
    pub spot: Spot,
    /// On which curve, if on one.
    pub curve: Option<Curve>,
}

impl Finding {
    /// Whether both say the same of two designs, each with its own figures; for findings that are no praise.
    #[must_use]
    pub fn is_like(&self, other: &Self) -> bool {
        match (self.cure, other.cure) {
            (Some(one), Some(two)) => one == two,
            _ => self.spot == other.spot && self.phrase.opening() == other.phrase.opening(),
        }
    }
}

/// Findings worst first.
#[must_use]
pub(super) fn sorted(mut findings: Vec<Finding>) -> Vec<Finding> {
    order(&mut findings, |one, other| one.grade.cmp(&other.grade).then(other.ratio.total_cmp(&one.ratio)));
    findings
}
