//! The Strength view as a document: complete, well formed, worst first, and its remedies are what they say.
//!
//! No outside values: the view is held to the report it is made from, and what it offers to the report of the design offered.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops at the first surprise"
)]

mod odd;

use risewright::checks::{Check, Group, Member, Verdict, Weight};
use risewright::design::{BearingEnd, Demo, Design, DriveKind};
use risewright::drawing::elevation::Subject;
use risewright::drawing::{Bounds, Layout, Mark, Sheet, Stroke, View as Paper, widths};
use risewright::pages::{Act, Block, Cell, Document, Fold, Page, Reader, Span, Text, page};
use risewright::quantity::{Count, Length, Mass, System};
use risewright::report::{Report, analyse};
use risewright::share::address::View;
use risewright::share::link;
use std::collections::BTreeSet;
use std::rc::Rc;

/// A worker hands the document over as text; for about fifty checks it stays below this, bytes.
const MOST_BYTES: usize = 170_000;

fn report(design: &Design) -> Rc<Report> {
    Rc::new(analyse(design).unwrap_or_else(|unsound| panic!("{:?}", unsound.phrases())))
}

/// Both demos, the odd ones, and the paper lift so overloaded that much is over.
fn designs() -> Vec<(String, Design)> {
    let mut designs = odd::designs();
    designs.extend(Demo::ALL.map(|demo| (format!("{demo:?}"), demo.design())));
    designs.push(("overloaded".into(), overloaded()));
    designs
}

fn overloaded() -> Design {
    let mut design = Demo::PaperLift.design();
    design.load.mass = Mass::kg(400.0);
    design.arms.layers = Count::of(1);
    (design.arms.boards_a, design.arms.boards_b) = (false, false);
    design
}

fn reader(system: System) -> Reader {
    Reader { system, address: "https://example.org/".into(), date: "2026-01-31".into() }
}

fn strength(report: &Rc<Report>) -> Box<dyn Page> {
    page(View::Strength, report).expect("a document")
}

/// Everything open or closed in order, elements without content apart.
fn well_formed(html: &str) {
    const EMPTY: [&str; 3] = ["hr", "br", "input"];
    let mut open: Vec<&str> = Vec::new();
    let mut rest = html;
    while let Some(at) = rest.find('<') {
        assert!(!rest[..at].contains('>'), "a stray bracket: {rest:.60}");
        let end = at + rest[at..].find('>').unwrap();
        let tag = &rest[at + 1..end];
        let name = tag.trim_start_matches('/').split([' ', '/']).next().unwrap();
        if tag.starts_with('/') {
            assert_eq!(open.pop(), Some(name), "{:.80}", &rest[at..]);
        } else if !tag.ends_with('/') && !EMPTY.contains(&name) {
            open.push(name);
        }
        assert_eq!(tag.matches('"').count() % 2, 0, "{tag}");
        assert!(!tag.contains("style="), "{tag}");
        rest = &rest[end + 1..];
    }
    assert!(open.is_empty(), "{open:?}");
}

fn values<'a>(html: &'a str, attribute: &str) -> Vec<&'a str> {
    let mark = format!("{attribute}=\"");
    html.split(&mark).skip(1).map(|rest| rest.split('"').next().unwrap()).collect()
}

#[test]
fn every_check_of_every_design_is_there_once_in_sound_markup() {
    for (name, design) in designs() {
        let report = report(&design);
        let page = strength(&report);
        for system in [System::Metric, System::Inch] {
            let html = page.document(&reader(system)).html();
            well_formed(&html);
            for bad in ["NaN", "inf\"", ">inf", "−0<", "Infinity"] {
                assert!(!html.contains(bad), "{name}: {bad}");
            }
            let folds = values(&html, "data-fold");
            let names: BTreeSet<&str> = folds.iter().copied().collect();
            assert_eq!(names.len(), folds.len(), "{name}: a fold twice");
            assert_eq!(folds.len(), report.checks.len() + 1, "{name}");
            for check in &report.checks {
                assert!(names.contains(check.id), "{name}: {}", check.id);
                assert!(html.contains(&format!("data-check=\"{}\"", check.id)));
            }
            let shapes: BTreeSet<&str> = values(&html, " id").into_iter().collect();
            for wanted in values(&html, "href") {
                assert!(shapes.contains(wanted.strip_prefix('#').unwrap()), "{name}: {wanted}");
            }
        }
    }
}

