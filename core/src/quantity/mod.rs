//! Quantities: sizes, weights, forces and the rest as types with their units, read as people write them and printed back.
//!
//! Every quantity is a whole number of small steps in an `i64`, so that a design compares exactly, is stored exactly,
//! and neither millimetres nor 1/64 in are ever rounded. Floating point begins where the mechanics begin.

mod bound;
mod digest;
mod digits;
mod error;
mod exact;
pub mod figures;
mod kind;
mod line;
mod number;
mod phrase;
mod print;
mod read;
mod types;
mod unit;

pub use bound::{Bound, passes};
pub use digest::Digest;
pub use error::{LONGEST, ReadError};
pub use kind::{Kind, Quantity, System};
pub use line::inwards;
pub use phrase::{Amount, Phrase, capital, lower};
pub use print::{Printed, Style, print};
pub use read::{MOST_STEPS, read};
pub use types::{Angle, Count, Density, Force, Length, Mass, Money, Pace, Rate, Ratio, Stiffness, Stress};
pub use unit::metric_unit;
