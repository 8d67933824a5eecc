//! The screw as a line of force: its length, what it pushes on, and how stiff it is.
//!
//! Plain `f64` in SI. The drive force F is positive when the load wants to run the table down; the force along the
//! screw is sigma F, compression positive, where sigma is +1 if the screw grows when the table rises and -1 if it
//! shrinks. Travel s counts positive when raising: ds = sigma dl.

use super::fault::Fault;
use super::linkage::{Frame, Pose};
use super::mechanism::{Anchor, Attachment, Drive, DriveKind, DriveStiffness};
use super::names::{ArmId, Body};
use super::statics::Forces;
use glam::DVec2;

/// One end of a screw that stands free between two bodies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct End {
    /// The body it is pinned to.
    pub body: Body,
    /// Place in the body's own axes, m.
    pub local: DVec2,
}

impl Attachment {
    /// The end in the axes of its body, for arms of length `length`.
    fn end(&self, length: f64) -> End {
        match *self {
            Self::Base { x, y } => End { body: Body::Base, local: DVec2::new(x, y) },
            Self::Top { x, y } => End { body: Body::Top, local: DVec2::new(x, y) },
            Self::Arm { arm, f, off } => End { body: Body::Arm(arm), local: DVec2::new(f * length, off) },
        }
    }
}

/// What the screw acts between.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Action {
    /// The base wheel axle and the ground.
    BaseAxle,
    /// The top wheel axle and the top frame.
    TopAxle,
    /// Two pins, P then Q.
    Pins([End; 2]),
}

impl Drive {
    /// What the screw acts between, for arms of length `length`.
    pub(super) fn action(&self, length: f64) -> Action {
        match &self.kind {
            DriveKind::BaseCarriage { .. } => Action::BaseAxle,
            DriveKind::TopCarriage { .. } => Action::TopAxle,
            DriveKind::MidPivot { level } => {
                let upper = DVec2::new(length, 0.0);
                let end = |arm| End { body: Body::Arm(arm), local: upper };
                Action::Pins([end(ArmId::b(*level)), end(ArmId::a(*level))])
            }
            DriveKind::Strut { p, q } => Action::Pins([p.end(length), q.end(length)]),
        }
    }

    /// The end of the rail and place of the thrust bearing of a screw along a rail.
    pub(super) fn anchor(&self) -> (Anchor, f64) {
        match self.kind {
            DriveKind::BaseCarriage { anchor, x_anchor } | DriveKind::TopCarriage { anchor, x_anchor } => {
                (anchor, x_anchor)
            }
            _ => (Anchor::FixedEnd, 0.0),
        }
    }
}

impl DriveStiffness {
    /// Flexibility of a screw of length `length`, m/N; zero when nothing yields.
    pub fn flexibility(&self, length: f64) -> f64 {
        let shaft = match (self.e, self.area) {
            (Some(e), Some(area)) => length / (e * area),
            _ => 0.0,
        };
        shaft + self.k_end.map_or(0.0, f64::recip)
    }
}

/// The screw at one pose.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScrewLine {
    /// What it acts between.
    pub action: Action,
    /// Its length, m.
    pub length: f64,
    /// +1 when it grows as the table rises, -1 when it shrinks.
    pub sigma: f64,
    /// Rate of the travel by theta, positive when raising, m/rad.
    pub travel_rate: f64,
    /// Unit vector from P to Q, or along the rail.
    pub along: DVec2,
    /// Rate of its own angle by theta.
    pub spin: f64,
}

impl ScrewLine {
    /// The screw of `drive` at `pose`.
    ///
    /// # Errors
    /// Where it has no length, or stands at a dead point and moves nothing.
    pub(super) fn new(drive: &Drive, action: Action, pose: &Pose) -> Result<Self, Fault> {
        let (length, rate, along, spin) = match action {
            Action::BaseAxle => rail(drive.anchor(), pose.carriage_x, pose.carriage_rate, Frame::GROUND),
            Action::TopAxle => rail(drive.anchor(), pose.top_axle.x, pose.top_axle_rate, pose.top),
            Action::Pins([p, q]) => {
                let (at_p, at_q) = (pose.frame(p.body), pose.frame(q.body));
                let span = at_q.point(q.local) - at_p.point(p.local);
                let span_rate = at_q.rate(q.local) - at_p.rate(p.local);
                let length = span.length();
                let along = span / length;
                (length, span_rate.dot(along), along, along.perp_dot(span_rate) / length)
            }
        };
        if !(length > 0.0 && length.is_finite()) {
            return Err(Fault::new("drive", "the screw has no length left at this height"));
        }
        let sigma = if rate * pose.deck_rate() >= 0.0 { 1.0 } else { -1.0 };
        Ok(Self { action, length, sigma, travel_rate: sigma * rate, along, spin })
    }

    /// Rise of the deck a unit of travel, dH/ds.
    pub fn advantage(&self, pose: &Pose) -> f64 {
        pose.deck_rate() / self.travel_rate
    }

    /// Force of a free screw on the body at its end P (0) or Q (1), N.
    pub fn end_force(&self, end: usize, forces: &Forces) -> DVec2 {
        let at_q = self.sigma * forces.drive * self.along + forces.rubbing.across * self.across();
        if end == 0 { -at_q } else { at_q }
    }

    /// Unit vector from one pin to the other, turned by +90 degrees.
    pub fn across(&self) -> DVec2 {
        self.along.perp()
    }
}

/// Length and rate of a screw along a rail, the rail's direction and its turning.
fn rail((anchor, x_anchor): (Anchor, f64), x: f64, rate: f64, frame: Frame) -> (f64, f64, DVec2, f64) {
    let sign = if anchor == Anchor::FixedEnd { 1.0 } else { -1.0 };
    (sign * (x - x_anchor), sign * rate, frame.along, frame.spin)
}
