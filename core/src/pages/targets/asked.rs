//! The questions of the form: each a quantity with its place in the targets.
use crate::design::Design;
use crate::quantity::{Force, Kind, Length, Mass, Money, Ratio};
use crate::report::search::{Measure, Stance, Target, Targets};

/// Where a question stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Part {
    /// Heights and deck.
    Deck,
    /// What stands on it.
    Load,
    /// Effort, stiffness, weight and cost.
    Figures,
    /// What things cost.
    Prices,
}

/// A quantity that is asked for.
pub(super) struct Ask {
    pub key: &'static str,
    pub part: Part,
    pub label: &'static str,
    pub kind: Kind,
    /// Least and greatest answer, in steps.
    pub range: (i64, i64),
    pub get: fn(&Targets) -> i64,
    pub set: fn(&mut Targets, i64),
    /// How it weighs; none for what is simply given.
    pub weight: Option<fn(&mut Targets) -> &mut Stance>,
}

const fn ask(
    key: &'static str,
    part: Part,
    label: &'static str,
    kind: Kind,
    range: (i64, i64),
    get: fn(&Targets) -> i64,
    set: fn(&mut Targets, i64),
) -> Ask {
    Ask { key, part, label, kind, range, get, set, weight: None }
}

impl Ask {
    const fn weighs(mut self, weight: fn(&mut Targets) -> &mut Stance) -> Self {
        self.weight = Some(weight);
        self
    }
}

const fn mm(from: f64, to: f64) -> (i64, i64) {
    (Length::mm(from).steps(), Length::mm(to).steps())
}

/// The greatest price that is taken, in steps.
const DEAR: (i64, i64) = (0, 100_000_000);

const fn ratio(from: f64, to: f64) -> (i64, i64) {
    (Ratio::of(from).steps(), Ratio::of(to).steps())
}

fn most(targets: &mut Targets, measure: Measure) -> &mut Target<f64> {
    &mut targets.most[measure.at()]
}

/// A price of the base design, by its place in it.
macro_rules! price {
    ($key:literal, $label:literal, $field:ident) => {
        ask(
            $key,
            Part::Prices,
            $label,
            Kind::Money,
            DEAR,
            |targets| targets.base.shop.$field.steps(),
            |targets, steps| targets.base.shop.$field = Money::from_steps(steps),
        )
    };
}

/// A figure at most, by its measure, with how it is read from SI and written to it.
macro_rules! most {
    ($key:literal, $label:literal, $kind:ident, $range:expr, $measure:ident, $to:expr, $from:expr) => {
        ask(
            $key,
            Part::Figures,
            $label,
            Kind::$kind,
            $range,
            |targets| ($to)(targets.most[Measure::$measure.at()].value),
            |targets, steps| most(targets, Measure::$measure).value = ($from)(steps),
        )
        .weighs(|targets| &mut most(targets, Measure::$measure).stance)
    };
}

/// A size of the load, by its place in the base design.
macro_rules! load {
    ($key:literal, $label:literal, $field:ident) => {
        ask(
            $key,
            Part::Load,
            $label,
            Kind::Length,
            mm(0.0, 5000.0),
            |targets| targets.base.load.$field.steps(),
            |targets, steps| targets.base.load.$field = Length::from_steps(steps),
        )
    };
}

/// A height or a side of the deck, by its place in the targets.
macro_rules! size {
    ($key:literal, $label:literal, $range:expr, $field:ident) => {
        ask(
            $key,
            Part::Deck,
            $label,
            Kind::Length,
            $range,
            |targets| targets.$field.value.steps(),
            |targets, steps| targets.$field.value = Length::from_steps(steps),
        )
        .weighs(|targets| &mut targets.$field.stance)
    };
}

fn length(metres: f64) -> i64 {
    Length::m(metres).steps()
}

fn metres(steps: i64) -> f64 {
    Length::from_steps(steps).to_m()
}

fn number(value: f64) -> i64 {
    Ratio::of(value).steps()
}

fn whole(value: f64) -> i64 {
    #[allow(clippy::cast_possible_truncation, reason = "sheets are few; the cast saturates")]
    let whole = value.round() as i64;
    whole
}

fn plain(steps: i64) -> f64 {
    Ratio::from_steps(steps).value()
}

