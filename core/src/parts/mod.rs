//! What the table is made of: one list, from which the mechanics takes its masses and the workshop its cutting.

mod arms;
mod carriages;
mod frames;
mod part;
mod screw;
mod solid;

pub use arms::{arm_offset, arm_spread, arm_thickness};
pub use carriages::wheel_overhang;
pub use part::{ArmName, Material, Part, Rides};
pub use screw::{ScrewBar, screw_bars};

use crate::design::Design;

/// Every piece of the table, arms first.
#[must_use]
pub fn parts(design: &Design) -> Vec<Part> {
    let mut list = arms::parts(design);
    list.extend(frames::parts(design));
    list.extend(carriages::parts(design));
    list.extend(screw::parts(design));
    list
}
