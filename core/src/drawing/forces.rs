//! Forces on the drawing: arrows to one scale, tail or head at the pin, on whichever side is free.
use super::arrow::{SHORTEST_FORCE, force};
use super::elevation::Subject;
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Mark};
use super::scale::{Scale, Screen};
use crate::mechanics::JointId;
use crate::order::order;
use crate::quantity::{System, figures};
use crate::report::{Report, Station};
use glam::DVec2;

/// The longest arrow over the whole lift, px, and as a part of the drawing's width.
const LONGEST: (f64, f64) = (150.0, 0.4);
/// The arrow that shows the scale is at most so long, px.
const SCALE_ARROW: f64 = 34.0;
/// A force below this part of the largest at the same height has no figure: the arrow says enough. The second holds where there is
/// little room.
const WORTH_A_FIGURE: [f64; 2] = [0.1, 0.5];
/// Where beside an arrow its figure may stand, as parts of its length from the pin.
const BESIDE: [f64; 3] = [0.5, 0.75, 0.3];

/// Half the width of the strip along an arrow that lettering keeps off where it can, px.
const SHAFT: f64 = 2.0;
/// In SI, forces of a table with none larger than this are written in newtons, N.
const IN_NEWTONS: f64 = 1000.0;

/// The one scale of all force arrows of a drawing, and the one unit of their figures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct ForceScale {
    /// Pixels a newton.
    pub(super) per_newton: f64,
    /// Whether even the largest force of the lift is a small one.
    small: bool,
}

impl ForceScale {
    pub(super) fn new(report: &Report, width: f64) -> Self {
        let largest = report.greatest(|station| station.state.rest.largest()).0;
        let largest = if largest.is_finite() && largest > 0.0 { largest } else { 1.0 };
        Self { per_newton: LONGEST.0.min(LONGEST.1 * width) / largest, small: largest < IN_NEWTONS }
    }

    /// A force as it stands beside its arrow.
    fn words(&self, newtons: f64, system: System) -> String {
        let figure = if self.small && system == System::Metric {
            figures::small_force(newtons, system)
        } else {
            figures::drawn_force(newtons, system)
        };
        figure.to_string()
    }

    /// A round force whose arrow is easily seen, N, with its words.
    fn unit(&self, system: System) -> (f64, String) {
        let newtons = match system {
            System::Metric => 1.0,
            System::Inch => figures::NEWTON_IN_LBF.recip(),
        };
        let longest = SCALE_ARROW / self.per_newton / newtons;
        let power = libm::pow(10.0, libm::floor(libm::log10(longest)));
        let round = [5.0, 2.0]
            .into_iter()
            .map(|first| first * power)
            .find(|value| *value <= longest)
            .unwrap_or(power);
        let force = round * newtons;
        let words = match system {
            System::Metric if round < 1000.0 => figures::small_force(force, system).to_string(),
            System::Metric => format!("{}\u{A0}kN", round / 1000.0),
            System::Inch => figures::large_force(force, system).to_string(),
        };
        (force, words)
    }
}

/// Where forces are drawn.
pub(super) struct Field<'a> {
    pub(super) scale: &'a Scale,
    pub(super) forces: ForceScale,
    pub(super) system: System,
    /// From where to where arrows may run, px from the left edge.
    pub(super) room: [f64; 2],
    /// Whether there is little room for figures.
    pub(super) tight: bool,
}

/// An arrow with its figure before it has a place.
pub(super) struct Arrow {
    tail: Screen,
    tip: Screen,
    /// Shaft and head; both empty when the force is too small to be seen.
    parts: [String; 2],
    /// Where the figure may stand, the best place first; a single form without words where none is wanted.
    forms: Vec<Mark>,
}

impl Arrow {
    fn is_drawn(&self) -> bool {
        !self.parts[0].is_empty()
    }

    /// Leads later lettering off the arrow.
    pub(super) fn shunned(&self, lettering: &mut Lettering<'_>) {
        if self.is_drawn() {
            lettering.shun(self.tail, self.tip, SHAFT);
        }
    }

