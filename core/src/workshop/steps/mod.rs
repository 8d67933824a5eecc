//! In what order to build: numbered steps with this design's own sizes and counts, what to measure before going on, and where care is due.

mod assembly;
mod frames;
mod pieces;

use core::cmp::Ordering;

use crate::design::{Design, DriveKind, StrutEnd};
use crate::mechanics::{Fault, Solver};
use crate::parts::{Part, Rides};
use crate::quantity::{Amount, Length, Phrase};

/// What a step is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Task {
    /// The sheet is measured.
    Stock,
    /// The pieces are cut.
    Sawing,
    /// Layers are glued face to face.
    Gluing,
    /// Arms are trimmed and their ends rounded.
    Shaping,
    /// Arms are drilled.
    Drilling,
    /// Bushings are pressed in, or the bores sealed.
    Bushings,
    /// Arms of one name are joined by their boards.
    Ladders,
    /// The base frame is joined.
    Base,
    /// Strips and stops go on the rails.
    Rails,
    /// The casters go on.
    Casters,
    /// The wheel axles are made.
    Axles,
    /// The deck gets its rails.
    Deck,
    /// The arms are pinned together.
    Scissors,
    /// The scissors go on the base.
    OntoBase,
    /// The screw goes in.
    Screw,
    /// The deck goes on the scissors.
    DeckOn,
    /// The props are cut.
    Props,
    /// The table is loaded.
    Proof,
}

/// Pieces of one number that come in at a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fitted {
    /// Their number in every list.
    pub number: u32,
    /// How many of them come in here; the rest at other steps.
    pub count: u32,
}

/// One step of the build.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What it is about.
    pub task: Task,
    /// What is made, in a few words.
    pub title: &'static str,
    /// What to do, sentence by sentence.
    pub work: Vec<Phrase>,
    /// What must be found before going on, each with its figure.
    pub tests: Vec<Phrase>,
    /// Where care is due; empty where no more than usual.
    pub caution: &'static str,
    /// The pieces that come in here, by number. Over all steps every piece of the list of parts comes in once.
    pub parts: Vec<Fitted>,
}

/// How much two diagonals may differ: half a millimetre a side is what a square and a pencil reach (common practice, no source).
const DIAGONALS: f64 = 1e-3;

/// Bars between two arms, on the wheel axles or at an end of a screw that hangs between two points.
const CROSS_BARS: [&str; 2] = ["Cross-bar", "Tube plug"];

/// What the steps are told from.
struct Bench<'a> {
    design: &'a Design,
    parts: &'a [Part],
    solver: &'a Solver,
}

/// Whether the screw goes in when the deck is on: where the deck frame carries an end of it. Elsewhere it goes in before, and holds the arms
/// while the deck is put on them.
#[must_use]
pub fn is_deck_first(design: &Design) -> bool {
    let drive = &design.drive;
    match drive.kind {
        DriveKind::TopCarriage => true,
        DriveKind::Strut => [drive.foot, drive.head].contains(&StrutEnd::Deck),
        DriveKind::BaseCarriage | DriveKind::SidePivots => false,
    }
}

/// The steps of a design in order, from its parts and its solver.
///
/// # Errors
/// Where the deck cannot stand at its lowest or its highest.
pub fn steps(design: &Design, parts: &[Part], solver: &Solver) -> Result<Vec<Step>, Fault> {
    let bench = Bench { design, parts, solver };
    let mut list = vec![
        bench.stock(),
        bench.sawing(),
        bench.gluing(),
        bench.shaping(),
        bench.drilling(),
        bench.bushings(),
    ];
    list.extend(bench.ladders());
    list.extend([bench.base(), bench.rails()?, bench.casters(), bench.axles(), bench.deck()]);
    list.extend([bench.scissors(), bench.onto_base()]);
    let (mut screw, mut deck) = (bench.screw()?, bench.deck_on());
    let mut last = [&mut screw, &mut deck];
    let deck_first = is_deck_first(design);
    if deck_first {
        last.reverse();
    }
    last[1].tests.extend(bench.levels()?);
    list.extend(if deck_first { [deck, screw] } else { [screw, deck] });
    list.extend([bench.props(), bench.proof()?]);
    Ok(list)
}

/// A length as it was entered.
fn size(length: Length) -> Amount {
    Amount::Laid(length)
}

/// A place along the table, told from the fixed pivots by its direction: a builder's rule has no minus.
fn from_pivots(place: Length) -> Phrase {
    match place.cmp(&Length::ZERO) {
        Ordering::Less => {
            say("").with(size(-place)).and(" outside the fixed pivots, on the side away from the wheels")
        }
        Ordering::Equal => say("in line with the fixed pivots"),
        Ordering::Greater => say("").with(size(place)).and(" from the fixed pivots towards the wheels"),
    }
}

fn say(words: impl Into<String>) -> Phrase {
    Phrase::new(words)
}

const fn on_base(part: &Part) -> bool {
    matches!(part.rides, Rides::Base(_))
}

const fn on_deck(part: &Part) -> bool {
    matches!(part.rides, Rides::Deck(_))
}

impl Bench<'_> {
    fn count(&self, name: &str) -> u32 {
        self.parts.iter().filter(|part| part.name == name).map(|part| part.count).sum()
    }

    /// The pieces that come in where these hold, those of one number together.
    fn fitted(&self, comes_in: impl Fn(&Part) -> bool) -> Vec<Fitted> {
        let mut list: Vec<Fitted> = Vec::new();
        for part in self.parts.iter().filter(|part| comes_in(part)) {
            match list.iter_mut().find(|known| known.number == part.number) {
                Some(known) => known.count += part.count,
                None => list.push(Fitted { number: part.number, count: part.count }),
            }
        }
        list.sort_by_key(|fitted| fitted.number);
        list
    }

    /// The pieces of these names.
    fn named(&self, names: &[&str]) -> Vec<Fitted> {
        self.fitted(|part| names.contains(&part.name))
    }
}

/// So many screws of a name, with their length.
fn screws(name: &str, count: u32, list: Vec<Part>) -> Phrase {
    let length = list.into_iter().find(|part| part.name == name).map_or(Length::ZERO, |part| part.size[0]);
    say(format!("{count} screws of ")).with(size(length))
}

/// A step without caution.
fn step(task: Task, title: &'static str, parts: Vec<Fitted>, work: Vec<Phrase>, tests: Vec<Phrase>) -> Step {
    Step { task, title, work, tests, caution: "", parts }
}
