//! The hole table: every hole of a part from one end and one edge, with its bit and how exact it must be.
use crate::parts::{Form, Hole, Housing, Joint, Part, Purpose};
use crate::quantity::figures::{self, Fit};
use crate::quantity::{Length, System};

/// A bit to drill with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bit {
    /// What sort of bit.
    pub kind: &'static str,
    /// Its diameter.
    pub diameter: Length,
    /// Diameter of the countersink that follows; none where there is none.
    pub countersink: Option<Length>,
}

/// One hole in the table.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Its letter, in order from the datum end; holes bored alike at several places have one each.
    pub letter: String,
    /// From the datum end.
    pub along: Length,
    /// From the datum edge.
    pub across: Length,
    /// What to drill it with.
    pub bit: Bit,
    /// What it is for.
    pub purpose: Purpose,
    /// How far it may be off in any direction.
    pub tolerance: Length,
    /// The joint whose line runs through it.
    pub joint: Option<Joint>,
}

impl Row {
    /// Whether a joint turns on it, so that its place is given closer than a rule can be read.
    #[must_use]
    pub const fn is_held(&self) -> bool {
        matches!(self.purpose, Purpose::Bushing | Purpose::Pivot)
    }

    /// Its bit, and the countersink that follows, in the units of a system.
    #[must_use]
    pub fn bits(&self, system: System) -> (String, Option<String>) {
        let fit = if self.is_held() { Fit::Close } else { Fit::Free };
        let sunk = self.bit.countersink.map(|wide| figures::bit(wide, Fit::Free, system).number);
        (bit_words(self.bit.diameter, fit, system), sunk)
    }
}

/// A bit with its unit where it is not that of the system.
fn bit_words(diameter: Length, fit: Fit, system: System) -> String {
    let bit = figures::bit(diameter, fit, system);
    if bit.unit == figures::size(0.0, system).unit { bit.number } else { bit.to_string() }
}

/// A distance from the datum in the units of a system; `held` where a joint turns on what is there.
#[must_use]
pub fn place(length: Length, held: bool, system: System) -> String {
    if held { figures::pinned(length, system) } else { figures::marked(length, system) }.number
}

/// The holes and recesses of one kind of part.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// The part's number.
    pub part: u32,
    /// Its name.
    pub name: String,
    /// How many are drilled so.
    pub count: u32,
    /// Length, width and thickness.
    pub size: [Length; 3],
    /// Its holes.
    pub rows: Vec<Row>,
    /// Its recesses, cut after drilling.
    pub housings: Vec<Housing>,
}

/// Holes wider than this are drilled with a Forstner bit, which stays where it is set (common practice, no source).
const FORSTNER: Length = Length::mm(12.0);

/// A countersunk head is twice as wide as its screw (ISO 7721 and ASME B18.6.1, rounded).
const HEAD: i64 = 2;

/// How far holes may be off that no joint depends on, and those a bolt must find its way through (common practice, no source).
const LOOSE: Length = Length::mm(1.0);
const BOLTED: Length = Length::mm(0.5);

/// The hole tables of all parts that have holes or recesses, by number. `exact` is how far the holes of the pivots may be off.
#[must_use]
pub fn tables(parts: &[Part], exact: Length) -> Vec<Table> {
    let mut tables: Vec<Table> = Vec::new();
    for part in parts.iter().filter(|part| !(part.holes.is_empty() && part.housings.is_empty())) {
        if let Some(known) = tables.iter_mut().find(|table| table.part == part.number) {
            known.count += part.count;
            continue;
        }
        let rows = part.holes.iter().enumerate().map(|(at, hole)| Row {
            letter: letter(at),
            along: hole.along,
            across: hole.across,
            bit: bit(part, hole),
            purpose: hole.purpose,
            tolerance: tolerance(hole, exact),
            joint: hole.joint,
        });
        tables.push(Table {
            part: part.number,
            name: part.title(),
            count: part.count,
            size: part.size,
            rows: rows.collect(),
            housings: part.housings.clone(),
        });
    }
    tables.sort_by_key(|table| table.part);
    tables
}

/// A, B, ... Z, AA, AB, ...
fn letter(at: usize) -> String {
    let sign = |at: usize| char::from(b'A' + u8::try_from(at % 26).unwrap_or(0));
    if at < 26 { sign(at).to_string() } else { format!("{}{}", sign(at / 26 - 1), sign(at)) }
}

fn bit(part: &Part, hole: &Hole) -> Bit {
    let wood = matches!(part.form, Form::Sheet | Form::Batten);
    let kind = match (wood, hole.diameter > FORSTNER) {
        (true, true) => "Forstner bit",
        (true, false) => "brad-point bit",
        (false, _) => "twist bit",
    };
    let countersink = (hole.purpose == Purpose::Countersunk).then(|| hole.diameter * HEAD);
    Bit { kind, diameter: hole.diameter, countersink }
}

fn tolerance(hole: &Hole, exact: Length) -> Length {
    match hole.purpose {
        Purpose::Bushing | Purpose::Pivot => exact,
        Purpose::Clearance | Purpose::Passage => BOLTED,
        Purpose::Countersunk | Purpose::Pilot => LOOSE,
    }
}

/// The pilot hole a kind of wood screw wants.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pilot {
    /// Number of the screw.
    pub part: u32,
    /// Its name.
    pub name: &'static str,
    /// How many.
    pub count: u32,
    /// Diameter of the pilot hole.
    pub diameter: Length,
    /// How deep it goes into the piece that holds the thread.
    pub depth: Length,
}

/// The pilot holes of all wood screws, drilled through the holes of the outer piece.
#[must_use]
pub fn pilots(parts: &[Part]) -> Vec<Pilot> {
    let mut list: Vec<Pilot> = Vec::new();
    for part in parts.iter().filter(|part| part.form == Form::WoodScrew) {
        let screw = crate::parts::WoodScrew { diameter: part.size[1], length: part.size[0] };
        match list.iter_mut().find(|pilot| pilot.part == part.number) {
            Some(known) => known.count += part.count,
            None => list.push(Pilot {
                part: part.number,
                name: part.name,
                count: part.count,
                diameter: screw.pilot_hole(),
                depth: part.size[2],
            }),
        }
    }
    list
}
