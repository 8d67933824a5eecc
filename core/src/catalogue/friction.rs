//! Friction: ranges for pairs of materials, arms of rolling resistance, and what to assume where nothing is known.

use super::{Source, Standing, listed};
use crate::quantity::{Length, Ratio};

/// How two surfaces meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Contact {
    /// Screw in nut.
    Thread,
    /// Thrust collar or washer: running; starting takes about a third more.
    Collar,
    /// Pin in a dry bushing.
    Bush,
    /// Flat on flat.
    Sliding,
}

/// A pair of materials and the range of its coefficient of friction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pair {
    /// The row's number, unique in the table.
    pub id: u16,
    /// The two materials, and what is between them.
    pub name: &'static str,
    /// How they meet.
    pub contact: Contact,
    /// Least and greatest coefficient of friction.
    pub range: (Ratio, Ratio),
    /// Where the range comes from.
    pub source: Source,
}

impl Pair {
    /// The middle of the range: what to begin with.
    #[must_use]
    pub const fn middle(&self) -> Ratio {
        Ratio::from_steps(self.range.0.steps().midpoint(self.range.1.steps()))
    }
}

const SHIGLEY_8_5: Source = Source::new("Shigley 9e table 8-5, page 422", Standing::Read);
const SHIGLEY_8_6: Source = Source::new("Shigley 9e table 8-6, page 422", Standing::Read);
const TRIBOLOGY: Source = Source::new("Neale, Tribology Handbook, table of rubbing bearings", Standing::Read);
const FORMULA_BANK: Source =
    Source::new("Formula collection of a maker of drives, table 7.21", Standing::Read);
const FORMULA_BANK_ROLLING: Source =
    Source::new("Formula collection of a maker of drives, table 7.22", Standing::Read);

const fn pair(id: u16, name: &'static str, contact: Contact, low: f64, high: f64, source: Source) -> Pair {
    Pair { id, name, contact, range: (Ratio::of(low), Ratio::of(high)), source }
}

/// Pairs in the order they are offered.
pub static PAIRS: [Pair; 27] = [
    pair(101, "Steel screw, dry, steel nut", Contact::Thread, 0.15, 0.25, SHIGLEY_8_5),
    pair(102, "Steel screw, dry, bronze nut", Contact::Thread, 0.15, 0.23, SHIGLEY_8_5),
    pair(103, "Steel screw, dry, brass nut", Contact::Thread, 0.15, 0.19, SHIGLEY_8_5),
    pair(104, "Steel screw, dry, cast iron nut", Contact::Thread, 0.15, 0.25, SHIGLEY_8_5),
    pair(105, "Steel screw, oiled, steel nut", Contact::Thread, 0.11, 0.17, SHIGLEY_8_5),
    pair(106, "Steel screw, oiled, bronze nut", Contact::Thread, 0.1, 0.16, SHIGLEY_8_5),
    pair(107, "Steel screw, oiled, brass nut", Contact::Thread, 0.1, 0.15, SHIGLEY_8_5),
    pair(108, "Steel screw, oiled, cast iron nut", Contact::Thread, 0.11, 0.17, SHIGLEY_8_5),
    pair(109, "Bronze screw, steel nut", Contact::Thread, 0.08, 0.12, SHIGLEY_8_5),
    pair(110, "Bronze screw, bronze nut", Contact::Thread, 0.04, 0.06, SHIGLEY_8_5),
    pair(111, "Bronze screw, cast iron nut", Contact::Thread, 0.06, 0.09, SHIGLEY_8_5),
    pair(201, "Soft steel collar on cast iron", Contact::Collar, 0.12, 0.17, SHIGLEY_8_6),
    pair(202, "Hard steel collar on cast iron", Contact::Collar, 0.09, 0.15, SHIGLEY_8_6),
    pair(203, "Soft steel collar on bronze", Contact::Collar, 0.08, 0.1, SHIGLEY_8_6),
    pair(204, "Hard steel collar on bronze", Contact::Collar, 0.06, 0.08, SHIGLEY_8_6),
    pair(301, "Filled plastic bushing, dry", Contact::Bush, 0.15, 0.4, TRIBOLOGY),
    pair(302, "Filled plastic on metal backing", Contact::Bush, 0.2, 0.35, TRIBOLOGY),
    pair(303, "Filled PTFE, dry", Contact::Bush, 0.05, 0.35, TRIBOLOGY),
    pair(304, "Filled PTFE on steel backing, dry", Contact::Bush, 0.05, 0.3, TRIBOLOGY),
    pair(305, "Woven PTFE on metal backing, dry", Contact::Bush, 0.03, 0.3, TRIBOLOGY),
    pair(401, "Steel on steel, at rest, dry", Contact::Sliding, 0.12, 0.6, FORMULA_BANK),
    pair(402, "Steel on steel, sliding, greased", Contact::Sliding, 0.04, 0.25, FORMULA_BANK),
    pair(403, "Wood on steel, at rest, dry", Contact::Sliding, 0.45, 0.75, FORMULA_BANK),
    pair(404, "Wood on steel, sliding, dry", Contact::Sliding, 0.3, 0.6, FORMULA_BANK),
    pair(405, "Wood on wood, at rest, dry", Contact::Sliding, 0.4, 0.75, FORMULA_BANK),
    pair(406, "Wood on wood, sliding, dry", Contact::Sliding, 0.3, 0.5, FORMULA_BANK),
    pair(407, "Steel on plastic, sliding, dry", Contact::Sliding, 0.18, 0.35, FORMULA_BANK),
];
listed!(Pair, PAIRS);

/// The arm of rolling resistance: how far ahead of the wheel's middle the floor pushes back. The force to roll is the
/// load times this arm over the wheel's radius, without the axle's friction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RollingArm {
    /// The row's number, unique in the table.
    pub id: u16,
    /// Wheel and track.
    pub name: &'static str,
    /// Least and greatest arm.
    pub range: (Length, Length),
    /// Where the range comes from.
    pub source: Source,
}

const fn arm(id: u16, name: &'static str, low_mm: f64, high_mm: f64) -> RollingArm {
    RollingArm { id, name, range: (Length::mm(low_mm), Length::mm(high_mm)), source: FORMULA_BANK_ROLLING }
}

/// Rolling pairs in the order they are offered.
pub static ROLLING: [RollingArm; 7] = [
    arm(501, "Steel on steel", 0.5, 0.5),
    arm(502, "Wood on steel", 1.2, 1.2),
    arm(503, "Plastic on steel", 2.0, 2.0),
    arm(504, "Hard rubber on steel", 7.0, 7.0),
    arm(505, "Plastic on concrete", 5.0, 5.0),
    arm(506, "Hard rubber on concrete", 10.0, 20.0),
    arm(507, "Medium-hard rubber on concrete", 15.0, 35.0),
];
listed!(RollingArm, ROLLING);

/// What friction falls to in a shaken screw, as a part of itself, when judging whether it holds.
pub const SHAKEN: Ratio = Ratio::of(0.6);
