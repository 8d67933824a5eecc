//! Arms, cross boards, straps and pivot bolts seen from the end.
use super::pieces::Kind;
use super::{Carrier, EndSubject};
use crate::drawing::outline::{Outline, Stroke};
use crate::mechanics::{ArmId, JointId, Side};
use crate::parts::Joint;
use glam::DVec2;

/// Pieces into which a bent arm is cut.
const PIECES: u32 = 10;
/// A layer is drawn with its glue line from this thickness on, px.
const LAYER: f64 = 3.0;
/// Steel thinner than this has a narrow outline, px.
const THIN: f64 = 4.0;

/// Where along the table a pivot sits.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Place {
    /// Over the fixed pivots, these included.
    Left,
    /// In the middle.
    Centre,
    /// Over the wheels.
    Right,
}

/// Which boards: those beyond the middle of the arms, or those before it.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Depth {
    Far,
    Near,
}

const fn index(side: Side) -> usize {
    match side {
        Side::A => 0,
        Side::B => 1,
    }
}

/// The arms in the order in which they cover each other: of two stages the one whose end is nearer comes last.
fn order(subject: &EndSubject<'_>) -> Vec<ArmId> {
    let n = subject.side.pose.n;
    let (rising, falling) = ((1..=n), (1..=n).rev());
    if subject.seen_from_right() {
        falling.map(ArmId::a).chain(rising.map(ArmId::b)).collect()
    } else {
        falling.map(ArmId::b).chain(rising.map(ArmId::a)).collect()
    }
}

/// How far an arm goes past its lower and its upper pin, mm.
fn ends(subject: &EndSubject<'_>, arm: ArmId) -> [f64; 2] {
    let arms = &subject.side.design.arms;
    let end = arms.end.to_mm();
    [end, if arm.stage < subject.side.pose.n { arms.long_end.to_mm() } else { end }]
}

/// The lowest and the highest point of an arm, its ends rounded, mm.
fn reach(subject: &EndSubject<'_>, arm: ArmId) -> [f64; 2] {
    let axes = subject.side.arm(arm);
    let half = subject.side.design.arms.width.to_mm() / 2.0;
    let [below, above] = ends(subject, arm);
    let length = subject.side.design.lift.arm_length.to_mm();
    let level = |s: f64, off: f64| axes.point(s, off).y;
    let (low, high) = (below.min(half), above.min(half));
    let lowest = level(low - below, half - low).min(level(low - below, low - half)) - low;
    let highest =
        level(length + above - high, half - high).max(level(length + above - high, high - half)) + high;
    [lowest, highest]
}

/// The two arms of a name seen from the end, each as a run down one side and up the other.
fn pair(subject: &EndSubject<'_>, class: &'static str, arm: ArmId) -> [Stroke; 2] {
    let z = subject.pieces.arms[index(arm.side)];
    [-1.0, 1.0].map(|side| {
        let edge = |z: f64| (0..=PIECES).map(move |piece| (side * z, f64::from(piece) / f64::from(PIECES)));
        let corners: Vec<DVec2> = edge(z[0])
            .chain(edge(z[1]).collect::<Vec<_>>().into_iter().rev())
            .map(|(z, share)| on_arm(subject, arm, z, share))
            .collect();
        Stroke { class, outline: Outline::polygon(&corners) }
    })
}

/// A place at a depth z on an arm, at a share of its height as it is seen.
fn on_arm(subject: &EndSubject<'_>, arm: ArmId, z: f64, share: f64) -> DVec2 {
    let [below, above] = ends(subject, arm);
    let length = subject.side.design.lift.arm_length.to_mm();
    let [low, high] = reach(subject, arm);
    let part = (share * (length + below + above) - below) / length;
    subject.at(Carrier::Arm(arm, part), z, low + share * (high - low))
}

