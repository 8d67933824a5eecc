//! The page's frame: it only puts the pieces in their places.
use std::sync::{Arc, Mutex};

use leptos::prelude::*;
use risewright::share::Manner;
use risewright::share::address::View;
use risewright::share::link;
use web_sys::KeyboardEvent;

use crate::begin::begin;
use crate::frame::header::Header;
use crate::frame::inputs::Inputs;
use crate::frame::notice::Notice;
use crate::input::keyboard::Command;
use crate::making::{self, Part, is_made, make};
use crate::persist::{self, First};
use crate::shelf;
use crate::state::State;
use crate::views::elevation::Elevation;
use crate::views::forces::Forces;
use crate::views::lesson::Lesson;
use crate::views::reader::Page as Leaf;
use crate::views::sway::Sway;
use crate::worker;

/// The whole page. It is made in short turns, the analysis of the first design before it, so that the browser can answer in between; what stands
/// in its place until then stays so long.
#[component]
pub fn App() -> impl IntoView {
    let first = persist::first();
    let begun = RwSignal::new(false);
    let outcome = Arc::new(Mutex::new(None));
    let put = Arc::clone(&outcome);
    begin(first.designs(), first.fault.clone(), move |found| {
        // Held by nobody else at this moment.
        if let Ok(mut outcome) = put.lock() {
            *outcome = Some(found);
        }
        begun.set(true);
    });
    move || {
        begun.track();
        let outcome = outcome.lock().ok().and_then(|mut outcome| outcome.take());
        outcome.map(|outcome| match outcome {
            Ok(begun) => {
                let state = State::new(begun);
                follow(state, &first);
                view! { <Page state/> }.into_any()
            }
            Err(unsound) => {
                making::clear();
                let reasons = unsound
                    .phrases()
                    .iter()
                    .map(|phrase| phrase.text(risewright::quantity::System::Metric))
                    .collect_view();
                view! { <p role="alert">"The program cannot work out its own first design. " {reasons}</p> }
                    .into_any()
            }
        })
    }
}

/// Brings the state in step with everything outside it, and has the page made.
fn follow(state: State, first: &First) {
    state.look(first.view, first.manner);
    persist::follow(state, first);
    worker::follow(state);
    persist::take_dropped(Callback::new(move |text| shelf::take(state, text)));
    window_event_listener(leptos::ev::keydown, move |event| on_key(state, &event));
    make(state);
}

#[component]
fn Page(state: State) -> impl IntoView {
    // A lesson needs no inputs, and another page has its own head.
    let embed = Memo::new(move |_| state.manner.with(|manner| manner.embed));
    let alone = Memo::new(move |_| {
        embed.get() || state.manner.with(|manner| manner.bare) || state.view.get().is_a_lesson()
    });
    view! {
        <Show when=move || !alone.get()>
            <a class="skip" href="#inputs">"Skip to the inputs"</a>
        </Show>
        <div
            class="page"
            class:making=move || !is_made(state)
            class:alone=alone
            class:embed=embed
            class:projector=state.enlarged
        >
            <Show when=move || !embed.get()>
                <Header state/>
            </Show>
            <Notice state/>
            <main class="sheet">
                <Part state turn=1>{move || match state.view.get() {
                    View::Elevation => view! { <Elevation state/> }.into_any(),
                    View::Sway => view! { <Sway state/> <Leaf state/> }.into_any(),
                    View::Forces => view! { <Forces state/> <Leaf state/> }.into_any(),
                    View::Lesson(_) => view! { <Lesson state/> <Leaf state/> }.into_any(),
                    View::Compare => {
                        worker::tell(aside(state));
                        view! { <Leaf state/> }.into_any()
                    }
                    View::Targets => {
                        worker::tell(Signal::derive(move || vec![("design", state.design.with(link::encode))]));
                        view! { <Leaf state/> }.into_any()
                    }
                    View::Shelf => {
                        worker::tell(shelf::told(state));
                        view! { <Leaf state/> }.into_any()
                    }
                    _ => view! { <Leaf state/> }.into_any(),
                }}</Part>
            </main>
            <Show when=move || !alone.get()>
                <Part state turn=4><Inputs state/></Part>
            </Show>
            <Show when=move || embed.get()>
                <footer class="whole">
                    <a href=move || whole(state) target="_blank" rel="noopener">"Open in Risewright"</a>
                </footer>
            </Show>
        </div>
        <p class="spoken" role="status">{state.spoken}</p>
    }
}

/// The design that is set aside, as the page of the comparison hears of it.
fn aside(state: State) -> Signal<Vec<(&'static str, String)>> {
    Signal::derive(move || {
        let link = state.other.with(|other| other.as_ref().map(|other| link::encode(&other.design)));
        vec![("with", link.unwrap_or_default())]
    })
}

/// The same view as a page of its own.
fn whole(state: State) -> String {
    let manner = Manner { embed: false, ..state.manner.get() };
    persist::link_to(state.view.get(), &manner, &state.design.get())
}

fn on_key(state: State, event: &KeyboardEvent) {
    let control = event.ctrl_key() || event.meta_key();
    let Some(command) = Command::of(&event.key(), control, event.shift_key()) else { return };
    // In a text field undo takes back letters, as everywhere.
    if matches!(command, Command::Undo | Command::Redo) && writes_text(event) {
        return;
    }
    if command != Command::Stop {
        event.prevent_default();
    }
    state.command(command);
}

fn writes_text(event: &KeyboardEvent) -> bool {
    use wasm_bindgen::JsCast;
    event
        .target()
        .and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok())
        .is_some_and(|input| input.type_() == "text" && !input.read_only())
}
