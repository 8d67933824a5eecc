//! A sentence above the sheet: a link that could not be opened, a link to copy by hand.
use leptos::html;
use leptos::prelude::*;

use crate::state::{Message, State};

/// The message, until it is put away.
#[component]
pub fn Notice(state: State) -> impl IntoView {
    let body = move || {
        state.notice.get().map(|message| {
            let close = move |_| state.notice.set(None);
            let content = match message {
                Message::Sentence(sentence) => view! { <p>{sentence}</p> }.into_any(),
                Message::Link(link) => view! { <LinkText link/> }.into_any(),
            };
            view! {
                {content}
                <button type="button" on:click=close>"Close"</button>
            }
        })
    };
    view! { <div class="notice" role="alert" hidden=move || state.notice.with(Option::is_none)>{body}</div> }
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
