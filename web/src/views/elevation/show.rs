//! What the picture shows: toggles for what lies over the drawing, and the plots beside it.
use leptos::prelude::*;
use risewright::drawing::{Chart, Show};

use super::table::{PlotActs, PlotTableWindow};
use crate::format;
use crate::state::State;

/// A toggle: its word, and how it is read and written.
type Toggle = (&'static str, fn(&Show) -> bool, fn(&mut Show, bool));

const TOGGLES: [Toggle; 6] = [
    ("dimensions", |show| show.dimensions, |show, on| show.dimensions = on),
    ("forces", |show| show.forces, |show, on| show.forces = on),
    ("bending", |show| show.bending, |show, on| show.bending = on),
    ("bent shape", |show| show.bent, |show, on| show.bent = on),
    ("load", |show| show.load, |show, on| show.load = on),
    ("support", |show| show.support, |show, on| show.support = on),
];

/// The toggles.
#[component]
pub fn ShowChoices(state: State) -> impl IntoView {
    let toggles = TOGGLES.into_iter().map(|(word, read, write)| {
        let on = move || state.shown.with(read);
        let turn = move |event: web_sys::Event| {
            let on = event_target_checked(&event);
            state.shown.update(|shown| write(shown, on));
        };
        view! { <label><input type="checkbox" prop:checked=on on:change=turn/> {word}</label> }
    });
    view! {
        <div class="choices">
            <fieldset class="show">
                <legend>"Show"</legend>
                {toggles.collect_view()}
            </fieldset>
            <Plots state/>
            <Marked state/>
        </div>
    }
}

/// What is marked in the drawing, to be unmarked.
#[component]
fn Marked(state: State) -> impl IntoView {
    let title = move || {
        state
            .marked
            .get()
            .and_then(|id| state.report.with(|report| report.check(id).map(|check| check.title)))
    };
    let button = move || {
        title().map(|title| {
            let label = format!("Unmark {title}");
            view! { <button type="button" on:click=move |_| state.marked.set(None)>{label}</button> }
        })
    };
    view! { {button} }
}

/// Which plots stand beside the drawing, in the order of the list, each with its table and files.
#[component]
fn Plots(state: State) -> impl IntoView {
    let open = RwSignal::new(None);
    let lines = Chart::ALL.into_iter().map(|chart| {
        let on = move || state.charts.with(|charts| charts.contains(&chart));
        let turn = move |event: web_sys::Event| {
            let on = event_target_checked(&event);
            state.charts.update(|charts| {
                let chosen = |known: &Chart| if *known == chart { on } else { charts.contains(known) };
                *charts = Chart::ALL.into_iter().filter(chosen).collect();
            });
        };
        view! {
            <div class="plot-line">
                <label><input type="checkbox" prop:checked=on on:change=turn/> {format::chart(chart)}</label>
                <PlotActs state chart open/>
            </div>
        }
    });
    view! {
        <details class="plots">
            <summary>"Plots, tables"</summary>
            <fieldset>
                <legend class="unseen">"Plots beside the drawing"</legend>
                {lines.collect_view()}
            </fieldset>
        </details>
        <PlotTableWindow state open/>
    }
}
