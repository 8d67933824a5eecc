//! The documents for bench and wall: what stands in them, and the code of the link read by another library.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

use risewright::design::{Demo, Design, DriveKind};
use risewright::pages::{CAUTIONS, Reader, page};
use risewright::parts::{Form, parts};
use risewright::quantity::{Count, Length, System};
use risewright::report::{Grade, analyse};
use risewright::share::address::{View, write};
use risewright::share::code::Code;
use risewright::share::stem::stem;
use std::rc::Rc;

/// What `rqrr`, a reader of ISO/IEC 18004 codes that knows nothing of how this one was written, finds in a code of so many dots a module.
fn scanned(code: &Code, dots: usize) -> Result<String, String> {
    let side = usize::try_from(code.side()).unwrap();
    let dark = |x: usize, y: usize| {
        let [column, row] = [x, y].map(|dot| i32::try_from(dot / dots).unwrap());
        code.is_dark(column, row)
    };
    let mut image = rqrr::PreparedImage::prepare_from_greyscale(side * dots, side * dots, |x, y| {
        if dark(x, y) { 0 } else { 255 }
    });
    let grids = image.detect_grids();
    let grid = grids.first().ok_or("no code was found")?;
    grid.decode().map(|(_, text)| text).map_err(|fault| fault.to_string())
}

#[test]
fn codes_are_read_by_another_library() {
    let mut strange = Demo::PaperLift.design();
    strange.rename("Größe “двести” <90 %> & more, as long as a name can be made");
    strange.lift.lowest = Length::mm(523.0);
    let mut texts: Vec<String> = [Demo::PaperLift.design(), Demo::PottingBench.design(), strange]
        .iter()
        .map(|design| format!("https://workshop.example/table/#{}", write(View::Elevation, design)))
        .collect();
    // As long as a link can become, and a length for which the strongest correction has no room.
    texts.extend(
        [400, 700, 1900]
            .map(|length| "https://workshop.example/#1/elevation/a".chars().cycle().take(length).collect()),
    );
    for text in texts {
        let code = Code::of(&text).unwrap();
        assert_eq!(scanned(&code, 4).as_ref(), Ok(&text), "{} modules", code.side());
    }
    assert!(Code::of(&"a".repeat(3000)).is_none(), "longer than any code");
}

/// A code survives as much damage as its level of correction promises: short links are written with the strongest, 30 % of the words
/// (ISO/IEC 18004); a blot over a tenth of its side is less.
#[test]
fn a_blotted_code_is_still_read() {
    let text = "https://workshop.example/#1/elevation/a";
    let code = Code::of(text).unwrap();
    let side = usize::try_from(code.side()).unwrap();
    let (dots, blot) = (4, side / 2..side / 2 + side / 10 + 1);
    let mut image = rqrr::PreparedImage::prepare_from_greyscale(side * dots, side * dots, |x, y| {
        let [column, row] = [x / dots, y / dots];
        let blotted = blot.contains(&column) && blot.contains(&row);
        let dark = code.is_dark(i32::try_from(column).unwrap(), i32::try_from(row).unwrap());
        if dark || blotted { 0 } else { 255 }
    });
    assert_eq!(image.detect_grids()[0].decode().unwrap().1, text);
}

/// The outline that is printed has the same dark modules as the code.
#[test]
fn the_outline_is_the_code() {
    let code = Code::of("https://workshop.example/#1/elevation/b").unwrap();
    let mut dark = 0_usize;
    for run in code.notation().split('M').skip(1) {
        let (place, rest) = run.split_once('h').unwrap();
        let (column, row) = place.split_once(' ').unwrap();
        let length: i32 = rest.split_once('v').unwrap().0.parse().unwrap();
        let (column, row): (i32, i32) = (column.parse().unwrap(), row.parse().unwrap());
        for at in column..column + length {
            assert!(code.is_dark(at, row));
            dark += 1;
        }
    }
    let side = code.side();
    let all = (0..side).flat_map(|row| (0..side).map(move |column| (column, row)));
    assert_eq!(dark, all.filter(|(column, row)| code.is_dark(*column, *row)).count());
}

fn reader(system: System) -> Reader {
    Reader { system, address: "https://workshop.example/".into(), date: "2026-01-31".into() }
}

/// Both demos and tables with other drives, stages, layers and pivots.
fn designs() -> Vec<Design> {
    let change = |change: fn(&mut Design)| {
        let mut design = Demo::PottingBench.design();
        change(&mut design);
        design
    };
    vec![
        Demo::PaperLift.design(),
        Demo::PottingBench.design(),
        change(|design| design.running.forks = true),
        change(|design| design.arms.layers = Count::of(1)),
        change(|design| design.running.bush = design.running.pin),
        change(|design| {
            design.arms.boards_a = false;
            design.arms.boards_b = false;
            design.arms.straps_a = false;
            design.arms.straps_b = false;
        }),
        change(|design| design.drive.kind = DriveKind::Strut),
        change(|design| design.rename("<b>\"A & B\"</b>")),
    ]
}

