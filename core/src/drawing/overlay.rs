//! What can be laid over the elevation: bending along the arms, and the shape under load larger than life.
use super::elevation::Subject;
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Mark};
use super::outline::{tidy, write};
use super::scale::{Screen, crisp};
use super::sheet::Sheet;
use crate::mechanics::{ArmId, Diagram};
use crate::quantity::figures;
use crate::report::{Report, Station};
use glam::DVec2;

/// The largest bending moment anywhere in the lift is drawn this far from its arm's axis, px.
const MOMENT: f64 = 34.0;
/// Pieces into which an arm is cut to draw a curve along it.
const PIECES: u32 = 24;
/// The largest sag anywhere in the lift is drawn at most so large, px.
const SAG: f64 = 40.0;
/// Factors by which a bent shape is drawn larger than life.
const FACTORS: [u16; 9] = [1, 2, 5, 10, 20, 50, 100, 200, 500];

/// Scales of what is laid over the elevation, the same at all heights.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Overlay {
    /// Pixels for a bending moment of 1 N m.
    per_moment: f64,
    /// How many times larger than life the bent shape is drawn.
    pub(super) factor: u16,
}

impl Overlay {
    pub(super) fn new(report: &Report, per_mm: f64) -> Self {
        let moment = report.greatest(largest_moment).0;
        let sag = report.greatest(|station| station.sag().total().abs()).0 * 1e3 * per_mm;
        let fits = |factor: &u16| f64::from(*factor) * sag <= SAG;
        Self {
            per_moment: if moment > 0.0 && moment.is_finite() { MOMENT / moment } else { 0.0 },
            factor: FACTORS.into_iter().rev().find(fits).unwrap_or(1),
        }
    }
}

fn largest_moment(station: &Station) -> f64 {
    let sections = station.state.sections.iter().flatten();
    sections.map(|arm| arm.moment.abs()).fold(0.0, f64::max)
}

impl Sheet {
    /// Bending along every arm, drawn on the side that is pulled, with the largest moment's figure.
    pub(super) fn bending(
        &self,
        lettering: &mut Lettering<'_>,
        report: &Report,
        subject: &Subject<'_>,
        station: &Station,
    ) -> Vec<Mark> {
        let diagrams = report.diagrams(station);
        let mut marks = Vec::new();
        let mut worst: Option<(f64, DVec2, DVec2)> = None;
        for arm in ArmId::all(subject.pose.n) {
            let frame = subject.pose.arm(arm);
            let across = frame.across();
            let axis = |s: f64| subject.place(frame.origin + s * frame.along);
            let mut d = String::new();
            if let Some(diagram) = diagrams.get(arm.index()) {
                let length = subject.pose.arm_length;
                let mut corner = |at: DVec2, shift: DVec2| {
                    let point = self.plan.scale.to_screen(at.into());
                    let command = if d.is_empty() { 'M' } else { 'L' };
                    write(
                        &mut d,
                        format_args!("{command}{} {}", tidy(point.x + shift.x), tidy(point.y - shift.y)),
                    );
                };
                corner(axis(0.0), DVec2::ZERO);
                for (s, moment) in moments(diagram) {
                    // A positive moment pulls the right-hand side of an arm that runs upwards.
                    let shift = -moment * self.overlay.per_moment * across;
                    corner(axis(s), shift);
                    if worst.is_none_or(|(most, ..)| moment.abs() > most) {
                        worst = Some((moment.abs(), axis(s), shift));
                    }
                }
                corner(axis(length), DVec2::ZERO);
                d.push('Z');
            }
            marks.push(Mark::path("bend", d));
        }
        let figure = worst.map_or_else(
            || text("ft halo", Screen::default(), Anchor::Start, ""),
            |(moment, at, shift)| {
                let words = figures::torque(moment, self.view.system).to_string();
                let tip = self.plan.scale.to_screen(at.into()).by(shift.x, -shift.y);
                lettering.place(
                    [
                        (6.0, 4.0, Anchor::Start),
                        (-6.0, 4.0, Anchor::End),
                        (0.0, -8.0, Anchor::Middle),
                        (0.0, 16.0, Anchor::Middle),
                    ]
                    .map(|(right, down, anchor)| text("ft halo", tip.by(right, down), anchor, &words)),
                )
            },
        );
        marks.push(figure);
        marks
    }

    /// Axes of the arms, deck and base where the live load takes them, larger than life.
    pub(super) fn bent(&self, subject: &Subject<'_>, station: &Station) -> Vec<Mark> {
        let factor = f64::from(self.overlay.factor) * 1e3;
        let Some(bent) = &station.state.shape else {
            return (0..2 * subject.pose.n + 2).map(|_| Mark::path("bent", String::new())).collect();
        };
        let run = |place: &dyn Fn(f64) -> (DVec2, DVec2)| {
            let mut d = String::new();
            for piece in 0..=PIECES {
                let (at, moved) = place(f64::from(piece) / f64::from(PIECES));
                let point = self.plan.scale.to_screen((at + factor * moved).into());
                let command = if piece == 0 { 'M' } else { 'L' };
                write(&mut d, format_args!("{command}{} {}", tidy(point.x), tidy(point.y)));
            }
            Mark::path("bent", d)
        };
        let mut marks: Vec<Mark> = ArmId::all(subject.pose.n)
            .map(|arm| {
                let frame = subject.pose.arm(arm);
                run(&|part| {
                    let at = frame.origin + part * subject.pose.arm_length * frame.along;
                    (subject.place(at), bent.arm(arm, part))
                })
            })
            .collect();
        let frames = &subject.design.frames;
        let stack = subject.design.lift.deck_stack.to_m();
        let along = |left: f64, length: f64, part: f64| left + part * length;
        marks.push(run(&|part| {
            let local = DVec2::new(along(frames.deck_left.to_m(), frames.deck_length.to_m(), part), stack);
            (subject.place(subject.pose.top.point(local)), bent.deck(local))
        }));
        let beam = (subject.design.running.caster_height + frames.beam_depth).to_m()
            - subject.design.lift.pin_line.to_m();
        marks.push(run(&|part| {
            let local = DVec2::new(along(frames.base_left.to_m(), frames.base_length.to_m(), part), beam);
            (subject.place(local), bent.base(local))
        }));
        marks
    }

    /// The note that says how many times larger than life the bent shape is, beneath the floor.
    pub(super) fn bent_note(&self, lettering: &mut Lettering<'_>) -> Mark {
        let words = format!("bent shape × {}", self.overlay.factor);
        let y = crisp(self.plan.scale.y(0.0)) + 27.0;
        let places = [150.0, 190.0, 240.0, 20.0, 300.0].map(|x| Screen::new(self.plan.columns[2] + x, y));
        lettering.place(places.map(|at| text("sag-t halo", at, Anchor::Start, &words)))
    }
}

/// Moments along a bar: place, m, and moment, N m; both sides of every load.
fn moments(diagram: &Diagram) -> Vec<(f64, f64)> {
    let mut along = Vec::new();
    for piece in &diagram.pieces {
        for step in 0..=PIECES / 2 {
            let s = piece.from + (piece.to - piece.from) * f64::from(step) / f64::from(PIECES / 2);
            along.push((s, piece.at(s).m));
        }
    }
    along
}
