//! Where everything is: the pose of the linkage from one angle, and the angle from a height.
//!
//! Plain `f64` in SI: m, rad. x to the right from the base pivot, y up, angles counter-clockwise. The one degree of
//! freedom is theta, the angle of stage 1's arms to the line from base pivot to base axle; every rate is a
//! derivative by theta.
//!
//! The stages share the line between base pivot and base axle as their ground: the whole linkage turns rigidly by
//! alpha when the axle stands higher or lower than the pivot. Stage i has cos(theta_i) = r_i cos(theta), so that
//! sin(theta_i)^2 = (1 - r_i^2) + (r_i sin(theta))^2 keeps its digits when the arms lie nearly flat.

use super::fault::Fault;
use super::mechanism::Mechanism;
use super::names::{ArmId, Body, JointId};
use glam::DVec2;
use std::f64::consts::FRAC_PI_2;

/// Steps of a root search; bisection alone needs about 60 for all digits of an angle.
const SEARCH_STEPS: usize = 200;

/// A body's own axes and how they move.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// Origin: an arm's lower end pivot, the top pivot of the top frame, the base pivot of the base, m.
    pub origin: DVec2,
    /// Unit vector of the first axis: an arm's lower to upper end, a frame's rail.
    pub along: DVec2,
    /// Rate of the origin by theta, m/rad.
    pub origin_rate: DVec2,
    /// Rate of the angle by theta.
    pub spin: f64,
}

impl Frame {
    /// The base frame, which stands still.
    pub const GROUND: Self =
        Self { origin: DVec2::ZERO, along: DVec2::X, origin_rate: DVec2::ZERO, spin: 0.0 };

    /// Unit vector of the second axis, the first turned by +90 degrees.
    pub fn across(&self) -> DVec2 {
        self.along.perp()
    }

    /// A vector in the body's own axes, given in the plane's.
    pub fn local(&self, vector: DVec2) -> DVec2 {
        DVec2::new(vector.dot(self.along), vector.dot(self.across()))
    }

    /// A vector in the plane's axes, given in the body's own.
    pub fn global(&self, local: DVec2) -> DVec2 {
        local.x * self.along + local.y * self.across()
    }

    /// The place of a point of the body, m.
    pub fn point(&self, local: DVec2) -> DVec2 {
        self.origin + self.global(local)
    }

    /// The rate by theta of a point of the body, m/rad.
    pub fn rate(&self, local: DVec2) -> DVec2 {
        self.origin_rate + self.spin * self.global(local).perp()
    }
}

/// The place of every part at one angle.
#[derive(Clone, Debug, PartialEq)]
pub struct Pose {
    /// Number of stages.
    pub n: usize,
    /// Arm length between its end pivots, m.
    pub arm_length: f64,
    /// Centre-pin fraction of every stage.
    pub centre: Vec<f64>,
    /// Angle of every stage's arms to its own ground line, rad.
    pub theta: Vec<f64>,
    /// Width between the end pivots of every level, base first, m.
    pub width: Vec<f64>,
    /// Angle by which the whole linkage is turned, rad.
    pub alpha: f64,
    /// Tilt of the top frame, rad.
    pub phi: f64,
    /// The arms in the order A1, B1, A2, B2, ...
    pub arms: Vec<Frame>,
    /// The top frame.
    pub top: Frame,
    /// Place of the base wheel axle along the base, m.
    pub carriage_x: f64,
    /// Its rate by theta, m/rad.
    pub carriage_rate: f64,
    /// Place of the top wheel axle in the top frame, m.
    pub top_axle: DVec2,
    /// Its rate by theta along the top rail, m/rad.
    pub top_axle_rate: f64,
    /// Height of the deck over the floor, m: base height, top pivot, deck.
    pub deck_height: f64,
}

impl Pose {
    /// The axes of a body.
    pub fn frame(&self, body: Body) -> Frame {
        match body {
            Body::Base => Frame::GROUND,
            Body::Arm(arm) => self.arm(arm),
            Body::Top => self.top,
        }
    }

    /// The axes of an arm, its origin at the lower end; an arm beyond the last stage is the last one's.
    pub fn arm(&self, arm: ArmId) -> Frame {
        let index = arm.index().min(self.arms.len().saturating_sub(1));
        self.arms.get(index).copied().unwrap_or(Frame::GROUND)
    }

