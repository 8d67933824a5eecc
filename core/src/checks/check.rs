//! One check: what is asked of a part, what it can give, and how that was reckoned.
use super::level::Loaded;
use crate::catalogue::Source;
use crate::mechanics::{ArmId, JointId};
use crate::quantity::{Amount, Phrase, figures};

/// From this share of the capacity on a check says watch: what is left then goes with a heavier load or a weaker sheet (common
/// practice, no source).
pub const NEAR: f64 = 0.8;

/// The largest ratio that is told apart: beyond it, or where there is no capacity at all, this stands instead.
pub const MOST: f64 = 999.0;

/// Which kind of part a check is about: the heading it stands under.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// The arms.
    Arms,
    /// Pivot bolts, bushings and the wood around them.
    Pins,
    /// Wheels, axles and cross-bars.
    Carriage,
    /// The screw and its nut.
    Screw,
    /// What the screw's thrust presses on.
    Seats,
    /// Deck, rails and base beams.
    Frames,
    /// Casters and tipping.
    Stability,
    /// The crank, or a drill in its place.
    Crank,
    /// Gaps that close.
    Gaps,
}

impl Group {
    /// Every group, in reading order.
    pub const ALL: [Self; 9] = [
        Self::Arms,
        Self::Pins,
        Self::Carriage,
        Self::Screw,
        Self::Seats,
        Self::Frames,
        Self::Stability,
        Self::Crank,
        Self::Gaps,
    ];

    /// The heading above its checks.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Arms => "Arms",
            Self::Pins => "Pins and bolts",
            Self::Carriage => "Wheels, axles, carriages",
            Self::Screw => "Screw and nut",
            Self::Seats => "Seats of the screw",
            Self::Frames => "Frames and deck",
            Self::Stability => "Casters and tipping",
            Self::Crank => "Crank",
            Self::Gaps => "Gaps that close",
        }
    }
}

/// The part a check is about, to be marked in the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Member {
    /// An arm.
    Arm(ArmId),
    /// A pivot, or the arm on its axle.
    Joint(JointId),
    /// The wheels on the base rails, with their axle.
    BaseWheels,
    /// The wheels under the deck, with their axle.
    DeckWheels,
    /// The bar across the table that the nut, or an end of a free screw, moves.
    CrossBar,
    /// The tube across a frame that holds the thrust bearing.
    BearingTube,
    /// The screw.
    Screw,
    /// Its nut.
    Nut,
    /// Its thrust bearing.
    ThrustBearing,
    /// The deck panel.
    Deck,
    /// The rails under the deck.
    DeckRails,
    /// The beams of the base.
    BaseBeams,
    /// The casters on the side of the fixed pivots.
    LeftCasters,
    /// The casters on the side of the wheels.
    RightCasters,
    /// The crank.
    Crank,
}

/// What a check says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// More is asked than the part can give.
    Over,
    /// More than [`NEAR`] of it.
    Watch,
    /// A rule of thumb or of a code for bigger works is not kept, or something to know; other checks decide.
    Note,
    /// It holds.
    Fine,
}

/// What a check is worth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// Passing it means that a part fails.
    Limit,
    /// It is worth knowing; never more than a note.
    Advice,
}

/// A step a builder would take to mend a check; the report tries it out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lever {
    /// One layer more in the arms.
    ArmLayer,
    /// Wider arms.
    ArmWidth,
    /// Longer ends past the pins.
    ArmEnds,
    /// Cross boards on both pairs of arms.
    Boards,
    /// The next thicker bolt.
    Pin,
    /// A wider bushing.
    Bush,
    /// Bolts of the next higher class.
    BoltClass,
    /// Thicker wheel axles.
    Axle,
    /// A bigger cross-bar.
    CrossBar,
    /// A bigger tube for the thrust bearing.
    BearingTube,
    /// The next thicker thread.
    Thread,
    /// The thrust bearing at the other end, so that the screw is pulled.
    Pull,
    /// A longer nut.
    Nut,
    /// Deeper rails under the deck.
    DeckRails,
    /// Deeper base beams.
    BaseBeams,
    /// A thicker deck.
    Deck,
    /// One layer more in the frames.
    FrameLayer,
    /// Casters farther out.
    Casters,
    /// The load in the middle between the casters.
    Load,
    /// A higher lowest deck.
    HigherStop,
    /// A longer crank.
    LongerCrank,
}