/// All arms with the joints between their layers.
pub(super) fn arms(subject: &EndSubject<'_>) -> Vec<Stroke> {
    let design = subject.side.design;
    let layers = design.arms.layers.get().clamp(1, 4);
    let layer = design.arms.thickness.to_mm();
    let glued = layer > LAYER * subject.side.pixel;
    order(subject)
        .into_iter()
        .flat_map(|arm| {
            let class = if arm.side == Side::A { "w near" } else { "w far" };
            let inner = subject.pieces.arms[index(arm.side)][0];
            let joints = (1..layers).filter(|_| glued).flat_map(move |joint| {
                [-1.0, 1.0].map(|side| {
                    let z = side * (inner + layer * joint as f64);
                    let points: Vec<DVec2> = (0..=PIECES)
                        .map(|piece| on_arm(subject, arm, z, f64::from(piece) / f64::from(PIECES)))
                        .collect();
                    Stroke { class: "glue none", outline: run(&points) }
                })
            });
            pair(subject, class, arm).into_iter().chain(joints).collect::<Vec<_>>()
        })
        .collect()
}

/// The outlines of all arms in one class.
pub(super) fn outlines(subject: &EndSubject<'_>, class: &'static str) -> Vec<Stroke> {
    order(subject).into_iter().flat_map(|arm| pair(subject, class, arm)).collect()
}

fn run(points: &[DVec2]) -> Outline {
    use crate::drawing::outline::Segment;
    let (start, rest) = points.split_first().map_or((DVec2::ZERO, &[][..]), |(start, rest)| (*start, rest));
    Outline::Run { start, segments: rest.iter().map(|point| Segment::Line(*point)).collect(), closed: false }
}

/// The boards of every arm that has them: arm and place on it.
fn all_boards<'a>(subject: &'a EndSubject<'_>) -> impl Iterator<Item = (ArmId, f64)> + 'a {
    let arms = &subject.side.design.arms;
    let place = arms.board_place.value();
    order(subject)
        .into_iter()
        .filter(|arm| if arm.side == Side::A { arms.boards_a } else { arms.boards_b })
        .flat_map(move |arm| [(arm, place), (arm, 1.0 - place)])
}

/// Whether a board lies beyond the middle of its arm as it is seen.
fn depth(subject: &EndSubject<'_>, (arm, part): (ArmId, f64)) -> Depth {
    // A rises away from who looks from the fixed pivots, B towards them.
    let towards_wheels = (part > 0.5) == (arm.side == Side::A);
    if towards_wheels == subject.seen_from_right() { Depth::Near } else { Depth::Far }
}

/// Lower and upper edge of a board as it is seen, and the edge between its two visible faces, mm.
fn board_heights(subject: &EndSubject<'_>, (arm, part): (ArmId, f64)) -> [f64; 3] {
    let arms = &subject.side.design.arms;
    let axes = subject.side.arm(arm);
    let middle = part * subject.side.design.lift.arm_length.to_mm();
    let (wide, thick) = (arms.board_width.to_mm() / 2.0, arms.board_thickness.to_mm() / 2.0);
    let corners = [(-wide, -thick), (wide, -thick), (wide, thick), (-wide, thick)]
        .map(|(along, off)| axes.point(middle + along, off));
    let low = corners.iter().map(|corner| corner.y).fold(f64::INFINITY, f64::min);
    let high = corners.iter().map(|corner| corner.y).fold(f64::NEG_INFINITY, f64::max);
    let nearness = |corner: &DVec2| if subject.seen_from_right() { corner.x } else { -corner.x };
    let nearest = corners.iter().copied().max_by(|one, other| nearness(one).total_cmp(&nearness(other)));
    [low, high, nearest.map_or(low, |corner| corner.y)]
}

/// The boards before or beyond the arms' middle, from arm to arm.
pub(super) fn boards(subject: &EndSubject<'_>, which: Depth) -> Vec<Stroke> {
    all_boards(subject)
        .filter(|board| depth(subject, *board) == which)
        .flat_map(|board| {
            let (arm, part) = board;
            let end = subject.pieces.arms[index(arm.side)][0];
            let [low, high, edge] = board_heights(subject, board);
            let on = Carrier::Arm(arm, part);
            [
                subject.block("w ply", on, [-end, end], [low, high]),
                subject.line("n", on, (-end, edge), (end, edge)),
            ]
        })
        .collect()
}

