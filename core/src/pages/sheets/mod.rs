//! Parts on sheets: every sheet and bar to scale, the order of cuts, what is left over, and what one sheet less would take.

mod told;

use std::rc::Rc;

use super::document::{Act, Block, Cell, Document, Figure, Fold, Table, Text};
use super::fitted;
use super::sawn::EFFORT;
use super::{Page, Reader};
use crate::design::Cutting;
use crate::drawing::cutting::{Drawn, Panel, bars as drawn_bars, panel};
use crate::drawing::widths;
use crate::parts::Grain;
use crate::quantity::{Length, System, figures};
use crate::report::Report;
use crate::share::address::View;
use crate::share::stem::file_name;
use crate::share::{csv, dxf, flat, svg};
use crate::workshop::hardware::money_text;
use crate::workshop::sheets::{
    Adviser, Hint, Job, Layout, Offcut, Pass, Piece, Search, Sheet, bars, jobs, passes, sequence,
};
use told::{Names, counted, pass_words, size};

/// Layouts tried in a slice, some milliseconds.
const SLICE: u32 = 300;

/// Layouts tried where no sheet can be saved any more, for larger offcuts.
const TIDY: u64 = 20_000;

/// A sheet longer than this beside its width stands upright on a phone.
const SLIM: f64 = 1.2;

/// A short sheet is drawn no narrower than this share of the longest: its lettering needs room.
const LEAST_SHARE: f64 = 0.4;

/// The page.
pub struct Sheets {
    report: Rc<Report>,
    searches: Vec<Search>,
    advisers: Vec<Adviser>,
}

impl Sheets {
    /// Over a report, with a first layout for each thickness.
    pub fn new(report: Rc<Report>) -> Self {
        let searches = jobs(&report.design, &report.parts).iter().map(Search::new).collect();
        Self { report, searches, advisers: Vec::new() }
    }

    fn effort(search: &Search) -> u64 {
        if search.job().pieces.len() < 2 {
            0
        } else if search.is_least() {
            TIDY
        } else {
            EFFORT
        }
    }

    /// Every sheet with its job and its number, from 1.
    fn sheets(&self) -> impl Iterator<Item = (usize, &Job, &Sheet)> {
        let all = self
            .searches
            .iter()
            .flat_map(|search| search.best().sheets.iter().map(move |sheet| (search.job(), sheet)));
        all.zip(1..).map(|((job, sheet), number)| (number, job, sheet))
    }

    fn file_name(&self, what: &str) -> String {
        file_name(&self.report.design.name, what)
    }
}

impl Page for Sheets {
    fn advance(&mut self) -> bool {
        if let Some(search) = self.searches.iter_mut().find(|search| search.tried() < Self::effort(search)) {
            search.advance(SLICE);
            return true;
        }
        if self.advisers.is_empty() {
            let adviser = |search: &Search| {
                let bought =
                    if search.best().left.is_empty() { search.best().bought(search.job()) } else { 0 };
                Adviser::new(search.job(), bought)
            };
            self.advisers = self.searches.iter().map(adviser).collect();
        }
        let Some(adviser) = self.advisers.iter_mut().find(|adviser| !adviser.is_done()) else { return false };
        adviser.advance(SLICE);
        true
    }

    fn progress(&self) -> f64 {
        let share = |search: &Search| {
            let effort = Self::effort(search);
            if effort == 0 { 1.0 } else { (search.tried() as f64 / effort as f64).min(1.0) }
        };
        let count = self.searches.len().max(1) as f64;
        let searched: f64 = self.searches.iter().map(share).sum::<f64>() / count;
        let asked: f64 = self.advisers.iter().map(Adviser::progress).sum::<f64>() / count;
        // Questions follow the searches, where there are any.
        if self.advisers.iter().all(Adviser::is_done) && !self.advisers.is_empty() {
            1.0
        } else {
            f64::midpoint(searched, asked)
        }
    }

