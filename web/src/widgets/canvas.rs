//! Curves on a canvas: drawn by plotters when they change, left alone while a marker moves over them.
use leptos::html;
use leptos::prelude::*;
use plotters::prelude::{Color, DrawingBackend, RGBColor, ShapeStyle};
use plotters_canvas::CanvasBackend;
use risewright::drawing::{Curve, Screen};
use wasm_bindgen::JsCast;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

use super::room::enlarged;

/// plotters counts in whole units; a unit is this part of a CSS pixel, so that curves stay smooth on any screen.
const UNITS: f64 = 32.0;

/// The curves, over an area of so many CSS pixels. Redrawn when curves, size or `paper` change.
#[component]
pub fn Curves(
    /// The curves, in painting order.
    #[prop(into)]
    curves: Signal<Vec<Curve>>,
    /// Width and height, CSS pixels.
    #[prop(into)]
    size: Signal<(f64, f64)>,
    /// Changes whenever colours or the density of the screen do.
    #[prop(into)]
    paper: Signal<u32>,
) -> impl IntoView {
    let canvas = NodeRef::<html::Canvas>::new();
    // An effect, because a canvas remembers only pixels.
    Effect::new(move || {
        paper.track();
        let Some(canvas) = canvas.get() else { return };
        let size = size.get();
        curves.with(|curves| draw(&canvas, size, curves));
    });
    view! { <canvas node_ref=canvas class="curves" aria-hidden="true"></canvas> }
}

fn draw(canvas: &HtmlCanvasElement, (width, height): (f64, f64), curves: &[Curve]) {
    let Some(window) = web_sys::window() else { return };
    let style = web_sys::HtmlElement::style(canvas);
    for (name, length) in [("width", width), ("height", height)] {
        // A length in px is never refused.
        let _ = style.set_property(name, &format!("{length}px"));
    }
    let density = window.device_pixel_ratio() * enlarged(canvas);
    canvas.set_width(whole(width * density).unsigned_abs());
    canvas.set_height(whole(height * density).unsigned_abs());
    let (Some(context), Ok(Some(style))) = (context(canvas), window.get_computed_style(canvas)) else {
        return;
    };
    let scale = density / UNITS;
    if context.set_transform(scale, 0.0, 0.0, scale, 0.0, 0.0).is_err() {
        return;
    }
    context.set_line_join("round");
    // Asked for lines directly: a drawing area would cut them at the canvas's size in units.
    let Some(mut backend) = CanvasBackend::with_canvas_object(canvas.clone()) else { return };
    for curve in curves {
        let token = format!("--{}", curve.ink.hue.token());
        let colour =
            style.get_property_value(&token).ok().and_then(|text| hex(&text)).unwrap_or(RGBColor(0, 0, 0));
        let points = curve.points.iter().map(units);
        let colour = colour.mix(curve.ink.opacity);
        let outcome = if curve.ink.fills() {
            backend.fill_polygon(points, &ShapeStyle::from(colour).filled())
        } else {
            dashes(&context, curve.ink.dash);
            let width = whole(curve.ink.width * UNITS).unsigned_abs();
            backend.draw_path(points, &ShapeStyle::from(colour).stroke_width(width))
        };
        if outcome.is_err() {
            return;
        }
    }
}

fn context(canvas: &HtmlCanvasElement) -> Option<CanvasRenderingContext2d> {
    canvas.get_context("2d").ok()??.dyn_into().ok()
}

fn dashes(context: &CanvasRenderingContext2d, pattern: &[f64]) {
    let lengths: js_sys::Array = pattern.iter().map(|length| js_sys::Number::from(length * UNITS)).collect();
    // Refused only for negative or endless lengths: then the line is full.
    let _ = context.set_line_dash(&lengths);
}

fn units(at: &Screen) -> (i32, i32) {
    (whole(at.x * UNITS), whole(at.y * UNITS))
}

#[expect(clippy::cast_possible_truncation, reason = "saturates, far outside any screen")]
const fn whole(value: f64) -> i32 {
    value.round() as i32
}

/// The colour of `#rrggbb`.
fn hex(text: &str) -> Option<RGBColor> {
    let digits = text.trim().strip_prefix('#')?;
    let part = |at: usize| u8::from_str_radix(digits.get(at..at + 2)?, 16).ok();
    Some(RGBColor(part(0)?, part(2)?, part(4)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn colours_of_the_style_sheet_are_understood() {
        assert_eq!(hex(" #D55E00").map(|colour| (colour.0, colour.1, colour.2)), Some((0xD5, 0x5E, 0)));
        assert_eq!(hex("orange").map(|colour| colour.0), None);
        assert_eq!(hex("#ä5E00").map(|colour| colour.0), None);
    }
}
