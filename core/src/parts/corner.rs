//! The outline of a flat piece: corners, and how the way from one to the next bends.
use super::part::Part;
use crate::quantity::Length;

/// A corner of an outline, and how the way to the next one bends: the tangent of a quarter of the arc's angle, positive to the left, zero
/// for a straight line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// Along, mm.
    pub x: f64,
    /// Up, mm.
    pub y: f64,
    /// Bend of the way to the next corner.
    pub bulge: f64,
}

/// A quarter of a circle as a bulge: tan(22.5 degrees).
const QUARTER: f64 = 0.414_213_562_373_095_03;

impl Corner {
    /// Radius of the arc to the next corner, mm: chord (1 + b^2) / 4b; none where the way is straight.
    #[must_use]
    pub fn radius(&self, next: &Self) -> Option<f64> {
        let bend = self.bulge.abs();
        let chord = libm::hypot(next.x - self.x, next.y - self.y);
        (bend > 0.0).then(|| chord * (1.0 + bend * bend) / (4.0 * bend))
    }

    /// Half-way to the next corner, mm: from the middle of the chord by b / 2 times its length, to the right where the way bends to the left.
    #[must_use]
    pub const fn half_way(&self, next: &Self) -> [f64; 2] {
        let (along, up, bend) = (next.x - self.x, next.y - self.y, self.bulge / 2.0);
        [f64::midpoint(self.x, next.x) + bend * up, f64::midpoint(self.y, next.y) - bend * along]
    }
}

impl Part {
    /// The outline of its face from the datum corner, counter-clockwise, x along its length.
    #[must_use]
    pub fn outline(&self) -> Vec<Corner> {
        rounded([0.0; 2], [self.size[0], self.size[1]].map(Length::to_mm), self.corners.map(Length::to_mm))
    }
}

/// A rectangle whose corners at its two ends are rounded to radii, mm.
#[must_use]
pub fn rounded([x, y]: [f64; 2], [length, width]: [f64; 2], radii: [f64; 2]) -> Vec<Corner> {
    let most = (length.min(width) / 2.0).max(0.0);
    let [near, far] = radii.map(|radius| radius.clamp(0.0, most));
    let (right, top) = (x + length, y + width);
    let mut list: Vec<Corner> = Vec::new();
    let mut corner = |radius: f64, from: [f64; 2], to: [f64; 2]| {
        let bulge = if radius > 0.0 { QUARTER } else { 0.0 };
        list.push(Corner { x: from[0], y: from[1], bulge });
        if radius > 0.0 {
            list.push(Corner { x: to[0], y: to[1], bulge: 0.0 });
        }
    };
    corner(far, [right - far, y], [right, y + far]);
    corner(far, [right, top - far], [right - far, top]);
    corner(near, [x + near, top], [x, top - near]);
    corner(near, [x, y + near], [x + near, y]);
    // Where two quarters meet there is no straight way between them.
    let mut tidy: Vec<Corner> = Vec::with_capacity(list.len());
    for corner in list {
        if let Some(last) = tidy.last_mut()
            && same(last, &corner)
        {
            last.bulge = corner.bulge;
            continue;
        }
        tidy.push(corner);
    }
    if let (Some(first), Some(last)) = (tidy.first().copied(), tidy.last())
        && tidy.len() > 1
        && same(&first, last)
    {
        tidy.pop();
    }
    tidy
}

/// Corners nearer than a stored step are one.
fn same(one: &Corner, other: &Corner) -> bool {
    const STEP: f64 = 1.0 / 1600.0;
    (one.x - other.x).abs() < STEP && (one.y - other.y).abs() < STEP
}
