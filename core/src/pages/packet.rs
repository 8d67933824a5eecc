//! Everything on paper, for the wall of the shop.
use std::rc::Rc;

use super::document::{Act, Block, Cell, Document, Figure, Span, Table, Text};
use super::found::told;
use super::scanned::scanned;
use super::sway::Summary;
use super::{CAUTIONS, Page, Reader, plain};
use crate::checks::{Check, MOST, Verdict, Weight};
use crate::drawing::poster::{KeyFigures, Poster, Ruler, ratio_words, summary};
use crate::drawing::widths;
use crate::quantity::{Amount, Phrase, System, figures};
use crate::report::{Grade, Report};
use crate::share::address::{self, View};

/// The views whose documents go in, in their order.
const VIEWS: [View; 4] = [View::Sheets, View::Drilling, View::Hardware, View::Steps];

/// A paper with what its margins leave, as the style sheet has them.
struct Paper {
    class: &'static str,
    name: &'static str,
    /// Room for the elevations on the first page, beside the key figures, mm: of what the margins leave, which the style sheet has.
    drawings: [f64; 2],
}

const A4: Paper = Paper { class: "packet a4", name: "A4", drawings: [112.0, 150.0] };
const LETTER: Paper = Paper { class: "packet letter", name: "Letter", drawings: [118.0, 138.0] };

/// Height of the heading over an elevation, mm.
const HEADING: f64 = 7.0;

/// The page.
pub struct Packet {
    report: Rc<Report>,
    pages: Vec<Box<dyn Page>>,
    sway: Summary,
    /// What would help against the report's findings, worst first, as far as it has been tried.
    tried: Vec<Option<Phrase>>,
}

impl Packet {
    /// Over a report; the work behind its pages goes on one after the other.
    pub fn new(report: Rc<Report>) -> Self {
        let pages = VIEWS.into_iter().filter_map(|view| plain(view, &report)).collect();
        Self { pages, sway: Summary::new(Rc::clone(&report)), tried: Vec::new(), report }
    }

    /// Tries what would help against the next finding; whether there is one more.
    fn try_next(&mut self) -> bool {
        let next = self.report.faults().nth(self.tried.len()).map(|finding| self.report.remedy(finding));
        self.tried.extend(next);
        self.tried.len() < self.report.faults().count()
    }

    /// What passes a limit or comes near one, with what would help; every check stands in its table.
    fn findings(&self, system: System) -> Vec<Block> {
        let bad = self.sway.findings().iter().filter(|finding| finding.grade != Grade::Fine);
        let items: Vec<Vec<Block>> = bad
            .map(|finding| {
                let tried = self.report.faults().zip(&self.tried).find(|(known, _)| *known == finding);
                let remedy = tried.and_then(|(_, remedy)| remedy.as_ref()).or(finding.remedy.as_ref());
                vec![Block::Text(told(finding, remedy, system))]
            })
            .collect();
        let said = if items.is_empty() {
            Block::text("Nothing passes a limit or comes near one.")
        } else {
            Block::Points(items)
        };
        vec![Block::heading("Findings"), said]
    }
}

impl Page for Packet {
    fn advance(&mut self) -> bool {
        self.pages.iter_mut().any(|page| page.advance()) || self.sway.advance() || self.try_next()
    }

    fn progress(&self) -> f64 {
        let sum: f64 = self.pages.iter().map(|page| page.progress()).sum();
        (sum + self.sway.progress()) / (self.pages.len() + 1) as f64
    }

    fn document(&self, reader: &Reader) -> Document {
        let paper = if reader.system == System::Metric { &A4 } else { &LETTER };
        let mut blocks = self.cover(paper, reader);
        let sway: &dyn Page = &self.sway;
        for page in self.pages.iter().map(AsRef::as_ref).chain([sway]) {
            let document = page.document(reader);
            blocks.extend(self.section(reader, document.title, without_acts(document.blocks)));
        }
        blocks.extend(self.section(reader, "Checks".into(), checks(&self.report, reader.system)));
        if let Some(sources) = plain(View::Sources, &self.report) {
            let document = sources.document(reader);
            blocks.extend(self.section(reader, document.title, without_acts(document.blocks)));
        }
        let words = format!(
            "All of it on {} paper: print at 100 %. Switch the units to change the paper.",
            paper.name
        );
        Document {
            title: View::Packet.title().into(),
            blocks: vec![
                Block::Group(
                    "before-packet",
                    vec![
                        Block::text(words),
                        Block::Acts(vec![Act::Print { words: "Print the packet".into() }]),
                    ],
                ),
                Block::Group(paper.class, blocks),
            ],
        }
    }

    fn file(&self, name: &str, reader: &Reader) -> Option<String> {
        self.pages.iter().find_map(|page| page.file(name, reader))
    }
}

/// What is read, without what is pressed; boxes to tick stay.
fn without_acts(blocks: Vec<Block>) -> Vec<Block> {
    let all = |list: Vec<Vec<Block>>| list.into_iter().map(without_acts).collect();
    let text = |text: Text| {
        Text(
            text.0
                .into_iter()
                .filter(|span| !matches!(span, Span::Act(act) if !matches!(act, Act::Tick { .. })))
                .collect(),
        )
    };
    let kept = |block| match block {
        Block::Acts(_) | Block::Group("templates" | "on-screen", _) => None,
        Block::Text(words) => Some(Block::Text(text(words))),
        Block::Note(words) => Some(Block::Note(text(words))),
        Block::Caution(words) => Some(Block::Caution(text(words))),
        Block::Points(items) => Some(Block::Points(all(items))),
        Block::Steps(items) => Some(Block::Steps(all(items))),
        Block::Group(class, pieces) => Some(Block::Group(class, without_acts(pieces))),
        Block::Fold(mut fold) => {
            fold.blocks = without_acts(fold.blocks);
            fold.open = true;
            Some(Block::Fold(fold))
        }
        other => Some(other),
    };
    blocks.into_iter().filter_map(kept).collect()
}

