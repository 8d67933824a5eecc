//! Section forces along a straight bar, and how it bends under them.
//!
//! Plain `f64` in SI. The bar's own axes: along it, and across it (along turned by +90 degrees). For the loads
//! before a section: N = -sum(along), tension positive; V = -sum(across); M = sum((s - s_k) across) - sum(couples),
//! so that a bar supported at its ends and pressed against its across axis in between has M > 0.

/// A load at one place of a bar.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PointLoad {
    /// Place along the bar, m.
    pub s: f64,
    /// Force along the bar, N.
    pub along: f64,
    /// Force across the bar, N.
    pub across: f64,
    /// Couple, counter-clockwise, N m.
    pub couple: f64,
}

/// A load spread evenly over the whole bar, N/m.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Spread {
    /// Along the bar.
    pub along: f64,
    /// Across the bar.
    pub across: f64,
}

/// Forces in one section.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Section {
    /// Axial force, tension positive, N.
    pub n: f64,
    /// Shear force, N.
    pub v: f64,
    /// Bending moment, N m.
    pub m: f64,
}

/// A stretch of a bar between two loads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// Where it begins, m.
    pub from: f64,
    /// Where it ends, m.
    pub to: f64,
    start: Section,
    spread: Spread,
}

impl Piece {
    /// The section forces at `s`, from just behind the load at its beginning to just before that at its end.
    pub fn at(&self, s: f64) -> Section {
        let x = s - self.from;
        Section {
            n: self.start.n - self.spread.along * x,
            v: self.start.v - self.spread.across * x,
            m: self.start.m - self.start.v * x + self.spread.across * x * x / 2.0,
        }
    }

    /// Where inside the piece the moment is stationary.
    fn summit(&self) -> Option<f64> {
        let s = self.from + self.start.v / self.spread.across;
        (s > self.from && s < self.to).then_some(s)
    }
}

/// Section forces of a whole bar.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Diagram {
    /// Its stretches, in order.
    pub pieces: Vec<Piece>,
}

/// The extremes along a bar.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Extremes {
    /// Largest bending moment of either sign, N m.
    pub moment: f64,
    /// Where it is, m.
    pub at: f64,
    /// Least axial force, the most compression, N.
    pub n_min: f64,
    /// Greatest axial force, N.
    pub n_max: f64,
}

impl Diagram {
    /// The diagram of a bar under loads in order of their place. `spread` acts from the first to the last of them.
    pub fn new(loads: &[PointLoad], spread: Spread) -> Self {
        let mut pieces: Vec<Piece> = Vec::with_capacity(loads.len());
        let mut at = Section::default();
        for (load, next) in loads.iter().zip(loads.iter().skip(1)) {
            at.n -= load.along;
            at.v -= load.across;
            at.m -= load.couple;
            if next.s > load.s {
                let piece = Piece { from: load.s, to: next.s, start: at, spread };
                at = piece.at(next.s);
                pieces.push(piece);
            }
        }
        Self { pieces }
    }

    /// The section forces just before and just behind `s`; equal where no load stands, none outside the bar.
    pub fn around(&self, s: f64) -> Option<[Section; 2]> {
        let before = self.pieces.iter().find(|piece| s <= piece.to)?;
        let behind = self.pieces.iter().rev().find(|piece| s >= piece.from)?;
        Some([before.at(s), behind.at(s)])
    }

    /// The section forces at both places and either side of every load between them: of a bar without spread load all extremes there.
    /// None outside the bar.
    pub fn between(&self, from: f64, to: f64) -> impl Iterator<Item = Section> + '_ {
        let inside = self.pieces.iter().filter(move |piece| piece.from <= to && piece.to >= from);
        inside.flat_map(move |piece| [piece.at(piece.from.max(from)), piece.at(piece.to.min(to))])
    }

    /// The least axial force, the most compression, N.
    pub fn least_axial(&self) -> f64 {
        let ends = self.pieces.iter().flat_map(|piece| [piece.at(piece.from).n, piece.at(piece.to).n]);
        ends.fold(f64::INFINITY, f64::min)
    }

    /// The section with the largest |m| / modulus + |n| / area, the stress at the edge of a bar of that section, anywhere
    /// along the bar.
    pub fn worst_section(&self, modulus: f64, area: f64) -> Section {
        let (by_moment, by_force) = (modulus.recip(), area.recip());
        let stress = |section: &Section| section.m.abs() * by_moment + section.n.abs() * by_force;
        let (mut most, mut largest) = (Section::default(), 0.0);
        for piece in &self.pieces {
            // Between its ends the sum of a parabola and a straight line has its summits where its slope vanishes.
            let tilt = modulus / area * piece.spread.along;
            let summit = |sign: f64| piece.from + (piece.start.v + sign * tilt) / piece.spread.across;
            let inside = |s: &f64| *s > piece.from && *s < piece.to;
            let summits = [summit(-1.0), summit(1.0)].into_iter().filter(inside);
            for s in [piece.from, piece.to].into_iter().chain(summits) {
                let section = piece.at(s);
                let here = stress(&section);
                if here > largest {
                    (most, largest) = (section, here);
                }
            }
        }
        most
    }

    /// The extremes over all sections.
    pub fn extremes(&self) -> Extremes {
        let mut worst = Extremes { n_min: f64::INFINITY, n_max: f64::NEG_INFINITY, ..Extremes::default() };
        for piece in &self.pieces {
            for s in [Some(piece.from), piece.summit(), Some(piece.to)].into_iter().flatten() {
                let section = piece.at(s);
                worst.n_min = worst.n_min.min(section.n);
                worst.n_max = worst.n_max.max(section.n);
                if section.m.abs() > worst.moment {
                    (worst.moment, worst.at) = (section.m.abs(), s);
                }
            }
        }
        worst
    }
}

