//! What the checks use of the materials' strengths, and why.
use super::cell;
use crate::checks::allowed;
use crate::design::{Design, Field, WoodSort};
use crate::pages::document::{Block, Cell, Fold, Table, Text};
use crate::quantity::{Amount, Style, System, print};

/// The inputs by which strengths are lessened or loads enlarged.
const FACTORS: [&str; 5] = ["tk", "tg", "tz", "th", "tn"];

/// That sheets differ, for checks of parts cut from plywood.
pub(super) const SHEETS_DIFFER: &str =
    "Plywood sheets differ: the strength is a typical low value. Check the sheet you have.";

/// Whether the parts are cut from plywood.
pub(super) fn plywood(design: &Design) -> bool {
    design.strength.sort == WoodSort::Plywood
}

fn fields() -> impl Iterator<Item = &'static Field> {
    FACTORS.into_iter().filter_map(Design::field)
}

fn value(field: &Field, design: &Design) -> String {
    print(field.get(design), field.kind, System::Metric, Style::Short).number
}

/// The factors in a sentence.
pub(super) fn line(design: &Design) -> Block {
    let given = &design.strength;
    let number = |key: &str| Design::field(key).map_or_else(String::new, |field| value(field, design));
    let mut text = Text::from("Strength of wood × ")
        .strong(number("tk"))
        .words(" for lasting load and damp, ÷ ")
        .strong(number("tg"))
        .words("; yield strength of bolts, bars and axles ÷ ")
        .strong(number("tz"))
        .words(", of the screw ÷ ")
        .strong(number("th"))
        .words("; what could buckle must stand ")
        .strong(number("tn"))
        .words(" times its push. Each can be changed under Strength and limits.");
    if given.sort == WoodSort::Plywood {
        text = text.words(" ").words(SHEETS_DIFFER);
    }
    Block::text(text)
}

/// Strengths with what is used of them, and every factor with its reason.
pub(super) fn fold(design: &Design, system: System) -> Fold {
    let strengths = allowed(design).into_iter().map(|row| {
        vec![
            cell(row.what),
            Cell::number(row.strength.text(system)),
            Cell::number(row.duration.map_or_else(|| "–".into(), |share| Amount::Number(share).text(system))),
            Cell::number(Amount::Number(row.safety).text(system)),
            Cell::StrongNumber(row.used.text(system)),
        ]
    });
    let factors = fields()
        .map(|field| vec![cell(field.label), Cell::number(value(field, design)), cell(field.meaning())]);
    Fold {
        id: "factors".into(),
        line: vec![cell("Strengths and factors, with their reasons")],
        blocks: vec![
            Block::Table(Table {
                caption: "Strengths as given, and what the checks use of them".into(),
                head: ["Strength", "Given", "Lasting, damp ×", "Safety ÷", "Used"].map(String::from).into(),
                rows: strengths.collect(),
                foot: Vec::new(),
            }),
            Block::Table(Table {
                caption: "Factors".into(),
                head: ["Factor", "Value", "What it is and where it comes from"].map(String::from).into(),
                rows: factors.collect(),
                foot: Vec::new(),
            }),
        ],
        open: false,
    }
}
