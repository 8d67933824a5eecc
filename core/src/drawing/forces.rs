//! Forces on the drawing: arrows to one scale, tail or head at the pin, on whichever side is free.
use super::arrow::{SHORTEST_FORCE, force};
use super::elevation::Subject;
use super::frame::Area;
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Mark};
use super::scale::{Scale, Screen};
use crate::mechanics::JointId;
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
/// An arrow whose box is thinner than this is nearly upright or level, px.
const UPRIGHT: f64 = 14.0;

/// The one scale of all force arrows of a drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct ForceScale {
    /// Pixels a newton.
    pub(super) per_newton: f64,
}

impl ForceScale {
    pub(super) fn new(report: &Report, width: f64) -> Self {
        let largest = report.greatest(|station| station.state.rest.largest()).0;
        let largest = if largest.is_finite() && largest > 0.0 { largest } else { 1.0 };
        Self { per_newton: LONGEST.0.min(LONGEST.1 * width) / largest }
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

/// Shaft, head and figure of one force; all three empty when there is nothing to show.
type Arrow = [Mark; 3];

impl Field<'_> {
    /// A force at a place, mm; `outward` says in which direction there is room, along x, and `largest` is the
    /// largest force at this height, N.
    fn arrow(
        &self,
        lettering: &mut Lettering<'_>,
        at: DVec2,
        newtons: DVec2,
        (outward, largest): (f64, f64),
    ) -> Arrow {
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
        let [shaft, head] = force(tail, tip);
        let size = newtons.length();
        let drawn = !shaft.is_empty() && size >= WORTH_A_FIGURE[usize::from(self.tight)] * largest;
        let words = if drawn { figures::drawn_force(size, self.system).to_string() } else { String::new() };
        let end = if inwards { tail } else { tip };
        let along = (end.vector() - pin.vector()).try_normalize().unwrap_or(DVec2::X);
        let forms = [6.0, 14.0].into_iter().flat_map(|off| {
            let to = Screen::from(end.vector() + off * along);
            let level = if along.y.abs() > 0.8 { if along.y > 0.0 { 8.0 } else { 0.0 } } else { 4.0 };
            let anchor = if along.y.abs() > 0.8 {
                Anchor::Middle
            } else if along.x > 0.0 {
                Anchor::Start
            } else {
                Anchor::End
            };
            [(0.0, level), (0.0, level - 12.0), (0.0, level + 12.0)]
                .map(|(right, down)| text("ft halo", to.by(right, down), anchor, &words))
        });
        let middle = Screen::from((tail.vector() + tip.vector()) / 2.0);
        let beside = [(0.0, -7.0), (0.0, 15.0)]
            .map(|(right, down)| text("ft halo", middle.by(right, down), Anchor::Middle, &words));
        let figure = lettering.place(forms.chain(beside).collect::<Vec<_>>());
        let body = Area::between([tail.x, tip.x], [tail.y, tip.y]);
        // Later lettering keeps off an arrow that fills its own box.
        if !shaft.is_empty() && body.width.min(body.height) < UPRIGHT {
            lettering.keep(body.grown(1.5));
        }
        [Mark::path("fl", shaft), Mark::path("fh", head), figure]
    }

    /// The forces of all pivots and wheels, on the body above.
    pub(super) fn joints(
        &self,
        lettering: &mut Lettering<'_>,
        subject: &Subject<'_>,
        station: &Station,
    ) -> Vec<Mark> {
        let rest = &station.state.rest;
        let middle = subject.place(subject.pose.top.origin).x * 0.5 + subject.carriage().x * 0.5;
        let mut joints: Vec<JointId> = JointId::all(subject.pose.n)
            .filter(|joint| !matches!(joint, JointId::Br | JointId::Tr))
            .collect();
        // The order of the marks is that of the joints; figures are placed in the same order, centre pins first.
        joints.sort_by_key(|joint| !matches!(joint, JointId::C(_)));
        let wheels = [
            (JointId::Br, DVec2::new(0.0, rest.base_wheel)),
            (JointId::Tr, rest.top_wheel * subject.pose.top.across()),
        ];
        joints
            .into_iter()
            .map(|joint| (joint, rest.joint(joint)))
            .chain(wheels)
            .flat_map(|(joint, newtons)| {
                let at = subject.joint(joint);
                let outward = if matches!(joint, JointId::C(_)) { newtons.x } else { at.x - middle };
                self.arrow(lettering, at, newtons, (outward.signum(), rest.largest()))
            })
            .collect()
    }

    /// The screw's pull or push on what its nut is fixed to.
    pub(super) fn screw(
        &self,
        lettering: &mut Lettering<'_>,
        subject: &Subject<'_>,
        station: &Station,
    ) -> Vec<Mark> {
        let [seat, bearing] = subject.thrust();
        let thrust = station.state.screw_force;
        let away = (seat - bearing).try_normalize().unwrap_or(DVec2::X);
        let from = self.scale.to_screen(seat.into());
        let along = DVec2::new(away.x, -away.y) * thrust * self.forces.per_newton;
        let [shaft, head] = force(from, Screen::from(from.vector() + along));
        let verb = if thrust < 0.0 { "pulls" } else { "pushes" };
        let figure = figures::drawn_force(thrust.abs(), self.system).to_string();
        let middle = self.scale.to_screen(((seat + bearing) / 2.0).into());
        let tip = Screen::from(from.vector() + along);
        let level = away.y.abs() < 0.3;
        let long = format!("screw {verb} {figure}");
        let mut forms = Vec::new();
        for words in [long.as_str(), figure.as_str()] {
            if let Some(wood) = subject.wood_beside_screw() {
                forms.push(text(
                    "ft halo",
                    self.scale.to_screen(wood.into()).by(0.0, 4.0),
                    Anchor::Middle,
                    words,
                ));
            }
            if level {
                forms.extend(
                    [17.0, -9.0, 30.0, -22.0]
                        .map(|down| text("ft halo", middle.by(0.0, down), Anchor::Middle, words)),
                );
            }
            forms.extend(
                [(10.0, Anchor::Start), (-10.0, Anchor::End)]
                    .map(|(right, anchor)| text("ft halo", tip.by(right, 4.0), anchor, words)),
            );
        }
        let figure = if shaft.is_empty() { forms.swap_remove(0).silent() } else { lettering.place(forms) };
        vec![Mark::path("fl", shaft), Mark::path("fh", head), figure]
    }

    /// The load's weight from its middle down; its figure stands with the load's own.
    pub(super) fn weight(&self, middle: DVec2, newtons: f64) -> [Mark; 2] {
        let from = self.scale.to_screen(middle.into()).by(0.0, 7.0);
        let length = newtons * self.forces.per_newton;
        // A weight is always shown: at its own scale where that can be seen, as the shortest arrow otherwise.
        let length = if newtons > 0.0 { length.max(SHORTEST_FORCE) } else { 0.0 };
        let [shaft, head] = force(from, from.by(0.0, length));
        [Mark::path("fl", shaft), Mark::path("fh", head)]
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
