//! What is tried: every combination of a few values of each thing that is looked for.
use super::targets::{Stance, Target, Targets, Way};
use crate::catalogue::thread::Thread;
use crate::quantity::{Length, System};

/// What holds the arms of a stage together across the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Brace {
    /// Nothing.
    None,
    /// Cross boards on all arms.
    Boards,
    /// Cross boards on all arms, and crossed straps on the arms A.
    Straps,
}

impl Brace {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::None, Self::Boards, Self::Straps];

    /// What it is called, behind a comma.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::None => "no boards",
            Self::Boards => "cross boards",
            Self::Straps => "cross boards and X straps",
        }
    }
}

/// Values to be combined. Every list is short; what the list of one thing leaves out is not looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Space {
    /// Stages.
    pub stages: Vec<i64>,
    /// Angle of the arms at the highest deck, degrees; with the highest deck and the stages it says how long an arm is.
    pub angles: Vec<f64>,
    /// Widths of an arm.
    pub widths: Vec<Length>,
    /// Layers of an arm.
    pub layers: Vec<i64>,
    /// What holds the arms together.
    pub braces: Vec<Brace>,
    /// Where the screw sits.
    pub ways: Vec<Way>,
    /// Screws.
    pub threads: Vec<&'static Thread>,
    /// Pivot bolts.
    pub pins: Vec<Length>,
    /// Lowest decks.
    pub lowest: Vec<Length>,
    /// Highest decks.
    pub highest: Vec<Length>,
    /// Widths of the deck.
    pub deck_widths: Vec<Length>,
}

/// One combination.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    /// Stages.
    pub stages: i64,
    /// Angle of the arms at the highest deck, degrees.
    pub angle: f64,
    /// Width of an arm.
    pub width: Length,
    /// Layers of an arm.
    pub layers: i64,
    /// What holds the arms together.
    pub brace: Brace,
    /// Where the screw sits.
    pub way: Way,
    /// The screw.
    pub thread: &'static Thread,
    /// The pivot bolts.
    pub pin: Length,
    /// The lowest deck.
    pub lowest: Length,
    /// The highest deck.
    pub highest: Length,
    /// Width of the deck.
    pub deck_width: Length,
}

/// Arms stand at most at 62 degrees (60 to 65, common practice, no source): the shortest arms. Flatter ones are longer.
const ANGLES: [f64; 6] = [62.0, 58.0, 54.0, 50.0, 46.0, 42.0];

const WIDTHS_MM: [f64; 4] = [50.0, 60.0, 75.0, 90.0];
const WIDTHS_INCH: [f64; 4] = [2.0, 2.5, 3.0, 3.5];

/// By how much a wish for heights and widths may be missed in a proposal, mm.
const MISSED: [f64; 3] = [0.0, 40.0, 80.0];

impl Space {
    /// The usual values for some targets.
    #[must_use]
    pub fn of(targets: &Targets) -> Self {
        let widths = match targets.units {
            System::Metric => WIDTHS_MM.map(Length::mm),
            System::Inch => WIDTHS_INCH.map(Length::inch),
        };
        let thick = targets.base.arms.thickness.to_mm();
        // About 15 to 55 mm.
        let layers = (1..=4).filter(|layers| (14.0..=56.0).contains(&(thick * *layers as f64))).take(3);
        Self {
            stages: (1..=targets.stages.clamp(1, 4)).collect(),
            angles: ANGLES.to_vec(),
            widths: widths.to_vec(),
            layers: layers.collect(),
            braces: Brace::ALL.to_vec(),
            ways: targets.ways.clone(),
            threads: targets.threads.clone(),
            pins: targets.pins.clone(),
            lowest: around(targets.lowest, 1.0),
            highest: around(targets.highest, -1.0),
            deck_widths: around(targets.deck_width, 1.0),
        }
    }

    const fn counts(&self) -> [usize; 11] {
        [
            self.stages.len(),
            self.lowest.len(),
            self.highest.len(),
            self.deck_widths.len(),
            self.angles.len(),
            self.ways.len(),
            self.threads.len(),
            self.widths.len(),
            self.pins.len(),
            self.layers.len(),
            self.braces.len(),
        ]
    }

    /// How many combinations there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.counts().iter().fold(1, |all, count| all.saturating_mul(*count))
    }

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// A combination by its place, from 0; none beyond the last.
    #[must_use]
    pub fn choice(&self, at: usize) -> Option<Choice> {
        if at >= self.len() {
            return None;
        }
        let mut left = at;
        let mut places = [0; 11];
        for (place, count) in places.iter_mut().zip(self.counts()).rev() {
            *place = left % count;
            left /= count;
        }
        let [stages, lowest, highest, deck, angle, way, thread, width, pin, layers, brace] = places;
        Some(Choice {
            stages: self.stages[stages],
            lowest: self.lowest[lowest],
            highest: self.highest[highest],
            deck_width: self.deck_widths[deck],
            angle: self.angles[angle],
            way: self.ways[way],
            thread: self.threads[thread],
            width: self.widths[width],
            pin: self.pins[pin],
            layers: self.layers[layers],
            brace: self.braces[brace],
        })
    }
}

/// The value itself where it is a limit; where it is not, also some that miss it, in the direction of easier tables.
fn around(target: Target<Length>, easier: f64) -> Vec<Length> {
    let times = match target.stance {
        Stance::Limit => return vec![target.value],
        Stance::Wish => 1.0,
        Stance::Free => 1.5,
    };
    MISSED.iter().map(|by| target.value + Length::mm(easier * times * by)).collect()
}
