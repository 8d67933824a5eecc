//! The table in space: how far it gives way sideways, lengthwise and in twist, and what load it buckles under.
//!
//! Plain `f64` in SI: N, m, rad. Axes: x and y as in the plane of the linkage, z lateral and right-handed, its middle 0.
//! Linear about the given pose: small displacements, no friction, no play; wheels and guides hold in both directions.
//!
//! What is in it: arms, pins, axles and boards as Timoshenko beams; pins rigid in their first arm and held in the second
//! by springs across, along and against rocking; wheels on rails, with side guides or without; the screw as a spring at
//! the middle of its axle; crossed bars that only pull and push; base and deck rigid. Under a tilted deck wheels and screw
//! act square to its rail and along it. What is not in it: a strut or a screw between side pivots; the bending of rails
//! and casters, which the planar deflection has.
//!
//! The way through: `build` makes the mesh of one half of the table, `half` the equations of its symmetric and
//! antisymmetric states, `skyline` their factors, once a pose; all answers come from the six unit loads on the deck.

mod bar;
mod build;
#[cfg(test)]
mod closed_forms;
mod coupling;
mod critical;
mod half;
mod lift;
mod mesh;
mod shape;
mod skyline;

pub use half::Displacement;
pub use lift::{Rail, WheelLift};
pub use shape::{DeckLoad, Line, Part, Shape};

use super::check::check;
use super::fault::Fault;
use super::linkage::Pose;
use super::mechanism::Mechanism;
use bar::geometric;
use build::Plan;
use glam::{DMat3, DVec2, DVec3};
use half::{Half, Parity};
use mesh::End;
use serde::{Deserialize, Serialize};
use skyline::Skyline;

/// The least share of its diagonal a pivot may keep: with less, three digits of the answer would be in doubt.
const LEAST_PIVOT: f64 = 1e-12;

/// How stiff the deck stands at one height, at its reference point.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize)]
pub struct Stiffness3 {
    /// Sideways force per shift along z, N/m.
    pub sway: f64,
    /// Couple about the vertical per turn, N m/rad.
    pub twist: f64,
    /// Couple about the lengthwise axis per turn, N m/rad.
    pub roll: f64,
    /// Lengthwise force per shift along x, N/m.
    pub push: f64,
    /// Weight per drop, N/m.
    pub vertical: f64,
    /// Drop of the deck's corner under one newton there, m/N.
    pub corner_flex: f64,
    /// Critical load as a multiple of the given weight; none without a weight, or where a million times it is not
    /// critical. Below 1 the table buckles; the linear theory behind it wants 4 or more.
    pub lambda: Option<f64>,
    /// As `sway`, softened by the given weight, N/m; none where that is critical or more.
    pub sway_pdelta: Option<f64>,
    /// As `twist`, softened by the given weight, N m/rad; none where that is critical or more.
    pub twist_pdelta: Option<f64>,
}

/// The space frame at one pose, factored.
#[derive(Clone, Debug)]
pub struct Frame3 {
    plan: Plan,
    symmetric: Half,
    antisymmetric: Half,
    /// The corner of the deck from the reference point, m.
    corner: DVec3,
    /// The weight that makes the second-order answers, N, and how high it stands above the reference point, m.
    weight: f64,
    weight_height: f64,
}

impl Frame3 {
    /// The frame of a mechanism at a pose.
    ///
    /// # Errors
    /// Where the mechanism cannot be computed or has no `model3d`; where the screw is a strut or stands between side
    /// pivots; where the frame is loose, or parts of it are so unequally stiff that too few digits would be left.
    pub fn new(mechanism: &Mechanism, pose: &Pose) -> Result<Self, Fault> {
        if let Some(fault) = check(mechanism).into_iter().next() {
            return Err(fault);
        }
        let plan = Plan::new(mechanism, pose)?;
        let half = |parity| {
            Half::new(&plan.mesh, plan.deck, parity)
                .filter(|half| half.factor.least_pivot() > LEAST_PIVOT)
                .ok_or_else(|| {
                    let text =
                        "part of the frame is loose, or its parts are too unequally stiff to be computed";
                    Fault::new("model3d", text)
                })
        };
        let (symmetric, antisymmetric) = (half(Parity::Symmetric)?, half(Parity::Antisymmetric)?);
        let (corner, weight, weight_height) = match &mechanism.model3d {
            Some(space) => {
                let along = pose.top.global(DVec2::new(space.corner_dx, 0.0));
                (along.extend(space.corner_z), space.pdelta_w, space.h_cg)
            }
            None => (DVec3::ZERO, 0.0, 0.0),
        };
        Ok(Self { plan, symmetric, antisymmetric, corner, weight, weight_height })
    }

