//! What parts and forces are called.
use crate::drawing::chart::joint_words;
use crate::mechanics::{Cause, Freed, JointId};
use crate::quantity::{System, figures};
use glam::DVec2;

/// A part in the words of a builder.
#[must_use]
pub fn part_words(part: Freed) -> String {
    match part {
        Freed::Arm(arm) => format!("arm {arm}"),
        Freed::Deck => "deck".to_owned(),
        Freed::BaseCarriage => "base carriage".to_owned(),
        Freed::DeckCarriage => "deck carriage".to_owned(),
        Freed::Base => "base".to_owned(),
    }
}

/// What a force on a part comes from, in the words of a builder.
#[must_use]
pub fn name(cause: Cause, part: Freed) -> String {
    let at_the_wheels = |wheels: &str, rail: &str| {
        let carriage = matches!(part, Freed::BaseCarriage | Freed::DeckCarriage);
        if carriage { rail.to_owned() } else { wheels.to_owned() }
    };
    match cause {
        Cause::Joint(joint) => joint_words(joint),
        Cause::Rubbing(joint) => format!("friction, {}", joint_words(joint)),
        Cause::Guide(JointId::Br) => at_the_wheels("base axle, held from turning", "held by the base"),
        Cause::Guide(_) => at_the_wheels("deck axle, held from turning", "held by the deck"),
        Cause::Wheels(JointId::Br) => at_the_wheels("base wheels", "base rail"),
        Cause::Wheels(_) => at_the_wheels("deck wheels", "deck rail"),
        Cause::Drag(_) => "rolling drag".to_owned(),
        Cause::Screw => "screw".to_owned(),
        Cause::ScrewRubbing => "friction, screw pin".to_owned(),
        Cause::Weight => "own weight".to_owned(),
        Cause::Load => "load".to_owned(),
        Cause::Push => "push".to_owned(),
        Cause::Caster(0) => "left casters".to_owned(),
        Cause::Caster(_) => "right casters".to_owned(),
        Cause::Floor => "floor, sideways".to_owned(),
    }
}

/// The letter of a force on drawing, polygon and table, by its place in the list.
#[must_use]
pub fn letter(place: usize) -> String {
    let signs = 'a'..='z';
    let count = signs.clone().count();
    let sign = signs.into_iter().nth(place % count).unwrap_or('a');
    if place < count { sign.to_string() } else { format!("{sign}{}", place / count) }
}

/// Whether the forces lead back to where they began, as far as their figures can show it, from the gap that is left, N.
#[must_use]
pub fn closing(gap: f64, system: System) -> String {
    let figure = figures::small_force(gap, system);
    if figure.is_nothing() { "closes: no gap".to_owned() } else { format!("does not close: gap {figure}") }
}

/// Which way a force points, to the nearest eighth of a turn.
#[must_use]
pub fn direction(force: DVec2) -> &'static str {
    // A part of the smaller component beyond which a direction is a slanting one: tan(22.5°).
    const SLANTING: f64 = 0.414_213_562_373_095_1;
    let (across, up) = (force.x.abs(), force.y.abs());
    let right = force.x > 0.0;
    let upwards = force.y > 0.0;
    match (across < SLANTING * up, up < SLANTING * across) {
        (true, _) if upwards => "up",
        (true, _) => "down",
        (_, true) if right => "to the right",
        (_, true) => "to the left",
        _ => match (upwards, right) {
            (true, true) => "up to the right",
            (true, false) => "up to the left",
            (false, true) => "down to the right",
            (false, false) => "down to the left",
        },
    }
}
