//! How the page is made: part after part, each in a turn of its own, unseen until all are there. What stood in its place stays so long.
use leptos::prelude::*;

use crate::clock::in_turns;
use crate::state::State;

/// The turn after the last part's.
const MADE: u32 = 5;

/// Makes the page.
pub fn make(state: State) {
    in_turns(move || {
        let turn = state.turn.get_untracked() + 1;
        state.turn.set(turn);
        if turn == MADE {
            clear();
        }
        turn < MADE
    });
}

/// Whether all parts are there.
pub fn is_made(state: State) -> bool {
    state.turn.get() >= MADE
}

/// Takes away what told the reader to wait.
pub fn clear() {
    if let Ok(Some(waiting)) = document().query_selector("#app > .first") {
        waiting.remove();
    }
}

/// A part that is made in a turn, counted from one; at once when the page has been made.
#[component]
pub fn Part(state: State, turn: u32, children: ChildrenFn) -> impl IntoView {
    let due = move || state.turn.get() >= turn;
    view! { <Show when=due>{children()}</Show> }
}
