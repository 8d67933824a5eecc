//! The deck panel between its rails: strength and how far it gives.
//!
//! Plain `f64` in SI. Its grain runs along the table, as the deck is laid on the sheet: from rail to rail it bends across it.
use super::across::across;
use super::check::{Check, Group, Lever, Member, Rule, Use, Weight};
use super::table::{Table, add};
use super::timber::Rectangle;
use crate::catalogue::{Source, Standing};
use crate::mechanics::GRAVITY;
use crate::mechanics::stiffness::{bar_at_middle, rectangle};
use crate::quantity::{Amount, Phrase};

const PANEL: Source = Source::new(
    "Wood Handbook FPL-GTR-190 equation 9-2 for a strip as wide as the load is long, at least half the span (strip: common practice)",
    Standing::Practice,
);

pub(super) fn checks(table: &Table<'_>, list: &mut Vec<Check>) {
    add(list, [panel(table), panel_give(table)]);
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
    let (strip, across) = (Strip::new(table), across(table.design));
    let strength = across.bending * table.kept();
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
                .and(format!("; {}", across.words))
        },
    )
}

fn panel_give(table: &Table<'_>) -> Option<Check> {
    let (strip, across) = (Strip::new(table), across(table.design));
    let give = strip.give(across.modulus, across.shear);
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
                .and(format!("; {}", across.words))
        },
    )
}