/// Where boards of A pass behind the arms B.
pub(super) fn hidden_boards(subject: &EndSubject<'_>) -> Vec<Stroke> {
    let z = subject.pieces.arms[1];
    all_boards(subject)
        .filter(|board| board.0.side == Side::A && depth(subject, *board) == Depth::Far)
        .flat_map(|board| {
            let (arm, part) = board;
            let [low, high, _] = board_heights(subject, board);
            let on = Carrier::Arm(arm, part);
            [-1.0, 1.0].into_iter().flat_map(move |side| {
                [low, high].map(|y| subject.line("hid", on, (side * z[0], y), (side * z[1], y)))
            })
        })
        .collect()
}

/// The crossed straps from one board of an arm to the other.
pub(super) fn straps(subject: &EndSubject<'_>) -> Vec<Stroke> {
    let arms = &subject.side.design.arms;
    let place = arms.board_place.value();
    let length = subject.side.design.lift.arm_length.to_mm();
    order(subject)
        .into_iter()
        .filter(|arm| if arm.side == Side::A { arms.straps_a } else { arms.straps_b })
        .flat_map(|arm| {
            let axes = subject.side.arm(arm);
            let end = subject.pieces.straps[index(arm.side)];
            let off = arms.board_thickness.to_mm() / 2.0 + arms.strap_thickness.to_mm();
            let half = (arms.strap_width.to_mm() / 2.0 * axes.along.y.abs()).max(subject.side.pixel);
            [-1.0, 1.0].map(|side| {
                let corner = |part: f64, z: f64, up: f64| {
                    let y = axes.point(part * length, off).y + up;
                    subject.at(Carrier::Arm(arm, part), z, y)
                };
                let (low, high) = ((place, -side * end), (1.0 - place, side * end));
                let corners = [
                    corner(low.0, low.1, -half),
                    corner(high.0, high.1, -half),
                    corner(high.0, high.1, half),
                    corner(low.0, low.1, half),
                ];
                Stroke { class: "n steel", outline: Outline::polygon(&corners) }
            })
        })
        .collect()
}

/// A joint with the place of it in the plane and what it moves with.
struct Pivot {
    joint: Joint,
    at: JointId,
    carrier: Carrier,
}

fn all_pivots(subject: &EndSubject<'_>, place: Place) -> Vec<Pivot> {
    let pose = subject.side.pose;
    let n = pose.n;
    let on = |arm: ArmId, part: f64| Carrier::Arm(arm, part);
    match place {
        Place::Left => {
            core::iter::once(Pivot { joint: Joint::BasePivot, at: JointId::Bl, carrier: Carrier::Ground })
                .chain((1..n).map(|i| Pivot {
                    joint: Joint::Left(i),
                    at: JointId::Jl(i),
                    carrier: on(ArmId::a(i + 1), 0.0),
                }))
                .chain([Pivot { joint: Joint::DeckPivot, at: JointId::Tl, carrier: Carrier::Deck }])
                .collect()
        }
        Place::Centre => (1..=n)
            .map(|i| Pivot {
                joint: Joint::Centre(i),
                at: JointId::C(i),
                carrier: on(ArmId::a(i), pose.centre_of(i)),
            })
            .collect(),
        Place::Right => (1..n)
            .map(|i| Pivot { joint: Joint::Right(i), at: JointId::Jr(i), carrier: on(ArmId::a(i), 1.0) })
            .collect(),
    }
}

/// Heads, nuts, washers and spacers of the pivots at a place.
pub(super) fn pivots(subject: &EndSubject<'_>, place: Place) -> Vec<Stroke> {
    let pieces = subject.pieces;
    all_pivots(subject, place)
        .into_iter()
        .flat_map(|pivot| {
            let y = subject.side.joint(pivot.at).y;
            pieces.line(pivot.joint).iter().flat_map(move |piece| {
                let across = match piece.kind {
                    Kind::Hexagon => pieces.hexagon,
                    Kind::Washer => pieces.washer,
                    Kind::Spacer => pieces.spacer,
                    _ => 0.0,
                };
                let wide = piece.z[1] - piece.z[0] > THIN * subject.side.pixel;
                let class = if wide { "w steel" } else { "n steel" };
                (across > 0.0).then(|| {
                    subject.blocks(class, pivot.carrier, piece.z, [y - across / 2.0, y + across / 2.0])
                })
            })
        })
        .flatten()
        .collect()
}