    /// Place of a joint, m.
    pub fn joint(&self, joint: JointId) -> DVec2 {
        let (arm, f) = self.seat(joint);
        self.arm(arm).point(DVec2::new(f * self.arm_length, 0.0))
    }

    /// Rate of a joint by theta, m/rad.
    pub fn joint_rate(&self, joint: JointId) -> DVec2 {
        let (arm, f) = self.seat(joint);
        self.arm(arm).rate(DVec2::new(f * self.arm_length, 0.0))
    }

    /// An arm that carries the joint, and where.
    fn seat(&self, joint: JointId) -> (ArmId, f64) {
        match joint {
            JointId::Bl => (ArmId::a(1), 0.0),
            JointId::Br => (ArmId::b(1), 0.0),
            JointId::C(stage) => (ArmId::a(stage), self.centre_of(stage)),
            JointId::Jl(level) => (ArmId::b(level), 1.0),
            JointId::Jr(level) => (ArmId::a(level), 1.0),
            JointId::Tl => (ArmId::b(self.n), 1.0),
            JointId::Tr => (ArmId::a(self.n), 1.0),
        }
    }

    /// The centre-pin fraction of a stage counted from 1.
    pub fn centre_of(&self, stage: usize) -> f64 {
        self.centre.get(stage.saturating_sub(1)).copied().unwrap_or(0.5)
    }

    /// Rate of the deck height by theta, m/rad.
    pub fn deck_rate(&self) -> f64 {
        self.top.origin_rate.y
    }

    /// Place of the base wheel axle, m.
    pub fn base_axle(&self) -> DVec2 {
        self.joint(JointId::Br)
    }
}

/// The linkage's fixed proportions.
#[derive(Clone, Debug, PartialEq)]
pub struct Linkage {
    n: usize,
    length: f64,
    centre: Vec<f64>,
    /// r_i: cos(theta_i) / cos(theta).
    ratio: Vec<f64>,
    /// w_j / w_1 of every level, base first.
    width_ratio: Vec<f64>,
    db: f64,
    dt: f64,
    h_base: f64,
    h_deck: f64,
    /// All centre pins are in the middle: every stage keeps the same angle and width.
    even: bool,
    /// The least angle for which every stage closes.
    flat: f64,
    /// The angle of the greatest height.
    peak: f64,
}

impl Linkage {
    /// The proportions of a mechanism that has passed its check.
    pub(super) fn new(mechanism: &Mechanism) -> Result<Self, Fault> {
        let n = mechanism.n;
        let centre: Vec<f64> = (1..=n).map(|stage| mechanism.c.of(stage).unwrap_or(0.5)).collect();
        let mut width_ratio = vec![1.0];
        let mut ratio = Vec::with_capacity(n);
        let mut width = 1.0;
        for &c in &centre {
            ratio.push(width * centre[0] / c);
            width *= (1.0 - c) / c;
            width_ratio.push(width);
        }
        let widest = ratio.iter().fold(1.0, |most: f64, r| most.max(*r));
        let even = centre.iter().all(|c| (c - 0.5).abs() < f64::EPSILON);
        let mut linkage = Self {
            n,
            length: mechanism.length,
            ratio,
            width_ratio,
            db: mechanism.db,
            dt: mechanism.dt,
            h_base: mechanism.h_base,
            h_deck: mechanism.h_deck,
            even,
            flat: if even { 0.0 } else { libm::acos(1.0 / widest) },
            peak: FRAC_PI_2,
            centre,
        };
        linkage.peak = linkage.find_peak()?;
        Ok(linkage)
    }

    /// The least angle for which every stage closes, rad; zero when the centre pins are in the middle.
    pub fn flat(&self) -> f64 {
        self.flat
    }

    /// The angle of the greatest height, rad; a right angle without pin-line offsets.
    pub fn peak(&self) -> f64 {
        self.peak
    }

    /// The angle at which the base wheel axle stands at `x`, rad; none where the arms do not reach that far.
    pub fn theta_at_carriage(&self, x: f64) -> Option<f64> {
        let cosine = libm::hypot(x, self.db) / self.widest();
        (cosine <= 1.0).then(|| libm::acos(cosine))
    }

    /// Width between base pivot and base axle with the arms flat.
    fn widest(&self) -> f64 {
        2.0 * self.centre[0] * self.length
    }

