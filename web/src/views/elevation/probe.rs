//! Reading the plots at a height: by pointing at them, or by key.
use leptos::html;
use leptos::prelude::*;
use risewright::drawing::{Mark, Plotted};
use std::sync::Arc;
use web_sys::KeyboardEvent;

use super::figure::{Drawn, steps};
use crate::state::State;
use crate::widgets::place::{Place, hold};
use crate::widgets::slider::Slider;

/// A plot, counted from the left, and the deck height, m, at which it is read; none while nobody reads.
pub type Probe = RwSignal<Option<(usize, f64)>>;

/// Line and values at the height that is read, over everything else.
pub fn marks(
    state: State,
    drawn: Drawn,
    probe: Probe,
    measure: impl Fn(&str, risewright::drawing::Face) -> f64,
) -> Arc<Vec<Mark>> {
    let marks = probe.get().and_then(|(place, height)| {
        let (sheet, moving) = (drawn.sheet.get()?, drawn.moving.get()?);
        let station = state.report.with(|report| report.at(height));
        Some(sheet.probe(place, &station, state.height(), &moving.0, &measure))
    });
    Arc::new(marks.unwrap_or_default())
}

/// A range over each plot, for keys and screen readers. Enter takes the deck to the height that is read.
#[component]
pub fn PlotReaders(state: State, drawn: Drawn, probe: Probe) -> impl IntoView {
    let charts = Memo::new(move |_| {
        drawn.sheet.with(|sheet| {
            sheet
                .as_ref()
                .map_or_else(Vec::new, |sheet| sheet.frame.plots.iter().map(|plot| plot.chart).collect())
        })
    });
    let readers = move || {
        charts
            .get()
            .into_iter()
            .enumerate()
            .map(|(place, chart)| view! { <Reader state drawn probe place chart/> })
            .collect_view()
    };
    view! { <div class="plot-readers" role="group" aria-label="Plots, read at a height">{readers}</div> }
}

#[component]
fn Reader(
    state: State,
    drawn: Drawn,
    probe: Probe,
    place: usize,
    chart: risewright::drawing::Chart,
) -> impl IntoView {
    let node = NodeRef::<html::Input>::new();
    let plotted =
        Memo::new(move |_| state.report.with(|report| Plotted::of(chart, report, state.units.get())));
    let read = move || probe.get().filter(|(read, _)| *read == place).map(|(_, height)| height);
    let value = Signal::derive(move || read().unwrap_or_else(|| state.rest_height()));
    let ends = Signal::derive(move || state.report.with(|report| (report.lowest(), report.highest())));
    let steps = Signal::derive(move || steps(state.units.get()));
    let words = Signal::derive(move || plotted.with(|plotted| plotted.words(value.get())));
    let moved = Callback::new(move |height| probe.set(Some((place, height))));
    let rested = Callback::new(|()| {});
    let label = plotted.with_untracked(Plotted::title);
    let on_key = move |event: KeyboardEvent| {
        if event.key() == "Enter"
            && let Some(height) = read()
        {
            state.go_to(height);
        }
    };
    hold(node, move || {
        let area = drawn.sheet.get()?.frame.plots.get(place)?.area;
        Some(Place { left: area.x, top: area.y, width: area.width, height: area.height })
    });
    view! {
        <div
            on:focusin=move |_| probe.set(Some((place, state.station.with_untracked(|station| station.height))))
            on:focusout=move |_| probe.set(None)
            on:keydown=on_key
        >
            <Slider class="plot-slider" label value ends steps words moved rested node/>
        </div>
    }
}