    fn document(&self, reader: &Reader) -> Document {
        let system = reader.system;
        let mut blocks: Vec<Block> = Vec::new();
        for search in &self.searches {
            blocks.push(Block::Text(summary(search.job(), search.best(), system)));
            blocks.extend(too_large(search.job(), search.best(), system));
        }
        blocks.extend(self.cost());
        blocks.extend(self.advice(system));
        blocks.push(Block::Acts(vec![
            Act::Save { words: "Save the parts (CSV)".into(), file: self.file_name("parts.csv") },
            Act::Print { words: "Print".into() },
        ]));
        let count = self.sheets().count();
        for (number, job, sheet) in self.sheets() {
            blocks.extend(self.sheet(number, count, job, sheet, system));
        }
        blocks.push(Block::heading("Parts cut from sheet"));
        blocks.push(Block::Table(self.table(system)));
        blocks.extend(self.bars(system));
        Document { title: View::Sheets.title().into(), blocks }
    }

    fn file(&self, name: &str, _reader: &Reader) -> Option<String> {
        if name == self.file_name("parts.csv") {
            return Some(csv::parts(&self.report.parts));
        }
        self.sheets().find_map(|(number, job, sheet)| {
            let flat = || flat::sheet(job, sheet);
            if name == self.file_name(&format!("sheet-{number}.dxf")) {
                Some(dxf::write(&flat()))
            } else if name == self.file_name(&format!("sheet-{number}.svg")) {
                Some(svg::write(&flat()))
            } else {
                None
            }
        })
    }
}

/// How many sheets of a thickness, and what of them becomes no piece.
fn summary(job: &Job, layout: &Layout, system: System) -> Text {
    let bought = layout.bought(job);
    let offcuts = layout.sheets.len() - bought;
    let blank = job.blanks.iter().find(|blank| blank.count.is_none());
    let whole = blank.map(|blank| size([blank.length, blank.width], system)).unwrap_or_default();
    let mut text = Text::default()
        .words(format!(
            "{} of {} sheet, {}, on ",
            counted(job.pieces.len() - layout.left.len(), "piece"),
            figures::marked(job.thickness, system),
            figures::area(job.area(), system)
        ))
        .strong(format!("{} of {whole}", counted(bought, "sheet")));
    if offcuts > 0 {
        text = text.words(format!(" and {}", counted(offcuts, "offcut at hand")));
    }
    text.words(format!(
        ". {} of that becomes no piece, kerf and trim among it.",
        figures::percent(layout.waste(job))
    ))
}

/// Pieces that are larger than any sheet.
fn too_large(job: &Job, layout: &Layout, system: System) -> Option<Block> {
    let mut pieces: Vec<String> = layout
        .left
        .iter()
        .filter_map(|at| job.pieces.get(*at))
        .map(|piece| {
            format!("{} ({}), {}", piece.name, piece.part, size([piece.length, piece.width], system))
        })
        .collect();
    pieces.dedup();
    let names = pieces.join("; ");
    (!pieces.is_empty())
        .then(|| Block::Caution(format!("Larger than the sheet within its trim: {names}.").into()))
}

impl Sheets {
    fn cost(&self) -> Option<Block> {
        let price = self.report.design.shop.sheet_price;
        let bought: usize = self.searches.iter().map(|search| search.best().bought(search.job())).sum();
        let cost = price * i64::try_from(bought).unwrap_or(0);
        (price.value() > 0.0 && bought > 0).then(|| {
            let words =
                format!("{} at {}: {}.", counted(bought, "sheet"), money_text(price), money_text(cost));
            Block::text(words)
        })
    }

    /// What would save a sheet, the least change first.
    fn advice(&self, system: System) -> Vec<Block> {
        let mut blocks = Vec::new();
        for (search, adviser) in self.searches.iter().zip(&self.advisers) {
            let bought = search.best().bought(search.job());
            if bought < 2 || !search.best().left.is_empty() {
                continue;
            }
            let mut hints: Vec<&Hint> = adviser.hints().iter().collect();
            hints.sort_by_key(|hint| by(hint));
            let points: Vec<Vec<Block>> =
                hints.into_iter().map(|hint| vec![Block::Text(told::hint(hint, system))]).collect();
            let fewer = counted(bought - 1, "sheet");
            let head = match (points.is_empty(), adviser.is_done()) {
                (false, _) => format!("{fewer} would do with any one of these changes, each tried out:"),
                (true, true) => {
                    format!(
                        "A somewhat larger sheet, or one part somewhat smaller, would not do with {fewer}: each was tried."
                    )
                }
                (true, false) => format!("Looking for what is missing for {fewer} …"),
            };
            blocks.push(Block::text(head));
            if !points.is_empty() {
                blocks.push(Block::Points(points));
            }
        }
        blocks
    }

