//! How much room a picture has.
use js_sys::Number;

use crate::media;

/// Up to this width of the window plots stand beneath the drawing; the style sheet changes at the same width.
const NARROW: &str = "(max-width: 56.1875em)";
/// The size of type for which the page is drawn, px. Where the browser is set to another, the style sheet enlarges the page by as much.
const TYPE: f64 = 16.0;

/// Whole CSS pixels, and whether plots stand beneath the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Room {
    /// Width of the picture.
    pub width: u32,
    /// Height of the picture, or of the window where the picture may be as high as it likes.
    pub height: u32,
    /// Whether plots stand beneath the drawing.
    pub narrow: bool,
}

/// The room in a box of the page; none before it stands there.
pub fn room((width, height): (f64, f64)) -> Option<Room> {
    if width <= 0.0 {
        return None;
    }
    let window = web_sys::window()?;
    let narrow = media::matches(NARROW);
    let height =
        if narrow { window.inner_height().ok()?.as_f64()? * TYPE / size_of_type(&window) } else { height };
    Some(Room { width: whole(width), height: whole(height), narrow })
}

/// The size of type that the browser is set to, px.
fn size_of_type(window: &web_sys::Window) -> f64 {
    let root = window.document().and_then(|document| document.document_element());
    let style = root.and_then(|root| window.get_computed_style(&root).ok().flatten());
    let size = style.and_then(|style| style.get_property_value("font-size").ok());
    size.map(|size| Number::parse_float(&size)).filter(|size| *size > 0.0).unwrap_or(TYPE)
}

/// How many pixels of the window a pixel of an element takes: more than one in projector size, or with larger type.
pub fn enlarged(element: &web_sys::Element) -> f64 {
    let (shown, own) = (element.get_bounding_client_rect().width(), f64::from(element.client_width()));
    // The browser rounds the element's own width to whole pixels.
    const ROUNDING: f64 = 0.02;
    let factor = if own > 0.0 { shown / own } else { 1.0 };
    if (factor - 1.0).abs() < ROUNDING { 1.0 } else { factor }
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "sizes of a window, saturating")]
const fn whole(pixels: f64) -> u32 {
    pixels.floor() as u32
}
