//! A slider with a native range beneath, so that every screen reader, key and finger can move it.
use leptos::html;
use leptos::prelude::*;
use web_sys::KeyboardEvent;

use crate::input::keyboard::Step;

/// A native range. Its steps by key are its own, finer than a browser's.
#[component]
pub fn Slider(
    /// Class of the range.
    class: &'static str,
    /// What is moved.
    label: &'static str,
    /// The present value, from which a key goes on.
    #[prop(into)]
    value: Signal<f64>,
    /// The value that the range shows, where it may follow at rest: to nobody's eye, and it costs something at every move.
    #[prop(into, optional)]
    shown: Option<Signal<f64>>,
    /// Smallest and largest value.
    #[prop(into)]
    ends: Signal<(f64, f64)>,
    /// What an arrow key and what Page Up moves.
    #[prop(into)]
    steps: Signal<(f64, f64)>,
    /// The value in words and units.
    #[prop(into)]
    words: Signal<String>,
    /// Takes another value.
    #[prop(into)]
    moved: Callback<f64>,
    /// Told when the value rests: a key goes up, the pointer lets go.
    #[prop(into)]
    rested: Callback<()>,
    /// The element itself, for whoever places it.
    #[prop(optional)]
    node: NodeRef<html::Input>,
) -> impl IntoView {
    let shown = shown.unwrap_or(value);
    let on_input = move |_| {
        if let Some(input) = node.get_untracked() {
            moved.run(input.value_as_number());
        }
    };
    let on_key = move |event: KeyboardEvent| {
        if event.ctrl_key() || event.meta_key() || event.alt_key() {
            return;
        }
        if let Some(step) = Step::of(&event.key()) {
            event.prevent_default();
            let (small, big) = steps.get_untracked();
            moved.run(step.from(value.get_untracked(), small, big, ends.get_untracked()));
        }
    };
    view! {
        <input
            node_ref=node
            class=class
            type="range"
            aria-label=label
            min=move || ends.get().0
            max=move || ends.get().1
            step="any"
            prop:value=move || shown.get()
            aria-valuetext=words
            on:input=on_input
            on:keydown=on_key
            on:keyup=move |_| rested.run(())
            on:change=move |_| rested.run(())
        />
    }
}
