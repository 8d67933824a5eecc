//! Whether holes and recesses lie on their part.
//!
//! Plain `f64` in m.
use super::hole::{Hole, Housing};
use super::part::Part;
use crate::quantity::Length;

impl Part {
    /// How far the circle of a hole reaches past the part's outline, m; less than nothing where wood is left all round.
    ///
    /// The outline is a rectangle whose corners are rounded at either end: from its middle a point stands past it by the
    /// distance from the rectangle shrunk by the radius, less the radius.
    #[must_use]
    pub fn beyond(&self, hole: &Hole) -> f64 {
        let [length, width] = [self.size[0], self.size[1]].map(|side| side.to_m() / 2.0);
        let (along, across) = (hole.along.to_m() - length, hole.across.to_m() - width);
        let corner = self.corners[usize::from(along > 0.0)].to_m().min(length).min(width).max(0.0);
        let (x, y) = (along.abs() - length + corner, across.abs() - width + corner);
        let outside = libm::hypot(x.max(0.0), y.max(0.0));
        x.max(y).min(0.0) + outside - corner + hole.diameter.to_m() / 2.0
    }

    /// How far the middle of a recess lies off the part, m; not above nothing where half of it or more lies on the part each way.
    #[must_use]
    pub fn misses(&self, housing: &Housing) -> f64 {
        let off = |place: Length, side: Length| (place - side).max(-place).to_m();
        off(housing.along, self.size[0]).max(off(housing.across, self.size[1]))
    }
}
