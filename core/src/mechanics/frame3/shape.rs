//! How the frame stands under a load on the deck: what a picture of it needs.
//!
//! Plain `f64` in SI.

use super::Frame3;
use super::half::{Displacement, Half, Parity};
use super::mesh::mirrored;
use crate::mechanics::names::ArmId;
use glam::DVec3;

/// A load on the deck at its reference point.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct DeckLoad {
    /// Force, N.
    pub force: DVec3,
    /// Couple about x, y and z, N m.
    pub couple: DVec3,
}

impl DeckLoad {
    /// A force at the reference point.
    pub fn force(force: DVec3) -> Self {
        Self { force, couple: DVec3::ZERO }
    }

    /// A force at `arm` from the reference point, m.
    pub fn force_at(arm: DVec3, force: DVec3) -> Self {
        Self { force, couple: arm.cross(force) }
    }

    /// A couple.
    pub fn couple(couple: DVec3) -> Self {
        Self { force: DVec3::ZERO, couple }
    }

    /// The part of it that is even or odd in z, in the order of [`Parity::middle`].
    pub(super) fn part(&self, parity: Parity) -> DVec3 {
        let all = [self.force.x, self.force.y, self.force.z, self.couple.x, self.couple.y, self.couple.z];
        DVec3::from_array(parity.middle().map(|way| all[way]))
    }
}

/// What a line of the shape belongs to. The right side is that of positive z.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// An arm of the left side.
    LeftArm(ArmId),
    /// An arm of the right side.
    RightArm(ArmId),
    /// The base wheel axle.
    BaseAxle,
    /// The top wheel axle.
    TopAxle,
}

/// An arm or axle under load.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What it is.
    pub part: Part,
    /// Places without load, m, and the motion of each: an arm's from its lower to its upper end, an axle's from left to
    /// right.
    pub points: Vec<(DVec3, Displacement)>,
}

/// The whole frame under load.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// The reference point of the deck without load, m.
    pub reference: DVec3,
    /// The motion of the deck, at its reference point.
    pub deck: Displacement,
    /// All arms, then both axles.
    pub lines: Vec<Line>,
}

impl Frame3 {
    /// The frame under a load on the deck.
    pub fn shape(&self, load: &DeckLoad) -> Shape {
        let states = [&self.symmetric, &self.antisymmetric]
            .map(|half: &Half| (half.parity, half.state(load.part(half.parity))));
        let mesh = &self.plan.mesh;
        let right = |node: usize| {
            let motion = sum(states.each_ref().map(|(parity, state)| parity.motion(mesh, node, state)));
            (mesh.nodes()[node].at, motion)
        };
        let left = |node: usize| {
            let motion =
                sum(states.each_ref().map(|(parity, state)| parity.mirror(parity.motion(mesh, node, state))));
            (mirrored(mesh.nodes()[node].at), motion)
        };
        let mut lines = Vec::with_capacity(2 * self.plan.arms.len() + 2);
        for (arm, nodes) in ArmId::all(self.plan.arms.len() / 2).zip(&self.plan.arms) {
            lines.push(Line {
                part: Part::LeftArm(arm),
                points: nodes.iter().map(|node| left(*node)).collect(),
            });
            lines.push(Line {
                part: Part::RightArm(arm),
                points: nodes.iter().map(|node| right(*node)).collect(),
            });
        }
        for (part, nodes) in [Part::BaseAxle, Part::TopAxle].into_iter().zip(&self.plan.axles) {
            let outside = nodes.iter().skip(1).rev().map(|node| left(*node));
            let points = outside.chain(nodes.iter().map(|node| right(*node))).collect();
            lines.push(Line { part, points });
        }
        let (reference, deck) = right(self.plan.deck);
        Shape { reference, deck, lines }
    }
}

fn sum([even, odd]: [Displacement; 2]) -> Displacement {
    Displacement { shift: even.shift + odd.shift, turn: even.turn + odd.turn }
}
