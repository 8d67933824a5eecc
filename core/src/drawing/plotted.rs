//! The figures behind a plot: to be read as a table, saved, and drawn by itself.
use super::chart::{Limit, Plot, Series};
use super::view::Chart;
use crate::quantity::{Length, System, figures};
use crate::report::Report;

/// A plot of a design as figures.
#[derive(Clone, Debug, PartialEq)]
pub struct Plotted {
    pub(super) plot: Plot,
    pub(super) system: System,
    /// Name of the design.
    pub(super) design: String,
}

/// One curve, or the limit, as figures in the reader's units.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// Name of the curve.
    pub name: String,
    /// Unit of its values; empty for plain numbers.
    pub unit: &'static str,
    /// Its values at [`Plotted::heights`]; none where the curve has no point.
    pub values: Vec<Option<f64>>,
}

/// A plot as a table to read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlotTable {
    /// What it lists.
    pub caption: String,
    /// Heads of the columns: the deck's height, then the curves; unit apart.
    pub head: Vec<(String, &'static str)>,
    /// Its lines, from the lowest deck up.
    pub rows: Vec<PlotRow>,
}

/// A line of the table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlotRow {
    /// Deck height.
    pub height: String,
    /// The values, each with whether it is the least or the greatest of its curve.
    pub values: Vec<(String, bool)>,
}

/// The table has at most so many round heights.
const MOST_ROWS: f64 = 30.0;

/// A round height this part of a step from an end of the lift says nothing new.
const NEAR_END: f64 = 0.3;

impl Plotted {
    /// The figures of a chart.
    #[must_use]
    pub fn of(chart: Chart, report: &Report, system: System) -> Self {
        Self { plot: Plot::of(chart, report, system), system, design: report.design.name.clone() }
    }

    /// The same with the main curve of another design, as far as its heights lie within the lift; tables do not have it.
    #[must_use]
    pub fn with(self, other: &Report) -> Self {
        Self { plot: self.plot.with(other), ..self }
    }

