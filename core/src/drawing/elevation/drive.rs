//! Screw, nut, thrust bearing, the tubes between them and the crank.
use super::{Axes, FLOOR, Subject, stroke};
use crate::checks::Member;
use crate::design::{BearingEnd, DriveKind, StrutEnd};
use crate::drawing::outline::{Outline, Stroke};
use crate::mechanics::{ArmId, JointId, Side};
use crate::parts::{HANDLE_THICK, crank_out};
use glam::DVec2;

/// Crest and root of a thread are drawn at least this far apart, px (ISO 6410-1 asks for twice the wide line).
const THREAD_DEPTH: f64 = 2.2;
/// How far the screw's axis is drawn past its ends, px.
const PAST_END: f64 = 10.0;

/// Sizes that a design does not state: the thrust bearing's outside and length as parts of its mean diameter, the
/// nut as parts of the thread's outside diameter, the crank's bar, its handle's length and their joint as parts of its radius.
const BEARING_OUTSIDE: f64 = 1.3;
const BEARING_LENGTH: f64 = 0.4;
const NUT_ACROSS: f64 = 1.9;
pub(in crate::drawing) const CRANK_BAR: f64 = 0.1;
const HANDLE_LENGTH: f64 = 0.72;
const HANDLE_NECK: f64 = 0.05;

/// The screw's own axes and what sits on them.
struct Line {
    /// Origin in the bearing, first axis towards the nut.
    axes: Axes,
    /// Place of the nut's seat: the carriage's axle, or the far pin of a free screw, mm from the bearing.
    seat: f64,
    /// Whether the screw lies along a rail; otherwise it stands free between two pins.
    rail: bool,
    /// Sides of the tubes that hold the bearing and the nut, mm.
    tubes: [f64; 2],
}

fn line_of(subject: &Subject<'_>) -> Line {
    let drive = &subject.design.drive;
    let sign = if drive.bearing_end == BearingEnd::Fixed { 1.0 } else { -1.0 };
    let place = drive.bearing_place.to_mm();
    let tubes = [drive.anchor_bar.to_mm(), drive.cross_bar.to_mm()];
    match drive.kind {
        DriveKind::BaseCarriage => {
            let nut = subject.carriage();
            let axes = Axes { origin: DVec2::new(place, nut.y), along: sign * FLOOR.along };
            Line { axes, seat: sign * (nut.x - place), rail: true, tubes }
        }
        DriveKind::TopCarriage => {
            let pose = subject.pose;
            let rail = Axes { origin: subject.place(pose.top.origin), along: pose.top.along };
            let axle = pose.top_axle * 1e3;
            let axes = Axes { origin: rail.point(place, axle.y), along: sign * rail.along };
            Line { axes, seat: sign * (axle.x - place), rail: true, tubes }
        }
        DriveKind::SidePivots => {
            let level = usize::try_from(drive.level.get()).unwrap_or(1);
            between(subject.joint(JointId::Jl(level)), subject.joint(JointId::Jr(level)), [tubes[1]; 2])
        }
        DriveKind::Strut => between(
            strut_end(
                subject,
                drive.foot,
                [drive.foot_x, drive.foot_y].map(|size| size.to_mm()),
                [drive.foot_part.value(), drive.foot_off.to_mm()],
            ),
            strut_end(
                subject,
                drive.head,
                [drive.head_x, drive.head_y].map(|size| size.to_mm()),
                [drive.head_part.value(), drive.head_off.to_mm()],
            ),
            [drive.foot, drive.head].map(|end| if end.stage().is_some() { tubes[1] } else { tubes[0] }),
        ),
    }
}

fn between(bearing: DVec2, nut: DVec2, tubes: [f64; 2]) -> Line {
    let span = nut - bearing;
    let along = span.try_normalize().unwrap_or(DVec2::X);
    Line { axes: Axes { origin: bearing, along }, seat: span.length(), rail: false, tubes }
}

/// An end of a strut: on a frame at a place from its pivots, on an arm at a part of its length and off its axis.
fn strut_end(subject: &Subject<'_>, end: StrutEnd, frame: [f64; 2], arm: [f64; 2]) -> DVec2 {
    match end {
        StrutEnd::Base => DVec2::new(frame[0], frame[1] + subject.design.lift.pin_line.to_mm()),
        StrutEnd::Deck => subject.axes(subject.pose.top).point(frame[0], frame[1]),
        _ => {
            let stage = end.stage().and_then(|stage| usize::try_from(stage).ok()).unwrap_or(1);
            let side = if end.is_b() { Side::B } else { Side::A };
            subject.arm(ArmId { side, stage }).point(arm[0] * subject.design.lift.arm_length.to_mm(), arm[1])
        }
    }
}

