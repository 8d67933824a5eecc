//! Outlines on the table, in millimetres, with the line type they are drawn in.
use super::scale::{Model, Scale};
use glam::DVec2;
use std::fmt::Write as _;

/// A piece of an outline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Segment {
    /// Straight to a point.
    Line(DVec2),
    /// Along a circle to a point, by less than a full turn.
    Arc {
        /// The point it ends at.
        to: DVec2,
        /// Radius of the circle, mm.
        radius: f64,
        /// Counter-clockwise as seen with y up.
        left: bool,
        /// By more than half a turn.
        large: bool,
    },
}

impl Segment {
    const fn end(self) -> DVec2 {
        match self {
            Self::Line(to) | Self::Arc { to, .. } => to,
        }
    }
}

/// An outline in millimetres, y up.
#[derive(Clone, Debug, PartialEq)]
pub enum Outline {
    /// A full circle.
    Circle {
        /// Its middle.
        centre: DVec2,
        /// Its radius, mm.
        radius: f64,
    },
    /// A run of straight pieces and arcs.
    Run {
        /// Where it begins.
        start: DVec2,
        /// Its pieces in order.
        segments: Vec<Segment>,
        /// Whether it ends where it began.
        closed: bool,
    },
}

impl Outline {
    /// A straight line.
    pub(super) fn line(from: DVec2, to: DVec2) -> Self {
        Self::Run { start: from, segments: vec![Segment::Line(to)], closed: false }
    }

    /// A closed polygon.
    pub(super) fn polygon(corners: &[DVec2]) -> Self {
        let (start, rest) =
            corners.split_first().map_or((DVec2::ZERO, &[][..]), |(start, rest)| (*start, rest));
        Self::Run {
            start,
            segments: rest.iter().map(|corner| Segment::Line(*corner)).collect(),
            closed: true,
        }
    }

    /// Both kinds as one: where it begins, what follows.
    fn corners(&self) -> Vec<DVec2> {
        match self {
            Self::Circle { centre, radius } => {
                let reach = DVec2::splat(*radius);
                vec![*centre - reach, *centre + reach]
            }
            Self::Run { start, segments, .. } => {
                core::iter::once(*start).chain(segments.iter().map(|segment| segment.end())).collect()
            }
        }
    }

    /// The outline on paper in the notation of an SVG `d` attribute.
    pub(super) fn notation(&self, scale: &Scale) -> String {
        let mut d = String::new();
        match self {
            Self::Circle { centre, radius } => {
                let r = tidy(scale.length(*radius));
                let left = scale.to_screen((*centre - DVec2::new(*radius, 0.0)).into());
                let right = scale.to_screen((*centre + DVec2::new(*radius, 0.0)).into());
                let (lx, rx, y) = (tidy(left.x), tidy(right.x), tidy(left.y));
                write(&mut d, format_args!("M{lx} {y}A{r} {r} 0 1 0 {rx} {y}A{r} {r} 0 1 0 {lx} {y}Z"));
            }
            Self::Run { start, segments, closed } => {
                let at = |point: DVec2| {
                    let screen = scale.to_screen(Model::from(point));
                    (tidy(screen.x), tidy(screen.y))
                };
                let (x, y) = at(*start);
                write(&mut d, format_args!("M{x} {y}"));
                for segment in segments {
                    let (x, y) = at(segment.end());
                    match segment {
                        Segment::Line(_) => write(&mut d, format_args!("L{x} {y}")),
                        Segment::Arc { radius, left, large, .. } => {
                            let r = tidy(scale.length(*radius));
                            // Paper's y points down, so that a turn to the left stays one, and SVG calls it 0.
                            let (large, sweep) = (u8::from(*large), u8::from(!*left));
                            write(&mut d, format_args!("A{r} {r} 0 {large} {sweep} {x} {y}"));
                        }
                    }
                }
                if *closed {
                    d.push('Z');
                }
            }
        }
        d
    }
}

/// Appends to a string, which cannot fail.
pub(crate) fn write(text: &mut String, arguments: std::fmt::Arguments<'_>) {
    let _: std::fmt::Result = text.write_fmt(arguments);
}

/// A coordinate to a hundredth of a pixel, written without needless digits; what is not finite becomes zero.
pub(super) fn tidy(value: f64) -> f64 {
    let rounded = (value * 100.0).round() / 100.0;
    if rounded.is_finite() && rounded.abs() > 0.0 { rounded } else { 0.0 }
}

/// An outline with the line type and fill it is drawn in.
#[derive(Clone, Debug, PartialEq)]
pub struct Stroke {
    /// Classes of the drawing language, apart by spaces.
    pub class: &'static str,
    /// Where it runs.
    pub outline: Outline,
}

/// An upright box around outlines, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Lower left corner.
    pub least: DVec2,
    /// Upper right corner.
    pub most: DVec2,
}

impl Bounds {
    /// The box around strokes; none where there is no finite point.
    #[must_use]
    pub fn around(strokes: &[Stroke]) -> Option<Self> {
        strokes.iter().flat_map(|stroke| stroke.outline.corners()).filter(|point| point.is_finite()).fold(
            None,
            |bounds: Option<Self>, point| {
                let known = bounds.unwrap_or(Self { least: point, most: point });
                Some(Self { least: known.least.min(point), most: known.most.max(point) })
            },
        )
    }

    /// The box around both.
    #[must_use]
    pub fn with(self, other: Self) -> Self {
        Self { least: self.least.min(other.least), most: self.most.max(other.most) }
    }
}