/// Tags that are opened and not closed, in their order; a tag that closes another is one too.
fn unclosed(html: &str) -> Vec<String> {
    const ALONE: [&str; 3] = ["hr", "input", "br"];
    let mut open: Vec<String> = Vec::new();
    for tag in html.split('<').skip(1).map(|rest| rest.split_once('>').expect("a tag ends").0) {
        let name = tag.trim_start_matches('/').split([' ', '/']).next().unwrap_or_default().to_owned();
        if tag.ends_with('/') || ALONE.contains(&name.as_str()) {
            continue;
        }
        if tag.starts_with('/') {
            if open.last() == Some(&name) {
                open.pop();
            } else {
                open.push(tag.to_owned());
            }
        } else {
            open.push(name);
        }
    }
    open
}

#[test]
fn documents_of_any_table_are_sound() {
    let mut made = 0;
    for design in designs() {
        let Ok(report) = analyse(&design) else { continue };
        let report = Rc::new(report);
        for view in [View::Hardware, View::Steps, View::Packet] {
            let mut page = page(view, &report).unwrap();
            for _ in 0..20 {
                page.advance();
            }
            for system in [System::Metric, System::Inch] {
                let html = page.document(&reader(system)).html();
                for trouble in ["NaN", "inf ", "style=", "<script", "<b>"] {
                    assert!(!html.contains(trouble), "{view:?}: {trouble}");
                }
                assert_eq!(unclosed(&html), Vec::<String>::new(), "{view:?}");
                made += 1;
            }
        }
    }
    assert!(made >= 6 * 5, "{made} documents: most of these tables can stand");
}

/// Every number that is not cut from sheet stands in one line of the list, with all of its pieces.
#[test]
fn hardware_lists_what_the_parts_are() {
    for demo in Demo::ALL {
        let design = demo.design();
        let report = Rc::new(analyse(&design).unwrap());
        let page = page(View::Hardware, &report).unwrap();
        let html = page.document(&reader(System::Metric)).html();
        let list = parts(&design);
        for part in list.iter().filter(|part| part.form != Form::Sheet) {
            let made: u32 =
                list.iter().filter(|other| other.number == part.number).map(|other| other.count).sum();
            let line = format!(
                "<td class=\"n\">{}</td><td class=\"n\">{made}</td><td>{}</td>",
                part.number, part.name
            );
            assert_eq!(html.matches(&line).count(), 1, "{line}");
        }
        assert!(html.contains("no price"), "what has no price says so");
        let file =
            page.file(&format!("{}-hardware.csv", stem(&design.name)), &reader(System::Metric)).unwrap();
        assert!(file.lines().count() > 40 && page.file("other.csv", &reader(System::Metric)).is_none());
    }
}

#[test]
fn the_packet_holds_everything() {
    for (demo, paper) in Demo::ALL.into_iter().zip(["packet a4", "packet letter"]) {
        let report = Rc::new(analyse(&demo.design()).unwrap());
        let system = if demo == Demo::PaperLift { System::Metric } else { System::Inch };
        let html = page(View::Packet, &report).unwrap().document(&reader(system)).html();
        assert!(html.contains(&format!("<div class=\"{paper}\">")));
        for view in [View::Sheets, View::Drilling, View::Hardware, View::Steps, View::Sources] {
            let title = format!("<h3>{}</h3>", view.title());
            assert_eq!(html.matches(&title).count(), 1, "{title}");
            let running = format!("{} · {} · 2026-01-31", demo.design().name, view.title());
            assert!(html.contains(&running), "{running}");
        }
        for caution in CAUTIONS {
            assert!(html.contains(caution), "{caution}");
        }
        for check in &report.checks {
            assert!(html.contains(&format!("<td>{}</td>", check.title)), "{}", check.title);
        }
        let link = format!("https://workshop.example/#{}", write(View::Elevation, &demo.design()));
        assert!(html.contains(&format!("<code>{link}</code>")));
        assert!(html.contains(&Code::of(&link).unwrap().notation()), "and the link as a code");
        assert!(!html.contains("data-save") && !html.contains("data-take"), "nothing to press on paper");
    }
}

/// The first page names what is wrong sideways too, and what would help, as soon as the slow work is done.
#[test]
fn the_first_page_of_the_packet_has_all_findings_with_what_would_help() {
    let report = Rc::new(analyse(&Demo::PaperLift.design()).unwrap());
    let mut packet = page(View::Packet, &report).unwrap();
    while packet.advance() {}
    assert!((packet.progress() - 1.0).abs() < 1e-12);
    let html = packet.document(&reader(System::Metric)).html();
    let findings = html.split("<h3>Findings</h3>").nth(1).unwrap().split("</ul>").next().unwrap();
    assert!(findings.contains("Sideways:"), "{findings}");
    let watched: Vec<_> = report.findings.iter().filter(|finding| finding.grade == Grade::Watch).collect();
    assert!(!watched.is_empty());
    for finding in watched {
        let remedy = report.remedy(finding).unwrap().text(System::Metric);
        assert!(
            findings.contains(&format!("{} {remedy}", finding.phrase.text(System::Metric))),
            "{findings}"
        );
    }
}