    /// The pose at an angle.
    ///
    /// # Errors
    /// Where a stage does not close, or a wheel's offset is more than the width between the pivots.
    pub fn pose(&self, theta: f64) -> Result<Pose, Fault> {
        if !(0.0..=FRAC_PI_2).contains(&theta) {
            return Err(Fault::new("angle", "the arms' angle must lie between flat and upright"));
        }
        let (sine, cosine) = (libm::sin(theta), libm::cos(theta));
        let width_1 = self.widest() * cosine;
        let width_1_rate = -self.widest() * sine;
        let tilt = Self::offset(self.db, width_1, "base")?;
        let turn = DVec2::new(tilt.cosine, tilt.sine);
        let alpha_rate = -tilt.tangent() * width_1_rate / width_1;

        let mut arms = Vec::with_capacity(2 * self.n);
        let mut thetas = Vec::with_capacity(self.n);
        // Left end of the present level and its rate, along and square to the line of the base pins.
        let (mut left, mut left_rate) = (DVec2::ZERO, DVec2::ZERO);
        for (level, &r) in self.ratio.iter().enumerate() {
            let (width, width_rate) =
                (width_1 * self.width_ratio[level], width_1_rate * self.width_ratio[level]);
            let sine_i = self.sine(r, sine)?;
            let theta_rate = if sine_i > 0.0 { r * sine / sine_i } else { 1.0 };
            let direction = DVec2::new(r * cosine, sine_i);
            thetas.push(if self.even { theta } else { libm::atan2(direction.y, direction.x) });
            let mut place = |at: DVec2, rate: DVec2, along: DVec2, spin: f64| {
                let origin = turn.rotate(at);
                arms.push(Frame {
                    origin,
                    along: turn.rotate(along),
                    origin_rate: turn.rotate(rate) + alpha_rate * origin.perp(),
                    spin: spin + alpha_rate,
                });
            };
            place(left, left_rate, direction, theta_rate);
            let across = DVec2::new(-direction.x, direction.y);
            place(
                left + DVec2::new(width, 0.0),
                left_rate + DVec2::new(width_rate, 0.0),
                across,
                -theta_rate,
            );
            // The upper end of arm B is the left end of the next level.
            left += DVec2::new(width, 0.0) + self.length * across;
            left_rate += DVec2::new(width_rate, 0.0) - theta_rate * self.length * across.perp();
            if self.even {
                (left.x, left_rate.x) = (0.0, 0.0);
            }
        }

        let width_n = width_1 * self.width_ratio[self.n];
        let lean = Self::offset(self.dt, width_n, "top")?;
        let width_n_rate = width_1_rate * self.width_ratio[self.n];
        let along = DVec2::new(lean.cosine, -lean.sine).rotate(turn);
        let origin = turn.rotate(left);
        let top = Frame {
            origin,
            along,
            origin_rate: turn.rotate(left_rate) + alpha_rate * origin.perp(),
            spin: alpha_rate + lean.tangent() * width_n_rate / width_n,
        };
        Ok(Pose {
            n: self.n,
            arm_length: self.length,
            centre: self.centre.clone(),
            theta: thetas,
            width: self.width_ratio.iter().map(|ratio| ratio * width_1).collect(),
            alpha: libm::atan2(tilt.sine, tilt.cosine),
            phi: libm::atan2(along.y, along.x),
            arms,
            top,
            carriage_x: width_1 * tilt.cosine,
            carriage_rate: width_1_rate / tilt.cosine,
            top_axle: DVec2::new(width_n * lean.cosine, self.dt),
            top_axle_rate: width_n_rate / lean.cosine,
            deck_height: self.h_base + origin.y + self.h_deck,
        })
    }

    /// The pose with the deck at `height` over the floor, m, on the rising branch.
    ///
    /// # Errors
    /// Where the deck cannot get there with any angle of the arms.
    pub fn pose_at_height(&self, height: f64) -> Result<Pose, Fault> {
        self.pose(self.theta_at_height(height)?)
    }

    /// The least angle with the deck at `height` over the floor, rad.
    ///
    /// # Errors
    /// Where the deck cannot get there with any angle of the arms.
    pub fn theta_at_height(&self, height: f64) -> Result<f64, Fault> {
        let lift = height - self.h_base - self.h_deck;
        let out_of_reach = || Fault::new("height", format!("the deck cannot stand at {height} m"));
        if !lift.is_finite() {
            return Err(out_of_reach());
        }
        if self.even && self.db.abs() <= 0.0 {
            let sine = lift / (self.length * self.n as f64);
            return if (0.0..=1.0).contains(&sine) { Ok(libm::asin(sine)) } else { Err(out_of_reach()) };
        }
        let (low, high) = (self.flat, self.peak);
        let slack = 4.0 * f64::EPSILON * self.length * self.n as f64;
        if self.lift(low)?.0 > lift + slack || self.lift(high)?.0 < lift - slack {
            return Err(out_of_reach());
        }
        root(low, high, |theta| self.lift(theta).map(|(value, rate)| (value - lift, rate)))
    }

