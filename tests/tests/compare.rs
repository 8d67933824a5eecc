//! Two designs compared: what differs is told, what does not is not, and exchanging the two turns every statement round.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

mod odd;

use risewright::design::{Demo, Design};
use risewright::drawing::{Layout, Sheet, View, compose, compose_over, widths};
use risewright::quantity::{Amount, Length, System};
use risewright::report::{Report, analyse, difference};

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
        assert!(found.inputs.is_empty());
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
