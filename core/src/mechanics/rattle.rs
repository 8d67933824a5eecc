//! How far the deck can be shaken sideways before anything bends: the free play of the pivots and side guides in space.
//!
//! Plain `f64` in SI. A bolt of grip t with diametral play c may shift by c/2 or tilt by c/t, or do a part of both:
//! |shift|/(c/2) + |tilt|/(c/t) <= 1. A side guide may shift by its play. Everything else is taken as rigid. The free
//! travel of the deck is the greatest that keeps to all of these: a limit problem, so that, as in limit analysis,
//!
//! * any motion that keeps to them is a lower bound, and
//! * any joint forces in equilibrium with one newton at the deck give an upper bound by virtual work: the sum over all
//!   joints of max(c/2 |F|, c/t |M|), over all guides of play times force.
//!
//! Both are taken from one elastic solution in which every joint is a spring, soft against all else, of a stiffness one
//! over its play squared: its motion, scaled until the tightest joint touches, and its forces.
//! Source of the two theorems: any text on limit analysis (from memory); the use for play is worked out here.
use super::fault::Fault;
use super::frame3::{DeckLoad, Displacement, Frame3, Line, Part, Shape};
use super::linkage::Pose;
use super::mechanism::Mechanism;
use super::names::{ArmId, JointId};
use super::space::SpaceJoint;
use glam::{DVec2, DVec3};
use serde::{Deserialize, Serialize};

/// The springs of the joints are so much softer than those that really hold, so that all else is rigid beside them.
const SOFT: f64 = 1e-3;

/// What may move freely, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slack {
    /// Diametral play of the bolts.
    pub pin: f64,
    /// Diametral play of the arms on their axles.
    pub axle: f64,
    /// Length of bolt or axle that has this play.
    pub grip: f64,
    /// Play of a side guide to either side, below and above; it counts only where the frame has a guide.
    pub guides: [f64; 2],
}

/// How far the deck moves freely from the middle to either side, m.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize)]
pub struct Rattle {
    /// At least.
    pub least: f64,
    /// At most.
    pub most: f64,
}

/// The free play of the deck sideways at its reference point.
///
/// # Errors
/// As [`Frame3::new`].
pub fn rattle(mechanism: &Mechanism, pose: &Pose, slack: &Slack) -> Result<Rattle, Fault> {
    let missing = || Fault::new("model3d", "the space frame needs its depth, joints and wheels");
    let mut soft = mechanism.clone();
    let space = soft.model3d.as_mut().ok_or_else(missing)?;
    let unit = SOFT * space.joint.rock;
    // The energy of a joint at the end of its play; of a guide when no joint has any.
    let energy =
        if slack.pin > 0.0 { unit * tilt(slack.pin, slack.grip) * tilt(slack.pin, slack.grip) } else { unit };
    if slack.pin > 0.0 {
        space.joint = SpaceJoint { slip: 4.0 * energy / (slack.pin * slack.pin), rock: unit, ..space.joint };
    }
    for (guide, play) in [&mut space.k_lateral_base, &mut space.k_lateral_top].into_iter().zip(slack.guides) {
        if *guide > 0.0 && play > 0.0 {
            *guide = energy / (play * play);
        }
    }
    let springs = Joints {
        slip: space.joint.slip,
        rock: space.joint.rock,
        guides: [space.k_lateral_base, space.k_lateral_top],
        wheel_z: space.wheel_z,
        slack: *slack,
    };
    let shape = Frame3::new(&soft, pose)?.shape(&DeckLoad::force(DVec3::Z));
    let used = springs.used(&shape, pose);
    let (tightest, most) = used
        .iter()
        .fold((0.0_f64, 0.0), |(tightest, most), joint| (tightest.max(joint.share), most + 2.0 * joint.work));
    let least = if tightest > 0.0 { shape.deck.shift.z.abs() / tightest } else { 0.0 };
    Ok(Rattle { least: least.min(most), most })
}

/// How far a bolt of a play tilts in a grip, rad.
fn tilt(play: f64, grip: f64) -> f64 {
    play / grip
}

