//! Changing one input: taken when the design still stands, refused with the reason and the nearest value that does.
use super::reach::reach;
use crate::design::{BearingEnd, Design, Field};
use crate::mechanics::{Solver, free};
use crate::quantity::{Amount, Kind, Length, Phrase, System};

/// The angle of the arms up to which an offered lift goes, rad: steeper arms stand unsteadily (60 to 65 degrees, common
/// practice, no source).
const STEEP: f64 = 62.0 * core::f64::consts::PI / 180.0;

/// A change that was not taken.
#[derive(Clone, Debug)]
pub struct Refusal {
    /// Why, in a sentence.
    pub phrase: Phrase,
    /// The value nearest to the wanted one that the design would take, in steps; none where only the present one will do.
    pub nearest: Option<i64>,
    /// Another way out: the wanted value with the lift fitted to it.
    pub offer: Option<Offer>,
}

/// A whole design offered instead, with the words for its button.
#[derive(Clone, Debug)]
pub struct Offer {
    /// What it does.
    pub phrase: Phrase,
    /// The design.
    pub design: Box<Design>,
}

/// Where an input may lie while everything else stays, in steps, and what ends the range.
#[derive(Clone, Debug)]
pub struct Span {
    /// Smallest value.
    pub from: i64,
    /// Largest value.
    pub to: i64,
    /// What forbids less, where that is more than the input's own range.
    pub below: Option<Phrase>,
    /// What forbids more, where that is more than the input's own range.
    pub above: Option<Phrase>,
}

fn with(design: &Design, field: &Field, steps: i64) -> Design {
    let mut changed = design.clone();
    field.set(&mut changed, steps);
    changed
}

/// The design with one input changed, if it can still stand.
///
/// # Errors
/// [`Refusal`] with the reason and, where there are any, ways out. The design given is expected to stand.
pub fn revise(design: &Design, field: &Field, steps: i64) -> Result<Design, Refusal> {
    let phrase = if field.allows(steps) {
        let changed = with(design, field, steps);
        match reach(&changed) {
            Ok(()) => return Ok(changed),
            Err(obstacle) => obstacle.phrase,
        }
    } else {
        Phrase::new(format!("{} must lie between ", field.label))
            .with(Amount::Written(field.kind, field.range.0))
            .and(" and ")
            .with(Amount::Written(field.kind, field.range.1))
            .and(".")
    };
    let present = field.get(design);
    let nearest =
        if field.choices.is_empty() { Some(farthest(design, field, field.nearest(steps))) } else { None };
    let nearest = nearest.filter(|value| *value != present);
    Err(Refusal {
        phrase,
        nearest,
        offer: field
            .allows(steps)
            .then(|| moved(design, field, steps).or_else(|| fitted(design, field, steps)))
            .flatten(),
    })
}

/// The value farthest from the present one towards a goal with which the design still stands.
fn farthest(design: &Design, field: &Field, goal: i64) -> i64 {
    if reach(&with(design, field, goal)).is_ok() {
        return goal;
    }
    let (mut good, mut bad) = (field.get(design), goal);
    while good.abs_diff(bad) > 1 {
        let middle = good + (bad - good) / 2;
        if reach(&with(design, field, middle)).is_ok() {
            good = middle;
        } else {
            bad = middle;
        }
    }
    good
}

/// Lines of the reader's rule, in steps, the coarser first: millimetres and tenths of them, sixteenths and sixty-fourths of an inch.
const fn rule(system: System) -> [i64; 2] {
    match system {
        System::Metric => [1600, 160],
        System::Inch => [2540, 635],
    }
}

/// The value of a length at or before the limit `end` that stands at a line of the reader's rule, seen from the present value; the limit itself where no
/// line lies between, and for what is no length.
#[must_use]
pub fn marked(design: &Design, field: &Field, end: i64, system: System) -> i64 {
    let present = field.get(design);
    let inwards =
        |line: i64| if end < present { -((-end).div_euclid(line)) } else { end.div_euclid(line) } * line;
    let between = |value: &i64| (present.min(end)..=present.max(end)).contains(value) && *value != present;
    let stands = |value: &i64| reach(&with(design, field, *value)).is_ok();
    let lines = rule(system).into_iter().filter(|_| field.kind == Kind::Length);
    lines.map(inwards).find(|value| between(value) && stands(value)).unwrap_or(end)
}

/// Where an input may lie while everything else stays as it is.
#[must_use]
pub fn span(design: &Design, field: &Field) -> Span {
    if !field.choices.is_empty() {
        return Span { from: field.range.0, to: field.range.1, below: None, above: None };
    }
    let (from, to) = (farthest(design, field, field.range.0), farthest(design, field, field.range.1));
    let why = |end: i64, beyond: i64| {
        (end != beyond)
            .then(|| reach(&with(design, field, end + (beyond - end).signum())).err().map(|o| o.phrase))
            .flatten()
    };
    Span { from, to, below: why(from, field.range.0), above: why(to, field.range.1) }
}

/// The bearing at the other end of the screw, with its place moved there: beyond the carriage at its farthest, or as far behind the
/// fixed pivots, by the nut and the bearing tube.
fn moved(design: &Design, field: &Field, steps: i64) -> Option<Offer> {
    let mut changed = with(design, field, steps);
    if changed.drive.bearing_end == design.drive.bearing_end && changed.drive.kind == design.drive.kind {
        return None;
    }
    let solver = Solver::new(&free(design)).ok()?;
    let pose = solver.pose_at_height(design.lift.lowest.to_m()).ok()?;
    let room = changed.drive.nut_length + changed.drive.cross_bar + changed.drive.anchor_bar;
    let place = match changed.drive.bearing_end {
        BearingEnd::Fixed => -room,
        BearingEnd::Far => Length::m(pose.carriage_x.max(pose.top_axle.x)) + room,
    };
    changed.drive.bearing_place = Length::mm(place.to_mm().round());
    let phrase = Phrase::new("Change it and put the bearing at ")
        .with(Amount::Size(changed.drive.bearing_place.to_m()));
    reach(&changed).is_ok().then(|| Offer { phrase, design: Box::new(changed) })
}

/// The wanted value with lowest and highest deck moved into the linkage's reach: the lowest stays if it can, the
/// highest comes down to arms at 62 degrees.
fn fitted(design: &Design, field: &Field, steps: i64) -> Option<Offer> {
    let mut changed = with(design, field, steps);
    let mechanism = free(&changed);
    let solver = Solver::new(&mechanism).ok()?;
    let steep = solver.pose_at_angle(STEEP).ok()?.deck_height;
    let folded = solver.limits().height_low?;
    let inwards = |height: f64| Length::mm((height.max(folded) * 1e3).ceil().min((steep * 1e3).floor()));
    changed.lift.lowest = inwards(changed.lift.lowest.to_m());
    changed.lift.highest = inwards(changed.lift.highest.to_m());
    let moved = changed.lift != design.lift;
    (moved && reach(&changed).is_ok() && field.key != "lo" && field.key != "hi").then(|| Offer {
        phrase: Phrase::new("Change it and lift from ")
            .with(Amount::Size(changed.lift.lowest.to_m()))
            .and(" to ")
            .with(Amount::Size(changed.lift.highest.to_m())),
        design: Box::new(changed),
    })
}
