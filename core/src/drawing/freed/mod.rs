//! A part cut free, drawn to scale in its pose with every force on it as an arrow, and beside it the same arrows head to tail: they close.

mod acting;
mod polygon;
mod sheet;
mod words;

pub use sheet::{FreeLive, FreeSheet};
pub use words::{closing, direction, letter, name, part_words};

#[cfg(test)]
mod tests;
