//! What can hurt, said where the crank is turned.
use leptos::prelude::*;
use risewright::pages::CAUTIONS;

/// The cautions, folded.
#[component]
pub fn Cautions() -> impl IntoView {
    view! {
        <details class="cautions">
            <summary>
                <h3>"Before you raise it"</h3>
                <span class="gist">"arms shear, loads tip, nuts strip"</span>
            </summary>
            <ul>{CAUTIONS.into_iter().map(|caution| view! { <li>{caution}</li> }).collect_view()}</ul>
        </details>
    }
}
