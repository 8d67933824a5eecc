//! Whole pictures of odd designs at many sizes: nothing meets, nothing is cut off, and the level is one level.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests fail by panicking")]
use super::*;
use crate::design::{BearingEnd, Demo, Design, DriveKind, StrutEnd};
use crate::quantity::{Count, Force, Kind, Length, Mass, Ratio, Style, System, figures, print};
use crate::report::{Report, analyse};

pub(super) const SYSTEMS: [System; 2] = [System::Metric, System::Inch];
const NARROW: [u32; 3] = [320, 390, 768];
const WIDE: [(u32, u32); 7] =
    [(960, 470), (1024, 484), (1096, 628), (1280, 560), (1440, 720), (1920, 900), (2560, 1300)];

fn mm(value: f64) -> Length {
    Length::mm(value)
}

/// A metric table with something unusual about it.
pub(super) fn odd(change: impl FnOnce(&mut Design)) -> Design {
    let mut design = Design::default();
    change(&mut design);
    design
}

/// Sizes of a frame that goes with arms of a length, wheels and casters in proportion.
fn scaled(design: &mut Design, arm: f64) {
    let by = |length: &mut Length| *length = Length::mm(length.to_mm() * arm / 520.0);
    let (lift, arms, frames, drive, running, load) = (
        &mut design.lift,
        &mut design.arms,
        &mut design.frames,
        &mut design.drive,
        &mut design.running,
        &mut design.load,
    );
    for length in [
        &mut lift.arm_length,
        &mut lift.lowest,
        &mut lift.highest,
        &mut lift.pin_line,
        &mut lift.deck_stack,
        &mut arms.thickness,
        &mut arms.width,
        &mut arms.end,
        &mut arms.long_end,
        &mut frames.spread,
        &mut frames.deck_length,
        &mut frames.deck_left,
        &mut frames.deck_rail_length,
        &mut frames.deck_rail_depth,
        &mut frames.base_length,
        &mut frames.base_left,
        &mut frames.beam_depth,
        &mut drive.bearing_place,
        &mut drive.screw_length,
        &mut running.caster_left,
        &mut running.caster_right,
        &mut running.caster_height,
        &mut running.caster_wheel,
        &mut load.centre,
        &mut load.length,
        &mut load.height,
    ] {
        by(length);
    }
}

pub(super) fn designs() -> Vec<(&'static str, Design)> {
    vec![
        ("metric demo", Demo::PaperLift.design()),
        ("inch demo", Demo::PottingBench.design()),
        (
            "one stage",
            odd(|d| (d.lift.stages, d.lift.lowest, d.lift.highest) = (Count::of(1), mm(340.0), mm(700.0))),
        ),
        (
            "three stages",
            odd(|d| (d.lift.stages, d.lift.lowest, d.lift.highest) = (Count::of(3), mm(660.0), mm(1600.0))),
        ),
        (
            "four stages",
            odd(|d| (d.lift.stages, d.lift.lowest, d.lift.highest) = (Count::of(4), mm(800.0), mm(2100.0))),
        ),
        ("tilting deck", odd(|d| d.lift.deck_axle = mm(30.0))),
        ("drifting deck", odd(|d| (d.lift.base_axle, d.lift.deck_axle) = (mm(-25.0), mm(-25.0)))),
        (
            "centre pins low",
            odd(|d| {
                d.lift.centre = Ratio::of(0.47);
                (d.lift.lowest, d.lift.highest) = (mm(560.0), mm(1000.0));
            }),
        ),
        ("side pivots", odd(|d| d.drive.kind = DriveKind::SidePivots)),
        (
            "strut",
            odd(|d| {
                d.drive.kind = DriveKind::Strut;
                (d.drive.foot, d.drive.head) = (StrutEnd::Base, StrutEnd::A1);
            }),
        ),
        ("screw under the deck", odd(|d| d.drive.kind = DriveKind::TopCarriage)),
        (
            "screw pushes",
            odd(|d| (d.drive.bearing_end, d.drive.bearing_place) = (BearingEnd::Far, mm(640.0))),
        ),
        (
            "toy",
            odd(|d| {
                scaled(d, 125.0);
                (d.arms.board_width, d.arms.board_thickness) = (mm(10.0), mm(4.0));
                (d.running.pin, d.running.bush, d.running.axle, d.running.wheel) =
                    (mm(4.0), mm(5.0), mm(5.0), mm(10.0));
                (d.load.mass, d.drive.major, d.drive.mean, d.drive.root) =
                    (Mass::kg(0.4), mm(6.0), mm(5.4), mm(4.8));
                (d.frames.deck_thickness, d.arms.gap, d.arms.spacer) = (mm(4.0), mm(1.0), mm(1.0));
            }),
        ),
        (
            "giant",
            odd(|d| {
                scaled(d, 2900.0);
                (d.arms.thickness, d.arms.width, d.arms.long_end) = (mm(90.0), mm(300.0), mm(400.0));
                d.load.mass = Mass::kg(1900.0);
            }),
        ),
        ("far overhang", odd(|d| (d.load.length, d.load.centre) = (mm(1500.0), mm(300.0)))),
        ("tower on the deck", odd(|d| (d.load.height, d.load.length) = (mm(2900.0), mm(80.0)))),
        (
            "no load",
            odd(|d| (d.load.mass, d.load.length, d.load.height) = (Mass::ZERO, Length::ZERO, Length::ZERO)),
        ),
        ("hardly any lift", odd(|d| (d.lift.lowest, d.lift.highest) = (mm(800.0), mm(812.0)))),
        ("pushed", odd(|d| d.load.push = Force::n(400.0))),
        ("long name", odd(|d| d.rename("A table for the printing room on the second floor, wide paper"))),
    ]
}

