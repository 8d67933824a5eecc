//! The search for tables: exactly the set that an enumeration without pruning finds, every proposal within every limit when it is analysed
//! afresh, and ways out that are the least that does.
#![allow(clippy::cast_possible_truncation, reason = "figures in whole steps, far within 64 bits")]
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test may stop where something is missing")]

use risewright::catalogue::thread::THREADS;
use risewright::design::{Demo, Design};
use risewright::pages::{Reader, page};
use risewright::quantity::{Length, Mass, Money, System};
use risewright::report::search::{
    Brace, Figures, Loose, Measure, RUNGS, Search, Space, Stance, Target, Targets, Way, judge,
};
use risewright::report::{Case, Grade, LEAST_MULTIPLE, Station, SwayRun, analyse, told};
use risewright::share::address::View;
use risewright::workshop::sheets::{Search as Packing, jobs};
use std::rc::Rc;

fn threads(names: &[&str]) -> Vec<&'static risewright::catalogue::thread::Thread> {
    names.iter().map(|name| THREADS.iter().find(|row| row.name == *name).unwrap()).collect()
}

/// Few enough to be judged one by one, and of all kinds: some do not fit, some fail, some pass.
fn small_space(targets: &Targets) -> Space {
    Space {
        stages: vec![1, 2],
        angles: vec![62.0, 54.0],
        widths: vec![Length::mm(60.0), Length::mm(75.0)],
        layers: vec![2, 3],
        braces: Brace::ALL.to_vec(),
        ways: vec![Way::BasePull, Way::DeckPush],
        threads: threads(&["Tr 20 x 4", "Tr 24 x 5"]),
        pins: vec![Length::mm(16.0)],
        ..Space::of(targets)
    }
}

fn run(mut search: Search) -> Search {
    while search.advance() {}
    search
}

fn is_within(figures: &Figures, targets: &Targets) -> bool {
    Measure::ALL.iter().all(|measure| {
        let target = targets.of(*measure);
        target.stance != Stance::Limit || figures.of(*measure) <= target.value
    })
}

/// Places of the tables that no other beats, found by judging every combination and holding each against all others.
fn enumerated(targets: &Targets, space: &Space) -> Vec<usize> {
    let judged: Vec<(usize, [i64; 10])> = (0..space.len())
        .filter_map(|at| {
            let design = space.choice(at)?.design(targets).ok()?;
            let figures = judge(&design, targets).ok()?;
            is_within(&figures, targets).then(|| {
                let steps =
                    Measure::ALL.map(|measure| (figures.of(measure) / measure.noticed()).round() as i64);
                (at, steps)
            })
        })
        .collect();
    let beaten = |(at, steps): &(usize, [i64; 10])| {
        judged.iter().any(|(other, its)| {
            let as_good = its.iter().zip(steps).all(|(one, two)| one <= two);
            other != at && as_good && (its != steps || other < at)
        })
    };
    judged.iter().filter(|one| !beaten(one)).map(|(at, _)| *at).collect()
}

fn found(targets: &Targets, space: &Space) -> Vec<usize> {
    run(Search::over(targets, space)).front().kept().iter().map(|kept| kept.at).collect()
}

#[test]
fn the_search_finds_what_an_enumeration_finds() {
    let mut targets = Targets::first(System::Metric);
    let space = small_space(&targets);
    let all = enumerated(&targets, &space);
    assert!(all.len() >= 4, "too few to say anything: {all:?}");
    assert_eq!(found(&targets, &space), all);

    // Prices, tighter limits, and heights that may be missed.
    targets.base.shop.sheet_price = Money::of(90.0);
    targets.base.shop.bar_price = Money::of(6.0);
    targets.base.shop.screw_price = Money::of(45.0);
    targets.most[Measure::Give.at()] = Target::limit(0.0025);
    targets.most[Measure::Turns.at()] = Target::limit(62.0);
    targets.lowest = Target::wish(Length::mm(500.0));
    let space = Space { stages: vec![2], widths: vec![Length::mm(75.0)], ..small_space(&targets) };
    assert_eq!(space.lowest.len(), 3);
    let all = enumerated(&targets, &space);
    assert!(all.len() >= 2, "too few to say anything: {all:?}");
    assert_eq!(found(&targets, &space), all);
}

