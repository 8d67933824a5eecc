//! A field for one value, written as people write it. A value that cannot be is refused in place, with what could be.
use std::sync::Arc;
use std::time::Duration;

use leptos::html;
use leptos::prelude::*;
use web_sys::KeyboardEvent;

/// Longer than a click takes.
const CLICK: Duration = Duration::from_millis(250);

/// Why a text was not taken, and ways out.
#[derive(Clone)]
pub struct Refused {
    /// One or two sentences.
    pub reason: String,
    /// Each stands on a button beneath.
    pub offers: Vec<Offer>,
}

/// A way out of a refusal.
#[derive(Clone)]
pub enum Offer {
    /// A text that would be taken: `Use` it.
    Text(String),
    /// Words for a button, and what it does.
    Act(String, Arc<dyn Fn() + Send + Sync>),
}

/// Takes a text or tells why not.
pub type Commit = Callback<String, Result<(), Refused>>;

/// A labelled field with its unit, its hint while it has the focus, and its refusal.
#[component]
pub fn NumberField(
    /// Names the field and, with endings, its hint and refusal.
    id: String,
    /// What the number is.
    label: &'static str,
    /// The value as text.
    #[prop(into)]
    value: Signal<String>,
    /// The unit behind it.
    #[prop(into)]
    unit: Signal<String>,
    /// Range and meaning; asked for only while the field has the focus.
    #[prop(into)]
    hint: Callback<(), String>,
    /// Takes what was written.
    #[prop(into)]
    commit: Commit,
) -> impl IntoView {
    let input = NodeRef::<html::Input>::new();
    let refused = RwSignal::new(None::<Refused>);
    let focused = RwSignal::new(false);
    let put = move |text: &str| {
        if let Some(input) = input.get_untracked() {
            input.set_value(text);
        }
    };
    let take = move |text: String| {
        match commit.run(text) {
            Ok(()) => {
                refused.set(None);
                // What was written may read back otherwise (`3'` becomes 36), so the field shows the value as it stands.
                put(&value.get_untracked());
            }
            Err(refusal) => refused.set(Some(refusal)),
        }
    };
    let accept = move |offer: Offer| match offer {
        Offer::Text(text) => take(text),
        Offer::Act(_, act) => {
            act();
            refused.set(None);
            put(&value.get_untracked());
        }
    };
    let give_up = move || {
        refused.set(None);
        put(&value.get_untracked());
    };
    let on_change = move |_| {
        if let Some(input) = input.get_untracked() {
            take(input.value());
        }
    };
    let on_key = move |event: KeyboardEvent| {
        if event.key() == "Escape" {
            give_up();
        }
    };
    // The value may change from elsewhere (undo, units, a link): then the field shows it and forgets a refusal.
    let shown = move || {
        refused.set(None);
        value.get()
    };
    // The hint stays while a click elsewhere lasts: what is clicked on must not move away under the pointer.
    let leave = move || {
        let still_away =
            move || input.get_untracked().is_some_and(|input| !input.matches(":focus").unwrap_or(false));
        let hide = move || {
            if still_away() {
                focused.set(false);
            }
        };
        set_timeout(hide, CLICK);
    };
    let hint_id = format!("{id}-hint");
    let refusal_id = format!("{id}-no");
    let described = {
        let (hint_id, refusal_id) = (hint_id.clone(), refusal_id.clone());
        move || {
            let refusal = refused.with(Option::is_some).then_some(refusal_id.as_str());
            let hint = focused.get().then_some(hint_id.as_str());
            let ids: Vec<&str> = refusal.into_iter().chain(hint).collect();
            (!ids.is_empty()).then(|| ids.join(" "))
        }
    };
    let offers = move || refused.get().map(|refusal| refusal.offers).unwrap_or_default();
    view! {
        <div class="field" class:refused=move || refused.with(Option::is_some)>
            <label for=id.clone()>{label}</label>
            <input
                node_ref=input
                id=id
                type="text"
                inputmode="decimal"
                autocomplete="off"
                spellcheck="false"
                aria-describedby=described
                aria-invalid=move || refused.with(Option::is_some).then_some("true")
                prop:value=shown
                on:change=on_change
                on:keydown=on_key
                on:focus=move |_| focused.set(true)
                on:blur=move |_| leave()
            />
            <span class="unit">{unit}</span>
            <div class="refusal" role="alert" id=refusal_id>
                {move || refused.get().map(|refusal| refusal.reason)}
                {move || {
                    offers()
                        .into_iter()
                        .map(|offer| {
                            let words = match &offer {
                                Offer::Text(text) => format!("Use {text}"),
                                Offer::Act(words, _) => words.clone(),
                            };
                            view! { <button type="button" on:click=move |_| accept(offer.clone())>{words}</button> }
                        })
                        .collect_view()
                }}
            </div>
            <p class="hint" id=hint_id hidden=move || !focused.get()>
                {move || if focused.get() { hint.run(()) } else { String::new() }}
            </p>
        </div>
    }
}
