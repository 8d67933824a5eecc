//! The table at one height.
use crate::mechanics::{Detail, Fault, Motion, Pose, Solver, State, Torque};

/// Where everything is and what it carries at one height.
#[derive(Clone, Debug)]
pub struct Station {
    /// Deck surface over the floor above the fixed pivots, m.
    pub height: f64,
    /// The place of every part.
    pub pose: Pose,
    /// Forces at rest and all that follows from them; its `motion` stands in the field of that name.
    pub state: State,
    /// The table in motion.
    pub motion: Motion,
    /// What the crank feels.
    pub torque: Torque,
}

impl Station {
    pub(super) fn new(solver: &Solver, height: f64) -> Result<Self, Fault> {
        let pose = solver.pose_at_height(height)?;
        let mut state = solver.state(&pose, Detail::ALL)?;
        let none = || Fault::new("screw", "the design has no screw");
        let motion = state.motion.take().ok_or_else(none)?;
        let torque = motion.torque.ok_or_else(none)?;
        Ok(Self { height, pose, state, motion, torque })
    }

    /// Force along the screw without friction, N; positive where the load drives the table down.
    #[must_use]
    pub fn still(&self) -> f64 {
        self.state.rest.drive
    }

    /// Force along the screw while raising, N.
    #[must_use]
    pub fn raise(&self) -> f64 {
        self.motion.raise.drive
    }

    /// Force along the screw while lowering, N; negative where the screw must drive the table down.
    #[must_use]
    pub fn lower(&self) -> f64 {
        self.motion.lower.drive
    }

    /// Force on the handle while raising, N.
    #[must_use]
    pub fn crank_raise(&self) -> f64 {
        self.torque.crank_raise.unwrap_or(f64::NAN)
    }

    /// Force on the handle while lowering, N; negative where the table runs down and must be held back.
    #[must_use]
    pub fn crank_lower(&self) -> f64 {
        self.torque.crank_lower.unwrap_or(f64::NAN)
    }

    /// Torque at the crank if neither pivots nor screw had friction, N m.
    #[must_use]
    pub fn torque_ideal(&self, lead: f64) -> f64 {
        self.still() * lead / (2.0 * core::f64::consts::PI)
    }

    /// Rise of the deck for one turn of the crank, m.
    #[must_use]
    pub fn rise_a_turn(&self, lead: f64) -> f64 {
        (self.state.advantage * lead).abs()
    }

    /// Reactions of the left and the right pair of casters, N.
    #[must_use]
    pub fn casters(&self) -> [f64; 2] {
        self.state.casters.unwrap_or([f64::NAN; 2])
    }
}