/// How far out from the bearing the crank sits, mm.
fn out_of(subject: &Subject<'_>) -> f64 {
    1e3 * crank_out(subject.design)
}

impl Line {
    /// The crank's own axes: origin on the screw, first axis outwards along it, second upwards.
    fn crank(&self, subject: &Subject<'_>) -> (DVec2, DVec2, DVec2) {
        let at = self.axes.point(-out_of(subject), 0.0);
        let out = -self.axes.along;
        let up = if out.perp().y >= 0.0 { out.perp() } else { -out.perp() };
        (at, out, up)
    }
}

/// The middle of the crank's handle, mm.
pub(super) fn handle(subject: &Subject<'_>) -> DVec2 {
    let (at, out, up) = line_of(subject).crank(subject);
    let radius = subject.design.drive.crank.to_mm();
    at + up * radius + out * radius * HANDLE_LENGTH / 2.0
}

/// The crank's bar and handle lie within these two corners, mm.
pub(super) fn crank_box(subject: &Subject<'_>) -> [DVec2; 2] {
    let (at, out, up) = line_of(subject).crank(subject);
    let radius = subject.design.drive.crank.to_mm();
    let corners = [
        at,
        at + up * radius,
        at + up * radius * (1.0 + HANDLE_THICK / 2.0) + out * radius * (HANDLE_LENGTH + CRANK_BAR),
    ];
    let least = corners.iter().fold(at, |least, corner| least.min(*corner));
    [least, corners.iter().fold(at, |most, corner| most.max(*corner))]
}

/// The screw as seen along the table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScrewEnd {
    /// The middles of what holds its bearing and its nut, mm.
    pub held: [DVec2; 2],
    /// Sides of the tubes there, mm.
    pub tubes: [f64; 2],
    /// Where the crank sits on it, mm.
    pub crank: DVec2,
    /// Unit vector along the crank's bar.
    pub up: DVec2,
}

/// The screw as seen along the table.
pub(super) fn screw_end(subject: &Subject<'_>) -> ScrewEnd {
    let line = line_of(subject);
    let (crank, _, up) = line.crank(subject);
    ScrewEnd { held: [line.axes.origin, line.axes.point(line.seat, 0.0)], tubes: line.tubes, crank, up }
}

/// The screw's force acts along this line: from where the nut sits towards the bearing, mm.
pub(super) fn thrust(subject: &Subject<'_>) -> [DVec2; 2] {
    let line = line_of(subject);
    [line.axes.point(line.seat, 0.0), line.axes.origin]
}

/// Both ends of a screw that stands free, mm.
pub(super) fn free_screw(subject: &Subject<'_>) -> Option<[DVec2; 2]> {
    let line = line_of(subject);
    let ends = [-out_of(subject), subject.design.drive.screw_length.to_mm()];
    (!line.rail).then(|| ends.map(|along| line.axes.point(along, 0.0)))
}

/// Everything of the drive, from far to near.
pub(super) fn screw(subject: &Subject<'_>) -> Vec<Stroke> {
    let drive = &subject.design.drive;
    let line = line_of(subject);
    let axes = line.axes;
    let crest = drive.major.to_mm() / 2.0;
    let root = (drive.root.to_mm() / 2.0).min(crest - THREAD_DEPTH * subject.pixel).max(0.0);
    let length = drive.screw_length.to_mm();
    let out = out_of(subject);
    let past = PAST_END * subject.pixel;
    let mut strokes = vec![
        stroke("w steel", axes.block([-out, 0.0], [-root, root])),
        stroke("w steel", body(subject, &line)),
        stroke("n", axes.line((0.0, root), (length, root))),
        stroke("n", axes.line((0.0, -root), (length, -root))),
        stroke("cl", axes.line((-out - past, 0.0), (length.max(line.seat) + past, 0.0))),
    ];
    strokes.push(stroke("w steel", bearing(subject, &line)));
    strokes.extend(if line.rail { tubes(subject, &line) } else { free_ends(subject, &line) });
    strokes.extend(crank(subject, &line));
    strokes
}

/// The threaded length.
fn body(subject: &Subject<'_>, line: &Line) -> Outline {
    let crest = subject.design.drive.major.to_mm() / 2.0;
    line.axes.block([0.0, subject.design.drive.screw_length.to_mm()], [-crest, crest])
}

