//! Tables of which none beats another in everything.
use super::figures::Figures;
use super::targets::MEASURES;

/// A table that was judged and kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Kept {
    /// Its place in the space.
    pub at: usize,
    /// Its figures.
    pub figures: Figures,
    steps: [i64; MEASURES],
}

impl Kept {
    pub(super) fn new(at: usize, figures: Figures) -> Self {
        Self { at, figures, steps: figures.steps() }
    }
}

/// The tables kept so far, by their places. A table leaves when another is at least as good in every figure, counted in steps that one would
/// notice; of two that are alike the one that comes first in the space stays.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Front(Vec<Kept>);

impl Front {
    /// The tables, in the order of the space.
    #[must_use]
    pub fn kept(&self) -> &[Kept] {
        &self.0
    }

    /// Whether a table with figures not below some bounds can be beaten already: true only where it would not stay.
    pub(super) fn beats(&self, at: usize, bounds: &Figures) -> bool {
        let steps = bounds.steps();
        self.0.iter().any(|kept| beats((kept.at, &kept.steps), (at, &steps)))
    }

    /// Takes a table in, unless one here is as good; those that it beats leave.
    pub fn take(&mut self, at: usize, figures: Figures) {
        let new = Kept::new(at, figures);
        if self.0.iter().any(|kept| beats((kept.at, &kept.steps), (at, &new.steps))) {
            return;
        }
        self.0.retain(|kept| !beats((at, &new.steps), (kept.at, &kept.steps)));
        let place = self.0.partition_point(|kept| kept.at < at);
        self.0.insert(place, new);
    }
}

/// Whether the first table is at least as good everywhere, and better somewhere or earlier.
fn beats(one: (usize, &[i64; MEASURES]), other: (usize, &[i64; MEASURES])) -> bool {
    one.1.iter().zip(other.1).all(|(one, other)| one <= other) && (one.1 != other.1 || one.0 < other.0)
}
