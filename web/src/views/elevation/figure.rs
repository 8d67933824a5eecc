//! stub
use leptos::prelude::*;
use crate::state::State;
#[component]
pub fn Figure(state: State) -> impl IntoView { let _ = state; view!{ <div class="figure"></div> } }
