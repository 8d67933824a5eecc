//! How a design is passed on: as a link that needs no server.

pub mod address;
mod figure36;
pub mod link;
