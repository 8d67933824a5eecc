//! The form as blocks of the document.
use super::asked::{ASKS, Part};
use super::form::{Form, PANEL, PIN, SHEET, STAGES, STANCE, STANCES, THREAD, WAY, offered};
use crate::catalogue::panel::PANELS;
use crate::catalogue::sheet::SHEET_SIZES;
use crate::pages::Reader;
use crate::pages::document::{Block, Cell, Entry, Field, Fold};
use crate::quantity::{System, figures};
use crate::report::search::{Stance, Targets, Way, pins};

/// The whole form.
pub(super) fn form(form: &Form, targets: &Targets, reader: &Reader) -> Vec<Block> {
    let part = |title: &str, part: Part| {
        let mut blocks = vec![Block::heading(title)];
        blocks.extend(asks(form, targets, part, reader.system));
        blocks
    };
    let mut stock = vec![Block::heading("Stock")];
    stock.extend(choices(form, targets));
    let columns = vec![
        Block::Group("target-part", part("Heights and deck", Part::Deck)),
        Block::Group("target-part", part("Effort, stiffness, size", Part::Figures)),
        Block::Group("target-part", part("Load", Part::Load)),
        Block::Group("target-part", stock),
    ];
    vec![
        Block::Group("targets", columns),
        Block::Fold(Fold {
            id: "targets-bought".into(),
            line: vec![Cell::words(bought_line(targets, reader.system))],
            blocks: vec![Block::Group("target-marks", bought(form, targets, reader.system))],
            open: false,
        }),
        Block::Fold(Fold {
            id: "targets-prices".into(),
            line: vec![Cell::words("Prices")],
            blocks: vec![
                Block::note(
                    "An empty price is one not known and counts as nothing; tables are then compared without it.",
                ),
                Block::Group("target-marks", asks(form, targets, Part::Prices, reader.system)),
            ],
            open: false,
        }),
    ]
}

fn asks(form: &Form, targets: &Targets, part: Part, system: System) -> Vec<Block> {
    let mut scratch = targets.clone();
    ASKS.iter()
        .filter(|ask| ask.part == part)
        .map(|ask| {
            let standing = form.standing(ask, targets, system);
            let question = Block::Field(Field {
                key: form.key(ask.key),
                label: ask.label.into(),
                value: standing.text,
                hint: String::new(),
                fault: standing.fault,
                entry: Entry::Written,
            });
            let Some(weight) = ask.weight else { return Block::Group("target", vec![question]) };
            let stance: Stance = *weight(&mut scratch);
            let chosen = STANCES.iter().find(|(one, ..)| *one == stance).map_or("", |(_, word, _)| *word);
            let stance = Block::Field(Field {
                key: form.key(&format!("{}{STANCE}", ask.key)),
                label: format!("How much it matters: {}", ask.label),
                value: chosen.into(),
                hint: String::new(),
                fault: String::new(),
                entry: Entry::Chosen(
                    STANCES.iter().map(|(_, word, words)| ((*word).into(), (*words).into())).collect(),
                ),
            });
            Block::Group("target", vec![question, stance])
        })
        .collect()
}

fn choices(form: &Form, targets: &Targets) -> Vec<Block> {
    let choose = |key: &str, label: &str, value: String, mut rows: Vec<(String, String)>| {
        if rows.iter().all(|(row, _)| *row != value) {
            rows.insert(0, (value.clone(), "as it is".into()));
        }
        let entry = Entry::Chosen(rows);
        let (key, label) = (form.key(key), label.into());
        Block::Field(Field { key, label, value, hint: String::new(), fault: String::new(), entry })
    };
    let panels = PANELS.iter().map(|row| (row.id.to_string(), row.name.to_owned())).collect();
    let sheets = SHEET_SIZES.iter().map(|row| (row.id.to_string(), row.name.to_owned())).collect();
    let stages = (1..=4).map(|stages| (stages.to_string(), stages.to_string())).collect();
    vec![
        choose(PANEL, "Panel", Form::panel(targets), panels),
        choose(SHEET, "Sheets of", Form::sheet(targets), sheets),
        choose(STAGES, "Stages, at most", targets.stages.to_string(), stages),
    ]
}

/// What is marked, in a line.
fn bought_line(targets: &Targets, system: System) -> String {
    let screws: Vec<&str> = targets.threads.iter().map(|row| row.name).collect();
    let pins: Vec<String> =
        targets.pins.iter().map(|pin| figures::size(pin.to_m(), system).to_string()).collect();
    let ways: Vec<&str> = targets.ways.iter().map(|way| way.words()).collect();
    format!("Screws {}. Bolts {}. Drives: {}", screws.join(", "), pins.join(", "), ways.join("; "))
}

fn bought(form: &Form, targets: &Targets, system: System) -> Vec<Block> {
    let marked = |key: String, label: String, on: bool| {
        Block::Field(Field {
            key: form.key(&key),
            label,
            value: if on { "yes" } else { "no" }.into(),
            hint: String::new(),
            fault: String::new(),
            entry: Entry::Marked,
        })
    };
    let screws = offered(targets.units)
        .map(|row| marked(format!("{THREAD}{}", row.id), row.name.into(), targets.threads.contains(&row)));
    let bolts = pins(targets.units).into_iter().enumerate().map(|(at, pin)| {
        let label = format!("bolts {}", figures::size(pin.to_m(), system));
        marked(format!("{PIN}{at}"), label, targets.pins.contains(&pin))
    });
    let ways = Way::ALL
        .into_iter()
        .enumerate()
        .map(|(at, way)| marked(format!("{WAY}{at}"), way.words().into(), targets.ways.contains(&way)));
    screws.chain(bolts).chain(ways).collect()
}
