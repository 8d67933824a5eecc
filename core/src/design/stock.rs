//! Filling several inputs at once from a row of the catalogue, and finding the row a design was filled from.
use super::{Design, WoodSort};
use crate::catalogue::bearing::{BEARINGS, Bearing, Duty};
use crate::catalogue::ends::Ends;
use crate::catalogue::fastener::{BOLT_CLASSES, BoltClass};
use crate::catalogue::panel::PANELS;
use crate::catalogue::sheet::{SHEET_SIZES, SheetSize};
use crate::catalogue::thread::{THREADS, Thread};
use crate::catalogue::{Family, Stock};
use crate::quantity::{Density, Length, Stress, System, figures};

/// A measured thickness may differ from the row's by this much and still be taken for that panel.
const THICKNESS_SPREAD: Length = Length::mm(0.6);

/// A thread's sizes may differ from the row's by this much and still be taken for that thread: rounding of an input.
const SIZE_SPREAD: Length = Length::mm(0.01);

/// Where a row does not say: shear and bearing strength as parts of its bending strength, and the low end of its density as a part of the
/// mean. Assumed, cautious: EN 338 has a sixth and a tenth for C24, and 0.83.
const SHEAR_OF_BENDING: f64 = 0.1;
const BEARING_OF_BENDING: f64 = 0.1;
const LOW_OF_MEAN: f64 = 0.8;

/// Takes thickness, stiffness, density and strength from a panel of the catalogue.
pub fn set_panel(design: &mut Design, panel: &Stock) {
    let arms = &mut design.arms;
    if let Some(thickness) = panel.measured.or(panel.nominal) {
        arms.thickness = thickness;
    }
    arms.modulus = panel.modulus;
    arms.shear_modulus = panel.shear_modulus;
    arms.density = panel.density;
    let strength = &mut design.strength;
    let part = |of: f64| Stress::pa(of * panel.bending.to_pa());
    strength.sort = sort(panel.family);
    strength.bending = panel.bending;
    strength.shear = panel.shear.unwrap_or_else(|| part(SHEAR_OF_BENDING));
    strength.crushing = panel.bearing_across.unwrap_or_else(|| part(BEARING_OF_BENDING));
    strength.density_low =
        panel.density_low.unwrap_or_else(|| Density::kg_m3(LOW_OF_MEAN * panel.density.to_kg_m3()));
}

/// The sort of wood by which a pin's hold is reckoned. Veneers glued lengthwise count as softwood, boards without grain as plywood.
const fn sort(family: Family) -> WoodSort {
    match family {
        Family::Plywood | Family::Osb | Family::Mdf => WoodSort::Plywood,
        Family::Softwood | Family::Lvl => WoodSort::Softwood,
        Family::Hardwood => WoodSort::Hardwood,
    }
}

/// Takes length and width of the sheets to be bought from a size of the catalogue.
pub fn set_sheet(design: &mut Design, sheet: &SheetSize) {
    design.shop.sheet_length = sheet.length;
    design.shop.sheet_width = sheet.width;
}

/// The size a design's sheets have; none for a size of the builder's own.
#[must_use]
pub fn sheet(design: &Design) -> Option<&'static SheetSize> {
    let shop = &design.shop;
    SHEET_SIZES.iter().find(|row| (row.length, row.width) == (shop.sheet_length, shop.sheet_width))
}

/// Takes the strength of the pivot bolts from a class of the catalogue.
pub fn set_bolt_class(design: &mut Design, class: &BoltClass) {
    design.strength.bolt_tensile = class.tensile;
    design.strength.bolt_yield = class.yield_strength;
}

/// The class a design's bolts agree with, made in their size; none when the builder entered their own.
#[must_use]
pub fn bolt_class(design: &Design) -> Option<&'static BoltClass> {
    let strength = &design.strength;
    BOLT_CLASSES.iter().find(|row| {
        row.tensile == strength.bolt_tensile
            && row.yield_strength == strength.bolt_yield
            && row.covers(design.running.pin)
    })
}

/// Takes the end factor of the screw from a pair of ends of the catalogue.
pub fn set_ends(design: &mut Design, ends: &Ends) {
    design.strength.screw_ends = ends.factor();
}

/// Takes mean diameter and rating of the thrust bearing, or sizes and rating of the wheels, from a bearing of the catalogue. A row without
/// a rating leaves the rating as it is.
pub fn set_bearing(design: &mut Design, bearing: &Bearing) {
    match bearing.duty {
        Duty::Thrust => {
            design.drive.collar = bearing.mean();
            design.strength.thrust_rating = bearing.static_load.unwrap_or(design.strength.thrust_rating);
        }
        Duty::Radial => {
            design.running.wheel = bearing.outside;
            design.running.wheel_width = bearing.width;
            design.running.axle = bearing.bore;
            design.strength.wheel_rating = bearing.static_load.unwrap_or(design.strength.wheel_rating);
        }
    }
}

/// The bearing of a duty a design agrees with; none when the builder entered their own.
#[must_use]
pub fn bearing(design: &Design, duty: Duty) -> Option<&'static Bearing> {
    let (drive, running, strength) = (&design.drive, &design.running, &design.strength);
    let rated = |row: &Bearing, rating| row.static_load.is_none_or(|load| load == rating);
    BEARINGS.iter().filter(|row| row.duty == duty).find(|row| match duty {
        Duty::Thrust => row.mean() == drive.collar && rated(row, strength.thrust_rating),
        Duty::Radial => {
            row.outside == running.wheel
                && row.width == running.wheel_width
                && row.bore == running.axle
                && rated(row, strength.wheel_rating)
        }
    })
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

/// The screw as one asks for it: its thread's designation, or outside diameter and lead where it is none of the catalogue.
#[must_use]
pub fn screw_words(design: &Design, system: System) -> String {
    let Some(row) = thread(design) else {
        let (major, lead) = (design.drive.major, design.drive.lead);
        let lead = figures::threads(lead, system).unwrap_or_else(|| figures::laid(lead, system));
        return format!("{} × {}", figures::laid(major, system).number, lead.number);
    };
    row.name.to_owned()
}
