//! The end elevation, to be pushed sideways and moved up and down; the document about it stands beneath.
use leptos::html;
use leptos::prelude::*;
use leptos::svg;
use risewright::drawing::Screen;
use risewright::quantity::{Force, System, figures};
use wasm_bindgen::JsCast;
use web_sys::{Element, PointerEvent};

use crate::clock::Latest;
use crate::format;
use crate::input::keyboard::height_steps;
use crate::state::State;
use crate::widgets::room::room;
use crate::widgets::size::observe;
use crate::widgets::slider::Slider;
use crate::worker::{self, Ask};

/// Half the side of a target for a finger, px.
const HALF_FINGER: f64 = 22.0;
/// Kept free over the drawing, px.
const HEAD: u32 = 8;
/// A slider without ends would have no length.
const SOME: f64 = 1e-3;

/// Picture and controls.
#[component]
pub fn Sway(state: State) -> impl IntoView {
    let place = NodeRef::<html::Div>::new();
    let size = observe(place);
    let room = Memo::new(move |_| room(size.get()));
    let push = RwSignal::new(0.0_f64);
    let rattle = RwSignal::new(false);
    worker::draw(Signal::derive(move || {
        let room = room.get()?;
        Some(Ask {
            room: [room.width, room.height, HEAD],
            narrow: room.narrow,
            rattle: rattle.get(),
            deck: state.height(),
            push: push.get(),
        })
    }));
    let part = move |side: usize| state.picture.with(|picture| picture.size[side]);
    let still = Memo::new(move |_| state.picture.with(|picture| picture.still.to_string()));
    let moving = Memo::new(move |_| state.picture.with(|picture| picture.moving.to_string()));
    view! {
        <section class="swaying" aria-label="End elevation">
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
                    <Holds state push/>
                </svg>
            </div>
            <Controls state push rattle/>
        </section>
    }
}

/// What can be taken hold of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Grip {
    Deck,
    Push,
    Carriage,
}

/// A pointer that holds a grip: where it came down, and the deck's height or the push there.
#[derive(Clone, Copy)]
struct Hold {
    grip: Grip,
    pointer: i32,
    from: (f64, f64),
    value: f64,
}

/// Invisible targets over the grips, and what dragging them does.
#[component]
fn Holds(state: State, push: RwSignal<f64>) -> impl IntoView {
    let group = NodeRef::<svg::G>::new();
    let held = StoredValue::new(None::<Hold>);
    // One step a frame, to wherever the pointer is by then.
    let drag = StoredValue::new_local(Latest::new(move |(hold, right, down): (Hold, f64, f64)| {
        state.picture.with_untracked(|picture| match hold.grip {
            Grip::Push if picture.per_newton > 0.0 => {
                let wanted = hold.value + right / picture.per_newton;
                push.set(wanted.clamp(-picture.most_push, picture.most_push));
            }
            Grip::Deck if picture.per_metre > 0.0 => {
                let [lowest, highest] = picture.lift;
                state.move_to((hold.value - down / picture.per_metre).clamp(lowest, highest));
            }
            Grip::Carriage if picture.per_metre > 0.0 => {
                let place = hold.value + right / picture.per_metre;
                state.move_to(state.report.with_untracked(|report| report.height_at_carriage(place)));
            }
            _ => {}
        });
    }));
    let press = move |grip: Grip, event: &PointerEvent| {
        if event.button() != 0 || held.with_value(Option::is_some) {
            return;
        }
        let value = match grip {
            Grip::Push => push.get_untracked(),
            Grip::Deck => state.station.with_untracked(|station| station.height),
            Grip::Carriage => state.station.with_untracked(|station| station.pose.carriage_x),
        };
        let from = (f64::from(event.client_x()), f64::from(event.client_y()));
        held.set_value(Some(Hold { grip, pointer: event.pointer_id(), from, value }));
        event.prevent_default();
        if let Some(target) = event.target().and_then(|target| target.dyn_into::<Element>().ok()) {
            // Refused only when the pointer is already gone; then there is nothing to follow.
            let _ = target.set_pointer_capture(event.pointer_id());
        }
    };
    let moved = move |event: PointerEvent| {
        if let Some(hold) = held.get_value().filter(|hold| hold.pointer == event.pointer_id()) {
            let (x, y) = (f64::from(event.client_x()), f64::from(event.client_y()));
            drag.with_value(|drag| drag.put((hold, x - hold.from.0, y - hold.from.1)));
        }
    };
    let release = move |event: PointerEvent| {
        if held.get_value().is_some_and(|hold| hold.pointer == event.pointer_id()) {
            held.set_value(None);
            say(state);
        }
    };
    // Escape puts back what is held.
    let escape = window_event_listener(leptos::ev::keydown, move |event| {
        if event.key() == "Escape"
            && let Some(hold) = held.try_update_value(Option::take).flatten()
        {
            drag.with_value(|drag| drag.put((hold, 0.0, 0.0)));
        }
    });
    on_cleanup(move || escape.remove());
    let target = move |grip: Grip, class: &'static str| {
        let at = move || {
            state.picture.with(|picture| match grip {
                Grip::Deck => picture.deck,
                Grip::Push => picture.push,
                Grip::Carriage => picture.carriage,
            })
        };
        let (x, y) = (move || at().map(|at: Screen| at.x), move || at().map(|at: Screen| at.y));
        view! {
            <circle
                class=class
                cx=x
                cy=y
                r=move || if at().is_some() { HALF_FINGER } else { 0.0 }
                on:pointerdown=move |event| press(grip, &event)
            ></circle>
        }
    };
    view! {
        <g node_ref=group class="holds" on:pointermove=moved on:pointerup=release on:pointercancel=release>
            {target(Grip::Carriage, "hold ring")}
            {target(Grip::Deck, "hold deck")}
            {target(Grip::Push, "hold push")}
        </g>
    }
}

/// Lets a screen reader say what the picture shows now.
fn say(state: State) {
    let words = state.picture.with_untracked(|picture| picture.spoken.clone());
    if state.spoken.with_untracked(|spoken| *spoken != words) {
        state.spoken.set(words);
    }
}

/// The same for keys and screen readers, and which plots stand beside it.
#[component]
fn Controls(state: State, push: RwSignal<f64>, rattle: RwSignal<bool>) -> impl IntoView {
    let most = Memo::new(move |_| state.picture.with(|picture| picture.most_push));
    let lift = Signal::derive(move || state.report.with(|report| (report.lowest(), report.highest())));
    let height = Signal::derive(move || state.height());
    let height_words = Signal::derive(move || state.deck_words());
    let push_words = Signal::derive(move || push_words(push.get(), state.units.get()));
    let rested = Callback::new(move |()| say(state));
    view! {
        <div class="sway-controls">
            <label>
                <span>"Deck"</span>
                <Slider
                    class="deck-slider"
                    label="Deck height"
                    value=height
                    ends=lift
                    steps=Signal::derive(move || height_steps(state.units.get()))
                    words=height_words
                    moved=Callback::new(move |height| state.move_to(height))
                    rested=Callback::new(move |()| state.say_rest())
                />
                <output>{move || format::height(state.height(), state.units.get())}</output>
            </label>
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
