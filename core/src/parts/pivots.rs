//! The pivots: what lies side by side on each joint's line across the table, and the bolts, nuts, washers and bushings that follow from it.
use super::arms::{arm_spread, arm_thickness};
use super::carriages::{bearing_gap, collar_width, flange_thickness, tube_length};
use super::fastener::BoltSize;
use super::frames::{frame_thickness, rail_middle};
use super::hole::{Contact, Joint};
use super::part::{ArmName, Form, Part, Rides};
use super::place::Block;
use super::solid::{bronze_ring, plastic_ring, steel_ring};
use crate::design::Design;
use crate::order::order;
use crate::quantity::Length;

/// A spacer is a wide steel washer; where there is room a plastic disc of this thickness lets it slide.
const DISC: Length = Length::mm(1.0);

/// A steel spacer thinner than this leaves no room for the disc.
const THIN: Length = Length::mm(2.5);

/// Outside diameter of a spacer in bolt diameters: that of wide washers, ISO 7093 (from memory).
const SPACER_OUTSIDE: i64 = 3;

/// One thing on a joint's line, from the middle of the table outwards.
#[derive(Clone, Debug, PartialEq)]
pub struct Layer {
    /// What it is called.
    pub name: String,
    /// Where it begins, from the middle of the table.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// Whether it lies beneath or above the line and only shares the width: a rail under its wheel.
    pub beside: bool,
}

impl Layer {
    fn about(name: impl Into<String>, middle: Length, thick: Length) -> Self {
        let from = middle - Length::from_steps(thick.steps() / 2);
        Self { name: name.into(), from, to: from + thick, beside: false }
    }

    fn from(name: impl Into<String>, from: Length, thick: Length) -> Self {
        Self { name: name.into(), from, to: from + thick, beside: false }
    }
}

/// Everything on one joint's line on the right half of the table, from the middle outwards.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// The joint.
    pub joint: Joint,
    /// What lies on its line, in order.
    pub layers: Vec<Layer>,
    /// What its bolt holds together, washers included; zero for an axle.
    pub grip: Length,
}

impl Line {
    /// What is free between neighbours on the line, negative where they would overlap, with the names of the two.
    pub fn gaps(&self) -> impl Iterator<Item = (&Layer, &Layer, Length)> {
        let on_line: Vec<&Layer> = self.layers.iter().filter(|layer| !layer.beside).collect();
        (1..on_line.len()).map(move |at| {
            let (inner, outer) = (on_line[at - 1], on_line[at]);
            (inner, outer, outer.from - inner.to)
        })
    }
}

fn half(length: Length) -> Length {
    Length::from_steps(length.steps() / 2)
}

/// The middle of an arm across the table.
fn arm_middle(design: &Design, b: bool) -> Length {
    half(arm_spread(design, b))
}

fn stages(design: &Design) -> usize {
    usize::try_from(design.lift.stages.get()).unwrap_or(1)
}

/// The members a bolt joins, from the middle of the table outwards: two, or three where a fixed pivot has a cheek on either side.
fn members(design: &Design, joint: Joint) -> Vec<Layer> {
    let arm = |b: bool, stage: usize| {
        let name = format!("Arm {}{stage}", if b { 'B' } else { 'A' });
        Layer::about(name, arm_middle(design, b), arm_thickness(design))
    };
    let frame = frame_thickness(design);
    let cheeks = |name: &str, inner_name: &str, deck: bool| {
        let [outer, inner] = cheek_middles(design, deck);
        let inner = inner.map(|middle| Layer::about(inner_name, middle, frame));
        inner.into_iter().chain(outer.map(|middle| Layer::about(name, middle, frame)))
    };
    let mut list = match joint {
        Joint::Centre(stage) => vec![arm(true, stage), arm(false, stage)],
        Joint::Left(stage) => vec![arm(true, stage), arm(false, stage + 1)],
        Joint::Right(stage) => vec![arm(true, stage + 1), arm(false, stage)],
        Joint::DeckPivot => core::iter::once(arm(true, stages(design)))
            .chain(cheeks("Deck pivot cheek", INNER_DECK_CHEEK, true))
            .collect(),
        _ => core::iter::once(arm(false, 1))
            .chain(cheeks("Base pivot cheek", INNER_BASE_CHEEK, false))
            .collect(),
    };
    order(&mut list, |one, other| one.from.cmp(&other.from));
    list
}

/// Names of the cheeks on the inner side of an arm.
pub(super) const INNER_BASE_CHEEK: &str = "Inner base cheek";
pub(super) const INNER_DECK_CHEEK: &str = "Inner deck cheek";

/// The middle of the cheek on the inner side of the arm at a fixed pivot, across the table.
pub(super) fn inner_cheek_middle(design: &Design, deck: bool) -> Length {
    let off = half(arm_thickness(design)) + design.arms.spacer + half(frame_thickness(design));
    arm_middle(design, deck) - off
}

