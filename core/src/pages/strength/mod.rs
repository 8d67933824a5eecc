//! Does it hold? Every check, worst first, with its formula, its curve and what would help.
mod factors;
mod row;
mod words;

use std::rc::Rc;

use super::document::{Block, Cell, Document, Text};
use super::{Page, Reader};
use crate::checks::{Check, Group, Verdict, Weight};
use crate::drawing::{self, Beside};
use crate::quantity::{System, lower};
use crate::report::{Help, Report};
use crate::share::address::View;
use row::Row;

/// The page.
pub struct Strength {
    report: Rc<Report>,
    /// Places of the checks in the report's list, the worst first.
    order: Vec<usize>,
    /// What would help against each, in that order, as far as it has been tried.
    helps: Vec<Vec<Help>>,
}

/// How bad a check is, as a key that sorts the worst first: what decides before what is worth knowing, then by verdict and ratio.
fn rank(one: &Check, other: &Check) -> std::cmp::Ordering {
    let decides = |check: &Check| check.weight == Weight::Advice;
    decides(one)
        .cmp(&decides(other))
        .then(one.verdict.cmp(&other.verdict))
        .then(other.ratio.total_cmp(&one.ratio))
}

impl Strength {
    /// Over a report; nothing has been tried yet.
    pub fn new(report: Rc<Report>) -> Self {
        let mut order: Vec<usize> = (0..report.checks.len()).collect();
        order.sort_by(|one, other| rank(&report.checks[*one], &report.checks[*other]));
        Self { report, order, helps: Vec::new() }
    }

    /// The checks, the worst first, each with what was tried against it; none where nothing was tried yet.
    fn checks(&self) -> impl Iterator<Item = (&Check, Option<&[Help]>)> {
        let places = self.order.iter().enumerate();
        places.map(|(turn, place)| (&self.report.checks[*place], self.helps.get(turn).map(Vec::as_slice)))
    }

    /// The groups in the order of their worst checks.
    fn groups(&self) -> Vec<Group> {
        let mut groups = Vec::new();
        for (check, _) in self.checks() {
            if !groups.contains(&check.group) {
                groups.push(check.group);
            }
        }
        groups
    }

    fn count(&self, verdict: Verdict) -> usize {
        let counts = |check: &&Check| check.weight == Weight::Limit || check.verdict == Verdict::Note;
        self.report.checks.iter().filter(counts).filter(|check| check.verdict == verdict).count()
    }

    /// How many do not hold, are near their limit, hold, are no fault but worth knowing; and the nearest to its limit of all.
    fn summary(&self, system: System) -> Vec<Block> {
        let counted = [
            (Verdict::Over, "over the limit", self.count(Verdict::Over)),
            (Verdict::Watch, "to watch", self.count(Verdict::Watch)),
            (Verdict::Fine, "fine", self.count(Verdict::Fine)),
            (Verdict::Note, "to know", self.count(Verdict::Note)),
        ];
        let signs = counted.map(|(verdict, words, count)| {
            let figure = row::figure(drawing::sign(verdict), String::new());
            Block::Group(
                "state",
                vec![
                    Block::Figure(figure),
                    Block::text(Text::from("").strong(count.to_string()).words(format!(" {words}"))),
                ],
            )
        });
        let mut blocks = vec![Block::Group("states", signs.into())];
        if let Some((worst, _)) = self.checks().next() {
            let verb =
                if worst.verdict == Verdict::Over { "Farthest over its limit" } else { "Nearest its limit" };
            blocks.push(Block::text(format!(
                "{verb}: {}, {} of {} {}.",
                lower(worst.title),
                worst.demand.text(system),
                worst.capacity.text(system),
                words::place(worst, system),
            )));
        }
        blocks
    }

    /// The heading of the columns.
    fn heads() -> Block {
        Block::Group(
            "check-heads",
            vec![
                Block::note("State"),
                Block::note("Check"),
                Block::Figure(row::figure(drawing::axis(), String::new())),
                Block::note("Ratio"),
                Block::note("Worst at deck"),
                Block::note("Curve"),
            ],
        )
    }
}

impl Page for Strength {
    /// Tries what would help against the next check.
    fn advance(&mut self) -> bool {
        if let Some(place) = self.order.get(self.helps.len()) {
            self.helps.push(self.report.helps(&self.report.checks[*place]));
        }
        self.helps.len() < self.order.len()
    }

    fn progress(&self) -> f64 {
        if self.order.is_empty() { 1.0 } else { self.helps.len() as f64 / self.order.len() as f64 }
    }

    fn document(&self, reader: &Reader) -> Document {
        let system = reader.system;
        let beside = Beside::new(&self.report, system);
        let mut blocks = self.summary(system);
        blocks.extend(self.report.ends_left().map(|left| Block::Caution(left.text(system).into())));
        blocks.push(factors::line(&self.report.design));
        blocks.push(Block::Fold(factors::fold(&self.report.design, system)));
        blocks.push(Block::note(
            "Ratio: what is asked over what can be given; 1 is the limit. Outlined bars are rules of thumb and things to know: they never decide. Open a line for formula, source and what would help.",
        ));
        blocks.push(Block::Shapes(drawing::bar_scale() + &beside.shapes()));
        blocks.push(Self::heads());
        for group in self.groups() {
            let rows = self.checks().filter(|(check, _)| check.group == group).map(|(check, helps)| {
                Block::Fold(Row { report: &self.report, beside: &beside, check, helps, system }.fold())
            });
            blocks.push(Block::heading(group.title()));
            blocks.push(Block::Group("checks", rows.collect()));
        }
        Document { title: View::Strength.title().into(), blocks }
    }
}

/// A cell of words.
fn cell(words: impl Into<Text>) -> Cell {
    Cell::words(words)
}
