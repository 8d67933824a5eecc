//! The table from the side, as far as it is built.
use super::canvas::{Canvas, MOST};
use crate::drawing::elevation::{Subject, load_shape};
use crate::drawing::outline::{Bounds, Outline, Stroke};
use crate::drawing::sheet::runs;
use crate::mechanics::Pose;
use crate::report::Report;
use crate::workshop::steps::{Task, is_deck_first};
use glam::DVec2;

/// Every name of an outline and the step at which it comes in, in the order of the build; where the deck comes first the last two steps change
/// places.
const ORDER: [(&str, Task); 13] = [
    ("Base pivot cheek", Task::Base),
    ("Base beam", Task::Base),
    ("Wheel strip", Task::Rails),
    ("Caster", Task::Casters),
    ("Arm A", Task::Scissors),
    ("Arm B", Task::Scissors),
    ("Pivot bolt", Task::Scissors),
    ("Wheel", Task::OntoBase),
    ("Keeper", Task::OntoBase),
    ("Screw", Task::Screw),
    ("Deck pivot cheek", Task::DeckOn),
    ("Deck rail", Task::DeckOn),
    ("Deck", Task::DeckOn),
];

/// From one step to the next the deck stands somewhere above the middle, where the arms cross wide.
const HALF_OPEN: f64 = 0.6;

/// Whether something of a task is there at another, and new there.
fn standing(name: &str, at: Task, deck_first: bool) -> Option<bool> {
    let came = ORDER.iter().find(|(known, _)| *known == name)?.1;
    // The scissors lie on the floor beside the base while they are pinned together.
    if at == Task::Scissors && came != Task::Scissors {
        return None;
    }
    let place = |task: Task| {
        let task = match task {
            Task::Screw if deck_first => Task::DeckOn,
            Task::DeckOn if deck_first => Task::Screw,
            same => same,
        };
        ORDER.iter().position(|(_, one)| *one == task).unwrap_or(ORDER.len())
    };
    (place(came) <= place(at)).then_some(came == at)
}

/// The table at a step.
pub(super) fn part(canvas: &mut Canvas<'_>, task: Task) {
    let report = canvas.report;
    let share = match task {
        Task::Props => 1.0,
        Task::Proof => 0.0,
        _ => HALF_OPEN,
    };
    let per_mm = scale(report);
    let deck_first = is_deck_first(&report.design);
    let station = report.at(report.lowest() + share * (report.highest() - report.lowest()));
    let subject =
        Subject { design: &report.design, pose: &station.pose, runs: runs(report), pixel: 1.0 / per_mm };
    if !matches!(task, Task::Rails | Task::Casters) {
        canvas.at_scale(per_mm);
    }
    let casters = subject.ground().into_iter().map(|stroke| ("Caster", stroke));
    for (name, stroke) in casters.chain(subject.named()) {
        match standing(name, task, deck_first) {
            Some(true) => canvas.stroke(stroke),
            Some(false) => canvas.stroke_narrow(stroke),
            None => {}
        }
    }
    match task {
        Task::Rails => stops(canvas, "w ply"),
        Task::Casters => stops(canvas, "n ply"),
        Task::Props => props(canvas, &station.pose),
        Task::Proof => {
            for stroke in load_shape(&subject).strokes {
                canvas.stroke(stroke);
            }
        }
        _ => {}
    }
    if matches!(task, Task::Scissors | Task::Rails) {
        return;
    }
    floor(canvas, report);
}

/// The scale at which the table fits at its highest.
fn scale(report: &Report) -> f64 {
    let station = report.at(report.highest());
    let subject = Subject { design: &report.design, pose: &station.pose, runs: runs(report), pixel: 4.0 };
    let mut strokes: Vec<Stroke> = subject.mechanism();
    strokes.extend(subject.ground());
    Bounds::around(&strokes).map_or(1.0, |bounds| {
        let span = (bounds.most - bounds.least).max(DVec2::splat(1.0));
        (MOST[0] / span.x).min(MOST[1] / span.y)
    })
}

fn floor(canvas: &mut Canvas<'_>, report: &Report) {
    let frames = &report.design.frames;
    let (left, long) = (frames.base_left.to_mm(), frames.base_length.to_mm());
    canvas.line("floor", DVec2::new(left - 0.04 * long, 0.0), DVec2::new(left + 1.04 * long, 0.0));
}

/// The blocks that stop the base wheels, their faces where the wheel stands at the lowest and the highest deck.
fn stops(canvas: &mut Canvas<'_>, class: &'static str) {
    let design = &canvas.report.design;
    let side = design.running.wheel.to_mm();
    let top = design.running.caster_height.to_mm() + design.frames.beam_depth.to_mm();
    let [near, far] = runs(canvas.report)[0];
    for from in [far + side / 2.0, near - side * 1.5] {
        canvas.rectangle(class, [from, from + side], [top, top + side]);
    }
}

/// A prop between beam and deck rail, half-way between the pivot's cheek and the wheel.
fn props(canvas: &mut Canvas<'_>, pose: &Pose) {
    let design = &canvas.report.design;
    let Some(prop) = canvas.report.parts.iter().find(|part| part.name == "Prop") else { return };
    let frames = &design.frames;
    let bottom = design.running.caster_height.to_mm() + (frames.beam_depth + frames.strip_thickness).to_mm();
    let half = prop.size[1].to_mm() / 2.0;
    let middle = (design.arms.end.to_mm() + pose.carriage_x * 1e3) / 2.0;
    let outline = [[middle - half, bottom], [middle + half, bottom]].map(DVec2::from);
    let up = DVec2::new(0.0, prop.size[0].to_mm());
    canvas.draw("w ply", Outline::polygon(&[outline[0], outline[1], outline[1] + up, outline[0] + up]));
}
