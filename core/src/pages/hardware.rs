//! What to buy, what to cut to length, what it weighs and what it costs.
use std::rc::Rc;

use super::document::{Act, Block, Cell, Document, Figure, Table, Text};
use super::sawn::Sawn;
use super::{Page, Reader};
use crate::drawing::bought::{SCALE, outline};
use crate::parts::Form;
use crate::quantity::{Amount, Length, Mass, Money, System, figures};
use crate::report::Report;
use crate::share::address::View;
use crate::share::csv;
use crate::share::stem::file_name;
use crate::workshop::hardware::{Bill, Item, Price, Shelf, Weights, bill, money_text};
use crate::workshop::sheets::bars;

/// Names of the files.
const BILL: &str = "hardware.csv";
const PARTS: &str = "parts.csv";

/// The page.
pub struct Hardware {
    report: Rc<Report>,
    sawn: Sawn,
}

impl Hardware {
    /// Over a report; the sheets are counted as work goes on.
    pub fn new(report: Rc<Report>) -> Self {
        let sawn = Sawn::new(&report);
        Self { report, sawn }
    }

    fn file_name(&self, what: &str) -> String {
        file_name(&self.report.design.name, what)
    }

    fn bill(&self, system: System) -> Bill {
        let Report { design, parts, .. } = &*self.report;
        bill(design, parts, &self.sawn.bought(), &bars(parts, design.shop.kerf, system))
    }
}

impl Page for Hardware {
    fn advance(&mut self) -> bool {
        self.sawn.advance()
    }

    fn progress(&self) -> f64 {
        self.sawn.progress()
    }

    fn document(&self, reader: &Reader) -> Document {
        let bill = self.bill(reader.system);
        let weights = Weights::of(&self.report.parts);
        let mut blocks = vec![
            Block::text(weight_words(&weights, reader.system)),
            Block::text(price_words(&bill)),
            Block::Acts(vec![
                Act::Save { words: "Save this list (CSV)".into(), file: self.file_name(BILL) },
                Act::Save { words: "Save all parts (CSV)".into(), file: self.file_name(PARTS) },
                Act::Print { words: "Print".into() },
            ]),
        ];
        blocks.extend(self.report.ends_left().map(|left| Block::Caution(left.text(reader.system).into())));
        let left = self.sawn.left();
        if left > 0 {
            blocks.push(Block::Caution(
                format!("{left} pieces are larger than any sheet: they stand in no number of sheets below. See Sheets.").into(),
            ));
        }
        blocks.push(Block::Group("bill", vec![Block::Table(self.list(&bill, &weights, reader.system))]));
        blocks.push(Block::note(format!(
            "Outlines are drawn 1 : {SCALE}, long pieces broken. Numbers are those of every other list and drawing. Sizes are in {}, those of bolts and screws in the unit that stands behind them or in their thread’s. What has no number is in no sum of weights.",
            if reader.system == System::Metric { "millimetres" } else { "inches" }
        )));
        blocks.push(Block::Group(
            "lengths",
            vec![
                Block::heading("Cut to length"),
                Block::Table(lengths(&self.report, reader.system)),
                Block::note(
                    "Whole bars as sold over the counter, the longest pieces cut first, the sheet saw’s kerf between two cuts.",
                ),
            ],
        ));
        Document { title: View::Hardware.title().into(), blocks }
    }

    fn file(&self, name: &str, reader: &Reader) -> Option<String> {
        if name == self.file_name(BILL) {
            Some(csv::hardware(&self.bill(reader.system), reader.system))
        } else if name == self.file_name(PARTS) {
            Some(csv::parts(&self.report.parts))
        } else {
            None
        }
    }
}

fn mass(mass: Mass, system: System) -> String {
    Amount::Mass(mass.to_kg()).text(system)
}

fn weight_words(weights: &Weights, system: System) -> Text {
    Text::default().words("The table weighs ").strong(mass(weights.table(), system)).words(format!(
        ": {} of sheet and {} of hardware, without glue. Props and drill guide, {}, stand beside it.",
        mass(weights.wood, system),
        mass(weights.hardware, system),
        mass(weights.aside, system)
    ))
}

fn price_words(bill: &Bill) -> Text {
    let missing = match bill.unpriced {
        0 => return Text::default().words("It costs ").strong(money_text(bill.cost)).words(" in all."),
        1 => "one row below has no price".to_owned(),
        several => format!("{several} rows below have no price"),
    };
    let enter = "Prices are inputs, under Sheet and shop.";
    if bill.cost.steps() == 0 {
        return Text::from(format!("No price is entered. {enter}"));
    }
    Text::default()
        .words("It costs ")
        .strong(money_text(bill.cost))
        .words(format!(" as far as prices are entered; {missing}. {enter}"))
}

