//! The mechanism as the mechanics takes it: the idealised planar linkage, its loads, drive and stiffnesses.
//!
//! Plain `f64` in SI: N, m, rad, kg, Pa. Planar axes: x to the right from the fixed pivots, y up. Weights, forces
//! and stiffnesses of rails are totals of all parallel scissor planes; sizes of an arm or a pin are those of one.
//! The keys when read from JSON are the short ones of the trade's formulas (`L`, `W`, `E`); unknown keys are
//! ignored. An absent stiffness is rigid, an absent clearance or friction is zero.

use super::names::{ArmId, JointKind};
use super::space::{Space, Strength};
use serde::{Deserialize, Serialize};

/// A whole lifting table, idealised.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
pub struct Mechanism {
    /// Number of stages, 1 to 8.
    pub n: usize,
    /// Arm length between its end pivots, m.
    #[serde(rename = "L")]
    pub length: f64,
    /// Where the centre pin sits, as a fraction of the arm from its lower end.
    #[serde(default)]
    pub c: Centre,
    /// Number of parallel scissor planes.
    #[serde(default = "two")]
    pub sides: f64,
    /// Height of the base wheel axle above the base pivot, m.
    #[serde(default)]
    pub db: f64,
    /// Height of the top wheel axle above the top pivot, in the top frame, m.
    #[serde(default)]
    pub dt: f64,
    /// Height of the base pivot above the floor, m.
    #[serde(default)]
    pub h_base: f64,
    /// Height of the deck above the top pivot, m.
    #[serde(default)]
    pub h_deck: f64,
    /// The arm.
    pub arm: Arm,
    /// Further masses on the arms.
    #[serde(default)]
    pub lumps: Vec<Lump>,
    /// Mass of the top frame and deck, kg.
    #[serde(default)]
    pub top_mass: f64,
    /// Centre of gravity of the top frame, from the top pivot along the frame, m.
    #[serde(default)]
    pub top_cg_x: f64,
    /// Mass carried by the base wheels alone, kg.
    #[serde(default)]
    pub base_carriage_mass: f64,
    /// Mass that rides on the top wheel axle, kg.
    #[serde(default)]
    pub top_carriage_mass: f64,
    /// Mass of the base frame, kg.
    #[serde(default)]
    pub base_mass: f64,
    /// Centre of gravity of the base frame, m.
    #[serde(default)]
    pub base_cg_x: f64,
    /// The live load.
    pub load: Load,
    /// Where the screw acts.
    pub drive: Drive,
    /// Friction of pivots and wheels.
    #[serde(default)]
    pub friction: Friction,
    /// The screw; without it there are no torques.
    #[serde(default)]
    pub screw: Option<Screw>,
    /// Slip stiffness of one joint or wheel, N/m.
    #[serde(default)]
    pub joint_k: JointStiffness,
    /// The base rails on their casters.
    #[serde(default)]
    pub base: Base,
    /// The deck rails.
    #[serde(default)]
    pub top: Rails,
    /// Clearances.
    #[serde(default)]
    pub clearance: Clearance,
    /// Stops of the base carriage.
    #[serde(default)]
    pub range: Range,
    /// What the space frame needs besides.
    #[serde(default)]
    pub model3d: Option<Space>,
    /// What the strength checks need besides.
    #[serde(default)]
    pub strength: Option<Strength>,
}

fn two() -> f64 {
    2.0
}

/// Centre-pin fractions: one for all stages or one a stage, from the base.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(untagged)]
pub enum Centre {
    /// The same in every stage.
    Same(f64),
    /// One a stage.
    Each(Vec<f64>),
}

impl Default for Centre {
    fn default() -> Self {
        Self::Same(0.5)
    }
}

impl Centre {
    /// The fraction of a stage counted from 1; none where the list is too short.
    pub fn of(&self, stage: usize) -> Option<f64> {
        match self {
            Self::Same(c) => Some(*c),
            Self::Each(list) => list.get(stage.checked_sub(1)?).copied(),
        }
    }
}

/// An arm: a straight rectangular bar, all alike.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
pub struct Arm {
    /// Width in the plane of the linkage, m.
    pub w: f64,
    /// Thickness, m.
    pub t: f64,
    /// Modulus of elasticity, Pa.
    #[serde(rename = "E", default)]
    pub e: Option<f64>,
    /// Shear modulus, Pa; zero leaves shear out.
    #[serde(rename = "G", default)]
    pub g: f64,
    /// Shear coefficient.
    #[serde(default = "five_sixths")]
    pub kappa: f64,
    /// Mass of one arm, kg.
    #[serde(default)]
    pub mass: f64,
    /// From an end pivot to the end of the wood, m.
    #[serde(default)]
    pub end_margin: f64,
}

fn five_sixths() -> f64 {
    5.0 / 6.0
}

/// A mass on an arm.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
pub struct Lump {
    /// The arm that carries it.
    pub arm: ArmId,
    /// Fraction of the arm from its lower end.
    pub f: f64,
    /// Mass of all sides together, kg.
    pub mass: f64,
}

