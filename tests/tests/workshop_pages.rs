//! Sheets and Drilling as pages: every file that is offered can be had, numbers are numbers, better layouts only get better, and what the page
//! says about exactness is what a design drilled so would do.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops at the first surprise"
)]

use std::collections::BTreeSet;
use std::rc::Rc;

use risewright::design::{Cutting, Demo, Design, Field};
use risewright::mechanics::Solver;
use risewright::pages::{Act, Block, Cell, Document, Page, Reader, Span, Table, Text, page};
use risewright::parts::{Form, parts};
use risewright::quantity::{Length, System};
use risewright::report::analyse;
use risewright::share::address::View;
use risewright::workshop::drilling::{Method, hold, tables};

const SYSTEMS: [System; 2] = [System::Metric, System::Inch];

fn reader(system: System) -> Reader {
    Reader { system, address: "https://example.org/".into(), date: "2026-01-31".into() }
}

fn changed(change: impl FnOnce(&mut Design)) -> Design {
    let mut design = Design::default();
    change(&mut design);
    design
}

fn designs() -> Vec<Design> {
    let mut list: Vec<Design> = Demo::ALL.iter().map(|demo| demo.design()).collect();
    list.push(changed(|design| design.shop.cutting = Cutting::Free));
    list.push(changed(|design| design.shop.keep_grain = false));
    list.push(changed(|design| {
        design.shop.sheet_length = Length::mm(900.0);
        design.shop.sheet_width = Length::mm(700.0);
        design.shop.offcut_length = Length::mm(800.0);
        design.shop.offcut_width = Length::mm(300.0);
    }));
    // A sheet smaller than the deck.
    list.push(changed(|design| {
        design.shop.sheet_length = Length::mm(640.0);
        design.shop.sheet_width = Length::mm(400.0);
    }));
    list.push(changed(|design| design.shop.drilling = Length::mm(2.0)));
    list.push(changed(|design| "<b>&\"quoted\" 木".clone_into(&mut design.name)));
    list
}

fn made(view: View, design: &Design) -> Box<dyn Page> {
    let report = analyse(design).unwrap();
    page(view, &Rc::new(report)).expect("the view is a document")
}

/// Every text and act of a document, in order.
#[derive(Default)]
struct Content {
    words: Vec<String>,
    acts: Vec<Act>,
    figures: usize,
    tables: Vec<Table>,
}

impl Content {
    fn of(document: &Document) -> Self {
        let mut content = Self::default();
        document.blocks.iter().for_each(|block| content.block(block));
        content
    }

    fn text(&mut self, text: &Text) {
        let mut whole = String::new();
        for span in &text.0 {
            match span {
                Span::Words(words) | Span::Strong(words) | Span::Formula(words) | Span::Code(words) => {
                    whole += words;
                }
                Span::Act(act) => self.acts.push(act.clone()),
            }
        }
        self.words.push(whole);
    }

    fn cell(&mut self, cell: &Cell) {
        match cell {
            Cell::Words(text) => self.text(text),
            Cell::Number(words) | Cell::StrongNumber(words) | Cell::Heading(words) => {
                self.words.push(words.clone());
            }
            Cell::Picture(_) => self.figures += 1,
        }
    }

    fn block(&mut self, block: &Block) {
        match block {
            Block::Heading(words) => self.words.push(words.clone()),
            Block::Text(text) | Block::Note(text) | Block::Caution(text) => self.text(text),
            Block::Points(items) | Block::Steps(items) => {
                items.iter().flatten().for_each(|block| self.block(block));
            }
            Block::Table(table) => {
                for row in table.rows.iter().chain(&table.foot) {
                    assert!(row.len() == table.head.len() || row.len() == 1, "{}", table.caption);
                    row.iter().for_each(|cell| self.cell(cell));
                }
                self.tables.push(table.clone());
            }
            Block::Figure(figure) => {
                self.figures += 1;
                assert!(
                    figure.width > 0.0
                        && figure.height > 0.0
                        && figure.width.is_finite()
                        && figure.height.is_finite()
                );
                assert!(!figure.label.is_empty(), "a figure says what one reads off it");
            }
            Block::Fold(fold) => {
                fold.line.iter().for_each(|cell| self.cell(cell));
                fold.blocks.iter().for_each(|block| self.block(block));
            }
            Block::Field(field) => self.words.extend([field.label.clone(), field.hint.clone()]),
            Block::Acts(acts) => self.acts.extend(acts.iter().cloned()),
            Block::Group(_, blocks) => blocks.iter().for_each(|block| self.block(block)),
            Block::Shapes(_) | Block::NewPage => {}
        }
    }
}

