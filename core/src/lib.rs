//! How a scissor table moves, pushes, bends and holds, from its sizes alone.
//!
//! A [`design::Design`] goes in, a [`report::Report`] comes out. Nothing here knows of a screen, a clock or a file.
//! The rooms are named after the builder's questions; each uses only rooms above it.

// A tool that all rooms use.
pub mod order;
// What is written and read.
pub mod quantity;
// The words and the stock.
pub mod catalogue;
// What do I want to build?
pub mod design;
// What is it made of?
pub mod parts;
// How does it move, push and bend?
pub mod mechanics;
// Does it hold?
pub mod checks;
// How do I make it?
pub mod workshop;
// All of it together.
pub mod report;
// How does it look on paper?
pub mod drawing;
// How is it passed on?
pub mod share;
// What does one read, on screen and on the wall?
pub mod pages;
