//! The values at the deck's height as a table: for screen readers always, for everybody where the picture has no room for it.
use leptos::prelude::*;
use risewright::drawing::{Reading, ReadingRow};
use risewright::report::Report;

use super::figure::Drawn;
use crate::state::State;

/// What of a reading changes only with the design and the reader's units: names and units, part by part.
#[derive(Clone, PartialEq, Eq)]
struct Names {
    columns: [&'static str; 3],
    parts: Vec<(String, Vec<(&'static str, &'static str)>)>,
}

impl Names {
    fn of(reading: &Reading) -> Self {
        let names = |rows: &[ReadingRow]| rows.iter().map(|row| (row.name, row.unit)).collect();
        let parts = (0..).map_while(|place| part(reading, place));
        Self {
            columns: reading.columns,
            parts: parts.map(|(heading, rows)| (heading.to_owned(), names(rows))).collect(),
        }
    }
}

/// The parts of a reading in order; the heading of the first tells the height and stands in the table's head.
fn part(reading: &Reading, place: usize) -> Option<(&str, &[ReadingRow])> {
    match place {
        0 => Some(("", &reading.rows)),
        1 => Some((&reading.carried, &reading.loads)),
        2 => Some((&reading.gives, &reading.sag)),
        _ => None,
    }
}

/// The table.
#[component]
pub fn Values(state: State, drawn: Drawn) -> impl IntoView {
    let in_picture = Memo::new(move |_| {
        drawn.sheet.with(|sheet| sheet.as_ref().is_some_and(|sheet| sheet.frame.reading.is_some()))
    });
    let reading = Memo::new(move |_| {
        if in_picture.get() {
            // Who hears it cannot follow a drag anyway.
            let height = state.rest_height();
            let at = |report: &Report| Reading::at(report, &report.at(height), state.units.get());
            return Some(state.report.with(|report| at(report)));
        }
        drawn.moving.with(|moving| moving.as_ref().map(|moving| moving.1.reading.clone()))
    });
    let names = Memo::new(move |_| reading.with(|reading| reading.as_ref().map(Names::of)));
    // Figures are patched one by one; the table is made anew only when its names change.
    let cell = move |place: usize, row: usize, column: usize| {
        Signal::derive(move || {
            reading.with(|reading| {
                let (_, rows) = part(reading.as_ref()?, place)?;
                rows.get(row)?.values.get(column).cloned()
            })
        })
    };
    let heading = Signal::derive(move || {
        reading.with(|reading| reading.as_ref().map(|reading| reading.heading.clone()))
    });
    let line = move |place: usize, row: usize, (name, unit): (&'static str, &'static str), wide: usize| {
        let cells = if place == 0 {
            (0..wide).map(|column| view! { <td>{cell(place, row, column)}</td> }.into_any()).collect_view()
        } else {
            vec![view! { <td colspan=wide>{cell(place, row, 0)}</td> }.into_any()]
        };
        view! {
            <tr>
                <th scope="row">{name} " " <span class="unit">{unit}</span></th>
                {cells}
            </tr>
        }
    };
    let body = move || {
        let Names { columns, parts } = names.get()?;
        let wide = columns.len();
        let parts = parts.into_iter().enumerate().map(|(place, (heading, rows))| {
            let heading = (!heading.is_empty()).then(
                || view! { <tr><th class="part" scope="rowgroup" colspan=wide + 1>{heading}</th></tr> },
            );
            let lines = rows.into_iter().enumerate().map(|(row, names)| line(place, row, names, wide));
            view! { <tbody>{heading} {lines.collect_view()}</tbody> }
        });
        Some(view! {
            <thead>
                <tr>
                    <th scope="col">{heading}</th>
                    {columns.into_iter().map(|column| view! { <th scope="col">{column}</th> }).collect_view()}
                </tr>
            </thead>
            {parts.collect_view()}
        })
    };
    view! {
        <table class="values" class:unseen=in_picture>
            <caption class="unseen">"Values at the deck's height"</caption>
            {body}
        </table>
    }
}