/// The live load on the deck.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
pub struct Load {
    /// Weight, N.
    #[serde(rename = "W")]
    pub weight: f64,
    /// Place from the top pivot along the deck, m; any sign, may overhang.
    pub xw: f64,
    /// Height of the weight's centre above the top pivot, m; the deck's when absent.
    #[serde(default)]
    pub yw: Option<f64>,
    /// Horizontal push at `xw`, N, positive to the right.
    #[serde(rename = "P", default)]
    pub push: f64,
    /// Height of the push above the top pivot, m; the deck's when absent.
    #[serde(default)]
    pub yp: Option<f64>,
}

/// The drive: where the screw acts and how stiff its line is.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
pub struct Drive {
    /// Where the screw acts.
    #[serde(flatten)]
    pub kind: DriveKind,
    /// Stiffness of the screw and its ends; rigid when absent.
    #[serde(default)]
    pub stiff: DriveStiffness,
}

/// The four places for the screw.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum DriveKind {
    /// Along the base, on the base wheel axle.
    BaseCarriage {
        /// The end of the rail where the thrust bearing sits.
        #[serde(default)]
        anchor: Anchor,
        /// Place of the thrust bearing from the base pivot, m.
        #[serde(default)]
        x_anchor: f64,
    },
    /// Along the top frame, on the top wheel axle.
    TopCarriage {
        /// The end of the rail where the thrust bearing sits.
        #[serde(default)]
        anchor: Anchor,
        /// Place of the thrust bearing from the top pivot, m.
        #[serde(default)]
        x_anchor: f64,
    },
    /// Between the two side pivots above a stage; it acts on the lower arms.
    MidPivot {
        /// The stage beneath, 1 to n - 1.
        #[serde(default = "one")]
        level: usize,
    },
    /// Inclined, between two points of the linkage or its frames.
    Strut {
        /// One end.
        #[serde(rename = "P")]
        p: Attachment,
        /// The other end.
        #[serde(rename = "Q")]
        q: Attachment,
    },
}

fn one() -> usize {
    1
}

/// The end of the rail where the thrust bearing sits.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Anchor {
    /// At the fixed pivot: the load pulls the screw.
    #[default]
    FixedEnd,
    /// Beyond the wheels: the load pushes the screw.
    FarEnd,
}

/// An end of a strut.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize)]
#[serde(try_from = "RawAttachment", into = "RawAttachment")]
pub enum Attachment {
    /// On the base, from the base pivot, m.
    Base {
        /// To the right, m.
        x: f64,
        /// Up, m.
        y: f64,
    },
    /// On the top frame, from the top pivot in the frame's own axes, m.
    Top {
        /// Along the frame, m.
        x: f64,
        /// Square to it, m.
        y: f64,
    },
    /// On an arm.
    Arm {
        /// Which arm.
        arm: ArmId,
        /// Fraction from the lower end.
        f: f64,
        /// Offset square to the arm, counter-clockwise from its direction lower to upper end, m.
        off: f64,
    },
}

#[derive(Deserialize, Serialize)]
struct RawAttachment {
    body: String,
    #[serde(default)]
    x: f64,
    #[serde(default)]
    y: f64,
    f: Option<f64>,
    #[serde(default)]
    off: f64,
}

impl From<Attachment> for RawAttachment {
    fn from(end: Attachment) -> Self {
        let (body, x, y, f, off) = match end {
            Attachment::Base { x, y } => ("base".to_owned(), x, y, None, 0.0),
            Attachment::Top { x, y } => ("top".to_owned(), x, y, None, 0.0),
            Attachment::Arm { arm, f, off } => (arm.to_string(), 0.0, 0.0, Some(f), off),
        };
        Self { body, x, y, f, off }
    }
}

impl TryFrom<RawAttachment> for Attachment {
    type Error = String;

    fn try_from(raw: RawAttachment) -> Result<Self, String> {
        match raw.body.as_str() {
            "base" => Ok(Self::Base { x: raw.x, y: raw.y }),
            "top" => Ok(Self::Top { x: raw.x, y: raw.y }),
            _ => {
                let f =
                    raw.f.ok_or_else(|| format!("the strut's end on {} needs its fraction f", raw.body))?;
                Ok(Self::Arm { arm: ArmId::try_from(raw.body)?, f, off: raw.off })
            }
        }
    }
}

/// Stiffness along the screw.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize)]
pub struct DriveStiffness {
    /// Modulus of elasticity of the screw, Pa.
    #[serde(rename = "E", default)]
    pub e: Option<f64>,
    /// Area of its core, m2.
    #[serde(rename = "A", default)]
    pub area: Option<f64>,
    /// Everything in series at its ends: nut, bracket, thrust bearing, bending of the cross-bar, N/m.
    #[serde(default)]
    pub k_end: Option<f64>,
}

