#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test may stop")]
use super::*;
use crate::drawing::tests::designs;
use crate::drawing::{Shape, widths};
use crate::report::analyse;

/// The room for the elevations on A4 and on Letter, mm, once margins, bar and side column are off.
const ROOMS: [[f64; 2]; 2] = [[137.0, 260.5], [142.9, 242.9]];
const HEADING: f64 = 6.0;

#[test]
fn what_is_drawn_fits_the_room_at_a_standard_scale() {
    for (name, design) in designs() {
        let report = analyse(&design).unwrap();
        for system in [System::Metric, System::Inch] {
            for room in ROOMS {
                let poster = Poster::new(&report, system, room, HEADING, &widths);
                assert!(ratios(system).contains(&poster.ratio));
                let panels = poster.panels(system);
                let high: f64 = panels.iter().map(|(_, panel)| panel.height() + HEADING * PAPER).sum();
                assert!(
                    poster.width <= room[0] * PAPER + 1.0 && high <= room[1] * PAPER,
                    "{name}, {room:?}: {poster:?}"
                );
                for (_, panel) in panels {
                    assert_eq!(panel.picture.frame.ratio, Some(poster.ratio));
                    let scale = panel.picture.frame.scale;
                    assert!((scale.per_mm * f64::from(poster.ratio) - PAPER).abs() < 1e-9);
                }
            }
        }
    }
}

#[test]
fn the_bar_is_as_long_as_it_says() {
    for (system, wanted) in [(System::Metric, 100.0), (System::Inch, 101.6)] {
        let marks = Ruler::new(system).marks;
        let bar = marks.split("class=\"n none bar\"").nth(1).unwrap();
        let width = bar.split("width=\"").nth(1).unwrap().split('"').next().unwrap();
        let width: f64 = width.parse().unwrap();
        assert!((width / PAPER - wanted).abs() < 0.01, "{width}");
    }
}

#[test]
fn paper_has_nothing_above_its_upper_edge() {
    for (name, design) in designs() {
        let report = analyse(&design).unwrap();
        let poster = Poster::new(&report, System::Metric, ROOMS[0], HEADING, &widths);
        for (_, panel) in poster.panels(System::Metric) {
            for mark in panel.picture.still.iter().chain(&panel.picture.moving) {
                if let (Shape::Text { at, words, .. }, false) = (&mark.shape, mark.is_left_out()) {
                    assert!(at.y > panel.top, "{name}: {words} at {at:?}, cut at {}", panel.top);
                }
            }
        }
    }
}
