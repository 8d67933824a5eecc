//! What stands in the page before the program runs: the picture that a first visitor is about to see, drawn by the same code at build time. Who
//! comes with a link, or has a design kept, does not see it: see `first.js`.
use risewright::design::Design;
use risewright::drawing::{Layout, View, compose, widths};
use risewright::quantity::System;
use risewright::report::analyse;

use crate::trouble::Trouble;

/// Rooms in which it is drawn, px: class of the style sheet, width, height, layout. The style sheet shows the one that fits and scales it.
const ROOMS: [(&str, u32, u32, Layout); 2] =
    [("wide", 1096, 560, Layout::Wide), ("narrow", 390, 600, Layout::Narrow)];

/// The markup inside `<div id="app">` until the program replaces it.
pub fn first_view() -> Result<String, Trouble> {
    let design = Design::default();
    let report = analyse(&design).map_err(|_| Trouble::new("the first design does not stand".to_owned()))?;
    let middle = 0.5 * (report.lowest() + report.highest());
    let mut drawings = String::new();
    for (class, width, height, layout) in ROOMS {
        let mut view = View::new(width, height, layout, System::Metric);
        if layout == Layout::Narrow {
            view.charts.clear();
        }
        let picture = compose(&report, middle, &view, &widths);
        drawings += &format!(
            "<svg class=\"dwg {class}\" viewBox=\"0 0 {} {}\" aria-hidden=\"true\">{}</svg>",
            picture.width,
            picture.height,
            picture.marks()
        );
    }
    Ok(format!(
        "<div class=\"first\"><p>Risewright is loading. It needs WebAssembly, which every current browser has.</p>{drawings}</div>"
    ))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop")]
    use super::first_view;

    #[test]
    fn it_is_drawn_for_both_rooms_without_style_or_script() {
        let view = first_view().unwrap();
        assert_eq!(view.matches("<svg").count(), 2);
        assert!(!view.contains("style=") && !view.contains("<script") && !view.contains("NaN"));
    }
}
