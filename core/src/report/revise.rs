//! Changing one input: taken when the design still stands, refused with the reason and the nearest value that does.
use super::reach::reach;
use crate::design::{BearingEnd, Design, Field};
use crate::mechanics::{Solver, free};
use crate::quantity::{Amount, Length, Phrase, System, inwards};

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
    /// Both as they are told.
    pub ends: [Amount; 2],
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
        outside(field, span(design, field), steps)
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

/// Where a value outside the range of its field may lie, and what ends that earlier than the range itself.
fn outside(field: &Field, span: Span, steps: i64) -> Phrase {
    let [from, to] = span.ends;
    let told = Phrase::new(format!("{} must lie between ", field.label)).with(from).and(" and ").with(to);
    match if steps < span.from { span.below } else { span.above } {
        Some(why) => told.and(" in this design. ").then(why),
        None => told.and("."),
    }
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

/// The value at or before the limit `end` that stands at a line of the reader's rule, seen from the present value; the limit itself where no
/// line lies between, and for what has no lines.
#[must_use]
pub fn marked(design: &Design, field: &Field, end: i64, system: System) -> i64 {
    let stands = |value: &i64| reach(&with(design, field, *value)).is_ok();
    inwards(field.kind, end, field.get(design), system).find(stands).unwrap_or(end)
}

/// Where an input may lie while everything else stays as it is.
#[must_use]
pub fn span(design: &Design, field: &Field) -> Span {
    let told = |end: i64| Amount::Limit(field.kind, end, field.get(design));
    if !field.choices.is_empty() {
        let (from, to) = field.range;
        return Span { from, to, ends: [from, to].map(told), below: None, above: None };
    }
    let (from, to) = (farthest(design, field, field.range.0), farthest(design, field, field.range.1));
    let why = |end: i64, beyond: i64| {
        (end != beyond)
            .then(|| reach(&with(design, field, end + (beyond - end).signum())).err().map(|o| o.phrase))
            .flatten()
    };
    let ends = [from, to].map(told);
    Span { from, to, ends, below: why(from, field.range.0), above: why(to, field.range.1) }
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
            .with(Amount::AtLeast(changed.lift.lowest.to_m()))
            .and(" to ")
            .with(Amount::AtMost(changed.lift.highest.to_m())),
        design: Box::new(changed),
    })
}
