//! What stands around every view.
pub mod header;
pub mod inputs;
pub mod notice;
