//! Deck rails and base beams stretch by stretch: whole, halved where something is let in, drilled where a bolt passes.
//!
//! Plain `f64` in SI. What is glued into a halving is not counted on: its grain may run any way, and its glue is not checked.
use super::level::Loaded;
use super::timber::Rectangle;
use crate::design::Design;
use crate::mechanics::{Diagram, Section};
use crate::order::order;
use crate::parts::{frame_thickness, rail_cuts};
use crate::quantity::{Phrase, lower};

/// What is taken to be left where a cut goes right through, m: a hair, so that every figure stays a figure.
const HAIR: f64 = 1e-4;

/// A stretch of a rail, from the fixed pivots, with the section that is left of it.
pub(super) struct Stretch {
    from: f64,
    to: f64,
    bar: Rectangle,
    /// One over its section modulus, 1/m3, and over its area, 1/m2: asked for hundreds of times.
    by_modulus: f64,
    by_area: f64,
    /// What is let into it; nothing where it is empty.
    takes: &'static str,
}

impl Stretch {
    /// [`Rectangle::edge_stress`] of its section.
    pub fn bent(&self, section: &Section) -> f64 {
        section.m.abs() * self.by_modulus + section.n.abs() * self.by_area
    }

    /// [`Rectangle::shear_stress`] of its section.
    pub fn sheared(&self, section: &Section) -> f64 {
        1.5 * section.v.abs() * self.by_area
    }

    fn measured(self) -> Self {
        Self { by_modulus: self.bar.modulus().recip(), by_area: self.bar.area().recip(), ..self }
    }
}

/// The stretches of one deck rail or base beam.
pub(super) fn stretches(design: &Design, deck: bool) -> Vec<Stretch> {
    let frames = &design.frames;
    let (left, depth) = if deck {
        (frames.deck_rail_left, frames.deck_rail_depth)
    } else {
        (frames.base_left, frames.beam_depth)
    };
    let (left, depth, thickness) = (left.to_m(), depth.to_m(), frame_thickness(design).to_m());
    let (housings, holes) = rail_cuts(design, deck);
    let sides = |middle: f64, length: f64| [left + middle - length / 2.0, left + middle + length / 2.0];
    // At a place: a recess as deep as the rail is thick leaves less depth, any other less thickness.
    let at = |place: f64| {
        let bar = Rectangle { depth, thickness, hole: 0.0 };
        let mut stretch = Stretch { from: place, to: place, bar, by_modulus: 0.0, by_area: 0.0, takes: "" };
        for housing in &housings {
            let [from, to] = sides(housing.along.to_m(), housing.length.to_m());
            if place <= from || place >= to {
                continue;
            }
            let (bar, cut) = (&mut stretch.bar, housing.depth.to_m());
            if cut < thickness {
                bar.thickness = bar.thickness.min((thickness - cut).max(HAIR));
            } else {
                bar.depth = bar.depth.min((depth - housing.width.to_m()).max(HAIR));
            }
            stretch.takes = housing.takes;
        }
        stretch
    };
    let mut edges = vec![f64::NEG_INFINITY, f64::INFINITY];
    edges.extend(housings.iter().flat_map(|housing| sides(housing.along.to_m(), housing.length.to_m())));
    order(&mut edges, f64::total_cmp);
    let mut list: Vec<Stretch> = edges
        .iter()
        .zip(edges.iter().skip(1))
        .map(|(from, to)| Stretch { from: *from, to: *to, ..at(from.midpoint(*to)).measured() })
        .collect();
    list.extend(holes.iter().map(|hole| {
        let mut stretch = at(left + hole.along.to_m());
        stretch.bar.hole = hole.diameter.to_m().min(stretch.bar.depth - HAIR).max(0.0);
        stretch.measured()
    }));
    list
}

/// The section forces that use a rail most, totals of all sides, the section they meet, and the stress of a rail that bore them alone, Pa.
pub(super) struct Worst<'a> {
    pub section: Section,
    pub bar: Rectangle,
    pub stress: f64,
    stretch: &'a Stretch,
}

impl Worst<'_> {
    /// Where it is, to be put behind its figures.
    pub fn place(&self) -> Phrase {
        let Stretch { bar, takes, .. } = self.stretch;
        Phrase::new(match (takes.is_empty(), bar.hole > 0.0) {
            (true, true) => ", at a bolt".to_owned(),
            (true, false) => String::new(),
            (false, drilled) => {
                format!(", where the {} is let in{}", lower(takes), if drilled { ", at a bolt" } else { "" })
            }
        })
    }
}

/// The worst of all stretches at rest, raising and lowering, by a stress of a section under section forces.
pub(super) fn worst<'a>(
    at: &Loaded<'_>,
    deck: bool,
    stretches: &'a [Stretch],
    stress: fn(&Stretch, &Section) -> f64,
) -> Option<Worst<'a>> {
    let mut most: Option<Worst> = None;
    let mut look = |diagram: &Diagram| {
        for stretch in stretches {
            for section in diagram.between(stretch.from, stretch.to) {
                let stress = stress(stretch, &section);
                if most.as_ref().is_none_or(|most| stress > most.stress) {
                    most = Some(Worst { section, bar: stretch.bar, stress, stretch });
                }
            }
        }
    };
    if deck {
        at.deck_rails.iter().for_each(&mut look);
    } else {
        at.base_rails.iter().flatten().for_each(&mut look);
    }
    most
}
