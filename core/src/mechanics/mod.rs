//! How the table moves, pushes, bends and gives way: the planar mechanics.
//!
//! Plain `f64` in SI throughout: N, m, rad, kg, Pa. Planar axes: x to the right from the fixed pivots, y up, angles
//! counter-clockwise. Forces, weights and reactions are totals of all parallel scissor planes.
//!
//! The way through: a [`Mechanism`] is checked and made ready by [`Solver::new`]; [`Solver::pose_at_height`] places
//! every part; [`Solver::state`] answers for that pose. In between stands the one thing everything else leans on,
//! the equations of equilibrium factored once a height: [`statics`].

mod arms;
pub mod beam;
pub mod bent;
pub mod body;
pub mod check;
mod depth;
pub mod drive;
mod fault;
pub mod flex;
pub mod frame3;
pub mod friction;
mod idealise;
pub mod limits;
pub mod linkage;
mod loads;
pub mod mechanism;
pub mod names;
mod play;
mod rattle;
pub mod screw;
pub mod section;
pub mod solver;
pub mod space;
mod springs;
pub mod statics;
pub mod stiffness;

pub use bent::Bent;
pub use body::{Acting, Cause, FreeBody, Freed};
pub use depth::{Guides, in_space, in_space_but};
pub use fault::Fault;
pub use flex::{Deflection, Movement};
pub(crate) use idealise::screw as screw_of;
pub use idealise::{free, idealise};
pub use limits::Limits;
pub use linkage::{Frame, Pose};
pub use loads::{GRAVITY, UnitCase};
pub use mechanism::Mechanism;
pub use names::{ArmId, Body, JointId, JointKind, MAX_STAGES, Side};
pub use rattle::{Rattle, Slack, rattle};
pub use section::{Diagram, Extremes, Section};
pub use solver::{Detail, Motion, Solver, State, Torque, Uplift};
pub use springs::{Firmness, Spring, SpringUnit, Springs, joint_test, test_is_void};
