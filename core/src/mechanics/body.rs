//! Parts cut free: every force that acts on one part in a state of equilibrium, its own weight among them.
//!
//! Plain `f64` in SI: N, N m, m. Places are in the plane's axes from the base pivot, couples and moments counter-clockwise, forces totals of
//! all sides. Nothing is solved here: the joint forces are those of [`Forces`], so that the sums of a part say how well they were solved.
//!
//! A wheel's rail force and its drag act in the model at the middle of its axle, and so they are placed here.

use super::drive::{Action, ScrewLine};
use super::linkage::Pose;
use super::loads::LoadCases;
use super::mechanism::Mechanism;
use super::names::{ArmId, Body, JointId};
use super::statics::Forces;
use glam::DVec2;
use std::fmt;

/// A part that can be cut free.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Freed {
    /// An arm, both sides together.
    Arm(ArmId),
    /// The deck with its rails: the top frame.
    Deck,
    /// The base wheels on their axle.
    BaseCarriage,
    /// The deck wheels on their axle.
    DeckCarriage,
    /// The base frame on its casters.
    Base,
}

impl Freed {
    /// Every part of a table of `n` stages, from the deck down.
    pub fn all(n: usize) -> impl Iterator<Item = Self> {
        let arms: Vec<Self> = ArmId::all(n).map(Self::Arm).collect();
        [Self::Deck, Self::DeckCarriage]
            .into_iter()
            .chain(arms.into_iter().rev())
            .chain([Self::BaseCarriage, Self::Base])
    }

    /// The part of a table of `n` stages that [`fmt::Display`] writes so; none of any other text.
    pub fn of(text: &str, n: usize) -> Option<Self> {
        Self::all(n).find(|part| part.to_string() == text)
    }
}

impl fmt::Display for Freed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Arm(arm) => write!(f, "{arm}"),
            Self::Deck => f.write_str("deck"),
            Self::BaseCarriage => f.write_str("base-carriage"),
            Self::DeckCarriage => f.write_str("deck-carriage"),
            Self::Base => f.write_str("base"),
        }
    }
}

/// What a force comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cause {
    /// A pin or an axle.
    Joint(JointId),
    /// Friction in a pin or on an axle: a couple.
    Rubbing(JointId),
    /// The frame that guides an axle, which takes the couple of the arm that turns on it.
    Guide(JointId),
    /// A rail on the wheels of the axle, or the wheels on the rail: square to the rail.
    Wheels(JointId),
    /// The rolling drag of those wheels, along the rail.
    Drag(JointId),
    /// The screw.
    Screw,
    /// Friction in an end pin of the screw: a couple.
    ScrewRubbing,
    /// The part's own weight with all that rides on it.
    Weight,
    /// The live load.
    Load,
    /// The push on the load, along the table.
    Push,
    /// The floor beneath the left (0) or right (1) pair of casters.
    Caster(usize),
    /// The floor, which holds locked casters against the push.
    Floor,
}

/// What acts at one place of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Acting {
    /// What it comes from.
    pub cause: Cause,
    /// The part that feels the opposite; none where that is the screw, the load, the floor or the earth.
    pub from: Option<Freed>,
    /// Where it acts, m from the base pivot.
    pub at: DVec2,
    /// The force, N.
    pub force: DVec2,
    /// The couple, N m.
    pub couple: f64,
}

impl Acting {
    /// Its moment about a point, N m, counter-clockwise.
    pub fn moment(&self, about: DVec2) -> f64 {
        self.couple + (self.at - about).perp_dot(self.force)
    }
}

/// A part cut free, with all that acts on it.
#[derive(Clone, Debug, PartialEq)]
pub struct FreeBody {
    /// Which part.
    pub part: Freed,
    /// The point about which moments are told, m from the base pivot: the lower pin of an arm, the fixed pivot of a frame, the axle of a
    /// carriage.
    pub about: DVec2,
    /// What acts on it; nothing that is exactly zero.
    pub acting: Vec<Acting>,
}

impl FreeBody {
    /// The sum of all forces, N.
    pub fn force(&self) -> DVec2 {
        self.acting.iter().map(|one| one.force).sum()
    }

    /// The sum of all moments about [`Self::about`], N m.
    pub fn moment(&self) -> f64 {
        self.acting.iter().map(|one| one.moment(self.about)).sum()
    }