    /// Shaft and head.
    pub(super) fn bare(self) -> [Mark; 2] {
        let [shaft, head] = self.parts;
        [Mark::path("fl", shaft), Mark::path("fh", head)]
    }

    /// Shafts and heads of arrows, and over all of them their figures.
    pub(super) fn marks(arrows: Vec<Self>, lettering: &mut Lettering<'_>) -> Vec<Mark> {
        let (mut shafts, mut heads, mut figures) = (Vec::new(), Vec::new(), Vec::new());
        for mut arrow in arrows {
            figures.push(lettering.place(core::mem::take(&mut arrow.forms)));
            let [shaft, head] = arrow.bare();
            shafts.push(shaft);
            heads.push(head);
        }
        [shafts, heads, figures].concat()
    }
}

fn figure(at: Screen, anchor: Anchor, words: &str) -> Mark {
    text("ft halo", at, anchor, words)
}

impl Field<'_> {
    /// A force at a place, mm; `outward` says in which direction there is room, along x, and `largest` is the
    /// largest force at this height, N.
    fn arrow(&self, at: DVec2, newtons: DVec2, (outward, largest): (f64, f64)) -> Arrow {
        let pin = self.scale.to_screen(at.into());
        let span = DVec2::new(newtons.x, -newtons.y) * self.forces.per_newton;
        let free = |x: f64| (self.room[0]..=self.room[1]).contains(&x);
        let (ahead, behind) = (free(pin.x + span.x), free(pin.x - span.x));
        // The head stands at the pin where the arrow comes from outside, or where only that side has room.
        let inwards = behind && (!ahead || span.x * outward < -0.3 * span.length());
        let (tail, tip) = if inwards {
            (Screen::from(pin.vector() - span), pin)
        } else {
            (pin, Screen::from(pin.vector() + span))
        };
        let parts = force(tail, tip);
        let size = newtons.length();
        let drawn = !parts[0].is_empty() && size >= WORTH_A_FIGURE[usize::from(self.tight)] * largest;
        if !drawn {
            return Arrow { tail, tip, parts, forms: vec![figure(pin, Anchor::Start, "")] };
        }
        let words = self.forces.words(size, self.system);
        let end = if inwards { tail } else { tip };
        let along = (end.vector() - pin.vector()).try_normalize().unwrap_or(DVec2::X);
        let steep = along.y.abs() > 0.8;
        let (level, anchor) = match (steep, along) {
            (true, along) => (if along.y > 0.0 { 8.0 } else { 0.0 }, Anchor::Middle),
            (false, along) => (4.0, if along.x > 0.0 { Anchor::Start } else { Anchor::End }),
        };
        let beyond = [6.0, 14.0].into_iter().flat_map(|off| {
            let to = Screen::from(end.vector() + off * along);
            [0.0, -12.0, 12.0].map(|down| figure(to.by(0.0, level + down), anchor, &words))
        });
        let beside = BESIDE.into_iter().flat_map(|part| {
            let at = Screen::from(pin.vector() + part * (end.vector() - pin.vector()));
            if steep {
                [(8.0, Anchor::Start), (-8.0, Anchor::End)]
                    .map(|(right, anchor)| figure(at.by(right, 4.0), anchor, &words))
            } else {
                [-7.0, 15.0].map(|down| figure(at.by(0.0, down), Anchor::Middle, &words))
            }
        });
        let forms = beyond.chain(beside).collect();
        Arrow { tail, tip, parts, forms }
    }

    /// The forces of all pivots and wheels, on the body above.
    pub(super) fn joints(&self, subject: &Subject<'_>, station: &Station) -> Vec<Arrow> {
        let rest = &station.state.rest;
        let middle = subject.place(subject.pose.top.origin).x * 0.5 + subject.carriage().x * 0.5;
        let mut joints: Vec<JointId> = JointId::all(subject.pose.n)
            .filter(|joint| !matches!(joint, JointId::Br | JointId::Tr))
            .collect();
        // The order of the marks is that of the joints; figures are placed in the same order, centre pins first.
        let late = |joint: &JointId| !matches!(joint, JointId::C(_));
        order(&mut joints, |one, other| late(one).cmp(&late(other)));
        let wheels = [
            (JointId::Br, DVec2::new(0.0, rest.base_wheel)),
            (JointId::Tr, rest.top_wheel * subject.pose.top.across()),
        ];
        joints
            .into_iter()
            .map(|joint| (joint, rest.joint(joint)))
            .chain(wheels)
            .map(|(joint, newtons)| {
                let at = subject.joint(joint);
                let outward = if matches!(joint, JointId::C(_)) { newtons.x } else { at.x - middle };
                self.arrow(at, newtons, (outward.signum(), rest.largest()))
            })
            .collect()
    }

    /// The screw's pull or push on what its nut is fixed to.
    pub(super) fn screw(&self, subject: &Subject<'_>, station: &Station) -> Arrow {
        let [seat, bearing] = subject.thrust();
        let thrust = station.state.screw_force;
        let away = (seat - bearing).try_normalize().unwrap_or(DVec2::X);
        let tail = self.scale.to_screen(seat.into());
        let along = DVec2::new(away.x, -away.y) * thrust * self.forces.per_newton;
        let tip = Screen::from(tail.vector() + along);
        let parts = force(tail, tip);
        if parts[0].is_empty() {
            return Arrow { tail, tip, parts, forms: vec![figure(tail, Anchor::Start, "")] };
        }
        let verb = if thrust < 0.0 { "pulls" } else { "pushes" };
        let size = self.forces.words(thrust.abs(), self.system);
        let middle = self.scale.to_screen(((seat + bearing) / 2.0).into());
        let level = away.y.abs() < 0.3;
        let long = format!("screw {verb} {size}");
        let mut forms = Vec::new();
        for words in [long.as_str(), size.as_str()] {
            if let Some(wood) = subject.wood_beside_screw() {
                forms.push(figure(self.scale.to_screen(wood.into()).by(0.0, 4.0), Anchor::Middle, words));
            }
            if level {
                forms.extend(
                    [17.0, -9.0, 30.0, -22.0].map(|down| figure(middle.by(0.0, down), Anchor::Middle, words)),
                );
            }
            forms.extend(
                [(10.0, Anchor::Start), (-10.0, Anchor::End)]
                    .into_iter()
                    .flat_map(|(right, anchor)| [4.0, -10.0, 18.0].map(|down| (right, down, anchor)))
                    .map(|(right, down, anchor)| figure(tip.by(right, down), anchor, words)),
            );
        }
        Arrow { tail, tip, parts, forms }
    }

    /// The load's weight from its middle down; its figure stands with the load's own.
    pub(super) fn weight(&self, middle: DVec2, newtons: f64) -> Arrow {
        let tail = self.scale.to_screen(middle.into()).by(0.0, 7.0);
        let length = newtons * self.forces.per_newton;
        // A weight is always shown: at its own scale where that can be seen, as the shortest arrow otherwise.
        let length = if newtons > 0.0 { length.max(SHORTEST_FORCE) } else { 0.0 };
        let tip = tail.by(0.0, length);
        Arrow { tail, tip, parts: force(tail, tip), forms: Vec::new() }
    }

    /// The arrow that shows the scale, beneath the floor.
    pub(super) fn unit(&self, lettering: &mut Lettering<'_>, at: Screen) -> Vec<Mark> {
        let (newtons, words) = self.forces.unit(self.system);
        let length = newtons * self.forces.per_newton;
        let [shaft, head] = force(at, at.by(length, 0.0));
        let mut from = at.by(length + 7.0, 4.0);
        let figure = lettering.place([text("ft halo", from, Anchor::Start, &words)]);
        from = from.by(lettering.width("ft", &words) + 7.0, 0.0);
        let note = lettering.place([text("q halo", from, Anchor::Start, "both sides")]);
        if figure.is_left_out() {
            return vec![
                Mark::path("fl", String::new()),
                Mark::path("fh", String::new()),
                figure,
                note.silent(),
            ];
        }
        vec![Mark::path("fl", shaft), Mark::path("fh", head), figure, note]
    }
}
