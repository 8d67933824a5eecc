//! All figures over the lift, as a table and as a file.
use super::Sway;
use super::figures::{Banded, CORNER_DROP, GIVE, LENGTHWISE, LOADED, MULTIPLE, ROLL, TWIST};
use crate::design::Design;
use crate::pages::Reader;
use crate::pages::document::{Act, Block, Cell, Table};
use crate::quantity::figures::Figure;
use crate::quantity::{System, figures};
use crate::report::{CORNER, COUPLE, Case, PUSH, SwayReport};
use crate::share::stem::file_name;

/// The name of the file with all heights.
pub(super) fn file(design: &Design) -> String {
    file_name(&design.name, "sideways.csv")
}

/// One station of so many stands in the table, and the last.
const EVERY: usize = 2;

/// A column: its heading and its value at a station, SI.
struct Column {
    head: &'static str,
    figure: &'static Banded,
    case: Case,
    strong: bool,
}

const fn column(head: &'static str, figure: &'static Banded, case: Case) -> Column {
    Column { head, figure, case, strong: false }
}

const fn strong(head: &'static str, figure: &'static Banded) -> Column {
    Column { head, figure, case: Case::Middle, strong: true }
}

const BEFORE: [Column; 3] =
    [column("gives, stiff", &GIVE, Case::Stiff), strong("middle", &GIVE), column("soft", &GIVE, Case::Soft)];
const AFTER: [Column; 8] = [
    column("loaded", &LOADED, Case::Middle),
    column("critical load, soft", &MULTIPLE, Case::Soft),
    strong("middle", &MULTIPLE),
    column("stiff", &MULTIPLE, Case::Stiff),
    column("corner drops", &CORNER_DROP, Case::Middle),
    column("twists", &TWIST, Case::Middle),
    column("rolls", &ROLL, Case::Middle),
    column("length-wise", &LENGTHWISE, Case::Middle),
];

impl Column {
    fn figure(&self, sway: &SwayReport, station: usize, system: System) -> Figure {
        let value = sway.case(self.case).get(station).and_then(self.figure.value);
        (self.figure.write)(value.unwrap_or(f64::NAN), system)
    }

    fn cell(&self, sway: &SwayReport, station: usize, system: System) -> Cell {
        let number = self.figure(sway, station, system).number;
        if self.strong { Cell::StrongNumber(number) } else { Cell::number(number) }
    }
}

/// Both bounds of the rattle at a station.
fn rattle(sway: &SwayReport, station: usize, system: System) -> [Figure; 2] {
    let bounds = sway.rattle.get(station).map_or([f64::NAN; 2], |rattle| [rattle.least, rattle.most]);
    bounds.map(|metres| figures::sag(metres, system))
}

impl Sway {
    /// The table over the lift.
    pub(super) fn over_the_lift(&self, reader: &Reader) -> Vec<Block> {
        let Some(sway) = &self.known else { return Vec::new() };
        let system = reader.system;
        let last = sway.heights.len().saturating_sub(1);
        // From the highest down to the lowest, as the table stands.
        let stations = (0..=last).rev().filter(|station| station % EVERY == 0 || *station == last);
        let rows = stations.map(|station| {
            let cells = |list: &[Column]| -> Vec<Cell> {
                list.iter().map(|column| column.cell(sway, station, system)).collect()
            };
            let height = sway.heights.get(station).copied().unwrap_or(f64::NAN);
            let mut row = vec![Cell::number(figures::size(height, system).number)];
            row.extend(cells(&BEFORE));
            row.extend(rattle(sway, station, system).map(|figure| Cell::number(figure.number)));
            row.extend(cells(&AFTER));
            row
        });
        let heads = |list: &[Column]| list.iter().map(|column| column.head.to_owned()).collect::<Vec<_>>();
        let mut head = vec!["deck".to_owned()];
        head.extend(heads(&BEFORE));
        head.extend(["rattles, least", "most"].map(String::from));
        head.extend(heads(&AFTER));
        let [length, give] = [figures::size(0.0, system).unit, figures::sag(0.0, system).unit];
        let caption = format!(
            "Deck height ({length}); give ({give}) under {} at the deck, corner drop ({give}) under {}; twist and roll (mrad) under {}; critical load as a multiple of the load",
            figures::small_force(PUSH, system),
            figures::small_force(CORNER, system),
            figures::torque(COUPLE, system),
        );
        vec![
            Block::heading("Over the lift"),
            Block::Group(
                "sway-lift",
                vec![Block::Table(Table { caption, head, rows: rows.collect(), foot: Vec::new() })],
            ),
            Block::Acts(vec![Act::Save {
                words: "Save all heights as CSV".into(),
                file: file(&self.report.design),
            }]),
        ]
    }
}
