//! Casters and tipping.
//!
//! Plain `f64` in SI. A swivel caster's wheel stands beside its plate by its trail; every caster is taken where it helps least.
use super::check::{Check, Group, Lever, Member, Rule, Use, Verdict, Weight, part};
use super::level::{Level, Loaded};
use super::table::{Table, add};
use crate::catalogue::{Source, Standing};
use crate::design::Design;
use crate::mechanics::GRAVITY;
use crate::quantity::{Amount, Phrase};
use glam::DVec2;

const RATING: Source = Source::new(
    "Trade guidance of caster makers: of four casters three carry everything, for no floor is flat",
    Standing::Read,
);
const MOMENTS: Source = Source::new("Moments about the casters' wheels", Standing::Practice);

/// Of so many casters at four corners all but one carry everything, N: (table + load) / (n - 1).
#[must_use]
pub fn on_one_of(casters: u32, total: f64) -> f64 {
    total / f64::from(casters.saturating_sub(1).max(1))
}

/// How the table stands at one height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stance {
    /// Weight of everything, N.
    pub weight: f64,
    /// Where it stands along the table, the push of the design included, m from the fixed pivots.
    pub along: f64,
    /// Where it stands across, m from the middle.
    pub across: f64,
    /// Where the wheels of the casters stand along the table at worst, left and right, m.
    pub wheels: [f64; 2],
    /// Where the wheels stand across at worst, m from the middle.
    pub half_track: f64,
    /// Height of the deck, m.
    pub deck: f64,
    /// Height of the load's centre of gravity, m; of the deck where there is no load.
    pub centre: f64,
    /// The load's part of the weight, N, and its place along the table, m.
    load: (f64, f64),
}

impl Stance {
    /// At a height of a design; none without casters.
    #[must_use]
    pub fn of(design: &Design, level: &Level<'_>) -> Option<Self> {
        let (running, load) = (&design.running, &design.load);
        let [left, right] = level.state.casters?;
        let weight = left + right;
        let places = [running.caster_left.to_m(), running.caster_right.to_m()];
        let trail = running.caster_trail.to_m();
        let live = load.mass.to_kg() * GRAVITY;
        let on_deck = DVec2::new(load.centre.to_m(), design.lift.deck_stack.to_m());
        Some(Self {
            weight,
            along: (left * places[0] + right * places[1]) / weight,
            across: live * load.across.to_m() / weight,
            wheels: [places[0] + trail, places[1] - trail],
            half_track: running.caster_across.to_m() - trail,
            deck: level.deck,
            centre: level.deck + if live > 0.0 { load.rise() } else { 0.0 },
            load: (live, level.pose.top.point(on_deck).x),
        })
    }

    /// Forces on the left and right pair of casters, N; negative where a pair would lift.
    #[must_use]
    pub fn pairs(&self) -> [f64; 2] {
        let [left, right] = self.wheels;
        let at_right = self.weight * (self.along - left) / (right - left);
        [self.weight - at_right, at_right]
    }

    /// Distance from the middle between the wheels over half of theirs, along and across the table: above 1 it tips.
    #[must_use]
    pub fn lean(&self) -> [f64; 2] {
        let [left, right] = self.wheels;
        let along = (self.along - (left + right) / 2.0).abs();
        [part(along, (right - left) / 2.0), part(self.across.abs(), self.half_track)]
    }

    /// The same table with nothing on its deck.
    #[must_use]
    pub fn empty(&self) -> Self {
        let (live, place) = self.load;
        let weight = (self.weight - live).max(0.0);
        let along =
            if weight > 0.0 { (self.weight * self.along - live * place) / weight } else { self.along };
        Self { weight, along, across: 0.0, centre: self.deck, load: (0.0, place), ..*self }
    }

    /// The smallest level push at a height above the floor, m, that tips the table, along and across, N; zero where it tips by itself.
    #[must_use]
    pub fn least_push(&self, height: f64) -> [f64; 2] {
        let [left, right] = self.wheels;
        let along = (self.along - left).min(right - self.along);
        let across = self.half_track - self.across.abs();
        [along, across].map(|arm| self.weight * arm.max(0.0) / height)
    }

    /// Where the middle of the load may stand along the table before it tips, m from the fixed pivots; everywhere without a load.
    #[must_use]
    pub fn load_places(&self) -> [f64; 2] {
        let (weight, place) = self.load;
        self.wheels.map(|wheel| place + self.weight * (wheel - self.along) / weight)
    }
}

impl Table<'_> {
    fn stance(&self, at: &Loaded<'_>) -> Option<Stance> {
        Stance::of(self.design, &at.level)
    }
}

pub(super) fn checks(table: &Table<'_>, list: &mut Vec<Check>) {
    add(
        list,
        [rating(table), tips(table, 0), tips(table, 1), pushed(table, 0, false), pushed(table, 1, false)],
    );
    add(list, [pushed(table, 0, true), pushed(table, 1, true)]);
}