/// Tags that are opened are closed, in their order; nothing is a number that is none.
fn well_formed(html: &str) {
    for bad in ["NaN", ">inf", "-inf", "style="] {
        assert!(
            !html.contains(bad),
            "{bad} in {}",
            &html[html.find(bad).unwrap().saturating_sub(80)..][..160]
        );
    }
    let mut open: Vec<&str> = Vec::new();
    for tag in html.split('<').skip(1) {
        let inside = tag.split('>').next().unwrap();
        let name = inside.trim_start_matches('/').split([' ', '/']).next().unwrap();
        if inside.starts_with('/') {
            assert_eq!(open.pop(), Some(name), "closed in order");
        } else if !inside.ends_with('/') && !["input", "hr"].contains(&name) {
            open.push(name);
        }
    }
    assert_eq!(open, Vec::<&str>::new());
}

#[test]
fn documents_are_whole_in_both_systems() {
    for design in designs() {
        for view in [View::Sheets, View::Drilling] {
            let mut page = made(view, &design);
            for _ in 0..3 {
                page.advance();
            }
            for system in SYSTEMS {
                let document = page.document(&reader(system));
                let content = Content::of(&document);
                assert!(content.figures > 0 && content.words.iter().all(|words| !words.contains("NaN")));
                well_formed(&document.html());
            }
        }
    }
}

/// Names are plain, differ from each other, and stand for a file.
#[test]
fn every_file_that_is_offered_can_be_had() {
    for design in designs() {
        for view in [View::Sheets, View::Drilling] {
            let page = made(view, &design);
            let reader = reader(System::Metric);
            let names: Vec<String> = Content::of(&page.document(&reader))
                .acts
                .into_iter()
                .filter_map(|act| match act {
                    Act::Save { file, .. } => Some(file),
                    _ => None,
                })
                .collect();
            assert_eq!(names.iter().collect::<BTreeSet<_>>().len(), names.len(), "{names:?}");
            for name in &names {
                let plain =
                    |sign: char| sign.is_ascii_lowercase() || sign.is_ascii_digit() || "-.".contains(sign);
                assert!(name.chars().all(plain) && name.len() < 100, "{name}");
                let file = page.file(name, &reader).unwrap_or_else(|| panic!("{name} is offered"));
                let start = match name.rsplit('.').next().unwrap() {
                    "dxf" => "999\nmillimetres",
                    "svg" => "<svg xmlns",
                    "csv" => "number,part,",
                    other => panic!("{other}"),
                };
                assert!(file.trim_start().starts_with(start), "{name}");
            }
            assert_eq!(page.file("passwd", &reader), None);
        }
    }
}

/// Each thickness' number of sheets stands in the summary; it never rises while the search goes on, and the work comes to an end.
#[test]
fn layouts_only_get_better_and_the_work_ends() {
    for design in designs() {
        let mut page = made(View::Sheets, &design);
        let sheets = |page: &dyn Page| {
            let html = page.document(&reader(System::Metric)).html();
            html.matches("<h3>Sheet ").count() + html.matches("<h3>Offcut at hand ").count()
        };
        let (mut last, mut progress) = (sheets(page.as_ref()), page.progress());
        let mut slices = 0_u32;
        while page.advance() {
            slices += 1;
            if slices.is_multiple_of(50) {
                let (now, further) = (sheets(page.as_ref()), page.progress());
                assert!(now <= last, "{now} sheets after {last}");
                assert!((0.0..=1.0).contains(&further) && further >= progress - 0.5, "{further}");
                (last, progress) = (now, further);
            }
            assert!(slices < 20_000, "the work ends");
        }
        assert!((page.progress() - 1.0).abs() < 1e-12);
        assert!(!page.advance());
    }
}

/// A sheet a little too short for the paper lift: the page says by how much, or which part would have to give way, and it is so.
#[test]
fn what_is_missing_is_said_and_true() {
    let tight = |more: f64| {
        changed(|design| {
            design.shop.sheet_length = Length::mm(1410.0 + more);
            design.shop.sheet_width = Length::mm(1525.0);
        })
    };
    let run = |design: &Design| {
        let mut page = made(View::Sheets, design);
        while page.advance() {}
        Content::of(&page.document(&reader(System::Metric)))
    };
    let bought = |content: &Content| content.words.iter().filter(|words| words.starts_with("Sheet ")).count();
    let content = run(&tight(0.0));
    assert_eq!(bought(&content), 2);
    let longer = content.words.iter().find_map(|words| {
        words.strip_prefix("The sheet ")?.strip_suffix("\u{A0}mm longer")?.parse::<f64>().ok()
    });
    let longer = longer.unwrap_or_else(|| panic!("{:#?}", &content.words[..12]));
    assert!(longer <= 128.0);
    assert_eq!(bought(&run(&tight(longer))), 1, "{longer} mm more are enough");
}

/// Every sheet part of a design stands in the table with all of its pieces.
#[test]
fn the_parts_are_all_listed() {
    for design in designs() {
        let list = parts(&design);
        let page = made(View::Sheets, &design);
        let content = Content::of(&page.document(&reader(System::Metric)));
        let table = content.tables.iter().find(|table| table.caption.starts_with("What the pieces")).unwrap();
        let count = |cell: &Cell| match cell {
            Cell::Number(words) => words.parse::<u32>().unwrap(),
            _ => panic!("a number"),
        };
        let told: u32 = table.rows.iter().map(|row| count(&row[2])).sum();
        let wanted: u32 = list.iter().filter(|part| part.form == Form::Sheet).map(|part| part.count).sum();
        assert_eq!(told, wanted);
    }
}

