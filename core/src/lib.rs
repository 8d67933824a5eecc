//! How a scissor table moves, pushes, bends and holds, from its sizes alone.
//!
//! A [`design::Design`] goes in, a [`report::Report`] comes out. Nothing here knows of a screen, a clock or a file.
pub mod design;
pub mod parts;
pub mod share;
pub mod quantity;
