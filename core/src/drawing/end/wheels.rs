//! Wheel axles with their wheels and the tube between the arms, seen from the end.
use super::pieces::{Kind, Piece};
use super::{Carrier, EndSubject};
use crate::drawing::outline::Stroke;
use crate::mechanics::JointId;
use crate::parts::Joint;

const AXLES: [(Joint, JointId, Carrier); 2] =
    [(Joint::BaseAxle, JointId::Br, Carrier::BaseAxle), (Joint::DeckAxle, JointId::Tr, Carrier::DeckAxle)];

/// Both axles, from the bar outwards.
pub(super) fn axles(subject: &EndSubject<'_>) -> Vec<Stroke> {
    AXLES
        .into_iter()
        .flat_map(|(joint, at, carrier)| {
            let y = subject.side.joint(at).y;
            let line = subject.pieces.line(joint);
            let half = subject.side.design.running.axle.to_mm() / 2.0;
            let out = line.iter().map(|piece| piece.z[1]).filter(|z| z.is_finite()).fold(0.0, f64::max);
            let end =
                line.iter().rev().find(|piece| piece.kind == Kind::Collar).map_or(out, |collar| collar.z[1]);
            let mut strokes = vec![subject.block("w steel", carrier, [-end, end], [y - half, y + half])];
            strokes.extend(line.iter().flat_map(|piece| on_axle(subject, piece, carrier, y)));
            strokes
        })
        .collect()
}

fn on_axle(subject: &EndSubject<'_>, piece: &Piece, carrier: Carrier, y: f64) -> Vec<Stroke> {
    let running = &subject.side.design.running;
    let across = match piece.kind {
        Kind::Tube => {
            let half = subject.side.design.drive.cross_bar.to_mm() / 2.0;
            return vec![subject.block("w steel", carrier, [-piece.z[1], piece.z[1]], [y - half, y + half])];
        }
        Kind::Sleeve | Kind::Collar => subject.pieces.collar,
        Kind::Flange => subject.pieces.flange,
        Kind::Wheel => running.wheel.to_mm(),
        _ => return Vec::new(),
    };
    let class = if piece.kind == Kind::Flange { "n steel" } else { "w steel" };
    subject.blocks(class, carrier, piece.z, [y - across / 2.0, y + across / 2.0]).into()
}

/// The base wheels behind their cheeks.
pub(super) fn hidden(subject: &EndSubject<'_>) -> Vec<Stroke> {
    let y = subject.side.joint(JointId::Br).y;
    let half = subject.side.design.running.wheel.to_mm() / 2.0;
    subject
        .pieces
        .line(Joint::BaseAxle)
        .iter()
        .filter(|piece| piece.kind == Kind::Wheel)
        .flat_map(|piece| subject.blocks("hid", Carrier::BaseAxle, piece.z, [y - half, y + half]))
        .collect()
}