#[test]
fn a_small_space_in_inches_too() {
    let mut targets = Targets::first(System::Inch);
    targets.most[Measure::Weight.at()] = Target::limit(44.0);
    let space = Space {
        stages: vec![1],
        angles: vec![62.0, 50.0],
        widths: vec![Length::inch(2.0), Length::inch(3.0)],
        layers: vec![2],
        threads: threads(&["5/8-8 Acme", "3/4-6 Acme"]),
        pins: vec![Length::inch(0.5)],
        ..Space::of(&targets)
    };
    let all = enumerated(&targets, &space);
    assert!(all.len() >= 4, "too few to say anything: {all:?}");
    assert_eq!(found(&targets, &space), all);
}

/// The figures of a design by the program's other doors, and that nothing in it fails.
fn afresh(design: &Design, targets: &Targets) -> Figures {
    let report = analyse(design).expect("a proposal stands");
    for found in report.findings.iter().filter(|found| found.grade == Grade::Over) {
        let words = found.phrase.text(System::Metric);
        // The empty table, pushed at its deck, is told but rules nothing out.
        let empty = words.contains("at the deck, empty");
        let allowed = words.starts_with("Sheet:") || words.starts_with("Crank") || empty;
        assert!(allowed, "{}: {words}", design.name);
    }
    let mut sway = SwayRun::new(design).unwrap();
    while !sway.advance(8).unwrap().finished() {}
    let sway = sway.report().unwrap();
    let least = sway.least_multiple(Case::Middle).map_or(f64::INFINITY, |(multiple, _)| multiple);
    assert!(least >= LEAST_MULTIPLE, "{}: {least}", design.name);
    let sheets: usize = jobs(design, &report.parts)
        .iter()
        .map(|job| {
            let mut packing = Packing::new(job);
            packing.advance(3000);
            assert!(packing.best().left.is_empty());
            packing.best().bought(job)
        })
        .sum();
    let mut figures = judge(design, targets).unwrap();
    let set = |figures: &mut Figures, measure: Measure, value: f64| figures.0[measure.at()] = value;
    set(&mut figures, Measure::Crank, report.greatest(Station::crank_raise).0);
    set(&mut figures, Measure::Turns, report.turns());
    set(&mut figures, Measure::Sag, report.greatest(|station| station.sag().total()).0);
    set(&mut figures, Measure::Give, sway.middle.iter().map(told::gives).fold(0.0, f64::max));
    set(&mut figures, Measure::Sheets, sheets as f64);
    figures
}

#[test]
fn every_proposal_keeps_every_limit_when_analysed_afresh() {
    for system in [System::Metric, System::Inch] {
        let targets = Targets::first(system);
        let search = run(Search::new(&targets));
        let picks = search.picks(6);
        assert!(picks.len() >= 3, "{system:?}");
        for pick in &picks {
            let design = search.design(&pick.kept).unwrap();
            let figures = afresh(&design, &targets);
            assert!(is_within(&figures, &targets), "{}: {figures:?}", design.name);
            for measure in [Measure::Crank, Measure::Turns, Measure::Sag, Measure::Give] {
                let (one, other) = (figures.of(measure), pick.kept.figures.of(measure));
                assert!((one - other).abs() <= 1e-9 * other, "{measure:?}: {one} {other}");
            }
            assert!(
                design.lift.lowest <= targets.lowest.value && design.lift.highest >= targets.highest.value
            );
        }
        // Somebody is best at the crank, somebody at the turns, and all are different tables.
        let is_best = |measure| picks.iter().any(|pick| pick.best.contains(&measure));
        assert!(is_best(Measure::Crank) && is_best(Measure::Turns), "{picks:?}");
        assert!(
            picks
                .iter()
                .enumerate()
                .all(|(at, one)| picks[at + 1..].iter().all(|other| other.kept.at != one.kept.at))
        );
    }
}

