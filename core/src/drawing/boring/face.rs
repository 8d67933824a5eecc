//! The face of a part: outline, recesses, holes with their centre marks, in the line types of a shop drawing.
use crate::drawing::mark::Mark;
use crate::drawing::outline::{Outline, Segment};
use crate::drawing::scale::{Model, Scale};
use crate::parts::{Corner, Form, Housing, Part, Purpose};
use crate::quantity::Length;
use glam::DVec2;

/// How far a centre mark reaches past its hole, px.
const PAST: f64 = 4.0;

/// Which way a part lies on paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Lie {
    /// Pixels a millimetre and where the datum corner lies.
    pub scale: Scale,
    /// Whether its length runs up the paper; its datum edge then stands at the right.
    pub upright: bool,
}

impl Lie {
    /// A place on the part, mm from datum end and datum edge, as it is turned on paper.
    pub(super) const fn turned(&self, [along, across]: [f64; 2]) -> [f64; 2] {
        if self.upright { [-across, along] } else { [along, across] }
    }

    /// The same on paper, px.
    pub(super) fn at(&self, place: [f64; 2]) -> crate::drawing::Screen {
        let [x, y] = self.turned(place);
        self.scale.to_screen(Model::new(x, y))
    }

    fn draw(&self, class: &'static str, outline: &Outline) -> Mark {
        Mark::path(class, outline.notation(&self.scale))
    }

    fn point(&self, place: [f64; 2]) -> DVec2 {
        DVec2::from(self.turned(place))
    }
}

/// The corners of an outline on paper.
fn closed(lie: &Lie, corners: &[Corner]) -> Outline {
    let next = |at: usize| corners[(at + 1) % corners.len()];
    let segments = corners.iter().enumerate().map(|(at, corner)| {
        let to = lie.point([next(at).x, next(at).y]);
        match corner.radius(&next(at)) {
            Some(radius) => Segment::Arc { to, radius, left: corner.bulge > 0.0, large: false },
            None => Segment::Line(to),
        }
    });
    let start = corners.first().map_or(DVec2::ZERO, |corner| lie.point([corner.x, corner.y]));
    Outline::Run { start, segments: segments.collect(), closed: true }
}

/// The corners of a recess, mm, made longer across the part by so much at either side.
fn recess(cut: &Housing, more: f64) -> [[f64; 2]; 4] {
    let [x, y] = [cut.along, cut.across].map(|place| place.to_mm());
    let [half, high] = [cut.length, cut.width].map(|side| side.to_mm() / 2.0);
    let high = high + more;
    [[x - half, y - high], [x + half, y - high], [x + half, y + high], [x - half, y + high]]
}

/// A recess right through: where it reaches the edge it is open there.
fn notch(part: &Part, lie: &Lie, cut: &Housing) -> Vec<Mark> {
    // Wide enough to cover the line of the edge.
    let more = 2.0 / lie.scale.per_mm;
    let [low, right, high, left] = recess(cut, 0.0).map(|corner| lie.point(corner));
    let half = Length::from_steps(cut.width.steps() / 2);
    let at_edge = [cut.across - half <= Length::ZERO, cut.across + half >= part.size[1]];
    let sides: &[DVec2] = match at_edge {
        [true, false] => &[low, left, high, right],
        [false, true] => &[left, low, right, high],
        _ => return vec![lie.draw("w sheet", &Outline::polygon(&[low, right, high, left]))],
    };
    let beyond = recess(cut, more);
    let own = recess(cut, 0.0);
    // Beyond the edge only.
    let cover = if at_edge[0] {
        [beyond[0], beyond[1], own[2], own[3]]
    } else {
        [own[0], own[1], beyond[2], beyond[3]]
    };
    let segments = sides[1..].iter().map(|corner| Segment::Line(*corner)).collect();
    vec![
        lie.draw("sheet", &Outline::polygon(&cover.map(|corner| lie.point(corner)))),
        lie.draw("w", &Outline::Run { start: sides[0], segments, closed: false }),
    ]
}

/// Everything of the part that is drawn, in painter's order.
pub(super) fn face(part: &Part, lie: &Lie) -> Vec<Mark> {
    let wood = matches!(part.form, Form::Sheet | Form::Batten);
    let mut marks = vec![lie.draw(if wood { "w ply" } else { "w steel" }, &closed(lie, &part.outline()))];
    for cut in &part.housings {
        if cut.depth < part.size[2] {
            marks.push(
                lie.draw("w far", &Outline::polygon(&recess(cut, 0.0).map(|corner| lie.point(corner)))),
            );
        } else {
            marks.extend(notch(part, lie, cut));
        }
    }
    if let Some(axis) = axis(part) {
        let ends = [[-6.0 / lie.scale.per_mm, axis], [part.size[0].to_mm() + 6.0 / lie.scale.per_mm, axis]];
        marks.push(lie.draw("cl", &Outline::line(lie.point(ends[0]), lie.point(ends[1]))));
    }
    // Screw heads go in from the face that is not recessed.
    let sunk = if part.housings.is_empty() { "n none" } else { "hid" };
    for hole in &part.holes {
        let at = [hole.along.to_mm(), hole.across.to_mm()];
        let radius = hole.diameter.to_mm() / 2.0;
        let circle = |radius| Outline::Circle { centre: lie.point(at), radius };
        marks.push(lie.draw("w sheet", &circle(radius)));
        if hole.purpose == Purpose::Countersunk {
            marks.push(lie.draw(sunk, &circle(2.0 * radius)));
        }
        let reach = radius + PAST / lie.scale.per_mm;
        for [dx, dy] in [[reach, 0.0], [0.0, reach]] {
            let ends = [[at[0] - dx, at[1] - dy], [at[0] + dx, at[1] + dy]];
            marks.push(lie.draw("cm none", &Outline::line(lie.point(ends[0]), lie.point(ends[1]))));
        }
    }
    marks
}

/// How far from the datum edge the one line runs that all holes of a long part lie on, mm.
fn axis(part: &Part) -> Option<f64> {
    let across = part.holes.first()?.across;
    let one = part.holes.len() > 1 && part.holes.iter().all(|hole| hole.across == across);
    one.then(|| across.to_mm())
}