impl Hardware {
    fn list(&self, bill: &Bill, weights: &Weights, system: System) -> Table {
        let unit = figures::part_weight(0.0, system).unit;
        let mut rows = Vec::new();
        for shelf in Shelf::ALL {
            let on_shelf: Vec<&Item> = bill.items.iter().filter(|item| item.shelf == shelf).collect();
            if on_shelf.is_empty() {
                continue;
            }
            rows.push(vec![Cell::Heading(shelf.title().into())]);
            rows.extend(on_shelf.into_iter().map(|item| self.row(item, system)));
        }
        let rests = (bill.rests > Money::ZERO).then(|| {
            vec![
                Cell::number(""),
                Cell::number(""),
                Cell::words("Rests of the bars"),
                Cell::words(
                    "whole bars are bought, see Cut to length; above, a piece costs as much as it is long",
                ),
                Cell::number(""),
                Cell::number(money_text(bill.rests)),
                Cell::words(""),
            ]
        });
        let small = vec![
            Cell::number(""),
            Cell::number(""),
            Cell::words("Small parts together"),
            Cell::words("fasteners, collars, crank, battens, glue: all rows marked “with small parts”"),
            Cell::number(""),
            price_cell(bill.small),
            Cell::words(""),
        ];
        let open =
            if bill.unpriced > 0 { format!("{} rows without a price", bill.unpriced) } else { String::new() };
        let heavy = vec![
            Cell::number(""),
            Cell::number(""),
            Cell::Words(Text::default().strong("Weight of the hardware")),
            Cell::words(format!(
                "of what has a number; {} of it on the table",
                mass(weights.hardware, system)
            )),
            Cell::StrongNumber(figures::part_weight(bill.mass.to_kg(), system).number),
            Cell::number(""),
            Cell::words(""),
        ];
        let total = vec![
            Cell::number(""),
            Cell::number(""),
            Cell::Words(Text::default().strong("Cost in all")),
            Cell::words("of all rows: sheets, hardware and small parts"),
            Cell::number(""),
            Cell::StrongNumber(if bill.cost.steps() == 0 {
                "not known".into()
            } else {
                money_text(bill.cost)
            }),
            Cell::words(open),
        ];
        Table {
            caption: "What to buy; a weight is that of all pieces of its row".into(),
            head: vec![
                "No.".into(),
                "Count".into(),
                "Part".into(),
                "Designation".into(),
                format!("Weight, {unit}"),
                "Price".into(),
                "Outline".into(),
            ],
            rows,
            foot: rests.into_iter().chain([small, heavy, total]).collect(),
        }
    }

    fn row(&self, item: &Item, system: System) -> Vec<Cell> {
        let picture = outline(&self.report.design, item).map_or_else(
            || Cell::words(""),
            |drawn| {
                Cell::Picture(Figure {
                    marks: drawn.svg(),
                    width: drawn.width,
                    height: drawn.height,
                    label: String::new(),
                    caption: Text::default(),
                    true_scale: false,
                })
            },
        );
        let count = if item.shelf == Shelf::Glue { String::new() } else { item.count.to_string() };
        vec![
            Cell::number(item.number.map(|number| number.to_string()).unwrap_or_default()),
            Cell::number(count),
            Cell::words(item.name),
            Cell::words(item.designation(system)),
            Cell::number(figures::part_weight(item.mass.to_kg(), system).number),
            price_cell(item.price),
            picture,
        ]
    }
}

fn price_cell(price: Price) -> Cell {
    match price {
        Price::Known(money) => Cell::number(money_text(money)),
        Price::Open => Cell::number("no price"),
        Price::With(other) => Cell::number(format!("with {other}")),
    }
}

/// Each section with its cuts and the bars they come from.
fn lengths(report: &Report, system: System) -> Table {
    let length = |value: Length| figures::laid(value, system).number;
    let bars = bars(&report.parts, report.design.shop.kerf, system);
    let mut rows = Vec::new();
    let mut at = 0;
    while let Some(first) = bars.get(at) {
        let alike =
            bars[at..].iter().take_while(|bar| bar.form == first.form && bar.section == first.section);
        let group: Vec<_> = alike.collect();
        at += group.len();
        let mut cuts: Vec<(u32, Length, u32)> = Vec::new();
        for (number, long) in group.iter().flat_map(|bar| &bar.cuts) {
            match cuts.iter_mut().find(|(known, its, _)| known == number && its == long) {
                Some((_, _, count)) => *count += 1,
                None => cuts.push((*number, *long, 1)),
            }
        }
        let list: Vec<String> = cuts
            .iter()
            .map(|(number, long, count)| format!("{count} × {} (no. {number})", length(*long)))
            .collect();
        let all: f64 = cuts.iter().map(|(_, long, count)| long.to_m() * f64::from(*count)).sum();
        let sold: Vec<String> = whole(group.iter().map(|bar| bar.length).collect())
            .into_iter()
            .map(|(long, count)| format!("{count} of {}", length(long)))
            .collect();
        rows.push(vec![
            Cell::words(section(first.form, first.section, system)),
            Cell::words(list.join(", ")),
            Cell::number(figures::size(all, system).number),
            Cell::words(sold.join(", ")),
        ]);
    }
    let unit = figures::size(0.0, system).unit;
    Table {
        caption: "Bars, tubes and battens".into(),
        head: vec!["Stock".into(), "Pieces".into(), format!("Together, {unit}"), "Bars to buy".into()],
        rows,
        foot: Vec::new(),
    }
}

/// Equal lengths counted, in their order.
fn whole(lengths: Vec<Length>) -> Vec<(Length, usize)> {
    let mut list: Vec<(Length, usize)> = Vec::new();
    for long in lengths {
        match list.iter_mut().find(|(known, _)| *known == long) {
            Some((_, count)) => *count += 1,
            None => list.push((long, 1)),
        }
    }
    list
}

/// A bar by what it is and its section.
fn section(form: Form, [second, third]: [Length; 2], system: System) -> String {
    let [one, two] = [second, third].map(|side| figures::laid(side, system).number);
    match form {
        Form::RoundBar => format!("Round steel {one}"),
        Form::SquareTube => format!("Square steel tube {one}, wall {two}"),
        Form::BronzeTube => format!("Bronze tube, {one} outside, {two} bore"),
        Form::ThreadedBar => {
            let lead = figures::threads(third, system).map_or(two, |lead| lead.number);
            format!("Threaded bar {one}, lead {lead}")
        }
        Form::LightBar => format!("Flat aluminium {one} × {two}"),
        Form::Batten => format!("Batten {one} × {two}"),
        _ => format!("Flat steel {one} × {two}"),
    }
}
