//! A lesson as a worksheet: the question and an empty plot on one page, the answer on the next.
use super::picture::scene;
use super::plan::Plan;
use super::studied::Studied;
use super::told;
use crate::pages::document::{Block, Figure, Text};
use crate::quantity::System;

/// Sizes of the figure to draw in and of the one in the answer key, px: between the margins of the paper, and what leaves room for the answer.
const SIZE: [f64; 2] = [710.0, 420.0];
const KEY: [f64; 2] = [560.0, 320.0];
/// Below the figure for the name of what is given, px.
const LEGEND: f64 = 56.0;

/// Both pages; nothing of them is seen on screen.
pub(super) fn worksheet(plan: &Plan, known: &Studied, system: System) -> Vec<Block> {
    let figure = |answer: bool| {
        let size = if answer { KEY } else { SIZE };
        let (mut scene, plot) = scene(plan, known, known.lift()[0], size, system)?;
        plot.axes(&mut scene.marks);
        plot.given(&mut scene.marks);
        if answer {
            plot.curve(&mut scene.marks, "c-raise", &known.sought, known.lift());
        }
        let height = plot.scale.y(0.0) + LEGEND;
        let label = if answer {
            format!("{} over the deck’s height.", plan.sought.0)
        } else {
            "An empty plot to draw in.".into()
        };
        Some(Block::Figure(Figure {
            marks: scene.marks,
            width: size[0],
            height,
            label,
            caption: Text::default(),
            true_scale: false,
        }))
    };
    let mut sheet = vec![
        Block::Text(Text::default().words("Name ____________________________   Date ______________")),
        Block::text((plan.scene)(known, system)),
        Block::Text(Text::default().strong(plan.question)),
    ];
    sheet.extend(figure(false));
    sheet.push(Block::text("Why? Say it in two sentences."));
    sheet.extend((0..3).map(|_| Block::Group("worksheet-line", Vec::new())));
    sheet.push(Block::text(plan.closing.ask));
    sheet.push(Block::Points(plan.closing.choices.iter().map(|words| vec![Block::text(*words)]).collect()));
    let mut key = vec![Block::heading("Answer key")];
    key.extend(figure(true));
    key.extend(told::why(plan, known, system));
    key.push(Block::Text(
        Text::default()
            .strong(plan.closing.choices[plan.closing.right % 3])
            .words(" ")
            .words(plan.closing.told),
    ));
    vec![
        Block::Group("worksheet", sheet),
        Block::Group("worksheet", vec![Block::NewPage]),
        Block::Group("worksheet", key),
    ]
}
