//! A sentence above the sheet: a link that could not be opened, a link to copy by hand, designs of other tabs.
use leptos::html;
use leptos::prelude::*;
use risewright::design::Design;

use crate::persist::{self, Shelved};
use crate::state::{Message, State};

/// The message, until it is put away.
#[component]
pub fn Notice(state: State) -> impl IntoView {
    let body = move || {
        state.notice.get().map(|message| {
            let designs =
                if let Message::Designs(_, designs) = &message { designs.clone() } else { Vec::new() };
            let close = move |_| {
                persist::not_again(&designs);
                state.notice.set(None);
            };
            let content = match message {
                Message::Sentence(sentence) => view! { <p>{sentence}</p> }.into_any(),
                Message::Removed(shelved) => removed(state, shelved).into_any(),
                Message::Link(link) => view! { <LinkText link/> }.into_any(),
                Message::Designs(sentence, designs) => {
                    let offers = designs.into_iter().map(|design| offer(state, design)).collect_view();
                    view! { <p>{sentence}</p> {offers} }.into_any()
                }
            };
            view! {
                {content}
                <button type="button" on:click=close>"Close"</button>
            }
        })
    };
    view! { <div class="notice" role="alert" hidden=move || state.notice.with(Option::is_none)>{body}</div> }
}

/// What was taken off the shelf, with a button that puts it there again.
fn removed(state: State, shelved: Shelved) -> impl IntoView {
    let sentence = format!("\u{201c}{}\u{201d} was taken off the shelf.", shelved.name);
    let back = move |_| {
        let outcome = state.keeper.put_back(&shelved);
        state.notice.set(outcome.err().map(|fault| Message::Sentence(fault.to_string())));
    };
    view! {
        <p>{sentence}</p>
        <button type="button" on:click=back>
            "Put it back"
        </button>
    }
}

/// A button that opens a design in place of the present one.
fn offer(state: State, design: Design) -> impl IntoView {
    let words = format!("Open \u{201c}{}\u{201d}", design.name);
    let open = move |_| {
        let outcome = state.open("opened design", design.clone());
        state.notice.set(outcome.err().map(Message::Sentence));
    };
    view! {
        <button type="button" on:click=open>
            {words}
        </button>
    }
}

/// The link as text, selected as soon as one goes there.
#[component]
fn LinkText(link: String) -> impl IntoView {
    let field = NodeRef::<html::Input>::new();
    let select = move |_| {
        if let Some(field) = field.get_untracked() {
            field.select();
        }
    };
    view! {
        <label>
            "The browser does not let the page copy. The link to this design:"
            <input node_ref=field type="text" readonly=true value=link on:focus=select/>
        </label>
    }
}
