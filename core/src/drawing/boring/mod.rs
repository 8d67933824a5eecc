//! Drilled parts in plan: to a standard scale with running dimensions from one datum, and in true scale on tiles of paper.

mod face;
mod plan;
mod running;
mod spread;
mod tiles;

pub use plan::{Plan, plan};
pub use tiles::{TILE, Tile, tiles};

/// Pixels in a millimetre of paper.
pub const PX_PER_MM: f64 = super::poster::PAPER;
