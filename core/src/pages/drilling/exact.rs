//! What drilling errors do to the deck, and the error that goes with what is accepted.
use crate::design::Design;
use crate::pages::document::{Block, Cell, Table, Text};
use crate::quantity::{Amount, System, figures};
use crate::workshop::drilling::{Effect, Exactness, Hold, Method};

/// A line of the table: its words, the effect, and what turns it into a length at the deck, m.
type Line = (&'static str, fn(&Exactness) -> Effect, fn(&Design) -> f64);

const LINES: [Line; 6] = [
    ("deck out of level, end to end", |exact| exact.tilt, |design| design.frames.deck_length.to_m()),
    ("deck out of level, side to side", |exact| exact.lean, |design| design.frames.deck_width.to_m()),
    (
        "twist: one side's end against the other's",
        |exact| exact.twist,
        |design| design.frames.deck_length.to_m(),
    ),
    ("mismatch: fourth support off the other three", |exact| exact.mismatch, |_| 1.0),
    ("clearance each pivot needs to turn freely", |exact| exact.clearance, |_| 1.0),
    ("play which that adds at the load", |exact| exact.play, |_| 1.0),
];

pub(super) fn blocks(design: &Design, hold: &Hold, system: System) -> Vec<Block> {
    let error = design.shop.drilling.to_m();
    let give = |metres: f64| Amount::Give(metres).text(system);
    let drilled = |metres: f64| figures::drilled(metres, system).to_string();
    let mut blocks = Vec::new();
    let pairs = hold.ways.iter().zip(&hold.errors).find(|((method, _), _)| *method == Method::Pairs);
    if let Some(((_, exact), needed)) = pairs {
        let level = exact.tilt.times(error * design.frames.deck_length.to_m());
        let accepted = give(design.shop.level.to_m());
        blocks.push(Block::Text(
            Text::default()
                .words(format!("With holes within {} of their marks, drilled in pairs, expect the deck ", drilled(error)))
                .strong(format!("{} out of level", give(level.rss)))
                .words(format!(
                    " end to end, and never more than {}; most at a deck height of {}. For the {accepted} you accept, hold ",
                    give(level.worst),
                    Amount::Size(exact.height).text(system)
                ))
                .strong(bound(needed.rss, system))
                .words(format!(
                    "; to stay within {accepted} whatever happens, {}. Both figures are inputs under Sheet and shop.",
                    bound(needed.worst, system)
                )),
        ));
    }
    let cells = |effects: &dyn Fn(&Exactness) -> Effect| -> Vec<Cell> {
        hold.ways
            .iter()
            .flat_map(|(_, exact)| {
                let effect = effects(exact);
                [effect.rss, effect.worst].map(|metres| {
                    let none = metres.abs() < NOTHING;
                    Cell::number(if none { "0".into() } else { figures::sag(metres, system).number })
                })
            })
            .collect()
    };
    let rows = LINES.iter().map(|(words, of, over)| {
        let mut row = vec![Cell::words(*words)];
        row.extend(cells(&|exact| of(exact).times(error * over(design))));
        row
    });
    let mut foot = vec![Cell::words(format!(
        "error to hold for {} out of level, end to end",
        give(design.shop.level.to_m())
    ))];
    for ((method, _), needed) in hold.ways.iter().zip(&hold.errors) {
        let strong = *method == Method::Pairs;
        for error in [needed.rss, needed.worst] {
            let words = if error.is_finite() && error < MOST {
                figures::drilled(down(error, system), system).number
            } else {
                "any".into()
            };
            foot.push(if strong { Cell::StrongNumber(words) } else { Cell::number(words) });
        }
    }
    let mut head = vec![String::new()];
    for (method, _) in &hold.ways {
        let way = match method {
            Method::Alone => "by itself",
            Method::Pairs => "in pairs",
            Method::Turned => "end for end",
        };
        head.extend([format!("{way}, likely"), format!("{way}, worst")]);
    }
    let unit = super::table::unit(system);
    blocks.push(Block::Table(Table {
        caption: format!(
            "What an error of {} at every hole does, each at its worst height, in {unit}",
            drilled(error)
        ),
        head,
        rows: rows.collect(),
        foot: vec![foot],
    }));
    blocks.push(Block::note(
        "By itself: each arm marked and drilled alone. In pairs: left and right arm together, so that both have the same errors. End for end: both halves about a pinned centre with one stop, whose error is the same in every half arm; a rhombus stays a rhombus. Likely is the root of the sum of squares: as likely as an error of the size that is held. Worst has every hole off by that much in the worst direction.",
    ));
    blocks
}

/// Effects below this are rounding, m.
const NOTHING: f64 = 1e-9;

/// An error to hold is rounded down to what is shown of it: a hundredth of a millimetre or a thousandth of an inch.
fn down(error: f64, system: System) -> f64 {
    let step = match system {
        System::Metric => 1e-5,
        System::Inch => 2.54e-5,
    };
    (error / step).floor() * step
}

/// Errors above this are no drilling errors any more, m.
const MOST: f64 = 0.02;

fn bound(error: f64, system: System) -> String {
    if error.is_finite() && error < MOST {
        figures::drilled(down(error, system), system).to_string()
    } else {
        "any error a drill makes".into()
    }
}
