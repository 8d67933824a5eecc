//! Bought parts that follow from others: which bushing goes with a bolt, which bearing with a screw, which casters under a load.
use crate::catalogue::bearing::{BEARINGS, Bearing, Duty};
use crate::catalogue::fastener::BOLT_CLASSES;
use crate::design::{Design, bolt_class, set_bearing, set_bolt_class};
use crate::quantity::{Force, Length, System};

/// Pivot bolts and the outside of the bronze bushings that go with them, as shops list them (ISO 4379 sizes, from memory).
const METRIC_PINS: [[f64; 2]; 4] = [[10.0, 16.0], [12.0, 18.0], [16.0, 22.0], [20.0, 26.0]];

/// The same in inches (from memory).
const INCH_PINS: [[f64; 2]; 4] = [[0.375, 0.5], [0.5, 0.625], [0.625, 0.75], [0.75, 0.875]];

/// Swivel casters: diameter of the wheel, height, trail, mm, and rating, N. Makers differ; usual ones, from memory.
const CASTERS: [[f64; 4]; 4] = [
    [50.0, 75.0, 24.0, 600.0],
    [75.0, 100.0, 32.0, 900.0],
    [100.0, 128.0, 38.0, 1300.0],
    [125.0, 155.0, 45.0, 2000.0],
];

/// What a caster is asked to carry: this part of the load, for it stands nearer to one side and casters swivel, and its part of the table, N.
const CASTER_SHARE: f64 = 0.4;
const CASTER_TABLE: f64 = 150.0;

/// A nut is so many screw diameters long (common practice, no source).
const NUT: f64 = 1.5;

/// A plain thrust washer's mean diameter in screw diameters, where no rolling bearing fits (common practice, no source).
const PLAIN_COLLAR: f64 = 4.0 / 3.0;

/// Pivot bolts that are offered.
pub fn pins(system: System) -> Vec<Length> {
    match system {
        System::Metric => METRIC_PINS.iter().map(|[pin, _]| Length::mm(*pin)).collect(),
        System::Inch => INCH_PINS.iter().map(|[pin, _]| Length::inch(*pin)).collect(),
    }
}

/// The bolt with its bushing, and its strength class in its size: of the same standard, at least as strong.
pub(super) fn set_pin(design: &mut Design, pin: Length) {
    let metric = METRIC_PINS.iter().map(|row| row.map(Length::mm));
    let inch = INCH_PINS.iter().map(|row| row.map(Length::inch));
    let before = bolt_class(design);
    let bush = metric.chain(inch).find(|[bolt, _]| *bolt == pin).map_or(pin, |[_, bush]| bush);
    (design.running.pin, design.running.bush) = (pin, bush);
    let Some(before) = before.filter(|class| !class.covers(pin)) else { return };
    let class = BOLT_CLASSES
        .iter()
        .filter(|class| class.source == before.source && class.covers(pin))
        .filter(|class| class.yield_strength >= before.yield_strength)
        .min_by_key(|class| class.yield_strength);
    if let Some(class) = class {
        set_bolt_class(design, class);
    }
}

/// Nut and thrust bearing that go with the screw: the largest bearing that its shoulder carries; a plain washer where none of the builder's
/// kind fits. `step` is what sizes are rounded to.
pub(super) fn set_screw_parts(design: &mut Design, step: Length) {
    let drive = &mut design.drive;
    drive.nut_length = up(Length::m(NUT * drive.major.to_m()), step);
    let rolling = |row: &&Bearing| row.duty == Duty::Thrust && row.bore <= drive.major;
    let bearing = BEARINGS.iter().filter(rolling).max_by_key(|row| row.bore);
    let is_rolling = BEARINGS.iter().any(|row| row.duty == Duty::Thrust && row.mean() == drive.collar);
    match bearing.filter(|_| is_rolling) {
        Some(bearing) => set_bearing(design, bearing),
        None => drive.collar = Length::m(PLAIN_COLLAR * drive.major.to_m()),
    }
}

/// The smallest casters that carry the load; those of the design where they do.
pub(super) fn set_casters(design: &mut Design) {
    let needed = CASTER_SHARE * design.load.mass.to_kg() * 9.806_65 + CASTER_TABLE;
    if design.running.caster_rating.to_n() >= needed {
        return;
    }
    let row = CASTERS.iter().find(|row| row[3] >= needed).unwrap_or(&CASTERS[CASTERS.len() - 1]);
    let running = &mut design.running;
    running.caster_wheel = Length::mm(row[0]);
    running.caster_height = Length::mm(row[1]);
    running.caster_trail = Length::mm(row[2]);
    running.caster_rating = Force::n(row[3]);
}

/// A length rounded up to whole steps of another.
pub(super) fn up(length: Length, step: Length) -> Length {
    let one = step.steps().max(1);
    Length::from_steps(length.steps().saturating_add(one - 1).div_euclid(one).saturating_mul(one))
}
