//! Wheels on their axles, and pivots with their centre marks.
use super::{Subject, line, stroke};
use crate::drawing::outline::{Outline, Stroke};
use crate::mechanics::JointId;
use glam::DVec2;

/// How far a centre mark runs past the edge, px.
const PAST_EDGE: f64 = 4.0;
/// The class of a centre mark.
const CENTRE_MARK: &str = "cm";
/// Two circles are drawn as two only when their edges are this far apart, px.
const APART: f64 = 2.0;

fn circle(class: &'static str, centre: DVec2, radius: f64) -> Stroke {
    stroke(class, Outline::Circle { centre, radius })
}

fn centre_mark(at: DVec2, reach: f64) -> [Stroke; 2] {
    let (across, up) = (DVec2::new(reach, 0.0), DVec2::new(0.0, reach));
    [line(CENTRE_MARK, at - across, at + across), line(CENTRE_MARK, at - up, at + up)]
}

/// The visible wheel of either axle.
pub(super) fn wheels(subject: &Subject<'_>) -> Vec<Stroke> {
    [JointId::Br, JointId::Tr].into_iter().flat_map(|joint| wheel(subject, joint)).collect()
}

/// The wheel of an axle.
pub(super) fn wheel(subject: &Subject<'_>, axle: JointId) -> Vec<Stroke> {
    let running = &subject.design.running;
    let (wheel, inner) = (running.wheel.to_mm() / 2.0, running.axle.to_mm() / 2.0);
    let at = subject.joint(axle);
    let mut strokes = vec![circle("w steel", at, wheel), circle("w steel", at, inner)];
    strokes.extend(centre_mark(at, wheel.max(inner) + PAST_EDGE * subject.pixel));
    strokes
}

/// Every pivot bolt in its bushing, the centre marks over all of them.
pub(super) fn pins(subject: &Subject<'_>) -> Vec<Stroke> {
    let (marks, mut bolts): (Vec<_>, Vec<_>) = JointId::all(subject.pose.n)
        .filter(|joint| !matches!(joint, JointId::Br | JointId::Tr))
        .flat_map(|joint| pin(subject, joint))
        .partition(|stroke| stroke.class == CENTRE_MARK);
    bolts.extend(marks);
    bolts
}

/// The bolt of a pivot in its bushing.
pub(super) fn pin(subject: &Subject<'_>, joint: JointId) -> Vec<Stroke> {
    let running = &subject.design.running;
    let (pin, bush) = (running.pin.to_mm() / 2.0, running.bush.to_mm() / 2.0);
    let at = subject.joint(joint);
    let mut strokes = vec![circle("w steel", at, bush)];
    if bush - pin > APART * subject.pixel {
        strokes.push(circle("n none", at, pin));
    }
    strokes.extend(centre_mark(at, bush + PAST_EDGE * subject.pixel));
    strokes
}

/// The empty hole of a joint.
pub(super) fn hole(subject: &Subject<'_>, joint: JointId) -> Vec<Stroke> {
    let running = &subject.design.running;
    let seat = if matches!(joint, JointId::Br | JointId::Tr) { running.axle } else { running.bush };
    let (at, radius) = (subject.joint(joint), seat.to_mm() / 2.0);
    let mut strokes = vec![circle("w sheet", at, radius)];
    strokes.extend(centre_mark(at, radius + PAST_EDGE * subject.pixel));
    strokes
}
