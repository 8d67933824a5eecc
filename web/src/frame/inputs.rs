//! The inputs of the design, in the groups in which one builds.
use std::sync::Arc;

use leptos::prelude::*;
use risewright::catalogue::Row;
use risewright::catalogue::panel::PANELS;
use risewright::catalogue::sheet::SHEET_SIZES;
use risewright::catalogue::thread::THREADS;
use risewright::design::{
    Demo, Design, Field, Group, panel, set_panel, set_sheet, set_thread, sheet, thread,
};
use risewright::quantity::{Kind, System, read};
use risewright::report::{Refusal, marked, span};

use crate::edit::Edit;
use crate::format;
use crate::media;
use crate::state::{Message, State};
use crate::widgets::number_field::{Commit, NumberField, Offer, Refused};
use crate::widgets::select::{Select, Switch};

/// Wide enough for inputs beside the sheet: more groups are open from the beginning.
const ROOMY: &str = "(min-width: 80em)";

/// All groups.
#[component]
pub fn Inputs(state: State) -> impl IntoView {
    let roomy = media::matches(ROOMY);
    view! {
        <aside class="inputs" id="inputs" tabindex="-1" aria-label="Inputs">
            <h2>"Design"</h2>
            {Group::ALL
                .into_iter()
                .filter(|group| Design::fields().any(|field| field.group == *group))
                .map(|group| {
                    let open = group == Group::Lift || roomy && matches!(group, Group::Load);
                    view! { <Fields state group open/> }
                })
                .collect_view()}
            <StartFrom state/>
        </aside>
    }
}

/// The demo designs to begin anew with; undo brings the present design back.
#[component]
fn StartFrom(state: State) -> impl IntoView {
    let buttons = Demo::ALL.into_iter().map(|demo| {
        let design = demo.design();
        let name = design.name.clone();
        let start = move |_| {
            let units = if demo == Demo::PottingBench { System::Inch } else { System::Metric };
            match state.open("start from a demo", design.clone()) {
                Ok(()) => state.units.set(units),
                Err(reason) => state.notice.set(Some(Message::Sentence(reason))),
            }
        };
        view! { <button type="button" on:click=start>{name}</button> }
    });
    view! {
        <div class="start" role="group" aria-label="Start from">
            <span>"Start from"</span>
            {buttons.collect_view()}
        </div>
    }
}

/// A group. What is in it is made when it is opened for the first time: most groups stay closed, and a field costs something at every edit.
#[component]
fn Fields(state: State, group: Group, open: bool) -> impl IntoView {
    let summary = move || state.design.with(|design| format::summary(group, design, state.units.get()));
    let made = RwSignal::new(open);
    let make = move || {
        if !made.get_untracked() {
            made.set(true);
        }
    };
    // A press makes the fields before the group opens, so that nothing jumps; a browser may open it otherwise too.
    view! {
        <details open=open on:toggle=move |_| make()>
            <summary on:click=move |_| make()>
                <h3>{group.title()}</h3>
                <span class="gist">{summary}</span>
            </summary>
            <div class="fields">{move || made.get().then(|| fields(state, group))}</div>
        </details>
    }
}

fn fields(state: State, group: Group) -> impl IntoView {
    let picker = match group {
        Group::Arms => Some(picker(state, "pick-panel", "Stock", &PANELS, panel, set_panel).into_any()),
        Group::Shop => {
            Some(picker(state, "pick-sheet", "Sheet sold as", &SHEET_SIZES, sheet, set_sheet).into_any())
        }
        Group::Drive => Some(picker(state, "pick-thread", "Thread", &THREADS, thread, set_thread).into_any()),
        _ => None,
    };
    let rows = Design::fields().filter(|field| field.group == group).map(|field| row(state, field));
    (picker, rows.collect_view())
}

