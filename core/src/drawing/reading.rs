//! The table of values at the deck's height.
use super::frame::Area;
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Mark};
use super::scale::Screen;
use crate::quantity::System;
use crate::quantity::figures::{self, Figure};
use crate::report::{Report, Station};

/// A line of the table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ReadingRow {
    /// What is read.
    pub name: &'static str,
    /// Numbers in the order of the columns.
    pub values: Vec<String>,
    /// Their unit.
    pub unit: &'static str,
}

/// Values at one height.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reading {
    /// Deck height with its unit, ready to stand above the table.
    pub heading: String,
    /// Names of the columns.
    pub columns: [&'static str; 3],
    /// What the crank and the screw feel in each of them.
    pub rows: Vec<ReadingRow>,
    /// Heading of the second part, with its unit.
    pub carried: String,
    /// What wheels and casters carry.
    pub loads: Vec<ReadingRow>,
    /// Heading of the sag by its causes, with its unit.
    pub gives: String,
    /// Sag at the load by its causes; their sum is the sag.
    pub sag: Vec<ReadingRow>,
}

/// Width of the first part, the gap to the second and the most that takes, px.
const FIRST: f64 = 276.0;
const GAP: f64 = 22.0;
const SECOND: f64 = 132.0;
/// Right ends of the columns and place of the unit, as parts of the first part's width.
const COLUMNS: [f64; 3] = [0.485, 0.735, 0.885];
const UNIT: f64 = 0.91;
/// Height of the heading with its rule, and the lines that stand beneath it, px.
const HEAD: f64 = 22.0;
const LINES: f64 = 4.0;

impl Reading {
    /// The values at a station.
    #[must_use]
    pub fn at(report: &Report, station: &Station, system: System) -> Self {
        let design = &report.design;
        let ideal = station.torque_ideal(design.drive.lead.to_m());
        let row = |name, figures: [Figure; 3]| {
            let unit = figures[0].unit;
            ReadingRow { name, values: figures.map(|figure| figure.number).into(), unit }
        };
        let thrust = |force: f64| figures::large_force(force, system);
        let torque = |moment: f64| figures::torque(moment, system);
        let hand = |force: f64| figures::small_force(force, system);
        let [left, right] = station.casters();
        let sag = station.sag();
        let rest = &station.state.rest;
        let load =
            |name, force: f64| ReadingRow { name, values: vec![hand(force).number], unit: hand(force).unit };
        Self {
            heading: format!("At {}", figures::size(station.height, system)),
            columns: ["raise", "no friction", "lower"],
            rows: vec![
                row("Screw force", [station.raise(), station.still(), station.lower()].map(thrust)),
                row("Crank torque", [station.torque.raise, ideal, station.torque.lower].map(torque)),
                row(
                    "Crank effort",
                    [station.crank_raise(), ideal / design.drive.crank.to_m(), station.crank_lower()]
                        .map(hand),
                ),
            ],
            carried: format!("carried, {}", hand(0.0).unit),
            loads: vec![
                load("base wheels", rest.base_wheel),
                load("deck wheels", rest.top_wheel),
                load("left casters", left),
                load("right casters", right),
            ],
            gives: format!("sag by part, {}", figures::sag(0.0, system).unit),
            sag: [
                ("arms bend", sag.arms),
                ("holes give", sag.joints),
                ("screw, seat", sag.screw),
                ("rest", sag.wheels + sag.top_rails + sag.base_rails + sag.casters),
            ]
            .map(|(name, metres)| {
                let figure = figures::sag(metres, system);
                ReadingRow { name, values: vec![figure.number], unit: figure.unit }
            })
            .into(),
        }
    }

    /// The table in its area; the second part goes where there is no room for it.
    /// With `sag` that is the sag by its causes, else what is carried.
    pub(super) fn marks(&self, lettering: &mut Lettering<'_>, area: Area, sag: bool) -> Vec<Mark> {
        let (title, list) = if sag { (&self.gives, &self.sag) } else { (&self.carried, &self.loads) };
        // A long height pushes the columns to the right.
        let heading = lettering.width("th", &self.heading) + 8.0 + lettering.width("q", self.columns[0]);
        let first = FIRST.max(heading / COLUMNS[0]).min(area.width);
        let second = first + GAP;
        let needed = list
            .iter()
            .map(|row| {
                lettering.width("s", row.name)
                    + 8.0
                    + row.values.first().map_or(0.0, |value| lettering.width("", value))
            })
            .fold(lettering.width("q", title), f64::max);
        let end = (second + SECOND.max(needed)).min(area.width);
        let beside = end - second >= needed;
        let top = area.y + 14.0;
        let line = (area.height - HEAD) / LINES;
        let at = |x: f64, y: f64| Screen::new(area.x + x, y);
        let rule = if beside { end } else { first };
        let mut marks = vec![Mark::line("rule", at(0.0, area.y + 20.5), at(rule, area.y + 20.5))];
        let mut set =
            |class, at, anchor, words: &str| marks.push(lettering.place([text(class, at, anchor, words)]));
        set("th", at(0.0, top), Anchor::Start, &self.heading);
        for (column, x) in self.columns.iter().zip(COLUMNS) {
            set("q", at(x * first, top), Anchor::End, column);
        }
        for (row_number, row) in (1..).zip(&self.rows) {
            let y = top + 5.0 + line * f64::from(row_number);
            set("s", at(0.0, y), Anchor::Start, row.name);
            for ((value, x), class) in row.values.iter().zip(COLUMNS).zip(["b", "", ""]) {
                set(class, at(x * first, y), Anchor::End, value);
            }
            set("q", at(UNIT * first, y), Anchor::Start, row.unit);
        }
        let shown = |words: &'_ str| if beside { words.to_owned() } else { String::new() };
        set("q", at(second, top), Anchor::Start, &shown(title));
        for (row_number, row) in (1..).zip(list) {
            let y = top + 5.0 + line * f64::from(row_number);
            set("s", at(second, y), Anchor::Start, &shown(row.name));
            set("", at(end, y), Anchor::End, &shown(row.values.first().map_or("", String::as_str)));
        }
        marks
    }
}
