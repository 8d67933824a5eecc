//! Whether deck, planks, beams and casters lie on each other.
use crate::design::Design;
use crate::parts::{caster_places, deck_reach, plank_end, plank_reach, plate_screws, rail_faces};
use crate::quantity::{Amount, Length, Phrase};
use crate::report::finding::{Finding, Grade, Spot};
use crate::report::relations::{least, most};
use crate::report::{Report, reach};

/// Less than this no saw keeps to (common practice, no source).
const SAWN: Length = Length::mm(0.25);

/// A caster is at least so much higher than its wheel, as a part of the wheel: fork, head and plate (common practice, no source; bought ones
/// stand a sixth to a half higher).
const CASTER_HEAD: i64 = 10;

/// Everything that does not lie on what should carry it.
pub(super) fn laps(report: &Report) -> Vec<Finding> {
    let design = &report.design;
    let running = &design.running;
    [
        deck(design),
        planks(design),
        aside(design),
        narrow(design),
        past(design, "left", running.caster_left, Spot::LeftCaster),
        past(design, "right", running.caster_right, Spot::RightCaster),
        high(design),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn half(size: Length) -> Length {
    Length::from_steps(size.steps() / 2)
}

fn size(length: Length) -> Amount {
    Amount::Size(length.to_m())
}

/// What is missing, where it is more than a saw leaves.
fn short(lacking: Length) -> Option<Amount> {
    (lacking > SAWN).then(|| size(lacking))
}

fn over(lacking: Length, of: Length, spot: Spot, phrase: Phrase, remedy: Phrase) -> Finding {
    Finding {
        grade: Grade::Over,
        ratio: 1.0 + lacking.to_m() / of.to_m().max(1e-3),
        phrase,
        remedy: Some(remedy),
        cure: None,
        height: None,
        spot,
        curve: None,
    }
}

/// Wide enough, or wheels and arms so much nearer to the middle where the arms have room there.
fn wider(design: &Design, needed: Length, lacking: Length) -> Phrase {
    let mut nearer = design.clone();
    nearer.running.wheel_place -= lacking;
    nearer.frames.spread -= lacking * 2;
    let start = Phrase::new("Make the deck at least ").with(least(needed * 2)).and(" wide");
    if reach(&nearer).is_ok() {
        start
            .and(", or put the wheels at most ")
            .with(most(nearer.running.wheel_place))
            .and(" off the middle and the arms at most ")
            .with(most(nearer.frames.spread))
            .and(" apart.")
    } else {
        start.and(".")
    }
}

/// The deck over the screws of its rails.
fn deck(design: &Design) -> Option<Finding> {
    let (needed, width) = (deck_reach(design), half(design.frames.deck_width));
    let lacking = needed - width;
    let by = short(lacking)?;
    let [inner, _] = rail_faces(design);
    let phrase = if width < inner {
        Phrase::new("The deck does not reach its rails: on either side they begin ")
            .with(size(inner - width))
            .and(" past its edge.")
    } else {
        Phrase::new("The deck does not reach far enough over its rails for their screws: ")
            .with(by)
            .and(" are missing on either side.")
    };
    Some(over(lacking, needed, Spot::Deck, phrase, wider(design, needed, lacking)))
}

/// The base planks, as long as the deck is wide, over the base beams.
fn planks(design: &Design) -> Option<Finding> {
    let needed = plank_reach(design);
    let lacking = needed - half(design.frames.deck_width);
    let phrase =
        Phrase::new("The base planks, as long as the deck is wide, do not reach over the base beams: ")
            .with(short(lacking)?)
            .and(" are missing on either side.");
    Some(over(lacking, needed, Spot::Base, phrase, wider(design, needed, lacking)))
}

/// The casters' outer screws in plank or beam, across.
fn aside(design: &Design) -> Option<Finding> {
    let (screws, end) = (plate_screws(design), plank_end(design));
    let outer = design.running.caster_across + screws;
    let phrase = Phrase::new("The casters' plates reach past their planks: their outer screws stand ")
        .with(short(outer - end)?)
        .and(" beside the wood.");
    let remedy = Phrase::new("Put the casters at most ")
        .with(most(end - screws))
        .and(" off the middle, or make the deck, and with it the planks, at least ")
        .with(least(outer * 2))
        .and(" wide.");
    Some(over(outer - end, screws, Spot::LeftCaster, phrase, remedy))
}

/// The casters' screws in their plank, along; a plate that lies wholly under a beam needs no plank for them.
fn narrow(design: &Design) -> Option<Finding> {
    let (screws, across) = (plate_screws(design), design.running.caster_across);
    let [inner, outer] = rail_faces(design);
    let lacking = screws - half(design.frames.plank_width);
    let by = short(lacking)?;
    if across - screws >= inner && across + screws <= outer {
        return None;
    }
    let phrase = Phrase::new("The casters' plates are wider than the base planks: their screws stand ")
        .with(by)
        .and(" beside the wood.");
    let remedy = Phrase::new("Make the planks at least ")
        .with(least(screws * 2))
        .and(" wide, or take casters with smaller wheels.");
    Some(over(lacking, screws, Spot::LeftCaster, phrase, remedy))
}

/// The plank of a pair of casters on the beams, along.
fn past(design: &Design, side: &str, place: Length, spot: Spot) -> Option<Finding> {
    let [from, to] = caster_places(design);
    let (lacking, at) = if place < from { (from - place, least(from)) } else { (place - to, most(to)) };
    let phrase =
        Phrase::new(format!("The {side} casters stand past the base beams: they and their plank are "))
            .with(short(lacking)?)
            .and(" too far out.");
    let remedy = Phrase::new("Put them at ")
        .with(at)
        .and(" from the fixed pivots, or make the base beams that much longer there.");
    Some(over(lacking, design.frames.plank_width, spot, phrase, remedy))
}

/// A caster's wheel under its plate.
fn high(design: &Design) -> Option<Finding> {
    let running = &design.running;
    let head = Length::from_steps(running.caster_wheel.steps() / CASTER_HEAD);
    let needed = running.caster_wheel + head;
    let lacking = needed - running.caster_height;
    short(lacking)?;
    let phrase = Phrase::new("A caster ")
        .with(size(running.caster_height))
        .and(" high has no room for a wheel of ")
        .with(size(running.caster_wheel))
        .and(".");
    let wheel = running.caster_height.steps() * CASTER_HEAD / (CASTER_HEAD + 1);
    let remedy = Phrase::new("Take casters at least ")
        .with(least(needed))
        .and(" high, or wheels of at most ")
        .with(most(Length::from_steps(wheel)))
        .and(".");
    Some(over(lacking, running.caster_wheel, Spot::LeftCaster, phrase, remedy))
}
