//! The crank: turn it up or down at its own pace, or take it anywhere with the slider.
use std::sync::Arc;

use leptos::html;
use leptos::prelude::*;
use risewright::quantity::figures;

use super::strip::{HEIGHT, Track};
use crate::clock::each_frame;
use crate::format;
use crate::input::crank::{Direction, Manner, Turning};
use crate::input::keyboard::Command;
use crate::media::less_motion;
use crate::state::State;
use crate::widgets::picture::Layer;
use crate::widgets::size::observe;
use crate::widgets::slider::Slider;

/// Turns that an arrow key and Page Up move.
const STEPS: (f64, f64) = (0.1, 1.0);

/// Buttons, scale and readings.
#[component]
pub fn Crank(state: State) -> impl IntoView {
    let caution = move || state.report.with(|report| report.caution().text(state.units.get()));
    view! {
        <section class="crank" aria-label="Crank">
            <div class="turning">
                <Buttons state/>
                <p class="beware">{caution}</p>
            </div>
            <Strip state/>
            <Readings state/>
        </section>
    }
}

/// Turns the crank until a stop, another button or another hand.
pub fn turn(state: State, direction: Direction) {
    state.turning.set(Some(direction));
    let mut crank = Turning::begin(direction, Manner::for_reader(less_motion()), state.turns.get_untracked());
    each_frame(move |seconds| {
        if state.turning.get_untracked() != Some(direction) {
            return false;
        }
        state.report.with_untracked(|report| {
            let pace = report.design.drive.pace.to_per_minute();
            let (turns, stop) = crank.advance(seconds, pace, report.turns());
            state.crank_to(report.height_at_turns(turns));
            if stop {
                state.turning.set(None);
                state.say_rest();
            }
            !stop
        })
    });
}

#[component]
fn Buttons(state: State) -> impl IntoView {
    let pressed = move |direction| if state.turning.get() == Some(direction) { "true" } else { "false" };
    let start = move |direction| {
        if state.turning.get_untracked() != Some(direction) {
            turn(state, direction);
        }
    };
    let glyph = |path: &'static str| {
        view! { <svg width="10" height="10" viewBox="0 0 10 10" aria-hidden="true"><path fill="currentColor" d=path></path></svg> }
    };
    view! {
        <div class="buttons">
            <button type="button" aria-pressed=move || pressed(Direction::Lower) on:click=move |_| start(Direction::Lower)>
                {glyph("M5 9L9.5 1.5H.5Z")} "Lower"
            </button>
            <button type="button" on:click=move |_| state.command(Command::Stop)>{glyph("M1 1h8v8H1z")} "Stop"</button>
            <button type="button" aria-pressed=move || pressed(Direction::Raise) on:click=move |_| start(Direction::Raise)>
                {glyph("M5 1L9.5 8.5H.5Z")} "Raise"
            </button>
        </div>
    }
}

#[component]
fn Strip(state: State) -> impl IntoView {
    let place = NodeRef::<html::Div>::new();
    let size = observe(place);
    let track =
        Memo::new(move |_| Track { width: size.get().0, turns: state.report.with(|report| report.turns()) });
    let still = Signal::derive(move || {
        Arc::new(state.report.with(|report| track.get().still(report, state.units.get())))
    });
    let live = Signal::derive(move || Arc::new(track.get().live(state.turns.get())));
    let ends = Signal::derive(move || (0.0, track.get().turns));
    let words = Signal::derive(move || state.deck_words());
    let moved = Callback::new(move |turns| {
        state.move_to(state.report.with_untracked(|report| report.height_at_turns(turns)));
    });
    let rested = Callback::new(move |()| state.say_rest());
    view! {
        <div class="strip">
            <span class="over" aria-hidden="true">{move || format!("deck, {}", format::length_unit(state.units.get()))}</span>
            <span class="under" aria-hidden="true">"turns"</span>
            <div class="track" node_ref=place>
                <Slider
                    class="crank-slider"
                    label="Crank, turns from the lowest deck"
                    value=state.turns
                    shown=Signal::derive(move || state.rest_turns())
                    ends
                    steps=STEPS
                    words
                    moved
                    rested
                />
                <svg class="dwg" width=move || size.get().0 height=HEIGHT aria-hidden="true">
                    <Layer class="still" marks=still/>
                    <Layer class="live" marks=live/>
                </svg>
            </div>
        </div>
    }
}

#[component]
fn Readings(state: State) -> impl IntoView {
    let pace = move || state.design.with(|design| design.drive.pace.to_per_minute());
    let all = move || state.report.with(|report| report.turns());
    let turns = move || figures::turns(state.turns.get()).number;
    let crank = move |raising: bool| {
        state
            .station
            .with(|station| if raising { station.torque.crank_raise } else { station.torque.crank_lower })
    };
    let force = move |newtons: Option<f64>| {
        newtons.map(|newtons| figures::small_force(newtons.abs(), state.units.get()))
    };
    let number = move |newtons| force(newtons).map_or_else(|| "—".to_owned(), |figure| figure.number);
    let unit = move |newtons| force(newtons).map_or("", |figure| figure.unit);
    // A table that runs down by itself is held back, and that is another thing to know than how hard lowering is.
    let runs_down = Memo::new(move |_| crank(false).is_some_and(|newtons| newtons < 0.0));
    let lowering =
        move || if runs_down.get() { name("to hold back", "Hold") } else { name("to lower", "Lower") };
    view! {
        <dl class="readings">
            <div>
                <dt>{name("Turns from lowest", "Turn")}</dt>
                <dd><b data-reading="turns">{turns}</b> {move || format!(" of {}", figures::turns(all()).number)}</dd>
            </div>
            <div>
                <dt>{name("Crank to raise", "Raise")}</dt>
                <dd><b data-reading="raise">{move || number(crank(true))}</b> " " {move || unit(crank(true))}</dd>
            </div>
            <div>
                <dt>{lowering}</dt>
                <dd><b data-reading="lower">{move || number(crank(false))}</b> " " {move || unit(crank(false))}</dd>
            </div>
            <div class="time">
                <dt>{move || format!("At {} a minute", figures::turns(pace()).number.trim_end_matches(".0"))}</dt>
                <dd>
                    <b data-reading="time">{move || format::stop_watch(state.turns.get(), pace())}</b>
                    {move || format!(" of {}", format::stop_watch(all(), pace()))}
                </dd>
            </div>
        </dl>
    }
}

/// A name in full, and a short one for where there is little room.
fn name(full: &'static str, short: &'static str) -> impl IntoView {
    view! {
        <span class="full">{full}</span>
        <span class="short">{short}</span>
    }
}
