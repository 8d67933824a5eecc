//! Steps a builder could take, each run through the whole analysis.
use super::results::{Outcome, Results, give};
use crate::catalogue::Row;
use crate::catalogue::panel::PANELS;
use crate::catalogue::thread::Thread;
use crate::checks::{Lever, Verdict};
use crate::design::{Design, Field, Group, check, panel, set_panel, set_thread, thread};
use crate::quantity::{Amount, Kind, Length, Money, Phrase, lower};
use crate::report::stiffen::Step as Remedy;
use crate::report::trial::Trial;
use crate::report::{LEAST_MULTIPLE, Report, analyse, findings};
use crate::workshop::cost;

/// A step that was run.
#[derive(Clone, Debug)]
pub struct Step {
    /// What is changed, as the beginning of a sentence.
    pub words: Phrase,
    /// The figures after it.
    pub after: Results,
    /// What it costs more; none where a price that matters is not known.
    pub cost: Option<Money>,
    /// The design after it.
    pub design: Box<Design>,
    /// Whether it changes what is asked of the table, and not only the table.
    pub asks: bool,
}

/// A step before it is run.
#[derive(Clone, Debug)]
pub(super) struct Idea {
    words: Phrase,
    design: Design,
}

/// Steps that are no matter of a size.
const LEVERS: [Lever; 8] = [
    Lever::Pin,
    Lever::Bush,
    Lever::BoltClass,
    Lever::Axle,
    Lever::Pull,
    Lever::FrameLayer,
    Lever::Casters,
    Lever::Load,
];

/// Inputs of the builder's groups that are no choice of size: what materials and bought parts are, and what belongs to a bought part.
const GIVEN: [&str; 32] = [
    "am", "ag", "ad", "at", "dk", "bt", "ac", "db", "dt", "pl", "dh", "sj", "sm", "sr", "sp", "sl", "sf",
    "mt", "mc", "cd", "nb", "cp", "cl", "sn", "pd", "bo", "mp", "xd", "wd", "wt", "rr", "wk",
];

/// More of the same: casters, guides and the joint's test.
const GIVEN_TOO: [&str; 14] =
    ["ch", "cq", "ct", "ca", "ck", "rg", "gk", "gf", "gt", "gr", "gd", "lc", "lh", "ll"];

/// Whether an input is a size that a builder can choose.
fn is_chosen(field: &Field, design: &Design) -> bool {
    let group = matches!(
        field.group,
        Group::Lift | Group::Arms | Group::Frames | Group::Drive | Group::Running | Group::Sway | Group::Load
    );
    let size = matches!(field.kind, Kind::Length | Kind::Mass | Kind::Ratio);
    let given = GIVEN.contains(&field.key) || GIVEN_TOO.contains(&field.key);
    group && size && !given && field.shown(design) && field.get(design) != 0
}

/// Whether an input says what is asked of a table: the load with its place, and the heights that the deck reaches.
fn is_asked(field: &Field) -> bool {
    field.group == Group::Load || ["lo", "hi"].contains(&field.key)
}

/// A step that one can see on a rule: a tenth or so, in round sizes; for what is no length, a tenth.
fn round_step(field: &Field, value: i64, inch: bool) -> i64 {
    if field.kind != Kind::Length {
        return (value.abs() / 10).max(1);
    }
    let size = Length::from_steps(value).abs();
    let sizes: [(f64, f64, f64); 5] = [
        (150.0, 10.0, 0.5),
        (60.0, 10.0, 0.25),
        (20.0, 5.0, 0.125),
        (8.0, 2.0, 0.0625),
        (1.0, 1.0, 0.031_25),
    ];
    let row = sizes.iter().find(|(from, ..)| size >= Length::mm(*from));
    match row {
        Some((_, _, inches)) if inch => Length::inch(*inches).steps(),
        Some((_, millimetres, _)) => Length::mm(*millimetres).steps(),
        None => Length::mm(0.1).steps(),
    }
}

/// Whether a design is laid out in inches: none of its heights is a whole millimetre, all are whole 64ths.
fn is_in_inches(design: &Design) -> bool {
    let lift = &design.lift;
    let sizes = [lift.lowest, lift.highest, lift.arm_length];
    let whole = |one: Length| sizes.iter().all(|size| size.steps() % one.steps() == 0);
    whole(Length::inch(1.0 / 64.0)) && !whole(Length::mm(1.0))
}

