//! Two designs compared: what differs is told, what does not is not, and exchanging the two turns every statement round.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

mod odd;

use risewright::design::{Demo, Design};
use risewright::drawing::{Layout, Sheet, View, compose, compose_over, widths};
use risewright::pages::{Block, Cell, Reader, Table, page};
use risewright::quantity::{Amount, Length, Mass, System};
use risewright::report::{Difference, Grade, Report, Turned, analyse, difference};
use risewright::share::address::View as Place;
use risewright::share::link;
use std::rc::Rc;

fn report(design: &Design) -> Report {
    analyse(design).unwrap()
}

fn all() -> Vec<Report> {
    let demos = Demo::ALL.into_iter().map(Demo::design);
    odd::designs().into_iter().map(|(_, design)| design).chain(demos).map(|design| report(&design)).collect()
}

/// The figure of an amount, SI.
fn value(amount: Amount) -> f64 {
    match amount {
        Amount::Force(value)
        | Amount::Thrust(value)
        | Amount::Turns(value)
        | Amount::Size(value)
        | Amount::Give(value)
        | Amount::Number(value)
        | Amount::Mass(value) => value,
        other => unreachable!("{other:?}"),
    }
}

#[test]
fn a_design_does_not_differ_from_itself() {
    for report in all() {
        let found = difference(&report, &report);
        assert!(found.inputs.is_empty() && found.findings.is_empty());
        for result in &found.results {
            assert_eq!(result.first, result.second, "{}", result.title);
            assert_eq!((result.words(), result.better()), (None, None), "{}", result.title);
        }
    }
}

#[test]
fn exchanging_the_two_turns_everything_round() {
    let reports = all();
    for pair in reports.windows(2) {
        let (there, back) = (difference(&pair[0], &pair[1]), difference(&pair[1], &pair[0]));
        assert_eq!(there.inputs.len(), back.inputs.len());
        let turned = |found: &Difference, swapped: bool| {
            let pair = |turned: &Turned| (turned.first, turned.second);
            let mut list: Vec<_> = found.findings.iter().map(pair).collect();
            if swapped {
                list.iter_mut().for_each(|(first, second)| core::mem::swap(first, second));
            }
            list.sort_unstable();
            list
        };
        assert_eq!(turned(&there, false), turned(&back, true));
        for (one, other) in there.inputs.iter().zip(&back.inputs) {
            assert_eq!((one.field.key, one.first, one.second), (other.field.key, other.second, other.first));
        }
        let order: Vec<usize> = there
            .inputs
            .iter()
            .map(|changed| Design::fields().position(|field| field.key == changed.field.key).unwrap())
            .collect();
        assert!(order.is_sorted(), "{order:?}");
        for (one, other) in there.results.iter().zip(&back.results) {
            assert_eq!((one.title, one.first, one.second), (other.title, other.second, other.first));
            if let (Some(change), Some(way_back)) = (one.change, other.change) {
                assert!(((1.0 + change) * (1.0 + way_back) - 1.0).abs() < 1e-9, "{}", one.title);
                // Well away from what counts as the same, better one way is worse the other.
                if change.abs() > 0.01 {
                    assert_eq!(one.better().map(|better| !better), other.better(), "{}", one.title);
                    assert_ne!(one.words(), other.words(), "{}", one.title);
                }
            }
        }
    }
}

/// Force times radius is the torque at the crank, and the torque of a screw is in proportion to the force along it (Shigley's Mechanical
/// Engineering Design, 9th ed., section 8-2); a longer crank weighs a little more, which the screw under a deck feels.
#[test]
fn a_longer_crank_is_easier_by_the_law_of_the_lever() {
    for demo in Demo::ALL {
        let first = demo.design();
        let mut second = first.clone();
        second.drive.crank = Length::from_steps(first.drive.crank.steps() * 9 / 8);
        let found = difference(&report(&first), &report(&second));
        assert_eq!(found.inputs.len(), 1);
        let [crank, screw] = [&found.results[0], &found.results[1]];
        let one = value(crank.first) * first.drive.crank.to_m() / value(screw.first);
        let other = value(crank.second) * second.drive.crank.to_m() / value(screw.second);
        assert!((other / one - 1.0).abs() < 1e-9, "{one} m and {other} m");
        assert_eq!((crank.words(), crank.better()), (Some("easier"), Some(true)));
        assert!((value(screw.second) / value(screw.first) - 1.0).abs() < 0.01);
    }
}

