//! Filling several inputs at once from a row of the catalogue, and finding the row a design was filled from.
use super::Design;
use crate::catalogue::Stock;
use crate::catalogue::panel::PANELS;
use crate::catalogue::thread::{THREADS, Thread};
use crate::quantity::Length;

/// A measured thickness may differ from the row's by this much and still be taken for that panel.
const THICKNESS_SPREAD: Length = Length::mm(0.6);

/// A thread's sizes may differ from the row's by this much and still be taken for that thread: rounding of an input.
const SIZE_SPREAD: Length = Length::mm(0.01);

/// Takes thickness, stiffness and density from a panel of the catalogue.
pub fn set_panel(design: &mut Design, panel: &Stock) {
    let arms = &mut design.arms;
    if let Some(thickness) = panel.measured.or(panel.nominal) {
        arms.thickness = thickness;
    }
    arms.modulus = panel.modulus;
    arms.shear_modulus = panel.shear_modulus;
    arms.density = panel.density;
}

/// The panel a design's stock agrees with; none when the builder entered their own.
#[must_use]
pub fn panel(design: &Design) -> Option<&'static Stock> {
    let arms = &design.arms;
    PANELS.iter().find(|row| {
        row.modulus == arms.modulus
            && row.shear_modulus == arms.shear_modulus
            && row.density == arms.density
            && [row.measured, row.nominal]
                .into_iter()
                .flatten()
                .any(|thick| (thick - arms.thickness).abs() <= THICKNESS_SPREAD)
    })
}

/// Takes every size of a thread of the catalogue.
pub fn set_thread(design: &mut Design, thread: &Thread) {
    let drive = &mut design.drive;
    drive.major = thread.major();
    drive.mean = thread.mean();
    drive.root = thread.root();
    drive.pitch = thread.pitch();
    drive.lead = thread.lead();
    drive.flank = thread.flank();
}

/// The thread a design's screw agrees with; none when the builder entered their own.
#[must_use]
pub fn thread(design: &Design) -> Option<&'static Thread> {
    let drive = &design.drive;
    let same = |one: Length, other: Length| (one - other).abs() <= SIZE_SPREAD;
    THREADS.iter().find(|row| {
        same(row.major(), drive.major)
            && same(row.mean(), drive.mean)
            && same(row.root(), drive.root)
            && same(row.pitch(), drive.pitch)
            && same(row.lead(), drive.lead)
            && row.flank() == drive.flank
    })
}