    /// The largest force, N.
    pub fn largest(&self) -> f64 {
        self.acting.iter().map(|one| one.force.length()).fold(0.0, f64::max)
    }

    /// The largest moment of a single force or couple, N m.
    pub fn largest_moment(&self) -> f64 {
        self.acting.iter().map(|one| one.moment(self.about).abs()).fold(0.0, f64::max)
    }
}

/// A mechanism at one pose in one state.
pub(super) struct Scene<'a> {
    pub(super) mechanism: &'a Mechanism,
    pub(super) cases: &'a LoadCases,
    pub(super) pose: &'a Pose,
    pub(super) screw: &'a ScrewLine,
    pub(super) forces: &'a Forces,
    /// Reactions of the caster lines, N; none without casters.
    pub(super) casters: Option<[f64; 2]>,
}

impl Scene<'_> {
    /// A part with all that acts on it.
    pub(super) fn body(&self, part: Freed) -> FreeBody {
        let (about, mut acting) = match part {
            Freed::Arm(arm) => (self.pose.arm(arm).origin, self.pins(Body::Arm(arm))),
            Freed::Deck => (self.pose.top.origin, self.deck()),
            Freed::Base => (DVec2::ZERO, self.base()),
            Freed::BaseCarriage => (self.pose.base_axle(), self.carriage(JointId::Br)),
            Freed::DeckCarriage => (self.pose.joint(JointId::Tr), self.carriage(JointId::Tr)),
        };
        acting.extend(self.screw(part));
        let (at, weight) = self.cases.own_weight(part, self.pose);
        acting.push(plain(Cause::Weight, at, DVec2::new(0.0, -weight)));
        acting.retain(|one| one.force.length() > 0.0 || one.couple.abs() > 0.0);
        FreeBody { part, about, acting }
    }

    /// The pins of a body and their friction; an axle's force goes to its carriage, its friction to the frame that guides it.
    fn pins(&self, body: Body) -> Vec<Acting> {
        let n = self.pose.n;
        let mut acting = Vec::new();
        for joint in JointId::all(n) {
            let bodies = joint.bodies(n);
            let Some(second) = bodies.iter().position(|one| *one == body).map(|place| place == 1) else {
                continue;
            };
            let sign = if second { 1.0 } else { -1.0 };
            let couple = sign * self.couple(joint);
            let at = self.pose.joint(joint);
            let carriage = carriage(joint);
            let arm = matches!(body, Body::Arm(_));
            let other = freed(bodies[usize::from(!second)]);
            if arm || carriage.is_none() {
                let from = Some(carriage.unwrap_or(other));
                acting.push(Acting {
                    cause: Cause::Joint(joint),
                    from,
                    at,
                    force: sign * self.forces.joint(joint),
                    couple: 0.0,
                });
                acting.push(Acting { cause: Cause::Rubbing(joint), from, at, force: DVec2::ZERO, couple });
            } else {
                acting.push(Acting {
                    cause: Cause::Guide(joint),
                    from: carriage,
                    at,
                    force: DVec2::ZERO,
                    couple,
                });
            }
        }
        acting
    }

    /// Couple on the second body of a joint, N m.
    fn couple(&self, joint: JointId) -> f64 {
        self.forces.rubbing.couples.get(joint.index(self.pose.n)).copied().unwrap_or(0.0)
    }

    /// The rail on the wheels of an axle: square to it and along it, N.
    fn rail(&self, axle: JointId) -> [DVec2; 2] {
        let (rest, rubbing) = (self.forces, &self.forces.rubbing);
        if axle == JointId::Tr {
            let top = self.pose.top;
            [-rest.top_wheel * top.across(), rubbing.top_drag * top.along]
        } else {
            [DVec2::new(0.0, rest.base_wheel), DVec2::new(rubbing.base_drag, 0.0)]
        }
    }

    /// An axle with its wheels: the arm that turns on it, the rail it runs on, the frame that guides it.
    fn carriage(&self, axle: JointId) -> Vec<Acting> {
        let (at, n) = (self.pose.joint(axle), self.pose.n);
        let [first, second] = axle.bodies(n);
        // The arm feels the force as the second body of the base axle and as the first of the deck axle.
        let (arm, sign) = if axle == JointId::Br { (second, -1.0) } else { (first, 1.0) };
        let (arm, frame) = (Some(freed(arm)), Some(frame(axle)));
        let couple = sign * self.couple(axle);
        let [square, along] = self.rail(axle);
        let one = |cause, from, force, couple| Acting { cause, from, at, force, couple };
        vec![
            one(Cause::Joint(axle), arm, sign * self.forces.joint(axle), 0.0),
            one(Cause::Rubbing(axle), arm, DVec2::ZERO, couple),
            one(Cause::Wheels(axle), frame, square, 0.0),
            one(Cause::Drag(axle), frame, along, 0.0),
            one(Cause::Guide(axle), frame, DVec2::ZERO, -couple),
        ]
    }

    /// The wheels of an axle on the rail of its frame.
    fn on_rail(&self, axle: JointId) -> [Acting; 2] {
        let at = self.pose.joint(axle);
        let [square, along] = self.rail(axle);
        let one =
            |cause, force: DVec2| Acting { cause, from: carriage(axle), at, force: -force, couple: 0.0 };
        [one(Cause::Wheels(axle), square), one(Cause::Drag(axle), along)]
    }

    fn deck(&self) -> Vec<Acting> {
        let mut acting = self.pins(Body::Top);
        acting.extend(self.on_rail(JointId::Tr));
        let live = self.cases.live();
        for (cause, force) in [Cause::Load, Cause::Push].into_iter().zip(live) {
            acting.push(plain(cause, self.pose.top.point(force.at), force.force));
        }
        acting
    }

    fn base(&self) -> Vec<Acting> {
        let mut acting = self.pins(Body::Base);
        acting.extend(self.on_rail(JointId::Br));
        let floor = -self.mechanism.h_base;
        if let (Some(places), Some(reactions)) = (self.mechanism.base.casters, self.casters) {
            for (pair, (x, reaction)) in places.into_iter().zip(reactions).enumerate() {
                acting.push(plain(Cause::Caster(pair), DVec2::new(x, floor), DVec2::new(0.0, reaction)));
            }
            let middle = DVec2::new(0.5 * (places[0] + places[1]), floor);
            acting.push(plain(Cause::Floor, middle, DVec2::new(-self.cases.push, 0.0)));
        }
        acting
    }

    /// The screw on a part.
    fn screw(&self, part: Freed) -> Vec<Acting> {
        let (pose, force) = (self.pose, self.forces.drive);
        let anchor = self.mechanism.drive.anchor().1;
        let one = |at, force| vec![plain(Cause::Screw, at, force)];
        match (self.screw.action, part) {
            (Action::BaseAxle, Freed::BaseCarriage) => one(pose.base_axle(), DVec2::new(-force, 0.0)),
            (Action::BaseAxle, Freed::Base) => {
                one(DVec2::new(anchor, pose.base_axle().y), DVec2::new(force, 0.0))
            }
            (Action::TopAxle, Freed::DeckCarriage) => one(pose.joint(JointId::Tr), -force * pose.top.along),
            (Action::TopAxle, Freed::Deck) => {
                one(pose.top.point(DVec2::new(anchor, pose.top_axle.y)), force * pose.top.along)
            }
            (Action::Pins(ends), part) => {
                let mut acting = Vec::new();
                for (which, end) in ends.into_iter().enumerate().filter(|(_, end)| freed(end.body) == part) {
                    let at = pose.frame(end.body).point(end.local);
                    acting.push(plain(Cause::Screw, at, self.screw.end_force(which, self.forces)));
                    let couple = self.forces.rubbing.ends.get(which).copied().unwrap_or(0.0);
                    acting.push(Acting { couple, ..plain(Cause::ScrewRubbing, at, DVec2::ZERO) });
                }
                acting
            }
            _ => Vec::new(),
        }
    }
}

/// A force that no other part of the table feels.
fn plain(cause: Cause, at: DVec2, force: DVec2) -> Acting {
    Acting { cause, from: None, at, force, couple: 0.0 }
}

/// The carriage of an axle; none for a pin.
fn carriage(joint: JointId) -> Option<Freed> {
    match joint {
        JointId::Br => Some(Freed::BaseCarriage),
        JointId::Tr => Some(Freed::DeckCarriage),
        _ => None,
    }
}

/// The frame that guides an axle.
fn frame(axle: JointId) -> Freed {
    if axle == JointId::Tr { Freed::Deck } else { Freed::Base }
}

fn freed(body: Body) -> Freed {
    match body {
        Body::Base => Freed::Base,
        Body::Arm(arm) => Freed::Arm(arm),
        Body::Top => Freed::Deck,
    }
}