/// Every step worth a run, in a fixed order.
pub(super) fn ideas(design: &Design) -> Vec<Idea> {
    let inch = is_in_inches(design);
    let mut list: Vec<Idea> = LEVERS
        .into_iter()
        .filter_map(|lever| Trial::of(design, lever))
        .chain(
            Remedy::ALL
                .into_iter()
                .filter(|step| !matches!(step, Remedy::WiderArms | Remedy::LargerCrossBar))
                .filter_map(|step| step.take(design).ok()),
        )
        .map(|trial| Idea { words: trial.words, design: trial.design })
        .chain(screws(design))
        .chain(panels(design))
        .collect();
    for field in Design::fields().filter(|field| is_chosen(field, design)) {
        let value = field.get(design);
        let step = round_step(field, value, inch);
        for after in [value + step, value - step] {
            if inch && field.kind == Kind::Length && after % Length::inch(1.0 / 64.0).steps() != 0 {
                continue;
            }
            let mut changed = design.clone();
            field.set(&mut changed, after);
            let written = |steps: i64| Amount::Written(field.kind, steps);
            let words = Phrase::new(format!("{}: {} ", field.group.title(), lower(field.label)))
                .with(written(after))
                .and(" instead of ")
                .with(written(value));
            list.push(Idea { words, design: changed });
        }
    }
    list
}

/// Screws of the same diameter with other threads, and the next thicker and thinner of the same kind.
fn screws(design: &Design) -> Vec<Idea> {
    let Some(now) = thread(design) else { return Vec::new() };
    let alike = |row: &&Thread| row.series == now.series && row.starts == now.starts;
    let thicker = Thread::rows().filter(alike).filter(|row| row.major() > now.major());
    let thinner = Thread::rows().filter(alike).filter(|row| row.major() < now.major());
    let others = Thread::rows().filter(|row| row.major() == now.major() && row.id != now.id);
    others
        .chain(thicker.min_by_key(|row| row.major()))
        .chain(thinner.max_by_key(|row| row.major()))
        .map(|row| {
            let mut changed = design.clone();
            set_thread(&mut changed, row);
            Idea { words: Phrase::new(format!("A screw {}", row.name)), design: changed }
        })
        .collect()
}

/// Panels of the same kind of wood in other thicknesses; deck and boards that are of the arms' thickness are cut from them too.
fn panels(design: &Design) -> Vec<Idea> {
    let Some(now) = panel(design) else { return Vec::new() };
    let before = design.arms.thickness;
    PANELS
        .iter()
        .filter(|row| row.family == now.family)
        .filter(|row| row.id != now.id && row.modulus == now.modulus && row.density == now.density)
        .map(|row| {
            let mut changed = design.clone();
            set_panel(&mut changed, row);
            let thick = changed.arms.thickness;
            for size in [&mut changed.frames.deck_thickness, &mut changed.arms.board_thickness] {
                if *size == before {
                    *size = thick;
                }
            }
            // The outer faces of the arms stay where they are.
            changed.frames.spread -= (thick - before) * design.arms.layers.get();
            let words = Phrase::new(format!("{} instead of {}", row.name, now.name));
            Idea { words, design: changed }
        })
        .collect()
}

/// What stands against a table: checks that fail, by id, and whether anything else must not stay.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Failing {
    checks: Vec<&'static str>,
    others: bool,
    leans: bool,
}

impl Failing {
    pub(super) fn of(report: &Report, multiple: Option<f64>) -> Self {
        let over = report.checks.iter().filter(|check| check.verdict == Verdict::Over);
        Self {
            checks: over.map(|check| check.id).collect(),
            others: findings::stops(report),
            leans: multiple.is_some_and(|multiple| multiple < LEAST_MULTIPLE),
        }
    }

    /// Whether anything fails here that does not there.
    fn is_worse_than(&self, other: &Self) -> bool {
        self.checks.iter().any(|id| !other.checks.contains(id))
            || (self.others && !other.others)
            || (self.leans && !other.leans)
    }
}

impl Idea {
    /// Runs it; none where the table could not stand or something would fail that does not now.
    pub fn run(self, before: &Design, failing: &Failing) -> Option<Step> {
        if !check(&self.design).is_empty() {
            return None;
        }
        let report = analyse(&self.design).ok()?;
        let leaning = give(&report);
        let after_failing = Failing::of(&report, leaning.map(|(_, multiple)| multiple));
        if after_failing.is_worse_than(failing) {
            return None;
        }
        let mut after = Results::planar(&report);
        after.0[Outcome::Give.at()] = leaning.map(|(give, _)| give);
        let cost = cost::added(before, &self.design);
        let mut asked = Design::fields().filter(|field| is_asked(field));
        let asks = asked.any(|field| field.get(before) != field.get(&self.design));
        Some(Step { words: self.words, after, cost, design: Box::new(self.design), asks })
    }
}