/// Words between two marks, as often as they stand in a text.
fn between<'a>(text: &'a str, from: &str, to: &str) -> Vec<&'a str> {
    text.split(from).skip(1).map(|rest| rest.split(to).next().unwrap()).collect()
}

/// A superlative belongs to one card, what reads like a wish meets it, and no ring hides another.
#[test]
fn proposals_are_told_apart() {
    let report = Rc::new(analyse(&Demo::PaperLift.design()).unwrap());
    let mut shared = 0;
    for system in [System::Metric, System::Inch] {
        let reader = Reader { system, address: "https://example.org/".into(), date: "2026-01-31".into() };
        let mut page = page(View::Targets, &report).unwrap();
        page.answer("search", "go", &reader);
        while page.advance() {}
        let html = page.document(&reader).html();
        let cards = between(&html, "<div class=\"proposal\">", "<p class=\"note\">");
        assert!(cards.len() >= 3);
        for words in [
            "asiest to crank",
            "ewest turns",
            "ags least",
            "ives least sideways",
            "ightest",
            "takes least sheet",
        ] {
            let alone =
                cards.iter().filter(|card| card.contains(words)).filter(|card| !card.contains("mong "));
            assert!(alone.count() <= 1, "{words}: {cards:?}");
        }
        shared += cards.iter().filter(|card| card.contains("mong ")).count();
        let asked = html.split("<tfoot>").nth(1).unwrap().split("</tfoot>").next().unwrap();
        let asked = between(asked, "<td", "</td>");
        let rows = html.split("<tfoot>").next().unwrap().rsplit("<tbody>").next().unwrap();
        for row in between(rows, "<tr>", "</tr>") {
            for (cell, asked) in between(row, "<td", "</td>").iter().zip(&asked) {
                let (class, text) = cell.split_once('>').unwrap();
                if *asked == format!(" class=\"n\">({text})") {
                    assert!(class.contains("strong"), "{cell} {asked}");
                }
            }
        }
        let numbers = |name: &str| -> Vec<f64> {
            let rings = between(&html, "<circle class=\"ring\"", ">");
            rings.iter().map(|ring| between(ring, name, "\"")[0].parse().unwrap()).collect()
        };
        let rings: Vec<(f64, f64)> = numbers("cx=\"").into_iter().zip(numbers("cy=\"")).collect();
        assert_eq!(rings.len(), cards.len());
        for (at, one) in rings.iter().enumerate() {
            let far = rings[..at].iter().all(|other| (one.0 - other.0).hypot(one.1 - other.1) > 18.0);
            assert!(far, "{rings:?}");
        }
    }
    assert!(shared > 0);
}

#[test]
fn two_runs_of_the_same_targets_are_alike() {
    let targets = Targets::first(System::Metric);
    let space = small_space(&targets);
    let (one, other) = (run(Search::over(&targets, &space)), run(Search::over(&targets, &space)));
    assert_eq!(one.front(), other.front());
    assert_eq!((one.count(), one.faults()), (other.count(), other.faults()));
}

