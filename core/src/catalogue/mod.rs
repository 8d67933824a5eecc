//! Stock, threads, fasteners, bearings and friction: tables to fill a design from, every row with its source.
//!
//! A design holds its own numbers; a row only fills them in, and each may be overwritten. Every row has an `id` that
//! is unique in its table and is never given to another row, so that it may be stored.

pub mod bearing;
pub mod ends;
pub mod fastener;
pub mod friction;
pub mod panel;
pub mod sheet;
mod source;
pub mod species;
pub mod steel;
mod stock;
pub mod thread;
pub mod wood;

pub use source::{Source, Standing};
pub use stock::{Family, Stock, Strength};

/// A row that can be found again by its number.
pub trait Row: Sized + 'static {
    /// Every row of the table, in the order they are shown.
    fn rows() -> impl Iterator<Item = &'static Self>;

    /// The row's number: unique in its table, and never given to another row.
    fn id(&self) -> u16;

    /// What the row is called in a list.
    fn name(&self) -> &'static str;

    /// The row with that number, or nothing when no row ever had it.
    #[must_use]
    fn by_id(id: u16) -> Option<&'static Self> {
        Self::rows().find(|row| row.id() == id)
    }
}

/// [`Row`] for a table that is one list.
macro_rules! listed {
    ($Row:ident, $ROWS:ident) => {
        impl $crate::catalogue::Row for $Row {
            fn rows() -> impl Iterator<Item = &'static Self> {
                $ROWS.iter()
            }

            fn id(&self) -> u16 {
                self.id
            }

            fn name(&self) -> &'static str {
                self.name
            }
        }
    };
}
use listed;
