//! The scale of the crank: a track even in turns, deck heights above it, turns below.
use risewright::drawing::{Anchor, Mark, Screen, Shape, Ticks};
use risewright::quantity::{Length, System, figures};
use risewright::report::Report;

/// Height of the scale, px, and of its track in it.
pub const HEIGHT: f64 = 44.0;
const TRACK: f64 = 22.5;
/// Room at either end for half a label, px.
pub const MARGIN: f64 = 18.0;
/// Labels stand at least this far apart, middle to middle, px.
const APART: f64 = 36.0;
/// Base lines of heights and turns, px.
const HEIGHTS: f64 = 12.0;
const TURNS: f64 = 40.0;

/// The scale over a width, px.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Track {
    /// Width of the whole scale, px.
    pub width: f64,
    /// Turns from end to end.
    pub turns: f64,
}

impl Track {
    /// Where so many turns lie, px.
    pub fn x(&self, turns: f64) -> f64 {
        let part = if self.turns > 0.0 { turns / self.turns } else { 0.0 };
        MARGIN + part * (self.width - 2.0 * MARGIN)
    }

    /// What moves: the run behind the ring, and the ring.
    pub fn live(&self, turns: f64) -> Vec<Mark> {
        let ring = Screen::new(self.x(turns), TRACK);
        let circle = |class, radius| Mark { class, shape: Shape::Circle { centre: ring, radius } };
        vec![
            Mark { class: "run", shape: Shape::Line { from: Screen::new(MARGIN, TRACK), to: ring } },
            circle("grip", 8.0),
            circle("tag", 2.5),
        ]
    }

    /// What stays.
    pub fn still(&self, report: &Report, units: System) -> Vec<Mark> {
        let ends = [MARGIN, self.width - MARGIN];
        let mut marks = vec![line("axis", (ends[0], TRACK), (ends[1], TRACK))];
        self.turn_marks(&mut marks);
        self.height_marks(report, units, &mut marks);
        marks
    }

    fn turn_marks(&self, marks: &mut Vec<Mark>) {
        let ticks = Ticks::covering(0.0, self.turns, 6);
        for turns in ticks.values().filter(|turns| *turns <= self.turns) {
            let x = crisp(self.x(turns));
            marks.push(line("tick", (x, TRACK), (x, TRACK + 5.5)));
            marks.push(text(x, TURNS, ticks.text(turns)));
            let half = turns + ticks.step / 2.0;
            if half <= self.turns {
                let x = crisp(self.x(half));
                marks.push(line("tick", (x, TRACK), (x, TRACK + 3.5)));
            }
        }
    }

    /// Both ends are always labelled, the round heights between them where there is room.
    fn height_marks(&self, report: &Report, units: System, marks: &mut Vec<Mark>) {
        let step = step(report.highest() - report.lowest(), units);
        let mut taken = vec![self.x(0.0), self.x(self.turns)];
        for (height, x) in [(report.lowest(), taken[0]), (report.highest(), taken[1])] {
            marks.push(line("tick", (crisp(x), TRACK), (crisp(x), TRACK - 6.5)));
            marks.push(text(x, HEIGHTS, figures::size(height, units).number));
        }
        let mut count = (report.lowest() / step).ceil();
        while count * step < report.highest() {
            let height = count * step;
            let x = self.x(report.turns_at(height));
            let whole = count % 2.0 == 0.0;
            let room = taken.iter().all(|other| (x - other).abs() >= APART);
            let labelled = whole && room;
            marks.push(line("tick", (crisp(x), TRACK), (crisp(x), TRACK - if whole { 6.5 } else { 3.5 })));
            if labelled {
                taken.push(x);
                marks.push(text(x, HEIGHTS, figures::size(height, units).number));
            }
            count += 1.0;
        }
    }
}

/// Distance of two ticks, m: half of what is labelled.
fn step(lift: f64, units: System) -> f64 {
    const MOST_LABELS: f64 = 12.0;
    let one = match units {
        System::Metric => Length::mm(50.0),
        System::Inch => Length::inch(2.0),
    }
    .to_m();
    [1.0, 2.0, 5.0, 10.0, 20.0, 50.0]
        .into_iter()
        .map(|times| times * one)
        .find(|step| lift / step <= 2.0 * MOST_LABELS)
        .unwrap_or(lift)
}

/// The middle of a pixel.
fn crisp(at: f64) -> f64 {
    at.floor() + 0.5
}

fn line(class: &'static str, from: (f64, f64), to: (f64, f64)) -> Mark {
    Mark { class, shape: Shape::Line { from: Screen::new(from.0, from.1), to: Screen::new(to.0, to.1) } }
}

fn text(x: f64, y: f64, words: String) -> Mark {
    Mark {
        class: "s",
        shape: Shape::Text { at: Screen::new(x, y), anchor: Anchor::Middle, upright: false, words },
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop")]
    use super::*;
    use risewright::design::Demo;
    use risewright::report::analyse;

    fn labels(marks: &[Mark], base: f64) -> Vec<(f64, String)> {
        let mut labels: Vec<(f64, String)> = marks
            .iter()
            .filter_map(|mark| match &mark.shape {
                Shape::Text { at, words, .. } if at.y > base - 1.0 && at.y < base + 1.0 => {
                    Some((at.x, words.clone()))
                }
                _ => None,
            })
            .collect();
        labels.sort_by(|one, other| one.0.total_cmp(&other.0));
        labels
    }

    #[test]
    fn both_ends_are_labelled_and_no_label_stands_on_another() {
        for demo in Demo::ALL {
            let report = analyse(&demo.design()).unwrap();
            for units in [System::Metric, System::Inch] {
                for width in [280.0, 364.0, 700.0] {
                    let track = Track { width, turns: report.turns() };
                    let heights = labels(&track.still(&report, units), HEIGHTS);
                    assert!((heights[0].0 - MARGIN).abs() < 1e-9, "{heights:?}");
                    assert!((heights[heights.len() - 1].0 - (width - MARGIN)).abs() < 1e-9, "{heights:?}");
                    assert!(heights.windows(2).all(|pair| pair[1].0 - pair[0].0 >= APART), "{heights:?}");
                }
            }
        }
    }

    #[test]
    fn the_ring_stands_where_the_turns_are() {
        let track = Track { width: 236.0, turns: 50.0 };
        assert!((track.x(0.0) - 18.0).abs() < 1e-9);
        assert!((track.x(25.0) - 118.0).abs() < 1e-9);
        assert!((track.x(50.0) - 218.0).abs() < 1e-9);
    }
}
