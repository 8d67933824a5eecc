//! What acts on each part: a part cut free, its forces, and that they cancel.
mod table;
#[cfg(test)]
mod tests;

use std::rc::Rc;

use super::document::{Act, Block, Document, Figure, Text};
use super::{Live, Page, Reader};
use crate::drawing::freed::{FreeLive, FreeSheet, closing, direction, letter, name, part_words};
use crate::drawing::{Layout, Mark, View, widths};
use crate::mechanics::Freed;
use crate::quantity::{Amount, System, figures};
use crate::report::{Doing, Report, Station};

/// Answers that the page hears: the part, what the table does, and the deck's height in metres.
const PART: &str = "part";
const DOING: &str = "doing";
const DECK: &str = "deck";
/// Size of the figure in the document, px.
const FIGURE: (u32, u32) = (1080, 420);

/// The page.
#[derive(Debug)]
pub(super) struct Forces {
    report: Rc<Report>,
    part: Freed,
    doing: Doing,
    /// Deck height, m.
    deck: f64,
    kept: Option<Kept>,
    edition: u32,
}

/// What stands still of the picture, kept as long as its room, the part and what the table does stay.
#[derive(Debug)]
struct Kept {
    view: View,
    part: Freed,
    doing: Doing,
    sheet: FreeSheet,
    still: Rc<str>,
    edition: u32,
}

/// The text of the answer to what the table does, and its words.
const fn doing_words(doing: Doing) -> (&'static str, &'static str) {
    match doing {
        Doing::Standing => ("rest", "at rest"),
        Doing::Raising => ("raise", "raising"),
        Doing::Lowering => ("lower", "lowering"),
    }
}

impl Forces {
    /// Over a report: the first arm at rest, with the deck in the middle of the lift.
    pub(super) fn new(report: Rc<Report>) -> Self {
        let deck = 0.5 * (report.lowest() + report.highest());
        let part = Freed::of("A1", 1).unwrap_or(Freed::Deck);
        Self { report, part, doing: Doing::Standing, deck, kept: None, edition: 0 }
    }

    fn stages(&self) -> usize {
        self.report.stations.first().map_or(1, |station| station.pose.n)
    }

    /// The choice of part and of what the table does, as buttons.
    fn choices(&self) -> [Block; 2] {
        let parts = Freed::all(self.stages())
            .map(|part| Act::Answer {
                words: part_words(part),
                key: PART.into(),
                value: part.to_string(),
                pressed: Some(part == self.part),
            })
            .collect();
        let states = Doing::ALL
            .into_iter()
            .map(|doing| {
                let (value, words) = doing_words(doing);
                Act::Answer {
                    words: words.into(),
                    key: DOING.into(),
                    value: value.into(),
                    pressed: Some(doing == self.doing),
                }
            })
            .collect();
        [Block::Acts(parts), Block::Acts(states)]
    }

    fn sheet(&self, view: &View) -> FreeSheet {
        FreeSheet::new(&self.report, self.part, self.doing, view, &widths)
    }

    /// The picture at the deck's height, for paper and for a reader without the one that moves.
    fn figure(&self, station: &Station, system: System) -> Block {
        let figure = cut_free(&self.report, self.part, self.doing, station, FIGURE, system);
        Block::Group("still-picture", vec![Block::Figure(figure)])
    }
}

/// A part cut free with the forces on it and their polygon, at a station of the report; size in px.
pub(super) fn cut_free(
    report: &Report,
    part: Freed,
    doing: Doing,
    station: &Station,
    (width, height): (u32, u32),
    system: System,
) -> Figure {
    let view = View::new(width, height, Layout::Wide, system);
    let sheet = FreeSheet::new(report, part, doing, &view, &widths);
    let (moving, live) = sheet.moving(report, station, &widths);
    Figure {
        marks: sheet.still.iter().chain(&moving).map(Mark::svg).collect(),
        width: sheet.width,
        height: sheet.height,
        label: spoken(part, doing, station, &live, system),
        caption: Text::default(),
        true_scale: false,
    }
}

