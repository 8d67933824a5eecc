//! The base frame on its casters.
use super::arms::{layers, through_bolts};
use super::carriages::bearing_gap;
use super::hole::{Contact, Hole, Housing, Joint, Purpose};
use super::part::{Form, Part, Rides};
use super::pivots::{INNER_BASE_CHEEK, INNER_DECK_CHEEK, inner_cheek_middle};
use super::place::{Block, about, from};
use super::small::{Small, row};
use super::solid::{block, steel_flat};
use crate::design::Design;
use crate::quantity::{Density, Length};

/// Mass of a caster for its height, kg/m: common practice, no source (0.55 kg at 100 mm, swivel with brake).
const CASTER_MASS_A_METRE: f64 = 5.5;

/// Density of softwood battens (EN 338, class C24, mean).
pub(super) const BATTEN: Density = Density::kg_m3(420.0);

/// Density of aluminium, the usual round value.
const ALUMINIUM: Density = Density::kg_m3(2700.0);

/// A caster's plate reaches so far from its middle, in diameters of its wheel.
pub(super) const CASTER_PLATE: f64 = 0.6;

/// Size of the block that stops a wheel, in diameters of the wheel.
const STOP: i64 = 1;

/// A keeper over a wheel's run is as long as this part of its rail.
const KEEPER: i64 = 2;

/// Thickness of rails, beams, planks and pivot cheeks.
#[must_use]
pub fn frame_thickness(design: &Design) -> Length {
    design.arms.thickness * design.frames.layers.get()
}

/// The middle of rails and beams across the table: their inner faces stand beside the wheels' flange washers, with a little play.
#[must_use]
pub fn rail_middle(design: &Design) -> Length {
    let running = &design.running;
    let inner = running.wheel_place - Length::from_steps(running.wheel_width.steps() / 2) + bearing_gap();
    inner + Length::from_steps(frame_thickness(design).steps() / 2)
}

/// What both frames share.
pub(super) struct Frame<'a> {
    pub design: &'a Design,
    pub deck: bool,
    pub small: Small,
}

