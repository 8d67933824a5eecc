//! stub
use crate::state::State;
use leptos::prelude::*;
#[component]
pub fn Figure(state: State) -> impl IntoView {
    let _ = state;
    view! { <div class="figure"></div> }
}
