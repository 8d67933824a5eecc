//! The arrows on a part: each with one end at its place, on the side that is free, and with its letter, name and figure.
use super::words::{direction, letter, name};
use crate::drawing::arrow::{SHORTEST_FORCE, force};
use crate::drawing::frame::Area;
use crate::drawing::lettering::{Lettering, text};
use crate::drawing::mark::{Anchor, Mark};
use crate::drawing::outline::{tidy, write};
use crate::drawing::plot::dot;
use crate::drawing::scale::{Scale, Screen};
use crate::mechanics::{Acting, FreeBody};
use crate::quantity::{System, figures};
use glam::DVec2;

/// Two arrows closer than this along their length run into each other, px.
const APART: f64 = 7.0;
/// Half the width of the strip along an arrow that lettering keeps off, px.
const SHAFT: f64 = 2.5;
/// Radius of a couple's arc, and by how much the next one at the same place is larger, px.
const ARC: (f64, f64) = (14.0, 6.0);
/// From an arrow's end to its words, px.
const OFF: [f64; 2] = [6.0, 15.0];
/// The dot of a force that is too small for an arrow, px.
const DOT: f64 = 2.5;

/// How the forces of a part are put on paper.
pub(super) struct Paper<'a> {
    pub(super) scale: Scale,
    /// Height of the lower fixed pivots above the floor, mm.
    pub(super) pin_line: f64,
    /// Pixels a newton.
    pub(super) per_newton: f64,
    pub(super) system: System,
    /// Where arrows and words have room.
    pub(super) room: Area,
    /// The middle of the part, px.
    pub(super) middle: Screen,
    /// Half the width of an arm, which words keep off where they can, px; none for other parts.
    pub(super) half_width: Option<f64>,
    pub(super) body: &'a FreeBody,
}

/// A force before it is lettered.
struct Placed {
    /// Where it acts and where its other end is, px.
    at: Screen,
    end: Screen,
    tail: Screen,
    tip: Screen,
}

impl Paper<'_> {
    fn place(&self, at: DVec2) -> Screen {
        self.scale.to_screen((at * 1e3 + DVec2::new(0.0, self.pin_line)).into())
    }

    /// The forces as drawn: shafts, heads, arcs and dots, and over them the words.
    pub(super) fn marks(&self, lettering: &mut Lettering<'_>) -> Vec<Mark> {
        if let Some(half) = self.half_width {
            let lower = self.place(self.body.about);
            let upper = Screen::from(2.0 * self.middle.vector() - lower.vector());
            lettering.shun(lower, upper, half);
        }
        let mut placed: Vec<Placed> = Vec::new();
        // The longest find their side first.
        let mut order: Vec<usize> = (0..self.body.acting.len()).collect();
        let size = |index: &usize| self.body.acting.get(*index).map_or(0.0, |one| one.force.length());
        order.sort_by(|one, other| size(other).total_cmp(&size(one)));
        let mut arrows: Vec<(usize, Placed)> = Vec::new();
        for index in order {
            let Some(one) = self.body.acting.get(index) else { continue };
            let arrow = self.arrow(one, &placed);
            placed.push(Placed { ..arrow });
            arrows.push((index, arrow));
        }
        arrows.sort_by_key(|(index, _)| *index);
        let mut marks = Vec::new();
        let mut arcs: Vec<(Screen, f64)> = Vec::new();
        let mut forms: Vec<Vec<Mark>> = Vec::new();
        for ((_, arrow), (index, one)) in arrows.iter().zip(self.body.acting.iter().enumerate()) {
            let couple = one.force.length() <= 0.0;
            let radius = if couple { next_radius(&mut arcs, arrow.at) } else { 0.0 };
            if couple {
                marks.extend(arc(arrow.at, radius, one.couple));
                lettering.keep(Area {
                    x: arrow.at.x - radius,
                    y: arrow.at.y - radius,
                    width: 2.0 * radius,
                    height: 2.0 * radius,
                });
            } else {
                let [shaft, head] = force(arrow.tail, arrow.tip);
                if shaft.is_empty() {
                    marks.push(Mark::path("fh", dot(arrow.at, DOT)));
                } else {
                    lettering.shun(arrow.tail, arrow.tip, SHAFT);
                    marks.push(Mark::path("fl", shaft));
                    marks.push(Mark::path("fh", head));
                }
            }
            forms.push(self.forms(index, one, arrow, radius));
        }
        let room = self.room.grown(3.0);
        marks.extend(forms.into_iter().map(|mut forms| {
            // Words that run out of the part's own room only where nothing else is left.
            forms.sort_by_key(|form| !lettering.area(form).is_some_and(|area| room.holds(&area)));
            lettering.place(forms)
        }));
        marks
    }

    /// An arrow with its tail or its head at its place: outside the part where it can, and not on another arrow.
    fn arrow(&self, one: &Acting, others: &[Placed]) -> Placed {
        let at = self.place(one.at);
        let span = DVec2::new(one.force.x, -one.force.y) * self.per_newton;
        let away = at.vector() - self.middle.vector();
        let options = [1.0, -1.0].map(|sign| Screen::from(at.vector() + sign * span));
        let cost = |end: Screen| {
            let outside = !self.room.contains(end);
            let met = others.iter().filter(|other| meets([at, end], [other.at, other.end])).count();
            let inwards = (end.vector() - at.vector()).dot(away) < 0.0;
            f64::from(u8::from(outside)) * 100.0 + 10.0 * met as f64 + f64::from(u8::from(inwards))
        };
        let ahead = cost(options[0]) <= cost(options[1]);
        if ahead {
            Placed { at, end: options[0], tail: at, tip: options[0] }
        } else {
            Placed { at, end: options[1], tail: options[1], tip: at }
        }
    }

    /// Where the words of a force may stand, the best first: with name and figure, with the figure alone, as its letter at last.
    fn forms(&self, index: usize, one: &Acting, arrow: &Placed, radius: f64) -> Vec<Mark> {
        let letter = letter(index);
        let couple = one.force.length() <= 0.0;
        let figure = if couple {
            figures::torque(one.couple.abs(), self.system).to_string()
        } else {
            figures::small_force(one.force.length(), self.system).to_string()
        };
        let span = arrow.end.vector() - arrow.at.vector();
        let short = !couple && span.length() < SHORTEST_FORCE;
        let aim = if short { format!(" {}", direction(one.force)) } else { String::new() };
        let full = format!("{letter} {} {figure}{aim}", name(one.cause, self.body.part));
        let brief = format!("{letter} {figure}{aim}");
        let mut forms = Vec::new();
        for words in [&full, &brief, &letter] {
            let mut put = |at: Screen, anchor: Anchor| {
                if self.room.contains(at) {
                    forms.push(text("ft halo", at, anchor, words));
                }
            };
            if couple || short {
                let off = if couple { radius + 4.0 } else { 8.0 };
                for (right, down, anchor) in [
                    (off, 4.0, Anchor::Start),
                    (-off, 4.0, Anchor::End),
                    (0.0, -off - 3.0, Anchor::Middle),
                    (0.0, off + 11.0, Anchor::Middle),
                    (off, 18.0, Anchor::Start),
                    (off, -10.0, Anchor::Start),
                    (-off, 18.0, Anchor::End),
                    (-off, -10.0, Anchor::End),
                    (0.0, off + 25.0, Anchor::Middle),
                    (0.0, -off - 17.0, Anchor::Middle),
                    (0.0, off + 39.0, Anchor::Middle),
                    (0.0, -off - 31.0, Anchor::Middle),
                ] {
                    put(arrow.at.by(right, down), anchor);
                }
                continue;
            }
            let along = span.normalize_or(DVec2::X);
            let steep = along.y.abs() > 0.8;
            let (level, anchor) = match (steep, along.x > 0.0) {
                (true, _) => (if along.y > 0.0 { 8.0 } else { 0.0 }, Anchor::Middle),
                (false, true) => (4.0, Anchor::Start),
                (false, false) => (4.0, Anchor::End),
            };
            for off in OFF {
                let to = Screen::from(arrow.end.vector() + off * along);
                for down in [0.0, -13.0, 13.0] {
                    put(to.by(0.0, level + down), anchor);
                }
            }
            for part in [0.6, 0.85, 0.4] {
                let to = Screen::from(arrow.at.vector() + part * span);
                if steep {
                    put(to.by(8.0, 4.0), Anchor::Start);
                    put(to.by(-8.0, 4.0), Anchor::End);
                } else {
                    for down in [-8.0, 17.0, -21.0, 30.0] {
                        put(to.by(0.0, down), Anchor::Middle);
                    }
                }
            }
        }
        forms
    }

    /// A ring where moments are taken about.
    pub(super) fn pole(&self) -> Mark {
        Mark::circle("level none", self.place(self.body.about), 5.0)
    }
}

