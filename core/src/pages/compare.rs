//! The present design beside one set aside, from that one to the present one: what was changed, what follows, and both drawn one over the other.
use std::rc::Rc;

use super::document::{Act, Block, Cell, Document, Entry, Field, Figure, Table, Text};
use super::{Page, Reader};
use crate::drawing::{Chart, Plotted, over_each_other};
use crate::quantity::{Amount, Style, System, figures, print};
use crate::report::{Changed, Compared, Difference, Grade, Report, Turned, analyse, difference};
use crate::share::link;
use crate::workshop::hardware::money_text;

/// The answer that names the other design: a link without a view, or one copied whole.
const WITH: &str = "with";
/// Size of an elevation and of a plot, px.
const ELEVATION: (f64, f64) = (340.0, 300.0);
const PLOT: (f64, f64) = (340.0, 320.0);

/// The page.
#[derive(Debug)]
pub(super) struct Compare {
    report: Rc<Report>,
    /// The answer as it was given.
    with: String,
    other: Other,
}

/// What the answer leads to.
#[derive(Debug)]
enum Other {
    /// No design is set beside this one.
    None,
    /// The answer leads to no design, or to one that cannot stand: why.
    Refused(Vec<String>),
    /// Another design.
    Known(Box<Report>),
}

impl Compare {
    /// Over a report, beside no other yet.
    pub(super) fn new(report: Rc<Report>) -> Self {
        Self { report, with: String::new(), other: Other::None }
    }

    /// The question for the other design.
    fn question(&self) -> Block {
        let fault = if let Other::Refused(reasons) = &self.other { reasons.join(" ") } else { String::new() };
        Block::Field(Field {
            key: WITH.into(),
            label: "Link of the design set aside".into(),
            value: self.with.clone(),
            hint: "Copy link, over the drawing, gives the link of a design; on the shelf every kept design can be set beside the present one. It is laid under the side elevation and its plots too.".into(),
            fault,
            entry: Entry::Written,
        })
    }

    fn beside(&self, aside: &Report, system: System) -> Vec<Block> {
        let found = difference(aside, &self.report);
        let [before, now] = [aside, &self.report].map(|report| report.design.name.as_str());
        let mut blocks = vec![Block::Text(
            Text::from("Set aside: ").strong(before).words(". Now: ").strong(now).words("."),
        )];
        if found.inputs.is_empty() {
            blocks.push(Block::text("Both have the same inputs: they are one table."));
            return blocks;
        }
        blocks.push(Block::heading("What is found"));
        blocks.push(findings(&found.findings, system));
        blocks.push(Block::heading("What follows"));
        blocks.push(Block::Table(results(&found, system)));
        blocks.push(Block::heading("What is different"));
        blocks.push(Block::Table(inputs(&found.inputs, system)));
        blocks.push(Block::heading("One over the other"));
        blocks.push(Block::note("The present design in full lines, the one set aside thin and dashed: at the same deck height where it can stand there, else at the nearer end of its lift."));
        blocks.push(Block::Group("beside", self.elevations(aside, system)));
        blocks.push(Block::heading("Over the deck’s height"));
        blocks.push(Block::note("The present design’s curves full and with their names, the main curve of the one set aside dotted, to one scale and as far as its heights lie within the present lift."));
        blocks.push(Block::Group("beside", self.plots(aside, system)));
        blocks
    }

    /// Both tables at the lowest, the middle and the highest deck of the present design.
    fn elevations(&self, aside: &Report, system: System) -> Vec<Block> {
        let (low, high) = (self.report.lowest(), self.report.highest());
        [("lowest", low), ("middle", 0.5 * (low + high)), ("highest", high)]
            .map(|(word, height)| {
                let picture = over_each_other(&self.report, aside, height, ELEVATION);
                let size = Amount::Size(height).text(system);
                Block::Figure(Figure {
                    marks: picture.marks,
                    width: picture.width,
                    height: picture.height,
                    label: format!(
                        "Side elevations of both designs one over the other, the {word} deck at {size}."
                    ),
                    caption: format!("{word} deck, {size}").into(),
                    true_scale: false,
                })
            })
            .into()
    }

    /// All plots with the main curve of the design set aside.
    fn plots(&self, aside: &Report, system: System) -> Vec<Block> {
        Chart::ALL
            .into_iter()
            .map(|chart| {
                let plotted = Plotted::of(chart, &self.report, system).with(aside);
                let picture = plotted.small(PLOT);
                Block::Figure(Figure {
                    marks: picture.marks,
                    width: picture.width,
                    height: picture.height,
                    label: format!(
                        "{}, {}, over the deck’s height for both designs.",
                        plotted.title(),
                        plotted.note()
                    ),
                    caption: Text::default(),
                    true_scale: false,
                })
            })
            .collect()
    }
}

/// How the two designs are told apart in the heads of columns.
const HEADS: [&str; 2] = ["set aside", "now"];

