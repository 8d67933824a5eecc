//! Small things that hold parts together and are no parts themselves: spring pins, the tubes under keepers, screws of stops and cleats, bolts
//! of the bearing tube. They follow from what they join and count in no weight of the table. Common practice, no source.
use super::arms::through_bolts;
use super::carriages::has_tube;
use super::fastener::WoodScrew;
use super::frames::frame_thickness;
use super::part::{Form, Part, Rides};
use super::small::Small;
use super::solid::{steel_bar, steel_ring};
use crate::catalogue::steel::Section;
use crate::design::Design;
use crate::quantity::Length;

/// Screws in an end stop.
pub const STOP_SCREWS: u32 = 2;

/// Screws in a cleat.
pub const CLEAT_SCREWS: u32 = 2;

/// Cleats of a prop: on both sides at either end.
pub const CLEATS: u32 = 4;

/// Bolts of a bearing tube: one an end.
const TUBE_BOLTS: u32 = 2;

/// A spring pin is as thick as this part of what it passes through.
const PIN_OF_SHAFT: i64 = 4;

/// Wall of the tubes under keepers, mm and inches.
const TUBE_WALL: (f64, f64) = (2.0, 1.0 / 16.0);

/// Sizes spring pins are sold in, mm (ISO 8752, from memory) and sixteenths of an inch.
const PINS: [f64; 9] = [2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0];
const INCH_PINS: [f64; 6] = [1.0, 2.0, 3.0, 4.0, 5.0, 6.0];

/// The fastenings of a design, from its parts.
#[must_use]
pub fn fastenings(design: &Design, parts: &[Part]) -> Vec<Part> {
    let small = Small::of(design);
    let count =
        |name: &str| -> u32 { parts.iter().filter(|part| part.name == name).map(|part| part.count).sum() };
    let frames = frame_thickness(design);
    let (running, drive) = (&design.running, &design.drive);
    let mut list = Vec::new();
    // On the axle a pin goes right through tube, plug and axle; where a bolt turns in the plug, from one side into the plug.
    let through = drive.cross_bar;
    let into = Length::from_steps((drive.cross_bar - running.axle).steps() / 2);
    let long = if has_tube(design) { through } else { into };
    list.push(spring_pin(small, "Spring pin", running.axle, long).times(count("Tube plug")));
    let hub = Length::from_steps(drive.major.steps() * 8 / 5);
    list.push(spring_pin(small, "Crank pin", drive.major, hub).times(count("Crank")));
    if let Some(screw) = parts.iter().find(|part| part.name == "Keeper screw") {
        let bore = small.next(WoodScrew { diameter: screw.size[1], length: screw.size[0] }.clearance_hole());
        let outside = bore + small.size(TUBE_WALL.0, TUBE_WALL.1) * 2;
        let high = running.wheel + running.rail_gap + design.frames.strip_thickness;
        let tube = [high, outside, bore];
        let mass = steel_ring(high, outside, bore);
        list.push(
            Part::new("Keeper tube", Rides::Aside, Form::Bought, tube, mass).times(count("Keeper screw")),
        );
    }
    list.push(screw("Stop screw", small.panel_screw(running.wheel)).times(STOP_SCREWS * count("End stop")));
    let cleats = CLEATS * count("Prop");
    list.push(screw("Cleat screw", small.panel_screw(frames)).times(CLEAT_SCREWS * cleats));
    let tubes = count("Bearing tube");
    if tubes > 0 {
        let names = ["Bearing tube bolt", "Bearing tube nut", "Bearing tube washer"];
        let stack = drive.anchor_bar + frames;
        list.extend(through_bolts(Rides::Aside, small.cheek_bolt(), stack, TUBE_BOLTS * tubes, names));
    }
    list.retain(|part| part.count > 0 && part.size[0] > Length::ZERO);
    list
}

fn screw(name: &'static str, screw: WoodScrew) -> Part {
    Part::new(name, Rides::Aside, Form::WoodScrew, [screw.length, screw.diameter, Length::ZERO], screw.mass())
}

/// A slotted spring pin through a shaft, no longer than what it is driven into.
fn spring_pin(small: Small, name: &'static str, shaft: Length, room: Length) -> Part {
    let wanted = Length::from_steps(shaft.steps() / PIN_OF_SHAFT);
    let sizes = |list: &[f64], of: fn(f64) -> Length| {
        let fits = list.iter().map(|size| of(*size)).filter(|size| *size <= wanted).max();
        fits.unwrap_or_else(|| of(list[0]))
    };
    let diameter = if small.is_inch() {
        sizes(&INCH_PINS, |size| Length::inch(size / 16.0))
    } else {
        sizes(&PINS, Length::mm)
    };
    let step = small.size(5.0, 0.25).steps();
    let length = Length::from_steps(room.steps().div_euclid(step) * step);
    let mass = steel_bar(Section::RoundBar { diameter }, length) / 2.0;
    Part::new(name, Rides::Aside, Form::Bought, [length, diameter, Length::ZERO], mass)
}
