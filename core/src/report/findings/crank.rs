//! How hard the crank is.
use super::strength::spot;
use crate::checks::NEAR;
use crate::design::Design;
use crate::mechanics::drive::Action;
use crate::parts::{crank_out, crank_reach, crank_room, crank_under};
use crate::quantity::{Amount, Length, Phrase};
use crate::report::finding::{Cure, Curve, Finding, Grade, Spot};
use crate::report::relations::most;
use crate::report::{Report, Station, advice};
use glam::DVec2;

/// Halvings when looking for a remedy: to a two-hundred-and-fiftieth of the range looked through.
const HALVINGS: u32 = 8;

/// The force on the handle while raising against the force the builder accepts.
pub(super) fn effort(report: &Report) -> Option<Finding> {
    let check = report.check("crank-force")?;
    let grade = Grade::of(check.verdict);
    Some(Finding {
        grade,
        ratio: check.ratio,
        phrase: Phrase::new("Crank: ")
            .with(check.demand)
            .and(" at deck ")
            .with(Amount::Size(check.height))
            .and(". Limit set for this design: ")
            .with(check.capacity)
            .and("."),
        remedy: None,
        cure: (grade != Grade::Fine).then_some(Cure::Crank),
        height: Some(check.height),
        spot: spot(check.member),
        curve: Some(Curve::ScrewForce),
    })
}

/// Deck heights at which a crank that moves with the table is held against the floor.
const LOOKS: usize = 9;

/// The crank's handle against the floor it turns over.
pub(super) fn floor(report: &Report) -> Option<Finding> {
    let last = report.stations.len().checked_sub(1)?;
    let places = (0..LOOKS).filter_map(|look| {
        let station = &report.stations[last * look / (LOOKS - 1)];
        let (axis, level) = crank_axis(report, station)?;
        let radius = report.design.drive.crank;
        Some((axis - crank_reach(radius) * level, axis / level.max(0.1), station.height))
    });
    let (room, axis, height) = places.min_by(|one, other| one.0.total_cmp(&other.0))?;
    (room <= 0.0).then(|| Finding {
        grade: Grade::Over,
        ratio: 1.0 - room / report.design.drive.crank.to_m(),
        phrase: Phrase::new("The crank hits the floor at deck ")
            .with(Amount::Size(height))
            .and(": with half its handle it reaches ")
            .with(Amount::Size(-room))
            .and(" below it."),
        remedy: Some(
            Phrase::new("A crank of at most ")
                .with(most(crank_under(axis.max(0.0))))
                .and(" clears it; so does a screw that lies as much higher."),
        ),
        cure: None,
        height: Some(height),
        spot: Spot::Crank,
        curve: None,
    })
}

/// How high the middle of the crank stands above the floor, m, and the part of its radius that its lowest turn reaches down: all of it where the
/// screw lies level. The crank turns outside the bearing, square to the screw.
fn crank_axis(report: &Report, station: &Station) -> Option<(f64, f64)> {
    let pose = &station.pose;
    let pins = report.design.lift.pin_line.to_m();
    let system = report.solver().equilibrium(pose).ok()?;
    let screw = system.screw();
    let up = match screw.action {
        Action::BaseAxle => pose.base_axle().y,
        Action::TopAxle => {
            let place = report.design.drive.bearing_place.to_m();
            pose.top.point(DVec2::new(place, pose.top_axle.y)).y
        }
        Action::Pins([foot, _]) => {
            pose.frame(foot.body).point(foot.local).y - screw.along.y * crank_out(&report.design)
        }
    };
    Some((pins + up, screw.along.x.abs()))
}

/// A higher lowest deck, and a longer crank, that keep to the limit, or well below it where it is only near; the first is tried out, the second
/// follows from the lever.
pub(super) fn remedy(report: &Report) -> Option<Phrase> {
    let (design, ratio) = (&report.design, report.check("crank-force")?.ratio);
    let (share, keeps) = if ratio > 1.0 { (1.0, "keeps to it") } else { (NEAR, "keeps well below it") };
    let limit = share * design.drive.crank_limit.to_n();
    let crank = Length::mm((design.drive.crank.to_mm() * ratio / share).ceil());
    let stop = higher_stop(design, limit)
        .map(|lowest| Phrase::new("A lowest deck of ").with(Amount::AtLeast(lowest.to_m())));
    let lever = (crank <= crank_room(design)).then_some(Amount::AtLeast(crank.to_m()));
    match (stop, lever) {
        (Some(stop), Some(lever)) => {
            Some(stop.and(format!(" {keeps}; so does a crank of ")).with(lever).and("."))
        }
        (Some(stop), None) => Some(stop.and(format!(" {keeps}."))),
        (None, Some(lever)) => Some(Phrase::new("A crank of ").with(lever).and(format!(" {keeps}."))),
        (None, None) => None,
    }
}

/// The lowest stop, to the nearest millimetre above, with which the crank keeps to a limit.
fn higher_stop(design: &Design, limit: f64) -> Option<Length> {
    let at = |lowest: Length| {
        let mut changed = design.clone();
        changed.lift.lowest = lowest;
        changed
    };
    let (mut low, mut high) = (design.lift.lowest, design.lift.highest - Length::mm(1.0));
    if !keeps(&at(high), limit) {
        return None;
    }
    for _ in 0..HALVINGS {
        let middle = Length::from_steps(i64::midpoint(low.steps(), high.steps()));
        if keeps(&at(middle), limit) {
            high = middle;
        } else {
            low = middle;
        }
    }
    Some(Length::mm(high.to_mm().ceil()))
}

/// Whether the crank keeps to a limit at the lowest deck, where a higher stop acts.
fn keeps(design: &Design, limit: f64) -> bool {
    advice::station(design, design.lift.lowest.to_m()).is_some_and(|station| station.crank_raise() <= limit)
}
