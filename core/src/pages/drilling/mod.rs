//! Drilling: where the holes go, in which order, how exact, and templates to lay on the wood.

mod exact;
mod table;
mod template;

use std::rc::Rc;

use super::document::{Act, Block, Cell, Document, Figure, Fold, Text};
use super::{Page, Reader, fitted};
use crate::drawing::boring::plan;
use crate::drawing::poster::ratio_words;
use crate::drawing::widths;
use crate::mechanics::{Fault, Solver};
use crate::parts::{Form, Part, Rides};
use crate::quantity::{Amount, Length, System, figures};
use crate::report::Report;
use crate::share::address::View;
use crate::share::stem::{file_name, stem};
use crate::share::{csv, dxf, flat, svg};
use crate::workshop::drilling::{Hold, Table, hold, order, tables};

/// The page.
pub struct Drilling {
    report: Rc<Report>,
    hold: Result<Hold, Fault>,
    /// Each kind of drilled part, drawn from its first piece.
    kinds: Vec<(Table, Part)>,
}

impl Drilling {
    /// Over a report.
    pub fn new(report: Rc<Report>) -> Self {
        let solver = Solver::new(report.mechanism()).map_err(|faults| {
            faults.into_iter().next().unwrap_or_else(|| Fault::new("design", "cannot be computed"))
        });
        let hold = solver.and_then(|solver| hold(&report.design, &solver));
        let tolerance = hold.as_ref().map_or(report.design.shop.drilling, |hold| hold.tolerance);
        let kinds = tables(&report.parts, tolerance)
            .into_iter()
            .filter_map(|table| {
                let first = report.parts.iter().find(|part| part.number == table.part)?;
                let part = Part { count: table.count, ..first.clone() };
                part.size.iter().all(|side| *side > Length::ZERO).then_some((table, part))
            })
            .collect();
        Self { report, hold, kinds }
    }

    fn file_name(&self, what: &str) -> String {
        file_name(&self.report.design.name, what)
    }

    fn part_file(&self, table: &Table, ending: &str) -> String {
        self.file_name(&format!("{}-{}.{ending}", table.part, stem(&table.name)))
    }
}

impl Page for Drilling {
    fn document(&self, reader: &Reader) -> Document {
        let system = reader.system;
        let (arms, others): (Vec<_>, Vec<_>) = self.kinds.iter().partition(|(_, part)| is_arm(part));
        let mut blocks = vec![
            Block::text(
                "Every hole is measured from one corner, the datum: the end and the edge marked 0. On an arm that is its lower end and the edge that ran along the fence; on other parts the end at the fixed pivots and the lower edge.",
            ),
            Block::Text(self.verdict(system)),
        ];
        blocks.extend(self.report.ends_left().map(|left| Block::Caution(left.text(system).into())));
        if system == System::Inch {
            blocks.push(Block::note(
                "Bits are those sold by sixty-fourths of an inch, the next that clears; ≈ leads the nearest sixty-fourth. Places of pivot holes that are no sixty-fourth stand in thousandths: set them with a caliper.",
            ));
        }
        blocks.extend([
            Block::Acts(vec![
                Act::Save { words: "Save all holes (CSV)".into(), file: self.file_name("holes.csv") },
                Act::Print { words: "Print".into() },
            ]),
            Block::heading("Arms"),
        ]);
        blocks.extend(arms.into_iter().flat_map(|(table, part)| {
            let head = Block::Group("drilled-head", vec![Block::heading(kind_words(table))]);
            core::iter::once(head).chain(self.kind(table, part, system))
        }));
        blocks.push(Block::heading("Order of work"));
        blocks.push(Block::Steps(
            order(&self.report.design, &self.report.parts)
                .into_iter()
                .map(|note| vec![Block::text(note.what.text(system)), Block::note(note.why.text(system))])
                .collect(),
        ));
        let mut exact = vec![Block::heading("How exact")];
        exact.extend(match &self.hold {
            Ok(hold) => exact::blocks(&self.report.design, hold, system),
            Err(fault) => vec![Block::Caution(
                format!("How exact the holes must be cannot be said for this design: {fault}.").into(),
            )],
        });
        blocks.push(Block::Group("exact", exact));
        blocks.push(Block::heading("Other parts"));
        blocks.extend(others.into_iter().map(|(table, part)| {
            Block::Fold(Fold {
                id: format!("part-{}", table.part),
                line: vec![Cell::words(kind_words(table)), Cell::words(table::gist(table))],
                blocks: self.kind(table, part, system),
                open: false,
            })
        }));
        blocks.extend(table::pilot_holes(&self.report.parts, system));
        blocks.push(template::blocks(&self.kinds, system));
        Document { title: View::Drilling.title().into(), blocks }
    }

    fn file(&self, name: &str, _reader: &Reader) -> Option<String> {
        if name == self.file_name("holes.csv") {
            let tables: Vec<Table> = self.kinds.iter().map(|(table, _)| table.clone()).collect();
            return Some(csv::holes(&tables));
        }
        self.kinds.iter().find_map(|(table, part)| {
            if name == self.part_file(table, "dxf") {
                Some(dxf::write(&flat::part(part)))
            } else if name == self.part_file(table, "svg") {
                Some(svg::write(&flat::part(part)))
            } else {
                None
            }
        })
    }
}

fn is_arm(part: &Part) -> bool {
    part.form == Form::Sheet && matches!(part.rides, Rides::Arm(_))
}

fn kind_words(table: &Table) -> String {
    format!("{} {}, {} off", table.part, table.name, table.count)
}

impl Drilling {
    /// The one figure that matters most, in a sentence.
    fn verdict(&self, system: System) -> Text {
        let Ok(hold) = &self.hold else { return Text::default() };
        let shop = &self.report.design.shop;
        let tolerance = figures::drilled(hold.tolerance.to_m(), system).to_string();
        let text = Text::default().words("The holes of the pivots decide: each within ").strong(tolerance);
        if hold.is_enough(&self.report.design) {
            text.words(" of its mark, the error you hold.")
        } else {
            text.words(format!(
                " of its mark. The {} you hold would put the deck further out of level than the {} you accept.",
                figures::drilled(shop.drilling.to_m(), system),
                Amount::Give(shop.level.to_m()).text(system)
            ))
        }
    }

    /// A kind of part: in plan, with its hole table.
    fn kind(&self, table: &Table, part: &Part, system: System) -> Vec<Block> {
        let label = table::label(table, system);
        let drawn = fitted::for_plan(|width, _| {
            let plan = plan(part, &table.rows, system, width, &widths);
            Figure {
                marks: plan.drawn.svg(),
                width: plan.drawn.width,
                height: plan.drawn.height,
                label: label.clone(),
                caption: caption(part, plan.ratio, system).into(),
                true_scale: false,
            }
        });
        let mut beside = table::blocks(table, system);
        beside.push(Block::Acts(vec![
            Act::Save { words: "Save DXF".into(), file: self.part_file(table, "dxf") },
            Act::Save { words: "Save SVG".into(), file: self.part_file(table, "svg") },
        ]));
        vec![Block::Group("drilled", vec![drawn, Block::Group("drilled-table", beside)])]
    }
}

fn caption(part: &Part, ratio: u32, system: System) -> String {
    let thick = figures::marked(part.size[2], system);
    let word = if part.form == Form::SquareTube { "wall" } else { "thick" };
    let glued = if part.layers > 1 { format!(", {} layers", part.layers) } else { String::new() };
    format!("{thick} {word}{glued}. Drawn {} when printed at 100 %.", ratio_words(ratio, system))
}
