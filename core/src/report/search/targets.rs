//! What the builder needs: figures that must hold, that would be welcome, or that do not matter; and what can be bought.
use super::kit;
use crate::catalogue::Stock;
use crate::catalogue::sheet::SheetSize;
use crate::catalogue::thread::{THREADS, Thread};
use crate::design::{BearingEnd, Demo, Design, DriveKind, set_panel, set_sheet};
use crate::quantity::{Length, System};

/// How much a target weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Stance {
    /// A table that misses it is no answer.
    Limit,
    /// Tables that keep it come first.
    Wish,
    /// It does not matter.
    Free,
}

/// A figure with its weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Target<T> {
    /// How much it weighs.
    pub stance: Stance,
    /// The figure.
    pub value: T,
}

impl<T> Target<T> {
    /// A figure that must hold.
    pub const fn limit(value: T) -> Self {
        Self { stance: Stance::Limit, value }
    }

    /// A figure that would be welcome.
    pub const fn wish(value: T) -> Self {
        Self { stance: Stance::Wish, value }
    }

    /// A figure that does not matter; it is kept to be shown.
    pub const fn free(value: T) -> Self {
        Self { stance: Stance::Free, value }
    }
}

/// A figure by which tables are compared: the less, the better.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Measure {
    /// Greatest force on the crank's handle while raising, N.
    Crank,
    /// Turns of the crank from the lowest to the highest deck.
    Turns,
    /// Greatest sag at the load, m.
    Sag,
    /// Greatest give sideways under [`crate::report::PUSH`], m.
    Give,
    /// Weight of the empty table, kg.
    Weight,
    /// Area of sheet that the parts take, m2.
    Area,
    /// Sheets to be bought, as they were laid out.
    Sheets,
    /// Cost of all that has a price; the same for every table where no price was entered.
    Cost,
    /// By how much the lowest and the highest deck miss what was asked for, added up, m.
    Height,
    /// By how much the deck is longer, and wider or narrower, than was asked for, added up, m.
    Deck,
}

/// How many figures are compared.
pub const MEASURES: usize = 10;

impl Measure {
    /// All of them, in the order of [`super::Figures`].
    pub const ALL: [Self; MEASURES] = [
        Self::Crank,
        Self::Turns,
        Self::Sag,
        Self::Give,
        Self::Weight,
        Self::Area,
        Self::Sheets,
        Self::Cost,
        Self::Height,
        Self::Deck,
    ];

    /// Its place among them.
    #[must_use]
    pub const fn at(self) -> usize {
        self as usize
    }

    /// Differences below this are none: nobody would choose by them. N, turns, m, m, kg, m2, sheets, units of money, m, m.
    #[must_use]
    pub const fn noticed(self) -> f64 {
        match self {
            Self::Crank => 5.0,
            Self::Turns => 2.0,
            Self::Sag => 1e-3,
            Self::Give => 0.25e-3,
            Self::Weight => 1.0,
            Self::Area => 0.05,
            Self::Sheets => 1.0,
            Self::Cost => 2.0,
            Self::Height | Self::Deck => 10e-3,
        }
    }

    /// A usual figure, by which it is weighed against others where no target says one.
    pub(super) const fn usual(self) -> f64 {
        match self {
            Self::Crank => 150.0,
            Self::Turns => 80.0,
            Self::Sag => 12e-3,
            Self::Give => 2.5e-3,
            Self::Weight => 50.0,
            Self::Area => 2.2,
            Self::Sheets => 1.0,
            Self::Cost => 300.0,
            Self::Height | Self::Deck => 0.1,
        }
    }
}

/// What the screw moves, and whether it pulls or pushes: the drives whose sideways figures are known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Way {
    /// Along the base, pulled towards the fixed pivots.
    BasePull,
    /// Along the base, pushed from the far end.
    BasePush,
    /// Under the deck, pulled towards the fixed pivots.
    DeckPull,
    /// Under the deck, pushed from the far end.
    DeckPush,
}

impl Way {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::BasePull, Self::BasePush, Self::DeckPull, Self::DeckPush];

    /// As a design has it.
    #[must_use]
    pub const fn drive(self) -> (DriveKind, BearingEnd) {
        match self {
            Self::BasePull => (DriveKind::BaseCarriage, BearingEnd::Fixed),
            Self::BasePush => (DriveKind::BaseCarriage, BearingEnd::Far),
            Self::DeckPull => (DriveKind::TopCarriage, BearingEnd::Fixed),
            Self::DeckPush => (DriveKind::TopCarriage, BearingEnd::Far),
        }
    }

    /// What it is called.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::BasePull => "screw in the base, pulled",
            Self::BasePush => "screw in the base, pushed",
            Self::DeckPull => "screw under the deck, pulled",
            Self::DeckPush => "screw under the deck, pushed",
        }
    }
}

