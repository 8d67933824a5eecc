//! Name of the program, name of the design, views, undo, units, link.
use leptos::html;
use leptos::prelude::*;
use leptos::task::spawn_local;
use risewright::design::NAME_LIMIT;
use risewright::quantity::System;
use risewright::share::address::View;

use crate::edit::Edit;
use crate::input::keyboard::Command;
use crate::persist;
use crate::state::{Message, State};

/// The page's head.
#[component]
pub fn Header(state: State) -> impl IntoView {
    view! {
        <header>
            <h1>"Risewright"</h1>
            <Name state/>
            <div class="acts">
                <ShowInputs state/>
                <Turn state command=Command::Undo/>
                <Turn state command=Command::Redo/>
                <Units state/>
                <Larger state/>
                <CopyLink state/>
            </div>
            <Tabs state/>
        </header>
    }
}

/// The views, as links that can be opened elsewhere too.
#[component]
fn Tabs(state: State) -> impl IntoView {
    let tab = move |view: View| {
        let go = move |event: web_sys::MouseEvent| {
            // With a key held the browser opens the link where it was told to.
            if !(event.ctrl_key() || event.meta_key() || event.shift_key()) {
                event.prevent_default();
                persist::go_to_view(state, view);
            }
        };
        view! {
            <a
                href=move || persist::link_to(view, &state.manner.get(), &state.design.get())
                class:apart=view.begins_a_group()
                aria-current=move || (state.view.get().tab() == view).then_some("page")
                on:click=go
            >
                {view.title()}
            </a>
        }
    };
    view! {
        <nav class="tabs" aria-label="Views">
            {View::ALL.into_iter().map(tab).collect_view()}
        </nav>
    }
}

/// A link can hide the inputs; whoever opens it may have them back.
#[component]
fn ShowInputs(state: State) -> impl IntoView {
    let show = move |_| state.manner.update(|manner| manner.bare = false);
    view! {
        <Show when=move || state.manner.with(|manner| manner.bare)>
            <button type="button" class="main" on:click=show>"Show inputs"</button>
        </Show>
    }
}

#[component]
fn Name(state: State) -> impl IntoView {
    let field = NodeRef::<html::Input>::new();
    let name = Memo::new(move |_| state.design.with(|design| design.name.clone()));
    let on_input = move |_| {
        if let Some(field) = field.get_untracked() {
            // A name is never refused.
            let _ = state.apply(Edit::Name(field.value()));
        }
    };
    view! {
        <input
            node_ref=field
            class="name"
            type="text"
            aria-label="Name of the design"
            maxlength=NAME_LIMIT
            size=move || name.with(|name| name.chars().count().clamp(8, 24))
            autocomplete="off"
            spellcheck="false"
            prop:value=name
            on:focus=move |_| state.begin_gesture()
            on:input=on_input
            on:blur=move |_| state.end_gesture()
        />
    }
}

/// Undo or redo.
#[component]
fn Turn(state: State, command: Command) -> impl IntoView {
    let (word, arrow) = match command {
        Command::Redo => ("Redo", "M10 3l3.5 3.5L10 10M13 6.5H7a4 4 0 0 0 0 8h3"),
        _ => ("Undo", "M6 3L2.5 6.5 6 10M3 6.5h6a4 4 0 0 1 0 8H6"),
    };
    let what = move || if command == Command::Redo { state.redoes() } else { state.undoes() };
    let label = move || what().map_or_else(|| format!("{word}: nothing"), |what| format!("{word}: {what}"));
    view! {
        <button
            type="button"
            class="icon"
            aria-label=label
            title=label
            aria-disabled=move || what().is_none().then_some("true")
            on:click=move |_| state.command(command)
        >
            <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true"><path class="glyph" d=arrow></path></svg>
        </button>
    }
}

#[component]
fn Units(state: State) -> impl IntoView {
    let choice = move |system: System, word: &'static str, name: &'static str| {
        view! {
            <button
                type="button"
                aria-pressed=move || if state.units.get() == system { "true" } else { "false" }
                on:click=move |_| state.units.set(system)
            >
                {word} <span class="unseen">" (" {name} ")"</span>
            </button>
        }
    };
    view! {
        <div class="segments" role="group" aria-label="Units">
            {choice(System::Metric, "mm", "millimetres")} {choice(System::Inch, "in", "inches")}
        </div>
    }
}

/// Larger type and lines, for those at the back of a classroom.
#[component]
fn Larger(state: State) -> impl IntoView {
    view! {
        <button
            type="button"
            class="icon larger"
            aria-label="Projector size"
            title="Projector size (F9)"
            aria-pressed=move || if state.enlarged.get() { "true" } else { "false" }
            on:click=move |_| state.command(Command::Enlarge)
        >
            <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
                <path class="glyph" d="M1 3.5h14v8.5H1zM5.5 15h5M8 12v3M4.5 9.5l2-3.5 2 3.5M5.2 8.4h2.6M10.5 6.5v3M12.5 7.5v2"></path>
            </svg>
        </button>
    }
}

#[component]
fn CopyLink(state: State) -> impl IntoView {
    let copied = RwSignal::new(false);
    let on_click = move |_| {
        let link = persist::link_here(state);
        spawn_local(async move {
            if persist::copy(&link).await {
                copied.set(true);
                state.spoken.set("Link copied.".into());
                state.notice.set(None);
            } else {
                state.notice.set(Some(Message::Link(link)));
            }
        });
    };
    view! {
        <button type="button" class="main" on:click=on_click on:blur=move |_| copied.set(false)>
            {move || if copied.get() { "Copied" } else { "Copy link" }}
        </button>
    }
}
