//! How do I make it? Sheets to cut, holes to drill, hardware to buy, steps to take: all of it from the one list of parts.

pub mod clear;
pub mod cost;
pub mod drilling;
pub mod hardware;
pub mod sheets;
pub mod steps;
