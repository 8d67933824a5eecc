//! One check: its line in the list, and what opens beneath it.
use super::factors::{SHEETS_DIFFER, plywood};
use super::{cell, words};
use crate::checks::{Check, Group, Verdict};
use crate::drawing::{self, Beside, Small};
use crate::pages::document::{Act, Block, Cell, Figure, Fold, Text};
use crate::quantity::{Amount, System, lower};
use crate::report::{Grade, Help, Report};
use crate::share::link;

/// Checks outside [`Group::Arms`] and [`Group::Frames`] that lean on the strength of the wood.
const OF_WOOD: [&str; 3] = ["pin-wood", "seat-tube", "seat-washer"];

/// A check to be shown.
pub(super) struct Row<'a> {
    pub report: &'a Report,
    pub beside: &'a Beside<'a>,
    pub check: &'a Check,
    /// What would help; none while it has not been tried.
    pub helps: Option<&'a [Help]>,
    pub system: System,
}

/// A small picture as a figure; with an empty label what it shows stands beside it in words.
pub(super) fn figure(small: Small, label: String) -> Figure {
    Figure {
        marks: small.marks,
        width: small.width,
        height: small.height,
        label,
        caption: Text::default(),
        true_scale: false,
    }
}

impl Row<'_> {
    /// The line with what opens beneath it.
    pub fn fold(&self) -> Fold {
        Fold {
            id: self.check.id.into(),
            line: self.line(),
            blocks: vec![Block::Group(
                "check",
                vec![Block::Group("reckoning", self.reckoning()), self.picture()],
            )],
            open: false,
        }
    }

    fn line(&self) -> Vec<Cell> {
        let check = self.check;
        let state = match check.verdict {
            Verdict::Note => "Note",
            verdict => Grade::of(verdict).word(),
        };
        let state = match check.verdict {
            Verdict::Over | Verdict::Watch => cell(Text::default().strong(state)),
            Verdict::Note | Verdict::Fine => cell(state),
        };
        let picture = |small: Small| Cell::Picture(figure(small, String::new()));
        vec![
            picture(drawing::sign(check.verdict)),
            state,
            cell(check.title),
            picture(drawing::bar(check)),
            Cell::StrongNumber(check.ratio_words()),
            Cell::number(words::worst_at(check, self.system)),
            picture(drawing::spark(check)),
        ]
    }

    fn picture(&self) -> Block {
        Block::Figure(figure(self.beside.picture(self.check), words::curve(self.check, self.system)))
    }

    /// Formula, numbers, source, and what would help.
    fn reckoning(&self) -> Vec<Block> {
        let check = self.check;
        let mut blocks = vec![Block::text(
            Text::default()
                .strong(format!("{} of {}", check.demand.text(self.system), check.capacity.text(self.system)))
                .words(format!(
                    ", worst in {} {}.",
                    words::part(check.member),
                    words::place(check, self.system)
                )),
        )];
        if matches!(check.verdict, Verdict::Over | Verdict::Watch) {
            blocks.extend(words::stretch(check, self.system).map(Block::text));
        }
        blocks.push(Block::text(Text::default().formula(check.formula)));
        blocks.push(Block::text(Text::default().formula(check.numbers.text(self.system))));
        blocks.push(Block::note(format!("Source: {}.", check.source)));
        if self.of_wood() && plywood(&self.report.design) {
            blocks.push(Block::note(SHEETS_DIFFER));
        }
        blocks.extend(self.remedies());
        blocks.push(Block::Acts(vec![Act::Go {
            words: format!("Show it at deck {}", Amount::Size(check.height).text(self.system)),
            height: check.height,
            check: check.id,
        }]));
        blocks
    }

    fn of_wood(&self) -> bool {
        matches!(self.check.group, Group::Arms | Group::Frames) || OF_WOOD.contains(&self.check.id)
    }

    /// What was tried and helps, each with the ratio after it.
    fn remedies(&self) -> Vec<Block> {
        if self.check.levers.is_empty() || self.check.ratio <= 0.0 {
            return Vec::new();
        }
        match self.helps {
            None => vec![Block::note("What would help is being tried.")],
            Some([]) => vec![Block::text("None of the usual steps was found to help.")],
            Some(helps) => vec![
                Block::text(Text::default().strong("What would help, tried out")),
                Block::Points(helps.iter().map(|help| vec![self.remedy(help)]).collect()),
            ],
        }
    }

    fn remedy(&self, help: &Help) -> Block {
        let words = help.words.text(self.system);
        let mut text = Text::from(format!("{words}: "));
        text = text.strong(if help.ratio > 0.0 {
            Amount::Number(help.ratio).text(self.system)
        } else {
            "nothing left to check".into()
        });
        if let Some(spoilt) = help.spoils {
            text = text.words(format!("; but then this is over: {}", lower(spoilt)));
        }
        let link = link::encode(&help.design);
        Block::text(text.words(" ").act(Act::Take { words: "Take it".into(), link }))
    }
}
