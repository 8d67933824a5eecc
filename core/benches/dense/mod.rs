//! The equations of equilibrium of a linkage written out as one dense matrix: the slow way, to hold the quick one
//! against. Plain `f64` in SI.
//!
//! Rows: base axle (x, y), then every arm and the top frame (x, y, moment about the origin of the plane), then the
//! top axle (x, y). Columns: two a joint in the order of the joints, base wheels, top wheels, drive: 6n + 7 each.

use glam::DVec2;
use nalgebra::{DMatrix, DVector};
use risewright::mechanics::drive::{Action, ScrewLine};
use risewright::mechanics::statics::{Forces, Loads};
use risewright::mechanics::{ArmId, Body, JointId, Pose};

/// The rows of a body or axle.
fn arm_row(arm: ArmId) -> usize {
    2 + 3 * arm.index()
}

fn top_row(n: usize) -> usize {
    2 + 6 * n
}

/// Adds a force at a place of the plane on the body whose rows begin at `row`.
fn on_body(matrix: &mut DMatrix<f64>, row: usize, column: usize, at: DVec2, force: DVec2) {
    matrix[(row, column)] += force.x;
    matrix[(row + 1, column)] += force.y;
    matrix[(row + 2, column)] += at.x * force.y - at.y * force.x;
}

fn on_axle(matrix: &mut DMatrix<f64>, row: usize, column: usize, force: DVec2) {
    matrix[(row, column)] += force.x;
    matrix[(row + 1, column)] += force.y;
}

/// The matrix of a pose with its screw.
pub fn matrix(pose: &Pose, screw: &ScrewLine) -> DMatrix<f64> {
    let n = pose.n;
    let size = 6 * n + 7;
    let top_axle_row = top_row(n) + 3;
    let mut matrix = DMatrix::zeros(size, size);
    for joint in JointId::all(n) {
        let at = pose.joint(joint);
        for (axis, unit) in [DVec2::X, DVec2::Y].into_iter().enumerate() {
            let column = 2 * joint.index(n) + axis;
            for (body, sign) in joint.bodies(n).into_iter().zip([-1.0, 1.0]) {
                match (body, joint) {
                    (Body::Base, JointId::Br) => on_axle(&mut matrix, 0, column, sign * unit),
                    (Body::Top, JointId::Tr) => on_axle(&mut matrix, top_axle_row, column, sign * unit),
                    (Body::Arm(arm), _) => on_body(&mut matrix, arm_row(arm), column, at, sign * unit),
                    (Body::Top, _) => on_body(&mut matrix, top_row(n), column, at, sign * unit),
                    (Body::Base, _) => {}
                }
            }
        }
    }
    let (base_wheel, top_wheel, drive) = (size - 3, size - 2, size - 1);
    let (tr, normal, along) = (pose.joint(JointId::Tr), pose.top.across(), pose.top.along);
    on_axle(&mut matrix, 0, base_wheel, DVec2::Y);
    on_body(&mut matrix, top_row(n), top_wheel, tr, normal);
    on_axle(&mut matrix, top_axle_row, top_wheel, -normal);
    match screw.action {
        Action::BaseAxle => on_axle(&mut matrix, 0, drive, DVec2::NEG_X),
        Action::TopAxle => {
            on_axle(&mut matrix, top_axle_row, drive, -along);
            on_body(&mut matrix, top_row(n), drive, tr, along);
        }
        Action::Pins(ends) => {
            for (end, sign) in ends.into_iter().zip([-screw.sigma, screw.sigma]) {
                let at = pose.frame(end.body).point(end.local);
                match end.body {
                    Body::Base => {}
                    Body::Arm(arm) => on_body(&mut matrix, arm_row(arm), drive, at, sign * screw.along),
                    Body::Top => on_body(&mut matrix, top_row(n), drive, at, sign * screw.along),
                }
            }
        }
    }
    matrix
}

/// The loads as a right-hand side: what the unknowns must balance, moments about the origin of the plane.
pub fn right_side(pose: &Pose, loads: &Loads) -> DVector<f64> {
    let n = pose.n;
    let mut side = DVector::zeros(6 * n + 7);
    let mut set = |row: usize, force: DVec2, moment: Option<f64>| {
        side[row] = -force.x;
        side[row + 1] = -force.y;
        if let Some(moment) = moment {
            side[row + 2] = -moment;
        }
    };
    set(0, loads.base_axle, None);
    set(top_row(n) + 3, loads.top_axle, None);
    let frames = pose.arms.iter().chain([&pose.top]);
    for (index, (wrench, frame)) in loads.arms.iter().chain([&loads.top]).zip(frames).enumerate() {
        set(2 + 3 * index, wrench.force, Some(wrench.moment + frame.origin.perp_dot(wrench.force)));
    }
    side
}

/// A state as the vector of unknowns.
pub fn unknowns(forces: &Forces) -> DVector<f64> {
    let joints = forces.joints.iter().flat_map(|force| [force.x, force.y]);
    let rest = [forces.base_wheel, forces.top_wheel, forces.drive];
    DVector::from_vec(joints.chain(rest).collect())
}
