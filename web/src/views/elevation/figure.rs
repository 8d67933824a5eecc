//! The picture: the table to scale, the pole, and the plots at the same level; to be looked at and taken hold of.
use std::sync::Arc;

use leptos::html;
use leptos::prelude::*;
use risewright::drawing::{Chart, Curve, Face, Live, Mark, Plotted, Screen, Shape, Sheet};
use risewright::share::address::View;
use wasm_bindgen::JsCast;
use web_sys::{Element, MouseEvent};

use super::hold::Holds;
use super::probe::{self, PlotReaders};
use super::reading::Values;
use super::show::ShowChoices;
use super::view::{room, view};
use crate::format;
pub use crate::input::keyboard::height_steps as steps;
use crate::persist;
use crate::state::{Shared, State};
use crate::widgets::canvas::Curves;
use crate::widgets::lettering::Lettering;
use crate::widgets::paper::paper;
use crate::widgets::picture::Layer;
use crate::widgets::place::{Place, hold};
use crate::widgets::room::enlarged;
use crate::widgets::size::observe;
use crate::widgets::slider::Slider;
use crate::worker;

/// The marks that move with the deck, and what goes with them.
pub type Moving = (Arc<Vec<Mark>>, Live);

/// What is drawn and where it lies.
#[derive(Clone, Copy)]
pub struct Drawn {
    /// Everything that stands still; none until the room for it is known.
    pub sheet: Memo<Option<Shared<Sheet>>>,
    /// What moves with the deck.
    pub moving: Memo<Option<Shared<Moving>>>,
}

/// The picture with its toggles.
#[component]
pub fn Figure(state: State) -> impl IntoView {
    let place = NodeRef::<html::Div>::new();
    let size = observe(place);
    let room = Memo::new(move |_| room(size.get()));
    let lettering = StoredValue::new_local(Lettering::new());
    let sheet = Memo::new(move |_| {
        let view = view(room.get()?, state);
        let sheet = state.report.with(|report| {
            lettering.with_value(|lettering| {
                let measure = |words: &str, face: Face| lettering.width(words, face);
                state.other.with(|other| Sheet::over(report, other.as_deref(), &view, &measure))
            })
        });
        Some(Shared::new(sheet))
    });
    let moving = Memo::new(move |_| {
        let sheet = sheet.get()?;
        let (marks, live) = state.report.with(|report| {
            state.station.with(|station| {
                lettering.with_value(|lettering| {
                    let measure = |words: &str, face: Face| lettering.width(words, face);
                    let (marks, live) = sheet.moving(report, station, &measure);
                    let under = state.other.with(|other| {
                        other.as_ref().map(|other| sheet.outline(other, station.height, &measure))
                    });
                    (under.into_iter().flatten().chain(marks).collect::<Vec<_>>(), live)
                })
            })
        });
        Some(Shared::new((Arc::new(marks), live)))
    });
    let drawn = Drawn { sheet, moving };
    let extent = Memo::new(move |_| {
        sheet.with(|sheet| sheet.as_ref().map_or((0.0, 0.0), |sheet| (sheet.width, sheet.height)))
    });
    let drawn_plots =
        Memo::new(move |_| sheet.with(|sheet| sheet.as_ref().map_or(0, |sheet| sheet.frame.plots.len())));
    let still = Signal::derive(move || {
        Arc::new(sheet.with(|sheet| sheet.as_ref().map_or_else(Vec::new, |sheet| sheet.still.clone())))
    });
    let curves = Signal::derive(move || {
        sheet.with(|sheet| sheet.as_ref().map_or_else(Vec::new, |sheet| sheet.curves.clone()))
    });
    let paths = Signal::derive(move || {
        let path = |curve: &Curve| Mark { class: curve.ink.class, shape: Shape::Path(curve.notation()) };
        Arc::new(curves.with(|curves| curves.iter().map(path).collect()))
    });
    let live = Signal::derive(move || {
        moving.with(|moving| moving.as_ref().map(|moving| Arc::clone(&moving.0))).unwrap_or_default()
    });
    let read = RwSignal::new(None);
    let probed = Signal::derive(move || {
        lettering.with_value(|lettering| {
            probe::marks(state, drawn, read, |words, face| lettering.width(words, face))
        })
    });
    let pressed = StoredValue::new(None::<(i32, i32)>);
    let trends = Memo::new(move |_| {
        let units = state.units.get();
        let trend = |chart: &Chart| state.report.with(|report| Plotted::of(*chart, report, units).trend());
        state.charts.with(|charts| charts.iter().map(trend).collect::<Vec<_>>().join(" "))
    });
    let label = move || {
        let deck = format::height(state.rest_height(), state.units.get());
        format!("Side elevation, deck at {deck}. Plots over the deck's height. {}", trends.get())
    };
    view! {
        <div class="figure" class:narrow=move || room.get().is_some_and(|room| room.narrow) node_ref=place>
            <CarriageSlider state drawn/>
            <PlotReaders state drawn probe=read/>
            <Curves curves size=extent paper=paper()/>
            <svg
                class="dwg"
                width=move || extent.get().0
                height=move || extent.get().1
                viewBox=move || format!("0 0 {} {}", extent.get().0, extent.get().1)
                on:pointerdown=move |event| pressed.set_value(Some((event.client_x(), event.client_y())))
                // A drag that ends where it began is none the less one.
                on:pointermove=move |event| {
                    if !pressed.get_value().is_some_and(|from| is_still(from, &event)) {
                        pressed.set_value(None);
                    }
                }
                on:click=move |event| {
                    if pressed.get_value().is_some_and(|from| is_still(from, &event)) {
                        pick(state, drawn, &event);
                    }
                }
            >
                <g role="img" aria-label=label>
                    <Layer class="still" marks=still/>
                    <Layer class="plot-curves" marks=paths/>
                    <Layer class="moving" marks=live/>
                    <Layer class="probed" marks=probed/>
                </g>
                <Holds state drawn probe=read/>
            </svg>
        </div>
        <ShowChoices state room=drawn_plots/>
        <Values state drawn/>
    }
}

