//! A choice among a few, and a yes or no.
use leptos::html;
use leptos::prelude::*;

/// A labelled list of choices; what is chosen is told by its number.
#[component]
pub fn Select(
    /// Names the list.
    id: String,
    /// What is chosen.
    label: &'static str,
    /// Number and words of each choice.
    choices: Vec<(i64, String)>,
    /// Words for a present choice that is not in the list.
    #[prop(optional)]
    other: &'static str,
    /// The number of the present choice.
    #[prop(into)]
    value: Signal<i64>,
    /// What it means, read out with it.
    meaning: String,
    /// Takes the number of another choice and tells why it cannot be.
    #[prop(into)]
    commit: Callback<i64, Result<(), String>>,
) -> impl IntoView {
    let list = NodeRef::<html::Select>::new();
    let refused = RwSignal::new(None::<String>);
    let on_change = move |_| {
        let Some(list) = list.get_untracked() else { return };
        let Ok(number) = list.value().parse() else { return };
        match commit.run(number) {
            Ok(()) => refused.set(None),
            Err(reason) => {
                refused.set(Some(reason));
                list.set_value(&value.get_untracked().to_string());
            }
        }
    };
    let listed: Vec<i64> = choices.iter().map(|(number, _)| *number).collect();
    let shown = move || {
        refused.set(None);
        value.with(|value| if listed.contains(value) { value.to_string() } else { String::new() })
    };
    let refusal_id = format!("{id}-no");
    let described = {
        let refusal_id = refusal_id.clone();
        move || refused.with(Option::is_some).then(|| refusal_id.clone())
    };
    view! {
        <div class="field choice" class:refused=move || refused.with(Option::is_some)>
            <label for=id.clone() title=meaning>{label}</label>
            <select node_ref=list id=id aria-describedby=described prop:value=shown on:change=on_change>
                <option value="" hidden=true disabled=true>
                    {other}
                </option>
                {choices
                    .into_iter()
                    .map(|(number, words)| {
                        view! { <option value=number.to_string() selected=move || value.get() == number>{words}</option> }
                    })
                    .collect_view()}
            </select>
            <div class="refusal" role="alert" id=refusal_id>{refused}</div>
        </div>
    }
}

/// A labelled yes or no.
#[component]
pub fn Switch(
    /// Names the box.
    id: String,
    /// What is so or not.
    label: &'static str,
    /// Whether it is.
    #[prop(into)]
    value: Signal<bool>,
    /// What it means, read out with it.
    meaning: String,
    /// Takes the other value and tells why it cannot be.
    #[prop(into)]
    commit: Callback<bool, Result<(), String>>,
) -> impl IntoView {
    let input = NodeRef::<html::Input>::new();
    let refused = RwSignal::new(None::<String>);
    let on_change = move |_| {
        let Some(input) = input.get_untracked() else { return };
        match commit.run(input.checked()) {
            Ok(()) => refused.set(None),
            Err(reason) => {
                refused.set(Some(reason));
                input.set_checked(value.get_untracked());
            }
        }
    };
    let refusal_id = format!("{id}-no");
    let described = {
        let refusal_id = refusal_id.clone();
        move || refused.with(Option::is_some).then(|| refusal_id.clone())
    };
    view! {
        <div class="field switch" class:refused=move || refused.with(Option::is_some)>
            <label title=meaning>
                <span>{label}</span>
                <input
                    node_ref=input
                    id=id
                    type="checkbox"
                    aria-describedby=described
                    prop:checked=value
                    on:change=on_change
                />
            </label>
            <div class="refusal" role="alert" id=refusal_id>{refused}</div>
        </div>
    }
}