impl Frame<'_> {
    pub fn rides(&self, x: f64) -> Rides {
        if self.deck { Rides::Deck(x) } else { Rides::Base(x) }
    }

    /// A piece of the frames' thickness.
    pub fn layered(&self, name: &'static str, x: f64, [length, width]: [Length; 2]) -> Part {
        let size = [length, width, frame_thickness(self.design)];
        Part::new(name, self.rides(x), Form::Sheet, size, block(self.design.arms.density, size))
            .glued(layers(self.design.frames.layers.get()))
    }

    /// From and to of a piece that stands in the plane of the rails, m.
    pub fn rail_plane(&self) -> [f64; 2] {
        about(rail_middle(self.design).to_m(), frame_thickness(self.design))
    }

    fn rail_contact(&self) -> Contact {
        if self.deck { Contact::DeckRail } else { Contact::BaseRail }
    }

    /// The two steel strips the wheels run on, with their screws; none where they have no size.
    pub fn strips(&self, x: f64, left: f64, length: Length, surface: f64) -> Vec<Part> {
        let frames = &self.design.frames;
        let size = [length, frames.strip_width, frames.strip_thickness];
        if size.iter().any(|side| *side <= Length::ZERO) {
            return Vec::new();
        }
        let screw = self.small.strip_screw(frames.strip_thickness);
        let along = row(length, self.small.screw_margin(), self.small.screw_spacing());
        let count = u32::try_from(along.len()).unwrap_or(0);
        let holes = along.into_iter().map(|along| Hole {
            along,
            across: Length::from_steps(frames.strip_width.steps() / 2),
            diameter: screw.clearance_hole(),
            purpose: Purpose::Countersunk,
            joint: None,
        });
        let inner = self.rail_plane()[0];
        let y = if self.deck {
            [surface - frames.strip_thickness.to_m(), surface]
        } else {
            from(surface, frames.strip_thickness)
        };
        vec![
            Part::new("Wheel strip", self.rides(x), Form::FlatBar, size, steel_flat(size))
                .times(2)
                .joined("countersunk screws along its middle, flush with the rail's inner face")
                .drilled(holes.collect())
                .at(vec![Block::square(from(left, length), y, from(inner, frames.strip_width))])
                .touching(self.rail_contact()),
            Part::new(
                "Strip screw",
                self.rides(x),
                Form::WoodScrew,
                [screw.length, screw.diameter, screw.length - frames.strip_thickness],
                screw.mass(),
            )
            .times(2 * count),
        ]
    }

    /// The two aluminium flats that keep the wheels from lifting, on screws with spacer tubes beside the strip.
    pub fn keepers(&self, x: f64, rail: Length) -> Vec<Part> {
        let (frames, running) = (&self.design.frames, &self.design.running);
        let thick = frames.strip_thickness;
        let size = [Length::from_steps(rail.steps() / KEEPER), frames.strip_width, thick];
        if size.iter().any(|side| *side <= Length::ZERO) {
            return Vec::new();
        }
        let screw = self.small.keeper_screw(running.wheel + running.rail_gap + thick);
        let places = row(size[0], self.small.screw_margin(), self.small.screw_spacing() * 2);
        let count = u32::try_from(places.len()).unwrap_or(0);
        let holes = places.into_iter().map(|along| Hole {
            along,
            across: Length::from_steps(frames.strip_width.steps() / 2),
            diameter: screw.clearance_hole(),
            purpose: Purpose::Clearance,
            joint: None,
        });
        vec![
            Part::new("Keeper", self.rides(x), Form::LightBar, size, block(ALUMINIUM, size))
                .times(2)
                .joined("screws with spacer tubes into the rail beside the strip, over the whole run of the wheel")
                .drilled(holes.collect())
                .touching(self.rail_contact()),
            Part::new(
                "Keeper screw",
                self.rides(x),
                Form::WoodScrew,
                [screw.length, screw.diameter, screw.length - (running.wheel + running.rail_gap + thick * 2)],
                screw.mass(),
            )
            .times(2 * count),
        ]
    }

    /// Blocks that stop the wheels at both ends of their run.
    pub fn stops(&self, x: f64) -> Part {
        let wheel = self.design.running.wheel * STOP;
        self.layered("End stop", x, [wheel, wheel])
            .times(4)
            .joined("glued and screwed on the rail where the wheel stands at the lowest and the highest deck")
    }

    /// The cheeks on the inner side of the arms, each on a packer that holds it off the rail, and their parts; none where the fixed pivots have
    /// a cheek on one side only. `cheek` is the outer one, `level` from and to of the packers above the pivot, m.
    pub fn inner_cheeks(&self, cheek: &Part, level: [f64; 2]) -> Vec<Part> {
        let design = self.design;
        if !design.running.forks {
            return Vec::new();
        }
        let z = about(inner_cheek_middle(design, self.deck).to_m(), frame_thickness(design));
        let place = |y| Block::square(about(0.0, design.arms.end * 2), y, z);
        let name = if self.deck { INNER_DECK_CHEEK } else { INNER_BASE_CHEEK };
        let y = cheek.places.first().map_or([0.0; 2], |block| block.y);
        let reach = Length::m((self.rail_plane()[0] - z[1]).max(0.0));
        let packer = [design.arms.end * 2, Length::m((level[1] - level[0]).max(0.0)), reach];
        vec![
            self.layered(name, 0.0, [cheek.size[0], cheek.size[1]])
                .times(2)
                .joined("on its packer inside the rail, bolted through with the outer cheek")
                .drilled(cheek.holes.clone())
                .hollowed(design.arms.density)
                .at(vec![place(y)]),
            Part::new("Cheek packer", self.rides(0.0), Form::Batten, packer, block(BATTEN, packer))
                .times(2)
                .joined("glued between inner cheek and rail, clear of the arm's end")
                .at(vec![Block { z: [z[1], self.rail_plane()[0]], ..place(level) }]),
        ]
    }

    /// What the bolts of the cheeks pass through beyond the outer cheek: packer and inner cheek.
    pub fn fork_stack(&self) -> Length {
        if self.design.running.forks {
            let inner = inner_cheek_middle(self.design, self.deck).to_m();
            Length::m((self.rail_plane()[0] - inner).max(0.0))
                + Length::from_steps(frame_thickness(self.design).steps() / 2)
        } else {
            Length::ZERO
        }
    }

    /// Bolts that hold the two pivot cheeks, two a cheek, through rail and cheek of this thickness together.
    pub fn cheek_bolts(&self, stack: Length) -> [Part; 3] {
        through_bolts(
            self.rides(0.0),
            self.small.cheek_bolt(),
            stack,
            4,
            ["Cheek bolt", "Cheek nut", "Cheek washer"],
        )
    }

    /// The hole of the pivot in a cheek and its two bolts beside it, all from the lower left corner.
    pub fn cheek_holes(&self, joint: Joint, pivot: Length, bolts: Length) -> Vec<Hole> {
        let middle = self.design.arms.end;
        let bolt = self.small.cheek_bolt();
        let off = Length::from_steps(middle.steps() * 2 / 3);
        let hole = |along, across, diameter, purpose, joint| Hole { along, across, diameter, purpose, joint };
        let free = bolt.clearance_hole();
        vec![
            hole(middle - off, bolts, free, Purpose::Clearance, None),
            hole(middle, pivot, self.design.running.pin, Purpose::Pivot, Some(joint)),
            hole(middle + off, bolts, free, Purpose::Clearance, None),
        ]
    }
}

