//! A picture that the worker draws, and what can be moved in it: the deck, a push, the carriage.
mod holds;

use leptos::html;
use leptos::prelude::*;

use crate::format;
use crate::input::keyboard::height_steps;
use crate::state::State;
use crate::widgets::room::room;
use crate::widgets::size::observe;
use crate::widgets::slider::Slider;
use crate::worker::{self, Ask};
use holds::Holds;

/// Kept free over the drawing, px.
const HEAD: u32 = 8;

/// The deck that a picture shows: that of the design, or of a lesson.
#[derive(Clone, Copy)]
pub struct Deck {
    /// Its height, m.
    pub height: Signal<f64>,
    /// The place of the base wheel axle along the base, m; of no use where the picture has no ring there.
    pub carriage: Signal<f64>,
    /// Its lowest and its highest, m; one value where they are not known yet.
    pub lift: Signal<(f64, f64)>,
    /// Where it stands, in words and units.
    pub words: Signal<String>,
    /// Moves it to a height, m.
    pub to_height: Callback<f64>,
    /// Moves it so that the base wheel axle comes to a place, m.
    pub to_carriage: Callback<f64>,
    /// Told when it has come to rest.
    pub rested: Callback<()>,
}

impl Deck {
    /// The deck of the present design.
    pub fn of(state: State) -> Self {
        Self {
            height: Signal::derive(move || state.height()),
            carriage: Signal::derive(move || state.station.with(|station| station.pose.carriage_x)),
            lift: Signal::derive(move || state.report.with(|report| (report.lowest(), report.highest()))),
            words: Signal::derive(move || state.deck_words()),
            to_height: Callback::new(move |height| state.move_to(height)),
            to_carriage: Callback::new(move |place| {
                state.move_to(state.report.with_untracked(|report| report.height_at_carriage(place)));
            }),
            rested: Callback::new(move |()| state.say_rest()),
        }
    }
}

/// The picture, as large as there is room.
#[component]
pub fn Stage(
    state: State,
    deck: Deck,
    /// Sideways push at the deck, N.
    push: RwSignal<f64>,
    /// Whether the plots are those of rattle and twist, where the page has two pairs.
    #[prop(into)]
    rattle: Signal<bool>,
    /// What lies over the picture in its own units.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    let place = NodeRef::<html::Div>::new();
    let size = observe(place);
    let room = Memo::new(move |_| room(size.get()));
    worker::draw(Signal::derive(move || {
        let room = room.get()?;
        Some(Ask {
            room: [room.width, room.height, HEAD],
            narrow: room.narrow,
            rattle: rattle.get(),
            deck: deck.height.get(),
            push: push.get(),
        })
    }));
    let part = move |side: usize| state.picture.with(|picture| picture.size[side]);
    let still = Memo::new(move |_| state.picture.with(|picture| picture.still.to_string()));
    let moving = Memo::new(move |_| state.picture.with(|picture| picture.moving.to_string()));
    view! {
        <div class="figure" class:narrow=move || room.get().is_some_and(|room| room.narrow) node_ref=place>
            <svg
                class="dwg"
                width=move || part(0)
                height=move || part(1)
                viewBox=move || format!("0 0 {} {}", part(0), part(1))
            >
                <g role="img" aria-label=move || state.picture.with(|picture| picture.spoken.clone())>
                    <g inner_html=still></g>
                    <g inner_html=moving></g>
                </g>
                {children.map(|children| children())}
                <Holds state deck push/>
            </svg>
        </div>
    }
}

/// The deck's height by keys, and in figures.
#[component]
pub fn DeckSlider(state: State, deck: Deck) -> impl IntoView {
    // A range takes its value when its ends are there.
    let known = Memo::new(move |_| deck.lift.with(|(low, high)| low < high));
    view! {
        <Show when=move || known.get()>
        <label>
            <span>"Deck"</span>
            <Slider
                class="deck-slider"
                label="Deck height"
                value=deck.height
                ends=deck.lift
                steps=Signal::derive(move || height_steps(state.units.get()))
                words=deck.words
                moved=deck.to_height
                rested=deck.rested
            />
            <output>{move || format::height(deck.height.get(), state.units.get())}</output>
        </label>
        </Show>
    }
}

/// Lets a screen reader say what the picture shows now.
pub fn say(state: State) {
    let words = state.picture.with_untracked(|picture| picture.spoken.clone());
    state.say(words);
}