/// Folds of checks under their headings, in the order of the page.
fn groups(document: &Document) -> Vec<(String, Vec<&Fold>)> {
    let mut groups: Vec<(String, Vec<&Fold>)> = Vec::new();
    for block in &document.blocks {
        match block {
            Block::Heading(words) => groups.push((words.clone(), Vec::new())),
            Block::Group("checks", rows) => {
                let rows =
                    rows.iter().filter_map(|row| if let Block::Fold(fold) = row { Some(fold) } else { None });
                groups.last_mut().unwrap().1.extend(rows);
            }
            _ => {}
        }
    }
    groups
}

#[test]
fn groups_and_rows_stand_worst_first() {
    let key = |check: &Check| (check.weight == Weight::Advice, check.verdict, -check.ratio);
    for (name, design) in designs() {
        let report = report(&design);
        let document = strength(&report).document(&reader(System::Metric));
        let groups = groups(&document);
        let mut titles: Vec<&str> = groups.iter().map(|group| group.0.as_str()).collect();
        let check = |fold: &Fold| report.check(&fold.id).unwrap();
        let keys: Vec<_> = groups.iter().map(|(_, rows)| key(check(rows[0]))).collect();
        assert!(keys.windows(2).all(|pair| pair[0] <= pair[1]), "{name}: {titles:?}");
        for (title, rows) in &groups {
            assert!(rows.iter().all(|row| check(row).group.title() == title));
            assert!(
                rows.windows(2).all(|pair| key(check(pair[0])) <= key(check(pair[1]))),
                "{name}: {title}"
            );
        }
        titles.sort_unstable();
        let mut all: Vec<&str> = Group::ALL.map(Group::title).into();
        all.retain(|title| report.checks.iter().any(|check| check.group.title() == *title));
        all.sort_unstable();
        assert_eq!(titles, all, "{name}");
    }
}

/// A single thin layer of arms under a heavy load: what fails stands first, with its word.
#[test]
fn what_fails_stands_first() {
    let report = report(&overloaded());
    let html = strength(&report).document(&reader(System::Metric)).html();
    let rows = html.split("class=\"checks\"").nth(1).unwrap();
    assert!(rows.contains("<strong>Over</strong>"), "{rows:.400}");
    let over = report.checks.iter().filter(|check| check.verdict == Verdict::Over).count();
    assert!(html.contains(&format!("<strong>{over}</strong> over the limit")));
    assert!(
        html.contains("Over the limit at every height.")
            || html.contains("Over the limit with the deck between")
    );
}

/// The line and what opens beneath it tell the same height, and no formula keeps the sign of its subscripts.
#[test]
fn line_and_reckoning_agree_and_subscripts_are_set() {
    let (mut everywhere, mut set) = (0, BTreeSet::new());
    for (name, design) in designs() {
        let document = strength(&report(&design)).document(&reader(System::Metric));
        for fold in groups(&document).into_iter().flat_map(|(_, rows)| rows) {
            let Cell::Number(height) = &fold.line[5] else { panic!("{name}: {:?}", fold.line[5]) };
            let inner = Document { title: String::new(), blocks: fold.blocks.clone() }.html();
            let told = if height == "every" {
                everywhere += 1;
                " at every height.".to_owned()
            } else {
                format!(" at deck {height}.")
            };
            let first = inner.split("</p>").next().unwrap();
            assert!(first.ends_with(&told), "{name}: {height} in the line, beneath it {first}");
            for formula in inner.split("<code>").skip(1) {
                let formula = formula.split("</code>").next().unwrap();
                assert!(!formula.contains('_'), "{name}: {formula}");
                set.insert(formula.to_owned());
            }
        }
    }
    assert!(everywhere > 0);
    assert!(set.contains("l cos α / π d<sub>m</sub> ≤ 0.6 μ"));
    let formula = Block::text(Text::default().formula("3 f_c,90 k_mod / γ, F_cr,  stout"));
    let html = Document { title: String::new(), blocks: vec![formula] }.html();
    assert!(html.contains("3 f<sub>c,90</sub> k<sub>mod</sub> / γ, F<sub>cr</sub>,  stout<"), "{html}");
}

