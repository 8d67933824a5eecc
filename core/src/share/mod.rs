//! How a design is passed on: as a link that needs no server, and as files for cutting, drilling and buying.

pub mod address;
pub mod code;
pub mod csv;
mod digest;
pub mod dxf;
mod figure36;
pub mod file;
pub mod flat;
pub mod lesson;
pub mod link;
mod manner;
pub mod plot;
pub mod sideways;
pub mod stem;
pub mod svg;

pub use digest::digest;
pub use manner::Manner;
