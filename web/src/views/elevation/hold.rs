//! What can be taken hold of in the picture: the carriage, the deck, and any height in a plot.
use leptos::prelude::*;
use leptos::svg;
use risewright::drawing::{Live, PlotArea, Screen};
use wasm_bindgen::JsCast;
use web_sys::{Element, MouseEvent, PointerEvent};

use super::figure::{Drawn, HALF_FINGER, on_picture};
use super::probe::Probe;
use crate::clock::Latest;
use crate::input::pointer::{Grip, Pointing};
use crate::state::State;

/// Height of the band along the deck that a mouse can take, px above and below its surface.
const ABOVE: f64 = 8.0;
const BELOW: f64 = 16.0;

/// Invisible targets over the picture, and what dragging them does.
#[component]
pub fn Holds(state: State, drawn: Drawn, probe: Probe) -> impl IntoView {
    let group = NodeRef::<svg::G>::new();
    let pointing = StoredValue::new_local(Pointing::default());
    let live = move || drawn.moving.get().map(|moving| moving.1.clone());
    let centre = move |grip: Grip| live().and_then(|live| place(&live, grip));

    // One step a frame, to wherever the pointer is by then.
    let drag = StoredValue::new_local(Latest::new(move |(grip, to): (Grip, Screen)| {
        let Some(sheet) = drawn.sheet.get_untracked() else { return };
        let height = match grip {
            Grip::Deck => sheet.frame.height_at(to),
            Grip::Carriage => {
                let place = sheet.frame.scale.to_model(to).x / 1e3;
                state.report.with_untracked(|report| report.height_at_carriage(place))
            }
        };
        state.move_to(height);
    }));
    let at = move |event: &MouseEvent| {
        let picture = picture_of(group.get_untracked()?.unchecked_ref())?;
        Some(on_picture(&picture, event.client_x(), event.client_y()))
    };
    let press = move |grip: Grip, event: &PointerEvent| {
        if event.button() != 0 {
            return;
        }
        let grip_at = drawn.moving.get_untracked().and_then(|moving| place(&moving.1, grip));
        let (Some(at), Some(grip_at)) = (at(event), grip_at) else { return };
        let height = state.station.with_untracked(|station| station.height);
        let id = event.pointer_id();
        if pointing.try_update_value(|pointing| pointing.press(grip, id, at, grip_at, height)) == Some(true) {
            event.prevent_default();
            if let Some(target) = event.target().and_then(|target| target.dyn_into::<Element>().ok()) {
                // Refused only when the pointer is already gone; then there is nothing to follow.
                let _ = target.set_pointer_capture(id);
            }
        }
    };
    let moved = move |event: PointerEvent| {
        let Some(at) = at(&event) else { return };
        if let Some(step) = pointing.with_value(|pointing| pointing.moved(event.pointer_id(), at)) {
            drag.with_value(|drag| drag.put(step));
        }
    };
    let release = move |event: PointerEvent| {
        if pointing.try_update_value(|pointing| pointing.release(event.pointer_id())) == Some(true) {
            state.say_rest();
        }
    };
    // Escape puts the deck back where it was taken.
    let escape = window_event_listener(leptos::ev::keydown, move |event| {
        if event.key() == "Escape"
            && let Some(Some(height)) = pointing.try_update_value(Pointing::abandon)
        {
            state.go_to(height);
        }
    });
    on_cleanup(move || escape.remove());

    let x = move |grip: Grip| centre(grip).map(|at| at.x);
    let y = move |grip: Grip| centre(grip).map(|at| at.y);
    let band = move || {
        let (sheet, live) = (drawn.sheet.get()?, live()?);
        let edge = live.deck?.centre;
        let length = state.design.with(|design| sheet.frame.scale.length(design.frames.deck_length.to_mm()));
        Some((edge.x - length, edge.y - ABOVE, length))
    };
    view! {
        <PlotHolds state drawn probe/>
        <g node_ref=group class="holds" on:pointermove=moved on:pointerup=release on:pointercancel=release>
            <rect
                class="hold deck band"
                x=move || band().map(|band| band.0)
                y=move || band().map(|band| band.1)
                width=move || band().map(|band| band.2)
                height=ABOVE + BELOW
                on:pointerdown=move |event| press(Grip::Deck, &event)
            ></rect>
            <circle
                class="hold deck"
                cx=move || x(Grip::Deck)
                cy=move || y(Grip::Deck)
                r=HALF_FINGER
                on:pointerdown=move |event| press(Grip::Deck, &event)
            ></circle>
            <circle
                class="hold ring"
                cx=move || x(Grip::Carriage)
                cy=move || y(Grip::Carriage)
                r=HALF_FINGER
                on:pointerdown=move |event| press(Grip::Carriage, &event)
            ></circle>
        </g>
    }
}

/// The picture a part of it stands in.
fn picture_of(part: &Element) -> Option<Element> {
    part.closest("svg").ok()?
}

fn place(live: &Live, grip: Grip) -> Option<Screen> {
    match grip {
        Grip::Carriage => live.carriage.map(|ring| ring.centre),
        Grip::Deck => live.deck.map(|edge| edge.centre),
    }
}

/// The height a pointer over a plot points at, m.
fn pointed(plot: &PlotArea, event: &MouseEvent) -> Option<f64> {
    let target = event.current_target()?.dyn_into::<Element>().ok()?;
    let at = on_picture(&picture_of(&target)?, event.client_x(), event.client_y());
    Some(plot.height_at(at.y))
}

/// The plots: a mouse over them reads them at its height, a click takes the deck there.
#[component]
fn PlotHolds(state: State, drawn: Drawn, probe: Probe) -> impl IntoView {
    let plots = move || {
        let plots =
            drawn.sheet.with(|sheet| sheet.as_ref().map_or_else(Vec::new, |sheet| sheet.frame.plots.clone()));
        plots
            .into_iter()
            .enumerate()
            .map(|(place, plot)| {
                let area = plot.area;
                let clicked = plot.clone();
                let point =
                    StoredValue::new_local(Latest::new(move |height| probe.set(Some((place, height)))));
                // A finger covers what it points at; it takes the deck there instead.
                let over = move |event: PointerEvent| {
                    if event.pointer_type() != "touch"
                        && let Some(height) = pointed(&plot, &event)
                    {
                        point.with_value(|point| point.put(height));
                    }
                };
                let go = move |event: MouseEvent| {
                    if let Some(height) = pointed(&clicked, &event) {
                        state.go_to(height);
                    }
                };
                view! {
                    <rect
                        class="hold plot"
                        x=area.x
                        y=area.y
                        width=area.width
                        height=area.height
                        on:pointermove=over
                        on:pointerleave=move |_| probe.set(None)
                        on:click=go
                    ></rect>
                }
            })
            .collect_view()
    };
    view! { <g>{plots}</g> }
}
