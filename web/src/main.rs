//! The page: a shop drawing of a scissor table that moves.
mod app;
mod begin;
mod clock;
mod edit;
mod format;
mod frame;
mod input;
mod making;
mod media;
mod persist;
mod shelf;
mod stage;
mod state;
#[cfg(feature = "trial")]
mod trial;
mod trouble;
mod views;
mod widgets;
mod worker;

use wasm_bindgen::JsCast;

fn main() {
    trouble::prepare();
    #[cfg(feature = "trial")]
    trial::at_start();
    let place = web_sys::window()
        .and_then(|window| window.document())
        .and_then(|document| document.get_element_by_id("app"));
    let Some(place) = place.and_then(|place| place.dyn_into::<web_sys::HtmlElement>().ok()) else { return };
    leptos::mount::mount_to(place, app::App).forget();
    #[cfg(feature = "trial")]
    trial::listen();
}
