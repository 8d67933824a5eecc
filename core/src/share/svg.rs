//! Flat drawings as SVG in true scale: one user unit is one millimetre, and the file says how large it is.
use super::flat::{Flat, Layer, Shape, round};
use crate::drawing::escaped;
use crate::parts::Corner;

/// Around a drawing, mm.
const MARGIN: f64 = 10.0;

/// The drawing as one SVG file in true scale.
#[must_use]
pub fn write(flat: &Flat) -> String {
    let [width, height] = flat.size.map(|side| side + 2.0 * MARGIN);
    frame([width, height], [-MARGIN, -MARGIN], &flat.title, &body(flat))
}

/// A file of a size, mm, whose lower left corner is a point of the drawing; y runs up.
fn frame([width, height]: [f64; 2], [x, y]: [f64; 2], title: &str, inside: &str) -> String {
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"{} {} {w} {h}\" \
         fill=\"none\" stroke=\"#000\" stroke-width=\"0.25\"><title>{}</title>{inside}</svg>\n",
        round(x),
        round(-y - height),
        escaped(title),
        w = round(width),
        h = round(height),
    )
}

fn body(flat: &Flat) -> String {
    Layer::ALL
        .into_iter()
        .map(|layer| {
            let shapes: String =
                flat.shapes.iter().filter(|(of, _)| *of == layer).map(|(_, shape)| element(shape)).collect();
            format!("<g id=\"{}\">{shapes}</g>", layer.name())
        })
        .collect()
}

/// One shape; y is turned, for in SVG it runs down.
fn element(shape: &Shape) -> String {
    match shape {
        Shape::Outline(corners) => format!("<path d=\"{}\"/>", path(corners)),
        Shape::Circle([x, y], radius) => {
            format!("<circle cx=\"{}\" cy=\"{}\" r=\"{}\"/>", fine(*x), fine(-*y), fine(*radius))
        }
        Shape::Line(from, to) => format!(
            "<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"/>",
            fine(from[0]),
            fine(-from[1]),
            fine(to[0]),
            fine(-to[1])
        ),
        Shape::Text([x, y], height, words) => format!(
            "<text x=\"{}\" y=\"{}\" font-size=\"{}\" font-family=\"sans-serif\" fill=\"#000\" stroke=\"none\">{}</text>",
            fine(*x),
            fine(-*y),
            fine(*height),
            escaped(words)
        ),
    }
}

fn path(corners: &[Corner]) -> String {
    let mut d = String::new();
    for (at, corner) in corners.iter().enumerate() {
        if at == 0 {
            d.push_str(&format!("M{} {}", fine(corner.x), fine(-corner.y)));
        }
        let next = corners[(at + 1) % corners.len()];
        let to = format!("{} {}", fine(next.x), fine(-next.y));
        if let Some(radius) = corner.radius(&next) {
            let sweep = u8::from(corner.bulge < 0.0);
            d.push_str(&format!("A{r} {r} 0 0 {sweep} {to}", r = fine(radius)));
        } else {
            d.push_str(&format!("L{to}"));
        }
    }
    d.push('Z');
    d
}

/// A number to a ten-thousandth of a millimetre, without zeros at its end.
fn fine(value: f64) -> String {
    let text = format!("{value:.4}");
    let short = text.trim_end_matches('0').trim_end_matches('.');
    if matches!(short, "" | "-0" | "-") { "0".into() } else { short.into() }
}