/// The tolerance of the pivots is the error that is held, or the smaller one that keeps the deck as level as is accepted.
#[test]
fn the_tolerance_keeps_the_deck_level() {
    for demo in Demo::ALL {
        for held in [0.05, 0.3, 1.0, 3.0] {
            let mut design = demo.design();
            design.shop.drilling = Length::mm(held);
            let report = analyse(&design).unwrap();
            let solver = Solver::new(report.mechanism()).unwrap();
            let hold = hold(&design, &solver).unwrap();
            assert!(hold.tolerance <= design.shop.drilling);
            let pairs = hold.ways.iter().find(|(method, _)| *method == Method::Pairs).unwrap().1;
            let level = pairs.tilt.rss * hold.tolerance.to_m() * design.frames.deck_length.to_m();
            assert!(level <= design.shop.level.to_m() + 1e-9, "{level}");
            assert_eq!(hold.is_enough(&design), hold.tolerance == design.shop.drilling);
            // A twentieth of a millimetre more would not do, where less than what is held is asked for.
            if !hold.is_enough(&design) {
                let more = pairs.tilt.rss
                    * (hold.tolerance + Length::mm(0.05)).to_m()
                    * design.frames.deck_length.to_m();
                assert!(more > design.shop.level.to_m());
            }
        }
    }
}

/// Every hole of every drilled part stands in a table of the page.
#[test]
fn every_hole_is_in_a_table() {
    for design in designs() {
        let holes: usize =
            tables(&parts(&design), Length::mm(0.3)).iter().map(|table| table.rows.len()).sum();
        let content = Content::of(&made(View::Drilling, &design).document(&reader(System::Inch)));
        let told: usize = content
            .tables
            .iter()
            .filter(|table| table.caption.starts_with("Holes of "))
            .map(|table| table.rows.len())
            .sum();
        assert_eq!(told, holes);
    }
}

/// Anything within the ranges of the inputs of the shop gives pages, whatever it is.
#[test]
fn the_ends_of_every_range_of_the_shop_are_drawn() {
    let fields: Vec<&Field> =
        Design::fields().filter(|field| field.group == risewright::design::Group::Shop).collect();
    for field in fields {
        for value in [field.range.0, field.range.1] {
            let mut design = Design::default();
            field.set(&mut design, value);
            for view in [View::Sheets, View::Drilling] {
                well_formed(&made(view, &design).document(&reader(System::Inch)).html());
            }
        }
    }
}

/// Whoever comes straight to a page to build from sees what passes a limit, whether a strength check found it or not.
#[test]
fn what_passes_a_limit_heads_every_page_to_build_from() {
    // Longer arms roll farther: the wheels leave the rails of the demo, and no strength check has a word on it.
    let design = changed(|design| design.lift.arm_length = Length::mm(545.0));
    let report = analyse(&design).unwrap();
    let over: Vec<String> = report.over().map(|finding| finding.phrase.text(System::Metric)).collect();
    assert!(!over.is_empty());
    let views = [View::Strength, View::Sheets, View::Drilling, View::Hardware, View::Steps, View::Helps];
    for view in views {
        let said = |design: &Design| made(view, design).document(&reader(System::Metric)).html();
        for sentence in &over {
            assert!(said(&design).contains(sentence), "{view:?}: {sentence}");
            assert!(!said(&Design::default()).contains(sentence), "{view:?}");
        }
    }
}

/// A hole that has a line in the table has its letter in the drawing, beside the table and on a phone.
#[test]
fn every_hole_of_the_demos_has_its_letter_in_the_drawing() {
    let mut letters = 0;
    for (demo, system) in Demo::ALL.into_iter().flat_map(|demo| SYSTEMS.map(|system| (demo, system))) {
        let html = made(View::Drilling, &demo.design()).document(&reader(system)).html();
        for section in html.split("class=\"drilled\"").skip(1) {
            let table = section.split("<table").nth(1).unwrap();
            let rows = table.split("</table>").next().unwrap().split("<tr><td>").skip(1);
            let holes: Vec<&str> = rows.filter_map(|row| row.split("</td>").next()).collect();
            for drawing in section.split("<svg").skip(1).take(2) {
                let drawing = drawing.split("</svg>").next().unwrap();
                for letter in holes.iter().filter(|hole| hole.len() == 1) {
                    letters += 1;
                    assert!(
                        drawing.contains(&format!(">{letter}</text>")),
                        "{demo:?} {system:?}: no {letter}"
                    );
                }
            }
        }
    }
    assert!(letters > 200, "only {letters} letters looked for");
}
