//! What the picture shows: toggles for what lies over the drawing, and the plots beside it.
use leptos::prelude::*;
use leptos::{ev, html};
use risewright::drawing::{Chart, Show};
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

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

/// The toggles; `room` says how many plots are drawn.
#[component]
pub fn ShowChoices(state: State, #[prop(into)] room: Signal<usize>) -> impl IntoView {
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
            <Plots state room/>
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

/// Closes an open list when one presses elsewhere, and at Escape, which goes back to what opened it; not from the window with a table, `busy`.
fn put_away(list: NodeRef<html::Details>, busy: impl Fn() -> bool + Copy + 'static) {
    let open = move || list.get_untracked().filter(|list| list.open() && !busy());
    let pressed = window_event_listener(ev::pointerdown, move |event| {
        let within = |list: &web_sys::HtmlDetailsElement| {
            list.contains(event.target().and_then(|target| target.dyn_into().ok()).as_ref())
        };
        if let Some(list) = open().filter(|list| !within(list)) {
            list.set_open(false);
        }
    });
    let escape = window_event_listener(ev::keydown, move |event| {
        if let Some(list) = open().filter(|_| event.key() == "Escape") {
            list.set_open(false);
            if let Some(summary) =
                list.first_element_child().and_then(|summary| summary.dyn_into::<HtmlElement>().ok())
            {
                // Refused only where it has left the page.
                let _ = summary.focus();
            }
        }
    });
    on_cleanup(move || {
        pressed.remove();
        escape.remove();
    });
}

/// Which plots stand beside the drawing, in the order of the list, each with its table and files; `room` says how many are drawn.
#[component]
fn Plots(state: State, room: Signal<usize>) -> impl IntoView {
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
    let list = NodeRef::<html::Details>::new();
    put_away(list, move || open.with_untracked(Option::is_some));
    let crowded = move || {
        let (chosen, shown) = (state.charts.with(Vec::len), room.get());
        (shown > 0 && shown < chosen).then(|| {
            let count = match shown {
                1 => "One plot has".to_owned(),
                some => format!("{some} plots have"),
            };
            view! { <p class="unit">{count} " room beside the drawing: the first ones ticked. Untick one to see another."</p> }
        })
    };
    view! {
        <details class="plots" node_ref=list>
            <summary>"Plots, tables"</summary>
            <fieldset>
                <legend class="unseen">"Plots beside the drawing"</legend>
                {lines.collect_view()}
                {crowded}
            </fieldset>
        </details>
        <PlotTableWindow state open/>
    }
}
