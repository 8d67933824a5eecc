//! What would help this design most: real steps, each run through the whole analysis, and how strongly every input counts.
use super::document::{Act, Block, Cell, Document, Fold, Table, Text};
use super::{Page, Reader};
use crate::quantity::{Amount, System, lower};
use crate::report::sensitivity::{Effect, NOTHING, Outcome, Results, SensitivityRun, Step};
use crate::report::{PUSH, Report};
use crate::share::address::View;
use crate::share::link;
use std::rc::Rc;

/// Steps shown for a figure before the rest is folded away.
const FIRST: usize = 5;

/// The most steps that are shown at all.
const MOST: usize = 12;

/// The page.
pub(super) struct Levers {
    report: Rc<Report>,
    run: Option<SensitivityRun>,
}

impl Levers {
    pub fn new(report: Rc<Report>) -> Self {
        Self { report, run: None }
    }
}

impl Page for Levers {
    fn advance(&mut self) -> bool {
        match &mut self.run {
            Some(run) => run.advance(),
            None => {
                self.run = Some(SensitivityRun::of(&self.report));
                true
            }
        }
    }

    fn progress(&self) -> f64 {
        self.run.as_ref().map_or(0.0, |run| {
            let progress = run.progress();
            progress.done as f64 / progress.all.max(1) as f64
        })
    }

    fn document(&self, reader: &Reader) -> Document {
        let mut blocks = vec![
            Block::text(
                "Real steps, each tried out: the design is changed and analysed again, with all checks. Steps with which the table could not \
                 stand, or something would fail that holds now, are left out.",
            ),
            Block::note(
                "In every column less is better: − is less than now, + is more. Of the weakest check, + means that more of what it stands is \
                 used. In an empty cell nothing changes to speak of.",
            ),
        ];
        if let Some(run) = &self.run {
            for outcome in Outcome::ALL {
                blocks.extend(steps(run, outcome, reader.system));
            }
            blocks.extend(asking_less(run, reader.system));
            blocks.extend(inputs(run));
        }
        Document { title: View::Helps.title().into(), blocks }
    }
}

fn title(run: &SensitivityRun, outcome: Outcome, system: System) -> Option<String> {
    let value = run.own().of(outcome)?;
    let figure = written(outcome, value).text(system);
    Some(match outcome {
        Outcome::Crank => format!("Force at the crank, now {figure} at most"),
        Outcome::Sag => format!("Sag, now {figure} at most"),
        Outcome::Give => format!("Give sideways, now {figure} under {}", Amount::Force(PUSH).text(system)),
        Outcome::Weakest => {
            format!("Weakest check, now at {figure} of what it stands: {}", lower(run.weakest()))
        }
        Outcome::Weight => format!("Weight, now {figure}"),
        Outcome::Cost => format!("Cost, now {figure}, sheet by its area"),
    })
}

const fn written(outcome: Outcome, value: f64) -> Amount {
    match outcome {
        Outcome::Crank => Amount::Force(value),
        Outcome::Sag | Outcome::Give => Amount::Give(value),
        Outcome::Weakest => Amount::Share(value),
        Outcome::Weight => Amount::Mass(value),
        Outcome::Cost => Amount::Number(value),
    }
}

const fn short(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Crank => "crank",
        Outcome::Sag => "sag",
        Outcome::Give => "sideways",
        Outcome::Weakest => "weakest check",
        Outcome::Weight => "weight",
        Outcome::Cost => "cost",
    }
}

/// By how much a figure changes: as a share, a weight in its unit; nothing where it does not.
fn change(outcome: Outcome, before: &Results, after: &Results, system: System) -> String {
    let (Some(before), Some(after)) = (before.of(outcome), after.of(outcome)) else { return String::new() };
    let sign = |rise: f64| if rise < 0.0 { "−" } else { "+" };
    if outcome == Outcome::Weight {
        let rise = after - before;
        let text = crate::quantity::figures::part_weight(rise.abs(), system);
        return if rise.abs() < 0.005 { String::new() } else { format!("{}{text}", sign(rise)) };
    }
    let rise = after / before - 1.0;
    if rise.abs() < 5e-4 {
        return String::new();
    }
    format!("{}{:.1} %", sign(rise), 100.0 * rise.abs())
}

