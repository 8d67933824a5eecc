//! Flat drawings as DXF of release 12, which every program for cutting reads: closed polylines, circles, lines and texts, a layer for each
//! operation, in millimetres.
//!
//! Group codes as in the AutoCAD DXF reference for release 12 (AC1009). Release 12 has no header variable for units; a comment says them.
use core::fmt::{self, Write};

use super::flat::{Flat, Layer, Shape};

/// The drawing as a DXF file. Numbers have six decimals.
#[must_use]
pub fn write(flat: &Flat) -> String {
    let mut file = File::default();
    file.pair(999, "millimetres");
    file.section("HEADER", |file| {
        file.pair(9, "$ACADVER");
        file.pair(1, "AC1009");
        file.pair(9, "$EXTMIN");
        file.point(10, [0.0, 0.0]);
        file.pair(9, "$EXTMAX");
        file.point(10, flat.size);
    });
    file.section("TABLES", tables);
    file.section("BLOCKS", |_| {});
    file.section("ENTITIES", |file| flat.shapes.iter().for_each(|(layer, shape)| file.shape(*layer, shape)));
    file.pair(0, "EOF");
    file.text
}

/// Colours by number, so that layers differ on screen.
const fn colour(layer: Layer) -> u8 {
    match layer {
        Layer::Blank => 8,
        Layer::Outline => 7,
        Layer::Drill => 1,
        Layer::Countersink => 6,
        Layer::Housing => 5,
        Layer::Offcut => 9,
        Layer::Label => 3,
    }
}

fn tables(file: &mut File) {
    file.pair(0, "TABLE");
    file.pair(2, "LTYPE");
    file.pair(70, "1");
    file.pair(0, "LTYPE");
    file.pair(2, "CONTINUOUS");
    file.pair(70, "64");
    file.pair(3, "Solid line");
    file.pair(72, "65");
    file.pair(73, "0");
    file.pair(40, "0.0");
    file.pair(0, "ENDTAB");
    file.pair(0, "TABLE");
    file.pair(2, "LAYER");
    file.pair(70, &(Layer::ALL.len() + 1).to_string());
    let names = core::iter::once(("0", 7)).chain(Layer::ALL.map(|layer| (layer.name(), colour(layer))));
    for (name, colour) in names {
        file.pair(0, "LAYER");
        file.pair(2, name);
        file.pair(70, "64");
        file.pair(62, &colour.to_string());
        file.pair(6, "CONTINUOUS");
    }
    file.pair(0, "ENDTAB");
}

/// A file in the making: pairs of a group code and a value, a line each.
#[derive(Default)]
struct File {
    text: String,
}

impl File {
    fn line(&mut self, line: fmt::Arguments<'_>) {
        // Writing to a string cannot fail.
        let _ = self.text.write_fmt(line);
        self.text.push('\n');
    }

    fn pair(&mut self, code: u16, value: &str) {
        self.line(format_args!("{code:3}"));
        self.line(format_args!("{value}"));
    }

    fn number(&mut self, code: u16, value: f64) {
        let value = if value.is_finite() { value } else { 0.0 };
        self.pair(code, &format!("{value:.6}"));
    }

    /// A point in the plane, its codes ten apart.
    fn point(&mut self, code: u16, [x, y]: [f64; 2]) {
        self.number(code, x);
        self.number(code + 10, y);
        self.number(code + 20, 0.0);
    }

    fn section(&mut self, name: &str, inside: impl FnOnce(&mut Self)) {
        self.pair(0, "SECTION");
        self.pair(2, name);
        inside(self);
        self.pair(0, "ENDSEC");
    }

    fn shape(&mut self, layer: Layer, shape: &Shape) {
        let start = |file: &mut Self, kind: &str| {
            file.pair(0, kind);
            file.pair(8, layer.name());
        };
        match shape {
            Shape::Outline(corners) => {
                start(self, "POLYLINE");
                self.pair(66, "1");
                self.point(10, [0.0, 0.0]);
                self.pair(70, "1");
                for corner in corners {
                    start(self, "VERTEX");
                    self.point(10, [corner.x, corner.y]);
                    self.number(42, corner.bulge);
                }
                start(self, "SEQEND");
            }
            Shape::Circle(middle, radius) => {
                start(self, "CIRCLE");
                self.point(10, *middle);
                self.number(40, *radius);
            }
            Shape::Line(from, to) => {
                start(self, "LINE");
                self.point(10, *from);
                self.point(11, *to);
            }
            Shape::Text(at, height, words) => {
                start(self, "TEXT");
                self.point(10, *at);
                self.number(40, *height);
                self.pair(1, &plain(words));
            }
        }
    }
}

/// Release 12 knows no letters beyond ASCII: a multiplication sign becomes an x, everything else unknown a question mark.
fn plain(words: &str) -> String {
    words
        .chars()
        .map(|sign| match sign {
            '×' => 'x',
            '\u{A0}' => ' ',
            sign if sign.is_ascii() && !sign.is_ascii_control() => sign,
            _ => '?',
        })
        .collect()
}
