//! A picture as SVG text.
use super::end::SwaySheet;
use super::mark::{Curve, Mark, Shape};
use super::outline::{tidy, write};
use super::sheet::Picture;

impl Mark {
    /// The mark as one SVG element; nothing for what is left out.
    #[must_use]
    pub fn svg(&self) -> String {
        let mut text = String::new();
        let class = self.class;
        match &self.shape {
            Shape::Path(d) if d.is_empty() => {}
            Shape::Path(d) => write(&mut text, format_args!("<path class=\"{class}\" d=\"{d}\"/>")),
            Shape::Circle { centre, radius } => write(
                &mut text,
                format_args!(
                    "<circle class=\"{class}\" cx=\"{}\" cy=\"{}\" r=\"{}\"/>",
                    tidy(centre.x),
                    tidy(centre.y),
                    tidy(*radius)
                ),
            ),
            Shape::Rect { corner, width, height } => write(
                &mut text,
                format_args!(
                    "<rect class=\"{class}\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/>",
                    tidy(corner.x),
                    tidy(corner.y),
                    tidy(*width),
                    tidy(*height)
                ),
            ),
            Shape::Line { from, to } => write(
                &mut text,
                format_args!(
                    "<line class=\"{class}\" x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"/>",
                    tidy(from.x),
                    tidy(from.y),
                    tidy(to.x),
                    tidy(to.y)
                ),
            ),
            Shape::Text { words, .. } if words.is_empty() => {}
            Shape::Text { at, anchor, upright, words } => {
                let (x, y) = (tidy(at.x), tidy(at.y));
                write(
                    &mut text,
                    format_args!(
                        "<text class=\"{class}\" x=\"{x}\" y=\"{y}\" text-anchor=\"{}\"",
                        anchor.name()
                    ),
                );
                if *upright {
                    write(&mut text, format_args!(" transform=\"rotate(-90 {x} {y})\""));
                }
                write(&mut text, format_args!(">{}</text>", escaped(words)));
            }
        }
        text
    }
}

impl Curve {
    /// The curve in the notation of an SVG `d` attribute; empty without two points.
    #[must_use]
    pub fn notation(&self) -> String {
        let mut d = String::new();
        if self.points.len() < 2 {
            return d;
        }
        for (index, point) in self.points.iter().enumerate() {
            let command = if index == 0 { 'M' } else { 'L' };
            write(&mut d, format_args!("{command}{} {}", tidy(point.x), tidy(point.y)));
        }
        if self.ink.fills() {
            d.push('Z');
        }
        d
    }
}

impl SwaySheet {
    /// What stands still, and the curves, as the inside of an SVG element; what moves lies on it.
    #[must_use]
    pub fn still_marks(&self) -> String {
        still(&self.still, &self.curves)
    }
}

fn still(marks: &[Mark], curves: &[Curve]) -> String {
    let curves = curves.iter().map(|curve| Mark::path(curve.ink.class, curve.notation()).svg());
    marks.iter().map(Mark::svg).chain(curves).collect()
}

impl Picture {
    /// The picture as the inside of an SVG element: what stands still, the curves, what moves.
    #[must_use]
    pub fn marks(&self) -> String {
        let moving: String = self.moving.iter().map(Mark::svg).collect();
        still(&self.still, &self.curves) + &moving
    }

    /// The picture as a file of its own, with `style` as its style sheet and `title` as its name for those who cannot see it.
    #[must_use]
    pub fn svg(&self, style: &str, title: &str) -> String {
        let (width, height) = (tidy(self.width), tidy(self.height));
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"dwg\" width=\"{width}\" height=\"{height}\" \
             viewBox=\"0 0 {width} {height}\" role=\"img\"><title>{}</title><style>svg{{background:var(--sheet)}}{}</style>{}</svg>\n",
            escaped(title),
            escaped(style),
            self.marks()
        )
    }
}

/// Words that mean the same in XML and HTML, between tags and in quoted attributes.
pub(crate) fn escaped(words: &str) -> String {
    words.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}
