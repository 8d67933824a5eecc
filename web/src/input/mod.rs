//! Pointer, keys and crank as small state machines that know nothing of the page.
pub mod crank;
pub mod keyboard;
pub mod pointer;