/// Finding and check compare the same two figures.
#[test]
fn the_finding_of_a_screw_that_holds_compares_what_its_check_does() {
    let mut told = 0;
    for (name, design) in designs() {
        let report = report(&design);
        let check = report.check("screw-holding").unwrap();
        let words = report.findings.iter().map(|finding| finding.phrase.text(System::Metric));
        if let Some(words) = words.into_iter().find(|words| words.starts_with("The screw holds by itself")) {
            let [given, needed] = [check.capacity, check.demand].map(|amount| amount.text(System::Metric));
            let [of, then] =
                [format!(": {given} of its"), format!("is counted on then, {needed} is needed.")];
            assert!(words.contains(&of) && words.ends_with(&then), "{name}: {words}");
            told += 1;
        }
    }
    assert!(told > 5, "{told}");
}

/// Every offer of a fold: the words before its button, and the link.
fn offers(blocks: &[Block], found: &mut Vec<(String, String)>) {
    for block in blocks {
        match block {
            Block::Group(_, inner) => offers(inner, found),
            Block::Points(items) => items.iter().for_each(|item| offers(item, found)),
            Block::Text(text) => {
                let mut words = String::new();
                for span in &text.0 {
                    match span {
                        Span::Words(more) | Span::Strong(more) | Span::Formula(more) | Span::Code(more) => {
                            words += more;
                        }
                        Span::Act(Act::Take { link, .. }) => found.push((words.clone(), link.clone())),
                        Span::Act(_) => {}
                    }
                }
            }
            _ => {}
        }
    }
}

/// What is offered is tried out here in full: the check is used less, as much as the offer says where it was looked at, and what is said
/// to be over then is over.
#[test]
fn offers_do_what_they_say() {
    let (mut tried, mut spoilt) = (0, 0);
    for design in [Demo::PaperLift.design(), Demo::PottingBench.design(), overloaded()] {
        let report = report(&design);
        let mut page = strength(&report);
        assert!(page.progress() < 1e-9);
        while page.advance() {}
        assert!(page.progress() > 1.0 - 1e-9);
        let document = page.document(&reader(System::Metric));
        for (_, rows) in groups(&document) {
            for fold in rows {
                let before = report.check(&fold.id).unwrap();
                let mut found = Vec::new();
                offers(&fold.blocks, &mut found);
                for ((words, link), help) in found.iter().zip(report.helps(before)) {
                    let after = analyse(&link::decode(link).unwrap()).unwrap();
                    let ratio = after.check(&fold.id).map_or(0.0, |check| check.ratio);
                    assert!(
                        ratio < before.ratio && ratio >= help.ratio - 1e-9,
                        "{words}: {ratio} of {}",
                        before.ratio
                    );
                    assert!(
                        words.contains("nothing left") || words.contains(&format!("{:.2}", help.ratio)),
                        "{words}"
                    );
                    if let Some(title) = help.spoils {
                        let over = after.checks.iter().find(|check| check.title == title).unwrap();
                        assert_eq!(over.verdict, Verdict::Over, "{words}");
                        spoilt += 1;
                    }
                    tried += 1;
                }
            }
        }
    }
    assert!(tried > 150 && spoilt > 0, "{tried} tried, {spoilt} spoil another check");
}

#[test]
fn the_document_stays_small_enough_to_hand_over() {
    for demo in Demo::ALL {
        let report = report(&demo.design());
        let mut page = strength(&report);
        while page.advance() {}
        let bytes = page.document(&reader(System::Metric)).html().len();
        assert!(bytes < MOST_BYTES, "{demo:?}: {bytes} bytes");
    }
}

/// The points of a path of straight lines.
fn points(d: &str) -> Vec<(f64, f64)> {
    let pairs = d.split(['M', 'L']).filter(|pair| !pair.is_empty());
    pairs
        .map(|pair| pair.split_once(' ').unwrap())
        .map(|(x, y)| (x.parse().unwrap(), y.parse().unwrap()))
        .collect()
}

