//! Where the level line meets the curves: dots, the values beside them, and the names that give way to these.
use super::frame::Area;
use super::lettering::{Lettering, text};
use super::mark::{Anchor, Mark};
use super::plot::{Name, Placed};
use super::scale::{Screen, crisp};
use crate::quantity::System;
use crate::report::Station;

/// Dots spread further than this have their values each beside its own, px.
const CLUSTER: f64 = 26.0;
/// Dots this near to each other are one to the eye, px.
const SAME: f64 = 1.0;
/// From a dot to its value, px, and how much further where that is taken.
const BESIDE: f64 = 8.0;
const FURTHER: [f64; 3] = [BESIDE, 14.0, 22.0];
const ABOVE: f64 = -6.0;
const BELOW: f64 = 14.0;
const THIRD: f64 = 27.0;

impl Placed<'_> {
    /// The dots at a station, in the order of the curves; the main one last, over the others.
    pub(super) fn dots(&self, station: &Station, level: f64) -> Vec<Mark> {
        self.plot
            .series
            .iter()
            .rev()
            .map(|series| {
                let x = self.area.place(series.value(station), station.height).x;
                let (class, radius) = series.dot;
                let shown = if x.is_finite() {
                    super::plot::dot(Screen::new(x, crisp(level)), radius)
                } else {
                    String::new()
                };
                Mark::path(class, shown)
            })
            .collect()
    }

    /// The values beside the dots. The main one is set first and always stands; another is left out where it could only stand nearer
    /// to the dot of a neighbour, whose value one would take it for.
    pub(super) fn values(
        &self,
        lettering: &mut Lettering<'_>,
        station: &Station,
        level: f64,
        system: System,
    ) -> Vec<Mark> {
        let at: Vec<(f64, f64)> = self
            .plot
            .series
            .iter()
            .map(|series| {
                let value = series.value(station);
                (value, self.area.place(value, station.height).x)
            })
            .collect();
        let finite = || at.iter().map(|(_, x)| *x).filter(|x| x.is_finite());
        let (left, right) =
            (finite().fold(f64::INFINITY, f64::min), finite().fold(f64::NEG_INFINITY, f64::max));
        let apart = right - left > CLUSTER;
        self.plot
            .series
            .iter()
            .zip(&at)
            .enumerate()
            .map(|(rank, (series, (value, x)))| {
                let nothing = || text(series.lettering, Screen::default(), Anchor::Start, "");
                if !x.is_finite() {
                    return nothing();
                }
                let words = self.plot.figure(*value, system);
                let (from, to) = if apart { (*x, *x) } else { (left, right) };
                let form = |right_side: bool, down: f64, away: f64| {
                    let (x, anchor) =
                        if right_side { (to + away, Anchor::Start) } else { (from - away, Anchor::End) };
                    text(series.lettering, Screen::new(x, level + down), anchor, &words)
                };
                // In a cluster the outermost dots have their values outside, those between them beneath on the right.
                let order = if apart || *x >= right {
                    [
                        (true, ABOVE),
                        (false, ABOVE),
                        (true, BELOW),
                        (false, BELOW),
                        (true, -THIRD),
                        (false, -THIRD),
                    ]
                } else if *x <= left {
                    [
                        (false, ABOVE),
                        (false, BELOW),
                        (true, THIRD),
                        (true, BELOW),
                        (true, ABOVE),
                        (false, -THIRD),
                    ]
                } else {
                    [
                        (true, BELOW),
                        (false, BELOW),
                        (true, THIRD),
                        (false, ABOVE),
                        (true, ABOVE),
                        (false, THIRD),
                    ]
                };
                let forms =
                    || order.into_iter().flat_map(|(side, down)| FURTHER.map(|away| form(side, down, away)));
                // On a curve or across the zero line only where there is no other place.
                let measure = lettering.measure();
                let of_its_own = |form: &Mark| {
                    let nearest = |words: Area| {
                        let gap = |dot: f64| (words.x - dot).max(dot - words.right()).max(0.0);
                        let others = at.iter().map(|(_, dot)| *dot).filter(|dot| (dot - x).abs() > SAME);
                        others.into_iter().all(|dot| gap(dot) >= gap(*x))
                    };
                    !apart || form.lettering(measure).is_none_or(nearest)
                };
                let own = || forms().filter(of_its_own);
                let clear =
                    own().filter(|form| form.lettering(measure).is_none_or(|words| self.is_clear(&words)));
                let mut value = lettering.place(clear.chain(own()).chain([nothing()]));
                if rank == 0 && value.is_left_out() {
                    value = lettering.place(forms());
                }
                if rank == 0 && value.is_left_out() {
                    lettering.set(form(true, ABOVE, BESIDE))
                } else {
                    value
                }
            })
            .collect()
    }
}

/// The names of the curves, the main one first; one whose words meet other lettering hangs elsewhere, off the level line at `level`, or
/// goes with its leader.
pub(super) fn names(lettering: &mut Lettering<'_>, names: &[Name], level: f64) -> Vec<Mark> {
    names
        .iter()
        .flat_map(|name| {
            let first = name.area.map(|area| (&name.parts, area));
            let off_level = |area: &Area| level < area.y || area.bottom() < level;
            let others =
                name.elsewhere.iter().map(|(parts, area)| (parts, *area)).filter(|(_, area)| off_level(area));
            let free = first.into_iter().chain(others).find(|(_, area)| lettering.is_free(area));
            if let Some(([leader, point, words], _)) = free {
                [leader.clone(), point.clone(), lettering.set(words.clone())]
            } else {
                let [leader, point, words] = name.parts.clone();
                [
                    Mark::path(leader.class, String::new()),
                    Mark::path(point.class, String::new()),
                    words.silent(),
                ]
            }
        })
        .collect()
}