#[test]
fn what_is_said_to_do_does_and_nothing_less() {
    let mut targets = Targets::first(System::Metric);
    targets.most[Measure::Crank.at()] = Target::limit(90.0);
    targets.lowest.value = Length::mm(500.0);
    let space = small_space(&targets);
    let search = run(Search::over(&targets, &space));
    assert!(search.front().kept().is_empty());
    assert!(search.ways_out().len() >= 2, "{:?}", search.ways_out());
    for way in search.ways_out() {
        let opened = |value: f64| {
            let (mut targets, mut space) = (targets.clone(), space.clone());
            match way.loose {
                Loose::Most(measure) => targets.most[measure.at()] = Target::limit(value),
                Loose::Lowest => {
                    targets.lowest = Target::limit(Length::m(value));
                    space.lowest = vec![Length::m(value)];
                }
                Loose::Highest => {
                    targets.highest = Target::limit(Length::m(value));
                    space.highest = vec![Length::m(value)];
                }
                Loose::DeckLength => targets.deck_length = Target::limit(Length::m(value)),
            }
            let mut search = Search::over(&targets, &space);
            while search.advance() && !search.is_loosening() {}
            !search.front().kept().is_empty()
        };
        assert!(opened(way.needed), "{:?} {}", way.loose, way.needed);
        let less = match way.loose {
            Loose::Most(_) | Loose::DeckLength => way.asked + 0.999 * (way.needed - way.asked),
            Loose::Lowest | Loose::Highest => {
                let step = (way.needed - way.asked).abs() * 1e3;
                let before = RUNGS.iter().copied().filter(|rung| *rung < step - 1e-6).fold(0.0, f64::max);
                way.asked + (way.needed - way.asked).signum() * before / 1e3
            }
        };
        assert!(!opened(less), "{:?}: {less} would do for {}", way.loose, way.needed);
        assert!(judge(&way.design, &targets).is_ok());
    }
}

#[test]
fn where_no_limit_alone_is_to_blame_the_nearest_table_is_shown() {
    let mut targets = Targets::first(System::Metric);
    targets.most[Measure::Crank.at()] = Target::limit(40.0);
    targets.most[Measure::Turns.at()] = Target::limit(20.0);
    targets.most[Measure::Weight.at()] = Target::limit(20.0);
    let space = Space { stages: vec![2], ..small_space(&targets) };
    let search = run(Search::over(&targets, &space));
    assert!(search.front().kept().is_empty() && search.ways_out().is_empty());
    let (design, figures) = search.nearest().unwrap();
    assert_eq!(judge(design, &targets).as_ref().ok(), Some(figures));
    // Nobody in the space passes its limits by less.
    let excess = |figures: &Figures| -> f64 {
        figures.over(&targets).map(|measure| figures.of(measure) / targets.of(measure).value - 1.0).sum()
    };
    for at in 0..space.len() {
        let Some(Ok(design)) = space.choice(at).map(|choice| choice.design(&targets)) else { continue };
        if let Ok(others) = judge(&design, &targets) {
            assert!(excess(&others) >= excess(figures) - 1e-12);
        }
    }
}

#[test]
fn absurd_targets_end_without_a_table() {
    let first = Targets::first(System::Metric);
    let mut list = Vec::new();
    let mut with = |change: &dyn Fn(&mut Targets)| {
        let mut targets = first.clone();
        change(&mut targets);
        list.push(targets);
    };
    with(&|targets| targets.threads.clear());
    with(&|targets| targets.highest.value = Length::ZERO);
    with(&|targets| {
        (targets.lowest.value, targets.highest.value) = (targets.highest.value, targets.lowest.value);
    });
    with(&|targets| targets.lowest.value = Length::from_steps(i64::MIN));
    with(&|targets| targets.deck_width = Target::limit(Length::mm(1.0)));
    with(&|targets| targets.deck_length = Target::limit(Length::from_steps(-5)));
    with(&|targets| targets.base.load.mass = Mass::kg(1e6));
    with(&|targets| targets.most[Measure::Crank.at()] = Target::limit(f64::NAN));
    with(&|targets| targets.most[Measure::Crank.at()] = Target::limit(-1.0));
    with(&|targets| targets.pins = vec![Length::mm(900.0)]);
    for targets in &list {
        let space = Space {
            widths: vec![Length::mm(75.0)],
            layers: vec![2],
            angles: vec![62.0],
            ..Space::of(targets)
        };
        let search = run(Search::over(targets, &space));
        assert!(search.front().kept().is_empty() || targets.of(Measure::Crank).value.is_nan());
        assert!((search.progress() - 1.0).abs() < f64::EPSILON);
    }
}
