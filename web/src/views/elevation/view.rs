//! What the reader wants in the room that the picture has.
use leptos::prelude::*;
use risewright::drawing::{Layout, View};

use crate::state::State;
pub use crate::widgets::room::{Room, room};

/// Kept free over the drawing for the toggles, px.
const HEAD: u32 = 36;
const NARROW_HEAD: u32 = 8;

/// Room and choices of the reader together.
pub fn view(room: Room, state: State) -> View {
    let layout = if room.narrow { Layout::Narrow } else { Layout::Wide };
    let mut view = View::new(room.width, room.height, layout, state.units.get());
    view.head = if room.narrow { NARROW_HEAD } else { HEAD };
    view.show = state.shown.get();
    view.charts = state.charts.get();
    view.marked = state.marked.get();
    view
}
