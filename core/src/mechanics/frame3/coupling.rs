//! What holds two bodies together at one point, and the stiffness matrix of two nodes that follows from it.
//!
//! Plain `f64` in SI. Every part of the frame, a bar as well as a spring, is one such coupling: a bar is what its far
//! end feels while the near end, with the bar as a rigid lever, moves away from it.

use glam::{DMat3, DVec3};

/// Stiffness of two nodes: blocks of three by three, in the order shift and turn of the first node, shift and turn of
/// the second.
pub type Blocks = [[DMat3; 4]; 4];

/// Force and couple on the second body for its shift and turn against the first, all at one point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Coupling {
    /// The point, m.
    pub at: DVec3,
    /// Force for a shift, N/m.
    pub force_shift: DMat3,
    /// Force for a turn, N/rad; its transpose is the couple for a shift.
    pub force_turn: DMat3,
    /// Couple for a turn, N m/rad.
    pub couple_turn: DMat3,
}

impl Coupling {
    /// Springs without a length.
    pub fn springs(at: DVec3, force_shift: DMat3, couple_turn: DMat3) -> Self {
        Self { at, force_shift, force_turn: DMat3::ZERO, couple_turn }
    }

    /// The stiffness matrix of two nodes from which rigid levers reach to the point.
    pub fn between(&self, first: DVec3, second: DVec3) -> Blocks {
        let levers = [lever(self.at - first), lever(self.at - second)];
        let signs = [-1.0, 1.0];
        let mut blocks = [[DMat3::ZERO; 4]; 4];
        for column in 0..2 {
            let by_shift = (self.force_shift, self.force_turn.transpose());
            let by_turn = (
                self.force_shift * levers[column] + self.force_turn,
                self.force_turn.transpose() * levers[column] + self.couple_turn,
            );
            for row in 0..2 {
                let sign = signs[row] * signs[column];
                for (inner, (force, couple)) in [by_shift, by_turn].into_iter().enumerate() {
                    blocks[2 * row][2 * column + inner] = sign * force;
                    blocks[2 * row + 1][2 * column + inner] =
                        sign * (levers[row].transpose() * force + couple);
                }
            }
        }
        blocks
    }
}

/// The matrix that makes of a turn the shift at the end of a lever: turn x lever.
pub fn lever(arm: DVec3) -> DMat3 {
    DMat3::from_cols(
        DVec3::new(0.0, -arm.z, arm.y),
        DVec3::new(arm.z, 0.0, -arm.x),
        DVec3::new(-arm.y, arm.x, 0.0),
    )
}

/// The matrix that takes the part along `axis` of a vector times `stiffness`; `axis` is of unit length.
pub fn along(axis: DVec3, stiffness: f64) -> DMat3 {
    DMat3::from_cols(stiffness * axis.x * axis, stiffness * axis.y * axis, stiffness * axis.z * axis)
}
