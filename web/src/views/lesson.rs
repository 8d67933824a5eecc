//! A lesson: its small table, to be moved, and the plot on which a guess is sketched; the document about it stands beneath.
use leptos::prelude::*;
use leptos::svg;
use risewright::drawing::Screen;
use wasm_bindgen::JsCast;
use web_sys::{Element, PointerEvent};

use crate::clock::{Latest, each_frame};
use crate::format;
use crate::input::crank::{Direction, Manner, Turning};
use crate::media::less_motion;
use crate::stage::{Deck, DeckSlider, Stage, say};
use crate::state::State;
use crate::widgets::room::enlarged;
use crate::worker;

/// Beyond the ends of the plot a sketch may begin, px.
const AROUND: f64 = 16.0;
/// Strokes from one end of the lift to the other, and how many a minute.
const STROKES: f64 = 8.0;
const PACE: f64 = 80.0;

/// Picture, sketch and slider.
#[component]
pub fn Lesson(state: State) -> impl IntoView {
    // The worker brings it into the lesson's own lift.
    let height = RwSignal::new(0.0_f64);
    let moving = RwSignal::new(None::<Direction>);
    let lift = Memo::new(move |_| state.picture.with(|picture| picture.lift));
    let shown = Memo::new(move |_| {
        let [low, high] = lift.get();
        height.get().max(low).min(high.max(low))
    });
    let deck = Deck {
        height: shown.into(),
        carriage: Signal::derive(|| 0.0),
        lift: Signal::derive(move || {
            let [low, high] = lift.get();
            (low, high)
        }),
        words: Signal::derive(move || format::height(shown.get(), state.units.get())),
        to_height: Callback::new(move |to| {
            moving.set(None);
            height.set(to);
        }),
        to_carriage: Callback::new(|_| {}),
        rested: Callback::new(move |()| {
            say(state);
            // What has been seen by now stands in the document too.
            worker::answer("deck", &shown.get_untracked().to_string(), true);
        }),
    };
    let go = move |way: Direction| {
        moving.set(Some(way));
        let along = |low: f64, high: f64| (shown.get_untracked() - low) / (high - low).max(f64::MIN_POSITIVE);
        let [low, high] = lift.get_untracked();
        let mut table = Turning::begin(way, Manner::for_reader(less_motion()), STROKES * along(low, high));
        each_frame(move |seconds| {
            if moving.try_get_untracked().flatten() != Some(way) {
                return false;
            }
            let [low, high] = lift.get_untracked();
            let (strokes, over) = table.advance(seconds, PACE, STROKES);
            height.set(low + strokes / STROKES * (high - low));
            if over {
                moving.set(None);
                deck.rested.run(());
            }
            !over
        });
    };
    let button = move |way: Direction, words: &'static str| {
        view! {
            <button
                type="button"
                aria-pressed=move || if moving.get() == Some(way) { "true" } else { "false" }
                on:click=move |_| if moving.get_untracked() == Some(way) { moving.set(None) } else { go(way) }
            >
                {words}
            </button>
        }
    };
    view! {
        <section class="swaying learning" aria-label="The lesson’s table">
            <Stage state deck push=RwSignal::new(0.0) rattle=false>
                <Pad state/>
            </Stage>
            <div class="sway-controls">
                {button(Direction::Lower, "Lower")} {button(Direction::Raise, "Raise")}
                <DeckSlider state deck/>
            </div>
        </section>
    }
}

/// What the pointer draws over the plot becomes the reader's guess.
#[component]
fn Pad(state: State) -> impl IntoView {
    let node = NodeRef::<svg::Rect>::new();
    let held = StoredValue::new(None::<i32>);
    let place = Memo::new(move |_| {
        state.picture.with(|picture| {
            let sketch = picture.sketch.as_ref()?;
            let (top, bottom) = (sketch.ys.last()? - AROUND, sketch.ys.first()? + AROUND);
            let [left, right] = sketch.ends;
            Some([left - AROUND, top, right - left + 2.0 * AROUND, bottom - top])
        })
    });
    let side = move |at: usize| place.get().map(|place| place[at]);
    let guess = move |at: Screen, rests: bool| {
        let found =
            state.picture.with_untracked(|picture| picture.sketch.as_ref().and_then(|sketch| sketch.at(at)));
        if let Some((handle, share)) = found {
            worker::answer(&format!("g{handle}"), &format!("{share:.2}"), rests);
        }
    };
    let draw = StoredValue::new_local(Latest::new(move |at: Screen| guess(at, false)));
    let at = move |event: &PointerEvent| {
        let pad: Element = node.get_untracked()?.unchecked_into();
        let picture = pad.closest("svg").ok()??;
        let (edge, enlarged) = (picture.get_bounding_client_rect(), enlarged(&picture));
        let (x, y) = (f64::from(event.client_x()), f64::from(event.client_y()));
        Some(Screen::new((x - edge.left()) / enlarged, (y - edge.top()) / enlarged))
    };
    let press = move |event: PointerEvent| {
        if event.button() == 0 && held.get_value().is_none() {
            held.set_value(Some(event.pointer_id()));
            event.prevent_default();
            if let Some(pad) = event.target().and_then(|target| target.dyn_into::<Element>().ok()) {
                // Refused only when the pointer is already gone; then there is nothing to follow.
                let _ = pad.set_pointer_capture(event.pointer_id());
            }
            if let Some(at) = at(&event) {
                guess(at, false);
            }
        }
    };
    let moved = move |event: PointerEvent| {
        if held.get_value() == Some(event.pointer_id())
            && let Some(at) = at(&event)
        {
            draw.with_value(|draw| draw.put(at));
        }
    };
    let release = move |event: PointerEvent| {
        if held.get_value() == Some(event.pointer_id()) {
            held.set_value(None);
            if let Some(at) = at(&event) {
                guess(at, true);
            }
        }
    };
    view! {
        <rect
            node_ref=node
            class="hold sketch"
            x=move || side(0)
            y=move || side(1)
            width=move || side(2).unwrap_or(0.0)
            height=move || side(3).unwrap_or(0.0)
            on:pointerdown=press
            on:pointermove=moved
            on:pointerup=release
            on:pointercancel=release
        ></rect>
    }
}
