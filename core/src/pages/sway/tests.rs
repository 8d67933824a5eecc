#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
use super::Sway;
use crate::design::{Demo, Design, DriveKind};
use crate::drawing::{Layout, View};
use crate::pages::{Block, Document, Live, Page, Reader, headline};
use crate::quantity::{Count, Force, Length, System};
use crate::report::{Grade, SwayRun, analyse, reach};
use crate::share::link;
use std::rc::Rc;

fn reader(system: System) -> Reader {
    Reader { system, address: "https://example.org/".into(), date: "2026-01-31".into() }
}

fn changed(demo: Demo, change: impl FnOnce(&mut Design)) -> Design {
    let mut design = demo.design();
    change(&mut design);
    design
}

fn bare(d: &mut Design) {
    d.arms.layers = Count::of(1);
    (d.arms.boards_a, d.arms.boards_b, d.arms.straps_a) = (false, false, false);
}

/// Both demos, and tables that lack what the page speaks of.
fn designs() -> Vec<Design> {
    vec![
        Demo::PaperLift.design(),
        Demo::PottingBench.design(),
        changed(Demo::PaperLift, bare),
        changed(Demo::PottingBench, |d| (d.sway.guide_base, d.sway.guide_deck) = (false, false)),
        changed(Demo::PaperLift, |d| d.load.mass = crate::quantity::Mass::ZERO),
        changed(Demo::PaperLift, |d| d.arms.layers = Count::of(4)),
        changed(Demo::PaperLift, |d| {
            (d.running.clearance, d.running.axle_clearance) = (Length::ZERO, Length::ZERO);
            d.sway.guide_play = Length::ZERO;
        }),
        changed(Demo::PaperLift, |d| {
            d.sway.test_pull = Force::n(50.0);
            d.sway.test_give = Length::mm(9.0);
        }),
    ]
}

fn page(design: &Design) -> Sway {
    Sway::new(Rc::new(analyse(design).unwrap()))
}

fn finished(design: &Design) -> Sway {
    let mut page = page(design);
    while page.advance() {}
    page
}

fn view(layout: Layout) -> View {
    let (width, height) = if layout == Layout::Wide { (1096, 628) } else { (390, 720) };
    View::new(width, height, layout, System::Metric)
}

/// Fails where a text is no sound piece of markup, or has a figure that is none.
fn sound(html: &str) {
    for bad in ["NaN", "inf ", "inf<", ">inf", "{", "}"] {
        assert!(!html.contains(bad), "{bad} in {html}");
    }
    let mut open: Vec<&str> = Vec::new();
    for tag in html.split('<').skip(1) {
        let inside = tag.split('>').next().unwrap();
        let name = inside.trim_start_matches('/').split([' ', '/']).next().unwrap();
        if inside.starts_with('/') {
            assert_eq!(open.pop(), Some(name), "</{name}>");
        } else if !inside.ends_with('/') && !matches!(name, "hr" | "input") {
            open.push(name);
        }
    }
    assert!(open.is_empty(), "{open:?}");
}

fn words(document: &Document) -> String {
    let html = document.html().replace('\u{A0}', " ");
    html.split('<').map(|piece| piece.split_once('>').map_or(piece, |(_, words)| words)).collect()
}

#[test]
fn every_stage_can_be_read() {
    for design in designs() {
        let mut page = page(&design);
        let (mut before, mut slices) = (0.0, 0);
        loop {
            let more = page.advance();
            assert!(page.progress() >= before && page.progress() <= 1.0);
            before = page.progress();
            slices += 1;
            if slices % 9 == 1 || !more {
                for system in [System::Metric, System::Inch] {
                    sound(&page.document(&reader(system)).html());
                }
            }
            if !more {
                break;
            }
        }
        assert!((page.progress() - 1.0).abs() < 1e-12 && slices > 20);
    }
}

#[test]
fn the_best_guess_comes_first() {
    let mut page = page(&Demo::PaperLift.design());
    while page.known.is_none() {
        assert!(page.advance());
    }
    assert!(page.progress() < 0.3);
    let known = page.known.as_ref().unwrap();
    assert!(!known.middle.is_empty() && known.soft.is_empty() && known.stiff.is_empty());
    let text = words(&page.document(&reader(System::Metric)));
    assert!(text.contains("still being computed") && text.contains("4.8 times the load"), "{text}");
}

#[test]
fn the_demos_are_told_as_worked_out() {
    let text = |design: &Design| words(&finished(design).document(&reader(System::Metric)));
    let paper = text(&Demo::PaperLift.design());
    for said in ["gives 1.3 to 2.5 mm to a push of 50 N", "under 4.8 times the load", "150 mm above the deck"]
    {
        assert!(paper.contains(said), "{said}: {paper}");
    }
    let weak = text(&changed(Demo::PaperLift, bare));
    for said in ["the table collapses", "rms of one layer bend sideways", "no cross boards", "Two layers"] {
        assert!(weak.contains(said), "{said}: {weak}");
    }
    let bench = words(&finished(&Demo::PottingBench.design()).document(&reader(System::Inch)));
    assert!(bench.contains("lbf") && bench.contains("Its critical load suffices"), "{bench}");
}

