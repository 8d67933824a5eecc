//! How wide words will stand on the page, asked from the browser once for every text and face.
use std::cell::RefCell;
use std::collections::BTreeMap;

use risewright::drawing::Face;
use wasm_bindgen::JsCast;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

/// Numbers change with every frame of a drag: the memory is emptied when it holds this many texts.
const MOST: usize = 4000;

/// Measures texts in the page's own font.
pub struct Lettering {
    context: CanvasRenderingContext2d,
    family: String,
    known: RefCell<BTreeMap<(u16, u16, String), f64>>,
}

impl Lettering {
    /// For the font that the style sheet gives to the body; nothing where the browser has no canvas.
    pub fn new() -> Option<Self> {
        let window = web_sys::window()?;
        let document = window.document()?;
        let canvas: HtmlCanvasElement = document.create_element("canvas").ok()?.dyn_into().ok()?;
        let context = canvas.get_context("2d").ok()??.dyn_into().ok()?;
        let style = window.get_computed_style(&document.body()?).ok()??;
        let family = style.get_property_value("font-family").ok()?;
        Some(Self { context, family, known: RefCell::default() })
    }

    /// Width in CSS pixels.
    pub fn width(&self, text: &str, face: Face) -> f64 {
        let tenths = whole_tenths(face.size());
        let key = (tenths, face.weight(), text.to_owned());
        if let Some(width) = self.known.borrow().get(&key) {
            return *width;
        }
        self.context.set_font(&format!("{} {}px {}", face.weight(), face.size(), self.family));
        let width = self.context.measure_text(text).map_or_else(|_| face.estimate(text), |metrics| metrics.width());
        let mut known = self.known.borrow_mut();
        if known.len() >= MOST {
            known.clear();
        }
        known.insert(key, width);
        width
    }
}