/// A joint under one newton at the deck.
struct Used {
    /// How much of its play its motion takes, for that newton.
    share: f64,
    /// The work of its force on the end of its play, J.
    work: f64,
}

/// The springs in the joints.
struct Joints {
    slip: f64,
    rock: f64,
    guides: [f64; 2],
    wheel_z: f64,
    slack: Slack,
}

impl Joints {
    /// All joints and guides of the right side; the left side is alike.
    fn used(&self, shape: &Shape, pose: &Pose) -> Vec<Used> {
        let n = pose.n;
        let arm = |arm: ArmId, joint: JointId| on_line(shape, Part::RightArm(arm), pose.joint(joint), None);
        let axle = |part: Part, joint: JointId, z: f64| on_line(shape, part, pose.joint(joint), Some(z));
        let deck =
            |at: DVec3| (at, Displacement { shift: shape.deck.at(at - shape.reference), ..shape.deck });
        let centres = (1..=n).map(|i| (ArmId::a(i), ArmId::b(i), JointId::C(i)));
        let sides = (1..n).flat_map(|i| {
            [(ArmId::a(i + 1), ArmId::b(i), JointId::Jl(i)), (ArmId::a(i), ArmId::b(i + 1), JointId::Jr(i))]
        });
        let mut used: Vec<Used> = centres
            .chain(sides)
            .filter_map(|(a, b, joint)| Some(self.pivot(arm(a, joint)?, arm(b, joint)?, self.slack.pin)))
            .collect();
        let ground = |at: DVec3| (at, Displacement::default());
        if let Some(foot) = arm(ArmId::a(1), JointId::Bl) {
            used.push(self.pivot(ground(foot.0), foot, self.slack.pin));
        }
        if let Some(head) = arm(ArmId::b(n), JointId::Tl) {
            used.push(self.pivot(head, deck(head.0), self.slack.pin));
        }
        let rails = [(ArmId::b(1), JointId::Br, Part::BaseAxle), (ArmId::a(n), JointId::Tr, Part::TopAxle)];
        for (place, (end, joint, part)) in rails.into_iter().enumerate() {
            let seat = arm(end, joint).and_then(|end| Some((end, axle(part, joint, end.0.z)?)));
            used.extend(seat.map(|(end, seat)| self.pivot(end, seat, self.slack.axle)));
            if let Some((at, motion)) = axle(part, joint, self.wheel_z) {
                let rail = if place == 0 { ground(at) } else { deck(at) };
                used.extend(self.guide(place, (motion.shift - rail.1.shift).z));
            }
        }
        used
    }

    /// A bolt that is fast in the first member and has play in the second.
    fn pivot(&self, first: (DVec3, Displacement), second: (DVec3, Displacement), play: f64) -> Used {
        let shift = (second.1.shift - first.1.at(second.0 - first.0)).truncate().length();
        let turn = (second.1.turn - first.1.turn).truncate().length();
        let (half, tilt) = (0.5 * play, tilt(play, self.slack.grip));
        Used {
            share: if play > 0.0 { shift / half + turn / tilt } else { f64::INFINITY },
            work: (half * self.slip * shift).max(tilt * self.rock * turn),
        }
    }

    /// A side guide; none where there is none or it has no play.
    fn guide(&self, place: usize, shift: f64) -> Option<Used> {
        let (stiffness, play) = (self.guides[place], self.slack.guides[place]);
        (stiffness > 0.0 && play > 0.0)
            .then(|| Used { share: shift.abs() / play, work: play * stiffness * shift.abs() })
    }
}

/// The point of a line of the right side at a joint, nearest to a depth z where that matters.
fn on_line(shape: &Shape, part: Part, joint: DVec2, z: Option<f64>) -> Option<(DVec3, Displacement)> {
    let line: &Line = shape.lines.iter().find(|line| line.part == part)?;
    let far = |at: DVec3| (at.truncate() - joint).length() + z.map_or(0.0, |z| (at.z - z).abs());
    line.points.iter().copied().min_by(|one, other| far(one.0).total_cmp(&far(other.0)))
}
