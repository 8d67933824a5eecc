//! Templates in true scale on sheets of paper.
use crate::drawing::boring::{PX_PER_MM, TILE, tiles};
use crate::drawing::widths;
use crate::pages::document::{Act, Block, Cell, Figure, Fold, Text};
use crate::parts::Part;
use crate::quantity::System;
use crate::workshop::drilling::Table;

/// The templates of all kinds, to be opened and printed one by one: on paper only the open ones appear, and then nothing else.
pub(super) fn blocks(kinds: &[(Table, Part)], system: System) -> Block {
    let mut blocks = vec![
        Block::heading("Templates"),
        Block::text(
            "In true scale, on sheets that fit A4 as well as Letter. Open the parts you want, then print at 100 %: only open templates go on paper. Measure the bar first. Where a part takes several sheets, lay the crosses of neighbours on each other along the join line and check its distance from the datum with a tape.",
        ),
        Block::Acts(vec![Act::Print { words: "Print the open templates".into() }]),
    ];
    blocks.extend(kinds.iter().map(|(table, part)| fold(table, part, system)));
    Block::Group("templates", blocks)
}

fn fold(table: &Table, part: &Part, system: System) -> Block {
    let list = tiles(part, &table.rows, system, &widths);
    let count = match list.len() {
        0 => "too large for paper: mark it out from its table".to_owned(),
        1 => "1 sheet".to_owned(),
        many => format!("{many} sheets"),
    };
    let scale = 1.0 / PX_PER_MM;
    let figures = list.into_iter().zip(1_usize..).map(|(tile, number)| {
        Block::Figure(Figure {
            marks: format!("<g transform=\"scale({scale:.6})\">{}</g>", tile.drawn.svg()),
            width: TILE[0],
            height: TILE[1],
            label: format!("Template of {} in true scale, sheet {number}.", table.name),
            caption: Text::default(),
            true_scale: true,
        })
    });
    Block::Fold(Fold {
        id: format!("template-{}", table.part),
        line: vec![Cell::words(format!("{} {}", table.part, table.name)), Cell::words(count)],
        blocks: figures.collect(),
        open: false,
    })
}
