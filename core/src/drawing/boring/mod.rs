//! Drilled parts in plan: to a standard scale with running dimensions from one datum, and in true scale on tiles of paper.

mod face;
mod plan;
mod running;
mod spread;
mod tiles;

pub use plan::{Plan, plan};
pub use tiles::{TILE, Tile, tiles};

/// CSS pixels a millimetre on paper: an inch has 96.
pub const PX_PER_MM: f64 = 96.0 / 25.4;
