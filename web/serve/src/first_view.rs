//! What stands in the page before the program runs.

/// The markup inside `<div id="app">` until the program replaces it.
pub fn first_view() -> String {
    "<p>Risewright is loading. It needs WebAssembly, which every current browser has.</p>".to_owned()
}