fn rating(table: &Table<'_>) -> Option<Check> {
    let rating = table.design.running.caster_rating.to_n();
    let rule = Rule {
        id: "caster-rating",
        group: Group::Stability,
        title: "Force on a caster",
        weight: Weight::Limit,
        formula: "larger of (table + load) / 3 and the worse corner",
        source: RATING,
        unit: Amount::Force,
        levers: &[Lever::Casters, Lever::Load],
    };
    // The worse corner: its pair's force, by the lever rule across.
    let corner = |stance: &Stance| {
        let [left, right] = stance.pairs();
        let side = 0.5 * (1.0 + part(stance.across.abs(), stance.half_track));
        (left * side, right * side)
    };
    rule.check(
        table.levels,
        |at| {
            let stance = table.stance(at)?;
            let (left, right) = corner(&stance);
            let member = if left > right { Member::LeftCasters } else { Member::RightCasters };
            Some(Use::new(member, on_one_of(4, stance.weight).max(left).max(right), rating))
        },
        |at, most| {
            let weight = table.stance(at).map_or(0.0, |stance| stance.weight);
            Phrase::default()
                .with(Amount::Force(weight))
                .and(" / 3 = ")
                .with(Amount::Force(on_one_of(4, weight)))
                .and("; taken ")
                .with(Amount::Force(most.demand))
        },
    )
}

/// The pair of casters on whose side the weight stands: those it tips over.
fn towards(stance: &Stance) -> Member {
    let [left, right] = stance.wheels;
    if stance.along < (left + right) / 2.0 { Member::LeftCasters } else { Member::RightCasters }
}

fn tips(table: &Table<'_>, way: usize) -> Option<Check> {
    let rule = Rule {
        id: ["tip-along", "tip-across"][way],
        group: Group::Stability,
        title: ["Tipping along, by its weight", "Tipping sideways, by its weight"][way],
        weight: Weight::Limit,
        formula: "weight off the middle / half the wheels' distance ≤ 1, casters at their worst trail",
        source: MOMENTS,
        unit: Amount::Size,
        levers: &[Lever::Casters, Lever::Load],
    };
    let figures = |stance: &Stance| {
        let [left, right] = stance.wheels;
        if way == 0 {
            ((stance.along - (left + right) / 2.0).abs(), (right - left) / 2.0)
        } else {
            (stance.across.abs(), stance.half_track)
        }
    };
    rule.check(
        table.levels,
        |at| {
            let stance = table.stance(at)?;
            let (off, half) = figures(&stance);
            Some(Use::new(towards(&stance), off, half))
        },
        |at, most| {
            let start = Phrase::default()
                .with(Amount::Size(most.demand))
                .and(" off the middle, of ")
                .with(Amount::Size(most.capacity));
            match table.stance(at) {
                Some(stance) if way == 0 && stance.load.0 > 0.0 => {
                    let [from, to] = stance.load_places();
                    start
                        .and("; here the load's middle may stand from ")
                        .with(Amount::Size(from))
                        .and(" to ")
                        .with(Amount::Size(to))
                        .and(" from the fixed pivots")
                }
                _ => start,
            }
        },
    )
}

/// A push along or across: at the middle of the load, which never lies below the deck, or, the load taken off, at the deck of the empty table. That
/// nobody pushes higher is assumed.
///
/// What only the empty table does not stand is told, and no more: raised and empty it is lowered before it is pushed (common practice, no source).
fn pushed(table: &Table<'_>, way: usize, empty: bool) -> Option<Check> {
    if empty && table.design.load.mass.steps() <= 0 {
        return None;
    }
    let asked = table.design.strength.lean.to_n();
    let [id, title] = PUSHES[way][usize::from(empty)];
    let rule = Rule {
        id,
        group: Group::Stability,
        title,
        weight: Weight::Limit,
        formula: if empty {
            "P h ≤ W a without the load, h to the deck; lower the empty table before you push it"
        } else {
            "P h ≤ W a,  h to the load's middle, a from the weight to the nearer wheels at their worst trail"
        },
        source: MOMENTS,
        unit: Amount::Force,
        levers: &[Lever::Casters, Lever::Load],
    };
    let stance = |at: &Loaded<'_>| {
        let stance = table.stance(at)?;
        Some(if empty { stance.empty() } else { stance })
    };
    let check = rule.check(
        table.levels,
        |at| {
            let stance = stance(at)?;
            Some(Use::new(towards(&stance), asked, stance.least_push(stance.centre)[way]))
        },
        |at, most| {
            Phrase::new("tips at ")
                .with(Amount::Force(most.capacity))
                .and(", pushed ")
                .with(Amount::Size(stance(at).map_or(0.0, |stance| stance.centre)))
                .and(" above the floor")
        },
    )?;
    let verdict = if empty { check.verdict.max(Verdict::Watch) } else { check.verdict };
    Some(Check { verdict, ..check })
}

/// Id and title of a push along and across, with the load and without.
const PUSHES: [[[&str; 2]; 2]; 2] = [
    [["push-along", "Pushed endways"], ["push-along-empty", "Empty with the deck up, pushed endways"]],
    [["push-across", "Pushed sideways"], ["push-across-empty", "Empty with the deck up, pushed sideways"]],
];
