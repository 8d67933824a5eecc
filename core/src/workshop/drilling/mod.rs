//! Where the holes go, with which bit, in what order, and how exact.

mod dual;
mod exact;
mod hold;
mod order;
mod side;
mod table;

pub use exact::{Effect, Exactness, Method, exactness, largest};
pub use hold::{Hold, hold};
pub use order::{Note, order};
pub use table::{Bit, Pilot, Row, Table, pilots, place, tables};