/// What one would read off the picture.
fn spoken(part: Freed, doing: Doing, station: &Station, live: &FreeLive, system: System) -> String {
    let mut sentences = vec![format!(
        "Deck at {}, {}: the {} cut free.",
        Amount::Size(station.height).text(system),
        doing_words(doing).1,
        part_words(part)
    )];
    for (place, one) in live.body.iter().flat_map(|body| body.acting.iter().enumerate()) {
        let what = format!("{} {}", letter(place), name(one.cause, part));
        let size = one.force.length();
        sentences.push(if size > 0.0 {
            format!("{what}: {} {}.", figures::small_force(size, system), direction(one.force))
        } else {
            let turn = if one.couple > 0.0 { "counter-clockwise" } else { "clockwise" };
            format!("{what}: {} {turn}.", figures::torque(one.couple.abs(), system))
        });
    }
    if live.body.is_some() {
        sentences.push(format!("The polygon {}.", closing(live.gap, system)));
    }
    sentences.join(" ")
}

impl Page for Forces {
    fn answer(&mut self, key: &str, text: &str, _reader: &Reader) {
        match key {
            PART => self.part = Freed::of(text, self.stages()).unwrap_or(self.part),
            DOING => {
                let known = Doing::ALL.into_iter().find(|doing| doing_words(*doing).0 == text);
                self.doing = known.unwrap_or(self.doing);
            }
            DECK => {
                if let Some(deck) = text.parse::<f64>().ok().filter(|deck| deck.is_finite()) {
                    self.deck = deck.clamp(self.report.lowest(), self.report.highest());
                }
            }
            _ => {}
        }
    }

    fn document(&self, reader: &Reader) -> Document {
        let station = self.report.at(self.deck);
        let mut blocks = Vec::from(self.choices());
        blocks.push(self.figure(&station, reader.system));
        blocks.extend(self.table(&station, reader.system));
        blocks.push(Block::text(MEANING));
        blocks.push(Block::note(match self.doing {
            Doing::Standing => RESTING,
            Doing::Raising | Doing::Lowering => MOVING,
        }));
        Document { title: "Forces on a part".into(), blocks }
    }

    fn live(&mut self, view: &View, deck: f64, _push: f64) -> Option<Live> {
        let current = |kept: &Kept| kept.view == *view && kept.part == self.part && kept.doing == self.doing;
        let kept = self.kept.take().filter(current).unwrap_or_else(|| {
            self.edition = self.edition.wrapping_add(1);
            let sheet = self.sheet(view);
            let still: String = sheet.still.iter().map(Mark::svg).collect();
            Kept {
                view: view.clone(),
                part: self.part,
                doing: self.doing,
                sheet,
                still: still.into(),
                edition: self.edition,
            }
        });
        let station = self.report.at(deck);
        let (marks, live) = kept.sheet.moving(&self.report, &station, &widths);
        let picture = Live {
            width: kept.sheet.width,
            height: kept.sheet.height,
            still: Rc::clone(&kept.still),
            edition: kept.edition,
            moving: marks.iter().map(Mark::svg).collect(),
            spoken: spoken(self.part, self.doing, &station, &live, view.system),
            pushed: 0.0,
            most_push: 0.0,
            per_newton: 0.0,
            per_metre: 0.0,
            lift: [self.report.lowest(), self.report.highest()],
            deck: None,
            push: None,
            carriage: None,
            settled: true,
            sketch: None,
        };
        self.kept = Some(kept);
        Some(picture)
    }
}

const MEANING: &str = "Whatever touched the part is gone, and in its place stands the force with which it held or pressed it; what the part does in return is the same force the other way, on the other part. A part that does not move, or moves steadily, is in equilibrium: laid head to tail its forces lead back to where they began, and their moments about any point cancel.";
const RESTING: &str = "At rest friction is left out, as in the side elevation: it may help either way. Forces are those of both sides together. A wheel’s rail force is taken at the middle of its axle.";
const MOVING: &str = "While the deck moves friction resists in every pin as a couple and on every wheel as a drag; the crank turns so slowly that nothing is accelerated. Forces are those of both sides together. A wheel’s rail force and drag are taken at the middle of its axle.";
