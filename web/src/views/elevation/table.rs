//! A plot as a table in a window of its own, and as a file.
use leptos::html;
use leptos::prelude::*;
use risewright::drawing::{Chart, PlotRow, Plotted};
use risewright::share::plot;

use crate::persist;
use crate::state::State;

/// The plot whose table is open; none while it is shut.
pub type Open = RwSignal<Option<Chart>>;

/// Table and files of a plot that is chosen.
#[component]
pub fn PlotActs(state: State, chart: Chart, open: Open) -> impl IntoView {
    let title = plotted(state, chart).title();
    let label = move |what: &str| format!("{title}: {what}");
    view! {
        <button type="button" aria-label=label("table") on:click=move |_| open.set(Some(chart))>"Table"</button>
        <button type="button" aria-label=label("save as CSV") on:click=move |_| keep(state, chart, Kind::Csv)>"CSV"</button>
        <button type="button" aria-label=label("save as SVG") on:click=move |_| keep(state, chart, Kind::Svg)>"SVG"</button>
    }
}

fn plotted(state: State, chart: Chart) -> Plotted {
    state.report.with_untracked(|report| Plotted::of(chart, report, state.units.get_untracked()))
}

/// What a plot is saved as.
#[derive(Clone, Copy)]
enum Kind {
    Csv,
    Svg,
}

fn keep(state: State, chart: Chart, kind: Kind) {
    let plotted = plotted(state, chart);
    let (extension, text) = match kind {
        Kind::Csv => ("csv", plot::csv(&plotted)),
        Kind::Svg => ("svg", plotted.svg()),
    };
    let name = plot::file_name(&plotted, extension);
    persist::save_file(&name, &text);
    state.spoken.set(format!("Saved as {name}."));
}

/// The window with the table.
#[component]
pub fn PlotTableWindow(state: State, open: Open) -> impl IntoView {
    let node = NodeRef::<html::Dialog>::new();
    let shut = move || {
        if let Some(dialog) = node.get_untracked() {
            dialog.close();
        }
    };
    let table = move || {
        let chart = open.get()?;
        let plotted = state.report.with(|report| Plotted::of(chart, report, state.units.get()));
        let table = plotted.table();
        let heads = table.head.into_iter().map(|(name, unit)| {
            view! { <th scope="col">{name} " " <span class="unit">{unit}</span></th> }
        });
        Some(view! {
            <table class="plot-table">
                <caption>{table.caption} <span class="unit">"Bold: least and greatest value of each curve."</span></caption>
                <thead><tr>{heads.collect_view()}</tr></thead>
                <tbody>{table.rows.into_iter().map(row).collect_view()}</tbody>
            </table>
        })
    };
    // The window is opened where its content is asked for, once it stands in the page.
    let shown = move || {
        let content = table();
        if content.is_some() {
            request_animation_frame(move || {
                if let Some(dialog) = node.get_untracked().filter(|dialog| !dialog.open()) {
                    // Refused only where the window has left the page.
                    let _ = dialog.show_modal();
                }
            });
        }
        content
    };
    let save_as = move |kind: Kind| {
        if let Some(chart) = open.get_untracked() {
            keep(state, chart, kind);
        }
    };
    view! {
        <dialog node_ref=node class="window" aria-label="Plot as a table" on:close=move |_| open.set(None)>
            <div class="window-head">
                <button type="button" on:click=move |_| save_as(Kind::Csv)>"Save as CSV"</button>
                <button type="button" on:click=move |_| save_as(Kind::Svg)>"Save as SVG"</button>
                <button type="button" class="main" on:click=move |_| shut()>"Close"</button>
            </div>
            <div class="window-body" tabindex="0" role="region" aria-label="Table">{shown}</div>
        </dialog>
    }
}

fn row(row: PlotRow) -> impl IntoView {
    let cells = row.values.into_iter().map(|(words, extreme)| {
        view! { <td>{if extreme { view! { <b>{words}</b> }.into_any() } else { words.into_any() }}</td> }
    });
    view! { <tr><th scope="row">{row.height}</th>{cells.collect_view()}</tr> }
}
