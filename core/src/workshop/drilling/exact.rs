//! How exact the holes must be: what an error of drilling does to the deck, and which error goes with what the builder accepts.
//!
//! Plain `f64` in m and rad. Every hole is off by an error along the arm and one across it, all of one size and independent of each other;
//! what the deck does follows from the linkage with its carriage held still, to first order. Left out: holes of the frames, and bores that
//! are not round.
use super::side::{ERRORS, Rates, rates};
use crate::design::Design;
use crate::mechanics::{Detail, Fault, Mechanism, Pose, Solver};

/// How the holes of the arms are drilled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// Every arm by itself.
    Alone,
    /// The left and the right arm of a name together, so that both have the same errors.
    Pairs,
    /// All arms about a pinned centre with one stop, turned end for end: what is off is off alike in every half arm.
    Turned,
}

impl Method {
    /// All three, the least exact first.
    pub const ALL: [Self; 3] = [Self::Alone, Self::Pairs, Self::Turned];

    /// Its name.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Alone => "each arm by itself",
            Self::Pairs => "left and right arm together",
            Self::Turned => "about a pinned centre, turned end for end",
        }
    }
}

/// The effect of errors of one size, as a multiple of that size.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Effect {
    /// All errors at their limit and in the worst direction.
    pub worst: f64,
    /// The root of the sum of squares: as likely as an error of the size.
    pub rss: f64,
}

impl Effect {
    fn of(terms: impl Iterator<Item = f64>) -> Self {
        let (sum, squares) =
            terms.fold((0.0, 0.0), |(sum, squares), term| (sum + term.abs(), squares + term * term));
        Self { worst: sum, rss: squares.sqrt() }
    }

    /// The error that brings an effect about, in the same sense: the largest in the worst case, and that of the same likelihood;
    /// infinite where errors have no effect.
    #[must_use]
    pub fn error_for(self, effect: f64) -> Self {
        let over = |by: f64| if by > 0.0 { effect.abs() / by } else { f64::INFINITY };
        Self { worst: over(self.worst), rss: over(self.rss) }
    }

    /// The effect of errors of a size.
    #[must_use]
    pub fn times(self, error: f64) -> Self {
        Self { worst: self.worst * error, rss: self.rss * error }
    }
}

/// What a unit of drilling error does at one deck height, over what exact holes would do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exactness {
    /// Deck height, m.
    pub height: f64,
    /// Tilt of the deck along the table, rad/m.
    pub tilt: Effect,
    /// Lean of the deck across the table, rad/m.
    pub lean: Effect,
    /// Twist: how much more one side of the deck tilts than the other, rad/m.
    pub twist: Effect,
    /// Mismatch: how far the fourth support stands off the plane of the other three, m/m.
    pub mismatch: Effect,
    /// Clearance each pivot must have, on its diameter, so that arms joined by their boards turn freely, m/m.
    pub clearance: Effect,
    /// Free travel of the deck at the load that this clearance adds, m/m.
    pub play: Effect,
}

/// What a unit of drilling error does at a deck height, m.
///
/// # Errors
/// Where the deck cannot stand there, or the arms lie too flat.
pub fn exactness(design: &Design, solver: &Solver, method: Method, height: f64) -> Result<Exactness, Fault> {
    let pose = solver.pose_at_height(height)?;
    let mechanism = solver.mechanism();
    let side = rates(mechanism, &pose)?;
    let spread = design.frames.spread.to_m();
    // One side's share in what the two do together: half of a mean, plus or minus one in a difference.
    let sides = |terms: &[Rates], share: f64, of: &dyn Fn(&Rates) -> f64| -> Effect {
        let one: Vec<f64> = terms.iter().map(|rates| share * of(rates)).collect();
        Effect::of(one.iter().chain(&one).copied())
    };
    let none = Effect::default();
    let single: Vec<Rates> = side.iter().flatten().copied().collect();
    let tilt = |rates: &Rates| rates.tilt;
    let lean = |rates: &Rates| (rates.pivot + rates.axle) / 2.0 / spread;
    let off_plane = |rates: &Rates| rates.axle - rates.pivot;
    let clearance = match method {
        Method::Alone => bores(design),
        Method::Pairs | Method::Turned => none,
    };
    let play = lash_rate(solver, &pose)?;
    let exact = match method {
        Method::Alone => Exactness {
            height,
            tilt: sides(&single, 0.5, &tilt),
            lean: sides(&single, 1.0, &lean),
            twist: sides(&single, 1.0, &tilt),
            mismatch: sides(&single, 1.0, &off_plane),
            clearance,
            play: clearance.times(play),
        },
        Method::Pairs => Exactness {
            height,
            tilt: Effect::of(single.iter().map(tilt)),
            lean: none,
            twist: none,
            mismatch: none,
            clearance,
            play: none,
        },
        Method::Turned => Exactness {
            height,
            // One stop sets every half arm, and one fence the line of all holes: only that stop's error is left.
            tilt: Effect::of(core::iter::once(turned(&side).tilt)),
            lean: none,
            twist: none,
            mismatch: none,
            clearance,
            play: none,
        },
    };
    Ok(exact)
}