/// One check over the whole lift.
#[derive(Clone, Debug)]
pub struct Check {
    /// Its name in addresses and tests, for ever.
    pub id: &'static str,
    /// The heading it stands under.
    pub group: Group,
    /// What is checked.
    pub title: &'static str,
    /// The part where it is worst.
    pub member: Member,
    /// What it is worth.
    pub weight: Weight,
    /// What it says.
    pub verdict: Verdict,
    /// What is asked there.
    pub demand: Amount,
    /// What it can give there.
    pub capacity: Amount,
    /// Demand over capacity there, at most [`MOST`].
    pub ratio: f64,
    /// Deck height where it is worst, m.
    pub height: f64,
    /// Deck height, m, and ratio at every height looked at, from the lowest up.
    pub curve: Vec<(f64, f64)>,
    /// The formula in symbols.
    pub formula: &'static str,
    /// The same with the numbers of the worst height.
    pub numbers: Phrase,
    /// Where it comes from.
    pub source: Source,
    /// Steps worth trying.
    pub levers: &'static [Lever],
}

impl Check {
    /// The ratio at a height that was looked at, m; none where the check does not apply there.
    #[must_use]
    pub fn ratio_at(&self, height: f64) -> Option<f64> {
        let at = self.curve.binary_search_by(|looked| looked.0.total_cmp(&height)).ok()?;
        Some(self.curve[at].1)
    }

    /// The ratio in words; see [`ratio_words`].
    #[must_use]
    pub fn ratio_words(&self) -> String {
        ratio_words(self.ratio)
    }
}

/// A ratio of demand to capacity in words: two decimals, fewer where it is large.
#[must_use]
pub fn ratio_words(ratio: f64) -> String {
    match ratio {
        ratio if ratio >= 100.0 => "over 100".to_owned(),
        ratio if ratio >= 10.0 => figures::factor(ratio).number,
        ratio => figures::ratio(ratio).number,
    }
}

/// A part of a whole: nothing where nothing is asked, [`MOST`] where there is nothing to take it from, whatever is asked; never a NaN.
pub(super) fn part(asked: f64, given: f64) -> f64 {
    if given > 0.0 { if asked <= 0.0 { 0.0 } else { (asked / given).min(MOST) } } else { MOST }
}

/// What is asked of a part and what it can give, at one height, in one unit.
#[derive(Clone, Copy, Debug)]
pub(super) struct Use {
    pub member: Member,
    pub demand: f64,
    pub capacity: f64,
}

impl Use {
    pub fn new(member: Member, demand: f64, capacity: f64) -> Self {
        Self { member, demand, capacity }
    }

    /// Demand over capacity: never a NaN, at most [`MOST`].
    pub fn ratio(&self) -> f64 {
        part(self.demand, self.capacity)
    }

    /// The one with the greater ratio; the first of equals.
    pub fn or(self, other: Self) -> Self {
        if other.ratio() > self.ratio() { other } else { self }
    }
}

/// The worst of several; none of none.
pub(super) fn worst(uses: impl IntoIterator<Item = Use>) -> Option<Use> {
    uses.into_iter().reduce(Use::or)
}

/// What does not depend on the design: everything about a check but its figures.
pub(super) struct Rule {
    pub id: &'static str,
    pub group: Group,
    pub title: &'static str,
    pub weight: Weight,
    pub formula: &'static str,
    pub source: Source,
    /// The sort of figure demand and capacity are.
    pub unit: fn(f64) -> Amount,
    pub levers: &'static [Lever],
}

impl Rule {
    /// The check over all heights: `at` looks at one, `numbers` fills the formula in at the worst.
    /// None where it does not apply at any height.
    pub fn check<'a, 'l>(
        &self,
        heights: &'l [Loaded<'a>],
        at: impl Fn(&'l Loaded<'a>) -> Option<Use>,
        numbers: impl Fn(&'l Loaded<'a>, &Use) -> Phrase,
    ) -> Option<Check> {
        let mut curve = Vec::with_capacity(heights.len());
        let mut found: Option<(&Loaded, Use)> = None;
        for height in heights {
            let Some(here) = at(height) else { continue };
            curve.push((height.deck(), here.ratio()));
            if found.is_none_or(|(_, most)| here.ratio() > most.ratio()) {
                found = Some((height, here));
            }
        }
        let (height, most) = found?;
        let ratio = most.ratio();
        Some(Check {
            id: self.id,
            group: self.group,
            title: self.title,
            member: most.member,
            weight: self.weight,
            verdict: self.verdict(ratio),
            demand: (self.unit)(most.demand),
            capacity: (self.unit)(most.capacity),
            ratio,
            height: height.deck(),
            curve,
            formula: self.formula,
            numbers: numbers(height, &most),
            source: self.source,
            levers: self.levers,
        })
    }

    fn verdict(&self, ratio: f64) -> Verdict {
        match self.weight {
            Weight::Limit if ratio > 1.0 => Verdict::Over,
            Weight::Limit if ratio > NEAR => Verdict::Watch,
            Weight::Advice if ratio > 1.0 => Verdict::Note,
            _ => Verdict::Fine,
        }
    }
}