    /// A sheet: its figure beside or above its cuts.
    fn sheet(&self, number: usize, count: usize, job: &Job, sheet: &Sheet, system: System) -> Vec<Block> {
        let Some(blank) = job.blanks.get(sheet.blank) else { return Vec::new() };
        let straight = job.cutting == Cutting::Straight;
        let order = if straight { sequence(job, sheet) } else { None }.unwrap_or_default();
        let steps = passes(job, sheet, &order);
        let kind = if blank.count.is_some() { "Offcut at hand" } else { "Sheet" };
        let title = format!(
            "{kind} {number} of {count}: {}, {} thick",
            size([blank.length, blank.width], system),
            figures::marked(job.thickness, system)
        );
        let label = label(&title, job, sheet, &order.offcuts, system);
        let slim = blank.length.to_m() > SLIM * blank.width.to_m();
        // Smaller sheets and offcuts at the scale of the longest.
        let longest =
            self.searches.iter().flat_map(|search| &search.job().blanks).map(|blank| blank.length).max();
        let share = longest.map_or(1.0, |longest| (blank.length.to_m() / longest.to_m()).max(LEAST_SHARE));
        let draw = |width: f64, phone: bool| {
            let width = if phone { width } else { share * width };
            let steps: &[Pass] = if phone { &[] } else { &steps };
            let of =
                Panel { job, sheet, passes: steps, offcuts: &order.offcuts, system, upright: phone && slim };
            figure(panel(&of, width, &widths), label.clone())
        };
        let drawn = if slim { fitted::for_all(draw) } else { fitted::for_paper(draw) };
        let name = |ending: &str| self.file_name(&format!("sheet-{number}.{ending}"));
        vec![
            Block::heading(title),
            Block::Acts(vec![
                Act::Save { words: "Save this sheet (DXF)".into(), file: name("dxf") },
                Act::Save { words: "Save this sheet (SVG)".into(), file: name("svg") },
            ]),
            Block::Group(
                if slim { "sheet-wide" } else { "sheet-square" },
                vec![drawn, Block::Group("pieces", vec![Block::Table(pieces(job, sheet, system))])],
            ),
            cuts(number, job, &steps, straight, system),
        ]
    }

    /// What is cut from sheet, by part.
    fn table(&self, system: System) -> Table {
        let keep = self.report.design.shop.keep_grain;
        let names = Names::of(self.searches.iter().map(Search::job));
        let rows = names.parts.iter().filter_map(|number| {
            let part = self.report.parts.iter().find(|part| part.number == *number)?;
            let count: u32 =
                self.report.parts.iter().filter(|other| other.number == *number).map(|part| part.count).sum();
            let on: Vec<String> =
                self.sheets()
                    .filter(|(_, job, sheet)| {
                        sheet.placed.iter().any(|placed| {
                            job.pieces.get(placed.piece).is_some_and(|piece| piece.part == *number)
                        })
                    })
                    .map(|(sheet, ..)| sheet.to_string())
                    .collect();
            let glued = match part.layers {
                0 | 1 => "one layer".to_owned(),
                layers => format!("{layers} layers, glued"),
            };
            let marked = |length: Length| Cell::number(figures::marked(length, system).number);
            Some(vec![
                Cell::number(number.to_string()),
                Cell::words(part.title()),
                Cell::number(count.to_string()),
                marked(part.size[0]),
                marked(part.size[1]),
                marked(part.size[2]),
                Cell::words(glued),
                Cell::words(if part.grain == Grain::Along && keep {
                    "along the length"
                } else {
                    "either way"
                }),
                Cell::words(if on.is_empty() { "none".into() } else { on.join(", ") }),
            ])
        });
        Table {
            caption: format!("What the pieces become, sizes in {}", unit(system)),
            head: ["no.", "part", "count", "length", "width", "thickness", "made of", "grain", "on sheet"]
                .map(String::from)
                .into(),
            rows: rows.collect(),
            foot: Vec::new(),
        }
    }

