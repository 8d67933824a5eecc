//! Invisible targets over the grips of a picture, and what dragging them does.
use leptos::prelude::*;
use leptos::svg;
use risewright::drawing::Screen;
use wasm_bindgen::JsCast;
use web_sys::{Element, PointerEvent};

use super::{Deck, say};
use crate::clock::Latest;
use crate::state::State;
use crate::widgets::room::enlarged;

/// Half the side of a target for a finger, px.
const HALF_FINGER: f64 = 22.0;

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
pub fn Holds(state: State, deck: Deck, push: RwSignal<f64>) -> impl IntoView {
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
                deck.to_height.run((hold.value - down / picture.per_metre).clamp(lowest, highest));
            }
            Grip::Carriage if picture.per_metre > 0.0 => {
                deck.to_carriage.run(hold.value + right / picture.per_metre);
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
            Grip::Deck => deck.height.get_untracked(),
            Grip::Carriage => deck.carriage.get_untracked(),
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
            let picture: Option<Element> = group.get_untracked().map(JsCast::unchecked_into);
            let picture = picture.and_then(|group| group.closest("svg").ok().flatten());
            let enlarged = picture.as_ref().map_or(1.0, enlarged);
            let (x, y) = (f64::from(event.client_x()), f64::from(event.client_y()));
            let moved = ((x - hold.from.0) / enlarged, (y - hold.from.1) / enlarged);
            drag.with_value(|drag| drag.put((hold, moved.0, moved.1)));
        }
    };
    let release = move |event: PointerEvent| {
        if let Some(hold) = held.get_value().filter(|hold| hold.pointer == event.pointer_id()) {
            held.set_value(None);
            if hold.grip == Grip::Push { say(state) } else { deck.rested.run(()) }
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