    /// All stiffnesses.
    pub fn answers(&self) -> Stiffness3 {
        let (in_plane, sideways) = (self.symmetric.flexibility(), self.antisymmetric.flexibility());
        let geometric = [&self.symmetric, &self.antisymmetric].map(|half| self.geometric(half.parity));
        let lambda = self.lambda(&geometric);
        let softened = if lambda.is_some_and(|lambda| lambda <= 1.0) {
            None
        } else {
            self.antisymmetric.flexibility_with(&geometric[1])
        };
        Stiffness3 {
            sway: sideways.x_axis.x.recip(),
            twist: sideways.z_axis.z.recip(),
            roll: sideways.y_axis.y.recip(),
            push: in_plane.x_axis.x.recip(),
            vertical: in_plane.y_axis.y.recip(),
            corner_flex: self.corner_flex(in_plane, sideways),
            lambda,
            sway_pdelta: softened.map(|flexibility| flexibility.x_axis.x.recip()),
            twist_pdelta: softened.map(|flexibility| flexibility.z_axis.z.recip()),
        }
    }

    /// Work of one newton down at the corner on the drop it makes there.
    fn corner_flex(&self, in_plane: DMat3, sideways: DMat3) -> f64 {
        let load = DeckLoad::force_at(self.corner, DVec3::NEG_Y);
        let (even, odd) = (load.part(Parity::Symmetric), load.part(Parity::Antisymmetric));
        even.dot(in_plane * even) + odd.dot(sideways * odd)
    }

    /// What the axial forces of the arms under the weight, and its height, add to the stiffness.
    fn geometric(&self, parity: Parity) -> Skyline {
        let mesh = &self.plan.mesh;
        let mut matrix = Skyline::new(&mesh.envelope());
        let state = self.symmetric.state(DeckLoad::force(-self.weight * DVec3::Y).part(Parity::Symmetric));
        for piece in mesh.pieces() {
            let [first, second] = piece.nodes.map(|node| Parity::Symmetric.motion(mesh, node, &state).shift);
            let tension = piece.ea / piece.length * (second - first).dot(piece.axis);
            let part = geometric(piece.axis, piece.length, tension);
            parity.add(&mut matrix, mesh, piece.nodes.map(End::Node), &part, 1.0);
        }
        // A weight that stands high overturns with the deck, about x as about z.
        let overturning = DMat3::from_diagonal(DVec3::new(1.0, 0.0, 1.0)) * -self.weight * self.weight_height;
        let mut high = [[DMat3::ZERO; 4]; 4];
        high[3][3] = overturning;
        parity.add(&mut matrix, mesh, [End::Ground, End::Node(self.plan.deck)], &high, 0.5);
        matrix
    }

    /// The critical load as a multiple of the weight: that of the sideways states, unless the others buckle first.
    fn lambda(&self, [even, odd]: &[Skyline; 2]) -> Option<f64> {
        let (symmetric, antisymmetric) = (&self.symmetric, &self.antisymmetric);
        let sideways = critical::lowest(&antisymmetric.stiffness, &antisymmetric.factor, odd);
        if critical::is_stable(&symmetric.stiffness, even, sideways.unwrap_or(critical::MOST)) {
            return sideways;
        }
        critical::lowest(&symmetric.stiffness, &symmetric.factor, even)
    }
}