/// Every question, in reading order.
pub(super) static ASKS: [Ask; 25] = [
    size!("lowest", "Lowest deck, at most", mm(50.0, 6000.0), lowest),
    size!("highest", "Highest deck, at least", mm(60.0, 12_000.0), highest),
    size!("deck-length", "Deck length", mm(60.0, 5000.0), deck_length),
    size!("deck-width", "Deck width", mm(60.0, 3000.0), deck_width),
    ask(
        "load",
        Part::Load,
        "Weight",
        Kind::Mass,
        (0, 200_000_000_000),
        |targets| targets.base.load.mass.steps(),
        |targets, steps| targets.base.load.mass = Mass::from_steps(steps),
    ),
    load!("load-length", "Length along the table", length),
    load!("load-width", "Width across", width),
    load!("load-height", "Height", height),
    ask(
        "off-middle",
        Part::Load,
        "Its middle off the deck’s",
        Kind::Length,
        mm(-3000.0, 3000.0),
        |targets| targets.off_middle.steps(),
        |targets, steps| targets.off_middle = Length::from_steps(steps),
    ),
    most!(
        "crank",
        "Crank force, at most",
        Force,
        (5000, 1_000_000),
        Crank,
        |value| Force::n(value).steps(),
        |steps| Force::from_steps(steps).to_n()
    ),
    most!("turns", "Turns, at most", Ratio, ratio(1.0, 5000.0), Turns, number, plain),
    ask(
        "time",
        Part::Figures,
        "Minutes for the whole lift",
        Kind::Ratio,
        ratio(0.05, 200.0),
        |targets| number(targets.time.value / 60.0),
        |targets, steps| targets.time.value = 60.0 * plain(steps),
    )
    .weighs(|targets| &mut targets.time.stance),
    most!("sag", "Sag, at most", Length, mm(0.1, 200.0), Sag, length, metres),
    most!("give", "Give sideways, at most", Length, mm(0.01, 100.0), Give, length, metres),
    most!(
        "weight",
        "Weight of the table",
        Mass,
        (100_000_000, 100_000_000_000),
        Weight,
        |value| Mass::kg(value).steps(),
        |steps| Mass::from_steps(steps).to_kg()
    ),
    most!("sheets", "Sheets, at most", Count, (1, 20), Sheets, whole, |steps| steps as f64),
    most!(
        "cost",
        "Cost, at most",
        Money,
        (100, 1_000_000_000),
        Cost,
        |value| Money::of(value).steps(),
        |steps| Money::from_steps(steps).value()
    ),
    price!("price-sheet", "A sheet", sheet_price),
    ask(
        "price-bar",
        Part::Prices,
        "Bar and tube",
        Kind::Rate,
        DEAR,
        |targets| targets.base.shop.bar_price.steps(),
        |targets, steps| targets.base.shop.bar_price = crate::quantity::Rate::from_steps(steps),
    ),
    price!("price-screw", "Screw with its nut", screw_price),
    price!("price-bearing", "A wheel bearing", bearing_price),
    price!("price-caster", "A caster", caster_price),
    price!("price-bolt", "A pivot bolt, complete", bolt_price),
    price!("price-small", "All small parts together", small_price),
    ask(
        "crank-pace",
        Part::Figures,
        "Turns a minute",
        Kind::Pace,
        (10, 3000),
        |targets| targets.base.drive.pace.steps(),
        |targets, steps| targets.base.drive.pace = crate::quantity::Pace::from_steps(steps),
    ),
];

/// Targets that ask for what a design has: its heights, deck and load as limits, its figures as they are free.
pub(super) fn of_design(targets: &mut Targets, design: &Design) {
    targets.base = design.clone();
    targets.lowest = Target::limit(design.lift.lowest);
    targets.highest = Target::limit(design.lift.highest);
    targets.deck_length = Target::limit(design.frames.deck_length);
    targets.deck_width = Target::limit(design.frames.deck_width);
    let middle = design.frames.deck_left + Length::from_steps(design.frames.deck_length.steps() / 2);
    targets.off_middle = design.load.centre - middle;
    targets.most[Measure::Crank.at()] = Target::limit(design.drive.crank_limit.to_n());
}
