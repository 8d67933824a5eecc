//! Where an element lies over a picture.
use leptos::html;
use leptos::prelude::*;

/// A place within the element's container, CSS pixels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// From the left edge.
    pub left: f64,
    /// From the upper edge.
    pub top: f64,
    /// To the right.
    pub width: f64,
    /// Down.
    pub height: f64,
}

/// Keeps an input at a place; it stays where it is while there is none.
pub fn hold(node: NodeRef<html::Input>, place: impl Fn() -> Option<Place> + 'static) {
    // An effect, because a place on the page is a matter of the element's style.
    Effect::new(move || {
        let (Some(input), Some(place)) = (node.get(), place()) else { return };
        let style = web_sys::HtmlElement::style(&input);
        for (name, value) in
            [("left", place.left), ("top", place.top), ("width", place.width), ("height", place.height)]
        {
            // A length in px is never refused.
            let _ = style.set_property(name, &format!("{value:.1}px"));
        }
    });
}
