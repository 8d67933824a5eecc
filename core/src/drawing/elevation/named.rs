//! Every outline under the name its part has in the list of parts.
use super::{Subject, arm, base, deck, drive, pins};
use crate::drawing::outline::Stroke;
use crate::mechanics::ArmId;

/// An outline and the name of its part.
pub type Named = (&'static str, Stroke);

fn all(name: &'static str, strokes: Vec<Stroke>) -> impl Iterator<Item = Named> {
    strokes.into_iter().map(move |stroke| (name, stroke))
}

impl Subject<'_> {
    /// Screw, frames, arms, deck, wheels and pins, from far to near. The whole drive goes by the name of the screw, an arm with what is
    /// inside it by the arm's, strip and keeper of the deck by its rail's.
    #[must_use]
    pub fn named(&self) -> Vec<Named> {
        let mut list: Vec<Named> = all("Base pivot cheek", base::cheeks(self)).collect();
        list.extend(all("Deck pivot cheek", deck::cheeks(self)));
        list.extend(all("Screw", drive::screw(self)));
        for b in [true, false] {
            for stage in 1..=self.pose.n {
                let id = if b { ArmId::b(stage) } else { ArmId::a(stage) };
                list.extend(all(if b { "Arm B" } else { "Arm A" }, arm::arm(self, id)));
            }
        }
        // The strip and the keeper close the list of the base.
        let mut wood = base::beams(self);
        let run = wood.split_off(wood.len().saturating_sub(2));
        list.extend(all("Base beam", wood));
        list.extend(["Wheel strip", "Keeper"].into_iter().zip(run));
        list.extend(["Deck rail", "Deck rail", "Deck rail", "Deck"].into_iter().zip(deck::deck(self)));
        list.extend(all("Wheel", pins::wheels(self)));
        list.extend(all("Pivot bolt", pins::pins(self)));
        list
    }
}