/// A list of the catalogue that fills in several inputs at once.
fn picker<R: Row + Sync>(
    state: State,
    id: &str,
    label: &'static str,
    rows: &'static [R],
    present: fn(&Design) -> Option<&'static R>,
    fill: fn(&mut Design, &R),
) -> impl IntoView + use<R> {
    let choices = rows.iter().map(|row| (i64::from(row.id()), row.name().to_owned())).collect();
    let value = Memo::new(move |_| {
        state.design.with(|design| present(design).map_or(NO_ROW, |row| i64::from(row.id())))
    });
    let commit = Callback::new(move |id: i64| {
        let Some(row) = rows.iter().find(|row| i64::from(row.id()) == id) else { return Ok(()) };
        let mut design = state.design.get_untracked();
        fill(&mut design, row);
        state.open(label, design)
    });
    let meaning = "Fills in the sizes below from the catalogue; each may still be changed.".to_owned();
    view! { <div class="row"><Select id=id.to_owned() label choices other="own sizes" value meaning commit/></div> }
}

/// No row of a catalogue has this number.
const NO_ROW: i64 = -1;

/// The input in the form that suits its kind; hidden while it does not matter.
fn row(state: State, field: &'static Field) -> impl IntoView {
    let id = format!("in-{}", field.key);
    let shown = Memo::new(move |_| state.design.with(|design| field.shown(design)));
    let steps = Memo::new(move |_| state.design.with(|design| field.get(design)));
    let set = move |wanted: i64| {
        state
            .apply(Edit::Input(field, wanted))
            .map_err(|refusal| refusal.phrase.text(state.units.get_untracked()))
    };
    let input = match field.kind {
        Kind::Switch => {
            let commit = Callback::new(move |on: bool| set(i64::from(on)));
            let value = Signal::derive(move || steps.get() != 0);
            view! { <Switch id label=field.label value meaning=field.meaning().to_owned() commit/> }
                .into_any()
        }
        Kind::Choice => {
            let choices =
                field.choices.iter().map(|(number, words)| (*number, (*words).to_owned())).collect();
            let commit = Callback::new(set);
            view! { <Select id label=field.label choices value=steps meaning=field.meaning().to_owned() commit/> }.into_any()
        }
        _ => {
            let printed = Memo::new(move |_| format::field_value(field, steps.get(), state.units.get()));
            let value = Signal::derive(move || printed.get().0);
            let unit = Signal::derive(move || printed.get().1.to_owned());
            let hint = Callback::new(move |()| {
                let units = state.units.get();
                format::hint(field, &state.design.with(|design| span(design, field)), units)
            });
            view! { <NumberField id label=field.label value unit hint commit=commit(state, field)/> }
                .into_any()
        }
    };
    view! { <div class="row" hidden=move || !shown.get()>{input}</div> }
}

/// Reads what was written and applies it, or tells why not.
fn commit(state: State, field: &'static Field) -> Commit {
    Callback::new(move |text: String| {
        let units = state.units.get_untracked();
        let steps = read(&text, field.kind, units).map_err(|fault| Refused {
            reason: fault.to_string(),
            offers: fault.offers().into_iter().map(|(text, _)| Offer::Text(text)).collect(),
        })?;
        state.apply(Edit::Input(field, steps)).map_err(|refusal| refused(state, field, refusal))
    })
}

fn refused(state: State, field: &'static Field, refusal: Refusal) -> Refused {
    let units = state.units.get_untracked();
    let nearest = refusal.nearest.map(|steps| {
        let steps = state.design.with_untracked(|design| marked(design, field, steps, units));
        Offer::Text(format::nearest(field, steps, units))
    });
    let fitted = refusal.offer.map(|offer| {
        let design = offer.design;
        let take = move || {
            // The design was tried when it was offered; if it no longer stands, the refusal stays.
            let _ = state.open(field.label, (*design).clone());
        };
        Offer::Act(offer.phrase.text(units), Arc::new(take))
    });
    Refused { reason: refusal.phrase.text(units), offers: nearest.into_iter().chain(fitted).collect() }
}
