//! Straight bars: sections, flexibility, and the stiffness and second-order stiffness that follow.
//!
//! Plain `f64` in SI. A bar has three axes of its own: the first from its first to its second end, the other two those
//! of its section. Bending follows Timoshenko: shear adds L/(kappa G A) to the flexibility and turns nothing.
//! Sources: torsion of a rectangle: W. C. Young, R. G. Budynas, Roark's Formulas for Stress and Strain, table 10.1;
//! consistent geometric stiffness: J. S. Przemieniecki, Theory of Matrix Structural Analysis, chapter 15 (both from
//! memory).

use super::coupling::{Blocks, Coupling, along, lever};
use glam::{DMat3, DVec3};
use std::f64::consts::PI;

/// Modulus of elasticity of steel pins and axles, Pa.
const STEEL_E: f64 = 2.1e11;
/// Shear modulus of steel pins and axles, Pa.
const STEEL_G: f64 = 8.1e10;
/// Shear coefficient of a round section.
const ROUND_KAPPA: f64 = 0.9;

/// The stiffness of a section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    /// Against stretching, E A, N.
    pub ea: f64,
    /// Against torsion, G J, N m2.
    pub gj: f64,
    /// Against bending along the second and third axis, E I, N m2.
    pub ei: [f64; 2],
    /// Against shear, kappa G A, N; infinite leaves shear out.
    pub kga: f64,
}

impl Section {
    /// A rectangle `second` by `third`, m, along those axes; shear coefficient `kappa`.
    pub fn rectangle(e: f64, g: f64, kappa: f64, second: f64, third: f64) -> Self {
        let area = second * third;
        Self {
            ea: e * area,
            gj: g * torsion_of_rectangle(second, third),
            ei: [e * area * second * second / 12.0, e * area * third * third / 12.0],
            kga: kappa * g * area,
        }
    }

    /// A round steel bar of diameter `d`, m.
    pub fn round(d: f64) -> Self {
        let area = PI * d * d / 4.0;
        let inertia = area * d * d / 16.0;
        Self {
            ea: STEEL_E * area,
            gj: STEEL_G * 2.0 * inertia,
            ei: [STEEL_E * inertia; 2],
            kga: ROUND_KAPPA * STEEL_G * area,
        }
    }

    /// The same section, yielding to no shear.
    pub fn without_shear(self) -> Self {
        Self { kga: f64::INFINITY, ..self }
    }
}

/// Torsion constant of a rectangle, m4: h s^3 (1/3 - 0.21 (s/h) (1 - s^4/(12 h^4))), h the longer side.
fn torsion_of_rectangle(a: f64, b: f64) -> f64 {
    let (long, short) = (a.max(b), a.min(b));
    let slender = short / long;
    let square = slender * slender;
    long * short * short * short * (1.0 / 3.0 - 0.21 * slender * (1.0 - square * square / 12.0))
}

/// What yields at the ends of a bar, in its own axes: flexibilities, zero where rigid, infinite where free.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Ends {
    /// Turning of the first end, rad/(N m).
    pub first_turn: DVec3,
    /// Shift of the second end, m/N.
    pub second_shift: DVec3,
    /// Turning of the second end, rad/(N m).
    pub second_turn: DVec3,
}

/// A straight bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bar {
    /// Place of its second end, m.
    pub end: DVec3,
    /// Its axes as columns.
    pub axes: DMat3,
    /// Its length, m; may be zero where the ends yield.
    pub length: f64,
    /// Its section.
    pub section: Section,
    /// What yields at its ends.
    pub ends: Ends,
}

impl Bar {
    /// The bar as a coupling at its second end.
    pub fn coupling(&self) -> Coupling {
        let (section, ends, l) = (&self.section, &self.ends, self.length);
        let stretch = (l / section.ea + ends.second_shift.x).recip();
        let torsion = (l / section.gj + ends.first_turn.x + ends.second_turn.x).recip();
        let second = self.bending(section.ei[0], ends.second_shift.y, ends.first_turn.z, ends.second_turn.z);
        let third = self.bending(section.ei[1], ends.second_shift.z, ends.first_turn.y, ends.second_turn.y);
        // A turn about the second axis lowers what a turn about the third lifts: the sign of its mixed term is opposite.
        let force_turn = DMat3::from_cols(
            DVec3::ZERO,
            DVec3::new(0.0, 0.0, -third.mixed),
            DVec3::new(0.0, second.mixed, 0.0),
        );
        let global = |local: DMat3| self.axes * local * self.axes.transpose();
        Coupling {
            at: self.end,
            force_shift: global(DMat3::from_diagonal(DVec3::new(stretch, second.shift, third.shift))),
            force_turn: global(force_turn),
            couple_turn: global(DMat3::from_diagonal(DVec3::new(torsion, third.turn, second.turn))),
        }
    }

    /// The stiffness of the second end in one plane: the inverse of its flexibility as a cantilever.
    fn bending(&self, ei: f64, shift: f64, first_turn: f64, second_turn: f64) -> Bending {
        let l = self.length;
        let by_force = l * l * l / (3.0 * ei) + l / self.section.kga + first_turn * l * l + shift;
        let mixed = l * l / (2.0 * ei) + first_turn * l;
        let by_couple = l / ei + first_turn + second_turn;
        let determinant = by_force * by_couple - mixed * mixed;
        Bending { shift: by_couple / determinant, mixed: -mixed / determinant, turn: by_force / determinant }
    }
}

/// Stiffness of a bar's second end in one plane.
struct Bending {
    shift: f64,
    mixed: f64,
    turn: f64,
}

/// What the axial force `tension` of a bar adds to the stiffness of its two nodes, from cubic shapes in both planes.
///
/// `axis` is the unit vector from the first to the second node, `length` their distance, m.
pub fn geometric(axis: DVec3, length: f64, tension: f64) -> Blocks {
    let scale = tension / (30.0 * length);
    // Shifts square to the bar, and the slope a turn gives it.
    let square = DMat3::IDENTITY - along(axis, 1.0);
    let slope = lever(axis);
    let shift = 36.0 * scale * square;
    let mixed = 3.0 * length * scale * slope;
    let near = 4.0 * length * length * scale * square;
    let far = -length * length * scale * square;
    let back = mixed.transpose();
    [
        [shift, mixed, -shift, mixed],
        [back, near, -back, far],
        [-shift, -mixed, shift, -mixed],
        [back, far, -back, near],
    ]
}
