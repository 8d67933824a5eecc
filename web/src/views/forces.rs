//! A part cut free, drawn by the worker at the deck's present height; the document about it stands beneath.
use leptos::prelude::*;

use crate::stage::{Deck, DeckSlider, Stage};
use crate::state::State;
use crate::worker;

/// Picture and slider.
#[component]
pub fn Forces(state: State) -> impl IntoView {
    // The table beneath follows where the deck comes to rest.
    let rest = RwSignal::new(state.station.with_untracked(|station| station.height));
    worker::tell(Signal::derive(move || vec![("deck", rest.get().to_string())]));
    let deck = Deck {
        rested: Callback::new(move |()| {
            rest.set(state.station.with_untracked(|station| station.height));
            state.say_rest();
        }),
        ..Deck::of(state)
    };
    view! {
        <section class="swaying freeing" aria-label="Part cut free">
            <Stage state deck push=RwSignal::new(0.0) rattle=false/>
            <div class="sway-controls">
                <DeckSlider state deck/>
            </div>
        </section>
    }
}
