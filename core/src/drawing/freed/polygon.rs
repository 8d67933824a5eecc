//! The forces of a part head to tail, in the order of their directions: a closed polygon without crossings where they are in equilibrium.
use super::words::letter;
use crate::drawing::arrow::force;
use crate::drawing::frame::Area;
use crate::drawing::lettering::{Lettering, text};
use crate::drawing::mark::{Anchor, Mark};
use crate::drawing::outline::{tidy, write};
use crate::drawing::plot::dot;
use crate::drawing::scale::Screen;
use crate::mechanics::FreeBody;
use crate::quantity::{System, figures};
use glam::DVec2;

/// A polygon thinner than this is drawn as two runs side by side, this far apart, px.
const THIN: f64 = 12.0;
/// Half the width of the strip along an arrow that lettering keeps off, px.
const SHAFT: f64 = 2.0;

/// The polygon of a part's forces, px, y down, from its first corner.
pub(super) struct Polygon {
    /// Place of each force in the list, where its arrow begins and where it ends.
    sides: Vec<(usize, DVec2, DVec2)>,
    /// Whether the sides that run back are drawn beside the others.
    apart: bool,
}

impl Polygon {
    /// Of the forces that are not couples, at so many px a newton.
    pub(super) fn of(body: &FreeBody, per_newton: f64) -> Self {
        let mut forces: Vec<(usize, DVec2)> = body
            .acting
            .iter()
            .enumerate()
            .filter(|(_, one)| one.force.length() > 0.0)
            .map(|(index, one)| (index, one.force))
            .collect();
        forces.sort_by(|one, other| {
            libm::atan2(one.1.y, one.1.x).total_cmp(&libm::atan2(other.1.y, other.1.x))
        });
        let main = forces
            .iter()
            .map(|(_, force)| *force)
            .fold(DVec2::X, |most, force| if force.length() > most.length() { force } else { most })
            .normalize_or(DVec2::X);
        let mut at = DVec2::ZERO;
        let mut sides = Vec::with_capacity(forces.len());
        let (mut least, mut most) = (0.0_f64, 0.0_f64);
        for (index, force) in &forces {
            let next = at + *force * per_newton;
            sides.push((*index, at, next));
            at = next;
            (least, most) = (least.min(main.perp_dot(at)), most.max(main.perp_dot(at)));
        }
        let apart = most - least < THIN && sides.len() > 1;
        // Counter-clockwise the inside lies to the left: what runs back is moved that way.
        let shift = if apart { main.perp() * (THIN + 2.0 - (most - least)) } else { DVec2::ZERO };
        for ((_, from, to), (_, force)) in sides.iter_mut().zip(&forces) {
            if force.dot(main) < 0.0 {
                (*from, *to) = (*from + shift, *to + shift);
            }
            (from.y, to.y) = (-from.y, -to.y);
        }
        Self { sides, apart }
    }

    fn corners(&self) -> impl Iterator<Item = DVec2> {
        self.sides.iter().flat_map(|(_, from, to)| [*from, *to])
    }

    /// Its upper left and its lower right corner; none without forces.
    fn bounds(&self) -> Option<[DVec2; 2]> {
        self.corners().fold(None, |bounds: Option<[DVec2; 2]>, point| {
            let [least, most] = bounds.unwrap_or([point, point]);
            Some([least.min(point), most.max(point)])
        })
    }

    /// Its width and height, px.
    pub(super) fn size(&self) -> DVec2 {
        self.bounds().map_or(DVec2::ZERO, |[least, most]| most - least)
    }

    /// The polygon in the middle of a room, with letters and figures.
    pub(super) fn marks(
        &self,
        body: &FreeBody,
        system: System,
        room: &Area,
        lettering: &mut Lettering<'_>,
    ) -> Vec<Mark> {
        let Some([least, most]) = self.bounds() else { return Vec::new() };
        let middle = DVec2::new(room.x + room.width / 2.0, room.y + room.height / 2.0);
        let shift = middle - (least + most) / 2.0;
        let centre = self.corners().sum::<DVec2>() / (2.0 * self.sides.len() as f64) + shift;
        let (mut marks, mut words) = (Vec::new(), Vec::new());
        let mut joints = String::new();
        for (place, (index, from, to)) in self.sides.iter().enumerate() {
            let (from, to) = (Screen::from(*from + shift), Screen::from(*to + shift));
            let next = self.sides[(place + 1) % self.sides.len()].1 + shift;
            if (next - to.vector()).length() > 1.0 {
                let ends = [to.x, to.y, next.x, next.y].map(tidy);
                write(&mut joints, format_args!("M{} {}L{} {}", ends[0], ends[1], ends[2], ends[3]));
            }
            let [shaft, head] = force(from, to);
            if shaft.is_empty() {
                marks.push(Mark::line("fl", from, to));
            } else {
                lettering.shun(from, to, SHAFT);
                marks.extend([Mark::path("fl", shaft), Mark::path("fh", head)]);
            }
            marks.push(Mark::path("fh", dot(from, 1.8)));
            let force = body.acting.get(*index).map_or(DVec2::ZERO, |one| one.force);
            words.push((*index, from, to, force));
        }
        marks.push(Mark::path("hid", joints));
        for (index, from, to, force) in words {
            let figure = figures::small_force(force.length(), system);
            let full = format!("{} {figure}", letter(index));
            marks.push(lettering.place(forms(from, to, centre, [&full, &letter(index)])));
        }
        marks
    }

    /// What must be said of the way it is drawn.
    pub(super) const fn note(&self) -> &'static str {
        if self.apart { "to and fro drawn side by side" } else { "in the order of their directions" }
    }
}

/// Where the words of a side may stand: outside the polygon first.
fn forms(from: Screen, to: Screen, centre: DVec2, words: [&str; 2]) -> Vec<Mark> {
    let span = to.vector() - from.vector();
    let normal = span.perp().normalize_or(DVec2::NEG_Y);
    let middle = (from.vector() + to.vector()) / 2.0;
    let outwards = if normal.dot(middle - centre) < 0.0 { -normal } else { normal };
    let mut forms = Vec::new();
    for words in words {
        for part in [0.5, 0.3, 0.7] {
            for (side, off) in [(1.0, 9.0), (1.0, 17.0), (-1.0, 9.0), (1.0, 27.0), (1.0, 38.0)] {
                let out = side * outwards;
                let at = Screen::from(from.vector() + part * span + off * out);
                let anchor = if out.x > 0.4 {
                    Anchor::Start
                } else if out.x < -0.4 {
                    Anchor::End
                } else {
                    Anchor::Middle
                };
                let level = if out.y > 0.4 {
                    8.0
                } else if out.y < -0.4 {
                    0.0
                } else {
                    4.0
                };
                forms.push(text("ft halo", at.by(0.0, level), anchor, words));
            }
        }
        // A short side has little room along it: then all around.
        for (right, down, anchor) in [
            (12.0, 18.0, Anchor::Start),
            (-12.0, 18.0, Anchor::End),
            (12.0, -12.0, Anchor::Start),
            (-12.0, -12.0, Anchor::End),
            (18.0, 4.0, Anchor::Start),
            (-18.0, 4.0, Anchor::End),
        ] {
            forms.push(text("ft halo", Screen::from(middle).by(right, down), anchor, words));
        }
    }
    forms
}
