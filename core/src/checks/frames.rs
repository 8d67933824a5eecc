//! Deck rails, base beams and the deck panel: strength and how far they give.
//!
//! Plain `f64` in SI. The load stands at one point of the rails: on the safe side for a load that is spread. The wheel strips do not help.
use super::check::{Check, Group, Lever, Member, Rule, Use, Weight};
use super::level::Loaded;
use super::net::{stretches, worst};
use super::table::{Table, add};
use super::timber::{Rectangle, uncracked};
use crate::catalogue::{Source, Standing};
use crate::mechanics::GRAVITY;
use crate::mechanics::stiffness::{bar_at_middle, rectangle};
use crate::quantity::{Amount, Phrase};

/// Shear stiffness of a panel bent flatwise over that on edge: plywood's rolling shear (Wood Handbook FPL-GTR-190, chapter 5, by ratio).
const FLATWISE: f64 = 0.25;

const BEAM: Source = Source::new("Beam theory; any text on the strength of materials", Standing::Practice);
const SHEAR: Source = Source::new(
    "Beam theory; k_cr of EN 1995-1-1/A1:2008, 6.1.7 (values from memory)",
    Standing::SecondHand,
);
const GIVE: Source = Source::new("Span over a number, as usual for floors", Standing::Practice);
const PANEL: Source = Source::new(
    "Wood Handbook FPL-GTR-190 equation 9-2 for a strip as wide as the load is long, at least half the span (strip: common practice)",
    Standing::Practice,
);

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
            panel(table),
            panel_give(table),
        ],
    );
}

fn rails(table: &Table<'_>, deck: bool) -> Option<Check> {
    let (stretches, strength, share) = (stretches(table.design, deck), table.bending(), table.share);
    let worst = |at: &Loaded<'_>| worst(at, deck, &stretches, Rectangle::edge_stress);
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
    let worst = |at: &Loaded<'_>| worst(at, deck, &stretches, Rectangle::shear_stress);
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

/// The strip of the deck panel that carries the load from rail to rail.
struct Strip {
    span: f64,
    bar: Rectangle,
    load: f64,
}

impl Strip {
    fn new(table: &Table<'_>) -> Self {
        let (frames, load) = (&table.design.frames, &table.design.load);
        let span = 2.0 * table.design.running.wheel_place.to_m();
        let width = load.length.to_m().max(span / 2.0).min(frames.deck_length.to_m());
        let bar = Rectangle { depth: frames.deck_thickness.to_m(), thickness: width, hole: 0.0 };
        Self { span, bar, load: load.mass.to_kg() * GRAVITY }
    }

    fn moment(&self) -> f64 {
        self.load * self.span / 4.0
    }

    /// Give at the middle, bending and shear, m.
    fn give(&self, e: f64, g: f64) -> f64 {
        let bent = self.load / bar_at_middle(e * rectangle(self.bar.thickness, self.bar.depth), self.span);
        bent + self.load * self.span / (4.0 * 5.0 / 6.0 * g * self.bar.area())
    }
}

fn panel(table: &Table<'_>) -> Option<Check> {
    let (strip, strength) = (Strip::new(table), table.bending());
    let stress = strip.moment() / strip.bar.modulus();
    let rule = Rule {
        id: "deck-panel",
        group: Group::Frames,
        title: "Deck panel between its rails",
        weight: Weight::Limit,
        formula: "σ = 6 M / b t²,  M = W s / 4",
        source: PANEL,
        unit: Amount::Stress,
        levers: &[Lever::Deck],
    };
    rule.check(
        table.levels,
        |_| Some(Use::new(Member::Deck, stress, strength)),
        |_, most| {
            Phrase::new("M = ")
                .with(Amount::Force(strip.load))
                .and(" × ")
                .with(Amount::Size(strip.span))
                .and(" / 4, on ")
                .with(Amount::Size(strip.bar.thickness))
                .and(" of panel: ")
                .with(Amount::Stress(most.demand))
        },
    )
}

fn panel_give(table: &Table<'_>) -> Option<Check> {
    let (strip, arms) = (Strip::new(table), &table.design.arms);
    let give = strip.give(arms.modulus.to_pa(), FLATWISE * arms.shear_modulus.to_pa());
    let over = table.design.strength.stiffness.get() as f64;
    let rule = Rule {
        id: "deck-panel-give",
        group: Group::Frames,
        title: "Deck panel, give under the load",
        weight: Weight::Limit,
        formula: "W s³ / 48 E I + W s / (4 · 5/6 · G b t) ≤ s / n",
        source: PANEL,
        unit: Amount::Give,
        levers: &[Lever::Deck],
    };
    rule.check(
        table.levels,
        |_| Some(Use::new(Member::Deck, give, strip.span / over)),
        |_, most| {
            Phrase::default()
                .with(Amount::Give(most.demand))
                .and(" against ")
                .with(Amount::Size(strip.span))
                .and(format!(" / {over} = "))
                .with(Amount::Give(most.capacity))
        },
    )
}
