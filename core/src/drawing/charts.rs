//! The plots of a picture in their places: axes, curves and names, and what of them moves with the deck.
use super::chart::Plot;
use super::crossing;
use super::frame::Area;
use super::lettering::Lettering;
use super::mark::{Curve, Mark};
use super::plan::Plan;
use super::plot::{Name, Placed};
use super::scale::crisp;
use crate::quantity::System;
use crate::report::Station;

/// Plots with the names that hang on their curves. The places are those of the picture's plan.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Charts {
    plots: Vec<Plot>,
    names: Vec<Vec<Name>>,
}

impl Charts {
    pub(super) const fn new(plots: Vec<Plot>) -> Self {
        Self { plots, names: Vec::new() }
    }

    /// Draws what stands still and finds the names their places; marks and curves.
    pub(super) fn draw(&mut self, plan: &Plan, lettering: &mut Lettering<'_>) -> (Vec<Mark>, Vec<Curve>) {
        let (mut marks, mut curves) = (Vec::new(), Vec::new());
        for place in 0..plan.areas.len() {
            let Some(placed) = self.placed(plan, place) else { continue };
            marks.extend(placed.axes());
            marks.extend(placed.words(lettering));
            let (line, limit) = placed.limit(lettering);
            marks.push(line);
            let mut names = placed.names(lettering);
            names.push(limit);
            curves.extend(placed.curves(place));
            self.names.push(names);
        }
        (marks, curves)
    }

    /// Boxes of the names. They give way to values, so that they are set again with what moves.
    pub(super) fn named(&self) -> Vec<Area> {
        self.names.iter().flatten().filter_map(|name| name.area).collect()
    }

    /// Whether any plot has a curve to show.
    pub(super) fn have_points(&self) -> bool {
        self.plots.iter().any(|plot| plot.series.iter().any(|series| !series.points.is_empty()))
    }

    /// A plot in its place.
    pub(super) fn placed<'a>(&'a self, plan: &'a Plan, place: usize) -> Option<Placed<'a>> {
        Some(Placed {
            plot: self.plots.get(place)?,
            area: plan.areas.get(place)?,
            ticks: plan.ticks.get(place)?,
        })
    }

    /// The plots in their places, each with the level line's height in it, px.
    fn levels<'a>(&'a self, plan: &'a Plan, station: &Station) -> impl Iterator<Item = (Placed<'a>, f64)> {
        let height = station.height;
        (0..plan.areas.len()).filter_map(move |place| {
            let placed = self.placed(plan, place)?;
            let level = crisp(placed.area.scale.level(height));
            Some((placed, level))
        })
    }

    /// The values beside the dots.
    pub(super) fn values(
        &self,
        plan: &Plan,
        lettering: &mut Lettering<'_>,
        station: &Station,
        system: System,
    ) -> Vec<Mark> {
        self.levels(plan, station)
            .flat_map(|(placed, level)| placed.values(lettering, station, level, system))
            .collect()
    }

    /// The names of the curves, then the dots on the level line, plot by plot.
    pub(super) fn names_and_dots(
        &self,
        plan: &Plan,
        lettering: &mut Lettering<'_>,
        station: &Station,
    ) -> Vec<Mark> {
        self.levels(plan, station)
            .zip(&self.names)
            .flat_map(|((placed, level), names)| {
                let mut marks = crossing::names(lettering, names, level);
                marks.extend(placed.dots(station, level));
                marks
            })
            .collect()
    }
}