/// The normal use: a design is set aside, then changed. The page tells the change from the one set aside to the present one, and what
/// fails only now stands first.
#[test]
fn the_page_tells_the_change_from_the_design_set_aside() {
    let before = Demo::PaperLift.design();
    let mut now = before.clone();
    now.load.mass = Mass::kg(1.3 * before.load.mass.to_kg());
    let mut page = page(Place::Compare, &Rc::new(report(&now))).unwrap();
    let reader =
        Reader { system: System::Metric, address: "https://example.org/".into(), date: "2026-01-31".into() };
    page.answer("with", &link::encode(&before), &reader);
    let document = page.document(&reader);
    let tables: Vec<&Table> = document
        .blocks
        .iter()
        .filter_map(|block| if let Block::Table(table) = block { Some(table) } else { None })
        .collect();
    let [findings, results, inputs] = tables.as_slice() else { unreachable!("{}", tables.len()) };
    assert_eq!(findings.head, ["set aside", "now", "finding"]);
    let said = |table: &Table, row: usize| format!("{:?}", table.rows[row]);
    assert!(said(findings, 0).contains("Watch") && said(findings, 0).contains("Over"));
    assert!(said(findings, 0).contains("Crank: "), "{}", said(findings, 0));
    assert_eq!(results.head, ["Result", "set aside", "now", "change", "now it is"]);
    let crank = said(results, 0);
    assert!(crank.contains("+24") && crank.contains("harder") && crank.contains(": worse"), "{crank}");
    assert_eq!(inputs.head, ["Input", "set aside", "now"]);
    assert_eq!(inputs.rows[1][1..], [Cell::number("80\u{A0}kg"), Cell::number("104\u{A0}kg")]);
}

/// More load turns findings over one after the other, each told once: over before to watch, what is gone last.
#[test]
fn findings_that_differ_are_told_once_and_the_worst_first() {
    let light = Demo::PaperLift.design();
    let mut heavy = light.clone();
    heavy.load.mass = Mass::kg(400.0);
    let (light, heavy) = (report(&light), report(&heavy));
    let found = difference(&light, &heavy).findings;
    let faults = |report: &Report, grade| report.findings.iter().filter(|found| found.grade == grade).count();
    let now = |grade| found.iter().filter(|turned| turned.second == Some(grade)).count();
    // Nothing was over before, so that all that is over now is told.
    assert_eq!((faults(&light, Grade::Over), now(Grade::Over)), (0, faults(&heavy, Grade::Over)));
    assert!(now(Grade::Over) > 5);
    let ranks: Vec<Grade> = found.iter().map(|turned| turned.second.unwrap_or(Grade::Fine)).collect();
    assert!(ranks.is_sorted(), "{ranks:?}");
    let back = difference(&heavy, &light).findings;
    assert!(back.iter().filter(|turned| turned.second.is_none()).all(|turned| turned.first.is_some()));
    assert_eq!(back.len(), found.len());
}

#[test]
fn the_other_stands_at_the_same_height_or_at_its_nearer_end() {
    let reports = all();
    let view = View::new(1096, 628, Layout::Wide, System::Metric);
    for pair in reports.windows(2) {
        let (own, other) = (&pair[0], &pair[1]);
        let sheet = Sheet::over(own, Some(other), &view, &widths);
        for height in [own.lowest(), own.highest()] {
            let marks = sheet.outline(other, height, &widths);
            let said: String = marks.iter().map(risewright::drawing::Mark::svg).collect();
            let inside = (other.lowest()..=other.highest()).contains(&height);
            assert_eq!(said.contains("at the same deck height"), inside, "{said}");
            assert!(said.contains(">set aside: "), "{said}");
            if !inside {
                let end = if height > other.highest() { "highest" } else { "lowest" };
                assert!(said.contains(end), "{said}");
            }
        }
        assert!(Sheet::new(own, &view, &widths).outline(other, own.lowest(), &widths).is_empty());
    }
}

#[test]
fn without_another_nothing_changes() {
    let own = report(&Demo::PaperLift.design());
    let other = report(&Demo::PottingBench.design());
    let view = View::new(1096, 628, Layout::Wide, System::Metric);
    let alone = compose(&own, 0.7, &view, &widths);
    assert_eq!(alone, compose_over(&own, None, 0.7, &view, &widths));
    let over = compose_over(&own, Some(&other), 0.7, &view, &widths);
    assert!(over.moving.len() > alone.moving.len());
    // One curve more in each of the two plots that has points of the other.
    let dotted = over.curves.iter().filter(|curve| curve.ink.class.starts_with("c-other"));
    assert_eq!(dotted.filter(|curve| curve.points.len() > 1).count(), alone.frame.plots.len());
}