pub(super) fn parts(design: &Design) -> Vec<Part> {
    let (frames, running, lift) = (&design.frames, &design.running, &design.lift);
    let frame = Frame { design, deck: false, small: Small::of(design) };
    let thick = frame_thickness(design);
    let plates = running.caster_height.to_m() - lift.pin_line.to_m();
    let left = frames.base_left.to_m();
    let middle = left + frames.base_length.to_m() / 2.0;
    let casters = (running.caster_left.to_m() + running.caster_right.to_m()) / 2.0;
    let cheek_high = (lift.pin_line - running.caster_height).max(Length::ZERO) + running.pin * 2;
    let lap = beam_lap(design);
    let mut list = vec![
        frame
            .layered("Base beam", middle, [frames.base_length, frames.beam_depth])
            .times(2)
            .along_grain()
            .joined("halved over planks and cheeks, glued, bolted at the cheeks")
            .drilled(beam_holes(&frame))
            .housed(beam_housings(design))
            .hollowed(design.arms.density)
            .at(vec![Block::square(
                from(left, frames.base_length),
                from(plates, frames.beam_depth),
                frame.rail_plane(),
            )])
            .touching(Contact::BaseRail),
        frame
            .layered("Base plank", casters, [frames.deck_width, frames.plank_width])
            .times(2)
            .along_grain()
            .joined("halved into the beams, glued and screwed through the caster plates")
            .housed(plank_housings(design, thick - lap))
            .hollowed(design.arms.density)
            .at([running.caster_left, running.caster_right]
                .map(|x| {
                    Block::square(
                        about(x.to_m(), frames.plank_width),
                        from(plates, thick),
                        [0.0, frames.deck_width.to_m() / 2.0],
                    )
                })
                .to_vec()),
        frame
            .layered("Base pivot cheek", 0.0, [design.arms.end * 2, cheek_high])
            .times(2)
            .joined("halved over the beam, glued, two bolts")
            .drilled(frame.cheek_holes(
                Joint::BasePivot,
                lift.pin_line - running.caster_height,
                Length::from_steps(frames.beam_depth.steps() / 2),
            ))
            .housed(vec![Housing {
                along: design.arms.end,
                across: Length::from_steps(frames.beam_depth.steps() / 2),
                length: design.arms.end * 2,
                width: frames.beam_depth.min(cheek_high),
                depth: Length::from_steps(thick.steps() / 2),
                takes: "Base beam",
            }])
            .hollowed(design.arms.density)
            .at(vec![Block::square(
                about(0.0, design.arms.end * 2),
                from(plates, cheek_high),
                frame.rail_plane(),
            )]),
    ];
    let sweep = libm::hypot(design.arms.end.to_m(), design.arms.width.to_m() / 2.0);
    let inner = list.last().map(|cheek| frame.inner_cheeks(cheek, [plates, (-sweep).max(plates)]));
    list.extend(inner.unwrap_or_default());
    list.extend(frame.cheek_bolts(thick + frame.fork_stack()));
    list.push(caster(design, casters, -lift.pin_line.to_m()));
    let screw = frame.small.caster_screw(Length::mm(3.0));
    list.push(
        Part::new(
            "Caster screw",
            Rides::Base(casters),
            Form::WoodScrew,
            [screw.length, screw.diameter, screw.length - Length::mm(3.0)],
            screw.mass(),
        )
        .times(16),
    );
    list.extend(frame.strips(middle, left, frames.base_length, plates + frames.beam_depth.to_m()));
    list.extend(frame.keepers(middle, frames.base_length));
    list.push(frame.stops(middle));
    list
}

