//! The main view: the table from the side with its plots at the same level, the crank beneath, and what was found.
mod cautions;
mod crank;
mod figure;
mod findings;
mod hold;
mod probe;
mod reading;
mod show;
mod strip;
mod table;
mod view;
mod wall;

use leptos::prelude::*;

use crate::making::Part;
use crate::state::State;

/// The whole view.
#[component]
pub fn Elevation(state: State) -> impl IntoView {
    view! {
        <h2 class="unseen">"Side elevation"</h2>
        <figure::Figure state/>
        <Part state turn=2><crank::Crank state/></Part>
        <Part state turn=3>
            <findings::Findings state/>
            <cautions::Cautions/>
            <wall::Wall state/>
        </Part>
    }
}