/// A value a kind of pivot, with a default for kinds that are not named.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize)]
pub struct PerJoint {
    /// For every kind that is not named.
    #[serde(default)]
    pub default: Option<f64>,
    /// Centre pins.
    #[serde(rename = "C", default)]
    pub c: Option<f64>,
    /// Side pivots between stages.
    #[serde(rename = "J", default)]
    pub j: Option<f64>,
    /// Base pivot.
    #[serde(rename = "BL", default)]
    pub bl: Option<f64>,
    /// Base wheel axle.
    #[serde(rename = "BR", default)]
    pub br: Option<f64>,
    /// Top pivot.
    #[serde(rename = "TL", default)]
    pub tl: Option<f64>,
    /// Top wheel axle.
    #[serde(rename = "TR", default)]
    pub tr: Option<f64>,
    /// End pins of a strut or mid-pivot screw.
    #[serde(rename = "D", default)]
    pub d: Option<f64>,
}

impl PerJoint {
    /// The value of a kind by its own name, without the default.
    pub fn own(&self, kind: JointKind) -> Option<f64> {
        match kind {
            JointKind::Bl => self.bl,
            JointKind::Br => self.br,
            JointKind::C => self.c,
            JointKind::J => self.j,
            JointKind::Tl => self.tl,
            JointKind::Tr => self.tr,
        }
    }

    /// The value of a kind, else the default, else zero.
    pub fn of(&self, kind: JointKind) -> f64 {
        self.own(kind).or(self.default).unwrap_or(0.0)
    }
}

/// Coulomb friction of pivots and rolling resistance of wheels.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize)]
pub struct Friction {
    /// Coefficient of friction of the pivots.
    #[serde(default)]
    pub mu_pin: f64,
    /// Radius on which a pivot rubs, m; `D` falls back on the default too.
    #[serde(default)]
    pub r: PerJoint,
    /// Drag of the base wheels as a fraction of their load.
    #[serde(default)]
    pub crr_base: f64,
    /// Drag of the top wheels as a fraction of their load.
    #[serde(default)]
    pub crr_top: f64,
}

/// The lifting screw with its thrust collar and crank.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
pub struct Screw {
    /// Mean diameter of the thread, m.
    pub d_mean: f64,
    /// Travel a turn, m.
    pub lead: f64,
    /// Friction of the thread.
    pub mu_thread: f64,
    /// Flank angle, half of the thread's included angle, rad.
    #[serde(default)]
    pub half_angle: f64,
    /// Friction of the collar.
    #[serde(default)]
    pub mu_collar: f64,
    /// Mean diameter of the collar, m.
    #[serde(default)]
    pub d_collar: f64,
    /// Radius of the crank, m.
    #[serde(default)]
    pub crank_radius: Option<f64>,
}

/// Slip stiffness of single joints and wheels, N/m; an absent one is rigid.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize)]
pub struct JointStiffness {
    /// Of the pivots; there is no default.
    #[serde(flatten)]
    pub pins: PerJoint,
    /// Of a base wheel.
    #[serde(default)]
    pub wheel_base: Option<f64>,
    /// Of a top wheel.
    #[serde(default)]
    pub wheel_top: Option<f64>,
}

/// The base rails as a beam on two lines of casters.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize)]
pub struct Base {
    /// Places of the two caster lines from the base pivot, m, left first.
    #[serde(default)]
    pub casters: Option<[f64; 2]>,
    /// Bending stiffness of all rails, N m2.
    #[serde(rename = "EI", default)]
    pub ei: Option<f64>,
    /// Shear stiffness of all rails, N.
    #[serde(rename = "kGA", default)]
    pub kga: Option<f64>,
    /// Stiffness of a caster line, N/m.
    #[serde(default)]
    pub k_caster: Option<f64>,
}

/// The deck rails as a beam.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize)]
pub struct Rails {
    /// Bending stiffness of all rails, N m2.
    #[serde(rename = "EI", default)]
    pub ei: Option<f64>,
    /// Shear stiffness of all rails, N.
    #[serde(rename = "kGA", default)]
    pub kga: Option<f64>,
}

/// Free play.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize)]
pub struct Clearance {
    /// Diametral clearance of the pivots, m; `D` has no fallback on the default.
    #[serde(flatten)]
    pub pins: PerJoint,
    /// Vertical slack of the base wheels in a captured rail, m.
    #[serde(default)]
    pub rail_gap_base: f64,
    /// Slack of the top wheels in a captured rail, m.
    #[serde(default)]
    pub rail_gap_top: f64,
    /// Axial play of the nut, m.
    #[serde(default)]
    pub screw_backlash: f64,
}

/// Stops of the base carriage.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize)]
pub struct Range {
    /// Farthest place of the base axle, m: the lowest deck.
    #[serde(default)]
    pub x_max: Option<f64>,
    /// Nearest place of the base axle, m: the highest deck.
    #[serde(default)]
    pub x_min: Option<f64>,
    /// Least gap between folded arms, m.
    #[serde(default)]
    pub gap: f64,
}
