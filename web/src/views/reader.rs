//! A view that is read: the document that the worker makes, and how far it has come.
use std::sync::Arc;

use js_sys::Number;
use leptos::prelude::*;
use risewright::share::address::View;
use risewright::share::link;

use crate::persist;
use crate::shelf;
use crate::state::{Message, State};
use crate::widgets::document::{Act, Document};
use crate::worker;

/// The whole view.
#[component]
pub fn Page(state: State) -> impl IntoView {
    let here = move || state.leaf.with(|leaf| leaf.view == Some(state.view.get()));
    // The document of another view is not shown under this one's tab.
    let html = Memo::new(move |_| {
        if here() { state.leaf.with(|leaf| Arc::from(leaf.html.as_str())) } else { Arc::<str>::from("") }
    });
    let working = Memo::new(move |_| here() && state.leaf.with(|leaf| leaf.working));
    let stopped = Memo::new(move |_| here() && state.leaf.with(|leaf| !leaf.working && leaf.progress < 1.0));
    let busy = Memo::new(move |_| state.leaf.with(|leaf| leaf.working || leaf.awaited));
    let progress = move || state.leaf.with(|leaf| leaf.progress);
    let on_act = Callback::new(move |act: Act| perform(state, act));
    view! {
        <Show when=move || !here()>
            <h2 class="unseen">{move || state.view.get().title()}</h2>
        </Show>
        <Show when=move || working.get() || stopped.get()>
            <p class="working">
                <progress max="1" value=progress aria-label="Work behind this page"></progress>
                {move || if working.get() { "Still working; figures may grow better." } else { "Stopped; what is known stands below." }}
                <button type="button" on:click=move |_| if working.get() { worker::stop() } else { worker::go_on() }>
                    {move || if working.get() { "Stop" } else { "Go on" }}
                </button>
            </p>
        </Show>
        <Document html busy ticks=state.ticks on_act/>
    }
}

fn perform(state: State, act: Act) {
    match act.kind.as_str() {
        "go" => {
            // The browser's own reader of numbers: another one takes 13 kB of the first load.
            let height = Number::parse_float(&act.value);
            if height.is_finite() {
                let marked = state
                    .report
                    .with(|report| act.of.as_deref().and_then(|id| report.check(id)).map(|check| check.id));
                state.marked.set(marked);
                // A picture of the same view shows it too, where no part is to be marked.
                if marked.is_none() && state.view.get_untracked() == View::Sway {
                    persist::to_the_top();
                } else {
                    persist::go_to_view(state, View::Elevation);
                }
                state.go_to(height);
            }
        }
        "take" => take(state, "remedy", &act.value),
        "open" => {
            take(state, "opened design", &act.value);
            if state.notice.with_untracked(Option::is_none) {
                persist::go_to_view(state, View::Elevation);
            }
        }
        "answer" => {
            let key = act.of.unwrap_or_default();
            if state.view.get_untracked() == View::Compare && key == "with" {
                compare(state, &act.value);
            } else if state.view.get_untracked() != View::Shelf || !shelf::rename(state, &key, &act.value) {
                worker::answer(&key, &act.value, act.rests);
            }
        }
        "tick" => state.tick(&act.value),
        "untick" => state.ticks.set(String::new()),
        "keep" => shelf::perform(state, &act.value),
        "save" => worker::save(&act.value),
        "view" => {
            if let Some(view) = View::of(&act.value) {
                persist::go_to_view(state, view);
            }
        }
        "print" => persist::print(),
        _ => {}
    }
}

/// Sets beside the present design the one of a link, with or without its view; what is none the page itself refuses.
fn compare(state: State, text: &str) {
    let text = text.trim();
    let design = link::decode(text.rsplit(['/', '#']).next().unwrap_or_default()).ok();
    if design.is_none() || state.set_aside(design.as_ref()).is_err() {
        let _ = state.set_aside(None);
        worker::answer("with", text, true);
    }
}

/// Takes over a design that the page offers, as a step that can be undone.
fn take(state: State, title: &'static str, link: &str) {
    let outcome =
        link::decode(link).map_err(|fault| fault.to_string()).and_then(|design| state.open(title, design));
    state.notice.set(outcome.err().map(Message::Sentence));
}
