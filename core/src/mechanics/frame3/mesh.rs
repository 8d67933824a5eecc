//! Nodes, and what connects them: the half of the frame on the side of positive z.
//!
//! Plain `f64` in SI. x and y as in the plane of the linkage, z lateral. The table is its own mirror image in the plane
//! z = 0, so half of it tells everything; what crosses that plane ends at the mirror image of a node.

use super::bar::Bar;
use super::coupling::{Blocks, Coupling};
use glam::DVec3;

/// Where a node stands, and with it how freely it moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seat {
    /// Beside the middle: it moves in all six ways.
    Aside,
    /// In the middle plane: it moves in three ways in a symmetric state, in the other three in an antisymmetric one.
    Middle,
}

/// A node of the frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Node {
    /// Place, m.
    pub at: DVec3,
    /// How freely it moves.
    pub seat: Seat,
    /// How far up the linkage it stands, in stages: what the nodes are numbered by.
    pub level: f64,
}

/// What an element ends at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// The ground.
    Ground,
    /// A node.
    Node(usize),
    /// The mirror image of a node.
    Mirror(usize),
}

/// A part between two ends.
#[derive(Clone, Debug, PartialEq)]
pub struct Element {
    /// What it ends at.
    pub ends: [End; 2],
    /// Its stiffness.
    pub stiffness: Blocks,
    /// How much of it belongs to this half: one half of what crosses the middle.
    pub share: f64,
}

/// A piece of an arm between two nodes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// Its nodes, from the arm's lower to its upper end.
    pub nodes: [usize; 2],
    /// Unit vector from the first to the second.
    pub axis: DVec3,
    /// Its length, m.
    pub length: f64,
    /// E A, N.
    pub ea: f64,
}

/// The nodes and elements of one half.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Mesh {
    nodes: Vec<Node>,
    elements: Vec<Element>,
    pieces: Vec<Piece>,
    /// First row of every node in the matrices, and their number of rows.
    rows: Vec<usize>,
    size: usize,
}

impl Mesh {
    /// Adds a node and returns its index.
    pub fn node(&mut self, at: DVec3, seat: Seat, level: f64) -> usize {
        self.nodes.push(Node { at, seat, level });
        self.nodes.len() - 1
    }

    /// Adds a part; `share` is how much of it belongs to this half.
    pub fn connect(&mut self, ends: [End; 2], coupling: &Coupling, share: f64) {
        let [first, second] = ends.map(|end| self.place(end).unwrap_or(coupling.at));
        self.elements.push(Element { ends, stiffness: coupling.between(first, second), share });
    }

    /// Adds a piece of an arm.
    pub fn arm_piece(&mut self, nodes: [usize; 2], bar: &Bar) {
        self.connect(nodes.map(End::Node), &bar.coupling(), 1.0);
        self.pieces.push(Piece { nodes, axis: bar.axes.x_axis, length: bar.length, ea: bar.section.ea });
    }

    /// Numbers the rows of the matrices from the foot of the table to its head, so that their envelope is narrow.
    pub fn number(&mut self) {
        let mut order: Vec<usize> = (0..self.nodes.len()).collect();
        order.sort_by(|a, b| self.nodes[*a].level.total_cmp(&self.nodes[*b].level));
        self.rows = vec![0; self.nodes.len()];
        self.size = 0;
        for node in order {
            self.rows[node] = self.size;
            self.size += self.freedoms(node);
        }
    }

    /// The nodes.
    pub fn nodes(&self) -> &[Node] {
        &self.nodes
    }

    /// The parts.
    pub fn elements(&self) -> &[Element] {
        &self.elements
    }

    /// The pieces of the arms.
    pub fn pieces(&self) -> &[Piece] {
        &self.pieces
    }

    /// First row of a node.
    pub fn row(&self, node: usize) -> usize {
        self.rows[node]
    }

    /// The first column of every row that any element reaches: the envelope of every matrix of this mesh.
    pub fn envelope(&self) -> Vec<usize> {
        let mut reach = self.rows.clone();
        for element in &self.elements {
            let nodes = element.ends.map(End::index);
            if let Some(least) = nodes.into_iter().flatten().map(|node| self.rows[node]).min() {
                for node in nodes.into_iter().flatten() {
                    reach[node] = reach[node].min(least);
                }
            }
        }
        let mut first = vec![0; self.size];
        for (node, &row) in self.rows.iter().enumerate() {
            first[row..row + self.freedoms(node)].fill(reach[node]);
        }
        first
    }

    /// Place of an end; the ground is everywhere.
    fn place(&self, end: End) -> Option<DVec3> {
        match end {
            End::Ground => None,
            End::Node(node) => Some(self.nodes[node].at),
            End::Mirror(node) => Some(mirrored(self.nodes[node].at)),
        }
    }

    fn freedoms(&self, node: usize) -> usize {
        match self.nodes[node].seat {
            Seat::Aside => 6,
            Seat::Middle => 3,
        }
    }
}

impl End {
    /// The node it is, or is the mirror image of.
    pub fn index(self) -> Option<usize> {
        match self {
            Self::Ground => None,
            Self::Node(node) | Self::Mirror(node) => Some(node),
        }
    }
}

/// A place or shift on the other side of the middle plane.
pub fn mirrored(vector: DVec3) -> DVec3 {
    DVec3::new(vector.x, vector.y, -vector.z)
}