/// The middles of the cheeks at a fixed pivot, across the table: outside its arm, and inside where there is one.
fn cheek_middles(design: &Design, deck: bool) -> [Option<Length>; 2] {
    let outer = if deck { arm_middle(design, false) } else { rail_middle(design) };
    [Some(outer), design.running.forks.then(|| inner_cheek_middle(design, deck))]
}

/// How far the middles of the cheeks of a fixed pivot stand from that of its arm: outside, and inside where there is one.
#[must_use]
pub fn cheek_laps(design: &Design, deck: bool) -> [Option<Length>; 2] {
    let arm = arm_middle(design, deck);
    cheek_middles(design, deck).map(|middle| middle.map(|middle| (middle - arm).abs()))
}

/// What lies on a joint's line.
#[must_use]
pub fn line(design: &Design, joint: Joint) -> Line {
    if joint.is_axle() { axle_line(design, joint) } else { bolt_line(design, joint) }
}

fn bolt_line(design: &Design, joint: Joint) -> Line {
    let bolt = BoltSize { diameter: design.running.pin };
    let [_, washer] = bolt.washer();
    let members = members(design, joint);
    let inside = members.first().map_or(Length::ZERO, |layer| layer.from);
    let outside = members.iter().map(|layer| layer.to).max().unwrap_or(inside);
    // The nut sits where there is more room: inside between two arms, outside at a cheek.
    let nut_inside = matches!(joint, Joint::Centre(_) | Joint::Left(_) | Joint::Right(_));
    let ends = [("Bolt head", bolt.head()), ("Nut", bolt.nut())];
    let [(inner, inner_high), (outer, outer_high)] = if nut_inside { [ends[1], ends[0]] } else { ends };
    let mut layers = vec![
        Layer::from(inner, inside - washer - inner_high, inner_high),
        Layer::from("Washer", inside - washer, washer),
    ];
    for (at, member) in members.iter().enumerate() {
        if at > 0 {
            let before = members[at - 1].to;
            layers.push(Layer::from(SPACER, before, (member.from - before).max(Length::ZERO)));
        }
        layers.push(member.clone());
    }
    layers.push(Layer::from("Washer", outside, washer));
    layers.push(Layer::from(outer, outside + washer, outer_high));
    Line { joint, layers, grip: outside - inside + washer * 2 }
}

/// What lies between two members of a joint.
const SPACER: &str = "Spacer";

/// Tube, arm, flange washer, wheel and collar on a wheel axle, with the rail that the wheel runs on.
fn axle_line(design: &Design, joint: Joint) -> Line {
    let deck = joint == Joint::DeckAxle;
    let running = &design.running;
    let arm = Layer::about(
        if deck { format!("Arm A{}", stages(design)) } else { "Arm B1".into() },
        arm_middle(design, !deck),
        arm_thickness(design),
    );
    let wheel = Layer::about("Wheel", running.wheel_place, running.wheel_width);
    let rail = Layer {
        beside: true,
        ..Layer::about(
            if deck { "Deck rail" } else { "Base beam" },
            rail_middle(design),
            frame_thickness(design),
        )
    };
    let flange = flange_thickness(design, deck);
    let mut layers = Vec::new();
    let tube = tube_length(design, arm_spread(design, !deck));
    if super::carriages::has_tube(design) {
        layers.push(Layer { name: "Cross-bar".into(), from: Length::ZERO, to: half(tube), beside: false });
    }
    let before = wheel.from - flange;
    layers.push(arm.clone());
    let sleeve = before - arm.to - bearing_gap();
    if sleeve > Length::ZERO {
        layers.push(Layer::from("Sleeve", arm.to, sleeve));
    }
    if flange > Length::ZERO {
        layers.push(Layer::from("Flange washer", before, flange));
    }
    layers.push(wheel.clone());
    layers.push(Layer::from("Collar", wheel.to + bearing_gap(), collar_width(design)));
    layers.push(rail);
    Line { joint, layers, grip: Length::ZERO }
}

/// The end view: every joint's line, from the base up.
#[must_use]
pub fn lines(design: &Design) -> Vec<Line> {
    Joint::all(stages(design)).map(|joint| line(design, joint)).collect()
}

/// Outside diameter of the bushing an arm turns on an axle with: its wall is that of the pivots.
#[must_use]
pub fn axle_bush(design: &Design) -> Length {
    design.running.axle + (design.running.bush - design.running.pin)
}

/// The hole an arm gets for a joint.
#[must_use]
pub fn arm_hole(design: &Design, joint: Joint) -> Length {
    if joint.is_axle() { axle_bush(design) } else { design.running.bush }
}

/// The joints of an arm from its lower end up: lower end, centre, upper end.
#[must_use]
pub fn arm_joints(stages: usize, arm: ArmName) -> [Joint; 3] {
    let ArmName { stage, b } = arm;
    let lower = match (stage, b) {
        (1, false) => Joint::BasePivot,
        (1, true) => Joint::BaseAxle,
        (_, false) => Joint::Left(stage - 1),
        (_, true) => Joint::Right(stage - 1),
    };
    let upper = match (stage < stages, b) {
        (true, false) => Joint::Right(stage),
        (true, true) => Joint::Left(stage),
        (false, false) => Joint::DeckAxle,
        (false, true) => Joint::DeckPivot,
    };
    [lower, Joint::Centre(stage), upper]
}

