//! The side elevation of the table, to scale, as outlines in millimetres.
//!
//! Seen from the side with the fixed pivots at the left; x to the right from the lower ones, y up from the floor.
//! Painted from far to near: the screw stands in the middle of the table, arms B outside it, arms A outside them, beams,
//! deck rails and wheels nearest. Everything is filled, so that what is near covers what is far.

mod arm;
pub(super) mod base;
mod deck;
pub(super) mod drive;
mod freed;
pub(super) mod load;
mod named;
mod part;
mod pins;

pub use drive::ScrewEnd;
pub use load::{LoadShape, load_shape};
pub use named::Named;

use super::outline::{Outline, Segment, Stroke};
use crate::design::{Design, DriveKind};
use crate::mechanics::{ArmId, Frame, JointId, Pose};
use glam::DVec2;

/// A table at one height, to be drawn.
#[derive(Clone, Copy)]
pub struct Subject<'a> {
    /// Its sizes.
    pub design: &'a Design,
    /// Where everything is.
    pub pose: &'a Pose,
    /// The runs of the base and of the deck wheel axle over the whole lift, mm from the fixed pivots of their frames.
    pub runs: [[f64; 2]; 2],
    /// The size that is one pixel on paper, mm: details closer together than lines can be are drawn apart.
    pub pixel: f64,
}

impl Subject<'_> {
    /// A place given by the mechanics, m from the lower fixed pivot.
    pub(super) fn place(&self, metres: DVec2) -> DVec2 {
        metres * 1e3 + DVec2::new(0.0, self.design.lift.pin_line.to_mm())
    }

    pub(super) fn joint(&self, joint: JointId) -> DVec2 {
        self.place(self.pose.joint(joint))
    }

    /// Axes of the deck: origin on its surface above the upper fixed pivots.
    pub(super) fn deck(&self) -> Axes {
        let pivots = Axes { origin: self.place(self.pose.top.origin), along: self.pose.top.along };
        Axes { origin: pivots.point(0.0, self.design.lift.deck_stack.to_mm()), ..pivots }
    }

    /// Axes of a frame: its fixed pivot and its rail.
    fn axes(&self, frame: Frame) -> Axes {
        Axes { origin: self.place(frame.origin), along: frame.along }
    }

    pub(super) fn arm(&self, arm: ArmId) -> Axes {
        self.axes(self.pose.arm(arm))
    }

    /// Middle of the driven or rolling base axle.
    #[must_use]
    pub fn carriage(&self) -> DVec2 {
        self.joint(JointId::Br)
    }

    /// The deck's surface above the upper fixed pivots: what the deck's height is measured to.
    #[must_use]
    pub fn deck_point(&self) -> DVec2 {
        self.deck().origin
    }

    /// The deck's right edge, on its surface.
    #[must_use]
    pub fn deck_edge(&self) -> DVec2 {
        self.deck().point(self.design.frames.deck_left.to_mm() + self.design.frames.deck_length.to_mm(), 0.0)
    }

    /// The deck's left edge, on its surface.
    #[must_use]
    pub fn deck_left(&self) -> DVec2 {
        self.deck().point(self.design.frames.deck_left.to_mm(), 0.0)
    }

    /// The middle of the crank's handle.
    #[must_use]
    pub fn handle(&self) -> DVec2 {
        drive::handle(self)
    }

    /// Where the screw acts on what its nut is fixed to, and where its bearing sits.
    #[must_use]
    pub fn thrust(&self) -> [DVec2; 2] {
        drive::thrust(self)
    }

    /// Both ends of a screw that stands free between two points, mm; none for one that lies along a rail.
    #[must_use]
    pub fn free_screw(&self) -> Option<[DVec2; 2]> {
        drive::free_screw(self)
    }

    /// The screw as an end elevation shows it.
    #[must_use]
    pub fn screw_end(&self) -> ScrewEnd {
        drive::screw_end(self)
    }

    /// Two corners of the crank's box, the lower left one first, mm.
    #[must_use]
    pub fn crank_box(&self) -> [DVec2; 2] {
        drive::crank_box(self)
    }

    /// The middle of the plain wood nearest the screw: base beam or deck rail; none for a screw that stands free.
    #[must_use]
    pub fn wood_beside_screw(&self) -> Option<DVec2> {
        match self.design.drive.kind {
            DriveKind::BaseCarriage => Some(base::beam_middle(self.design)),
            DriveKind::TopCarriage => Some(deck::rail_middle(self)),
            DriveKind::SidePivots | DriveKind::Strut => None,
        }
    }

    /// What stands on the floor beneath everything that moves.
    #[must_use]
    pub fn ground(&self) -> Vec<Stroke> {
        base::casters(self.design)
    }

    /// The deck and the wheels as thin outlines of an end position.
    #[must_use]
    pub fn phantom(&self) -> Vec<Stroke> {
        let wheel =
            Outline::Circle { centre: self.carriage(), radius: self.design.running.wheel.to_mm() / 2.0 };
        vec![Stroke { class: "ph", outline: deck::panel(self) }, Stroke { class: "ph", outline: wheel }]
    }

    /// Screw, frames, arms, deck, wheels and pins.
    #[must_use]
    pub fn mechanism(&self) -> Vec<Stroke> {
        self.named().into_iter().map(|(_, stroke)| stroke).collect()
    }
}