/// Whether a pointer is still where it was pressed.
fn is_still((x, y): (i32, i32), event: &MouseEvent) -> bool {
    /// A hand does not hold quite still, px.
    const STILL: u32 = 3;
    x.abs_diff(event.client_x()) <= STILL && y.abs_diff(event.client_y()) <= STILL
}

/// A press on a part that moved nothing: the part is shown cut free, with the forces on it.
fn pick(state: State, drawn: Drawn, event: &MouseEvent) {
    let target = event.target().and_then(|target| target.dyn_into::<Element>().ok());
    let picture = target.and_then(|target| target.closest("svg").ok().flatten());
    let (Some(picture), Some(sheet)) = (picture, drawn.sheet.get_untracked()) else { return };
    let at = on_picture(&picture, event.client_x(), event.client_y());
    let part = state
        .report
        .with_untracked(|report| state.station.with_untracked(|station| sheet.hit(report, station, at)));
    if let Some(part) = part {
        worker::answer_in(View::Forces, "part", &part.to_string());
        persist::go_to_view(state, View::Forces);
    }
}

/// The carriage for keys and screen readers: a range that lies over its rail.
#[component]
fn CarriageSlider(state: State, drawn: Drawn) -> impl IntoView {
    let node = NodeRef::<html::Input>::new();
    let value = Signal::derive(move || state.height());
    let ends = Signal::derive(move || state.report.with(|report| (report.lowest(), report.highest())));
    let steps = Signal::derive(move || steps(state.units.get()));
    let words = Signal::derive(move || state.deck_words());
    let moved = Callback::new(move |height| state.move_to(height));
    let rested = Callback::new(move |()| state.say_rest());
    hold(node, move || {
        let sheet = drawn.sheet.get()?;
        let [outer, inner] = state.report.with(|report| {
            [report.lowest(), report.highest()].map(|height| report.at(height).pose.carriage_x * 1e3)
        });
        let pins = state.design.with(|design| design.lift.pin_line.to_mm());
        let (left, right) = (sheet.frame.scale.x(inner.min(outer)), sheet.frame.scale.x(inner.max(outer)));
        Some(Place {
            left: left - HALF_FINGER,
            top: sheet.frame.scale.y(pins) - HALF_FINGER,
            width: right - left + 2.0 * HALF_FINGER,
            height: 2.0 * HALF_FINGER,
        })
    });
    let shown = Signal::derive(move || state.rest_height());
    view! { <Slider class="carriage-slider" label="Carriage, deck height" value shown ends steps words moved rested node/> }
}

/// Half the side of a target for a finger, px.
pub const HALF_FINGER: f64 = 22.0;

/// A point of the page as a point of the picture.
pub fn on_picture(picture: &Element, x: i32, y: i32) -> Screen {
    let (edge, enlarged) = (picture.get_bounding_client_rect(), enlarged(picture));
    Screen::new((f64::from(x) - edge.left()) / enlarged, (f64::from(y) - edge.top()) / enlarged)
}
