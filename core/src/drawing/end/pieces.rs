//! Sizes across the table that do not change with the deck's height.
//!
//! Plain `f64` in mm, from the middle of the table outwards.
use crate::design::Design;
use crate::parts::{
    BoltSize, Joint, Layer, arm_spread, arm_thickness, frame_thickness, line, parts, rail_middle,
    spacer_outside, strap_span,
};
use crate::quantity::Length;

/// What lies on the line of a joint: its kind, from and to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Piece {
    pub(super) kind: Kind,
    pub(super) z: [f64; 2],
}

/// What a piece on a joint's line is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// Head or nut of a bolt.
    Hexagon,
    /// A washer under either.
    Washer,
    /// The washers between two members.
    Spacer,
    /// The tube between the arms.
    Tube,
    /// A sleeve on the axle.
    Sleeve,
    /// The washer that guides a wheel.
    Flange,
    /// A wheel.
    Wheel,
    /// The collar outside it.
    Collar,
    /// An arm, a cheek or a rail: drawn with what it belongs to.
    Member,
}

/// Sizes across the table.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Pieces {
    /// Faces of the arms A and of the arms B.
    pub(super) arms: [[f64; 2]; 2],
    /// Faces of beams, deck rails and base cheeks.
    pub(super) rail: [f64; 2],
    /// Faces of the deck cheeks.
    pub(super) deck_cheek: [f64; 2],
    /// What lies on the line of each joint, from the base up.
    pub(super) lines: Vec<(Joint, Vec<Piece>)>,
    /// Half the length of the tube that holds the screw's bearing; zero where there is none.
    pub(super) bearing_tube: f64,
    /// The ends of the straps on A and on B.
    pub(super) straps: [f64; 2],
    /// Outside diameters of head and nut, of a washer and of a spacer.
    pub(super) hexagon: f64,
    pub(super) washer: f64,
    pub(super) spacer: f64,
    /// Outside diameters of the collars on the axles and of the flange washers; zero where there are none.
    pub(super) collar: f64,
    pub(super) flange: f64,
}

fn about(middle: f64, thick: f64) -> [f64; 2] {
    [middle - thick / 2.0, middle + thick / 2.0]
}

impl Pieces {
    pub(super) fn of(design: &Design) -> Self {
        let stages = usize::try_from(design.lift.stages.get()).unwrap_or(1);
        let (arm, frame) = (arm_thickness(design).to_mm(), frame_thickness(design).to_mm());
        let spreads = [false, true].map(|b| arm_spread(design, b).to_mm());
        let bolt = BoltSize { diameter: design.running.pin };
        let list = parts(design);
        let size = |name: &str, which: usize| {
            list.iter().find(|part| part.name == name).map_or(0.0, |part| part.size[which].to_mm())
        };
        Self {
            arms: spreads.map(|spread| about(spread / 2.0, arm)),
            rail: about(rail_middle(design).to_mm(), frame),
            deck_cheek: about(spreads[0] / 2.0, frame),
            lines: Joint::all(stages)
                .map(|joint| (joint, line(design, joint).layers.iter().map(piece).collect()))
                .collect(),
            bearing_tube: size("Bearing tube", 0) / 2.0,
            straps: [false, true].map(|b| strap_end(design, b)),
            hexagon: bolt.flats().to_mm(),
            washer: bolt.washer()[0].to_mm(),
            spacer: spacer_outside(design).to_mm(),
            collar: size("Collar", 1),
            flange: size("Flange washer", 1),
        }
    }

    /// What lies on a joint's line.
    pub(super) fn line(&self, joint: Joint) -> &[Piece] {
        self.lines.iter().find(|(own, _)| *own == joint).map_or(&[][..], |(_, pieces)| pieces.as_slice())
    }
}

fn piece(layer: &Layer) -> Piece {
    let kind = match layer.name.as_str() {
        "Bolt head" | "Nut" => Kind::Hexagon,
        "Washer" => Kind::Washer,
        "Spacer" => Kind::Spacer,
        "Cross-bar" => Kind::Tube,
        "Sleeve" => Kind::Sleeve,
        "Flange washer" => Kind::Flange,
        "Wheel" => Kind::Wheel,
        "Collar" => Kind::Collar,
        _ => Kind::Member,
    };
    Piece { kind, z: [layer.from.to_mm(), layer.to.to_mm()] }
}

/// How far from the middle a strap's outer bolts sit.
fn strap_end(design: &Design, b: bool) -> f64 {
    let along = design.lift.arm_length.to_mm() * (1.0 - 2.0 * design.arms.board_place.value());
    let span: Length = strap_span(design, b);
    (span.to_mm() * span.to_mm() - along * along).max(0.0).sqrt() / 2.0
}