fn reports() -> Vec<(&'static str, Report)> {
    designs()
        .into_iter()
        .map(|(name, design)| {
            let report = analyse(&design).map_err(|unsound| {
                unsound.phrases().iter().map(|phrase| phrase.text(System::Metric)).collect::<Vec<_>>()
            });
            (name, report.unwrap_or_else(|words| panic!("{name}: {words:?}")))
        })
        .collect()
}

fn views() -> Vec<View> {
    let mut views = Vec::new();
    for system in SYSTEMS {
        for width in NARROW {
            views.push(View::new(width, 844, Layout::Narrow, system));
        }
        for (width, height) in WIDE {
            views.push(View::new(width, height, Layout::Wide, system));
        }
        views.push(View::new(560, 790, Layout::Print, system));
    }
    let crowded = View { charts: Chart::ALL.to_vec(), ..View::new(1920, 900, Layout::Wide, System::Metric) };
    views.push(View { charts: Chart::ALL.to_vec(), ..View::new(360, 700, Layout::Narrow, System::Inch) });
    views.push(View { show: Show { support: true, ..Show::default() }, ..crowded.clone() });
    views.push(crowded);
    views
}

fn heights(report: &Report) -> [f64; 4] {
    let (low, high) = (report.lowest(), report.highest());
    [0.0, 0.05, 0.4, 1.0].map(|part| low + (high - low) * part)
}

pub(super) fn words(mark: &Mark) -> &str {
    match &mark.shape {
        Shape::Text { words, .. } => words,
        _ => "",
    }
}

/// Looks at every design in every view at four heights and lists what is wrong.
fn each(check: impl Fn(&Report, &View, &Sheet, f64, &Picture) -> Vec<String>) {
    let mut wrong = Vec::new();
    for (name, report) in reports() {
        for view in views() {
            let sheet = Sheet::new(&report, &view, &widths);
            for height in heights(&report) {
                let (moving, live) = sheet.moving(&report, &report.at(height), &widths);
                let picture = Picture {
                    width: sheet.width,
                    height: sheet.height,
                    still: sheet.still.clone(),
                    curves: sheet.curves.clone(),
                    moving,
                    frame: sheet.frame.clone(),
                    live,
                };
                let what = format!(
                    "{name}, {:?} {} x {} {:?}, deck {height:.4}",
                    view.layout, view.width, view.height, view.system
                );
                let found = check(&report, &view, &sheet, height, &picture);
                wrong.extend(found.into_iter().map(|trouble| format!("{what}: {trouble}")));
            }
        }
    }
    let first: Vec<&String> = wrong.iter().step_by(wrong.len() / 25 + 1).collect();
    assert!(wrong.is_empty(), "{} times, among them {first:#?}", wrong.len());
}

