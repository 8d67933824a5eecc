//! Flat drawings as SVG in true scale: one user unit is one millimetre, and the file says how large it is. Templates are cut into pages, each
//! with a bar to check the printer by.
use super::flat::{Corner, Flat, Layer, Shape, round};

/// Around a drawing, mm.
const MARGIN: f64 = 10.0;

/// How far pages of a template overlap, mm: enough to line up a hole's mark.
const OVERLAP: f64 = 10.0;

/// Length of the bar a print is checked by, mm.
const BAR: f64 = 100.0;

/// A sheet of paper, upright, mm.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 by 297 mm.
    A4,
    /// 8 1/2 by 11 in.
    Letter,
}

impl Paper {
    /// Its size lying down, mm: templates are long.
    #[must_use]
    pub const fn lying(self) -> [f64; 2] {
        match self {
            Self::A4 => [297.0, 210.0],
            Self::Letter => [279.4, 215.9],
        }
    }
}

/// The drawing as one SVG file in true scale.
#[must_use]
pub fn write(flat: &Flat) -> String {
    let [width, height] = flat.size.map(|side| side + 2.0 * MARGIN);
    frame([width, height], [-MARGIN, -MARGIN], &flat.title, &body(flat))
}

/// The drawing in true scale on as many pages as it takes, row by row from its datum corner, neighbours overlapping; each page shows its
/// number, a bar of 100 mm, and the whole of what falls on it.
#[must_use]
pub fn pages(flat: &Flat, paper: Paper) -> Vec<String> {
    let page = paper.lying();
    // Printers keep their margins free, and the bar stands below.
    let [wide, high] = [page[0] - 2.0 * MARGIN, page[1] - 4.0 * MARGIN];
    let shapes = body(flat);
    let starts = |size: f64, room: f64| -> Vec<f64> {
        let mut list = vec![0.0];
        while list.last().is_some_and(|start| start + room < size) && list.len() < MOST_PAGES {
            list.push(list.len() as f64 * (room - OVERLAP));
        }
        list
    };
    let (columns, rows) = (starts(flat.size[0], wide), starts(flat.size[1], high));
    let count = columns.len() * rows.len();
    let places = rows.iter().flat_map(|y| columns.iter().map(move |x| [*x, *y]));
    places
        .zip(1_usize..)
        .map(|([x, y], number)| {
            // The page's own axes: its window begins at the margins' corner, with the bar's strip beneath.
            let corner = [x - MARGIN, y - 3.0 * MARGIN];
            let title = format!("{}, page {number} of {count}", flat.title);
            let bar = bar([x, y - 2.0 * MARGIN], &title);
            let window = format!(
                "<clipPath id=\"page\"><rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/></clipPath>\
                 <g clip-path=\"url(#page)\">{shapes}</g>{bar}",
                round(x - 1.0),
                round(-y - high),
                round(wide + 1.0),
                round(high + 3.0)
            );
            frame(page, corner, &title, &window)
        })
        .collect()
}

/// No part of a table is longer than so many pages.
const MOST_PAGES: usize = 60;

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
        if corner.bulge.abs() > 0.0 {
            // Chord and bulge give the radius: chord (1 + b^2) / 4b.
            let chord = libm::hypot(next.x - corner.x, next.y - corner.y);
            let radius = chord * (1.0 + corner.bulge * corner.bulge) / (4.0 * corner.bulge.abs());
            let sweep = u8::from(corner.bulge < 0.0);
            d.push_str(&format!("A{r} {r} 0 0 {sweep} {to}", r = fine(radius)));
        } else {
            d.push_str(&format!("L{to}"));
        }
    }
    d.push('Z');
    d
}

/// The bar with its ticks every 10 mm, and what to do with it.
fn bar([x, y]: [f64; 2], title: &str) -> String {
    let mut text = element(&Shape::Line([x, y], [x + BAR, y]));
    for tick in 0..=10_u8 {
        let at = x + BAR * f64::from(tick) / 10.0;
        let high = if tick % 5 == 0 { 4.0 } else { 2.5 };
        text.push_str(&element(&Shape::Line([at, y], [at, y + high])));
    }
    let words = format!("{title}. The bar is 100 mm long; if not, print at 100 %.");
    text.push_str(&element(&Shape::Text([x + BAR + 4.0, y], 3.5, words)));
    text
}

/// A number to a ten-thousandth of a millimetre, without zeros at its end.
fn fine(value: f64) -> String {
    let text = format!("{value:.4}");
    let short = text.trim_end_matches('0').trim_end_matches('.');
    if matches!(short, "" | "-0" | "-") { "0".into() } else { short.into() }
}

fn escaped(words: &str) -> String {
    words.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}
