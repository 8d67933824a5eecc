//! Pieces of a page that know nothing of lifting tables.
pub mod canvas;
pub mod document;
pub mod lettering;
pub mod number_field;
pub mod paper;
pub mod picture;
pub mod place;
pub mod printing;
pub mod room;
pub mod select;
pub mod size;
pub mod slider;
