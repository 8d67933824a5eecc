use super::*;
use crate::design::Demo;
use crate::drawing::{Area, Layout, Mark, View, widths};
use crate::mechanics::Freed;
use crate::quantity::System;
use crate::report::{Doing, analyse};

#[test]
fn lettering_meets_no_lettering_and_every_force_is_named() {
    for demo in Demo::ALL {
        let report = analyse(&demo.design()).unwrap();
        let lift = report.highest() - report.lowest();
        for (layout, width) in [(Layout::Wide, 1128), (Layout::Wide, 958), (Layout::Narrow, 358)] {
            for system in [System::Metric, System::Inch] {
                let view = View::new(width, 460, layout, system);
                for part in Freed::all(report.stations[0].pose.n) {
                    for doing in Doing::ALL {
                        let sheet = FreeSheet::new(&report, part, doing, &view, &widths);
                        for share in [0.0, 0.3, 0.7, 1.0] {
                            let station = report.at(report.lowest() + share * lift);
                            let (moving, live) = sheet.moving(&report, &station, &widths);
                            let marks = || sheet.still.iter().chain(&moving);
                            let texts: Vec<Area> =
                                marks().filter_map(|mark| mark.lettering(&widths)).collect();
                            let paper = Area { x: 0.0, y: 0.0, width: sheet.width, height: sheet.height };
                            let place = format!("{demo:?} {layout:?} {width} {part} {doing:?} {share}");
                            for (index, area) in texts.iter().enumerate() {
                                assert!(paper.holds(area), "{place}: {area:?} is cut off");
                                let met = texts[..index].iter().any(|other| other.meets(area));
                                assert!(!met, "{place}: {area:?} meets another");
                            }
                            let body = live.body.unwrap();
                            assert!(live.gap <= 1e-9 * body.largest(), "{place}: gap {}", live.gap);
                            let turn = body.moment().abs();
                            assert!(turn <= 1e-9 * body.largest_moment(), "{place}: turn {turn}");
                            let shown = |sum: &str| marks().any(|mark| words(mark) == sum);
                            assert!(shown("closes: no gap"), "{place}");
                            let says = |letter: &str| {
                                marks().any(|mark| words(mark).split(' ').next() == Some(letter))
                            };
                            for index in 0..body.acting.len() {
                                assert!(says(&letter(index)), "{place}: {} is not named", letter(index));
                            }
                        }
                    }
                }
            }
        }
    }
}

fn words(mark: &Mark) -> &str {
    match &mark.shape {
        crate::drawing::Shape::Text { words, .. } => words,
        _ => "",
    }
}

#[test]
fn a_gap_is_told_when_the_figures_can_show_it() {
    assert_eq!(closing(4e-14, System::Metric), "closes: no gap");
    assert_eq!(closing(0.6, System::Metric), "does not close: gap 1\u{A0}N");
    assert_eq!(closing(2.0, System::Inch), "closes: no gap");
    assert_eq!(closing(f64::NAN, System::Metric), "does not close: gap —\u{A0}N");
}

#[test]
fn a_direction_is_the_nearest_eighth() {
    let at = |degrees: f64| {
        let angle = degrees.to_radians();
        direction(glam::DVec2::new(libm::cos(angle), libm::sin(angle)))
    };
    let want = [
        (0.0, "to the right"),
        (20.0, "to the right"),
        (25.0, "up to the right"),
        (90.0, "up"),
        (160.0, "to the left"),
        (225.0, "down to the left"),
        (-88.0, "down"),
    ];
    for (degrees, words) in want {
        assert_eq!(at(degrees), words, "{degrees}");
    }
}