    /// Heading of the plot.
    #[must_use]
    pub const fn title(&self) -> &'static str {
        self.plot.title
    }

    /// Unit and what is meant.
    #[must_use]
    pub fn note(&self) -> &str {
        &self.plot.note
    }

    /// Name of the design.
    #[must_use]
    pub fn design(&self) -> &str {
        &self.design
    }

    /// The unit of heights.
    #[must_use]
    pub fn height_unit(&self) -> &'static str {
        figures::size(0.0, self.system).unit
    }

    /// The deck heights of the curves' points in that unit, from the lowest up.
    #[must_use]
    pub fn heights(&self) -> Vec<f64> {
        self.places().into_iter().map(|metres| metres * self.per_metre()).collect()
    }

    /// The curves in painting order of importance, the main one first, then the limit; every value as it is plotted, without rounding.
    #[must_use]
    pub fn columns(&self) -> Vec<Column> {
        let places = self.places();
        let column = |name: String, value: &dyn Fn(f64) -> f64| Column {
            name,
            unit: self.unit(),
            values: places
                .iter()
                .map(|place| Some(value(*place) * self.plot.per_si).filter(|value| value.is_finite()))
                .collect(),
        };
        let curves =
            self.plot.series.iter().map(|series| column(series.name.clone(), &|at| series.drawn(at)));
        let limit = self.plot.limit.iter().map(|limit| column(limit_name(limit), &|at| limit.at(at)));
        curves.chain(limit).collect()
    }

    /// The values of all curves at a deck height, m, in words.
    #[must_use]
    pub fn words(&self, height: f64) -> String {
        let values = self.plot.series.iter().map(|series| {
            let figure = self.plot.figure(series.drawn(height), self.system);
            format!("{} {figure}", series.name)
        });
        format!(
            "deck {}: {} {}",
            figures::size(height, self.system),
            values.collect::<Vec<_>>().join(", "),
            self.unit()
        )
    }

    /// What one would read off the main curve: its greatest and least value, where they stand, and which way it runs.
    #[must_use]
    pub fn trend(&self) -> String {
        let Some(series) = self.plot.series.first() else { return self.title().to_owned() };
        let [least, most] = extremes(series).map(|height| {
            let figure = self.plot.figure(series.drawn(height), self.system);
            format!("{figure}\u{A0}{} at deck {}", self.unit(), figures::size(height, self.system))
        });
        format!("{}, {}: most {most}, least {least}; {}.", self.title(), series.name, way(series))
    }

    /// The plot as a table: some thirty round heights, both ends of the lift and the height of every curve's least and greatest value.
    #[must_use]
    pub fn table(&self) -> PlotTable {
        let extremes: Vec<[f64; 2]> = self.plot.series.iter().map(extremes).collect();
        let mut heights: Vec<f64> = extremes.iter().flatten().copied().filter(|at| at.is_finite()).collect();
        let written = |height: f64| figures::size(height, self.system).number;
        for height in self.round_heights() {
            // A height that reads the same as one that is there already would look like a mistake.
            if heights.iter().all(|known| written(*known) != written(height)) {
                heights.push(height);
            }
        }
        heights.sort_by(f64::total_cmp);
        heights.dedup();
        let limit = self.plot.limit.as_ref();
        let row = |height: f64| PlotRow {
            height: written(height),
            values: self
                .plot
                .series
                .iter()
                .zip(&extremes)
                .map(|(series, ends)| (series.drawn(height), ends.contains(&height)))
                .chain(limit.map(|limit| (limit.at(height), false)))
                .map(|(value, extreme)| (self.plot.figure(value, self.system), extreme))
                .collect(),
        };
        let names = self.plot.series.iter().map(|series| series.name.clone()).chain(limit.map(limit_name));
        PlotTable {
            caption: format!("{}, {}, over the deck’s height", self.plot.title, self.plot.note),
            head: core::iter::once(("deck".to_owned(), self.height_unit()))
                .chain(names.map(|name| (name, self.unit())))
                .collect(),
            rows: heights.into_iter().map(row).collect(),
        }
    }

    fn unit(&self) -> &'static str {
        self.plot.unit.symbol(self.system)
    }

    const fn per_metre(&self) -> f64 {
        match self.system {
            System::Metric => 1e3,
            System::Inch => figures::METRE_IN_INCHES,
        }
    }

    /// Deck heights at which any curve has a point, m, from the lowest up.
    pub(super) fn places(&self) -> Vec<f64> {
        let mut places: Vec<f64> =
            self.plot.series.iter().flat_map(|series| series.points.iter().map(|point| point.1)).collect();
        places.sort_by(f64::total_cmp);
        places.dedup();
        places
    }

    /// Both ends of the curves and round heights between them, m.
    fn round_heights(&self) -> Vec<f64> {
        let places = self.places();
        let (Some(low), Some(high)) = (places.first().copied(), places.last().copied()) else {
            return Vec::new();
        };
        let step = self.step(high - low);
        let mut heights = vec![low];
        let mut count = (low / step + NEAR_END).ceil();
        while count * step < high - NEAR_END * step {
            heights.push(count * step);
            count += 1.0;
        }
        heights.push(high);
        heights
    }

    /// Distance of two round heights, m.
    fn step(&self, lift: f64) -> f64 {
        let steps: [f64; 10] = match self.system {
            System::Metric => [2.0, 5.0, 10.0, 20.0, 25.0, 50.0, 100.0, 200.0, 500.0, 1000.0]
                .map(|step| Length::mm(step).to_m()),
            System::Inch => [0.0625, 0.125, 0.25, 0.5, 1.0, 2.0, 4.0, 8.0, 20.0, 40.0]
                .map(|step| Length::inch(step).to_m()),
        };
        steps.into_iter().find(|step| lift / step <= MOST_ROWS).unwrap_or(lift / MOST_ROWS)
    }
}

/// Which way a curve runs from the lowest deck to the highest.
fn way(series: &Series) -> &'static str {
    let steps = || series.points.windows(2).map(|pair| pair[1].0 - pair[0].0);
    match (steps().all(|step| step <= 0.0), steps().all(|step| step >= 0.0)) {
        (true, true) => "the same at every height",
        (true, false) => "falls all the way up",
        (false, true) => "rises all the way up",
        (false, false) => "turns on its way up",
    }
}

/// Heights of the least and the greatest value of a curve, m; the lowest of equals.
fn extremes(series: &Series) -> [f64; 2] {
    let first = (f64::NAN, f64::NAN);
    let pick = |better: fn(f64, f64) -> bool| {
        series
            .points
            .iter()
            .fold(first, |best, point| if best.0.is_nan() || better(point.0, best.0) { *point } else { best })
            .1
    };
    [pick(|value, best| value < best), pick(|value, best| value > best)]
}

fn limit_name(limit: &Limit) -> String {
    if limit.name.starts_with("limit") { limit.name.clone() } else { format!("limit: {}", limit.name) }
}
