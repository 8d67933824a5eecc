//! Quantities: sizes, weights, forces and the rest as types with their units, read as people write them and printed back.
//!
//! Every quantity is a whole number of small steps in an `i64`, so that a design compares exactly, is stored exactly,
//! and neither millimetres nor 1/64 in are ever rounded. Floating point begins where the mechanics begin.

mod kind;
mod types;

pub use kind::{Kind, Quantity, System};
pub use types::{Angle, Count, Density, Force, Length, Mass, Money, Pace, Ratio, Stiffness, Stress};