/// A ratio without end: its curve stays on its paper and ends in an arrow, its figure is said in words.
#[test]
fn a_ratio_without_end_stays_on_the_paper() {
    let mut design = Demo::PaperLift.design();
    design.load.centre = Length::mm(-2000.0);
    design.load.mass = Mass::kg(900.0);
    let report = report(&design);
    let most = report.checks.iter().map(|check| check.ratio).fold(0.0, f64::max);
    assert!(most > 100.0, "{most}");
    let html = strength(&report).document(&reader(System::Metric)).html();
    assert!(html.contains("over 100"));
    let mut curves = 0;
    for svg in html.split("<svg ").filter(|svg| svg.contains("class=\"c-ink\"")) {
        let size =
            [" width", "height"].map(|name| values(&format!(" {svg}"), name)[0].parse::<f64>().unwrap());
        let d = svg.split("class=\"c-ink\" d=\"").nth(1).unwrap().split('"').next().unwrap();
        let points = points(d);
        assert!(
            points.iter().all(|(x, y)| (0.0..=size[0]).contains(x) && (0.0..=size[1]).contains(y)),
            "{d}"
        );
        curves += 1;
    }
    assert_eq!(curves, report.checks.len());
    let beyond = report.checks.iter().filter(|check| check.ratio > 2.0).count();
    assert_eq!(html.matches("class=\"ah\"").count(), 2 * beyond, "an arrow in the bar and one on the curve");
}

const MEMBERS: [Member; 13] = [
    Member::BaseWheels,
    Member::DeckWheels,
    Member::CrossBar,
    Member::BearingTube,
    Member::Screw,
    Member::Nut,
    Member::ThrustBearing,
    Member::Deck,
    Member::DeckRails,
    Member::BaseBeams,
    Member::LeftCasters,
    Member::RightCasters,
    Member::Crank,
];

/// Every part can be drawn wide, at every drive, and lies where the table is.
#[test]
fn every_part_is_found_in_the_elevation() {
    for kind in [DriveKind::BaseCarriage, DriveKind::TopCarriage, DriveKind::SidePivots] {
        let mut design = Demo::PaperLift.design();
        design.drive.kind = kind;
        (design.drive.bearing_end, design.drive.bearing_place) = (BearingEnd::Fixed, Length::mm(-100.0));
        let report = report(&design);
        let station = report.at(report.lowest());
        let subject = Subject { design: &design, pose: &station.pose, runs: [[0.0, 400.0]; 2], pixel: 2.0 };
        let mut table = subject.mechanism();
        table.extend(subject.ground());
        let table = Bounds::around(&table).unwrap();
        let members = report.checks.iter().map(|check| check.member).chain(MEMBERS);
        for member in members {
            let strokes: Vec<Stroke> =
                subject.part(member).into_iter().map(|outline| Stroke { class: "part", outline }).collect();
            let part = Bounds::around(&strokes).unwrap_or_else(|| panic!("{member:?} is not drawn"));
            assert!(
                part.least.cmpge(table.least - 10.0).all() && part.most.cmple(table.most + 10.0).all(),
                "{member:?}"
            );
        }
    }
}

/// The main sheet marks the part of a check with outline, sign and words, with as many marks at every height; an unknown check marks nothing.
#[test]
fn the_main_sheet_marks_a_part() {
    for (name, design) in designs().into_iter().skip(10) {
        let report = report(&design);
        let heights = [report.lowest(), (report.lowest() + report.highest()) / 2.0, report.highest()];
        for (width, layout) in [(1096, Layout::Wide), (390, Layout::Narrow)] {
            let marks = |marked: Option<&'static str>| {
                let view = Paper { marked, ..Paper::new(width, 700, layout, System::Metric) };
                let sheet = Sheet::new(&report, &view, &widths);
                heights.map(|height| sheet.moving(&report, &report.at(height), &widths).0)
            };
            let plain = marks(None);
            assert_eq!(marks(Some("no-such-check")), plain, "{name}");
            for check in report.checks.iter().step_by(5) {
                let marked = marks(Some(check.id));
                let wide = |marks: &Vec<Mark>| {
                    marks.iter().filter(|mark| mark.class == "part live" && !mark.is_left_out()).count()
                };
                assert!(marked.iter().all(|marks| wide(marks) > 0), "{name}: {}", check.id);
                let counts = marked.each_ref().map(Vec::len);
                assert!(
                    counts.iter().all(|count| *count == counts[0] && *count > plain[0].len()),
                    "{counts:?}"
                );
            }
        }
    }
}