/// The two bolts of a cheek, through the beam.
fn beam_holes(frame: &Frame<'_>) -> Vec<Hole> {
    let design = frame.design;
    let start = -design.frames.base_left - design.arms.end;
    frame
        .cheek_holes(Joint::BasePivot, Length::ZERO, Length::from_steps(design.frames.beam_depth.steps() / 2))
        .into_iter()
        .filter(|hole| hole.joint.is_none())
        .map(|hole| Hole { along: hole.along + start, ..hole })
        .collect()
}

/// What is cut out of one deck rail or base beam, its holes halfway up, all from its left end.
#[must_use]
pub fn rail_cuts(design: &Design, deck: bool) -> (Vec<Housing>, Vec<Hole>) {
    let frame = Frame { design, deck, small: Small::of(design) };
    if !deck {
        return (beam_housings(design), beam_holes(&frame));
    }
    // The bolts of the deck's cheeks pass the rails behind them.
    let frames = &design.frames;
    let start = -frames.deck_rail_left - design.arms.end;
    let middle = Length::from_steps(frames.deck_rail_depth.steps() / 2);
    let holes = frame.cheek_holes(Joint::DeckPivot, Length::ZERO, middle).into_iter();
    let bolts = holes.filter(|hole| hole.joint.is_none());
    (Vec::new(), bolts.map(|hole| Hole { along: hole.along + start, ..hole }).collect())
}

/// How far beams are let down over the planks.
fn beam_lap(design: &Design) -> Length {
    Length::from_steps(frame_thickness(design).steps() / 2).min(design.frames.beam_depth)
}

/// Halvings of a beam: over the two planks from below, over the cheek from its inner face.
fn beam_housings(design: &Design) -> Vec<Housing> {
    let (frames, running) = (&design.frames, &design.running);
    let (thick, lap) = (frame_thickness(design), beam_lap(design));
    let plank = |x: Length| Housing {
        along: x - frames.base_left,
        across: Length::from_steps(lap.steps() / 2),
        length: frames.plank_width,
        width: lap,
        depth: thick,
        takes: "Base plank",
    };
    vec![
        plank(running.caster_left),
        Housing {
            along: -frames.base_left,
            across: Length::from_steps(frames.beam_depth.steps() / 2),
            length: design.arms.end * 2,
            width: frames.beam_depth,
            depth: Length::from_steps(thick.steps() / 2),
            takes: "Base pivot cheek",
        },
        plank(running.caster_right),
    ]
}

/// Halvings of a plank over the two beams, from above.
fn plank_housings(design: &Design, depth: Length) -> Vec<Housing> {
    let middle = Length::from_steps(design.frames.deck_width.steps() / 2);
    [-rail_middle(design), rail_middle(design)]
        .map(|off| Housing {
            along: middle + off,
            across: Length::from_steps(design.frames.plank_width.steps() / 2),
            length: frame_thickness(design),
            width: design.frames.plank_width,
            depth,
            takes: "Base beam",
        })
        .to_vec()
}

fn caster(design: &Design, x: f64, floor: f64) -> Part {
    let running = &design.running;
    let reach = CASTER_PLATE * running.caster_wheel.to_m() + running.caster_trail.to_m();
    let z = running.caster_across.to_m();
    let places = [running.caster_left, running.caster_right]
        .map(|x| {
            Block::square(
                [x.to_m() - reach, x.to_m() + reach],
                from(floor, running.caster_height),
                [z - reach, z + reach],
            )
        })
        .to_vec();
    Part::new(
        "Caster",
        Rides::Base(x),
        Form::Bought,
        [running.caster_height, running.caster_wheel, running.caster_wheel],
        CASTER_MASS_A_METRE * running.caster_height.to_m(),
    )
    .times(4)
    .joined("four screws through its plate into plank and beam")
    .at(places)
}
