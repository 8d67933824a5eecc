//! The equations of one half of the frame in symmetric or antisymmetric states.
//!
//! Plain `f64` in SI. Any load splits into a part that is its own mirror image in z = 0 and one that is the opposite of
//! it. Both have the same number of unknowns in the same order; they differ in what the middle plane holds, and in how
//! the far end of what crosses it moves.

use super::coupling::Blocks;
use super::mesh::{End, Mesh, Seat};
use super::skyline::{Cholesky, Skyline};
use glam::{DMat3, DVec3};

/// Which states.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Parity {
    /// Both sides do the same: the deck moves along x and y and turns about z.
    Symmetric,
    /// Both sides do the opposite: the deck moves along z and turns about x and y.
    Antisymmetric,
}

/// Shift and turn of a node or body.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Displacement {
    /// Shift, m.
    pub shift: DVec3,
    /// Turn about x, y and z, rad.
    pub turn: DVec3,
}

impl Displacement {
    /// The motion of a point of the same rigid body, at `arm` from the first one.
    pub fn at(&self, arm: DVec3) -> DVec3 {
        self.shift + self.turn.cross(arm)
    }
}

/// Signs by which shift and turn pass to the mirror image of a symmetric state.
const MIRROR: [f64; 6] = [1.0, 1.0, -1.0, -1.0, -1.0, 1.0];

impl Parity {
    /// The ways in which a node of the middle plane moves: of x, y, z and the turns about them.
    pub fn middle(self) -> [usize; 3] {
        match self {
            Self::Symmetric => [0, 1, 5],
            Self::Antisymmetric => [2, 3, 4],
        }
    }

    /// What component `way` at the mirror image of a node is, as a multiple of that at the node.
    pub fn sign(self, way: usize) -> f64 {
        match self {
            Self::Symmetric => MIRROR[way],
            Self::Antisymmetric => -MIRROR[way],
        }
    }

    /// Row of component `way` of a node, where it has one.
    fn row(self, mesh: &Mesh, node: usize, way: usize) -> Option<usize> {
        let inside = match mesh.nodes()[node].seat {
            Seat::Aside => Some(way),
            Seat::Middle => self.middle().iter().position(|free| *free == way),
        };
        inside.map(|inside| mesh.row(node) + inside)
    }

    /// Rows and signs of the twelve components of two ends.
    fn rows(self, mesh: &Mesh, ends: [End; 2]) -> [Option<(usize, f64)>; 12] {
        std::array::from_fn(|component| {
            let way = component % 6;
            match ends[component / 6] {
                End::Ground => None,
                End::Node(node) => self.row(mesh, node, way).map(|row| (row, 1.0)),
                End::Mirror(node) => self.row(mesh, node, way).map(|row| (row, self.sign(way))),
            }
        })
    }

    /// Adds the stiffness of a part between two ends.
    pub fn add(self, matrix: &mut Skyline, mesh: &Mesh, ends: [End; 2], part: &Blocks, share: f64) {
        let rows = self.rows(mesh, ends);
        for (j, target) in rows.iter().enumerate() {
            let Some((column, column_sign)) = *target else { continue };
            for (i, source) in rows.iter().enumerate() {
                let Some((row, row_sign)) = *source else { continue };
                if row >= column {
                    let value = part[i / 3][j / 3].col(j % 3)[i % 3];
                    matrix.add(row, column, share * row_sign * column_sign * value);
                }
            }
        }
    }

    /// The stiffness matrix of the half.
    pub fn stiffness(self, mesh: &Mesh) -> Skyline {
        let mut matrix = Skyline::new(&mesh.envelope());
        for element in mesh.elements() {
            self.add(&mut matrix, mesh, element.ends, &element.stiffness, element.share);
        }
        matrix
    }

    /// The motion of a node in a state.
    pub fn motion(self, mesh: &Mesh, node: usize, state: &[f64]) -> Displacement {
        let way = |way| self.row(mesh, node, way).and_then(|row| state.get(row).copied()).unwrap_or(0.0);
        Displacement { shift: DVec3::new(way(0), way(1), way(2)), turn: DVec3::new(way(3), way(4), way(5)) }
    }

    /// The motion of the mirror image of a node that moves by `motion`.
    pub fn mirror(self, motion: Displacement) -> Displacement {
        let sign = |first| DVec3::new(self.sign(first), self.sign(first + 1), self.sign(first + 2));
        Displacement { shift: sign(0) * motion.shift, turn: sign(3) * motion.turn }
    }
}

/// One half, factored, with its answers to unit loads on the deck.
#[derive(Clone, Debug)]
pub struct Half {
    /// Which states it answers for.
    pub parity: Parity,
    /// Its stiffness matrix.
    pub stiffness: Skyline,
    /// The factor of it.
    pub factor: Cholesky,
    /// The states under a unit load in each of the deck's three ways, in the order of [`Parity::middle`].
    pub unit: [Vec<f64>; 3],
    /// First row of the deck.
    deck: usize,
}

impl Half {
    /// The half of `mesh` with the deck as node `deck`; none where the matrix has no factor.
    pub fn new(mesh: &Mesh, deck: usize, parity: Parity) -> Option<Self> {
        let stiffness = parity.stiffness(mesh);
        let factor = stiffness.clone().factor()?;
        let deck = mesh.row(deck);
        let unit = unit_states(&factor, stiffness.size(), deck);
        Some(Self { parity, stiffness, factor, unit, deck })
    }

    /// The flexibility of the deck: entry (i, j) is its movement in way i under a unit load in way j.
    pub fn flexibility(&self) -> DMat3 {
        at_deck(&self.unit, self.deck)
    }

    /// The flexibility of the deck with `more` added to the stiffness matrix; none where the sum has no factor.
    pub fn flexibility_with(&self, more: &Skyline) -> Option<DMat3> {
        let factor = self.stiffness.plus(1.0, more).factor()?;
        Some(at_deck(&unit_states(&factor, self.stiffness.size(), self.deck), self.deck))
    }

    /// The state under a load on the deck, in its three ways.
    pub fn state(&self, load: DVec3) -> Vec<f64> {
        let [first, second, third] = &self.unit;
        first
            .iter()
            .zip(second)
            .zip(third)
            .map(|((first, second), third)| load.x * first + load.y * second + load.z * third)
            .collect()
    }
}

/// The states under unit loads on the deck, of which each half carries one half.
fn unit_states(factor: &Cholesky, size: usize, deck: usize) -> [Vec<f64>; 3] {
    std::array::from_fn(|way| {
        let mut state = vec![0.0; size];
        state[deck + way] = 0.5;
        factor.solve(&mut state);
        state
    })
}

fn at_deck(unit: &[Vec<f64>; 3], deck: usize) -> DMat3 {
    let column = |way: usize| DVec3::from_slice(&unit[way][deck..deck + 3]);
    DMat3::from_cols(column(0), column(1), column(2))
}
