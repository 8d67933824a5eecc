//! Who is in whose way: every pair of moving parts, held against each other over the lift.
//!
//! Plain `f64` in m and rad. A part is the blocks it says it fills (see [`Block`]); two parts are clear of each other where they lie side by
//! side across the table, or apart seen from the side. What is said of the right half holds for the left by symmetry. Left out: straps, keepers, end stops,
//! and a screw that is not along a rail.
use super::place::{Block, Outline};
use super::{ArmName, Contact, Part, Rides};
use glam::DVec2;

/// Where the axes of a moving body stand, seen from the side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
    /// Its origin: the lower pin of an arm, the fixed pivot of a frame, the middle of a wheel axle, m.
    pub origin: DVec2,
    /// Unit vector of its first axis.
    pub along: DVec2,
}

/// Two parts and what is free between them where they come nearest.
#[derive(Clone, Debug, PartialEq)]
pub struct Pair {
    /// Name of the first.
    pub first: String,
    /// Name of the second.
    pub second: String,
    /// What is free between them, m; negative where they would overlap: by so much one of them must give way.
    pub gap: f64,
    /// Deck height where they come nearest, m.
    pub height: f64,
}

/// One block of a part.
struct Body<'a> {
    part: &'a Part,
    block: &'a Block,
}

impl Body<'_> {
    fn name(&self) -> String {
        if self.block.label.is_empty() { named(self.part) } else { self.block.label.to_owned() }
    }
}

/// A part's name, with the arm it sits on.
fn named(part: &Part) -> String {
    match part.rides {
        Rides::OnArm(ArmName { stage, b }, _) => {
            format!("{} on arm {}{stage}", part.name, if b { 'B' } else { 'A' })
        }
        _ => part.title(),
    }
}

/// Parts that do not move against each other, or turn on one joint, are no pair.
fn may_clash(one: &Part, other: &Part) -> bool {
    let touch = one
        .contacts
        .iter()
        .any(|contact| !matches!(contact, Contact::Pivot(_)) && other.contacts.contains(contact));
    let joined = one.joints().any(|joint| other.joints().any(|its| its == joint));
    !(body_of(one) == body_of(other) || touch || joined)
}

/// What a part is rigidly part of.
#[derive(PartialEq)]
enum Rigid {
    Base,
    Deck,
    BaseCarriage,
    DeckCarriage,
    Arm(ArmName),
    Nothing,
}

fn body_of(part: &Part) -> Rigid {
    match part.rides {
        Rides::Base(_) => Rigid::Base,
        Rides::Deck(_) => Rigid::Deck,
        Rides::BaseCarriage => Rigid::BaseCarriage,
        Rides::DeckCarriage => Rigid::DeckCarriage,
        Rides::Arm(arm) | Rides::OnArm(arm, _) => Rigid::Arm(arm),
        Rides::Aside => Rigid::Nothing,
    }
}

/// Every pair of moving parts that comes nearer than `room`, m, at one of the heights, worst first: at each height `seat` says where a part's
/// axes stand. A pair is told once for each kind of two parts, where it is nearest.
#[must_use]
pub fn pairs(parts: &[Part], heights: &[(f64, &dyn Fn(Rides) -> Seat)], room: f64) -> Vec<Pair> {
    let bodies: Vec<Body<'_>> =
        parts.iter().flat_map(|part| part.places.iter().map(move |block| Body { part, block })).collect();
    let mut found: Vec<Pair> = Vec::new();
    for (at, one) in bodies.iter().enumerate() {
        for other in &bodies[at + 1..] {
            let beside = apart(one.block.z, other.block.z);
            if beside >= room || !may_clash(one.part, other.part) {
                continue;
            }
            let nearest = heights
                .iter()
                .map(|(height, seat)| (*height, seen_from_side(one, other, seat)))
                .min_by(|(_, one), (_, other)| one.total_cmp(other));
            let Some((height, side)) = nearest else { continue };
            let gap = side.max(beside);
            if gap >= room {
                continue;
            }
            let pair = Pair { first: one.name(), second: other.name(), gap, height };
            match found.iter_mut().find(|known| known.first == pair.first && known.second == pair.second) {
                Some(known) if known.gap <= pair.gap => {}
                Some(known) => *known = pair,
                None => found.push(pair),
            }
        }
    }
    found.sort_by(|one, other| one.gap.total_cmp(&other.gap));
    found
}