/// How much a metre of bar yields to one unit of each section force; zero is rigid.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Softness {
    /// 1/EA, 1/N.
    pub axial: f64,
    /// 1/EI, 1/(N m2).
    pub bending: f64,
    /// 1/(kappa G A), 1/N.
    pub shear: f64,
}

impl Softness {
    /// Of a rail with bending stiffness `ei` and shear stiffness `kga`. Without the first the rail is rigid, without
    /// the second, or with zero, it does not shear.
    pub fn of_rail(ei: Option<f64>, kga: Option<f64>) -> Option<Self> {
        let shear = kga.filter(|kga| *kga > 0.0).map_or(0.0, f64::recip);
        ei.map(|ei| Self { axial: 0.0, bending: ei.recip(), shear })
    }
}

/// Displacement of one point of a bent bar in the bar's own axes.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Bend {
    /// Along, m.
    pub along: f64,
    /// Across, m.
    pub across: f64,
    /// Turn of the bar's axis without shear, counter-clockwise, rad.
    pub turn: f64,
}

/// A bar bent by its section forces, small displacements.
#[derive(Clone, Debug, PartialEq)]
pub struct ElasticLine {
    pieces: Vec<(Piece, Bend)>,
    softness: Softness,
}

impl ElasticLine {
    /// The bar under `diagram`, held fast at its beginning.
    pub fn new(diagram: &Diagram, softness: Softness) -> Self {
        let mut line = Self { pieces: Vec::with_capacity(diagram.pieces.len()), softness };
        let mut at = Bend::default();
        for piece in &diagram.pieces {
            line.pieces.push((*piece, at));
            at = line.bend(piece, at, piece.to);
        }
        line
    }

    /// The same bar held at two places instead, neither of which then moves across.
    pub fn held_at(mut self, first: f64, second: f64) -> Self {
        let (low, high) = (self.at(first).across, self.at(second).across);
        let turn = (high - low) / (second - first);
        for (piece, start) in &mut self.pieces {
            start.across -= low + turn * (piece.from - first);
            start.turn -= turn;
        }
        self
    }

    /// The displacement at `s`; straight on beyond the bar's ends.
    pub fn at(&self, s: f64) -> Bend {
        let Some((first, start)) = self.pieces.first() else { return Bend::default() };
        if s <= first.from {
            return Bend { across: start.across + start.turn * (s - first.from), ..*start };
        }
        let inside = self.pieces.iter().find(|(piece, _)| s <= piece.to);
        match inside.or(self.pieces.last()) {
            Some((piece, start)) => {
                let at = self.bend(piece, *start, s.min(piece.to));
                Bend { across: at.across + at.turn * (s - piece.to).max(0.0), ..at }
            }
            None => Bend::default(),
        }
    }

    fn bend(&self, piece: &Piece, start: Bend, s: f64) -> Bend {
        let x = s - piece.from;
        let (Section { n, v, m }, Spread { along, across }) = (piece.start, piece.spread);
        let turned = m * x - v * x * x / 2.0 + across * x * x * x / 6.0;
        let bent = x * x * (m / 2.0 - v * x / 6.0 + across * x * x / 24.0);
        Bend {
            along: start.along + self.softness.axial * (n * x - along * x * x / 2.0),
            across: start.across
                + start.turn * x
                + self.softness.bending * bent
                + self.softness.shear * (v * x - across * x * x / 2.0),
            turn: start.turn + self.softness.bending * turned,
        }
    }

    /// The work that loads on the same bar do on these displacements: by virtual work the integral of
    /// M m/EI + N n/EA + V v/(kappa G A) when the loads are in equilibrium among themselves.
    pub fn work(&self, loads: &[PointLoad]) -> f64 {
        let work = |load: &PointLoad| {
            let at = self.at(load.s);
            load.along * at.along + load.across * at.across + load.couple * at.turn
        };
        loads.iter().map(work).sum()
    }
}
