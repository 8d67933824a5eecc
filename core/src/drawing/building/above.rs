//! Frames as they are joined on the bench: seen from above, the deck from below. What is drawn are the blocks that the parts say they fill.
use super::canvas::Canvas;
use crate::drawing::outline::Outline;
use crate::parts::{
    ArmName, Block, Joint, Part, Rides, arm_spread, arm_thickness, line, rail_middle, strap_span,
};
use glam::DVec2;

/// From and to across the table of a block and of its mirror image, mm; one where it reaches over the middle.
fn across(block: &Block) -> Vec<[f64; 2]> {
    let [from, to] = block.z.map(|z| z * 1e3);
    if from <= 0.0 { vec![[-to, to]] } else { vec![[from, to], [-to, -from]] }
}

/// The blocks of some parts from above, those that lie low first; from below the other way round.
fn blocks<'a>(
    canvas: &Canvas<'a>,
    wanted: impl Fn(&Part) -> bool,
    below: bool,
) -> Vec<(&'a Part, &'a Block)> {
    let mut list: Vec<(&Part, &Block)> = canvas
        .report
        .parts
        .iter()
        .filter(|part| wanted(part))
        .flat_map(|part| part.places.iter().map(move |block| (part, block)))
        .collect();
    list.sort_by(|(_, one), (_, other)| one.y[1].total_cmp(&other.y[1]));
    if below {
        list.reverse();
    }
    list
}

/// A frame with the number of each of its parts; from below with the strips under its rails.
fn frame(canvas: &mut Canvas<'_>, names: &[&str], below: bool) {
    let strip = |part: &Part| below && part.name == "Wheel strip" && matches!(part.rides, Rides::Deck(_));
    let wanted = |part: &Part| names.contains(&part.name) || strip(part);
    for (part, block) in blocks(canvas, wanted, below) {
        let x = block.x.map(|x| x * 1e3);
        for z in across(block) {
            canvas.rectangle(if strip(part) { "w steel" } else { "w ply" }, x, z);
        }
    }
    let mut told: Vec<u32> = Vec::new();
    for (part, block) in blocks(canvas, wanted, below) {
        if told.contains(&part.number) {
            continue;
        }
        told.push(part.number);
        // A long part has its number towards its right end, clear of what crosses it and of the figure in the middle.
        let [from, to] = block.x.map(|x| x * 1e3);
        let share = if to - from > 2.0 * (block.z[1] - block.z[0]) * 1e3 { 0.72 } else { 0.5 };
        let [inner, outer] = block.z.map(|z| z * 1e3);
        let z = if inner <= 0.0 { outer * 0.45 } else { (inner + outer) / 2.0 };
        canvas.number(DVec2::new(from + (to - from) * share, z), part);
    }
}

/// Two arms of one name, their boards and straps: of A where it has any, else of B.
pub(super) fn ladder(canvas: &mut Canvas<'_>) {
    let design = &canvas.report.design;
    let b = !(design.arms.boards_a || design.arms.straps_a);
    let arm = ArmName { stage: 1, b };
    let long = design.lift.arm_length.to_mm();
    let half = arm_spread(design, b).to_mm() / 2.0;
    let thick = arm_thickness(design).to_mm() / 2.0;
    let end = design.arms.end.to_mm();
    let above = if design.lift.stages.get() > 1 { design.arms.long_end.to_mm() } else { end };
    for (part, block) in blocks(canvas, |part| matches!(part.rides, Rides::OnArm(on, _) if on == arm), false)
    {
        for z in across(block) {
            canvas.rectangle("w ply", block.x.map(|x| x * 1e3), z);
        }
        canvas.number(DVec2::new((block.x[0] + block.x[1]) * 500.0, half * 0.45), part);
    }
    for z in [-half, half] {
        canvas.rectangle("n ply", [-end, long + above], [z - thick, z + thick]);
    }
    if if b { design.arms.straps_b } else { design.arms.straps_a } {
        let span = strap_span(design, b).to_mm();
        let part = design.arms.board_place.value();
        let along = long * (1.0 - 2.0 * part);
        let reach = (span * span - along * along).max(0.0).sqrt() / 2.0;
        let (from, to) = (long * part, long * (1.0 - part));
        for side in [1.0, -1.0] {
            strap(
                canvas,
                DVec2::new(from, -side * reach),
                DVec2::new(to, side * reach),
                design.arms.strap_width.to_mm(),
            );
        }
    }
    canvas.diagonals([[0.0, -half], [long, -half], [long, half], [0.0, half]].map(DVec2::from));
}

/// A strap between two bolts.
fn strap(canvas: &mut Canvas<'_>, from: DVec2, to: DVec2, wide: f64) {
    let Some(along) = (to - from).try_normalize() else { return };
    let (end, side) = (along * wide * 0.7, along.perp() * wide / 2.0);
    let corners = [from - end - side, to + end - side, to + end + side, from - end + side];
    canvas.draw("w steel", Outline::polygon(&corners));
}

/// The base frame without its casters.
pub(super) fn base(canvas: &mut Canvas<'_>) {
    let design = &canvas.report.design;
    let rail = rail_middle(design).to_mm();
    let (left, right) = (design.running.caster_left.to_mm(), design.running.caster_right.to_mm());
    frame(canvas, &["Base beam", "Base plank", "Base pivot cheek", "Inner base cheek"], false);
    canvas.diagonals([[left, -rail], [right, -rail], [right, rail], [left, rail]].map(DVec2::from));
}

/// The deck from below.
pub(super) fn deck(canvas: &mut Canvas<'_>) {
    let design = &canvas.report.design;
    let rail = rail_middle(design).to_mm();
    let left = design.frames.deck_rail_left.to_mm();
    let right = left + design.frames.deck_rail_length.to_mm();
    frame(canvas, &["Deck", "Deck rail", "Deck pivot cheek", "Inner deck cheek"], true);
    canvas.diagonals([[left, -rail], [right, -rail], [right, rail], [left, rail]].map(DVec2::from));
}

/// The axle of the base wheels, across the paper, with the arms that turn on it.
pub(super) fn axle(canvas: &mut Canvas<'_>) {
    let design = &canvas.report.design;
    let half = design.arms.end.to_mm();
    for layer in line(design, Joint::BaseAxle).layers.iter().filter(|layer| layer.name.starts_with("Arm")) {
        let z = [layer.from.to_mm(), layer.to.to_mm()];
        for z in [z, [-z[1], -z[0]]] {
            canvas.rectangle("n ply", z, [-half, half]);
        }
    }
    let mut told: Vec<u32> = Vec::new();
    for (part, block) in blocks(canvas, |part| part.rides == Rides::BaseCarriage, false) {
        for z in across(block) {
            canvas.rectangle("w steel", z, block.x.map(|x| x * 1e3));
        }
        if !told.contains(&part.number) {
            told.push(part.number);
            let [inner, outer] = block.z.map(|z| z * 1e3);
            canvas.number(
                DVec2::new(if inner <= 0.0 { 0.0 } else { (inner + outer) / 2.0 }, block.x[1] * 1e3),
                part,
            );
        }
    }
    let wheel = design.running.wheel_place.to_mm();
    let low = -design.running.wheel.to_mm() / 2.0;
    canvas.level("wheel to wheel", DVec2::new(-wheel, low), DVec2::new(wheel, low));
}
