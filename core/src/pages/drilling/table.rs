//! Hole tables, recesses and pilot holes as blocks.
use crate::pages::document::{Block, Cell, Table as Lines};
use crate::parts::{Housing, Part, Purpose};
use crate::quantity::figures::{self, Fit};
use crate::quantity::{Length, System};
use crate::workshop::drilling::{Row, Table, pilots, place};

pub(super) const fn unit(system: System) -> &'static str {
    match system {
        System::Metric => "millimetres",
        System::Inch => "inches",
    }
}

fn number(length: Length, system: System) -> String {
    figures::marked(length, system).number
}

fn half(length: Length) -> Length {
    Length::from_steps(length.steps() / 2)
}

/// How many holes and recesses.
pub(super) fn gist(table: &Table) -> String {
    let some = |count: usize, thing: &str| match count {
        0 => None,
        1 => Some(format!("1 {thing}")),
        _ => Some(format!("{count} {thing}s")),
    };
    let list = [
        some(table.rows.len(), "hole"),
        some(table.housings.len(), "recess").map(|words| words.replace("recesss", "recesses")),
    ];
    list.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

/// Hole table and table of recesses.
pub(super) fn blocks(table: &Table, system: System) -> Vec<Block> {
    let mut blocks = Vec::new();
    if !table.rows.is_empty() {
        blocks.push(Block::Table(Lines {
            caption: format!("Holes of {}, from the datum, in {}", table.name, unit(system)),
            head: ["hole", "along", "across", "bit", "for", "within"].map(String::from).into(),
            rows: table.rows.iter().map(|row| line(row, system)).collect(),
            foot: Vec::new(),
        }));
    }
    if !table.housings.is_empty() {
        blocks.push(Block::Table(Lines {
            caption: format!("Recesses of {}, cut after drilling, in {}", table.name, unit(system)),
            head: ["for", "along", "across", "deep"].map(String::from).into(),
            rows: table.housings.iter().map(|cut| recess(cut, table, system)).collect(),
            foot: Vec::new(),
        }));
    }
    blocks
}

fn line(row: &Row, system: System) -> Vec<Cell> {
    let (wide, sunk) = row.bits(system);
    let sunk = sunk.map(|sunk| format!(", sunk to {sunk}")).unwrap_or_default();
    let within = figures::drilled(row.tolerance.to_m(), system).number;
    let what = match row.purpose {
        Purpose::Countersunk => "screw".to_owned(),
        purpose => purpose.word().to_owned(),
    };
    vec![
        Cell::words(row.letter.clone()),
        Cell::number(place(row.along, row.is_held(), system)),
        Cell::number(place(row.across, row.is_held(), system)),
        Cell::words(format!("{wide} {}{sunk}", row.bit.kind.trim_end_matches(" bit"))),
        Cell::words(what),
        if row.is_held() { Cell::StrongNumber(within) } else { Cell::Number(within) },
    ]
}

fn recess(cut: &Housing, table: &Table, system: System) -> Vec<Cell> {
    // A recess that runs out at an edge ends there.
    let span = |middle: Length, side: Length, whole: Length| {
        let (from, to) = ((middle - half(side)).max(Length::ZERO), (middle + half(side)).min(whole));
        format!("{} to {}", number(from, system), number(to, system))
    };
    let deep = if cut.depth < table.size[2] { number(cut.depth, system) } else { "through".into() };
    vec![
        Cell::words(cut.takes),
        Cell::number(span(cut.along, cut.length, table.size[0])),
        Cell::number(span(cut.across, cut.width, table.size[1])),
        Cell::number(deep),
    ]
}

/// What one reads off a part's figure.
pub(super) fn label(table: &Table, system: System) -> String {
    let holes: Vec<String> = table
        .rows
        .iter()
        .map(|row| {
            format!(
                "hole {} {} wide at {} along, {} across",
                row.letter,
                row.bits(system).0,
                place(row.along, row.is_held(), system),
                place(row.across, row.is_held(), system)
            )
        })
        .collect();
    let [long, wide, _] = table.size;
    let size = format!("{} × {}", number(long, system), figures::marked(wide, system));
    if holes.is_empty() {
        format!("{} in plan, {size}, with {}.", table.name, gist(table))
    } else {
        format!("{} in plan, {size}: {}.", table.name, holes.join("; "))
    }
}

/// Pilot holes of the wood screws.
pub(super) fn pilot_holes(parts: &[Part], system: System) -> Vec<Block> {
    let list = pilots(parts);
    if list.is_empty() {
        return Vec::new();
    }
    let rows = list.iter().map(|pilot| {
        vec![
            Cell::number(pilot.part.to_string()),
            Cell::words(pilot.name),
            Cell::number(pilot.count.to_string()),
            Cell::number(figures::bit(pilot.diameter, Fit::Thread, system).number),
            Cell::number(number(pilot.depth, system)),
        ]
    });
    vec![
        Block::heading("Pilot holes"),
        Block::text(
            "Drilled through the holes of the outer piece with both pieces held together; they need no mark of their own.",
        ),
        Block::Table(Lines {
            caption: format!("Pilot holes, in {}", unit(system)),
            head: ["no.", "screw", "count", "bit", "deep"].map(String::from).into(),
            rows: rows.collect(),
            foot: Vec::new(),
        }),
    ]
}
