//! Deck rails and base beams: strength and how far they give.
//!
//! Plain `f64` in SI. The load stands at one point of the rails: on the safe side for a load that is spread. The wheel strips do not help.
use super::check::{Check, Group, Lever, Member, Rule, Use, Weight};
use super::level::Loaded;
use super::net::{Stretch, stretches, worst};
use super::table::{Table, add};
use super::timber::uncracked;
use crate::catalogue::{Source, Standing};
use crate::quantity::{Amount, Phrase};

const BEAM: Source = Source::new("Beam theory; any text on the strength of materials", Standing::Practice);
const SHEAR: Source =
    Source::new("Beam theory; k_cr of EN 1995-1-1/A1:2008, 6.1.7 (values from memory)", Standing::SecondHand);
const GIVE: Source = Source::new("Span over a number, as usual for floors", Standing::Practice);
pub(super) fn checks(table: &Table<'_>, list: &mut Vec<Check>) {
    add(
        list,
        [
            rails(table, true),
            rails(table, false),
            rail_shear(table, true),
            rail_shear(table, false),
            rail_give(table, true),
            rail_give(table, false),
        ],
    );
}

fn rails(table: &Table<'_>, deck: bool) -> Option<Check> {
    let (stretches, strength, share) = (stretches(table.design, deck), table.bending(), table.share);
    let worst = |at: &Loaded<'_>| worst(at, deck, &stretches, Stretch::bent);
    let rule = Rule {
        id: if deck { "deck-rails" } else { "base-beams" },
        group: Group::Frames,
        title: if deck { "Deck rails between pivot and wheel" } else { "Base beams between the casters" },
        weight: Weight::Limit,
        formula: "σ = |M| / W,  W = t (h³ − d³) / 6 h of what halvings and bolts leave",
        source: BEAM,
        unit: Amount::Stress,
        levers: levers(deck),
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(member(deck), worst(at)?.stress * share, strength)),
        |at, most| {
            let Some(worst) = worst(at) else { return Phrase::default() };
            Phrase::new("σ = ")
                .with(Amount::Torque(worst.section.m.abs() * share))
                .and(" / ")
                .with(Amount::Modulus(worst.bar.modulus()))
                .and(" = ")
                .with(Amount::Stress(most.demand))
                .then(worst.place())
        },
    )
}

/// Shear of rails and beams, cracks from drying allowed for.
fn rail_shear(table: &Table<'_>, deck: bool) -> Option<Check> {
    let (stretches, strength, share) = (stretches(table.design, deck), table.shear(), table.share);
    let left = uncracked(table.design);
    let worst = |at: &Loaded<'_>| worst(at, deck, &stretches, Stretch::sheared);
    let rule = Rule {
        id: if deck { "deck-rails-shear" } else { "base-beams-shear" },
        group: Group::Frames,
        title: if deck { "Deck rails in shear" } else { "Base beams in shear" },
        weight: Weight::Limit,
        formula: "τ = 3/2 |V| / A,  A = k_cr t (h − d) of what halvings and bolts leave,  k_cr = 0.67 for solid wood, 1 for plywood",
        source: SHEAR,
        unit: Amount::Stress,
        levers: levers(deck),
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(member(deck), worst(at)?.stress * share / left, strength)),
        |at, most| {
            let Some(worst) = worst(at) else { return Phrase::default() };
            Phrase::new("τ = 1.5 × ")
                .with(Amount::Thrust(worst.section.v.abs() * share))
                .and(" / ")
                .with(Amount::Section(left * worst.bar.area()))
                .and(" = ")
                .with(Amount::Stress(most.demand))
                .then(worst.place())
        },
    )
}

const fn member(deck: bool) -> Member {
    if deck { Member::DeckRails } else { Member::BaseBeams }
}

const fn levers(deck: bool) -> &'static [Lever] {
    if deck { &[Lever::DeckRails, Lever::FrameLayer] } else { &[Lever::BaseBeams, Lever::FrameLayer] }
}

fn rail_give(table: &Table<'_>, deck: bool) -> Option<Check> {
    let over = table.design.strength.stiffness.get() as f64;
    let running = &table.design.running;
    let span = |at: &Loaded<'_>| {
        if deck { at.level.pose.top_axle.x } else { (running.caster_right - running.caster_left).to_m() }
    };
    let rule = Rule {
        id: if deck { "deck-rails-give" } else { "base-beams-give" },
        group: Group::Frames,
        title: if deck { "Deck rails, give under the load" } else { "Base beams, give under the load" },
        weight: Weight::Limit,
        formula: "give at the load ≤ span / n",
        source: GIVE,
        unit: Amount::Give,
        levers: levers(deck),
    };
    let give = |at: &Loaded<'_>| {
        let drop = &at.level.deflection?.drop;
        let part = if deck { drop.top_rails } else { drop.base_rails };
        Some(2.0 * table.share * part.abs())
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(member(deck), give(at)?, span(at) / over)),
        |at, most| {
            Phrase::default()
                .with(Amount::Give(most.demand))
                .and(" against ")
                .with(Amount::Size(span(at)))
                .and(format!(" / {over} = "))
                .with(Amount::Give(most.capacity))
        },
    )
}
