//! Designs nobody would build: every one ends in a report with finite figures or in a sentence, never in a panic.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

use proptest::prelude::*;
use risewright::design::{Demo, Design, DriveKind, Field};
use risewright::quantity::{Amount, Count, Kind, Length, Mass, Ratio, System, read};
use risewright::report::{Analysis, Grade, Report, Unsound, analyse, marked, reach, revise, span};

fn value_of(field: &'static Field) -> BoxedStrategy<i64> {
    if field.choices.is_empty() {
        prop_oneof![field.range.0..=field.range.1, Just(field.range.0), Just(field.range.1)].boxed()
    } else {
        prop::sample::select(field.choices.iter().map(|(value, _)| *value).collect::<Vec<_>>()).boxed()
    }
}

/// A demo with a few of its inputs set to anything in their ranges.
fn odd_design(changes: usize) -> impl Strategy<Value = Design> {
    let fields: Vec<&'static Field> = Design::fields().collect();
    let change = prop::sample::select(fields).prop_flat_map(|field| (Just(field), value_of(field)));
    (prop::sample::select(Demo::ALL.to_vec()), prop::collection::vec(change, 0..=changes)).prop_map(
        |(demo, changes)| {
            let mut design = demo.design();
            for (field, value) in changes {
                field.set(&mut design, value);
            }
            design
        },
    )
}

fn figures(report: &Report) -> Vec<f64> {
    let mut figures = vec![report.turns(), report.share];
    for station in &report.stations {
        figures.extend([
            station.height,
            station.raise(),
            station.still(),
            station.lower(),
            station.crank_raise(),
            station.crank_lower(),
            station.torque.raise,
            station.torque.lower,
            station.state.advantage,
            station.state.rest.base_wheel,
            station.state.rest.top_wheel,
        ]);
        figures.extend(station.casters());
        figures.extend(station.state.rest.joints.iter().flat_map(|force| [force.x, force.y]));
    }
    figures
}

fn sentences(report: &Report) -> Vec<String> {
    report
        .findings
        .iter()
        .flat_map(|finding| [Some(finding.phrase.clone()), report.remedy(finding)])
        .flatten()
        .flat_map(|phrase| [phrase.text(System::Metric), phrase.text(System::Inch)])
        .collect()
}

