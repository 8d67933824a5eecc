//! Symmetric matrices with an envelope, and their Cholesky factors.
//!
//! Of every row only the part from its first entry to the diagonal is stored; the factor fills nothing outside it. For
//! a frame numbered from its foot to its head that part stays as short as the frame is slender.
//!
//! Method: A. Jennings, "A compact storage scheme for the solution of symmetric linear simultaneous equations", The
//! Computer Journal 9 (1966), from memory.

/// A symmetric matrix, stored by rows of its lower triangle from the first entry on.
#[derive(Clone, Debug, PartialEq)]
pub struct Skyline {
    /// Column of the first stored entry of every row.
    first: Vec<usize>,
    /// Where every row begins in `values`, and where the last one ends.
    start: Vec<usize>,
    values: Vec<f64>,
}

impl Skyline {
    /// A zero matrix whose row `i` is stored from column `first[i]` on; a column beyond the diagonal is taken as the
    /// diagonal.
    pub fn new(first: &[usize]) -> Self {
        let first: Vec<usize> = first.iter().enumerate().map(|(row, &column)| column.min(row)).collect();
        let mut start = Vec::with_capacity(first.len() + 1);
        let mut end = 0;
        start.push(end);
        for (row, column) in first.iter().enumerate() {
            end += row - column + 1;
            start.push(end);
        }
        Self { first, start, values: vec![0.0; end] }
    }

    /// Number of rows.
    pub fn size(&self) -> usize {
        self.first.len()
    }

    /// Adds to an entry of the lower triangle. Entries above the diagonal or outside the envelope are left out.
    pub fn add(&mut self, row: usize, column: usize, value: f64) {
        if column <= row && self.first.get(row).is_some_and(|first| *first <= column) {
            self.values[self.start[row + 1] - 1 - (row - column)] += value;
        }
    }

    /// This matrix and `factor` times another one of the same envelope.
    pub fn plus(&self, factor: f64, other: &Self) -> Self {
        let values = self.values.iter().zip(&other.values).map(|(own, more)| own + factor * more).collect();
        Self { first: self.first.clone(), start: self.start.clone(), values }
    }

    /// The product with a vector.
    pub fn times(&self, vector: &[f64]) -> Vec<f64> {
        let mut product = vec![0.0; vector.len()];
        for row in 0..self.size() {
            let (first, entries) = self.row(row);
            let (left, diagonal) = entries.split_at(entries.len() - 1);
            product[row] += dot(left, &vector[first..row]) + diagonal[0] * vector[row];
            add_scaled(&mut product[first..row], vector[row], left);
        }
        product
    }

    /// The factor L of L L^T; none where the matrix is not positive definite or not finite.
    pub fn factor(mut self) -> Option<Cholesky> {
        let mut inverse = Vec::with_capacity(self.size());
        let mut least = 1.0_f64;
        for row in 0..self.size() {
            let first = self.first[row];
            let (done, rest) = self.values.split_at_mut(self.start[row]);
            let entries = &mut rest[..=row - first];
            for column in first..row {
                let begin = self.first[column].max(first);
                let above =
                    &done[self.start[column] + begin - self.first[column]..self.start[column + 1] - 1];
                let known = dot(above, &entries[begin - first..column - first]);
                entries[column - first] = (entries[column - first] - known) * inverse[column];
            }
            let (left, diagonal) = entries.split_at_mut(row - first);
            let pivot = diagonal[0] - dot(left, left);
            if !(pivot > 0.0 && pivot.is_finite()) {
                return None;
            }
            least = least.min(pivot / diagonal[0]);
            diagonal[0] = pivot.sqrt();
            inverse.push(diagonal[0].recip());
        }
        Some(Cholesky { lower: self, inverse, least })
    }

    /// The first column and the entries of a row up to the diagonal.
    fn row(&self, row: usize) -> (usize, &[f64]) {
        (self.first[row], &self.values[self.start[row]..self.start[row + 1]])
    }
}

/// The factor L of a positive definite matrix L L^T.
#[derive(Clone, Debug, PartialEq)]
pub struct Cholesky {
    lower: Skyline,
    /// Reciprocals of the diagonal.
    inverse: Vec<f64>,
    least: f64,
}

impl Cholesky {
    /// The least share of a diagonal entry that was left as pivot: about 1e-16 divided by it is the relative error of
    /// a solution.
    pub fn least_pivot(&self) -> f64 {
        self.least
    }

