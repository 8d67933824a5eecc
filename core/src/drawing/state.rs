//! State marks: the shape says how bad, the number ties finding, drawing and plot together.
use super::elevation::Subject;
use super::frame::Area;
use super::lettering::Lettering;
use super::mark::{Anchor, Mark};
use super::outline::{tidy, write};
use super::scale::{Scale, Screen};
use crate::mechanics::JointId;
use crate::report::{Finding, Grade, Spot};
use glam::DVec2;

/// Half the width of a mark, px.
const HALF: f64 = 9.5;
/// With more findings than this, those that are fine stay off the drawing.
const MANY: usize = 6;
/// Only so many of the worst findings are marked on the drawing: more would hide it.
const MOST: usize = 9;

/// Outline and number of a mark; empty when it is not shown.
fn mark(grade: Grade, at: Option<Screen>, number: usize) -> [Mark; 2] {
    sign(grade, at, &number.to_string())
}

/// Outline and lettering of a mark; empty when it is not shown.
pub(super) fn sign(grade: Grade, at: Option<Screen>, words: &str) -> [Mark; 2] {
    let (class, numbered, drop) = match grade {
        Grade::Over => ("mk over", "mt inv", 5.0),
        Grade::Watch => ("mk watch", "mt", 3.7),
        Grade::Fine => ("mk fine", "mt", 3.7),
    };
    let Some(at) = at else {
        return [
            Mark::path(class, String::new()),
            Mark::text(numbered, Screen::default(), Anchor::Middle, ""),
        ];
    };
    let corners: &[(f64, f64)] = match grade {
        Grade::Over => &[(0.0, -9.8), (9.4, 6.4), (-9.4, 6.4)],
        Grade::Watch => &[(0.0, -9.2), (9.2, 0.0), (0.0, 9.2), (-9.2, 0.0)],
        Grade::Fine => &[],
    };
    let mut d = String::new();
    for (index, (right, down)) in corners.iter().enumerate() {
        let command = if index == 0 { 'M' } else { 'L' };
        write(&mut d, format_args!("{command}{} {}", tidy(at.x + right), tidy(at.y + down)));
    }
    if corners.is_empty() {
        d = super::plot::dot(at, 7.4);
    } else {
        d.push('Z');
    }
    [Mark::path(class, d), Mark::text(numbered, at.by(0.0, drop), Anchor::Middle, words)]
}

/// The room a mark takes.
pub(super) fn around(at: Screen) -> Area {
    Area { x: at.x - HALF, y: at.y - HALF, width: 2.0 * HALF, height: 2.0 * HALF }
}

/// A mark on a curve, exactly where it happens; lettering keeps off it.
pub(super) fn on_curve(lettering: &mut Lettering<'_>, grade: Grade, at: Screen, number: usize) -> [Mark; 2] {
    lettering.keep(around(at));
    mark(grade, Some(at), number)
}

/// The marks on the drawing, each near its place where there is room, in the order of the findings.
pub(super) fn on_drawing(
    lettering: &mut Lettering<'_>,
    findings: &[Finding],
    subject: &Subject<'_>,
    scale: &Scale,
) -> Vec<Mark> {
    findings
        .iter()
        .enumerate()
        .flat_map(|(index, finding)| {
            let wanted = index < MOST && (finding.grade != Grade::Fine || findings.len() <= MANY);
            let free = wanted
                .then(|| places(finding.spot, subject, scale))
                .and_then(|places| places.into_iter().find(|place| lettering.is_free(&around(*place))));
            if let Some(at) = free {
                lettering.keep(around(at));
            }
            mark(finding.grade, free, index + 1)
        })
        .collect()
}

/// Places around a spot, the best first.
fn places(spot: Spot, subject: &Subject<'_>, scale: &Scale) -> Vec<Screen> {
    let design = subject.design;
    let caster = |x: f64| DVec2::new(x, design.running.caster_wheel.to_mm() / 2.0);
    let (at, steps): (DVec2, &[(f64, f64)]) = match spot {
        Spot::Crank => {
            (subject.handle(), &[(0.0, -22.0), (0.0, 24.0), (-30.0, 0.0), (22.0, -22.0), (-22.0, -22.0)])
        }
        Spot::Screw => {
            let [seat, bearing] = subject.thrust();
            (
                (seat + bearing) / 2.0,
                &[(0.0, -24.0), (-24.0, -24.0), (24.0, -24.0), (0.0, 26.0), (-48.0, -24.0)],
            )
        }
        Spot::BaseWheel => (subject.carriage(), &[(32.0, -16.0), (32.0, 8.0), (30.0, -38.0), (54.0, -16.0)]),
        Spot::DeckWheel => {
            (subject.joint(JointId::Tr), &[(32.0, 18.0), (32.0, 40.0), (54.0, 18.0), (-32.0, 22.0)])
        }
        Spot::BasePivot => (subject.joint(JointId::Bl), &[(-32.0, -22.0), (-32.0, -44.0), (-54.0, -22.0)]),
        Spot::DeckPivot => (subject.joint(JointId::Tl), &[(-34.0, 20.0), (-34.0, 42.0), (-56.0, 20.0)]),
        Spot::LeftCaster => (
            caster(design.running.caster_left.to_mm()),
            &[(-32.0, 0.0), (-54.0, 0.0), (-32.0, -22.0), (32.0, 0.0)],
        ),
        Spot::RightCaster => (
            caster(design.running.caster_right.to_mm()),
            &[(32.0, 0.0), (54.0, 0.0), (32.0, -22.0), (-32.0, 0.0)],
        ),
        Spot::Arms => (
            subject.joint(JointId::C(subject.pose.n.div_ceil(2))),
            &[(-30.0, 0.0), (30.0, 0.0), (0.0, -30.0), (0.0, 30.0), (-52.0, 0.0), (52.0, 0.0)],
        ),
        Spot::Deck => (
            subject.deck_left(),
            &[(-18.0, 16.0), (-40.0, 16.0), (-18.0, -16.0), (-18.0, 38.0), (-40.0, -16.0)],
        ),
        Spot::Base => (
            DVec2::new(
                design.frames.base_left.to_mm() + design.frames.base_length.to_mm(),
                design.running.caster_height.to_mm(),
            ),
            &[(18.0, -6.0), (18.0, -28.0), (40.0, -6.0), (40.0, -28.0)],
        ),
    };
    let middle = scale.to_screen(at.into());
    steps.iter().map(|(right, down)| middle.by(*right, *down)).collect()
}