fn sound(design: &Design) -> Result<(), TestCaseError> {
    match analyse(design) {
        Ok(report) => {
            prop_assert!(figures(&report).iter().all(|figure| figure.is_finite()));
            for sentence in sentences(&report) {
                prop_assert!(!sentence.contains("NaN") && !sentence.contains("inf"), "{}", sentence);
                prop_assert!(sentence.ends_with('.'), "{}", sentence);
            }
            prop_assert!(
                report.findings.windows(2).all(|pair| pair[0].grade <= pair[1].grade),
                "worst first"
            );
        }
        Err(unsound) => {
            let phrases = unsound.phrases();
            prop_assert!(!phrases.is_empty());
            for phrase in phrases {
                let text = phrase.text(System::Metric);
                prop_assert!(text.ends_with('.') && !text.contains("NaN"), "{}", text);
            }
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_few_odd_inputs_end_in_figures_or_a_sentence(design in odd_design(4)) {
        sound(&design)?;
    }

    #[test]
    fn many_odd_inputs_end_in_figures_or_a_sentence(design in odd_design(60)) {
        sound(&design)?;
    }

    #[test]
    fn a_revision_is_taken_or_refused_with_a_way_out(
        demo in prop::sample::select(Demo::ALL.to_vec()),
        (field, value) in prop::sample::select(Design::fields().collect::<Vec<_>>()).prop_flat_map(|f| (Just(f), value_of(f))),
    ) {
        let design = demo.design();
        match revise(&design, field, value) {
            Ok(changed) => {
                prop_assert_eq!(field.get(&changed), value);
                prop_assert!(reach(&changed).is_ok());
            }
            Err(refusal) => {
                prop_assert!(refusal.phrase.text(System::Inch).ends_with('.'));
                if let Some(nearest) = refusal.nearest {
                    prop_assert!(revise(&design, field, nearest).is_ok());
                    for system in [System::Metric, System::Inch] {
                        let marked = marked(&design, field, nearest, system);
                        prop_assert!(revise(&design, field, marked).is_ok());
                        let line = match field.kind {
                            Kind::Length => 2540,
                            Kind::Ratio => 100,
                            _ => 1,
                        };
                        prop_assert!(marked.abs_diff(nearest) < line);
                    }
                    let beyond = nearest + (value - nearest).signum();
                    prop_assert!(beyond == value || revise(&design, field, beyond).is_err() || field.kind == Kind::Count);
                }
                if let Some(offer) = refusal.offer {
                    prop_assert_eq!(field.get(&offer.design), value);
                    prop_assert!(analyse(&offer.design).is_ok());
                }
            }
        }
    }
}

/// The range that a refusal and the hint tell is the one that works: both ends are taken as they are read, and one of them stands on the button.
#[test]
fn a_refusal_tells_the_range_that_works() {
    let mut narrower = 0;
    for design in Demo::ALL.map(Demo::design) {
        for field in Design::fields().filter(|field| field.choices.is_empty()) {
            for (value, end) in [(field.range.0 - 1000, 0), (field.range.1 + 1000, 1)] {
                let refusal = revise(&design, field, value).unwrap_err();
                let told: Vec<Amount> = refusal.phrase.amounts().take(2).collect();
                assert_eq!(told, span(&design, field).ends, "{}", field.key);
                narrower += usize::from(refusal.phrase.text(System::Metric).contains("in this design"));
                let lined = matches!(field.kind, Kind::Length | Kind::Ratio);
                for system in [System::Metric, System::Inch].into_iter().filter(|_| lined) {
                    for amount in &told {
                        let text = amount.text(system);
                        let steps = read(&text, field.kind, system).unwrap();
                        assert!(revise(&design, field, steps).is_ok(), "{}: {text}", field.key);
                    }
                    if let Some(nearest) = refusal.nearest {
                        let button = marked(&design, field, nearest, system);
                        let told = read(&told[end].text(system), field.kind, system).unwrap();
                        assert_eq!(button, told, "{}", field.key);
                    }
                }
            }
        }
    }
    assert!(narrower > 10, "{narrower}");
    let design = Demo::PaperLift.design();
    let centre = revise(&design, Design::field("ac").unwrap(), 90_000).unwrap_err();
    let told = centre.phrase.text(System::Metric);
    assert!(told.starts_with("Centre pin at must lie between 0.461 and 0.516 in this design. "), "{told}");
}

#[test]
fn hostile_designs_are_named() {
    let broken = |change: fn(&mut Design)| {
        let mut design = Design::default();
        change(&mut design);
        match analyse(&design) {
            Err(Unsound::Range(faults)) => faults[0].field.key,
            Err(Unsound::Obstacle(obstacle)) => obstacle.key,
            Ok(_) => "stands",
        }
    };
    assert_eq!(broken(|d| d.lift.arm_length = Length::ZERO), "al");
    assert_eq!(broken(|d| d.lift.arm_length = Length::mm(-520.0)), "al");
    assert_eq!(broken(|d| d.lift.arm_length = Length::m(1e300)), "al");
    assert_eq!(broken(|d| d.lift.arm_length = Length::m(f64::NAN)), "al");
    assert_eq!(broken(|d| d.load.mass = Mass::kg(-1.0)), "lm");
    assert_eq!(broken(|d| d.lift.stages = Count::of(9)), "st");
    assert_eq!(broken(|d| d.lift.centre = Ratio::of(0.0)), "ac");
    // Flat: the deck at its pins' own height. Upright: as high as the arms are long.
    assert_eq!(broken(|d| d.lift.lowest = Length::mm(242.0)), "lo");
    assert_eq!(broken(|d| d.lift.highest = Length::mm(242.0 + 1040.0)), "hi");
    assert_eq!(broken(|d| std::mem::swap(&mut d.lift.lowest, &mut d.lift.highest)), "hi");
    assert_eq!(
        broken(|d| {
            d.drive.kind = DriveKind::SidePivots;
            d.drive.level = Count::of(2);
        }),
        "dv"
    );
    assert_eq!(broken(|d| d.drive.bearing_place = Length::mm(300.0)), "dr");
    assert_eq!(broken(|d| d.running.bush = Length::mm(10.0)), "bo");
    // No wood beyond the bushing's hole.
    assert_eq!(broken(|d| d.arms.end = Length::from_steps(d.running.bush.steps() / 2)), "ae");
    assert_eq!(broken(|_| ()), "stands");
}

#[test]
fn the_lowest_deck_ends_where_the_arms_meet() {
    // Parallel arms of two stages lie L sin(theta) cos(theta) apart and need their width and the gap:
    // sin(2 theta) = 2 (75 + 3) / 520, so that the pins of the deck stand 2 L sin(theta) above the base's.
    let theta = 0.5 * (2.0 * 78.0_f64 / 520.0).asin();
    let folded = 160.0 + 82.0 + 2.0 * 520.0 * theta.sin();
    let found = span(&Design::default(), Design::field("lo").unwrap());
    assert!((Length::from_steps(found.from).to_mm() - folded).abs() < 0.01);
    assert!(found.below.unwrap().text(System::Metric).contains("where the arms meet"));
}

/// Whoever makes a report in pieces gets the same as who makes it at once, whatever the pieces; and the first piece already says what is wrong.
#[test]
fn in_pieces_as_at_once() {
    for (demo, heights) in Demo::ALL.into_iter().flat_map(|demo| [1, 7, 200, 10_000].map(|size| (demo, size)))
    {
        let design = demo.design();
        let mut analysis = Analysis::new(&design).unwrap();
        let mut turns = 0;
        let report = loop {
            turns += 1;
            if let Some(report) = analysis.advance(heights).unwrap() {
                break report;
            }
        };
        assert_eq!(turns, 200_usize.div_ceil(heights) + 2);
        let whole = analyse(&design).unwrap();
        assert_eq!(report.digest(), whole.digest());
        assert_eq!(report.findings, whole.findings);
        assert_eq!(sentences(&report), sentences(&whole));
    }
    let mut flat = Demo::PaperLift.design();
    flat.lift.lowest = Length::mm(10.0);
    assert!(Analysis::new(&flat).is_err() && analyse(&flat).is_err());
}

#[test]
fn demos_have_nothing_over() {
    for demo in Demo::ALL {
        let report = analyse(&demo.design()).unwrap();
        let over: Vec<String> = report
            .findings
            .iter()
            .filter(|finding| finding.grade == Grade::Over)
            .map(|finding| finding.phrase.text(System::Metric))
            .collect();
        assert!(over.is_empty(), "{demo:?}: {over:?}");
    }
}

#[test]
fn a_load_off_the_middle_burdens_one_side() {
    // The lever rule between the two outer arms, 440 mm apart: 88 mm off the middle is 0.5 + 88 / 440 = 0.7.
    let mut design = Design::default();
    design.load.across = Length::mm(-88.0);
    let (even, burdened) = (analyse(&Design::default()).unwrap(), analyse(&design).unwrap());
    assert!((burdened.share - 0.7).abs() < 1e-9);
    let (one, other) = (even.stations[0].sag(), burdened.stations[0].sag());
    assert!((other.arms / one.arms - 1.4).abs() < 1e-9 && (other.screw / one.screw - 1.0).abs() < 1e-9);
    let named =
        burdened.findings.iter().any(|finding| finding.phrase.text(System::Metric).contains("70\u{a0}%"));
    assert!(named, "the share is told");
}