/// A pair of axes in the plane, mm.
#[derive(Clone, Copy, Debug)]
pub(super) struct Axes {
    /// Where both begin.
    pub(super) origin: DVec2,
    /// Unit vector of the first; the second is turned by +90 degrees.
    pub(super) along: DVec2,
}

impl Axes {
    /// The place at `x` along the first and `y` along the second axis.
    pub(super) fn point(&self, x: f64, y: f64) -> DVec2 {
        self.origin + x * self.along + y * self.along.perp()
    }

    /// A rectangle between two places along either axis.
    pub(super) fn block(&self, x: [f64; 2], y: [f64; 2]) -> Outline {
        Outline::polygon(&[
            self.point(x[0], y[0]),
            self.point(x[1], y[0]),
            self.point(x[1], y[1]),
            self.point(x[0], y[1]),
        ])
    }

    pub(super) fn line(&self, from: (f64, f64), to: (f64, f64)) -> Outline {
        Outline::line(self.point(from.0, from.1), self.point(to.0, to.1))
    }

    /// A rectangle whose corners are rounded, the two at the beginning with the first radius.
    pub(super) fn rounded(&self, x: [f64; 2], y: [f64; 2], radii: [f64; 2]) -> Outline {
        let [first, last] = radii;
        let at = |x: f64, y: f64| self.point(x, y);
        let arc = |to: DVec2, radius: f64| Segment::Arc { to, radius, left: true, large: false };
        Outline::Run {
            start: at(x[0] + first, y[0]),
            segments: vec![
                Segment::Line(at(x[1] - last, y[0])),
                arc(at(x[1], y[0] + last), last),
                Segment::Line(at(x[1], y[1] - last)),
                arc(at(x[1] - last, y[1]), last),
                Segment::Line(at(x[0] + first, y[1])),
                arc(at(x[0], y[1] - first), first),
                Segment::Line(at(x[0], y[0] + first)),
                arc(at(x[0] + first, y[0]), first),
            ],
            closed: true,
        }
    }
}

/// The floor's axes.
pub(super) const FLOOR: Axes = Axes { origin: DVec2::ZERO, along: DVec2::X };

pub(super) const fn stroke(class: &'static str, outline: Outline) -> Stroke {
    Stroke { class, outline }
}

/// A line with a class.
pub(super) fn line(class: &'static str, from: DVec2, to: DVec2) -> Stroke {
    stroke(class, Outline::line(from, to))
}
