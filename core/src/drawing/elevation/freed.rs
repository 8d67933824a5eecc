//! A part cut free of the table, as it is seen from the side.
use super::{Subject, arm, base, deck, pins};
use crate::drawing::outline::Stroke;
use crate::mechanics::{Body, Freed, JointId};
use glam::DVec2;

impl Subject<'_> {
    /// The outlines of a part alone, from far to near: its holes empty where other parts were pinned to it, mm.
    #[must_use]
    pub fn freed(&self, part: Freed) -> Vec<Stroke> {
        match part {
            Freed::Arm(id) => {
                let mut strokes = arm::arm(self, id);
                strokes.extend(self.holes(Body::Arm(id)));
                strokes
            }
            Freed::Deck => {
                let mut strokes = deck::cheeks(self);
                strokes.extend(deck::deck(self));
                strokes.extend(pins::hole(self, JointId::Tl));
                strokes
            }
            Freed::BaseCarriage => pins::wheel(self, JointId::Br),
            Freed::DeckCarriage => pins::wheel(self, JointId::Tr),
            Freed::Base => {
                let mut strokes = base::cheeks(self);
                strokes.extend(base::casters(self.design));
                strokes.extend(base::beams(self));
                strokes.extend(pins::hole(self, JointId::Bl));
                strokes
            }
        }
    }

    fn holes(&self, body: Body) -> Vec<Stroke> {
        let n = self.pose.n;
        let of_body = |joint: &JointId| joint.bodies(n).contains(&body);
        JointId::all(n).filter(of_body).flat_map(|joint| pins::hole(self, joint)).collect()
    }

    /// A place on a part that moves little beside the rest of it, mm: what a picture of the part alone keeps in its middle.
    #[must_use]
    pub fn middle(&self, part: Freed) -> DVec2 {
        match part {
            Freed::Arm(id) => {
                let axes = self.arm(id);
                axes.point(self.design.lift.arm_length.to_mm() / 2.0, 0.0)
            }
            Freed::Deck => (self.deck_left() + self.deck_edge()) / 2.0,
            Freed::BaseCarriage => self.joint(JointId::Br),
            Freed::DeckCarriage => self.joint(JointId::Tr),
            Freed::Base => base::beam_middle(self.design),
        }
    }
}
