//! A part cut free at a station: the mechanics' answer for one of the three states a table can be in.
use super::{Report, Station};
use crate::mechanics::{Fault, FreeBody, Freed};

/// What the table does while its forces are looked at.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Doing {
    /// It stands, and friction is left out: as the side elevation draws its forces.
    #[default]
    Standing,
    /// The crank raises it; friction resists.
    Raising,
    /// The crank lowers it; friction resists.
    Lowering,
}

impl Doing {
    /// All three, the plainest first.
    pub const ALL: [Self; 3] = [Self::Standing, Self::Raising, Self::Lowering];
}

impl Report {
    /// A part cut free at a station of this report, with all that acts on it.
    ///
    /// # Errors
    /// Where the screw has no length; no station of a report stands there.
    pub fn body(&self, station: &Station, doing: Doing, part: Freed) -> Result<FreeBody, Fault> {
        let forces = match doing {
            Doing::Standing => &station.state.rest,
            Doing::Raising => &station.motion.raise,
            Doing::Lowering => &station.motion.lower,
        };
        self.solver.body(&station.pose, forces, part)
    }
}
