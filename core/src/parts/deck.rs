//! The deck with its rails and pivot cheeks.
use super::arms::arm_spread;
use super::frames::{Frame, frame_thickness, rail_middle};
use super::hole::{Contact, Hole, Joint, Purpose};
use super::part::{Form, Part, Rides};
use super::place::{Block, about, from};
use super::small::{Small, row};
use super::solid::block;
use crate::design::Design;
use crate::quantity::{Density, Length};

/// Density of the hard fibreboard a wear sheet is cut from (EN 622-2 boards, from memory).
const HARDBOARD: Density = Density::kg_m3(950.0);

pub(super) fn parts(design: &Design) -> Vec<Part> {
    let (frames, running, lift) = (&design.frames, &design.running, &design.lift);
    let frame = Frame { design, deck: true, small: Small::of(design) };
    let panel = [frames.deck_length, frames.deck_width, frames.deck_thickness];
    let left = frames.deck_left.to_m();
    let middle = left + frames.deck_length.to_m() / 2.0;
    let under = lift.deck_stack.to_m() - (frames.deck_thickness + frames.wear).to_m();
    let rail_left = frames.deck_rail_left.to_m();
    let rail_middle_x = rail_left + frames.deck_rail_length.to_m() / 2.0;
    let rail_under = under - frames.deck_rail_depth.to_m();
    let across = [0.0, frames.deck_width.to_m() / 2.0];
    let screws = row(frames.deck_rail_length, frame.small.screw_margin(), frame.small.screw_spacing());
    let screw = frame.small.panel_screw(frames.deck_thickness);
    let screw_count = u32::try_from(2 * screws.len()).unwrap_or(0);
    let mut list = vec![
        Part::new("Deck", frame.rides(middle), Form::Sheet, panel, block(design.arms.density, panel))
            .along_grain()
            .joined("screwed to the rails along the offset lines")
            .drilled(deck_holes(design, &screws, screw.clearance_hole()))
            .hollowed(design.arms.density)
            .at(vec![Block::square(
                from(left, frames.deck_length),
                from(under, frames.deck_thickness),
                across,
            )]),
        frame
            .layered("Deck rail", rail_middle_x, [frames.deck_rail_length, frames.deck_rail_depth])
            .times(2)
            .along_grain()
            .joined("glued and screwed under the deck")
            .at(vec![Block::square(
                from(rail_left, frames.deck_rail_length),
                from(rail_under, frames.deck_rail_depth),
                frame.rail_plane(),
            )])
            .touching(Contact::DeckRail),
    ];
    let cheek_high = (lift.deck_stack - frames.deck_thickness - frames.wear).max(Length::ZERO) + running.pin;
    let cheek_z = about(arm_spread(design, false).to_m() / 2.0, frame_thickness(design));
    list.push(
        frame
            .layered("Deck pivot cheek", 0.0, [design.arms.end * 2, cheek_high])
            .times(2)
            .joined("under the deck beside the rail, packed out to it, glued, two bolts")
            .drilled(frame.cheek_holes(
                Joint::DeckPivot,
                running.pin,
                running.pin + Length::m(rail_under) + Length::from_steps(frames.deck_rail_depth.steps() / 2),
            ))
            .hollowed(design.arms.density)
            .at(vec![Block::square(
                about(0.0, design.arms.end * 2),
                [-running.pin.to_m(), under.max(-running.pin.to_m())],
                cheek_z,
            )]),
    );
    // From the inner face of the cheek to the outer face of the rail.
    let stack = rail_middle(design) + frame_thickness(design)
        - Length::from_steps(arm_spread(design, false).steps() / 2);
    let sweep = libm::hypot(design.arms.end.to_m(), design.arms.width.to_m() / 2.0);
    let inner = list.last().map(|cheek| frame.inner_cheeks(cheek, [sweep.min(under), under]));
    list.extend(inner.unwrap_or_default());
    let stack = if running.forks { frame_thickness(design) + frame.fork_stack() } else { stack };
    list.extend(frame.cheek_bolts(stack.max(frame_thickness(design))));
    list.push(
        Part::new(
            "Deck screw",
            Rides::Deck(rail_middle_x),
            Form::WoodScrew,
            [screw.length, screw.diameter, screw.length - frames.deck_thickness],
            screw.mass(),
        )
        .times(screw_count),
    );
    list.extend(frame.strips(rail_middle_x, rail_left, frames.deck_rail_length, rail_under));
    list.extend(frame.keepers(rail_middle_x, frames.deck_rail_length));
    if frames.wear > Length::ZERO {
        let size = [frames.deck_length, frames.deck_width, frames.wear];
        list.push(
            Part::new("Wear sheet", frame.rides(middle), Form::Bought, size, block(HARDBOARD, size))
                .joined("lies loose, held by four screws at its corners"),
        );
    }
    list
}

/// Two rows of screw holes over the middles of the rails.
fn deck_holes(design: &Design, screws: &[Length], diameter: Length) -> Vec<Hole> {
    let frames = &design.frames;
    let middle = Length::from_steps(frames.deck_width.steps() / 2);
    let start = frames.deck_rail_left - frames.deck_left;
    [middle - rail_middle(design), middle + rail_middle(design)]
        .into_iter()
        .flat_map(|across| {
            screws.iter().map(move |along| Hole {
                along: *along + start,
                across,
                diameter,
                purpose: Purpose::Countersunk,
                joint: None,
            })
        })
        .filter(|hole| hole.along > Length::ZERO && hole.along < frames.deck_length)
        .collect()
}
