//! Where the formulas and values come from, what they leave out, and how far each can be trusted.
use std::collections::BTreeSet;
use std::rc::Rc;

use super::document::{Block, Cell, Document, Table};
use super::{Page, Reader};
use crate::catalogue::Source;
use crate::report::Report;
use crate::share::address::View;

/// Methods of the mechanics: what is computed, how, and its source.
const METHODS: [[&str; 3]; 10] = [
    [
        "Positions of all joints",
        "Closed form of equal and unequal crossed arms; the deck follows from its pivot and its wheel.",
        "Plane geometry; held to an independent reference solver (unpublished) to 1e-9.",
    ],
    [
        "Forces without friction",
        "Equilibrium of every body at once, one system a height; the screw force agrees with the work the loads do.",
        "Statics; principle of virtual work.",
    ],
    [
        "Friction in pins and wheels",
        "Friction circle at each pin, rolling and bearing friction at each wheel, repeated until the forces stand still, raising and lowering.",
        "Coulomb friction; coefficients as listed at the inputs.",
    ],
    [
        "Torque on the screw, efficiency, whether it holds",
        "Square and angled threads with collar or bearing friction.",
        "Shigley's Mechanical Engineering Design, power screws.",
    ],
    [
        "Sag, tilt and drift of the deck",
        "Unit load method over bending and stretching of arms, pins, screw and its seats; rails as beams on the wheels.",
        "Any text on structural analysis; arms with shear after Timoshenko.",
    ],
    [
        "Play",
        "The largest movement that clearances allow, from the joint forces of unit loads.",
        "Worked out here; checked against random draws of every clearance.",
    ],
    [
        "Sway, twist, roll",
        "Linear space frame: arms as beams with shear, real pins, springs for rocking, slip and guides.",
        "Stiffness method; held to an open frame library and an independent reference solver (unpublished).",
    ],
    [
        "Load under which the table folds up",
        "Smallest multiple of the load at which the geometric stiffness cancels the elastic one.",
        "Linear buckling; Euler's column as a check.",
    ],
    [
        "How exact the holes must be",
        "Change of tilt, twist and side difference for a change of each arm's hole spacing; worst case and root of the sum of squares.",
        "Worked out here; checked against random draws through the whole linkage.",
    ],
    [
        "Parts on sheets",
        "Search over straight through-cuts, kerf, trim and grain respected; better layouts replace worse ones while it runs.",
        "Worked out here.",
    ],
];

/// Where the figures end.
const LIMITS: [&str; 10] = [
    "Everything is at rest: no bumps, no acceleration, no vibration. Raising by hand is slow enough for that; a drill is not always.",
    "Wood is taken as elastic. It creeps: under a load left on for months the sag grows, up to double in a damp place.",
    "Plywood, lumber and glue differ from sheet to sheet. Strengths are lower values of tables with a factor beneath them; a knot or a void at a hole is not in any table.",
    "Arms are straight, equal and free of warp. What uneven drilling does stands under Drilling.",
    "The side view shares the load between the sides by the lever rule; twisting of the deck under a load off the middle is in Sway only.",
    "Rocking of pins in their holes, slip of joints and the give of side guides are assumed within a band, soft to stiff. No test of a built joint stands behind them; measure yours and enter it.",
    "Rails bend, but without the panel screwed to them, which makes them stiffer. Halvings weaken beams in their strength, not in how far they give; that solid wood splits from the corner of a halving is not computed.",
    "The deck panel bends across its grain. How many layers plywood has is no input: where the catalogue does not say, as few as are usual are taken.",
    "The floor is level and hard. Wheels neither sink in nor climb.",
    "Screws and glue between parts of a frame are not computed one by one; where they matter the build order says what to use.",
];

/// The page.
pub struct Sources {
    report: Rc<Report>,
}

impl Sources {
    /// Over a report, whose checks name their sources.
    pub fn new(report: Rc<Report>) -> Self {
        Self { report }
    }
}

impl Page for Sources {
    fn document(&self, _reader: &Reader) -> Document {
        Document {
            title: View::Sources.title().into(),
            blocks: vec![
                Block::text(
                    "This program helps to plan a table. It replaces neither an engineer nor the rules for lifting tables, machine guards and workplaces where you live.",
                ),
                Block::heading("Where the figures end"),
                Block::Points(LIMITS.into_iter().map(|limit| vec![Block::text(limit)]).collect()),
                Block::heading("How it is computed"),
                Block::Table(Table {
                    caption: "Methods".into(),
                    head: ["Figure", "Method", "Source"].map(String::from).into(),
                    rows: METHODS.into_iter().map(|row| row.map(Cell::words).into()).collect(),
                    foot: Vec::new(),
                }),
                Block::heading("Sources of the checks"),
                Block::Table(self.checks()),
            ],
        }
    }
}

impl Sources {
    /// Every source once, with the checks that lean on it.
    fn checks(&self) -> Table {
        let mut sources: Vec<(Source, BTreeSet<&str>)> = Vec::new();
        for check in &self.report.checks {
            match sources.iter_mut().find(|(source, _)| *source == check.source) {
                Some((_, titles)) => {
                    titles.insert(check.title);
                }
                None => sources.push((check.source, BTreeSet::from([check.title]))),
            }
        }
        let rows = sources.into_iter().map(|(source, titles)| {
            let titles: Vec<&str> = titles.into_iter().collect();
            vec![
                Cell::words(if source.title.is_empty() { "none" } else { source.title }),
                Cell::words(source.standing.words()),
                Cell::words(titles.join("; ")),
            ]
        });
        Table {
            caption: "Sources of the checks of this design".into(),
            head: ["Source", "Standing", "Checks"].map(String::from).into(),
            rows: rows.collect(),
            foot: Vec::new(),
        }
    }
}
