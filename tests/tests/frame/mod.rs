//! A small plane frame by the direct stiffness method: Timoshenko beams and springs, three displacements a node.
//!
//! Plain `f64` in SI. Written for the checks alone; it shares nothing with the solver.

use glam::DVec2;
use nalgebra::{DMatrix, DVector, Matrix6};

/// A point that moves with a node.
#[derive(Clone, Copy, Debug)]
pub struct Point {
    pub node: usize,
    /// From the node, m.
    pub offset: DVec2,
}

/// Stiffnesses of a beam's section: EA, EI, kappa G A; the last zero for a beam that does not shear.
#[derive(Clone, Copy, Debug)]
pub struct Section {
    pub ea: f64,
    pub ei: f64,
    pub kga: f64,
}

#[derive(Default)]
pub struct Frame {
    places: Vec<DVec2>,
    beams: Vec<([usize; 2], Matrix6<f64>)>,
    /// Rows b and stiffnesses k of springs: energy k (b u)^2 / 2.
    springs: Vec<(Vec<(usize, f64)>, f64)>,
    loads: Vec<(usize, f64)>,
    bars: Vec<Inextensible>,
}

/// Nodes in a straight row that keep their distances along it.
struct Inextensible {
    nodes: Vec<usize>,
    along: DVec2,
    /// Whether the ground holds the row lengthwise.
    held: bool,
}

impl Frame {
    pub fn node(&mut self, place: DVec2) -> usize {
        self.places.push(place);
        self.places.len() - 1
    }

    /// A straight beam between two nodes.
    pub fn beam(&mut self, from: usize, to: usize, section: Section) {
        let span = self.places[to] - self.places[from];
        let l = span.length();
        let shear = if section.kga > 0.0 { 12.0 * section.ei / (section.kga * l * l) } else { 0.0 };
        let a = section.ea / l;
        let b = section.ei / ((1.0 + shear) * l * l * l);
        let mut k = Matrix6::zeros();
        let mut set = |row: usize, column: usize, value: f64| {
            k[(row, column)] = value;
            k[(column, row)] = value;
        };
        set(0, 0, a);
        set(3, 3, a);
        set(0, 3, -a);
        set(1, 1, 12.0 * b);
        set(4, 4, 12.0 * b);
        set(1, 4, -12.0 * b);
        for end in [2, 5] {
            set(1, end, 6.0 * b * l);
            set(4, end, -6.0 * b * l);
            set(end, end, (4.0 + shear) * b * l * l);
        }
        set(2, 5, (2.0 - shear) * b * l * l);
        let (c, s) = (span.x / l, span.y / l);
        let mut turn = Matrix6::zeros();
        for end in [0, 3] {
            turn[(end, end)] = c;
            turn[(end, end + 1)] = s;
            turn[(end + 1, end)] = -s;
            turn[(end + 1, end + 1)] = c;
            turn[(end + 2, end + 2)] = 1.0;
        }
        self.beams.push(([from, to], turn.transpose() * k * turn));
    }

    /// A spring in one direction between two points, or from a point to the ground.
    pub fn spring(&mut self, from: Option<Point>, to: Point, direction: DVec2, k: f64) {
        let mut row = moves(to, direction, 1.0);
        if let Some(from) = from {
            row.extend(moves(from, direction, -1.0));
        }
        self.springs.push((row, k));
    }

    /// A node that does not turn.
    pub fn hold_turn(&mut self, node: usize) {
        self.springs.push((vec![(3 * node + 2, 1.0)], 1.0));
    }

    /// Nodes in a straight row that keep their distances along it; `held`: none of them moves that way.
    pub fn inextensible(&mut self, nodes: Vec<usize>, along: DVec2, held: bool) {
        self.bars.push(Inextensible { nodes, along, held });
    }

    /// From the free displacements to those of all nodes.
    fn freedoms(&self) -> DMatrix<f64> {
        let size = 3 * self.places.len();
        let mut columns: Vec<DVector<f64>> = Vec::new();
        let mut free = |entries: &[(usize, f64)]| {
            let mut column = DVector::zeros(size);
            entries.iter().for_each(|(index, value)| column[*index] = *value);
            columns.push(column);
        };
        for node in 0..self.places.len() {
            free(&[(3 * node + 2, 1.0)]);
            match self.bars.iter().find(|bar| bar.nodes.contains(&node)) {
                Some(bar) => free(&[(3 * node, -bar.along.y), (3 * node + 1, bar.along.x)]),
                None => {
                    free(&[(3 * node, 1.0)]);
                    free(&[(3 * node + 1, 1.0)]);
                }
            }
        }
        for bar in self.bars.iter().filter(|bar| !bar.held) {
            let all =
                bar.nodes.iter().flat_map(|node| [(3 * node, bar.along.x), (3 * node + 1, bar.along.y)]);
            free(&all.collect::<Vec<_>>());
        }
        DMatrix::from_columns(&columns)
    }

    pub fn load(&mut self, at: Point, force: DVec2) {
        self.loads.extend(moves(at, DVec2::X, force.x));
        self.loads.extend(moves(at, DVec2::Y, force.y));
    }

    /// Displacements of all nodes.
    pub fn solve(&self) -> Displacements {
        let size = 3 * self.places.len();
        let mut k = DMatrix::zeros(size, size);
        for (nodes, element) in &self.beams {
            let at = |index: usize| 3 * nodes[index / 3] + index % 3;
            for row in 0..6 {
                for column in 0..6 {
                    k[(at(row), at(column))] += element[(row, column)];
                }
            }
        }
        for (row, stiffness) in &self.springs {
            for (i, a) in row {
                for (j, b) in row {
                    k[(*i, *j)] += stiffness * a * b;
                }
            }
        }
        let mut loads = DVector::zeros(size);
        for (index, value) in &self.loads {
            loads[*index] += value;
        }
        let freedoms = self.freedoms();
        let reduced = freedoms.transpose() * k * &freedoms;
        let free = reduced.lu().solve(&(freedoms.transpose() * loads)).unwrap();
        Displacements(freedoms * free)
    }
}

/// How a displacement of a point in a direction follows from its node's.
fn moves(point: Point, direction: DVec2, factor: f64) -> Vec<(usize, f64)> {
    let first = 3 * point.node;
    let turn = point.offset.perp().dot(direction);
    vec![(first, factor * direction.x), (first + 1, factor * direction.y), (first + 2, factor * turn)]
}

pub struct Displacements(DVector<f64>);

impl Displacements {
    pub fn at(&self, point: Point) -> DVec2 {
        let first = 3 * point.node;
        DVec2::new(self.0[first], self.0[first + 1]) + self.0[first + 2] * point.offset.perp()
    }
}
