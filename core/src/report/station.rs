//! The table at one height.
use crate::checks::Level;
use crate::mechanics::flex::{Deflection, Movement};
use crate::mechanics::{Detail, Fault, Motion, Pose, Solver, State, Torque};

/// Where everything is and what it carries at one height.
#[derive(Clone, Debug)]
pub struct Station {
    /// Deck surface over the floor above the fixed pivots, m.
    pub height: f64,
    /// The place of every part.
    pub pose: Pose,
    /// Forces at rest and all that follows from them; its `motion` and `deflection` stand in the fields of those names.
    pub state: State,
    /// The table in motion.
    pub motion: Motion,
    /// What the crank feels.
    pub torque: Torque,
    /// How the deck gives under the live load, the load in the middle of the table.
    pub deflection: Deflection,
    /// The worse side's share of the load, 0.5 when it stands in the middle.
    pub share: f64,
}

impl Station {
    /// The station at a height, m; `shape` asks for the bent shape too.
    pub(super) fn new(solver: &Solver, height: f64, share: f64, shape: bool) -> Result<Self, Fault> {
        let pose = solver.pose_at_height(height)?;
        let mut state = solver.state(&pose, Detail { shape, ..Detail::ALL })?;
        let none = || Fault::new("screw", "the design has no screw");
        let motion = state.motion.take().ok_or_else(none)?;
        let torque = motion.torque.ok_or_else(none)?;
        let deflection = state.deflection.take().ok_or_else(none)?;
        Ok(Self { height, pose, state, motion, torque, deflection, share })
    }

    /// The station as the checks look at it.
    #[must_use]
    pub fn level(&self) -> Level<'_> {
        Level {
            deck: self.height,
            pose: &self.pose,
            state: &self.state,
            motion: &self.motion,
            torque: Some(self.torque),
            deflection: Some(&self.deflection),
        }
    }

    /// Sag of the worse side at the load, by cause, m. What belongs to one side gives in proportion to that side's share; the
    /// screw stands in the middle and sees the whole load. Taken so, the deck is free to lean: on the safe side.
    #[must_use]
    pub fn sag(&self) -> Movement {
        let side = 2.0 * self.share;
        let drop = &self.deflection.drop;
        Movement {
            arms: side * drop.arms,
            joints: side * drop.joints,
            wheels: side * drop.wheels,
            screw: drop.screw,
            top_rails: side * drop.top_rails,
            base_rails: side * drop.base_rails,
            casters: side * drop.casters,
            play: drop.play,
            lash: drop.lash,
        }
    }

    /// The worse side's sag as a share of the lift between the pivots: the measure of how far the linear theory can be trusted.
    #[must_use]
    pub fn sag_share(&self) -> f64 {
        self.sag().total() / self.pose.top.origin.y
    }

    /// The load under which a table that is loaded at this height folds flat, as a multiple of its load: its arms lie down as screw and
    /// cross-bar give, and the flatter they lie the harder they push. The tangent limit of the angle reached is y cos²(theta) over the
    /// sag; that of the unloaded table is the part of it that the finding about sag names. All sag is taken as such give: on the safe
    /// side. For a screw along the base or under the deck.
    #[must_use]
    pub fn folds_flat(&self) -> f64 {
        let cosine = self.pose.theta.first().map_or(0.0, |theta| libm::cos(*theta));
        super::findings::SAG_COLLAPSES * cosine * cosine / self.sag_share()
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
