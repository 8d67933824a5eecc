//! The end elevation of the table, to scale, as outlines in millimetres.
//!
//! Seen along the table from the end at which the crank sits; x across from the middle of the table, y up from the floor.
//! Painted from far to near, in an order that does not depend on the deck's height, every outline filled so that what is near covers
//! what is far; what matters behind it is drawn again with a hidden line. The same outlines, moved by what they ride on,
//! show the table as it gives way to a sideways push, larger than life.

mod arms;
mod drive;
mod frames;
mod labels;
mod load;
mod moving;
mod pieces;
mod plots;
mod reading;
mod sheet;
#[cfg(test)]
mod tests;
mod wheels;

pub use moving::{MOST_PUSH, SwayLive, compose};
pub use sheet::{Scene, SwaySheet};

use super::elevation::Subject;
use super::outline::{Outline, Stroke};
use crate::mechanics::ArmId;
use crate::report::Lean;
use glam::DVec2;
use pieces::Pieces;

/// The shape under a push, as it is drawn.
#[derive(Clone, Copy)]
struct Leaning<'a> {
    lean: &'a Lean,
    /// Push times the factor by which it is drawn larger than life, N, times a thousand for millimetres.
    scale: f64,
}

/// What a piece moves with.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Carrier {
    /// The base.
    Ground,
    /// The wheel axle on the base rails.
    BaseAxle,
    /// The wheel axle under the deck.
    DeckAxle,
    /// The deck.
    Deck,
    /// An arm, at a part of its length from its lower pin.
    Arm(ArmId, f64),
}

/// A table at one height, seen from its end.
#[derive(Clone, Copy)]
struct EndSubject<'a> {
    /// The table seen from the side: where everything is along it and above the floor.
    side: Subject<'a>,
    /// Its sizes across.
    pieces: &'a Pieces,
    /// How it gives way; none where it stands straight.
    leaning: Option<Leaning<'a>>,
    /// Where its middle is drawn, mm to the right.
    middle: f64,
}

impl EndSubject<'_> {
    /// Whether it is seen from the end with the wheels, as far as the crank sits there.
    fn seen_from_right(&self) -> bool {
        let screw = self.side.screw_end();
        screw.crank.x > screw.held[0].x
    }

    /// 1 where the right side of the table, that of positive z, lies on the right of the drawing; -1 where it lies on the left.
    fn turned(&self) -> f64 {
        if self.seen_from_right() { -1.0 } else { 1.0 }
    }

    /// A place `z` mm across from the middle and `y` mm above the floor on a piece, as it is drawn.
    fn at(&self, carrier: Carrier, z: f64, y: f64) -> DVec2 {
        let moved = self.moved(carrier, z, y);
        DVec2::new(self.middle + self.turned() * (z + moved.x), y + moved.y)
    }

    /// How far such a place is drawn from where it stands straight, across and up, mm.
    fn moved(&self, carrier: Carrier, z: f64, y: f64) -> DVec2 {
        let Some(Leaning { lean, scale }) = self.leaning else { return DVec2::ZERO };
        let metres = 1e-3;
        let up = lean.roll * z * metres;
        scale
            * match carrier {
                Carrier::Ground => DVec2::ZERO,
                Carrier::BaseAxle => DVec2::new(lean.axles[0], 0.0),
                Carrier::DeckAxle => DVec2::new(lean.axles[1], up),
                Carrier::Deck => {
                    DVec2::new(lean.deck - lean.roll * (y - self.side.deck_point().y) * metres, up)
                }
                Carrier::Arm(arm, part) => {
                    let moved = lean.arm(arm, part, self.side.pose.arm_length);
                    DVec2::new(moved.x, if z < 0.0 { -moved.y } else { moved.y })
                }
            }
    }

    /// A rectangle on a piece, between two places across and two heights.
    fn block(&self, class: &'static str, carrier: Carrier, z: [f64; 2], y: [f64; 2]) -> Stroke {
        let corner = |z: f64, y: f64| self.at(carrier, z, y);
        let corners = [corner(z[0], y[0]), corner(z[1], y[0]), corner(z[1], y[1]), corner(z[0], y[1])];
        Stroke { class, outline: Outline::polygon(&corners) }
    }

    /// The same on both sides of the table, the left one first.
    fn blocks(&self, class: &'static str, carrier: Carrier, z: [f64; 2], y: [f64; 2]) -> [Stroke; 2] {
        [self.block(class, carrier, [-z[1], -z[0]], y), self.block(class, carrier, z, y)]
    }

    /// A straight line on a piece.
    fn line(&self, class: &'static str, carrier: Carrier, from: (f64, f64), to: (f64, f64)) -> Stroke {
        let outline = Outline::line(self.at(carrier, from.0, from.1), self.at(carrier, to.0, to.1));
        Stroke { class, outline }
    }

    /// The table, from far to near.
    fn mechanism(&self) -> Vec<Stroke> {
        let right = self.seen_from_right();
        let mut strokes = Vec::new();
        if right {
            strokes.extend(frames::cheeks(self));
            strokes.extend(arms::pivots(self, arms::Place::Left));
        } else {
            strokes.extend(wheels::axles(self));
            strokes.extend(arms::pivots(self, arms::Place::Right));
        }
        strokes.extend(arms::boards(self, arms::Depth::Far));
        strokes.extend(arms::arms(self));
        strokes.extend(arms::hidden_boards(self));
        strokes.extend(arms::straps(self));
        strokes.extend(arms::pivots(self, arms::Place::Centre));
        strokes.extend(arms::boards(self, arms::Depth::Near));
        if right {
            strokes.extend(arms::pivots(self, arms::Place::Right));
            strokes.extend(wheels::axles(self));
        } else {
            strokes.extend(arms::pivots(self, arms::Place::Left));
            strokes.extend(frames::cheeks(self));
            strokes.extend(wheels::hidden(self));
        }
        strokes.extend(frames::base(self));
        strokes.extend(frames::deck(self));
        strokes.extend(drive::drive(self));
        strokes
    }

    /// What stands on the floor.
    fn ground(&self) -> Vec<Stroke> {
        frames::casters(self)
    }

    /// Deck and arms as thin outlines.
    fn phantom(&self) -> Vec<Stroke> {
        let mut strokes = arms::outlines(self, "ph");
        strokes.push(frames::panel(self, "ph"));
        strokes
    }

    /// The middle of the table from a little below the base to a little above the deck, px past either.
    fn centre_line(&self, past: f64) -> Stroke {
        let top = self.side.deck_point().y + past * self.side.pixel;
        let bottom = self.side.design.running.caster_height.to_mm() - past * self.side.pixel;
        let at = |y: f64| DVec2::new(self.middle, y);
        Stroke { class: "cl", outline: Outline::line(at(bottom), at(top)) }
    }
}
