//! What a point of the elevation lies on: the part that a press there means.
use super::elevation::Subject;
use super::scale::Screen;
use super::sheet::Sheet;
use crate::mechanics::{ArmId, Freed, JointId};
use crate::report::{Report, Station};
use glam::DVec2;

/// A point this far off a part still means it, px.
const NEAR: f64 = 4.0;

impl Sheet {
    /// The part at a point of the elevation with the table at a station of the same report: a wheel before the deck and the base, these before
    /// an arm, of two arms the one whose axis is nearer; none where nothing is within a few pixels.
    #[must_use]
    pub fn hit(&self, report: &Report, station: &Station, at: Screen) -> Option<Freed> {
        let subject = self.subject(report, station);
        let point = self.plan.scale.to_model(at);
        let point = DVec2::new(point.x, point.y);
        let near = NEAR / self.plan.scale.per_mm;
        wheel(&subject, point, near)
            .or_else(|| frame(&subject, point, near))
            .or_else(|| arm(&subject, point, near))
    }
}

fn wheel(subject: &Subject<'_>, point: DVec2, near: f64) -> Option<Freed> {
    let radius = subject.design.running.wheel.to_mm() / 2.0;
    let on = |joint| (subject.joint(joint) - point).length() <= radius + near;
    if on(JointId::Br) { Some(Freed::BaseCarriage) } else { on(JointId::Tr).then_some(Freed::DeckCarriage) }
}

/// The deck's panel with its rails, or the base from the floor to its beams.
fn frame(subject: &Subject<'_>, point: DVec2, near: f64) -> Option<Freed> {
    let frames = &subject.design.frames;
    let off = point - subject.deck_left();
    let along = subject.pose.top.along;
    let place = DVec2::new(off.dot(along), along.perp_dot(off));
    let deep = frames.deck_thickness.to_mm() + frames.deck_rail_depth.to_mm();
    let on_deck = (-near..=frames.deck_length.to_mm() + near).contains(&place.x)
        && (-deep - near..=near).contains(&place.y);
    if on_deck {
        return Some(Freed::Deck);
    }
    let left = frames.base_left.to_mm();
    let top = subject.design.running.caster_height.to_mm() + frames.beam_depth.to_mm();
    let on_base = (left - near..=left + frames.base_length.to_mm() + near).contains(&point.x)
        && (-near..=top + near).contains(&point.y);
    on_base.then_some(Freed::Base)
}

/// The arm whose axis is nearest among those the point lies on.
fn arm(subject: &Subject<'_>, point: DVec2, near: f64) -> Option<Freed> {
    let reach = subject.design.arms.width.to_mm() / 2.0 + near;
    let length = subject.design.lift.arm_length.to_mm();
    ArmId::all(subject.pose.n)
        .map(|arm| {
            let axes = subject.arm(arm);
            let along = (point - axes.origin).dot(axes.along).clamp(0.0, length);
            ((point - axes.point(along, 0.0)).length(), arm)
        })
        .filter(|(far, _)| *far <= reach)
        .min_by(|one, other| one.0.total_cmp(&other.0))
        .map(|(_, arm)| Freed::Arm(arm))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Demo;
    use crate::drawing::{Layout, View, widths};
    use crate::quantity::System;
    use crate::report::analyse;

    #[test]
    fn a_part_is_found_where_it_is_drawn() {
        for demo in Demo::ALL {
            let report = analyse(&demo.design()).unwrap();
            let view = View::new(1096, 628, Layout::Wide, System::Metric);
            let sheet = Sheet::new(&report, &view, &widths);
            for share in [0.2, 0.6, 1.0] {
                let station = report.at(report.lowest() + share * (report.highest() - report.lowest()));
                let subject = sheet.subject(&report, &station);
                let hit =
                    |place: DVec2| sheet.hit(&report, &station, sheet.plan.scale.to_screen(place.into()));
                for arm in ArmId::all(station.pose.n) {
                    // Between the centre pin and an end, where no other arm and no wheel lies.
                    let place = subject.arm(arm).point(0.3 * report.design.lift.arm_length.to_mm(), 0.0);
                    assert_eq!(hit(place), Some(Freed::Arm(arm)), "{demo:?} {share}");
                }
                assert_eq!(hit(subject.carriage()), Some(Freed::BaseCarriage));
                assert_eq!(hit(subject.joint(JointId::Tr)), Some(Freed::DeckCarriage));
                assert_eq!(hit((subject.deck_left() + subject.deck_edge()) / 2.0), Some(Freed::Deck));
                assert_eq!(hit(DVec2::new(subject.carriage().x + 2000.0, 300.0)), None);
                assert_eq!(hit(subject.deck_point() + DVec2::new(0.0, 120.0)), None);
            }
        }
    }
}
