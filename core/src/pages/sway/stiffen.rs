//! What would stiffen it: every usual remedy tried on this design, the most helpful first.
use super::Sway;
use crate::pages::Reader;
use crate::pages::document::{Act, Block, Cell, Fold, Table, Text};
use crate::quantity::{Kind, Money, Style, System, figures, lower, print};
use crate::report::{Goal, LEAST_MULTIPLE, Remedy, Stand, StiffenRun};
use crate::share::link;

/// Areas and masses smaller than this are none, m2 and kg.
const NOTHING: f64 = 0.005;

impl Goal {
    const ALL: [Self; 3] = [Self::Collapse, Self::Give, Self::Rattle];

    const fn words(self) -> &'static str {
        match self {
            Self::Collapse => "a higher critical load",
            Self::Give => "less give",
            Self::Rattle => "less rattle",
        }
    }

    const fn id(self) -> &'static str {
        match self {
            Self::Collapse => "stiffen-collapse",
            Self::Give => "stiffen-give",
            Self::Rattle => "stiffen-rattle",
        }
    }
}

impl Sway {
    /// Remedies ranked for what the table needs most, then for the rest.
    pub(super) fn remedies(&self, reader: &Reader) -> Vec<Block> {
        let Some(sway) = &self.known else { return Vec::new() };
        let mut blocks = vec![Block::heading("What would stiffen it")];
        let found = self.stiffen.as_ref().and_then(|run| Some((run, run.before()?, run.need()?)));
        let Some((run, before, need)) = found else {
            blocks.push(Block::text(
                "The usual remedies are tried on this design once its own figures are complete.",
            ));
            return blocks;
        };
        blocks.push(Block::text(needed(need, &before, sway.worst.is_some())));
        blocks.extend(table(run, need, &before, reader.system));
        for goal in Goal::ALL.into_iter().filter(|goal| *goal != need) {
            let list = table(run, goal, &before, reader.system);
            if !list.is_empty() {
                blocks.push(Block::Fold(Fold {
                    id: goal.id().into(),
                    line: vec![Cell::words(format!("The same ranked for {}", goal.words()))],
                    blocks: list,
                    open: false,
                }));
            }
        }
        blocks.extend(others(run, need, reader.system));
        let mut note = "Each is computed at the lowest, the middle and the highest deck; critical load, give and rattle are the worst of the three, with best guesses and guides touching. Sheet is costed by its area, small parts are left out. Taking one can be undone.".to_owned();
        if Goal::ALL.into_iter().any(|goal| run.remedies(goal).iter().any(|remedy| remedy.cost.is_none())) {
            note += " Where no price stands, enter it under Sheet and shop.";
        }
        blocks.push(Block::note(note));
        blocks
    }
}

/// What the table needs most and why.
fn needed(need: Goal, before: &Stand, critical: bool) -> String {
    match need {
        Goal::Collapse if before.multiple < LEAST_MULTIPLE => format!(
            "Most of all it needs a higher critical load: at least {LEAST_MULTIPLE:.0} times the load."
        ),
        Goal::Collapse => format!(
            "Most of all it needs a higher critical load: inside the play of its side guides it falls below {LEAST_MULTIPLE:.0} times the load."
        ),
        _ if critical => format!(
            "Its critical load suffices, at least {LEAST_MULTIPLE:.0} times the load even inside the play of its guides. What is left to gain is a firmer deck."
        ),
        _ => "No load on it is critical. What is left to gain is a firmer deck.".into(),
    }
}

fn table(run: &StiffenRun, goal: Goal, before: &Stand, system: System) -> Vec<Block> {
    let list = run.remedies(goal);
    if list.is_empty() {
        let words = if run.progress().finished() {
            format!("None of the usual remedies gives it {}.", goal.words())
        } else {
            "They are being tried.".into()
        };
        return vec![Block::text(words)];
    }
    let give = figures::sag(0.0, system).unit;
    let head = [
        "remedy".to_owned(),
        String::new(),
        "critical load".into(),
        "in guides' play".into(),
        format!("gives, {give}"),
        format!("rattles, {give}"),
        format!("weight, {}", figures::weight(0.0, system).unit),
        format!("sheet, {}", figures::area(0.0, system).unit),
        "cost".into(),
    ];
    let mut rows =
        vec![row(Text::from("as it is"), before, goal, ["", "", ""].map(String::from), None, system)];
    rows.extend(list.iter().map(|remedy| remedied(remedy, goal, system)));
    vec![Block::Group(
        "sway-remedies",
        vec![Block::Table(Table {
            caption: format!("Ranked for {}; what is added stands with a plus", goal.words()),
            head: head.into(),
            rows,
            foot: Vec::new(),
        })],
    )]
}

fn row(
    name: Text,
    stand: &Stand,
    goal: Goal,
    added: [String; 3],
    take: Option<Act>,
    system: System,
) -> Vec<Cell> {
    let number =
        |text: String, strong: bool| if strong { Cell::StrongNumber(text) } else { Cell::Number(text) };
    let mut cells = vec![
        Cell::Words(name),
        Cell::Words(take.map_or_else(Text::default, |act| Text::default().act(act))),
        number(figures::factor(stand.multiple).number, goal == Goal::Collapse),
        number(figures::factor(stand.unguided).number, false),
        number(figures::sag(stand.give, system).number, goal == Goal::Give),
        number(figures::sag(stand.rattle, system).number, goal == Goal::Rattle),
    ];
    cells.extend(added.map(Cell::Number));
    cells
}

fn remedied(remedy: &Remedy, goal: Goal, system: System) -> Vec<Cell> {
    let words = remedy.words.text(system);
    let mut name = Text::default().words(words.clone());
    if !remedy.breaks.is_empty() {
        let broken: Vec<String> = remedy.breaks.iter().map(|title| lower(title)).collect();
        name = name.words(format!("; but then over: {}", broken.join(", ")));
    }
    let added = [
        plus(remedy.mass, figures::weight(remedy.mass, system).number),
        plus(remedy.sheet, figures::area(remedy.sheet, system).number),
        cost(remedy.cost),
    ];
    let take = Act::Take { words: "Take".into(), link: link::encode(&remedy.design) };
    row(name, &remedy.after, goal, added, Some(take), system)
}

/// What is added, or a dash for nothing.
fn plus(value: f64, number: String) -> String {
    if value.abs() < NOTHING || number.chars().all(|sign| !matches!(sign, '1'..='9')) {
        "–".into()
    } else if value > 0.0 {
        format!("+{number}")
    } else {
        number
    }
}

/// What it costs more; a question mark where a price is not known.
fn cost(cost: Option<Money>) -> String {
    match cost {
        None => "no price".into(),
        Some(money) if money == Money::ZERO => "–".into(),
        Some(money) => {
            let number = print(money.steps(), Kind::Money, System::Metric, Style::Full).number;
            if money > Money::ZERO { format!("+{number}") } else { number }
        }
    }
}

/// What was tried in vain, is there already, or cannot be.
fn others(run: &StiffenRun, goal: Goal, system: System) -> Vec<Block> {
    let list = run.others(goal);
    if list.is_empty() {
        return Vec::new();
    }
    let points = list.iter().map(|idle| {
        vec![Block::text(format!("{}: {}", idle.words.text(system), lower(&idle.why.text(system))))]
    });
    vec![Block::Fold(Fold {
        id: "stiffen-others".into(),
        line: vec![Cell::words(format!("What does not help, or is there already ({})", list.len()))],
        blocks: vec![Block::Points(points.collect())],
        open: false,
    })]
}
