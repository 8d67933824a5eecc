//! A design with its heights computed: what every file of checks is given.
//!
//! Plain `f64` in SI.
use super::allowed;
use super::check::Check;
use super::level::Loaded;
use super::timber::{Rectangle, kept, usable};
use crate::design::Design;
use crate::mechanics::{ArmId, JointId};
use crate::parts::{arm_offset, arm_thickness};

/// A design, and the table it makes at every height looked at.
pub(super) struct Table<'a> {
    pub design: &'a Design,
    pub levels: &'a [Loaded<'a>],
    /// Share of everything that the worse side carries; 0.5 when the load stands in the middle. The weights of the table itself are
    /// taken to lean over with it: on the safe side.
    pub share: f64,
}

impl Table<'_> {
    /// Thickness of an arm, m.
    pub fn arm_thickness(&self) -> f64 {
        arm_thickness(self.design).to_m()
    }

    /// Thickness of rails, beams and cheeks, m.
    pub fn frame_thickness(&self) -> f64 {
        (self.design.arms.thickness * self.design.frames.layers.get()).to_m()
    }

    /// An arm's section without its holes.
    pub fn gross(&self) -> Rectangle {
        gross(self.design)
    }

    /// An arm's section at a hole for a bushing.
    pub fn net(&self) -> Rectangle {
        Rectangle { hole: self.design.running.bush.to_m(), ..self.gross() }
    }

    /// Distance of the middles of two arms on one pin, m.
    pub fn lap(&self) -> f64 {
        arm_offset(self.design).to_m()
    }

    /// Bending strength that may be used, Pa.
    pub fn bending(&self) -> f64 {
        usable(self.design, self.design.strength.bending)
    }

    /// Shear strength that may be used, Pa.
    pub fn shear(&self) -> f64 {
        usable(self.design, self.design.strength.shear)
    }

    /// Bearing strength that may be used, Pa.
    pub fn crushing(&self) -> f64 {
        usable(self.design, self.design.strength.crushing)
    }

    /// k_mod over gamma_M.
    pub fn kept(&self) -> f64 {
        kept(self.design)
    }

    /// Yield strength of bars and axles that may be used, Pa.
    pub fn steel(&self) -> f64 {
        allowed::steel(self.design)
    }

    /// Yield strength of the bolts that may be used, Pa.
    pub fn bolt(&self) -> f64 {
        allowed::bolt(self.design)
    }

    /// Every arm.
    pub fn arms(&self) -> impl Iterator<Item = ArmId> + use<> {
        ArmId::all(self.stages())
    }

    /// Every pivot.
    pub fn joints(&self) -> impl Iterator<Item = JointId> + use<> {
        JointId::all(self.stages())
    }

    /// Number of stages.
    pub fn stages(&self) -> usize {
        usize::try_from(self.design.lift.stages.get()).unwrap_or(1)
    }
}

/// An arm's section without its holes.
pub(super) fn gross(design: &Design) -> Rectangle {
    Rectangle { depth: design.arms.width.to_m(), thickness: arm_thickness(design).to_m(), hole: 0.0 }
}

/// Adds the checks that apply.
pub(super) fn add(list: &mut Vec<Check>, checks: impl IntoIterator<Item = Option<Check>>) {
    list.extend(checks.into_iter().flatten());
}
