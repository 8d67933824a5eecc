//! The shape of the table under a sideways push, as an end elevation shows it.
use crate::mechanics::frame3::{DeckLoad, Displacement, Frame3, Part};
use crate::mechanics::{ArmId, Pose};
use glam::{DVec2, DVec3};
use serde::{Deserialize, Serialize};

/// How a place on an arm moves. The left side moves across alike and up by the opposite.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize)]
pub struct LeanNode {
    /// Part of the arm's length from its lower pin.
    pub part: f64,
    /// Across the table, towards the right side, m/N.
    pub across: f64,
    /// Up, m/N.
    pub up: f64,
    /// Growth of `across` along the arm, for each metre of it, 1/N.
    pub slope: f64,
}

/// The shape under one newton towards the right side, at the deck's reference point.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize)]
pub struct Lean {
    /// The reference point on the deck, across, m/N.
    pub deck: f64,
    /// How the deck leans about the lengthwise axis, its right side up, rad/N.
    pub roll: f64,
    /// The arms of the right side from their lower to their upper ends, in the order A1, B1, A2, ...
    pub arms: Vec<Vec<LeanNode>>,
    /// The middles of the base and the deck axle, across, m/N.
    pub axles: [f64; 2],
}

impl Lean {
    /// The shape of a frame at its pose.
    pub(super) fn of(frame: &Frame3, pose: &Pose) -> Self {
        let shape = frame.shape(&DeckLoad::force(DVec3::Z));
        let points = |part: Part| {
            shape.lines.iter().find(|line| line.part == part).map_or(&[][..], |line| line.points.as_slice())
        };
        let arm = |arm: ArmId| {
            let axes = pose.arm(arm);
            points(Part::RightArm(arm))
                .iter()
                .map(|(at, motion)| {
                    let part = (at.truncate() - axes.origin).dot(axes.along) / pose.arm_length;
                    node(part, axes.along, motion)
                })
                .collect()
        };
        let middle = |part: Part| {
            let nearest = points(part).iter().min_by(|one, other| one.0.z.abs().total_cmp(&other.0.z.abs()));
            nearest.map_or(0.0, |(_, motion)| motion.shift.z)
        };
        Self {
            deck: shape.deck.shift.z,
            roll: -shape.deck.turn.x,
            arms: ArmId::all(pose.n).map(arm).collect(),
            axles: [Part::BaseAxle, Part::TopAxle].map(middle),
        }
    }

    /// The shape on the way to another: 0 this one, 1 the other.
    pub(super) fn towards(&self, other: &Self, part: f64) -> Self {
        let mix = |one: f64, two: f64| one + part * (two - one);
        let arms = self.arms.iter().zip(&other.arms).map(|(one, two)| {
            let nodes = one.iter().zip(two).map(|(one, two)| LeanNode {
                part: mix(one.part, two.part),
                across: mix(one.across, two.across),
                up: mix(one.up, two.up),
                slope: mix(one.slope, two.slope),
            });
            nodes.collect()
        });
        Self {
            deck: mix(self.deck, other.deck),
            roll: mix(self.roll, other.roll),
            arms: arms.collect(),
            axles: [mix(self.axles[0], other.axles[0]), mix(self.axles[1], other.axles[1])],
        }
    }

    /// How a place on a right arm moves, across and up, m/N: between its nodes along a cubic. `length` is the arm's, m.
    #[must_use]
    pub fn arm(&self, arm: ArmId, part: f64, length: f64) -> DVec2 {
        let nodes = self.arms.get(arm.index()).map_or(&[][..], Vec::as_slice);
        let Some((first, last)) = nodes.first().zip(nodes.last()) else { return DVec2::ZERO };
        let beyond =
            |node: &LeanNode| DVec2::new(node.across + (part - node.part) * length * node.slope, node.up);
        if part <= first.part {
            return beyond(first);
        }
        if part >= last.part {
            return beyond(last);
        }
        let at = nodes.partition_point(|node| node.part <= part).clamp(1, nodes.len() - 1);
        let (from, to) = (&nodes[at - 1], &nodes[at]);
        let span = to.part - from.part;
        let s = if span > 0.0 { (part - from.part) / span } else { 0.0 };
        let reach = span * length;
        // Hermite's cubic through both places with both slopes.
        let across = (1.0 + 2.0 * s) * (1.0 - s) * (1.0 - s) * from.across
            + s * (1.0 - s) * (1.0 - s) * reach * from.slope
            + s * s * (3.0 - 2.0 * s) * to.across
            - s * s * (1.0 - s) * reach * to.slope;
        DVec2::new(across, from.up + s * (to.up - from.up))
    }
}

fn node(part: f64, along: DVec2, motion: &Displacement) -> LeanNode {
    LeanNode {
        part,
        across: motion.shift.z,
        up: motion.shift.y,
        slope: motion.turn.x * along.y - motion.turn.y * along.x,
    }
}
