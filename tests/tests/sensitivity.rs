//! Sensitivities agree with central differences of the whole analysis, and with the closed forms of the level table; steps that are said to
//! help do.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test may stop where something is missing")]

use risewright::design::{Demo, Design, Field};
use risewright::pages::{Block, Reader, Table, page};
use risewright::quantity::{Density, Mass, Money, Ratio, System};
use risewright::report::sensitivity::{Effect, OUTCOMES, Outcome, SensitivityRun, weakest};
use risewright::report::{Case, Grade, Report, Station, SwayRun, analyse, told};
use risewright::share::address::View;
use risewright::workshop::hardware::Weights;
use std::rc::Rc;

fn run(design: &Design) -> SensitivityRun {
    let mut run = SensitivityRun::new(design).unwrap();
    while run.advance() {}
    run
}

fn give(design: &Design) -> f64 {
    let mut sway = SwayRun::new(design).unwrap();
    while sway.report().is_none_or(|known| known.case(Case::Middle).is_empty()) {
        sway.advance(24).unwrap();
    }
    sway.report().unwrap().middle.iter().map(told::gives).fold(0.0, f64::max)
}

/// The figures by the program's public doors.
fn figures(design: &Design) -> [f64; OUTCOMES - 1] {
    let report: Report = analyse(design).unwrap();
    let crank = report.greatest(Station::crank_raise).0;
    let sag = report.greatest(|station| station.sag().total()).0;
    let weight = Weights::of(&report.parts).table().to_kg();
    [crank, sag, give(design), weakest(&report).unwrap().ratio, weight]
}

/// d ln(figure) / d ln(input) by central differences over another stride than the program's.
fn differences(design: &Design, field: &Field) -> Option<[f64; OUTCOMES - 1]> {
    let value = field.get(design);
    let stride = (value.abs() / 4000).max(1) * 4;
    let side = |by: i64| {
        let mut changed = design.clone();
        field.set(&mut changed, value + by);
        analyse(&changed).ok().map(|_| figures(&changed))
    };
    let (low, high) = (side(-stride)?, side(stride)?);
    let log = |by: i64| ((value + by).unsigned_abs() as f64).ln();
    let span = log(stride) - log(-stride);
    Some(std::array::from_fn(|at| (high[at] / low[at]).ln() / span))
}

fn slope(effects: &[Effect], key: &str, outcome: Outcome) -> f64 {
    effects.iter().find(|effect| effect.field.key == key).unwrap().of(outcome).unwrap().value
}

