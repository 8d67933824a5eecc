//! Parts on sheets: which piece lies where, in what order it is sawn, what is left over, and what would save a sheet.

mod advice;
mod bars;
mod cuts;
mod groups;
mod job;
mod layout;
mod pack;
mod passes;
mod random;
mod search;
mod tidy;

pub use advice::{Adviser, Hint};
pub use bars::{Bar, bars};
pub use cuts::{Cut, Sequence, sequence};
pub use job::{Blank, Job, Piece, jobs};
pub use layout::{Layout, Offcut, Placed, Sheet};
pub use passes::{Pass, passes};
pub use search::Search;
