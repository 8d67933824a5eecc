//! How far the table can move, and what stops it.
//!
//! Plain `f64` in SI: m, rad.

use super::fault::Fault;
use super::linkage::Linkage;
use super::mechanism::Mechanism;

/// What stops the table at the bottom.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LowStop {
    /// The base carriage meets its outer stop.
    Carriage,
    /// Folded arms of neighbouring stages meet.
    Nesting,
    /// A stage lies flat: its arms can close no further.
    Flat,
}

/// What stops the table at the top.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HighStop {
    /// The base carriage meets its inner stop.
    Carriage,
    /// Nothing but the geometry: beyond this the deck sinks again or the arms stand upright.
    Geometry,
}

/// The range of motion.
#[derive(Clone, Debug, PartialEq)]
pub struct Limits {
    /// Angle at the outer stop of the base carriage, rad; zero without one or where the arms do not reach it.
    pub theta_carriage_min: f64,
    /// Angle below which arms of neighbouring stages meet, rad; none for a single stage, whose arms lie side by side.
    pub theta_nest_min: Option<f64>,
    /// Angle above which they would meet again, close to upright, rad. Not part of `theta_max`.
    pub theta_nest_max: Option<f64>,
    /// Angle below which a stage with its centre pin off the middle does not close, rad.
    pub theta_flat: f64,
    /// Height an end pivot must keep from base and deck so that the arm's square tip clears at every angle, m.
    pub pin_clearance_needed: f64,
    /// Least angle, rad.
    pub theta_min: f64,
    /// What sets it.
    pub low_stop: LowStop,
    /// Greatest angle, rad; none without an inner stop of the carriage.
    pub theta_max: Option<f64>,
    /// What sets the upper end.
    pub high_stop: HighStop,
    /// Deck height over the floor at the least angle, m.
    pub height_low: Option<f64>,
    /// Deck height over the floor at the greatest angle, m; without an inner stop the greatest the geometry allows.
    pub height_high: Option<f64>,
    /// Travel of the screw between the two ends, m; none without an inner stop.
    pub screw_travel: Option<f64>,
    /// Turns of the crank between the two ends; none without a screw.
    pub turns: Option<f64>,
}

impl Limits {
    /// The limits of a mechanism; `screw_length` gives the length of the screw at an angle.
    ///
    /// # Errors
    /// Where the stops leave nothing between them.
    pub(super) fn new(
        m: &Mechanism,
        linkage: &Linkage,
        screw_length: impl Fn(f64) -> Result<f64, Fault>,
    ) -> Result<Self, Fault> {
        let at_stop = |x: Option<f64>| x.and_then(|x| linkage.theta_at_carriage(x));
        let theta_carriage_min = at_stop(m.range.x_max).unwrap_or(0.0);
        let theta_nest_min = if m.n < 2 { None } else { Some(nesting(m)?) };
        let theta_flat = linkage.flat();
        let mut theta_min = theta_flat;
        let mut low_stop = LowStop::Flat;
        for (theta, stop) in
            [(Some(theta_carriage_min), LowStop::Carriage), (theta_nest_min, LowStop::Nesting)]
        {
            if let Some(theta) = theta.filter(|theta| *theta > theta_min) {
                (theta_min, low_stop) = (theta, stop);
            }
        }
        let theta_max = at_stop(m.range.x_min);
        let (top, high_stop) = match theta_max {
            Some(theta) if theta <= linkage.peak() => (theta, HighStop::Carriage),
            _ => (linkage.peak(), HighStop::Geometry),
        };
        if top <= theta_min {
            return Err(Fault::new(
                "range",
                "the stops leave no travel: the arms are at one before the other",
            ));
        }
        let height = |theta: f64| linkage.pose(theta).ok().map(|pose| pose.deck_height);
        let length = |theta: f64| screw_length(theta).ok();
        let screw_travel = theta_max.and_then(|theta| Some((length(theta)? - length(theta_min)?).abs()));
        Ok(Self {
            theta_carriage_min,
            theta_nest_min,
            theta_nest_max: theta_nest_min.map(|theta| std::f64::consts::FRAC_PI_2 - theta),
            theta_flat,
            pin_clearance_needed: libm::hypot(m.arm.end_margin, m.arm.w / 2.0),
            theta_min,
            low_stop,
            theta_max,
            high_stop,
            height_low: height(theta_min),
            height_high: height(top),
            screw_travel,
            turns: screw_travel.zip(m.screw.as_ref()).map(|(travel, screw)| travel / screw.lead),
        })
    }
}

/// The angle at which parallel arms of neighbouring stages touch: they lie in one plane, L sin(theta) cos(theta)
/// apart, and need their width and the gap.
fn nesting(m: &Mechanism) -> Result<f64, Fault> {
    let sine = 2.0 * (m.arm.w + m.range.gap) / m.length;
    if sine < 1.0 {
        Ok(libm::asin(sine) / 2.0)
    } else {
        Err(Fault::new(
            "arm.w",
            "arms of neighbouring stages meet at every angle: they are too wide for their length",
        ))
    }
}
