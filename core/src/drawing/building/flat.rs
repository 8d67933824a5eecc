//! Sheet and pieces as they lie on the bench.
use super::canvas::Canvas;
use crate::drawing::outline::{Outline, Segment};
use crate::parts::{Form, Part, Purpose, arm_thickness, frame_thickness};
use glam::DVec2;

/// Between two pieces, as a part of their width.
const APART: f64 = 0.35;

/// The sheet with the four places where its thickness is measured.
pub(super) fn stock(canvas: &mut Canvas<'_>) {
    let shop = &canvas.report.design.shop;
    let (long, wide) = (shop.sheet_length.to_mm(), shop.sheet_width.to_mm());
    canvas.rectangle("w ply", [0.0, long], [0.0, wide]);
    let reach = 0.06 * long.min(wide);
    let edges = [
        (DVec2::new(long / 2.0, 0.0), DVec2::Y),
        (DVec2::new(long, wide / 2.0), -DVec2::X),
        (DVec2::new(long / 2.0, wide), -DVec2::Y),
        (DVec2::new(0.0, wide / 2.0), DVec2::X),
    ];
    for (at, inwards) in edges {
        // A caliper's jaws over the edge.
        let side = inwards.perp() * reach * 0.35;
        canvas.line("w", at - inwards * reach * 0.4 + side, at + inwards * reach + side);
        canvas.line("w", at - inwards * reach * 0.4 - side, at + inwards * reach - side);
        canvas.line("w", at - inwards * reach * 0.4 + side, at - inwards * reach * 0.4 - side);
    }
    let words = format!("{} × {}", canvas.size(long), canvas.size(wide));
    canvas.label(DVec2::new(long / 2.0, wide / 2.0), words);
}

/// One arm of each number, the longest first.
fn arms<'a>(canvas: &Canvas<'a>) -> Vec<&'a Part> {
    let mut kinds: Vec<&Part> = Vec::new();
    for part in canvas.report.parts.iter().filter(|part| matches!(part.name, "Arm A" | "Arm B")) {
        if part.form == Form::Sheet && !kinds.iter().any(|known| known.number == part.number) {
            kinds.push(part);
        }
    }
    kinds.sort_by_key(|part| part.number);
    kinds
}

/// Where each arm lies: the height of its lower edge, from the top down.
fn rows<'a>(canvas: &Canvas<'a>) -> Vec<(&'a Part, f64)> {
    let mut y = 0.0;
    arms(canvas)
        .into_iter()
        .map(|part| {
            let row = y - part.size[1].to_mm();
            y = row - APART * part.size[1].to_mm();
            (part, row)
        })
        .collect()
}

/// A piece before its ends are rounded, with an arrow along the grain.
pub(super) fn sawn(canvas: &mut Canvas<'_>) {
    for (part, y) in rows(canvas) {
        let [long, wide] = [part.size[0].to_mm(), part.size[1].to_mm()];
        canvas.rectangle("w ply", [0.0, long], [y, y + wide]);
        canvas.number(DVec2::new(long * 0.12, y + wide / 2.0), part);
        let (from, to) = (DVec2::new(long * 0.25, y + wide / 2.0), DVec2::new(long * 0.75, y + wide / 2.0));
        canvas.line("grain", from, to);
        let head = DVec2::new(0.05 * long, 0.14 * wide);
        canvas.line("grain", from, from + head);
        canvas.line("grain", to, to - head);
    }
}

/// Sections of an arm and a rail, their layers drawn a little apart.
pub(super) fn layers(canvas: &mut Canvas<'_>) {
    let design = &canvas.report.design;
    let gap = 0.12 * design.arms.thickness.to_mm();
    let sections = [
        (design.arms.width, arm_thickness(design), design.arms.layers.get()),
        (design.frames.beam_depth, frame_thickness(design), design.frames.layers.get()),
    ];
    let mut x = 0.0;
    for (width, thick, count) in sections {
        let layer = thick.to_mm() / count.max(1) as f64;
        let left = x;
        for _ in 0..count.clamp(1, 8) {
            canvas.rectangle("w ply", [x, x + layer], [0.0, width.to_mm()]);
            // The plies of a layer.
            for ply in [1.0, 2.0].map(|third| x + layer * third / 3.0) {
                canvas.line("glue", DVec2::new(ply, 0.0), DVec2::new(ply, width.to_mm()));
            }
            x += layer + gap;
        }
        let words = format!("{} × {}", canvas.size(thick.to_mm()), canvas.size(width.to_mm()));
        canvas.label(DVec2::new((left + x - gap) / 2.0, width.to_mm() / 2.0), words);
        x += 2.2 * thick.to_mm();
    }
}

