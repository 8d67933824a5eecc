//! What is seen of the part a check speaks of, to draw it wide.
use super::{Subject, arm, base, deck, drive};
use crate::checks::Member;
use crate::drawing::outline::Outline;
use crate::mechanics::JointId;

/// A pivot is ringed this far outside its bushing, so that it is found at any scale, px.
const AROUND: f64 = 3.0;

impl Subject<'_> {
    /// The outlines of a part as it is seen from the side, mm; never none.
    #[must_use]
    pub fn part(&self, member: Member) -> Vec<Outline> {
        let running = &self.design.running;
        let circle = |joint: JointId, radius: f64| Outline::Circle { centre: self.joint(joint), radius };
        match member {
            Member::Arm(arm) => vec![arm::outline(self, arm)],
            Member::Joint(joint) => {
                let seat = match joint {
                    JointId::Br | JointId::Tr => running.axle,
                    _ => running.bush,
                };
                vec![circle(joint, seat.to_mm() / 2.0 + AROUND * self.pixel)]
            }
            Member::BaseWheels => vec![circle(JointId::Br, running.wheel.to_mm() / 2.0)],
            Member::DeckWheels => vec![circle(JointId::Tr, running.wheel.to_mm() / 2.0)],
            Member::Deck => vec![deck::panel(self)],
            Member::DeckRails => vec![deck::side_rail(self)],
            Member::BaseBeams => vec![base::beam(self.design)],
            Member::LeftCasters => caster(self, running.caster_left.to_mm()),
            Member::RightCasters => caster(self, running.caster_right.to_mm()),
            Member::CrossBar
            | Member::BearingTube
            | Member::Screw
            | Member::Nut
            | Member::ThrustBearing
            | Member::Crank => drive::part(self, member),
        }
    }
}

/// Wheel, fork and plate of a caster.
fn caster(subject: &Subject<'_>, x: f64) -> Vec<Outline> {
    let strokes = base::caster(subject.design, x).into_iter();
    strokes.filter(|stroke| stroke.class.starts_with("w ")).map(|stroke| stroke.outline).collect()
}