/// Bushings of an arm, and the bolts told with it: of its own lower pivot and, on A, of the centre; of the deck pivot on the last B.
pub(super) fn of_arm(design: &Design, arm: ArmName) -> Vec<Part> {
    let count = stages(design);
    let joints = arm_joints(count, arm);
    let mut list = Vec::new();
    if design.running.bush > design.running.pin {
        let turning = joints.iter().filter(|joint| !joint.is_axle()).count();
        list.push(bushing(design, arm, "Bushing", design.running.bush, design.running.pin, turning));
        if turning < joints.len() {
            let (outside, bore) = (axle_bush(design), design.running.axle);
            list.push(bushing(design, arm, "Axle bushing", outside, bore, joints.len() - turning));
        }
    }
    let mine = joints.into_iter().zip([0.0, design.lift.centre.value(), 1.0]).filter(|(joint, part)| {
        !joint.is_axle()
            && match joint {
                Joint::Centre(_) => !arm.b,
                Joint::DeckPivot => true,
                _ => *part < 0.1,
            }
    });
    for (joint, part) in mine {
        list.extend(bolted(design, arm, joint, part));
    }
    list
}

fn bushing(
    design: &Design,
    arm: ArmName,
    name: &'static str,
    outside: Length,
    bore: Length,
    each: usize,
) -> Part {
    let thick = arm_thickness(design);
    Part::new(
        name,
        Rides::Arm(arm),
        Form::BronzeTube,
        [thick, outside, bore],
        bronze_ring(thick, outside, bore),
    )
    .times(2 * u32::try_from(each).unwrap_or(0))
    .joined("pressed in, flush")
}

/// Bolt, nut, washers and spacer of a joint, on both sides of the table.
fn bolted(design: &Design, arm: ArmName, joint: Joint, part: f64) -> Vec<Part> {
    let bolt = BoltSize { diameter: design.running.pin };
    let line = line(design, joint);
    let length = bolt.length(line.grip);
    // A bolt sits fast in a cheek and rides with it; between two arms it rides with one of them.
    let (rides, middle) = match joint {
        Joint::BasePivot => (Rides::Base(0.0), [0.0, 0.0]),
        Joint::DeckPivot => (Rides::Deck(0.0), [0.0, 0.0]),
        _ => (Rides::Arm(arm), [part * design.lift.arm_length.to_m(), 0.0]),
    };
    let place = |layer: &Layer, label| {
        Block::round(middle, bolt.corner_radius(), [layer.from.to_m(), layer.to.to_m()]).labelled(label)
    };
    let ends: Vec<Block> = line
        .layers
        .iter()
        .filter_map(|layer| match layer.name.as_str() {
            "Bolt head" => Some(place(layer, "Bolt head")),
            "Nut" => Some(place(layer, "Nut")),
            _ => None,
        })
        .collect();
    let [outside, thick] = bolt.washer();
    let mut list = vec![
        Part::new(
            "Pivot bolt",
            rides,
            Form::Bolt,
            [length, bolt.diameter, line.grip],
            bolt.bolt_mass(length),
        )
        .times(2)
        .joined("head and nut on washers, nut run up until the joint still turns freely")
        .at(ends)
        .touching(Contact::Pivot(joint)),
        Part::new(
            "Pivot nut",
            rides,
            Form::LockNut,
            [bolt.nut(), bolt.diameter, bolt.flats()],
            bolt.nut_mass(),
        )
        .times(2),
        Part::new("Pivot washer", rides, Form::Washer, [thick, outside, bolt.diameter], bolt.washer_mass())
            .times(4),
    ];
    list.extend(spacers(design, rides, &line));
    list
}

/// Outside diameter of the washers between two arms: a wide one, or the hub washers where there are such.
#[must_use]
pub fn spacer_outside(design: &Design) -> Length {
    (design.running.pin * SPACER_OUTSIDE).max(design.sway.hub)
}

/// The steel spacer in each gap between members and, where there is room, the plastic disc it slides on.
fn spacers(design: &Design, rides: Rides, line: &Line) -> Vec<Part> {
    let (pin, outside) = (design.running.pin, spacer_outside(design));
    let ring = |name, thick, mass: fn(Length, Length, Length) -> f64| {
        Part::new(name, rides, Form::Washer, [thick, outside, pin], mass(thick, outside, pin)).times(2)
    };
    let gaps = line.layers.iter().filter(|layer| layer.name == SPACER).map(|layer| layer.to - layer.from);
    gaps.filter(|gap| *gap > Length::ZERO)
        .flat_map(|gap| {
            let disc = if gap - DISC >= THIN { DISC } else { Length::ZERO };
            let disc_part = (disc > Length::ZERO).then(|| ring("Plastic disc", disc, plastic_ring));
            core::iter::once(ring("Spacer washer", gap - disc, steel_ring)).chain(disc_part)
        })
        .collect()
}
