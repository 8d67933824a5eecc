//! Whether the parts clear each other on their way.
use crate::mechanics::{ArmId, Pose, Side};
use crate::parts::stack::{Pair, Seat, pairs};
use crate::parts::{ArmName, Part, Rides};

/// Where the axes of what a part rides on stand in a pose: of the base from its fixed pivot, of an arm from its lower pin, m.
#[must_use]
pub fn seat(pose: &Pose, rides: Rides) -> Seat {
    let frame = |frame: crate::mechanics::Frame| Seat { origin: frame.origin, along: frame.along };
    match rides {
        Rides::Base(_) | Rides::Aside => frame(crate::mechanics::Frame::GROUND),
        Rides::Deck(_) => frame(pose.top),
        Rides::BaseCarriage => {
            Seat { origin: pose.base_axle(), along: crate::mechanics::Frame::GROUND.along }
        }
        Rides::DeckCarriage => Seat { origin: pose.top.point(pose.top_axle), along: pose.top.along },
        Rides::Arm(arm) | Rides::OnArm(arm, _) => frame(pose.arm(arm_id(arm))),
    }
}

fn arm_id(ArmName { stage, b }: ArmName) -> ArmId {
    ArmId { side: if b { Side::B } else { Side::A }, stage }
}

/// Every pair of parts that comes nearer than `room`, m, in one of the poses, worst first, each with the deck height at which it does.
#[must_use]
pub fn near(parts: &[Part], poses: &[&Pose], room: f64) -> Vec<Pair> {
    let seats: Vec<_> = poses.iter().map(|pose| (pose.deck_height, move |rides| seat(pose, rides))).collect();
    let heights: Vec<(f64, &dyn Fn(Rides) -> Seat)> =
        seats.iter().map(|(height, seat)| (*height, seat as &dyn Fn(Rides) -> Seat)).collect();
    pairs(parts, &heights, room)
}
