//! Lists as CSV (RFC 4180): comma between, a heading line, CRLF at the end of each. Sizes in millimetres with a decimal point, masses in
//! kilograms, whatever the reader sees on screen: the files are for other programs. Only what to ask for in a shop is told as on screen, in
//! the unit its heading names.
use super::flat::round;
use crate::order::order;
use crate::parts::{Form, Grain, Part};
use crate::quantity::System;
use crate::workshop::drilling::Table;
use crate::workshop::hardware::{Bill, Price, money_text};

/// The parts, those made alike together, by number.
#[must_use]
pub fn parts(list: &[Part]) -> String {
    let mut rows: Vec<(&Part, u32)> = Vec::new();
    for part in list {
        match rows.iter_mut().find(|(known, _)| known.number == part.number) {
            Some((_, count)) => *count += part.count,
            None => rows.push((part, part.count)),
        }
    }
    order(&mut rows, |one, other| one.0.number.cmp(&other.0.number));
    let heading = [
        "number",
        "part",
        "count",
        "form",
        "size 1 mm",
        "size 2 mm",
        "size 3 mm",
        "layers",
        "grain",
        "kg each",
        "joined",
    ];
    table(
        &heading,
        rows.into_iter().map(|(part, count)| {
            let [first, second, third] = part.size.map(|size| round(size.to_mm()));
            let grain = match (part.form, part.grain) {
                (Form::Sheet, Grain::Along) => "along size 1",
                (Form::Sheet, Grain::Free) => "free",
                _ => "",
            };
            vec![
                part.number.to_string(),
                part.title(),
                count.to_string(),
                part.form.word().into(),
                first,
                second,
                third,
                part.layers.to_string(),
                grain.into(),
                format!("{:.4}", part.mass),
                part.joined.into(),
            ]
        }),
    )
}

/// The holes of every part, from its datum end and edge.
#[must_use]
pub fn holes(tables: &[Table]) -> String {
    let heading = [
        "number",
        "part",
        "count",
        "hole",
        "along mm",
        "across mm",
        "diameter mm",
        "bit",
        "countersink mm",
        "for",
        "joint",
        "tolerance mm",
    ];
    table(
        &heading,
        tables.iter().flat_map(|part| {
            part.rows.iter().map(|row| {
                vec![
                    part.part.to_string(),
                    part.name.clone(),
                    part.count.to_string(),
                    row.letter.clone(),
                    round(row.along.to_mm()),
                    round(row.across.to_mm()),
                    round(row.bit.diameter.to_mm()),
                    row.bit.kind.into(),
                    row.bit.countersink.map(|wide| round(wide.to_mm())).unwrap_or_default(),
                    row.purpose.word().into(),
                    row.joint.map(crate::parts::Joint::title).unwrap_or_default(),
                    round(row.tolerance.to_mm()),
                ]
            })
        }),
    )
}

/// What to buy; designations in the units of a system.
#[must_use]
pub fn hardware(bill: &Bill, system: System) -> String {
    let designation = match system {
        System::Metric => "designation, sizes in mm",
        System::Inch => "designation, sizes in inches",
    };
    let heading = ["number", "count", "item", designation, "kg of all", "price"];
    table(
        &heading,
        bill.items.iter().map(|item| {
            vec![
                item.number.map(|number| number.to_string()).unwrap_or_default(),
                item.count.to_string(),
                item.name.into(),
                item.designation(system),
                format!("{:.3}", item.mass.to_kg()),
                match item.price {
                    Price::Known(money) => money_text(money),
                    Price::Open => String::new(),
                    Price::With(other) => format!("with {other}"),
                },
            ]
        }),
    )
}

pub(super) fn table<'a>(heading: &[&str], rows: impl Iterator<Item = Vec<String>> + 'a) -> String {
    let mut text = line(heading.iter().map(|cell| (*cell).to_owned()));
    rows.for_each(|row| text.push_str(&line(row.into_iter())));
    text
}

fn line(cells: impl Iterator<Item = String>) -> String {
    let cells: Vec<String> = cells.map(|cell| quoted(&cell)).collect();
    cells.join(",") + "\r\n"
}

/// A cell in quotes where a comma, a quote or a line's end would break it.
fn quoted(cell: &str) -> String {
    if cell.contains([',', '"', '\n', '\r']) {
        format!("\"{}\"", cell.replace('"', "\"\""))
    } else {
        cell.to_owned()
    }
}
