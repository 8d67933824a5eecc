//! The build order: what to do, what comes in, what must be found before going on, and where care is due.
use std::rc::Rc;

use super::document::{Act, Block, Document, Figure, Text};
use super::{Page, Reader};
use crate::drawing::{building, widths};
use crate::mechanics::Solver;
use crate::quantity::{Digest, Phrase, System};
use crate::report::Report;
use crate::share::address::View;
use crate::workshop::steps::{Fitted, Step, Task, steps};

/// The page.
pub struct Steps {
    report: Rc<Report>,
    /// The steps; none where the deck cannot stand at its ends.
    steps: Vec<Step>,
}

impl Steps {
    /// Over a report.
    pub fn new(report: Rc<Report>) -> Self {
        let list = Solver::new(report.mechanism())
            .ok()
            .and_then(|solver| steps(&report.design, &report.parts, &solver).ok());
        Self { report, steps: list.unwrap_or_default() }
    }

    /// Titles and numbers of the pieces that come in.
    fn pieces(&self, fitted: &[Fitted]) -> String {
        let list: Vec<String> = fitted
            .iter()
            .filter_map(|Fitted { number, count }| {
                let part = self.report.parts.iter().find(|part| part.number == *number)?;
                Some(format!("{number}\u{A0}{} ×\u{A0}{count}", part.title()))
            })
            .collect();
        list.join(", ")
    }

    fn step(&self, step: &Step, system: System) -> Vec<Block> {
        let mut words = vec![Block::heading(step.title)];
        if !step.parts.is_empty() {
            words.push(Block::Note(Text::default().strong("Comes in: ").words(self.pieces(&step.parts))));
        }
        let work: Vec<String> = step.work.iter().map(|phrase| phrase.text(system)).collect();
        words.push(Block::text(work.join(" ")));
        if !step.caution.is_empty() {
            words.push(Block::Caution(step.caution.into()));
        }
        if step.task == Task::Screw {
            words.extend(self.report.ends_left().map(|left| Block::Caution(left.text(system).into())));
        }
        let tests = step.tests.iter().map(|test| {
            let key = test_key(step.task, test);
            Block::Text(Text::default().act(Act::Tick { words: test.text(system), key }))
        });
        words.push(Block::Group("tests", tests.collect()));
        let drawn = building::figure(&self.report, step, system, &widths);
        let figure = Figure {
            marks: drawn.svg(),
            width: drawn.width,
            height: drawn.height,
            label: building::seen(step.task).into(),
            caption: Text::default(),
            true_scale: false,
        };
        vec![Block::Group("step", vec![Block::Group("step-words", words), Block::Figure(figure)])]
    }
}

/// What the tick of a test is kept under: the same in all units, another one where its figures are others.
fn test_key(task: Task, test: &Phrase) -> String {
    let words = format!("{task:?} {}", test.text(System::Metric));
    Digest::default().with(words.as_bytes()).text()
}

impl Page for Steps {
    fn document(&self, reader: &Reader) -> Document {
        let title = View::Steps.title().into();
        if self.steps.is_empty() {
            let words = "There is no build order: the deck cannot stand at its lowest or its highest.";
            return Document { title, blocks: vec![Block::text(words)] };
        }
        let tests: usize = self.steps.iter().map(|step| step.tests.len()).sum();
        let blocks = vec![
            Block::text(format!(
                "{} steps with {tests} tests. What comes in at a step is drawn wide in its figure. A test that is not met is mended before the next step: later nothing can be got at.",
                self.steps.len()
            )),
            Block::Group(
                "on-screen",
                vec![Block::note(
                    "Ticks are kept in this browser under the design\u{2019}s name. A test whose figures change must be met anew.",
                )],
            ),
            Block::Acts(vec![
                Act::Print { words: "Print".into() },
                Act::Untick { words: "Take all ticks away".into() },
            ]),
            Block::Group(
                "build",
                vec![Block::Steps(self.steps.iter().map(|step| self.step(step, reader.system)).collect())],
            ),
        ];
        Document { title, blocks }
    }
}