#[test]
fn no_two_texts_meet_and_none_is_cut_off() {
    each(|_, _, _, _, picture| {
        spoilt([picture.width, picture.height], picture.still.iter().chain(&picture.moving))
    });
}

/// The lettering among marks that meets other lettering or is cut off by the edge of a picture of this width and height, px.
pub(super) fn spoilt<'a>([width, height]: [f64; 2], marks: impl Iterator<Item = &'a Mark>) -> Vec<String> {
    let paper = Area { x: 0.0, y: 0.0, width, height };
    let texts: Vec<(&str, Area)> =
        marks.filter_map(|mark| Some((words(mark), mark.lettering(&widths)?))).collect();
    let mut wrong = Vec::new();
    for (index, (one, area)) in texts.iter().enumerate() {
        if !paper.holds(area) {
            wrong.push(format!("{one:?} is cut off: {area:?}"));
        }
        let meeting = texts[..index].iter().filter(|(_, beside)| area.meets(beside));
        wrong.extend(meeting.map(|(other, beside)| format!("{one:?} meets {other:?}: {area:?} {beside:?}")));
    }
    wrong
}

#[test]
fn what_must_stand_stands() {
    each(|report, view, _, height, picture| {
        let texts: Vec<&str> = picture.still.iter().chain(&picture.moving).map(words).collect();
        let stands =
            |wanted: &str| texts.iter().any(|text| *text == wanted || text.ends_with(&format!(" {wanted}")));
        let size = |metres: f64| figures::size(metres, view.system).number;
        let mut wanted = vec![size(height)];
        if view.layout != Layout::Print {
            wanted.extend([report.lowest(), report.highest()].map(size));
            wanted.push(figures::large_force(report.at(height).raise(), view.system).number);
        }
        let mass = print(report.design.load.mass.steps(), Kind::Mass, view.system, Style::Short).text();
        wanted.push(mass);
        wanted
            .into_iter()
            .filter(|wanted| !stands(wanted))
            .map(|wanted| format!("{wanted} is missing"))
            .collect()
    });
}

/// Where a line through the points passes a level, px.
pub(super) fn crossing(points: &[Screen], level: f64) -> Option<f64> {
    points.windows(2).find_map(|pair| {
        let (from, to) = (pair[0], pair[1]);
        let (high, low) = (from.y.min(to.y), from.y.max(to.y));
        let part = if low > high { (level - from.y) / (to.y - from.y) } else { 0.0 };
        (high - 1e-6..=low + 1e-6).contains(&level).then_some(from.x + part * (to.x - from.x))
    })
}

#[test]
fn the_level_is_one_level() {
    each(|report, view, sheet, height, picture| {
        let station = report.at(height);
        let surface = picture.frame.scale.y(station.pose.deck_height * 1e3);
        let lines: Vec<(f64, f64)> = picture
            .moving
            .iter()
            .filter_map(|mark| match (&mark.shape, mark.class) {
                (Shape::Line { from, to }, "level") => Some((from.y, to.y)),
                _ => None,
            })
            .collect();
        if view.layout == Layout::Print {
            return if lines.is_empty() { Vec::new() } else { vec!["a level line on paper".to_owned()] };
        }
        let lies_at =
            |y: f64| lines.iter().any(|(from, to)| (from - y).abs() <= 1.0 && (to - y).abs() <= 1.0);
        let mut wrong = Vec::new();
        if !lies_at(surface) {
            wrong.push(format!("the level line is not at the deck, {surface}: {lines:?}"));
        }
        for (place, plot) in picture.frame.plots.iter().enumerate() {
            let level = plot.scale.level(height);
            if !lies_at(level) || view.layout == Layout::Wide && (level - surface).abs() > 1.0 {
                wrong.push(format!(
                    "plot {place} has its level at {level}, the deck lies at {surface}: {lines:?}"
                ));
            }
            // The main curve, drawn last, crosses the level where its value says.
            let main = sheet.curves.iter().rfind(|curve| curve.plot == place).unwrap();
            if plot.chart == Chart::ScrewForce {
                let wanted = plot.place(station.raise(), height).x;
                let found = crossing(&main.points, level).unwrap_or(f64::NAN);
                if found.is_nan() || (found - wanted).abs() > 1.0 {
                    wrong.push(format!("the curve crosses at {found}, the value stands at {wanted}"));
                }
            }
        }
        wrong
    });
}

