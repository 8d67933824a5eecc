//! End elevations of odd designs at many sizes, straight and pushed: nothing meets, nothing is cut off, the level is one level.
#![allow(clippy::unwrap_used, reason = "tests fail by panicking")]
use super::super::tests::{SYSTEMS, crossing, designs, odd, spoilt, words};
use super::*;
use crate::design::{BearingEnd, Demo, DriveKind};
use crate::drawing::mark::{Mark, Shape};
use crate::drawing::view::{Chart, Layout, SwayChart, View};
use crate::drawing::widths;
use crate::quantity::{Length, System, figures};
use crate::report::{Case, Finding, PUSH, Report, SwayReport, SwayRun, analyse, merged};

/// Everything a scene is made of.
struct Stage {
    name: &'static str,
    report: Report,
    sway: Option<SwayReport>,
    findings: Vec<Finding>,
}

impl Stage {
    fn scene(&self, beside: bool) -> Scene<'_> {
        Scene { report: &self.report, sway: self.sway.as_ref(), findings: &self.findings, beside }
    }
}

fn stages() -> Vec<Stage> {
    let more = [
        ("load off the middle", odd(|d| d.load.across = Length::mm(120.0))),
        (
            "one layer, bare",
            odd(|d| {
                d.arms.layers = crate::quantity::Count::of(1);
                (d.arms.boards_a, d.arms.boards_b, d.arms.straps_a) = (false, false, false);
            }),
        ),
        ("hub washers", odd(|d| d.sway.hub = Length::mm(70.0))),
        ("not guided", odd(|d| (d.sway.guide_base, d.sway.guide_deck) = (false, false))),
    ];
    designs()
        .into_iter()
        .chain(more)
        .map(|(name, design)| {
            let report = analyse(&design).unwrap();
            let sway = SwayRun::new(&design).ok().map(|mut run| {
                run.advance(usize::MAX).unwrap();
                run.report().unwrap()
            });
            let slow = sway.as_ref().map(|sway| sway.findings(&design)).unwrap_or_default();
            let findings = merged(&report.findings, slow);
            Stage { name, report, sway, findings }
        })
        .collect()
}

fn views() -> Vec<(View, bool)> {
    let mut views = Vec::new();
    for system in SYSTEMS {
        for width in [320, 390, 768] {
            views.push((View::new(width, 844, Layout::Narrow, system), false));
        }
        for (width, height) in [(960, 470), (1096, 628), (1440, 720), (1920, 900)] {
            views.push((View::new(width, height, Layout::Wide, system), false));
            views.push((View::new(width, height, Layout::Wide, system), true));
        }
        views.push((View::new(560, 790, Layout::Print, system), false));
    }
    let one = vec![Chart::Sway(SwayChart::Multiple)];
    views.push((View { charts: one, ..View::new(1096, 628, Layout::Wide, System::Metric) }, false));
    views
}

/// Looks at every design in every view at some heights and pushes and lists what is wrong.
fn each(check: impl Fn(&Stage, &View, &SwaySheet, f64, &[Mark], &SwayLive) -> Vec<String>) {
    let mut wrong = Vec::new();
    for stage in stages() {
        let (low, high) = (stage.report.lowest(), stage.report.highest());
        for (view, beside) in views() {
            let scene = stage.scene(beside);
            let sheet = SwaySheet::new(&scene, &view, &widths);
            for (part, push) in [(0.0, 0.0), (0.05, 50.0), (0.5, -100.0), (1.0, 35.0)] {
                let height = low + part * (high - low);
                let (moving, live) = sheet.moving(&scene, &stage.report.at(height), push, &widths);
                let what = format!(
                    "{}, {:?} {} x {} {:?}, beside {beside}, deck {height:.4}, {push} N",
                    stage.name, view.layout, view.width, view.height, view.system
                );
                let found = check(&stage, &view, &sheet, height, &moving, &live);
                wrong.extend(found.into_iter().map(|trouble| format!("{what}: {trouble}")));
            }
        }
    }
    let first: Vec<&String> = wrong.iter().step_by(wrong.len() / 25 + 1).collect();
    assert!(wrong.is_empty(), "{} times, among them {first:#?}", wrong.len());
}

