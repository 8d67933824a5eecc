//! A straight beam on two supports, with overhang: the deck rails on their pivots, the base rails on their casters.
//!
//! Plain `f64` in SI. Loads act across the beam, up positive; forces along it do not bend it.

use super::section::{Diagram, ElasticLine, PointLoad, Softness, Spread};
use crate::order::order;

/// A beam on two supports.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beam {
    /// Places of the supports, m; they must differ.
    pub supports: [f64; 2],
    /// How it yields.
    pub softness: Softness,
}

impl Beam {
    /// The forces of the two supports on the beam, up positive, N.
    pub fn reactions(&self, loads: &[PointLoad]) -> [f64; 2] {
        let [left, right] = self.supports;
        let force: f64 = loads.iter().map(|load| load.across).sum();
        let moment: f64 = loads.iter().map(|load| load.across * (load.s - left) + load.couple).sum();
        let at_right = -moment / (right - left);
        [-force - at_right, at_right]
    }

    /// Section forces under loads in any order.
    pub fn diagram(&self, loads: &[PointLoad]) -> Diagram {
        let mut all = loads.to_vec();
        for (s, across) in self.supports.into_iter().zip(self.reactions(loads)) {
            all.push(PointLoad { s, across, ..PointLoad::default() });
        }
        order(&mut all, |a, b| a.s.total_cmp(&b.s));
        Diagram::new(&all, Spread::default())
    }

    /// The bent beam under loads in any order, both supports unmoved.
    ///
    /// Source of the special cases it contains: AISC Manual table 3-23; shear by the form factor of the USDA Wood
    /// Handbook, equation 9-2.
    pub fn line(&self, loads: &[PointLoad]) -> ElasticLine {
        let [left, right] = self.supports;
        ElasticLine::new(&self.diagram(loads), self.softness).held_at(left, right)
    }
}
