//! A screw that hangs between two points: that nothing here holds its ends is said wherever one might take it for done.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use risewright::design::Design;
use risewright::pages::{Reader, page};
use risewright::parts::Rides;
use risewright::quantity::{Amount, System};
use risewright::report::{Finding, Grade, Report, analyse};
use risewright::share::address::View;
use risewright::share::link;
use risewright::workshop::steps::{Task, steps};
use std::rc::Rc;

const LEFT: &str = "are not worked out and left to you";

fn report(text: &str) -> Report {
    let design: Design = link::decode(text).unwrap();
    analyse(&design).unwrap_or_else(|unsound| panic!("{:?}", unsound.phrases()))
}

fn words(finding: &Finding) -> String {
    finding.phrase.text(System::Metric)
}

/// The demo with its screw between the side pivots, and as a strut; with the greatest force along it.
#[test]
fn open_ends_are_said() {
    for (text, ends) in [("a.dr2", "left side pivots and right side pivots"), ("a.dr3", "base and arm A1")] {
        let report = report(text);
        let said = report.faults().find(|finding| words(finding).contains(LEFT)).unwrap();
        assert_eq!(said.grade, Grade::Watch, "{text}");
        assert!(words(said).contains(ends), "{}", words(said));
        let most = report
            .stations
            .iter()
            .flat_map(|station| [station.still(), station.raise(), station.lower()])
            .fold(0.0_f64, |most, force| most.max(force.abs()));
        assert!(words(said).contains(&Amount::Thrust(most).text(System::Metric)), "{}", words(said));
        for finding in
            report.findings.iter().filter(|finding| words(finding).contains("checks hold at every"))
        {
            assert!(words(finding).contains("ends of the screw in none of them"), "{}", words(finding));
        }
        let report = Rc::new(report);
        let reader = Reader {
            system: System::Metric,
            address: "https://example.org/".into(),
            date: "2026-01-31".into(),
        };
        for view in [View::Strength, View::Hardware, View::Drilling, View::Steps] {
            let html = page(view, &report).unwrap().document(&reader).html();
            assert!(html.contains(LEFT), "{text}: {}", view.title());
        }
    }
}

/// Screws along a rail end in parts that are checked: nothing is said.
#[test]
fn ends_on_a_rail_are_worked_out() {
    for text in ["a", "b"] {
        assert!(report(text).ends_left().is_none());
        assert!(report(text).findings.iter().all(|finding| !words(finding).contains(LEFT)));
    }
}

/// The bar at an arm comes in with the screw, not with the wheel axles.
#[test]
fn bars_on_arms_come_in_with_the_screw() {
    for text in ["a.dr2", "a.dr3"] {
        let report = report(text);
        let solver = risewright::mechanics::Solver::new(report.mechanism()).unwrap();
        let list = steps(&report.design, &report.parts, &solver).unwrap();
        let comes_in = |task: Task, number: u32| {
            list.iter()
                .any(|step| step.task == task && step.parts.iter().any(|fitted| fitted.number == number))
        };
        let bars = || report.parts.iter().filter(|part| matches!(part.name, "Cross-bar" | "Tube plug"));
        assert!(bars().count() > 0 && bars().all(|part| matches!(part.rides, Rides::OnArm(..))), "{text}");
        for part in bars() {
            assert!(
                comes_in(Task::Screw, part.number) && !comes_in(Task::Axles, part.number),
                "{text}: {}",
                part.name
            );
        }
    }
}