#[test]
fn no_two_texts_meet_and_none_is_cut_off() {
    each(|_, _, sheet, _, moving, _| spoilt([sheet.width, sheet.height], sheet.still.iter().chain(moving)));
}

#[test]
fn what_must_stand_stands() {
    each(|stage, view, sheet, height, moving, _| {
        let texts: Vec<&str> = sheet.still.iter().chain(moving).map(words).collect();
        let stands =
            |wanted: &str| texts.iter().any(|text| *text == wanted || text.ends_with(&format!(" {wanted}")));
        let mut wanted = vec![figures::size(height, view.system).number];
        let shown = |chart| sheet.frame.plots.iter().any(|plot| plot.chart == Chart::Sway(chart));
        if let Some(sway) = stage.sway.as_ref().filter(|_| view.layout != Layout::Print) {
            if shown(SwayChart::Give) {
                wanted.push(figures::sag(sway.give(Case::Middle, height).unwrap(), view.system).number);
            }
            if let Some(multiple) = sway.multiple(Case::Middle, height).filter(|_| shown(SwayChart::Multiple))
            {
                wanted.push(figures::factor(multiple).number);
            }
        }
        wanted
            .into_iter()
            .filter(|wanted| !stands(wanted))
            .map(|wanted| format!("{wanted} is missing"))
            .collect()
    });
}

/// Whoever reads a value takes it for that of the nearest dot.
#[test]
fn values_stand_by_their_own_dots() {
    /// Dots closer together than this share their values' places, px.
    const CLUSTER: f64 = 26.0;
    let read = std::cell::Cell::new(0);
    each(|stage, view, sheet, height, moving, _| {
        let plot = sheet.frame.plots.iter().find(|plot| plot.chart == Chart::Sway(SwayChart::Give));
        let (Some(plot), Some(sway)) = (plot, &stage.sway) else { return Vec::new() };
        let dots: Vec<(f64, String)> = [Case::Middle, Case::Soft, Case::Stiff, Case::Unguided]
            .into_iter()
            .filter_map(|case| sway.give(case, height))
            .map(|give| (plot.place(give, height).x, figures::sag(give, view.system).number))
            .collect();
        let (left, right) =
            dots.iter().fold((f64::MAX, f64::MIN), |(left, right), (x, _)| (left.min(*x), right.max(*x)));
        if right - left <= CLUSTER {
            return Vec::new();
        }
        let level = plot.scale.level(height);
        let mut wrong = Vec::new();
        for mark in moving.iter().filter(|mark| mark.class == "sag-t halo") {
            let (Some(area), said) = (mark.lettering(&widths), words(mark)) else { continue };
            let gap = |dot: f64| (area.x - dot).max(dot - area.right()).max(0.0);
            let beside = (area.y - level).abs() < 50.0 && dots.iter().any(|(dot, _)| gap(*dot) < 30.0);
            if !beside || !dots.iter().any(|(_, number)| number == said) {
                continue;
            }
            read.set(read.get() + 1);
            let least = dots.iter().map(|(dot, _)| gap(*dot)).fold(f64::MAX, f64::min);
            if !dots.iter().any(|(dot, number)| number == said && gap(*dot) <= least + 1.0) {
                wrong.push(format!(
                    "{said} at {} to {} is none of the nearest of {dots:?}",
                    area.x,
                    area.right()
                ));
            }
        }
        wrong
    });
    assert!(read.get() > 100, "only {} values seen", read.get());
}

