//! Arrowheads and arrows.
use super::outline::{tidy, write};
use super::scale::Screen;
use glam::DVec2;

/// Length and half width of an arrowhead on a dimension line, px.
const DIMENSION_HEAD: (f64, f64) = (9.0, 1.75);
/// The same on a force.
const FORCE_HEAD: (f64, f64) = (9.0, 2.88);
/// A force shorter than this has no arrow, px.
pub(super) const SHORTEST_FORCE: f64 = 8.0;

/// A filled triangle with its point at `tip`, pointing along the unit vector `along`.
fn head(tip: DVec2, along: DVec2, (length, half): (f64, f64)) -> String {
    let (back, side) = (tip - length * along, half * along.perp());
    let mut d = String::new();
    for (index, point) in [tip, back + side, back - side].into_iter().enumerate() {
        let command = if index == 0 { 'M' } else { 'L' };
        write(&mut d, format_args!("{command}{} {}", tidy(point.x), tidy(point.y)));
    }
    d + "Z"
}

/// The head of a dimension line that ends at `tip`, seen from `from`.
pub(super) fn dimension_head(from: Screen, tip: Screen) -> String {
    let along = (tip.vector() - from.vector()).try_normalize().unwrap_or(DVec2::X);
    head(tip.vector(), along, DIMENSION_HEAD)
}

/// Shaft and head of a force from `tail` to `tip`; both empty when it is too short to be drawn.
pub(super) fn force(tail: Screen, tip: Screen) -> [String; 2] {
    let span = tip.vector() - tail.vector();
    let length = span.length();
    if !(length.is_finite() && length >= SHORTEST_FORCE) {
        return [String::new(), String::new()];
    }
    let along = span / length;
    let size = (FORCE_HEAD.0.min(0.7 * length), FORCE_HEAD.1);
    let neck = tip.vector() - 0.7 * size.0 * along;
    let mut shaft = String::new();
    write(&mut shaft, format_args!("M{} {}L{} {}", tidy(tail.x), tidy(tail.y), tidy(neck.x), tidy(neck.y)));
    [shaft, head(tip.vector(), along, size)]
}