#[test]
fn sensitivities_are_those_of_central_differences() {
    for demo in Demo::ALL {
        let design = demo.design();
        let run = run(&design);
        let (mut held, mut kinked, mut wrong) = (0, Vec::new(), Vec::new());
        for effect in run.effects() {
            let Some(differences) = differences(&design, effect.field) else { continue };
            for outcome in Outcome::ALL.into_iter().filter(|outcome| *outcome != Outcome::Cost) {
                let Some(slope) = effect.of(outcome) else { continue };
                if slope.kinked {
                    kinked.push((effect.field.key, outcome));
                    continue;
                }
                let wanted = differences[outcome.at()];
                let apart = (slope.value - wanted).abs();
                if apart > 1e-3 * wanted.abs().max(1.0) {
                    let (key, label) = (effect.field.key, effect.field.label);
                    wrong.push(format!(
                        "{demo:?} {key} {label}: {outcome:?} {} against {wanted}",
                        slope.value
                    ));
                }
                held += 1;
            }
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n"));
        assert!(held > 400, "{held}");
        assert!(kinked.len() * 20 < held, "{kinked:?}");
    }
}

#[test]
fn a_level_table_without_friction_in_its_pivots_follows_the_closed_forms() {
    // F = n W cot(theta) with y = n L sin(theta): d ln F / d ln y = -1/cos2, d ln F / d ln L = 1/cos2 at the same height. The load is so
    // heavy that the weight of longer arms does not show.
    let mut design = Demo::PaperLift.design();
    design.running.pin_friction = Ratio::of(0.0);
    design.running.rolling = Ratio::of(0.0);
    design.arms.density = Density::kg_m3(100.0);
    design.load.mass = Mass::kg(2000.0);
    let run = run(&design);
    let lift = &design.lift;
    let rise = (lift.lowest - lift.pin_line - lift.deck_stack).to_m();
    let sine = rise / (2.0 * lift.arm_length.to_m());
    let steep = 1.0 / (1.0 - sine * sine);
    let near = |key: &str, wanted: f64| {
        let slope = slope(run.effects(), key, Outcome::Crank);
        assert!((slope - wanted).abs() < 1e-3 * wanted.abs(), "{key}: {slope} {wanted}");
    };
    near("al", steep);
    near("lo", -steep * lift.lowest.to_m() / rise);
    near("pl", steep * lift.pin_line.to_m() / rise);
    near("dh", steep * lift.deck_stack.to_m() / rise);
    near("cr", -1.0);
    // The force grows with the load as its part of the whole: what is left without it is a straight line's start.
    let crank = |design: &Design| analyse(design).unwrap().greatest(Station::crank_raise).0;
    let mut empty = design.clone();
    empty.load.mass = Mass::ZERO;
    near("lm", 1.0 - crank(&empty) / crank(&design));
}

#[test]
fn sag_halves_where_all_that_gives_is_twice_as_stiff() {
    // Sag by elastic give is in proportion to the compliances: over all stiffnesses the sensitivities add up to minus the elastic share of
    // the sag, and over the load to about that share.
    let design = Demo::PottingBench.design();
    let run = run(&design);
    let effects = run.effects();
    let by_stock: f64 = ["am", "ag"].iter().map(|key| slope(effects, key, Outcome::Sag)).sum();
    let report = analyse(&design).unwrap();
    let (sag, height) = report.greatest(|station| station.sag().total());
    let parts = report.at(height).sag();
    // The arms and rails hang on E and G alone, of the screw's path the seats of its bearing tube do.
    let wood = (parts.arms + parts.top_rails + parts.base_rails) / sag;
    assert!(-by_stock > wood - 1e-3 && -by_stock < wood + parts.screw / sag, "{by_stock} {wood}");
    let casters = slope(effects, "ck", Outcome::Sag);
    assert!((casters + parts.casters / sag).abs() < 1e-3, "{casters}");
}

#[test]
fn what_is_said_to_help_helps_and_harms_nothing_that_held() {
    for demo in Demo::ALL {
        let mut design = demo.design();
        design.shop.sheet_price = Money::of(90.0);
        let run = run(&design);
        let before = analyse(&design).unwrap();
        // How many sheets there are is the builder's matter.
        let over = |report: &Report| {
            let counts = report.findings.iter().filter(|found| found.grade == Grade::Over);
            counts.filter(|found| !found.phrase.text(System::Metric).starts_with("Sheet:")).count()
        };
        for outcome in [Outcome::Crank, Outcome::Sag, Outcome::Give, Outcome::Weakest, Outcome::Weight] {
            let helps = run.helps(outcome);
            // The weakest check of both is that the screw holds by itself: a matter of its thread alone.
            let least = if outcome == Outcome::Weakest { 0 } else { 3 };
            assert!(helps.len() >= least, "{demo:?} {outcome:?}: {}", helps.len());
            let mut last = f64::NEG_INFINITY;
            for step in &helps {
                let words = step.words.text(System::Metric);
                let (own, after) = (run.own().of(outcome).unwrap(), step.after.of(outcome).unwrap());
                assert!(after < own && after >= last, "{words}");
                last = after;
            }
            for step in helps.iter().take(4) {
                let fresh = figures(&step.design)[outcome.at()];
                let told = step.after.of(outcome).unwrap();
                // Weights are added up in whole steps of 1e-8 kg a part.
                assert!((fresh - told).abs() <= 1e-7 * told, "{}", step.words.text(System::Metric));
                assert!(over(&analyse(&step.design).unwrap()) <= over(&before));
            }
        }
    }
}

/// Tables under their headings, those in folds too.
fn tables(blocks: &[Block], heading: &mut String, found: &mut Vec<(String, Table)>) {
    for block in blocks {
        match block {
            Block::Heading(words) => heading.clone_from(words),
            Block::Table(table) => found.push((heading.clone(), table.clone())),
            Block::Fold(fold) => tables(&fold.blocks, heading, found),
            _ => {}
        }
    }
}

/// What is asked of a table is not ranked with what is built, and every table has its columns in one order.
#[test]
fn asking_for_less_stands_apart_at_the_end() {
    let reader =
        Reader { system: System::Metric, address: "https://example.org/".into(), date: "2026-01-31".into() };
    for demo in Demo::ALL {
        let design = demo.design();
        let asked = |other: &Design| {
            (other.load != design.load)
                || (other.lift.lowest, other.lift.highest) != (design.lift.lowest, design.lift.highest)
        };
        let run = run(&design);
        for outcome in Outcome::ALL {
            assert!(run.helps(outcome).iter().all(|step| !asked(&step.design)), "{demo:?} {outcome:?}");
        }
        assert!(run.asking_less().len() > 1 && run.asking_less().iter().all(|step| asked(&step.design)));
        let mut page = page(View::Helps, &Rc::new(analyse(&design).unwrap())).unwrap();
        while page.advance() {}
        let mut found = Vec::new();
        tables(&page.document(&reader).blocks, &mut String::new(), &mut found);
        let steps: Vec<_> = found.iter().filter(|(_, table)| table.head[0] == "step").collect();
        assert!(steps.iter().all(|(_, table)| table.head == steps[0].1.head));
        let (last, before) = steps.split_last().unwrap();
        let first_cells = |table: &Table| {
            let begins = table.rows.iter().map(|row| format!("{:?}", row[0]));
            begins.collect::<Vec<_>>().join("\n")
        };
        assert_eq!(last.0, "Asking for less");
        assert!(first_cells(&last.1).contains("Load: weight"));
        for (heading, table) in before {
            let words = first_cells(table);
            assert!(!words.contains("Load: ") && !words.contains("lowest deck"), "{heading}: {words}");
        }
    }
}

#[test]
fn no_cost_without_prices() {
    let design = Demo::PaperLift.design();
    let run = run(&design);
    assert_eq!(run.own().of(Outcome::Cost), None);
    assert!(run.helps(Outcome::Cost).is_empty());
}
