//! The forces on a part as figures, with their sums.
use super::{Forces, doing_words, letter, name, part_words};
use crate::mechanics::{Acting, FreeBody, Freed};
use crate::pages::document::{Block, Cell, Table};
use crate::quantity::{Amount, System, figures};
use crate::report::Station;
use glam::DVec2;

impl Forces {
    /// The table with its sums; a sentence where nothing can be computed.
    pub(super) fn table(&self, station: &Station, system: System) -> Vec<Block> {
        let Ok(body) = self.report.body(station, self.doing, self.part) else {
            return vec![Block::text("The forces cannot be computed at this height.")];
        };
        let force = figures::small_force(0.0, system).unit;
        let size = figures::size(0.0, system).unit;
        let moment = figures::torque(0.0, system).unit;
        let table = Table {
            caption: format!(
                "Forces on the {} with the deck at {}, {}",
                part_words(self.part),
                Amount::Size(station.height).text(system),
                doing_words(self.doing).1
            ),
            head: vec![
                "Force".into(),
                "From".into(),
                format!("across, {size}"),
                format!("up, {size}"),
                format!("size, {force}"),
                "direction, °".into(),
                format!("horizontal, {force}"),
                format!("vertical, {force}"),
                format!("moment, {moment}"),
            ],
            rows: (0..).zip(&body.acting).map(|(place, one)| self.row(place, one, &body, system)).collect(),
            foot: vec![sums(&body, system)],
        };
        vec![Block::Table(table), Block::note(note(self.part))]
    }

    fn row(&self, place: usize, one: &Acting, body: &FreeBody, system: System) -> Vec<Cell> {
        let at = one.at + DVec2::new(0.0, self.report.mechanism().h_base);
        let force = |newtons: f64| figures::small_force(newtons, system).number;
        let couple = one.force.length() <= 0.0;
        let component = |newtons: f64| Cell::number(if couple { String::new() } else { force(newtons) });
        let angle = libm::atan2(one.force.y, one.force.x);
        let degrees = |angle: f64| figures::angle(angle).number;
        vec![
            Cell::words(unbroken(&format!("{} {}", letter(place), name(one.cause, self.part)))),
            Cell::words(unbroken(&one.from.map_or_else(String::new, part_words))),
            Cell::number(figures::size(at.x, system).number),
            Cell::number(figures::size(at.y, system).number),
            component(one.force.length()),
            Cell::number(if couple { String::new() } else { degrees(angle) }),
            component(one.force.x),
            component(one.force.y),
            Cell::number(figures::torque(one.moment(body.about), system).number),
        ]
    }
}

/// Words that stay in one line.
fn unbroken(words: &str) -> String {
    words.replace(' ', "\u{A0}")
}

/// The sums.
fn sums(body: &FreeBody, system: System) -> Vec<Cell> {
    let sum = body.force();
    let nothing = || Cell::words("");
    let left = |figure| Cell::StrongNumber(figures::left(figure).number);
    vec![
        Cell::words("Sum"),
        nothing(),
        nothing(),
        nothing(),
        nothing(),
        nothing(),
        left(figures::small_force(sum.x, system)),
        left(figures::small_force(sum.y, system)),
        left(figures::torque(body.moment(), system)),
    ]
}

/// How the columns are counted.
fn note(part: Freed) -> String {
    let about = match part {
        Freed::Arm(_) => "the arm’s lower pin",
        Freed::Deck => "the deck’s fixed pivot",
        Freed::Base => "the base’s fixed pivot",
        Freed::BaseCarriage | Freed::DeckCarriage => "the axle",
    };
    format!(
        "Places are told across from the lower fixed pivots, to the right, and up from the floor. Horizontal is positive to the right, vertical up; directions and moments are counted counter-clockwise, directions from the right, moments about {about}, ringed in the picture. The sums are those of the computed forces, not of the rounded figures."
    )
}