    /// Replaces x by the solution of L L^T y = x.
    pub fn solve(&self, x: &mut [f64]) {
        self.forward(x);
        self.backward(x);
    }

    /// Replaces x by the solution of L y = x.
    pub fn forward(&self, x: &mut [f64]) {
        for row in 0..self.inverse.len() {
            let (first, entries) = self.lower.row(row);
            let known = dot(&entries[..row - first], &x[first..row]);
            x[row] = (x[row] - known) * self.inverse[row];
        }
    }

    /// Replaces x by the solution of L^T y = x.
    pub fn backward(&self, x: &mut [f64]) {
        for row in (0..self.inverse.len()).rev() {
            let (first, entries) = self.lower.row(row);
            x[row] *= self.inverse[row];
            let solved = x[row];
            add_scaled(&mut x[first..row], -solved, &entries[..row - first]);
        }
    }
}

/// The scalar product of two vectors, in four sums so that a processor can take several products at once.
pub fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut sums = [0.0; 4];
    let (a_blocks, b_blocks) = (a.chunks_exact(4), b.chunks_exact(4));
    let rest: f64 = a_blocks.remainder().iter().zip(b_blocks.remainder()).map(|(x, y)| x * y).sum();
    for (x, y) in a_blocks.zip(b_blocks) {
        for lane in 0..4 {
            sums[lane] += x[lane] * y[lane];
        }
    }
    (sums[0] + sums[2]) + (sums[1] + sums[3]) + rest
}

/// Adds `factor` times `b` to `a`.
pub fn add_scaled(a: &mut [f64], factor: f64, b: &[f64]) {
    for (x, y) in a.iter_mut().zip(b) {
        *x += factor * y;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The matrix with 2 on the diagonal and -1 beside it, its last row coupled to the first: inverse known in closed form.
    fn ring(size: usize, corner: f64) -> Skyline {
        let mut first: Vec<usize> = (0..size).map(|row| row.saturating_sub(1)).collect();
        first[size - 1] = 0;
        let mut matrix = Skyline::new(&first);
        for row in 0..size {
            matrix.add(row, row, 2.0);
            if row > 0 {
                matrix.add(row, row - 1, -1.0);
            }
        }
        matrix.add(size - 1, 0, corner);
        matrix
    }

    #[test]
    fn a_string_under_one_load_has_its_closed_form() {
        // -u'' = point load at node k of a string with n inner nodes: u_i = (i+1)(n-k)/(n+1) up to k, mirrored after it.
        let (n, k) = (11, 4);
        let factor = ring(n, 0.0).factor().expect("positive definite");
        let mut x = vec![0.0; n];
        x[k] = 1.0;
        factor.solve(&mut x);
        for (i, u) in x.iter().enumerate() {
            let (low, high) = (i.min(k) as f64, i.max(k) as f64);
            let want = (low + 1.0) * (n as f64 - high) / (n as f64 + 1.0);
            assert!((u - want).abs() < 1e-14, "node {i}: {u} instead of {want}");
        }
        assert!(factor.least_pivot() > 0.4 && factor.least_pivot() <= 1.0);
    }

    #[test]
    fn solving_undoes_multiplying() {
        let matrix = ring(13, 0.5);
        let want: Vec<f64> = (0..13).map(|i| f64::from(i % 5) - 1.5).collect();
        let mut x = matrix.times(&want);
        matrix.factor().expect("positive definite").solve(&mut x);
        assert!(x.iter().zip(&want).all(|(x, want)| (x - want).abs() < 1e-13), "{x:?}");
    }

    #[test]
    fn what_is_not_positive_definite_has_no_factor() {
        // The ring closed with -1 lets itself be shifted as a whole; beyond that it is indefinite.
        assert!(ring(6, -1.5).factor().is_none());
        assert!(ring(6, f64::NAN).factor().is_none());
    }

    #[test]
    fn sums_and_left_out_entries() {
        let mut matrix = ring(5, 0.0);
        matrix.add(1, 3, 7.0);
        matrix.add(3, 0, 7.0);
        matrix.add(9, 9, 7.0);
        assert_eq!(matrix, ring(5, 0.0));
        let doubled = matrix.plus(1.0, &matrix).times(&[1.0; 5]);
        assert!(
            doubled.iter().zip([2.0, 0.0, 0.0, 0.0, 2.0]).all(|(have, want)| (have - want).abs() < 1e-15)
        );
    }
}
