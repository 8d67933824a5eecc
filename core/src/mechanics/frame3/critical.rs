//! The load at which a structure loses its stiffness.
//!
//! For a stiffness matrix K, positive definite, and a geometric one G, of any signs, both symmetric with one envelope:
//! the lowest positive lambda with det(K + lambda G) = 0. With K = L L^T it is the reciprocal of the largest eigenvalue
//! of -L^-1 G L^-T, which Lanczos' method approaches from below. Every answer is proven: up to the lowest lambda, and no
//! farther, K + lambda G has a Cholesky factor.
//!
//! Source: G. H. Golub, C. F. Van Loan, Matrix Computations, 4th ed., 10.1 to 10.3 (from memory).

use super::skyline::{Cholesky, Skyline, add_scaled, dot};

/// A critical load is looked for up to this multiple.
pub const MOST: f64 = 1e6;
/// Relative accuracy of the answer.
const ACCURACY: f64 = 1e-6;
/// The most steps of Lanczos' method, and how many are taken between two looks at the eigenvalue.
const MOST_STEPS: usize = 80;
const STRIDE: usize = 4;
/// Halvings until an interval of any size is narrow enough.
const HALVINGS: usize = 60;

/// The lowest positive lambda for which K + lambda G is singular; none when there is none below [`MOST`].
///
/// `factor` is that of `stiffness`. The answer lies above the exact one by at most a millionth of it.
pub fn lowest(stiffness: &Skyline, factor: &Cholesky, geometric: &Skyline) -> Option<f64> {
    let stable = |lambda: f64| is_stable(stiffness, geometric, lambda);
    let mut lanczos = Lanczos::new(factor, geometric, stiffness.size());
    let mut largest = 0.0;
    for step in 1..=MOST_STEPS.min(stiffness.size()) {
        let closed = lanczos.step();
        if !(closed || step % STRIDE == 0) {
            continue;
        }
        let next = lanczos.largest();
        let settled = next - largest <= 0.1 * ACCURACY * next;
        largest = next;
        if settled || closed {
            if largest * MOST <= 1.0 {
                if stable(MOST) {
                    return None;
                }
            } else if stable((1.0 - ACCURACY) / largest) {
                return Some(largest.recip());
            }
        }
        if closed {
            break;
        }
    }
    halve(stable, if largest * MOST > 1.0 { (1.0 + ACCURACY) / largest } else { MOST })
}

/// Whether K + lambda G is positive definite; with K so, it then is for every smaller positive lambda as well.
pub fn is_stable(stiffness: &Skyline, geometric: &Skyline, lambda: f64) -> bool {
    stiffness.plus(lambda, geometric).factor().is_some()
}

/// The end of stability by halving its interval again and again: slow, but it needs no luck. None below `high` if it is
/// stable there.
fn halve(stable: impl Fn(f64) -> bool, high: f64) -> Option<f64> {
    if stable(high) {
        return None;
    }
    let (mut low, mut high) = (0.0, high);
    for _ in 0..HALVINGS {
        let middle = if low > 0.0 { (low * high).sqrt() } else { 0.01 * high };
        if stable(middle) {
            low = middle;
        } else {
            high = middle;
        }
        if high - low <= ACCURACY * high {
            break;
        }
    }
    Some(high)
}

/// Lanczos' method on -L^-1 G L^-T, every vector kept square to all before it.
struct Lanczos<'a> {
    factor: &'a Cholesky,
    geometric: &'a Skyline,
    basis: Vec<Vec<f64>>,
    diagonal: Vec<f64>,
    /// Beside the diagonal; the last one leads to the next step.
    beside: Vec<f64>,
}

impl<'a> Lanczos<'a> {
    fn new(factor: &'a Cholesky, geometric: &'a Skyline, size: usize) -> Self {
        let start = scattered(size);
        Self { factor, geometric, basis: vec![start], diagonal: Vec::new(), beside: Vec::new() }
    }

    /// One step; true when the vectors span all that the start leads to.
    fn step(&mut self) -> bool {
        let Some(last) = self.basis.last() else { return true };
        let mut next = last.clone();
        self.factor.backward(&mut next);
        next = self.geometric.times(&next);
        self.factor.forward(&mut next);
        for value in &mut next {
            *value = -*value;
        }
        let image = dot(&next, &next).sqrt();
        self.diagonal.push(dot(last, &next));
        for _ in 0..2 {
            for vector in &self.basis {
                let part = dot(vector, &next);
                add_scaled(&mut next, -part, vector);
            }
        }
        let length = dot(&next, &next).sqrt();
        self.beside.push(length);
        if length > 1e-10 * image {
            for value in &mut next {
                *value /= length;
            }
            self.basis.push(next);
            return false;
        }
        true
    }

