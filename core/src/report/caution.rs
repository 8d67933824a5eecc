//! The caution that stands where the crank is turned.
use super::Report;
use crate::quantity::{Amount, Phrase};

impl Report {
    /// What can hurt, and how fast: by how much one turn of the crank moves the deck at its lowest, where the arms close fastest.
    #[must_use]
    pub fn caution(&self) -> Phrase {
        let lead = self.design.drive.lead.to_m();
        Phrase::new("Hands out, casters locked: low down a turn moves the deck ")
            .with(Amount::Give(self.at(self.lowest()).rise_a_turn(lead)))
            .and(".")
    }
}
