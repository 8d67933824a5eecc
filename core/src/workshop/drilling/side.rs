//! One side of the table with holes that are not quite where they should be.
//!
//! Plain `f64` in m and rad. The base pivot is the origin; the carriage stands still, as the screw holds it. An arm is three points: lower
//! end, centre, upper end; from its three holes follow two distances and how far the centre lies off the line of the ends.
use super::dual::{Dual, Point};
use crate::mechanics::{ArmId, Fault, Mechanism, Pose};

/// The errors of a hole: along the arm towards its upper end, and across it to the left of that direction.
const DIRECTIONS: usize = 2;

/// Holes of an arm: lower end, centre, upper end.
const HOLES: usize = 3;

/// Errors of an arm.
pub(super) const ERRORS: usize = DIRECTIONS * HOLES;

/// Where the deck's two supports on this side come to stand when one hole of one arm is off by a unit, by the error of that hole:
/// rates, m/m and rad/m.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Rates {
    /// Height of the deck's pivot.
    pub pivot: f64,
    /// Height of the deck's wheel axle.
    pub axle: f64,
    /// Angle of the deck on this side.
    pub tilt: f64,
}

/// An arm's two distances and its centre's place off the line, with their rates.
struct Arm {
    lower: Point,
    upper: Point,
}

impl Arm {
    /// With one of its errors moving, or none: the vectors from its centre to its ends, in its own axes.
    fn new(length: f64, centre: f64, moving: Option<usize>) -> Self {
        let error = |at: usize| Dual::new(0.0, if moving == Some(at) { 1.0 } else { 0.0 });
        let hole = |at: usize, x: f64| Point {
            x: Dual::still(x) + error(DIRECTIONS * at),
            y: error(DIRECTIONS * at + 1),
        };
        let [low, mid, high] = [hole(0, 0.0), hole(1, centre * length), hole(2, length)];
        Self { lower: low.minus(mid), upper: high.minus(mid) }
    }

    /// The upper end, with lower end and centre in place.
    fn reach(&self, low: Point, centre: Point) -> Point {
        // The arm's own axes turned and so placed that its lower end and its centre meet theirs.
        let own = self.lower;
        let real = low.minus(centre);
        let square = own.square();
        let cosine = own.dot(real) / square;
        let sine = own.perp().dot(real) / square;
        centre.plus(self.upper.times(cosine)).plus(self.upper.perp().times(sine))
    }
}

/// The rates of every error of every arm of a side in a pose, in the order A1, B1, A2, ...; six an arm: lower hole along and across, centre,
/// upper.
pub(super) fn rates(mechanism: &Mechanism, pose: &Pose) -> Result<Vec<[Rates; ERRORS]>, Fault> {
    let arms = 2 * mechanism.n;
    let mut list = vec![[Rates::default(); ERRORS]; arms];
    for (arm, errors) in list.iter_mut().enumerate() {
        for (error, rates) in errors.iter_mut().enumerate() {
            *rates = rate(mechanism, pose, (arm, error))?;
        }
    }
    Ok(list)
}

fn rate(mechanism: &Mechanism, pose: &Pose, moving: (usize, usize)) -> Result<Rates, Fault> {
    let mut left = Point::still(0.0, 0.0);
    let mut right = Point::still(pose.carriage_x, mechanism.db);
    for stage in 1..=mechanism.n {
        let centre_at = mechanism.c.of(stage).unwrap_or(0.5);
        let arm =
            |id: ArmId| Arm::new(mechanism.length, centre_at, (moving.0 == id.index()).then_some(moving.1));
        let (a, b) = (arm(ArmId::a(stage)), arm(ArmId::b(stage)));
        let centre = meet(left, a.lower.square(), right, b.lower.square())?;
        (left, right) = (b.reach(right, centre), a.reach(left, centre));
    }
    let line = right.minus(left);
    let lean = (Dual::still(mechanism.dt) / line.square().sqrt()).asin();
    let tilt = line.y.atan2(line.x) - lean;
    let rates = Rates { pivot: left.y.rate, axle: right.y.rate, tilt: tilt.rate };
    if rates.pivot.is_finite() && rates.axle.is_finite() && rates.tilt.is_finite() {
        Ok(rates)
    } else {
        Err(Fault::new("height", "the arms lie too flat to say what a hole that is off does"))
    }
}

/// The upper one of the two points at given squared distances from two others.
fn meet(left: Point, from_left: Dual, right: Point, from_right: Dual) -> Result<Point, Fault> {
    let line = right.minus(left);
    let square = line.square();
    let along = (from_left - from_right + square) / (Dual::still(2.0) * square);
    let up = from_left / square - along * along;
    if up.value <= 0.0 {
        return Err(Fault::new("height", "the arms do not meet at this height"));
    }
    Ok(left.plus(line.times(along)).plus(line.perp().times(up.sqrt())))
}