/// What is over or to watch in one of the two only, or more so.
fn findings(list: &[Turned], system: System) -> Block {
    if list.is_empty() {
        return Block::text("Nothing that is over or to watch is new, and nothing of it is gone.");
    }
    let grade = |grade: Option<Grade>| match grade {
        Some(grade) => Cell::words(Text::default().strong(grade.word())),
        None => Cell::words("no"),
    };
    let rows = list.iter().map(|turned| {
        vec![grade(turned.first), grade(turned.second), Cell::words(turned.phrase.text(system))]
    });
    Block::Table(Table {
        caption: "Findings that are new, gone, or worse or better than they were".into(),
        head: HEADS.into_iter().chain(["finding"]).map(String::from).collect(),
        rows: rows.collect(),
        foot: Vec::new(),
    })
}

/// The inputs that differ, group by group.
fn inputs(list: &[Changed], system: System) -> Table {
    let mut rows = Vec::new();
    let mut group = None;
    for changed in list {
        let field = changed.field;
        if group != Some(field.group) {
            rows.push(vec![Cell::Heading(field.group.title().into())]);
            group = Some(field.group);
        }
        let words = |steps: i64| match field.choices.iter().find(|(value, _)| *value == steps) {
            Some((_, words)) => (*words).to_owned(),
            None => print(steps, field.kind, system, Style::Short).text(),
        };
        rows.push(vec![
            Cell::words(field.label),
            Cell::number(words(changed.first)),
            Cell::number(words(changed.second)),
        ]);
    }
    Table {
        caption: "Inputs in which the two differ".into(),
        head: ["Input"].into_iter().chain(HEADS).map(String::from).collect(),
        rows,
        foot: Vec::new(),
    }
}

/// The results of both, how they differ, and what that means.
fn results(found: &Difference, system: System) -> Table {
    let mut rows: Vec<Vec<Cell>> = found.results.iter().map(|result| line(result, system)).collect();
    rows.push(cost(found));
    Table {
        caption: "Results of both; the change is a share of the figure set aside".into(),
        head: ["Result"].into_iter().chain(HEADS).chain(["change", "now it is"]).map(String::from).collect(),
        rows,
        foot: Vec::new(),
    }
}

fn line(result: &Compared, system: System) -> Vec<Cell> {
    let change = result.change.map_or_else(String::new, |change| {
        let percent = figures::percent(change).to_string();
        if percent.starts_with('−') || change < 0.005 { percent } else { format!("+{percent}") }
    });
    let mut what = match result.words() {
        None if result.change.is_none() && result.first != result.second => Text::default(),
        None => Text::from("the same"),
        Some(words) => match result.better() {
            Some(true) => Text::default().strong(words).words(": better"),
            Some(false) => Text::default().strong(words).words(": worse"),
            None => Text::from(words),
        },
    };
    let [one, other] = result.of;
    if !one.is_empty() {
        let of = if one == other { one.to_owned() } else { format!("{one}, then {other}") };
        what = what.words(format!(" ({of})"));
    }
    let figure = |amount: Amount| Cell::number(amount.text(system));
    vec![
        Cell::words(result.title),
        figure(result.first),
        figure(result.second),
        Cell::number(change),
        Cell::words(what),
    ]
}

/// What the present design costs more, where prices are known.
fn cost(found: &Difference) -> Vec<Cell> {
    let (more, what) = match found.cost {
        None => (String::new(), Text::from("not known: a price that matters is not entered")),
        Some(money) if money.steps() == 0 => (money_text(money), Text::from("the same")),
        Some(money) if money.steps() > 0 => {
            (format!("+{}", money_text(money)), Text::default().strong("dearer").words(": worse"))
        }
        Some(money) => (money_text(money), Text::default().strong("cheaper").words(": better")),
    };
    vec![
        Cell::words("Cost, sheet by its area"),
        Cell::number(""),
        Cell::number(""),
        Cell::number(more),
        Cell::words(what),
    ]
}

impl Page for Compare {
    fn answer(&mut self, key: &str, text: &str, reader: &Reader) {
        if key != WITH {
            return;
        }
        text.trim().clone_into(&mut self.with);
        // Of an address the design is the last piece.
        let design = self.with.rsplit(['/', '#']).next().unwrap_or_default();
        self.other = if design.is_empty() {
            Other::None
        } else {
            match link::decode(design) {
                Err(fault) => Other::Refused(vec![fault.to_string()]),
                Ok(design) => match analyse(&design) {
                    Err(unsound) => Other::Refused(
                        unsound.phrases().iter().map(|phrase| phrase.text(reader.system)).collect(),
                    ),
                    Ok(report) => Other::Known(Box::new(report)),
                },
            }
        };
    }

    fn document(&self, reader: &Reader) -> Document {
        let mut blocks = match &self.other {
            Other::Known(other) => self.beside(other, reader.system),
            Other::None | Other::Refused(_) => vec![Block::text(
                "No design stands beside this one yet. Set one aside, change this one as you like, and come back: here stands what you changed, what is better or worse for it, and both drawn one over the other.",
            )],
        };
        let keep = |words: &str, what: &str| Act::Keep { words: words.into(), what: what.into() };
        let mut acts = vec![keep("Set the present design aside", "aside")];
        if matches!(self.other, Other::Known(_)) {
            acts.push(keep("Stop comparing", "alone"));
        }
        blocks.push(Block::Acts(acts));
        blocks.push(self.question());
        Document { title: "Two designs compared".into(), blocks }
    }
}
