//! The values at the deck's height as a table: for screen readers always, for everybody where the picture has no room for it.
use leptos::prelude::*;
use risewright::drawing::Reading;

use super::figure::Drawn;

/// The table.
#[component]
pub fn Values(drawn: Drawn) -> impl IntoView {
    let reading = Memo::new(move |_| drawn.moving.with(|moving| moving.as_ref().map(|moving| moving.1.reading.clone())));
    let in_picture =
        move || drawn.sheet.with(|sheet| sheet.as_ref().is_some_and(|sheet| sheet.frame.reading.is_some()));
    let cell = move |row: usize, column: usize| {
        move || of(&reading, |reading| reading.rows.get(row).and_then(|row| row.values.get(column)).cloned())
    };
    let load = move |row: usize| {
        move || of(&reading, |reading| reading.loads.get(row).and_then(|row| row.values.first()).cloned())
    };
    // Names and units change only with the design and the reader's units; the figures are patched in place.
    let frame = Memo::new(move |_| {
        reading.with(|reading| reading.as_ref().map(|reading| {
            let name = |row: &risewright::drawing::ReadingRow| (row.name, row.unit);
            let rows: Vec<_> = reading.rows.iter().map(name).collect();
            let loads: Vec<_> = reading.loads.iter().map(name).collect();
            (reading.columns, rows, loads)
        }))
    });
    let body = move || {
        let (columns, rows, loads) = frame.get()?;
        let wide = columns.len();
        Some(view! {
            <thead>
                <tr>
                    <th scope="col">{move || of(&reading, |reading| Some(reading.heading.clone()))}</th>
                    {columns.into_iter().map(|column| view! { <th scope="col">{column}</th> }).collect_view()}
                </tr>
            </thead>
            <tbody>
                {rows
                    .into_iter()
                    .enumerate()
                    .map(|(row, (name, unit))| {
                        view! {
                            <tr>
                                <th scope="row">{name} " " <span class="unit">{unit}</span></th>
                                {(0..wide).map(|column| view! { <td>{cell(row, column)}</td> }).collect_view()}
                            </tr>
                        }
                    })
                    .collect_view()}
                {loads
                    .into_iter()
                    .enumerate()
                    .map(|(row, (name, unit))| {
                        view! {
                            <tr>
                                <th scope="row">{name} " " <span class="unit">{unit}</span></th>
                                <td colspan=wide>{load(row)}</td>
                            </tr>
                        }
                    })
                    .collect_view()}
            </tbody>
        })
    };
    view! {
        <table class="values" class:unseen=in_picture>
            <caption class="unseen">"Values at the deck's height"</caption>
            {body}
        </table>
    }
}

fn of(reading: &Memo<Option<Reading>>, part: impl Fn(&Reading) -> Option<String>) -> String {
    reading.with(|reading| reading.as_ref().and_then(part)).unwrap_or_default()
}