/// The outline of an arm with rounded ends.
fn rounded(part: &Part, y: f64) -> Outline {
    let [long, wide] = [part.size[0].to_mm(), part.size[1].to_mm()];
    let [first, last] = part.corners.map(|radius| radius.to_mm().min(wide / 2.0));
    let arc = |x: f64, up: f64, radius: f64| Segment::Arc {
        to: DVec2::new(x, y + up),
        radius,
        left: true,
        large: false,
    };
    let straight = |x: f64, up: f64| Segment::Line(DVec2::new(x, y + up));
    Outline::Run {
        start: DVec2::new(first, y),
        segments: vec![
            straight(long - last, 0.0),
            arc(long, last, last),
            straight(long, wide - last),
            arc(long - last, wide, last),
            straight(first, wide),
            arc(0.0, wide - first, first),
            straight(0.0, first),
            arc(first, 0.0, first),
        ],
        closed: true,
    }
}

/// The arms with their ends rounded, over the sawn pieces.
pub(super) fn shaped(canvas: &mut Canvas<'_>) {
    for (part, y) in rows(canvas) {
        let [long, wide] = [part.size[0].to_mm(), part.size[1].to_mm()];
        canvas.rectangle("n faint none", [0.0, long], [y, y + wide]);
        canvas.draw("w ply", rounded(part, y));
        canvas.number(DVec2::new(long / 2.0, y + wide / 2.0), part);
    }
}

/// The arms with what a purpose draws in their holes.
fn with_holes(canvas: &mut Canvas<'_>, hole: impl Fn(&mut Canvas<'_>, DVec2, f64, bool)) {
    for (part, y) in rows(canvas) {
        canvas.draw("n ply", rounded(part, y));
        for bored in &part.holes {
            let at = DVec2::new(bored.along.to_mm(), y + bored.across.to_mm());
            let turns = matches!(bored.purpose, Purpose::Bushing | Purpose::Pivot);
            hole(canvas, at, bored.diameter.to_mm(), turns);
        }
    }
}

/// The arms with their holes, pivots wide, the rest narrow.
pub(super) fn drilled(canvas: &mut Canvas<'_>) {
    with_holes(canvas, |canvas, at, diameter, turns| {
        if turns {
            canvas.circle("w sheet", at, diameter);
        } else {
            canvas.circle("n sheet", at, diameter);
        }
    });
    let Some((part, y)) = rows(canvas).pop() else { return };
    let pivots: Vec<f64> =
        part.holes.iter().filter(|hole| hole.joint.is_some()).map(|hole| hole.along.to_mm()).collect();
    if let (Some(first), Some(last)) = (pivots.first(), pivots.last()) {
        canvas.level("pin to pin", DVec2::new(*first, y), DVec2::new(*last, y));
    }
}

/// The arms with a bushing in each pivot hole.
pub(super) fn bushed(canvas: &mut Canvas<'_>) {
    let running = &canvas.report.design.running;
    let wall = (running.bush - running.pin).to_mm();
    with_holes(canvas, |canvas, at, diameter, turns| {
        if turns {
            canvas.circle("w steel", at, diameter);
            if wall > 0.0 {
                canvas.draw("w sheet", Outline::Circle { centre: at, radius: (diameter - wall) / 2.0 });
            }
        }
    });
    for (part, y) in rows(canvas) {
        let place = DVec2::new(part.size[0].to_mm() * 0.27, y + part.size[1].to_mm() / 2.0);
        canvas.number(place, part);
    }
}