impl Packet {
    /// A part of the packet on pages of its own, each under a line with the design's name, the part's and the date.
    fn section(&self, reader: &Reader, title: String, blocks: Vec<Block>) -> [Block; 2] {
        let running = format!("{} · {title} · {}", self.report.design.name, reader.date);
        let heading = Block::Group("section-title", vec![Block::Heading(title)]);
        let body = core::iter::once(heading).chain(blocks).collect();
        let pieces =
            vec![Block::Group("running", vec![Block::text(running)]), Block::Group("section-body", body)];
        [Block::NewPage, Block::Group("section", pieces)]
    }

    fn cover(&self, paper: &Paper, reader: &Reader) -> Vec<Block> {
        let (report, system) = (&self.report, reader.system);
        let keys = KeyFigures::of(report, system);
        let rows = keys.rows.into_iter().map(|row| {
            vec![
                Cell::words(row.name),
                Cell::StrongNumber(row.lowest),
                Cell::StrongNumber(row.highest),
                Cell::words(row.unit),
            ]
        });
        let table = Table {
            caption: format!("Key figures {}", keys.load),
            head: ["Figure", "lowest", "highest", "unit"].map(String::from).into(),
            rows: rows.collect(),
            foot: Vec::new(),
        };
        let cautions = CAUTIONS.into_iter().map(|caution| vec![Block::text(caution)]).collect();
        vec![
            Block::Group(
                "cover-title",
                vec![
                    Block::heading(report.design.name.clone()),
                    Block::text(summary(report, system)),
                    Block::text(format!(
                        "Deck {} to {}. Packet of {}.",
                        Amount::Size(report.lowest()).text(system),
                        Amount::Size(report.highest()).text(system),
                        reader.date
                    )),
                ],
            ),
            Block::Group(
                "cover",
                vec![
                    Block::Group("cover-drawings", self.elevations(paper, system)),
                    Block::Group(
                        "cover-figures",
                        vec![
                            Block::Table(table),
                            Block::note(keys.note),
                            Block::Group("cover-link", link(report, reader)),
                        ],
                    ),
                ],
            ),
            Block::Group("cover-cautions", vec![Block::heading("Cautions"), Block::Points(cautions)]),
            Block::Group("cover-findings", self.findings(system)),
        ]
    }

    /// Lowest and highest deck at a standard scale, with the bar that shows whether the printer keeps to it.
    fn elevations(&self, paper: &Paper, system: System) -> Vec<Block> {
        let poster = Poster::new(&self.report, system, paper.drawings, HEADING, &widths);
        let mut blocks = Vec::new();
        for (words, panel) in poster.panels(system) {
            blocks.push(Block::heading(words.clone()));
            blocks.push(Block::Figure(Figure {
                // What lies above is empty: the drawing is moved up by it.
                marks: format!("<g transform=\"translate(0 {})\">{}</g>", -panel.top, panel.marks()),
                width: panel.picture.width,
                height: panel.height(),
                label: format!("Side elevation. {words}."),
                caption: Text::default(),
                true_scale: false,
            }));
        }
        let ruler = Ruler::new(system);
        blocks.push(Block::Figure(Figure {
            marks: ruler.marks,
            width: Ruler::SIZE.0,
            height: Ruler::SIZE.1,
            label: String::new(),
            caption: format!("Drawn {}. {}", ratio_words(poster.ratio, system), ruler.words).into(),
            true_scale: false,
        }));
        blocks
    }
}

/// The link to the design, as a code and as text.
fn link(report: &Report, reader: &Reader) -> Vec<Block> {
    let link = design_link(report, reader);
    let mut blocks: Vec<Block> = scanned(&link).map(Block::Figure).into_iter().collect();
    blocks.push(Block::Text(Text::default().code(link)));
    blocks
}

/// The address at which the design opens.
fn design_link(report: &Report, reader: &Reader) -> String {
    format!("{}#{}", reader.address, address::write(View::Elevation, &report.design))
}

const fn word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Over => "over",
        Verdict::Watch => "watch",
        Verdict::Note => "note",
        Verdict::Fine => "fine",
    }
}

/// Every check in a line, the worst first, those that decide before those worth knowing.
fn checks(report: &Report, system: System) -> Vec<Block> {
    let mut list: Vec<&Check> = report.checks.iter().collect();
    list.sort_by(|one, other| {
        let advice = |check: &Check| check.weight == Weight::Advice;
        advice(one).cmp(&advice(other)).then(other.ratio.total_cmp(&one.ratio))
    });
    let rows = list.into_iter().map(|check| {
        vec![
            Cell::words(word(check.verdict)),
            Cell::words(check.title),
            Cell::number(check.demand.text(system)),
            Cell::number(check.capacity.text(system)),
            Cell::StrongNumber(if check.ratio < MOST {
                figures::ratio(check.ratio).number
            } else {
                "no room".into()
            }),
            Cell::number(Amount::Size(check.height).text(system)),
        ]
    });
    vec![
        Block::text(
            "Each at the deck height where it is worst. Formulas and numbers stand under Strength on the page the link opens.",
        ),
        Block::Group(
            "all-checks",
            vec![Block::Table(Table {
                caption: "Checks".into(),
                head: ["Says", "Check", "Asked", "Can give", "Ratio", "At deck"].map(String::from).into(),
                rows: rows.collect(),
                foot: Vec::new(),
            })],
        ),
    ]
}
