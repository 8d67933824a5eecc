//! What the space frame and the strength checks need besides the planar mechanism.
//!
//! Plain `f64` in SI. Keys as in the mechanism; values are those of one joint, wheel, board or pin.

use super::names::ArmId;
use serde::{Deserialize, Serialize};

/// Depth, joints and braces of the three-dimensional frame. z is lateral, its middle 0.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
pub struct Space {
    /// Distance between the two A arms of a stage, m.
    pub b: f64,
    /// Centre-to-centre distance of arms A and B along z, m.
    pub arm_offset: f64,
    /// Pin diameter, m.
    pub d_pin: f64,
    /// Diameter of the wheel axles, m.
    pub d_axle: f64,
    /// Place of the wheels from the middle, m.
    pub wheel_z: f64,
    /// Reference point on the deck from the top pivot, m.
    pub ref_x: f64,
    /// Corner of the deck from the reference point, along x, m.
    pub corner_dx: f64,
    /// Corner of the deck from the middle, along z, m.
    pub corner_z: f64,
    /// Height of the load's centre of gravity above the reference point, m.
    #[serde(default)]
    pub h_cg: f64,
    /// Stiffness of a pin in its holes.
    pub joint: SpaceJoint,
    /// Stiffness of a wheel, N/m.
    pub k_wheel: f64,
    /// Sideways guide of a base wheel, N/m; zero is no guide.
    #[serde(default)]
    pub k_lateral_base: f64,
    /// Sideways guide of a top wheel, N/m; zero is no guide.
    #[serde(default)]
    pub k_lateral_top: f64,
    /// Stiffness of the driven carriage against yaw, N m/rad.
    #[serde(default)]
    pub k_yaw_carriage: f64,
    /// Boards between the two arms of one name.
    #[serde(default)]
    pub braces: Vec<Brace>,
    /// Crossed bars between the two arms of one name.
    #[serde(default)]
    pub diagonals: Vec<Diagonal>,
    /// Weight for the second-order stiffness, N.
    #[serde(rename = "pdelta_W", default)]
    pub pdelta_w: f64,
    /// Leaves the shear deformation of all beams out.
    #[serde(default)]
    pub no_shear: bool,
}

/// Stiffness of a pin in its holes.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
pub struct SpaceJoint {
    /// Across the pin, N/m.
    pub slip: f64,
    /// Along the pin, N/m.
    pub axial: f64,
    /// Rocking of the pin in its holes, N m/rad.
    pub rock: f64,
    /// About the pin, N m/rad; zero is a hinge.
    #[serde(default)]
    pub rz: f64,
}

/// A board between the left and right arm of one name.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
pub struct Brace {
    /// The arms.
    pub arm: ArmId,
    /// Fraction of the arm.
    pub f: f64,
    /// Size along the arm's axis, m.
    pub h_along: f64,
    /// Size across it, m.
    pub h_perp: f64,
    /// Modulus of elasticity, Pa.
    #[serde(rename = "E")]
    pub e: f64,
    /// Shear modulus, Pa.
    #[serde(rename = "G")]
    pub g: f64,
    /// Rotational stiffness of each end, N m/rad; rigid when absent.
    #[serde(default)]
    pub k_conn: Option<f64>,
}

/// Crossed bars from one side's arm to the other's.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
pub struct Diagonal {
    /// The arms.
    pub arm: ArmId,
    /// Fraction on one side.
    pub f1: f64,
    /// Fraction on the other side.
    pub f2: f64,
    /// Axial stiffness, N.
    #[serde(rename = "EA")]
    pub ea: f64,
}

/// Sizes for the strength checks.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
pub struct Strength {
    /// Diameter of the hole at the centre pin, m.
    pub hole_d: f64,
    /// Pin diameter, m.
    pub d_pin: f64,
    /// Centre-to-centre distance of the two members of a lap joint, m.
    pub pin_arm: f64,
    /// Buckling length factor out of the plane.
    #[serde(rename = "K_out")]
    pub k_out: f64,
    /// Sizes of the screw, its nut and washer.
    #[serde(default)]
    pub screw: Option<StrengthScrew>,
}

/// Sizes of the screw, its nut and washer.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
pub struct StrengthScrew {
    /// Root diameter, m.
    pub d_root: f64,
    /// Mean diameter, m.
    pub d_mean: f64,
    /// Major diameter, m.
    pub d_major: f64,
    /// Pitch, m.
    pub pitch: f64,
    /// Working depth of the thread, m.
    pub thread_h: f64,
    /// Length of the nut, m.
    pub nut_len: f64,
    /// Modulus of elasticity, Pa.
    #[serde(rename = "E")]
    pub e: f64,
    /// Yield strength, Pa.
    #[serde(rename = "Sy")]
    pub sy: f64,
    /// Buckling length factor.
    #[serde(rename = "K")]
    pub k: f64,
    /// Outer diameter of the washer, m.
    #[serde(rename = "washer_D")]
    pub washer_outer: f64,
    /// Hole of the washer, m.
    #[serde(rename = "washer_d")]
    pub washer_inner: f64,
}