/// What the builder needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Targets {
    /// Whatever is not looked for is taken from here: the load, stock and sheet, prices, what materials stand, friction, tubes, wheels and
    /// casters.
    pub base: Design,
    /// The lowest deck: at most this high.
    pub lowest: Target<Length>,
    /// The highest deck: at least this high.
    pub highest: Target<Length>,
    /// Length of the deck: the arms must fit beneath it.
    pub deck_length: Target<Length>,
    /// Width of the deck.
    pub deck_width: Target<Length>,
    /// How far the load's middle stands from the deck's, away from the fixed pivots.
    pub off_middle: Length,
    /// The most that is accepted of each figure, in the order of [`Measure::ALL`].
    pub most: [Target<f64>; MEASURES],
    /// Time for the whole lift at the pace of the base design's crank, at most, s; it counts with the turns.
    pub time: Target<f64>,
    /// Screws one can buy.
    pub threads: Vec<&'static Thread>,
    /// Pivot bolts one can buy.
    pub pins: Vec<Length>,
    /// Drives one would build.
    pub ways: Vec<Way>,
    /// Stages at most.
    pub stages: i64,
    /// In whose units sizes are rounded.
    pub units: System,
}

/// Screws that are offered in front, by their numbers in the catalogue: single start, as they hold by themselves.
const METRIC_THREADS: [u16; 4] = [105, 107, 109, 112];
const INCH_THREADS: [u16; 4] = [406, 407, 408, 409];

impl Targets {
    /// Targets to begin with: the paper-stack lift's load on a table that comes lower than that demo does, in the units of a reader; the sizes
    /// of an inch reader are those of the potting bench's hardware.
    #[must_use]
    pub fn first(system: System) -> Self {
        let inch = system == System::Inch;
        let mut base = if inch { Demo::PottingBench } else { Demo::PaperLift }.design();
        base.load = Demo::PaperLift.design().load;
        if inch {
            base.load = Demo::PottingBench.design().load;
        }
        let (lowest, highest) = if inch {
            (Length::inch(24.0), Length::inch(42.0))
        } else {
            (Length::mm(520.0), Length::mm(1160.0))
        };
        let (length, width) = if inch {
            (Length::inch(42.0), Length::inch(24.0))
        } else {
            (Length::mm(720.0), Length::mm(560.0))
        };
        let usual = |measure: Measure| match measure {
            Measure::Crank => Target::limit(150.0),
            Measure::Turns => Target::wish(70.0),
            Measure::Sheets => Target::limit(1.0),
            Measure::Sag => Target::wish(0.012),
            Measure::Give => Target::wish(0.0025),
            other => Target::free(other.usual()),
        };
        let ids = if inch { INCH_THREADS } else { METRIC_THREADS };
        Self {
            lowest: Target::limit(lowest),
            highest: Target::limit(highest),
            deck_length: Target::wish(length),
            deck_width: Target::limit(width),
            off_middle: if inch { Length::ZERO } else { Length::mm(-50.0) },
            most: Measure::ALL.map(usual),
            threads: THREADS.iter().filter(|row| ids.contains(&row.id)).collect(),
            pins: kit::pins(system).iter().copied().filter(|pin| *pin >= Length::mm(12.0)).collect(),
            ways: vec![Way::BasePull, Way::DeckPush],
            time: Target::free(150.0),
            stages: 3,
            units: system,
            base,
        }
    }

    /// Takes the stock from a panel of the catalogue; boards and deck are cut from it too.
    pub fn set_panel(&mut self, panel: &Stock) {
        set_panel(&mut self.base, panel);
    }

    /// Takes the sheets to be bought from a size of the catalogue.
    pub fn set_sheet(&mut self, sheet: &SheetSize) {
        set_sheet(&mut self.base, sheet);
    }

    /// The target of a figure; that of the turns with the time that is allowed.
    #[must_use]
    pub fn of(&self, measure: Measure) -> Target<f64> {
        let most = self.most[measure.at()];
        if measure != Measure::Turns || self.time.stance == Stance::Free {
            return most;
        }
        let turns =
            Target { value: self.time.value / 60.0 * self.base.drive.pace.to_per_minute(), ..self.time };
        match (most.stance, turns.stance) {
            (one, other) if one == other => {
                if turns.value < most.value {
                    turns
                } else {
                    most
                }
            }
            (Stance::Limit, _) => most,
            (_, Stance::Limit) | (Stance::Free, _) => turns,
            _ => most,
        }
    }

    /// The most that is allowed of a figure; none where it is no limit.
    #[must_use]
    pub fn limit(&self, measure: Measure) -> Option<f64> {
        let target = self.of(measure);
        (target.stance == Stance::Limit).then_some(target.value)
    }

    /// What sizes are rounded to.
    pub(super) const fn step(&self) -> Length {
        match self.units {
            System::Metric => Length::mm(1.0),
            System::Inch => Length::inch(1.0 / 16.0),
        }
    }

    /// What the length of an arm and of a screw is rounded to.
    pub(super) const fn long_step(&self) -> Length {
        match self.units {
            System::Metric => Length::mm(10.0),
            System::Inch => Length::inch(0.5),
        }
    }

    /// A figure's weight in a sum of many: 1 at its target, or at what is usual.
    pub(super) fn weighed(&self, measure: Measure, value: f64) -> f64 {
        let target = self.of(measure);
        let scale = if target.stance == Stance::Free { measure.usual() } else { target.value };
        value / scale.max(1e-9)
    }
}