    /// The largest eigenvalue of the tridiagonal matrix so far, or zero if none is positive.
    fn largest(&self) -> f64 {
        let size = self.diagonal.len();
        let beside = |i: usize| if i == 0 || i >= size { 0.0 } else { self.beside[i - 1] };
        // Gershgorin's circles hold all eigenvalues.
        let bound =
            (0..size).fold(0.0, |most: f64, i| most.max(self.diagonal[i] + beside(i) + beside(i + 1)));
        let all_below = |value: f64| {
            let mut pivot = f64::INFINITY;
            (0..size).all(|i| {
                pivot = value - self.diagonal[i] - beside(i) * beside(i) / pivot;
                pivot > 0.0
            })
        };
        let (mut low, mut high) = (0.0, bound);
        for _ in 0..HALVINGS {
            let middle = 0.5 * (low + high);
            if all_below(middle) {
                high = middle;
            } else {
                low = middle;
            }
        }
        high
    }
}

/// A unit vector without pattern, the same every time: it leans on every eigenvector.
fn scattered(size: usize) -> Vec<f64> {
    // Constants: D. E. Knuth, The Art of Computer Programming, vol. 2, 3.3.4, table 1 (MMIX), from memory.
    let mut seed: u64 = 0x5_DEEC_E66D;
    let mut vector: Vec<f64> = (0..size)
        .map(|_| {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            f64::from(u32::try_from(seed >> 32).unwrap_or(0)) / f64::from(u32::MAX) - 0.5
        })
        .collect();
    let length = dot(&vector, &vector).sqrt().max(f64::MIN_POSITIVE);
    for value in &mut vector {
        *value /= length;
    }
    vector
}

#[cfg(test)]
mod tests {
    use super::*;

    fn diagonal(entries: &[f64]) -> Skyline {
        let mut matrix = Skyline::new(&(0..entries.len()).collect::<Vec<_>>());
        for (row, value) in entries.iter().enumerate() {
            matrix.add(row, row, *value);
        }
        matrix
    }

    fn lowest_of(stiffness: &Skyline, geometric: &Skyline) -> Option<f64> {
        let factor = stiffness.clone().factor().expect("positive definite");
        lowest(stiffness, &factor, geometric)
    }

    #[test]
    fn only_positive_ratios_count_and_the_lowest_of_them() {
        let stiffness = diagonal(&[1.0, 4.0, 2.0, 9.0]);
        let ratio = lowest_of(&stiffness, &diagonal(&[50.0, -1.0, -0.1, -3.0]));
        assert!(ratio.is_some_and(|ratio| (ratio - 3.0).abs() < 1e-5), "{ratio:?}");
        assert_eq!(lowest_of(&stiffness, &diagonal(&[1.0, 2.0, 0.0, 7.0])), None);
        assert_eq!(lowest_of(&stiffness, &diagonal(&[0.0; 4])), None);
        assert_eq!(lowest_of(&stiffness, &diagonal(&[0.0, -1e-8, 0.0, 5.0])), None);
    }

    #[test]
    fn lanczos_finds_what_halving_finds() {
        for (size, spread) in [(1, 1.0), (5, 1.0), (40, 1.0), (130, 1e4)] {
            let first: Vec<usize> = (0..size).map(|row: usize| row.saturating_sub(5)).collect();
            let (mut stiffness, mut geometric) = (Skyline::new(&first), Skyline::new(&first));
            let noise = scattered(4096);
            for row in 0..size {
                for column in first[row]..=row {
                    let value = noise[(97 * row + 31 * column) % noise.len()];
                    geometric.add(row, column, value);
                    // Dominated by its diagonal, hence positive definite.
                    let scale = 1.0 + spread * row as f64 / size as f64;
                    stiffness.add(row, column, if row == column { scale } else { value });
                }
            }
            let (quick, slow) =
                (lowest_of(&stiffness, &geometric), halve(|at| is_stable(&stiffness, &geometric, at), MOST));
            match (quick, slow) {
                (Some(quick), Some(slow)) => assert!((quick / slow - 1.0).abs() < 1e-5, "{quick} or {slow}"),
                (quick, slow) => assert_eq!(quick, slow),
            }
        }
    }
}