/// All half arms longer by a unit: the lower hole one unit lower, the upper one higher, in every arm of the side.
fn turned(side: &[[Rates; ERRORS]]) -> Rates {
    side.iter().fold(Rates::default(), |sum, arm| {
        let (low, high) = (arm[0], arm[4]);
        Rates {
            pivot: sum.pivot + high.pivot - low.pivot,
            axle: sum.axle + high.axle - low.axle,
            tilt: sum.tilt + high.tilt - low.tilt,
        }
    })
}

/// Where boards join the left and the right arm, the line through their end bores is skew to that through their centre bores by four errors: of
/// end and centre, on both sides. Two such frames meet in a pivot, which makes eight; each of its two bores gives by its clearance, one way on
/// the left and the other way on the right, so that half of the sum must be there.
fn bores(design: &Design) -> Effect {
    const ERRORS_MET: usize = 8;
    if !(design.arms.boards_a || design.arms.boards_b) {
        return Effect::default();
    }
    Effect::of([0.5; ERRORS_MET].into_iter())
}

/// Free travel of the deck at the load for each unit of clearance in all pivots.
fn lash_rate(solver: &Solver, pose: &Pose) -> Result<f64, Fault> {
    let lash = |more: f64| {
        let mut wider: Mechanism = solver.mechanism().clone();
        wider.clearance.pins.default = Some(wider.clearance.pins.default.unwrap_or(0.0) + more);
        let solver = Solver::new(&wider).map_err(|faults| {
            faults.into_iter().next().unwrap_or_else(|| Fault::new("clearance", "cannot be widened"))
        })?;
        let state = solver.state(pose, Detail { deflection: true, ..Detail::FORCES })?;
        Ok(state.deflection.map_or(0.0, |deflection| deflection.drop.lash))
    };
    // Lash is linear in the clearances: any step gives its rate.
    Ok((lash(STEP)? - lash(0.0)?) / STEP)
}

/// A clearance of a millimetre more.
const STEP: f64 = 1e-3;

/// The largest of every effect over deck heights, m; the height is that of the largest tilt.
///
/// # Errors
/// Where the deck cannot stand at one of the heights.
pub fn largest(
    design: &Design,
    solver: &Solver,
    method: Method,
    heights: &[f64],
) -> Result<Option<Exactness>, Fault> {
    let mut most: Option<Exactness> = None;
    for &height in heights {
        let at = exactness(design, solver, method, height)?;
        most = Some(most.map_or(at, |most| Exactness {
            height: if at.tilt.rss > most.tilt.rss { at.height } else { most.height },
            tilt: greater(most.tilt, at.tilt),
            lean: greater(most.lean, at.lean),
            twist: greater(most.twist, at.twist),
            mismatch: greater(most.mismatch, at.mismatch),
            clearance: greater(most.clearance, at.clearance),
            play: greater(most.play, at.play),
        }));
    }
    Ok(most)
}

fn greater(one: Effect, other: Effect) -> Effect {
    Effect { worst: one.worst.max(other.worst), rss: one.rss.max(other.rss) }
}