/// The radius of the next arc at a place.
fn next_radius(arcs: &mut Vec<(Screen, f64)>, at: Screen) -> f64 {
    let near = |other: &&(Screen, f64)| (other.0.vector() - at.vector()).length() < 1.0;
    let radius = arcs.iter().filter(near).map(|other| other.1 + ARC.1).fold(ARC.0, f64::max);
    arcs.push((at, radius));
    radius
}

/// Whether one arrow runs into another; that both begin at one pin is no harm.
fn meets(one: [Screen; 2], other: [Screen; 2]) -> bool {
    (2_u32..=8).any(|step| {
        let part = f64::from(step) / 8.0;
        let point = one[0].vector().lerp(one[1].vector(), part);
        let (from, span) = (other[0].vector(), other[1].vector() - other[0].vector());
        let along = ((point - from).dot(span) / span.length_squared().max(1e-9)).clamp(0.0, 1.0);
        (point - (from + along * span)).length() < APART
    })
}

/// Three quarters of a circle around a place with a head, counter-clockwise for a positive couple.
fn arc(at: Screen, radius: f64, couple: f64) -> [Mark; 2] {
    let left = couple > 0.0;
    let side = if left { 1.0 } else { -1.0 };
    // From below, around, to the side: three quarters of a turn.
    let (from, to) = (at.by(0.0, side * radius), at.by(-radius, 0.0));
    let from = if left { at.by(0.0, radius) } else { from };
    let mut d = String::new();
    write(
        &mut d,
        format_args!(
            "M{} {}A{radius} {radius} 0 1 {} {} {}",
            tidy(from.x),
            tidy(from.y),
            u8::from(!left),
            tidy(to.x),
            tidy(to.y)
        ),
    );
    // At its left end the arc runs down when it turns counter-clockwise as seen.
    let tip = to.by(0.0, side * 5.0);
    let mut head = String::new();
    write(
        &mut head,
        format_args!(
            "M{} {}L{} {}L{} {}Z",
            tidy(tip.x),
            tidy(tip.y),
            tidy(to.x - 3.0),
            tidy(to.y - side * 2.0),
            tidy(to.x + 3.0),
            tidy(to.y - side * 2.0)
        ),
    );
    [Mark::path("couple", d), Mark::path("fh", head)]
}
