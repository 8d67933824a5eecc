//! The end elevation, to be pushed sideways and moved up and down; the document about it stands beneath.
use leptos::prelude::*;
use risewright::quantity::{Force, System, figures};

use crate::stage::{Deck, DeckSlider, Stage, say};
use crate::state::State;
use crate::widgets::slider::Slider;

/// A slider without ends would have no length.
const SOME: f64 = 1e-3;

/// Picture and controls.
#[component]
pub fn Sway(state: State) -> impl IntoView {
    let push = RwSignal::new(0.0_f64);
    let rattle = RwSignal::new(false);
    view! {
        <section class="swaying" aria-label="End elevation">
            <Stage state deck=Deck::of(state) push rattle/>
            <Controls state push rattle/>
        </section>
    }
}

/// The same for keys and screen readers, and which plots stand beside it.
#[component]
fn Controls(state: State, push: RwSignal<f64>, rattle: RwSignal<bool>) -> impl IntoView {
    let most = Memo::new(move |_| state.picture.with(|picture| picture.most_push));
    let push_words = Signal::derive(move || push_words(push.get(), state.units.get()));
    let rested = Callback::new(move |()| say(state));
    view! {
        <div class="sway-controls">
            <DeckSlider state deck=Deck::of(state)/>
            <Show when=move || { most.get() > 0.0 } fallback=|| view! { <p class="note">"No push can be drawn yet."</p> }>
                <label>
                    <span>"Push"</span>
                    <Slider
                        class="push-slider"
                        label="Sideways push at the deck"
                        value=push
                        ends=Signal::derive(move || (-most.get().max(SOME), most.get().max(SOME)))
                        steps=Signal::derive(move || push_steps(state.units.get()))
                        words=push_words
                        moved=Callback::new(move |newtons| push.set(newtons))
                        rested
                    />
                    <output>{push_words}</output>
                </label>
                <button type="button" on:click=move |_| push.set(0.0)>"Let go"</button>
            </Show>
            <div class="segments" role="group" aria-label="Plots">
                {[(false, "Give, critical load"), (true, "Rattle, twist")]
                    .map(|(which, words)| {
                        view! {
                            <button
                                type="button"
                                aria-pressed=move || if rattle.get() == which { "true" } else { "false" }
                                on:click=move |_| rattle.set(which)
                            >
                                {words}
                            </button>
                        }
                    })
                    .collect_view()}
            </div>
        </div>
    }
}

/// A push in words: how hard, and to which side of the drawing.
fn push_words(newtons: f64, units: System) -> String {
    let force = figures::small_force(newtons.abs(), units);
    if force.number == "0" {
        return "none".into();
    }
    format!("{force} to the {}", if newtons > 0.0 { "right" } else { "left" })
}

/// What an arrow key and Page Up move the push by, N.
fn push_steps(units: System) -> (f64, f64) {
    match units {
        System::Metric => (Force::n(5.0).to_n(), Force::n(25.0).to_n()),
        System::Inch => (Force::lbf(1.0).to_n(), Force::lbf(5.0).to_n()),
    }
}