#[test]
fn marks_keep_their_places_through_a_drag() {
    for (name, report) in reports() {
        for view in views() {
            let sheet = Sheet::new(&report, &view, &widths);
            let kinds = |height: f64| -> Vec<_> {
                let (moving, _) = sheet.moving(&report, &report.at(height), &widths);
                moving.iter().map(|mark| (mark.class, std::mem::discriminant(&mark.shape))).collect()
            };
            let first = kinds(report.lowest());
            for height in heights(&report) {
                assert!(kinds(height) == first, "{name} {view:?} at {height}");
            }
        }
    }
}

#[test]
fn the_picture_holds_the_table() {
    each(|report, view, _, _, picture| {
        let mut wrong = Vec::new();
        for grip in [picture.live.carriage, picture.live.deck].into_iter().flatten() {
            if grip.centre.x < grip.radius || grip.centre.x + grip.radius > picture.width {
                wrong.push(format!("a grip lies outside: {grip:?}"));
            }
        }
        let top = picture.frame.scale.y(report.highest() * 1e3);
        if top < f64::from(view.head) {
            wrong.push(format!("the highest deck lies at {top}"));
        }
        for plot in &picture.frame.plots {
            if plot.area.right() > picture.width || plot.area.width < 100.0 {
                wrong.push(format!("{plot:?}"));
            }
        }
        wrong
    });
}

#[test]
fn sizes_nobody_has_still_give_a_picture() {
    let report = analyse(&Design::default()).unwrap();
    for layout in [Layout::Wide, Layout::Narrow, Layout::Print] {
        for (width, height) in [(0, 0), (1, 9000), (240, 320), (500, 320), (9000, 1), (u32::MAX, u32::MAX)] {
            for charts in [Vec::new(), Chart::ALL.repeat(3)] {
                let view =
                    View { charts, head: height / 2, ..View::new(width, height, layout, System::Inch) };
                let picture = compose(&report, f64::NAN, &view, &widths);
                assert!(picture.width >= 240.0 && picture.height.is_finite(), "{view:?}");
                assert!(!picture.svg("", "").contains("NaN"), "{view:?}");
            }
        }
    }
}

#[test]
fn the_demo_rolls_on_its_rails() {
    // Sizes of the metric demo: beams end 135 mm above the floor, strips are 4 mm thick, wheels 42 mm across.
    let report = analyse(&Demo::PaperLift.design()).unwrap();
    let station = report.at(0.76);
    let sheet = Sheet::new(&report, &View::new(1096, 628, Layout::Wide, System::Metric), &widths);
    let ring = sheet.moving(&report, &station, &widths).1.carriage.unwrap();
    let axle = sheet.frame.scale.to_model(ring.centre);
    assert!((axle.y - (135.0 + 4.0 + 21.0)).abs() < 1e-9, "{axle:?}");
    // Two stages of 520 mm arms: 520 cos(theta) from pivot to axle with 1040 sin(theta) of lift.
    let lift: f64 = 760.0 - 160.0 - 82.0;
    let run = (520.0_f64 * 520.0 - lift * lift / 4.0).sqrt();
    assert!((axle.x - run).abs() < 1e-9, "{axle:?} {run}");
}

#[test]
fn a_point_of_a_plot_gives_its_height_back() {
    let report = analyse(&Design::default()).expect("the demo stands");
    let sheet = Sheet::new(&report, &View::new(1096, 628, Layout::Wide, System::Metric), &widths);
    let plot = &sheet.frame.plots[0];
    let at = plot.place(3000.0, 0.76);
    assert!((plot.height_at(at.y) - 0.76).abs() < 1e-9);
    assert!((sheet.frame.height_at(at) - 0.76).abs() < 1e-9);
    // Far above the lift the height is its upper end.
    assert!((sheet.frame.height_at(Screen::new(0.0, -1e4)) - report.highest()).abs() < 1e-12);
}