#[test]
fn the_level_is_one_level() {
    each(|stage, view, sheet, height, moving, _| {
        let station = stage.report.at(height);
        let surface = sheet.frame.scale.y(station.pose.deck_height * 1e3);
        let lines: Vec<(f64, f64)> = moving
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
        for (place, plot) in sheet.frame.plots.iter().enumerate() {
            let level = plot.scale.level(height);
            if !lies_at(level) || view.layout == Layout::Wide && (level - surface).abs() > 1.0 {
                wrong.push(format!("plot {place} has its level at {level}, the deck lies at {surface}"));
            }
            // The middle curve, drawn last, crosses the level where its value says.
            if plot.chart == Chart::Sway(SwayChart::Give)
                && let Some(sway) = &stage.sway
            {
                let main = sheet.curves.iter().rfind(|curve| curve.plot == place).unwrap();
                let wanted = plot.place(sway.give(Case::Middle, height).unwrap(), height).x;
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
    for stage in stages() {
        let (low, high) = (stage.report.lowest(), stage.report.highest());
        for (view, beside) in views() {
            let scene = stage.scene(beside);
            let sheet = SwaySheet::new(&scene, &view, &widths);
            let kinds = |part: f64, push: f64| -> Vec<_> {
                let station = stage.report.at(low + part * (high - low));
                let (moving, _) = sheet.moving(&scene, &station, push, &widths);
                moving.iter().map(|mark| (mark.class, std::mem::discriminant(&mark.shape))).collect()
            };
            let first = kinds(0.0, 0.0);
            for (part, push) in [(0.0, 50.0), (0.4, -20.0), (0.4, f64::NAN), (1.0, 1e9)] {
                assert!(kinds(part, push) == first, "{} {view:?} at {part}, {push} N", stage.name);
            }
        }
    }
}

#[test]
fn the_picture_holds_the_table() {
    each(|_, _, sheet, _, moving, live| {
        let mut wrong = Vec::new();
        for grip in [live.carriage, live.deck, live.push].into_iter().flatten() {
            if grip.centre.x < 0.0 || grip.centre.x > sheet.width {
                wrong.push(format!("a grip lies outside: {grip:?}"));
            }
        }
        for plot in &sheet.frame.plots {
            if plot.area.right() > sheet.width || plot.area.width < 100.0 {
                wrong.push(format!("{plot:?}"));
            }
        }
        let written: String = moving.iter().map(Mark::svg).collect();
        if written.contains("NaN") || written.contains("inf") {
            wrong.push("something is not a number".to_owned());
        }
        wrong
    });
}

#[test]
fn sizes_nobody_has_still_give_a_picture() {
    let stage = stages().into_iter().next().unwrap();
    for layout in [Layout::Wide, Layout::Narrow, Layout::Print] {
        for (width, height) in [(0, 0), (1, 9000), (240, 320), (500, 320), (9000, 1), (u32::MAX, u32::MAX)] {
            for beside in [false, true] {
                let view = View { head: height / 2, ..View::new(width, height, layout, System::Inch) };
                let picture = compose(&stage.scene(beside), f64::NAN, f64::INFINITY, &view, &widths);
                assert!(picture.width >= 240.0 && picture.height.is_finite(), "{view:?}");
                assert!(!picture.svg("", "").contains("NaN"), "{view:?}");
            }
        }
    }
}

fn shown<'a>(stage: &'a Stage, pieces: &'a Pieces, station: &'a crate::report::Station) -> EndSubject<'a> {
    let side = Subject { design: &stage.report.design, pose: &station.pose, runs: [[0.0; 2]; 2], pixel: 1.0 };
    EndSubject { side, pieces, leaning: None, middle: 0.0 }
}

/// Left and right ends of every outline of a class.
fn spans(strokes: &[Stroke], class: &str) -> Vec<[f64; 2]> {
    use crate::drawing::outline::Bounds;
    strokes
        .iter()
        .filter(|stroke| stroke.class == class)
        .filter_map(|stroke| Bounds::around(std::slice::from_ref(stroke)))
        .map(|bounds| [bounds.least.x, bounds.most.x])
        .collect()
}

/// Sizes of the metric demo: arms A stand at 220 mm, arms B at 180 mm from the middle, 36 mm thick; boards between the
/// arms A are 404 mm from face to face, between the arms B 324 mm.
#[test]
fn the_demo_stands_as_its_parts_do() {
    let stage = stages().into_iter().next().unwrap();
    let pieces = Pieces::of(&stage.report.design);
    let station = stage.report.at(0.84);
    let strokes = shown(&stage, &pieces, &station).mechanism();
    let has = |class: &str, wanted: [f64; 2], count: usize| {
        let found = spans(&strokes, class)
            .into_iter()
            .filter(|span| (span[0] - wanted[0]).abs() < 0.01 && (span[1] - wanted[1]).abs() < 0.01)
            .count();
        assert_eq!(found, count, "{class} {wanted:?}: {:?}", spans(&strokes, class));
    };
    has("w near", [202.0, 238.0], 2);
    has("w near", [-238.0, -202.0], 2);
    has("w far", [162.0, 198.0], 2);
    has("w ply", [-202.0, 202.0], 4);
    has("w ply", [-162.0, 162.0], 4);
    // Wheels 12 mm wide at 248 mm: two visible ones, and the base one again behind its cheek.
    has("w steel", [242.0, 254.0], 2);
    has("hid", [242.0, 254.0], 1);
    // A cheek of 36 mm beside the wheel, 0.5 mm off it, hides it.
    has("w ply", [242.5, 278.5], 3);
}

#[test]
fn it_is_seen_from_the_end_with_the_crank() {
    let seen = |design: crate::design::Design| {
        let report = analyse(&design).unwrap();
        let pieces = Pieces::of(&design);
        let station = report.at(report.lowest());
        let stage = Stage { name: "", report, sway: None, findings: Vec::new() };
        shown(&stage, &pieces, &station).seen_from_right()
    };
    assert!(!seen(Demo::PaperLift.design()));
    assert!(seen(Demo::PottingBench.design()));
    assert!(seen(odd(
        |d| (d.drive.bearing_end, d.drive.bearing_place) = (BearingEnd::Far, Length::mm(640.0))
    )));
    assert!(!seen(odd(|d| d.drive.kind = DriveKind::SidePivots)));
}

/// A push moves the deck as far as the slow report says, times the factor that stands beneath the floor, to the side the
/// push goes to, and twice as far for twice the push.
#[test]
fn the_deck_gives_as_the_report_says() {
    for stage in stages().into_iter().take(2) {
        let scene = stage.scene(false);
        let sway = stage.sway.as_ref().unwrap();
        let view = View::new(1096, 628, Layout::Wide, System::Metric);
        let sheet = SwaySheet::new(&scene, &view, &widths);
        let factor = f64::from(sheet.frame.bent_factor);
        let note = format!("give × {factor}");
        assert!(sheet.still.iter().any(|mark| words(mark) == note), "{}", stage.name);
        // The reference point of the deck lies in its middle, on its surface.
        let height = sway.heights[11];
        let station = stage.report.at(height);
        let moved = |push: f64| {
            let side = sheet.side(&stage.report, &station);
            let straight = sheet.end(side, None);
            let lean = sway.lean(height).unwrap();
            let scale = straight.turned() * sheet.drawn(1.0, push);
            let pushed = sheet.end(side, Some(Leaning { lean: &lean, scale }));
            pushed.at(Carrier::Deck, 0.0, side.deck_point().y).x
        };
        let wanted = factor * 1e3 * sway.give(Case::Middle, height).unwrap();
        assert!((moved(PUSH) - wanted).abs() < 1e-6 * wanted, "{}", stage.name);
        assert!((moved(-2.0 * PUSH) + 2.0 * wanted).abs() < 1e-6 * wanted, "{}", stage.name);
        let (_, live) = sheet.moving(&scene, &station, PUSH, &widths);
        let grip = live.per_newton * PUSH;
        assert!((grip - wanted * sheet.frame.scale.per_mm).abs() < 1e-9 * grip);
    }
}

/// The pieces that are fastened to each other stay so in the leaning picture: bolts in their arms, boards between theirs.
#[test]
fn nothing_comes_apart_under_a_push() {
    for stage in stages() {
        let Some(sway) = &stage.sway else { continue };
        let view = View::new(1096, 628, Layout::Wide, System::Metric);
        let scene = stage.scene(false);
        let sheet = SwaySheet::new(&scene, &view, &widths);
        let station = stage.report.at(stage.report.highest());
        let lean = sway.lean(station.height).unwrap();
        let scale = sheet.drawn(1.0, PUSH);
        let pushed = sheet.end(sheet.side(&stage.report, &station), Some(Leaning { lean: &lean, scale }));
        let give = sheet.drawn(lean.deck.abs(), PUSH);
        // Where the arms A of one stage and B of the next meet, neither is farther from the other than the joint gives.
        for stage_below in 1..station.pose.n {
            let place = |arm, part| pushed.moved(Carrier::Arm(arm, part), 200.0, 0.0);
            let apart = place(ArmId::a(stage_below), 1.0) - place(ArmId::b(stage_below + 1), 0.0);
            assert!(apart.length() < 0.1 * give + 1e-9, "{}: {apart} of {give}", stage.name);
        }
    }
}