/// The free distance of two spans, negative where they overlap.
fn apart(one: [f64; 2], other: [f64; 2]) -> f64 {
    (one[0] - other[1]).max(other[0] - one[1])
}

/// The free distance of two blocks in the plane.
fn seen_from_side(one: &Body<'_>, other: &Body<'_>, seat: &dyn Fn(Rides) -> Seat) -> f64 {
    let [first, second] = [one, other].map(|body| Flat::new(body.block, seat(body.part.rides)));
    first.apart(&second)
}

/// An outline in the plane: corners, grown by a radius.
struct Flat {
    corners: Vec<DVec2>,
    radius: f64,
}

impl Flat {
    fn new(block: &Block, seat: Seat) -> Self {
        let point = |x: f64, y: f64| seat.origin + x * seat.along + y * seat.along.perp();
        let [x, y] = [block.x, block.y];
        match block.outline {
            Outline::Round => Self {
                corners: vec![point(x[0].midpoint(x[1]), y[0].midpoint(y[1]))],
                radius: (x[1] - x[0]) / 2.0,
            },
            Outline::Square => Self::rectangle(x, y, 0.0, point),
            Outline::Rounded(radius) => Self::rectangle(x, y, radius, point),
        }
    }

    /// A rectangle with rounded corners: a smaller one, grown.
    fn rectangle(x: [f64; 2], y: [f64; 2], radius: f64, point: impl Fn(f64, f64) -> DVec2) -> Self {
        let radius = radius.min((x[1] - x[0]) / 2.0).min((y[1] - y[0]) / 2.0).max(0.0);
        let (x, y) = ([x[0] + radius, x[1] - radius], [y[0] + radius, y[1] - radius]);
        Self {
            corners: vec![point(x[0], y[0]), point(x[1], y[0]), point(x[1], y[1]), point(x[0], y[1])],
            radius,
        }
    }

    /// The distance of two convex outlines; where they overlap, minus the shortest way out.
    fn apart(&self, other: &Self) -> f64 {
        let radii = self.radius + other.radius;
        let between = self.separation(other).max(other.separation(self));
        if between < 0.0 && between.is_finite() {
            return between - radii;
        }
        // Apart, or both round: corner to side is the nearest of two convex outlines.
        let reach = |one: &Self, two: &Self| {
            one.corners.iter().map(|corner| two.distance(*corner)).fold(f64::INFINITY, f64::min)
        };
        reach(self, other).min(reach(other, self)) - radii
    }

    fn sides(&self) -> impl Iterator<Item = [DVec2; 2]> + '_ {
        let count = self.corners.len();
        (0..count).map(move |at| [self.corners[at], self.corners[(at + 1) % count]])
    }

    /// The largest distance of the other outline from one of this one's sides, outwards; for a point there is none.
    fn separation(&self, other: &Self) -> f64 {
        if self.corners.len() < 3 {
            return f64::NEG_INFINITY;
        }
        self.sides()
            .filter(|[from, to]| from != to)
            .map(|[from, to]| {
                let outwards = -(to - from).perp().normalize_or_zero();
                other
                    .corners
                    .iter()
                    .map(|corner| (*corner - from).dot(outwards))
                    .fold(f64::INFINITY, f64::min)
            })
            .fold(f64::NEG_INFINITY, f64::max)
    }

    /// Distance of a point from the outline.
    fn distance(&self, point: DVec2) -> f64 {
        self.sides()
            .map(|[from, to]| {
                let along = to - from;
                let length = along.length_squared();
                let share =
                    if length > 0.0 { ((point - from).dot(along) / length).clamp(0.0, 1.0) } else { 0.0 };
                (point - (from + share * along)).length()
            })
            .fold(f64::INFINITY, f64::min)
    }
}
