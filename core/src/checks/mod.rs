//! Does it hold? One file a kind of part; each check gives demand, capacity, ratio, governing height, the formula with its numbers, and its
//! source.
//!
//! Nothing is solved here: the checks look at heights that have been computed. Plain `f64` in SI inside.

mod allowed;
mod arm;
mod bare;
pub mod bolt;
pub mod carriage;
mod check;
pub mod column;
pub mod crank;
pub mod dowel;
mod ends;
mod frames;
pub mod gaps;
mod level;
mod pin;
mod screw;
pub mod seat;
mod stability;
mod table;
pub mod thread;
mod timber;
mod uplift;

pub use allowed::{Allowed, allowed};
pub use bare::{Bare, BareScrew, bare};
pub use check::{Check, Group, Lever, MOST, Member, NEAR, Verdict, Weight, ratio_words};
pub use level::Level;
pub use screw::Holding;
pub use stability::{PUSHES, Stance, on_one_of};
pub use timber::Rectangle;

use crate::design::Design;
use crate::mechanics::{Fault, Solver};
use level::Loaded;
use table::Table;

/// Every check of a design, in the order of its groups. `solver` is that of the design's mechanism, `levels` heights it has computed, from the
/// lowest up, with motion and deflection; `share` the worse side's share of the load, 0.5 when it stands in the middle.
///
/// A check that does not apply (the buckling of a screw that is only pulled) is left out.
///
/// # Errors
/// Where the screw has no length at one of the heights.
pub fn all(design: &Design, solver: &Solver, levels: &[Level<'_>], share: f64) -> Result<Vec<Check>, Fault> {
    let arm = table::gross(design);
    let levels =
        levels.iter().map(|level| Loaded::new(solver, *level, &arm)).collect::<Result<Vec<_>, _>>()?;
    let table = Table { design, levels: &levels, share };
    let mut list = Vec::with_capacity(MOST_CHECKS);
    for add in FILES {
        add(&table, &mut list);
    }
    Ok(list)
}

/// About as many as there are.
const MOST_CHECKS: usize = 48;

/// A file of checks adds its own.
type File = fn(&Table<'_>, &mut Vec<Check>);

const FILES: [File; 11] = [
    arm::checks,
    ends::checks,
    pin::checks,
    carriage::checks,
    uplift::checks,
    screw::checks,
    seat::checks,
    frames::checks,
    stability::checks,
    crank::checks,
    gaps::checks,
];
