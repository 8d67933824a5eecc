//! Casters, planks, beams and pivot cheeks of the base, and the rail its wheels run in.
use super::{FLOOR, Subject, line, stroke};
use crate::design::Design;
use crate::drawing::outline::{Outline, Segment, Stroke};
use glam::DVec2;

/// Sizes of a caster that a design does not state, as parts of its wheel: the fork at the plate and at the axle, the
/// rim inside the tyre, the axle, and the plate with its thickness.
pub(in crate::drawing) const FORK_WIDE: f64 = 0.46;
pub(in crate::drawing) const FORK_NARROW: f64 = 0.14;
pub(in crate::drawing) const RIM: f64 = 0.36;
pub(in crate::drawing) const AXLE: f64 = 0.09;
pub(in crate::drawing) const PLATE: f64 = 0.6;
pub(in crate::drawing) const PLATE_THICK: f64 = 0.09;

/// The two visible casters with their wheels on the floor.
pub(super) fn casters(design: &Design) -> Vec<Stroke> {
    let running = &design.running;
    [running.caster_left, running.caster_right]
        .into_iter()
        .flat_map(|place| caster(design, place.to_mm()))
        .collect()
}

/// A caster at a place along the base, mm.
pub(in crate::drawing) fn caster(design: &Design, x: f64) -> [Stroke; 5] {
    let wheel = design.running.caster_wheel.to_mm();
    let top = design.running.caster_height.to_mm();
    let radius = wheel / 2.0;
    let middle = DVec2::new(x, radius);
    let circle = |class, radius| stroke(class, Outline::Circle { centre: middle, radius });
    let plate = top - PLATE_THICK * wheel;
    let (wide, narrow) = (FORK_WIDE * wheel, FORK_NARROW * wheel);
    let fork = Outline::Run {
        start: DVec2::new(x - wide, plate),
        segments: vec![
            Segment::Line(DVec2::new(x - narrow, radius)),
            Segment::Arc { to: DVec2::new(x + narrow, radius), radius: narrow, left: true, large: false },
            Segment::Line(DVec2::new(x + wide, plate)),
        ],
        closed: true,
    };
    let half = PLATE * wheel;
    [
        circle("w sheet", radius),
        circle("n none", RIM * wheel),
        stroke("w steel", fork),
        circle("n steel", AXLE * wheel),
        stroke("w steel", FLOOR.block([x - half, x + half], [plate, top])),
    ]
}

/// The base beam.
pub(super) fn beam(design: &Design) -> Outline {
    let frames = &design.frames;
    let left = frames.base_left.to_mm();
    let bottom = design.running.caster_height.to_mm();
    FLOOR.block([left, left + frames.base_length.to_mm()], [bottom, bottom + frames.beam_depth.to_mm()])
}

/// The cheek that holds the lower fixed pivot.
pub(super) fn cheeks(subject: &Subject<'_>) -> Vec<Stroke> {
    let design = subject.design;
    let wide = design.arms.end.to_mm();
    let top = design.lift.pin_line.to_mm() + 2.0 * design.running.pin.to_mm();
    let bottom = design.running.caster_height.to_mm();
    let round = (design.running.pin.to_mm() * 1.5).min(wide).min((top - bottom).max(0.0) / 2.0);
    let upright = super::Axes { origin: DVec2::new(0.0, bottom), along: DVec2::Y };
    vec![stroke("w ply", upright.rounded([0.0, (top - bottom).max(0.0)], [-wide, wide], [0.0, round]))]
}

/// Beam, planks, strip and the rail around the wheel's run.
pub(super) fn beams(subject: &Subject<'_>) -> Vec<Stroke> {
    let (frames, running) = (&subject.design.frames, &subject.design.running);
    let bottom = running.caster_height.to_mm();
    let top = bottom + frames.beam_depth.to_mm();
    let (left, right) = (frames.base_left.to_mm(), frames.base_left.to_mm() + frames.base_length.to_mm());
    let mut strokes = vec![stroke("w ply", beam(subject.design))];
    let layer = subject.design.arms.thickness.to_mm();
    let layers = frames.layers.get().clamp(1, 4);
    let thick = (layer * layers as f64).min(frames.beam_depth.to_mm());
    for place in [running.caster_left, running.caster_right] {
        let half = frames.plank_width.to_mm() / 2.0;
        let ends = [place.to_mm() - half, place.to_mm() + half];
        strokes.push(stroke("w ply", FLOOR.block(ends, [bottom, bottom + thick])));
        for joint in 1..layers {
            let y = bottom + (layer * joint as f64).min(thick);
            strokes.push(line("glue", DVec2::new(ends[0], y), DVec2::new(ends[1], y)));
        }
    }
    let strip = frames.strip_thickness.to_mm();
    let wheel = running.wheel.to_mm() / 2.0;
    let axle = subject.carriage().y;
    strokes.push(line("w", DVec2::new(left, top + strip / 2.0), DVec2::new(right, top + strip / 2.0)));
    let keeper = axle + wheel + running.rail_gap.to_mm() + strip / 2.0;
    let ends = [subject.runs[0][0] - wheel * 1.4, subject.runs[0][1] + wheel * 1.4];
    strokes.push(rail(FLOOR, ends, [top + strip, keeper]));
    strokes
}

/// The rail that holds a wheel down: the line above its run and the two end stops.
pub(super) fn rail(axes: super::Axes, ends: [f64; 2], heights: [f64; 2]) -> Stroke {
    stroke(
        "w none",
        Outline::Run {
            start: axes.point(ends[0], heights[0]),
            segments: vec![
                Segment::Line(axes.point(ends[0], heights[1])),
                Segment::Line(axes.point(ends[1], heights[1])),
                Segment::Line(axes.point(ends[1], heights[0])),
            ],
            closed: false,
        },
    )
}

/// The middle of a base beam, mm.
pub(super) fn beam_middle(design: &Design) -> DVec2 {
    let (frames, running) = (&design.frames, &design.running);
    DVec2::new(
        frames.base_left.to_mm() + frames.base_length.to_mm() / 2.0,
        running.caster_height.to_mm() + frames.beam_depth.to_mm() / 2.0,
    )
}