    /// Height of the top pivot above the base pivot and its rate by theta, m and m/rad.
    fn lift(&self, theta: f64) -> Result<(f64, f64), Fault> {
        let (sine, cosine) = (libm::sin(theta), libm::cos(theta));
        let width = self.widest() * cosine;
        let tilt = Self::offset(self.db, width, "base")?;
        let (mut rise, mut rise_rate) = (0.0, 0.0);
        for &r in &self.ratio {
            let sine_i = self.sine(r, sine)?;
            rise += self.length * sine_i;
            rise_rate += self.length * r * cosine * if sine_i > 0.0 { r * sine / sine_i } else { 1.0 };
        }
        // The drift of the top pivot along the base line is in proportion to the width, so that it adds the same
        // height at every angle.
        let drift = (1.0 - self.width_ratio[self.n]) / 2.0 * self.db;
        let alpha_rate = tilt.tangent() * self.widest() * sine / width;
        Ok((drift + rise * tilt.cosine, rise_rate * tilt.cosine - rise * tilt.sine * alpha_rate))
    }

    /// Sine of a stage's angle, given that of stage 1.
    fn sine(&self, r: f64, sine: f64) -> Result<f64, Fault> {
        let square = (1.0 - r) * (1.0 + r) + (r * sine) * (r * sine);
        if square >= 0.0 {
            Ok(square.sqrt())
        } else if square > -8.0 * f64::EPSILON {
            Ok(0.0)
        } else {
            Err(Fault::new("angle", "a stage lies flat before this angle: its arms do not close"))
        }
    }

    /// The angle by which a line of pins turns when one end stands `offset` higher over the width `width`.
    fn offset(offset: f64, width: f64, place: &str) -> Result<Turn, Fault> {
        let sine = offset / width;
        let square = (1.0 - sine) * (1.0 + sine);
        if offset.abs() <= 0.0 {
            Ok(Turn { sine: 0.0, cosine: 1.0 })
        } else if square > 0.0 {
            Ok(Turn { sine, cosine: square.sqrt() })
        } else {
            Err(Fault::new(
                "angle",
                format!("the {place} axle stands farther above its pivot than the arms are wide"),
            ))
        }
    }

    /// The angle of the greatest height: with a base offset the linkage falls over before it stands upright.
    fn find_peak(&self) -> Result<f64, Fault> {
        let narrow = self.db.abs().max(self.dt.abs() / self.width_ratio[self.n]);
        let cosine = narrow / self.widest();
        let high = libm::acos(cosine.min(1.0));
        if high <= self.flat {
            return Err(Fault::new(
                "db, dt",
                "a wheel axle stands farther from its pivot than the arms reach",
            ));
        }
        let (mut low, mut high) = (self.flat, high);
        if self.db.abs() <= 0.0 {
            return Ok(high);
        }
        for _ in 0..SEARCH_STEPS {
            let middle = 0.5 * (low + high);
            match self.lift(middle) {
                Ok((_, rate)) if rate > 0.0 => low = middle,
                _ => high = middle,
            }
        }
        Ok(low)
    }
}

/// Sine and cosine of a small turn.
struct Turn {
    sine: f64,
    cosine: f64,
}

impl Turn {
    fn tangent(&self) -> f64 {
        self.sine / self.cosine
    }
}

/// The root of a rising function between two ends, by Newton's steps where they stay inside and halving where not.
fn root(
    mut low: f64,
    mut high: f64,
    function: impl Fn(f64) -> Result<(f64, f64), Fault>,
) -> Result<f64, Fault> {
    let mut at = 0.5 * (low + high);
    for _ in 0..SEARCH_STEPS {
        let (value, rate) = function(at)?;
        if value > 0.0 {
            high = at;
        } else {
            low = at;
        }
        let newton = at - value / rate;
        let next = if newton > low && newton < high { newton } else { 0.5 * (low + high) };
        if (next - at).abs() <= f64::EPSILON * high || high - low <= f64::EPSILON * high {
            return Ok(next);
        }
        at = next;
    }
    Ok(at)
}