/// The bearing presses on the side of its tube that the screw is pulled or pushed against.
fn bearing(subject: &Subject<'_>, line: &Line) -> Outline {
    let drive = &subject.design.drive;
    let collar = drive.collar.to_mm().max(drive.major.to_mm());
    let block = line.tubes[0] / 2.0;
    let pulled = !line.rail || drive.bearing_end == BearingEnd::Fixed;
    let ends = if pulled {
        [-block - BEARING_LENGTH * collar, -block]
    } else {
        [block, block + BEARING_LENGTH * collar]
    };
    let half = BEARING_OUTSIDE * collar / 2.0;
    line.axes.block(ends, [-half, half])
}

/// The nut against the tube it moves. Along a rail it sits on the right of the tube at either end: pulled through it by the one, pushed
/// against it by the other. On a free screw it sits behind the second tube where the screw is pulled between two pivots, before it where a
/// strut pushes.
fn nut(subject: &Subject<'_>, line: &Line) -> Outline {
    let drive = &subject.design.drive;
    let behind =
        if line.rail { drive.bearing_end == BearingEnd::Fixed } else { drive.kind == DriveKind::SidePivots };
    let side = if behind { 1.0 } else { -1.0 };
    let seat = line.seat + side * line.tubes[1] / 2.0;
    let across = NUT_ACROSS * drive.major.to_mm() / 2.0;
    line.axes.block([seat, seat + side * drive.nut_length.to_mm()], [-across, across])
}

/// The tube at the bearing or at the nut.
fn tube(line: &Line, nut: bool) -> Outline {
    let (middle, half) = if nut { (line.seat, line.tubes[1] / 2.0) } else { (0.0, line.tubes[0] / 2.0) };
    line.axes.block([middle - half, middle + half], [-half, half])
}

/// What is seen of a part of the drive; nothing of any other.
pub(super) fn part(subject: &Subject<'_>, member: Member) -> Vec<Outline> {
    let line = line_of(subject);
    match member {
        Member::Screw => vec![body(subject, &line)],
        Member::Nut => vec![nut(subject, &line)],
        Member::ThrustBearing => vec![bearing(subject, &line)],
        Member::CrossBar => vec![tube(&line, true)],
        Member::BearingTube => vec![tube(&line, false)],
        Member::Crank => crank(subject, &line).into_iter().map(|stroke| stroke.outline).collect(),
        _ => Vec::new(),
    }
}

/// The bearing's tube, the carriage's tube and the nut bolted to it.
fn tubes(subject: &Subject<'_>, line: &Line) -> Vec<Stroke> {
    let mut strokes = vec![
        stroke("w steel", nut(subject, line)),
        stroke("w steel", tube(line, true)),
        stroke("w steel", tube(line, false)),
    ];
    // The tube's end is seen as a ring where its wall is thick enough to be drawn.
    let (wall, anchor) = (subject.design.drive.anchor_wall.to_mm(), line.tubes[0] / 2.0);
    if wall > THREAD_DEPTH * subject.pixel && wall < anchor {
        let inside = [wall - anchor, anchor - wall];
        strokes.push(stroke("n none", line.axes.block(inside, inside)));
    }
    strokes
}

/// The tubes at both ends of a free screw, each turning on its pin, and the nut against the second.
fn free_ends(subject: &Subject<'_>, line: &Line) -> Vec<Stroke> {
    let pin = subject.design.running.pin.to_mm() / 2.0;
    let [first, second] = line.tubes.map(|side| side / 2.0);
    let circle = |x: f64, half: f64| {
        stroke("n steel", Outline::Circle { centre: line.axes.point(x, 0.0), radius: pin.min(0.7 * half) })
    };
    vec![
        stroke("w steel", nut(subject, line)),
        stroke("w steel", tube(line, false)),
        circle(0.0, first),
        stroke("w steel", tube(line, true)),
        circle(line.seat, second),
    ]
}

/// The crank, standing upright.
fn crank(subject: &Subject<'_>, line: &Line) -> Vec<Stroke> {
    let radius = subject.design.drive.crank.to_mm();
    let (at, out, up) = line.crank(subject);
    // Axes with the first one upwards along the bar; the second points outwards or inwards.
    let bar = Axes { origin: at, along: up };
    let outwards = if bar.along.perp().dot(out) > 0.0 { 1.0 } else { -1.0 };
    let span = |from: f64, to: f64| if outwards > 0.0 { [from, to] } else { [-to, -from] };
    let half = CRANK_BAR * radius / 2.0;
    let thick = HANDLE_THICK * radius / 2.0;
    let neck = half + HANDLE_NECK * radius;
    let grip = span(neck, neck + HANDLE_LENGTH * radius);
    vec![
        stroke("w steel", bar.rounded([-half, radius + half], [-half, half], [half, half])),
        stroke("w steel", bar.block([radius - half, radius + half], span(half, neck))),
        stroke("w ply", bar.rounded([radius - thick, radius + thick], grip, [thick, thick])),
    ]
}
