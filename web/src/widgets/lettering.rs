//! How wide words will stand on the page, asked from the browser once for every text and face.
use std::cell::RefCell;
use std::collections::HashMap;

use risewright::drawing::{Face, widths};
use wasm_bindgen::JsCast;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

/// Figures change with every frame of a drag: the memory is emptied when a face holds this many texts.
const MOST: usize = 2000;

/// Measures texts in the page's own font; where the browser has no canvas, in the widths of a common one.
pub struct Lettering {
    browser: Option<Browser>,
    known: RefCell<HashMap<Face, HashMap<String, f64>>>,
}

struct Browser {
    context: CanvasRenderingContext2d,
    family: String,
}

impl Lettering {
    /// For the font that the style sheet gives to the body.
    pub fn new() -> Self {
        Self { browser: Browser::new(), known: RefCell::default() }
    }

    /// Width in CSS pixels.
    pub fn width(&self, text: &str, face: Face) -> f64 {
        let mut known = self.known.borrow_mut();
        let known = known.entry(face).or_default();
        if let Some(width) = known.get(text) {
            return *width;
        }
        let width = self.browser.as_ref().and_then(|browser| browser.width(text, face));
        let width = width.unwrap_or_else(|| widths(text, face));
        if known.len() >= MOST {
            known.clear();
        }
        known.insert(text.to_owned(), width);
        width
    }
}

impl Browser {
    fn new() -> Option<Self> {
        let window = web_sys::window()?;
        let document = window.document()?;
        let canvas: HtmlCanvasElement = document.create_element("canvas").ok()?.dyn_into().ok()?;
        let context = canvas.get_context("2d").ok()??.dyn_into().ok()?;
        let body = document.body()?;
        let style = window.get_computed_style(&body).ok()??;
        let family = style.get_property_value("font-family").ok()?;
        Some(Self { context, family })
    }

    fn width(&self, text: &str, face: Face) -> Option<f64> {
        self.context.set_font(&format!("{} {}px {}", face.weight(), face.size(), self.family));
        self.context.measure_text(text).ok().map(|metrics| metrics.width())
    }
}