fn steps(run: &SensitivityRun, outcome: Outcome, system: System) -> Vec<Block> {
    let Some(title) = title(run, outcome, system) else { return Vec::new() };
    let helps = run.helps(outcome);
    let mut blocks = vec![Block::heading(title)];
    if helps.is_empty() {
        let words = if run.progress().finished() { "No step that was tried helps." } else { "Being tried." };
        blocks.push(Block::note(words));
        return blocks;
    }
    let (first, rest) = helps.split_at(FIRST.min(helps.len()));
    let caption = format!("Steps against {}", short(outcome));
    blocks.push(table(run, caption.clone(), Some(outcome), first, system));
    let rest = &rest[..rest.len().min(MOST - FIRST)];
    if !rest.is_empty() {
        blocks.push(Block::Fold(Fold {
            id: format!("helps-{}", short(outcome).replace(' ', "-")),
            line: vec![Cell::words(format!("{} more that help less", rest.len()))],
            blocks: vec![table(run, caption, Some(outcome), rest, system)],
            open: false,
        }));
    }
    blocks
}

/// What would help if less were asked of the table: no rank, for it is no choice in building.
fn asking_less(run: &SensitivityRun, system: System) -> Vec<Block> {
    let steps = run.asking_less();
    if steps.is_empty() {
        return Vec::new();
    }
    vec![
        Block::heading("Asking for less"),
        Block::text(
            "These change what the table is for, and nothing in how it is built: the load, its place, or the heights that the deck reaches.",
        ),
        table(run, "What less would bring".into(), None, &steps, system),
    ]
}

/// The figures that are known, in an order that is the same in every table.
fn known(run: &SensitivityRun) -> impl Iterator<Item = Outcome> {
    Outcome::ALL.into_iter().filter(|one| run.own().of(*one).is_some())
}

/// Steps with all they change; the figure that is asked for is of greater weight.
fn table(
    run: &SensitivityRun,
    caption: String,
    outcome: Option<Outcome>,
    steps: &[&Step],
    system: System,
) -> Block {
    let mut head = vec!["step".to_owned()];
    head.extend(known(run).map(|one| short(one).to_owned()));
    head.push(String::new());
    let rows = steps
        .iter()
        .map(|step| {
            let mut cells = vec![Cell::words(step.words.text(system))];
            cells.extend(known(run).map(|one| {
                let text = change(one, run.own(), &step.after, system);
                if Some(one) == outcome { Cell::StrongNumber(text) } else { Cell::number(text) }
            }));
            let act = Act::Take { words: "Take it".into(), link: link::encode(&step.design) };
            cells.push(Cell::words(Text::default().act(act)));
            cells
        })
        .collect();
    Block::Table(Table { caption, head, rows, foot: Vec::new() })
}

/// How strongly every input counts, for one figure after the other, the strongest first.
fn inputs(run: &SensitivityRun) -> Option<Block> {
    if run.effects().is_empty() {
        return None;
    }
    let known: Vec<Outcome> = known(run).collect();
    let strength = |effect: &Effect| -> f64 {
        known.iter().filter_map(|one| effect.of(*one)).map(|slope| slope.value.abs()).fold(0.0, f64::max)
    };
    let mut list: Vec<&Effect> =
        run.effects().iter().filter(|effect| strength(effect) > 100.0 * NOTHING).collect();
    list.sort_by(|one, other| strength(other).total_cmp(&strength(one)));
    let mut head = vec!["input".to_owned()];
    head.extend(known.iter().map(|one| short(*one).to_owned()));
    let rows = list
        .iter()
        .map(|effect| {
            let mut cells =
                vec![Cell::words(format!("{}: {}", effect.field.group.title(), effect.field.label))];
            cells.extend(known.iter().map(|one| {
                Cell::number(effect.of(*one).map_or_else(String::new, |slope| {
                    if slope.value.abs() < 0.005 {
                        return String::new();
                    }
                    let sign = if slope.value < 0.0 { "−" } else { "" };
                    let kink = if slope.kinked { "*" } else { "" };
                    format!("{sign}{:.2}{kink}", slope.value.abs())
                }))
            }));
            cells
        })
        .collect();
    Some(Block::Fold(Fold {
        id: "helps-inputs".into(),
        line: vec![Cell::words("How strongly every input counts")],
        blocks: vec![
            Block::note(
                "Per cent by which a figure grows when an input grows by one per cent and all others stay, by central differences of the whole \
                 analysis. A star: not the same both ways, because another part becomes the weakest, a screw more is needed, or the input can \
                 move one way only. Empty: nothing to speak of.",
            ),
            Block::Table(Table {
                caption: "Sensitivities, the strongest inputs first".into(),
                head,
                rows,
                foot: Vec::new(),
            }),
        ],
        open: false,
    }))
}
