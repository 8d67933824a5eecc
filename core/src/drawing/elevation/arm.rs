//! An arm with what is inside it.
use super::{Subject, stroke};
use crate::drawing::outline::{Outline, Stroke};
use crate::mechanics::{ArmId, Side};

/// How far an arm's axis is drawn past the arm's ends, px.
const PAST_END: f64 = 5.0;

/// How far the arm runs past its lower and its upper pin, mm.
fn past_pins(subject: &Subject<'_>, arm: ArmId) -> [f64; 2] {
    let arms = &subject.design.arms;
    let end = arms.end.to_mm();
    [end, if arm.stage < subject.pose.n { arms.long_end.to_mm() } else { end }]
}

/// The arm's own outline.
pub(super) fn outline(subject: &Subject<'_>, arm: ArmId) -> Outline {
    let [below, above] = past_pins(subject, arm);
    let half = subject.design.arms.width.to_mm() / 2.0;
    let length = subject.design.lift.arm_length.to_mm();
    subject.arm(arm).rounded([-below, length + above], [-half, half], [below.min(half), above.min(half)])
}

/// The arm with its cross boards, its strap and its axis.
pub(super) fn arm(subject: &Subject<'_>, arm: ArmId) -> Vec<Stroke> {
    let arms = &subject.design.arms;
    let axes = subject.arm(arm);
    let length = subject.design.lift.arm_length.to_mm();
    let [below, above] = past_pins(subject, arm);
    let (near, boards, strap) = match arm.side {
        Side::A => ("w near", arms.boards_a, arms.straps_a),
        Side::B => ("w far", arms.boards_b, arms.straps_b),
    };
    let mut strokes = vec![stroke(near, outline(subject, arm))];
    let places = [arms.board_place.value(), 1.0 - arms.board_place.value()];
    let thick = arms.board_thickness.to_mm() / 2.0;
    if boards {
        let wide = arms.board_width.to_mm() / 2.0;
        for place in places {
            let middle = place * length;
            strokes.push(stroke("hid", axes.block([middle - wide, middle + wide], [-thick, thick])));
        }
    }
    if strap {
        // It lies on the boards' upper faces, from one to the other.
        let y = thick + arms.strap_thickness.to_mm() / 2.0;
        strokes.push(stroke("hid", axes.line((places[0] * length, y), (places[1] * length, y))));
    }
    let past = PAST_END * subject.pixel;
    strokes.push(stroke("cl", axes.line((-below - past, 0.0), (length + above + past, 0.0))));
    strokes
}
