//! Deck rails, base beams and the deck panel: strength and how far they give.
//!
//! Plain `f64` in SI. The load stands at one point of the rails: on the safe side for a load that is spread. The wheel strips do not help.
use super::check::{Check, Group, Lever, Member, Rule, Use, Weight};
use super::level::Loaded;
use super::table::{Table, add};
use super::timber::Rectangle;
use crate::catalogue::{Source, Standing};
use crate::mechanics::stiffness::{bar_at_middle, rectangle};
use crate::mechanics::{GRAVITY, Section};
use crate::quantity::{Amount, Phrase};

/// Shear stiffness of a panel bent flatwise over that on edge: plywood's rolling shear (Wood Handbook FPL-GTR-190, chapter 5, by ratio).
const FLATWISE: f64 = 0.25;

const BEAM: Source = Source::new("Beam theory; any text on the strength of materials", Standing::Practice);
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
            rail_give(table, true),
            rail_give(table, false),
            panel(table),
            panel_give(table),
        ],
    );
}

/// One rail or beam.
fn rail(table: &Table<'_>, deck: bool) -> Rectangle {
    let frames = &table.design.frames;
    let depth = if deck { frames.deck_rail_depth } else { frames.beam_depth }.to_m();
    Rectangle { depth, thickness: table.frame_thickness(), hole: 0.0 }
}

/// The section of the rails with the greatest moment in any state, all sides.
fn most_bent(at: &Loaded<'_>, deck: bool, bar: &Rectangle) -> Section {
    let diagrams = (0..3).filter_map(|state| {
        if deck { at.deck_rails.get(state) } else { at.base_rails.get(state).and_then(Option::as_ref) }
    });
    diagrams
        .map(|diagram| diagram.worst_section(bar.modulus(), bar.area()))
        .fold(Section::default(), |most, here| if here.m.abs() > most.m.abs() { here } else { most })
}

fn rails(table: &Table<'_>, deck: bool) -> Option<Check> {
    let (bar, strength, share) = (rail(table, deck), table.bending(), table.share);
    let member = if deck { Member::DeckRails } else { Member::BaseBeams };
    let rule = Rule {
        id: if deck { "deck-rails" } else { "base-beams" },
        group: Group::Frames,
        title: if deck { "Deck rails between pivot and wheel" } else { "Base beams between the casters" },
        weight: Weight::Limit,
        formula: "σ = 6 M / t h²",
        source: BEAM,
        unit: Amount::Stress,
        levers: if deck {
            &[Lever::DeckRails, Lever::FrameLayer]
        } else {
            &[Lever::BaseBeams, Lever::FrameLayer]
        },
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(member, bar.edge_stress(&most_bent(at, deck, &bar)) * share, strength)),
        |at, most| {
            Phrase::new("σ = ")
                .with(Amount::Torque(most_bent(at, deck, &bar).m.abs() * share))
                .and(" / ")
                .with(Amount::Modulus(bar.modulus()))
                .and(" = ")
                .with(Amount::Stress(most.demand))
        },
    )
}

fn rail_give(table: &Table<'_>, deck: bool) -> Option<Check> {
    let over = table.design.strength.stiffness.get() as f64;
    let running = &table.design.running;
    let member = if deck { Member::DeckRails } else { Member::BaseBeams };
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
        levers: if deck {
            &[Lever::DeckRails, Lever::FrameLayer]
        } else {
            &[Lever::BaseBeams, Lever::FrameLayer]
        },
    };
    let give = |at: &Loaded<'_>| {
        let drop = &at.level.deflection?.drop;
        let part = if deck { drop.top_rails } else { drop.base_rails };
        Some(2.0 * table.share * part.abs())
    };
    rule.check(
        table.levels,
        |at| Some(Use::new(member, give(at)?, span(at) / over)),
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