#[test]
fn the_headline_is_one_line() {
    let design = changed(Demo::PaperLift, bare);
    let mut run = SwayRun::new(&design).unwrap();
    run.advance(usize::MAX).unwrap();
    let sway = run.report().unwrap();
    let line = headline(&sway, System::Metric).replace('\u{A0}', " ");
    assert!(
        line.contains("to a push of 50 N and rattles by") && line.contains("collapses sideways"),
        "{line}"
    );
    assert!(sway.findings(&design).iter().any(|finding| finding.grade == Grade::Over));
    assert_eq!(headline(&crate::report::SwayReport::default(), System::Metric), "");
}

#[test]
fn tables_have_their_rows_and_columns() {
    fn tables(blocks: &[Block], found: &mut Vec<[usize; 2]>) {
        for block in blocks {
            match block {
                Block::Table(table) => {
                    assert!(table.rows.iter().all(|row| row.len() == table.head.len()), "{table:?}");
                    found.push([table.rows.len(), table.head.len()]);
                }
                Block::Fold(fold) => tables(&fold.blocks, found),
                Block::Group(_, pieces) => tables(pieces, found),
                _ => {}
            }
        }
    }
    let mut found = Vec::new();
    tables(&finished(&Demo::PaperLift.design()).document(&reader(System::Metric)).blocks, &mut found);
    assert!(found.contains(&[13, 14]), "{found:?}");
    assert!(found.iter().filter(|size| **size == [3, 5]).count() >= 7, "{found:?}");
}

#[test]
fn every_remedy_can_be_taken() {
    for design in designs() {
        let html = finished(&design).document(&reader(System::Metric)).html();
        let links: Vec<&str> =
            html.split("data-take=\"").skip(1).map(|rest| rest.split('"').next().unwrap()).collect();
        assert!(!links.is_empty());
        for text in links {
            let taken = link::decode(text).unwrap();
            assert!(taken != design && reach(&taken).is_ok(), "{text}");
        }
    }
}

#[test]
fn the_file_holds_every_height() {
    let page = finished(&Demo::PaperLift.design());
    let file = page.file(&super::lift::file(&page.report.design), &reader(System::Inch)).unwrap();
    let lines: Vec<&str> = file.lines().collect();
    assert_eq!(lines.len(), 25);
    // Names may hold commas, and then stand in quotes; figures never do.
    let columns = lines[1].split(',').count();
    assert!(columns > 30 && lines.iter().skip(1).all(|line| line.split(',').count() == columns));
    assert!(lines[1].starts_with("520.0000,") && lines[24].starts_with("1160.0000,"));
    assert!(page.file("other.csv", &reader(System::Metric)).is_none());
}

fn live(page: &mut Sway, layout: Layout, deck: f64, push: f64) -> Live {
    let live = page.live(&view(layout), deck, push).unwrap();
    sound(&live.still);
    sound(&live.moving);
    live
}

#[test]
fn the_picture_follows_deck_and_push() {
    for layout in [Layout::Wide, Layout::Narrow] {
        let mut page = page(&Demo::PaperLift.design());
        let first = live(&mut page, layout, 0.84, 50.0);
        assert!(first.push.is_none() && first.pushed.abs() < 1e-12 && !first.settled);
        while page.advance() {}
        let straight = live(&mut page, layout, 0.84, 0.0);
        assert!(straight.edition != first.edition && straight.settled);
        let pushed = live(&mut page, layout, 0.84, 50.0);
        assert_eq!(pushed.edition, straight.edition);
        let (from, to) = (straight.push.unwrap().centre, pushed.push.unwrap().centre);
        assert!((to.x - from.x - 50.0 * pushed.per_newton).abs() < 8.0, "{from:?} {to:?}");
        assert!(to.x > from.x && pushed.moving != straight.moving);
        assert!(pushed.spoken.contains("right") && pushed.spoken.contains("rattles"), "{}", pushed.spoken);
        assert!((live(&mut page, layout, 0.84, 1e9).pushed - pushed.most_push).abs() < 1e-9);
        assert!((live(&mut page, layout, 0.84, -1e9).pushed + pushed.most_push).abs() < 1e-9);
        let raised = live(&mut page, layout, 0.94, 0.0);
        let up = straight.deck.unwrap().centre.y - raised.deck.unwrap().centre.y;
        assert!((up - 0.1 * raised.per_metre).abs() < 1.0, "{up}");
        assert_eq!(raised.carriage.is_some(), layout == Layout::Wide);
        // Beyond the lift and beyond sense it stays within the lift.
        for deck in [f64::NAN, -1e9, 1e9] {
            live(&mut page, layout, deck, f64::NAN);
        }
    }
}

#[test]
fn drives_that_are_not_computed_say_so() {
    for kind in [DriveKind::SidePivots, DriveKind::Strut] {
        let design = changed(Demo::PaperLift, |d| d.drive.kind = kind);
        let Ok(report) = analyse(&design) else { continue };
        let mut page = Sway::new(Rc::new(report));
        assert!(!page.advance() && (page.progress() - 1.0).abs() < 1e-12);
        let text = words(&page.document(&reader(System::Metric)));
        assert!(text.contains("not yet for this drive"), "{text}");
        let live = live(&mut page, Layout::Wide, 0.8, 50.0);
        assert!(live.push.is_none() && live.settled && live.most_push.abs() < 1e-12);
    }
}