    fn bars(&self, system: System) -> Vec<Block> {
        let kerf = self.report.design.shop.kerf;
        let list = bars(&self.report.parts, kerf, system);
        if list.is_empty() {
            return Vec::new();
        }
        let label = list
            .iter()
            .map(|bar| {
                let cuts: Vec<String> = bar
                    .cuts
                    .iter()
                    .map(|(part, length)| format!("part {part} {}", figures::marked(*length, system)))
                    .collect();
                format!(
                    "{} {} long: {}.",
                    bar.form.word(),
                    figures::marked(bar.length, system),
                    cuts.join(", ")
                )
            })
            .collect::<Vec<_>>()
            .join(" ");
        let draw = |width: f64, _| figure(drawn_bars(&list, kerf, system, width, &widths), label.clone());
        let note = format!(
            "Lengths over the counter are common practice, no source; measure yours. A kerf of {} is counted at every cut.",
            figures::marked(kerf, system)
        );
        let heading = Block::heading("Bars, tubes and battens");
        vec![Block::Group("bars", vec![heading, Block::note(note), fitted::for_all(draw)])]
    }
}

const fn by(hint: &Hint) -> Length {
    match hint {
        Hint::LongerSheet(by) | Hint::WiderSheet(by) | Hint::Narrower(_, _, by) | Hint::Shorter(_, _, by) => {
            *by
        }
    }
}

/// The cuts of a sheet as steps, or what a router needs to know.
fn cuts(number: usize, job: &Job, steps: &[Pass], straight: bool, system: System) -> Block {
    if !straight {
        return Block::Group(
            "cuts",
            vec![Block::text(
                "Laid out for a router: cut along every outline, the bit outside it. No straight cut need run through.",
            )],
        );
    }
    let items = steps.iter().map(|pass| vec![Block::text(pass_words(job, pass, system))]).collect();
    let all: usize = steps.iter().map(Pass::count).sum();
    let line = format!(
        "{} in their order, {} of the fence; numbered in italics in the figure where there is room",
        counted(all, "cut"),
        counted(steps.len(), "setting")
    );
    let trim = (job.trim > Length::ZERO).then(|| {
        let words = format!("First {} off all four edges.", figures::marked(job.trim, system));
        Block::text(words)
    });
    Block::Group(
        "cuts",
        vec![Block::Fold(Fold {
            id: format!("cuts-{number}"),
            line: vec![Cell::words(line)],
            blocks: trim.into_iter().chain([Block::Steps(items)]).collect(),
            open: true,
        })],
    )
}

fn figure(drawn: Drawn, label: String) -> Figure {
    Figure {
        marks: drawn.svg(),
        width: drawn.width,
        height: drawn.height,
        label,
        caption: Text::default(),
        true_scale: false,
    }
}

/// The pieces on a sheet, those of a part and size together.
fn grouped<'a>(job: &'a Job, sheet: &Sheet) -> Vec<(&'a Piece, usize)> {
    let mut list: Vec<(&Piece, usize)> = Vec::new();
    for piece in sheet.placed.iter().filter_map(|placed| job.pieces.get(placed.piece)) {
        match list.iter_mut().find(|(known, _)| *known == piece) {
            Some((_, count)) => *count += 1,
            None => list.push((piece, 1)),
        }
    }
    list.sort_by_key(|(piece, _)| piece.part);
    list
}

fn pieces(job: &Job, sheet: &Sheet, system: System) -> Table {
    let rows = grouped(job, sheet).into_iter().map(|(piece, count)| {
        let marked = |length: Length| Cell::number(figures::marked(length, system).number);
        vec![
            Cell::number(piece.part.to_string()),
            Cell::words(piece.name.clone()),
            Cell::number(count.to_string()),
            marked(piece.length),
            marked(piece.width),
        ]
    });
    Table {
        caption: format!("Pieces on this sheet, in {}", unit(system)),
        head: ["no.", "for", "pieces", "length", "width"].map(String::from).into(),
        rows: rows.collect(),
        foot: Vec::new(),
    }
}

const fn unit(system: System) -> &'static str {
    match system {
        System::Metric => "millimetres",
        System::Inch => "inches",
    }
}

/// What one reads off a sheet's figure.
fn label(title: &str, job: &Job, sheet: &Sheet, offcuts: &[Offcut], system: System) -> String {
    let list: Vec<String> = grouped(job, sheet)
        .into_iter()
        .map(|(piece, count)| {
            format!("{count} {} ({}) {}", piece.name, piece.part, size([piece.length, piece.width], system))
        })
        .collect();
    let largest =
        offcuts.first().map(|rest| format!(" Largest offcut {}.", size([rest.length, rest.width], system)));
    format!("{title}. {}.{}", list.join("; "), largest.unwrap_or_default())
}
