//! What a plot shows: curves over the deck's height, taken from the report.
use super::mark::{Hue, Ink};
use super::view::Chart;
use crate::mechanics::JointId;
use crate::quantity::{System, figures};
use crate::report::{Report, Station};

/// One figure of a station, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Quantity {
    Raise,
    Still,
    Lower,
    CrankRaise,
    CrankLower,
    BaseWheel,
    DeckWheel,
    Pivot(JointId),
    Caster(usize),
}

impl Quantity {
    /// Its value at a station, N.
    pub(super) fn of(self, station: &Station) -> f64 {
        match self {
            Self::Raise => station.raise(),
            Self::Still => station.still(),
            Self::Lower => station.lower(),
            Self::CrankRaise => station.crank_raise(),
            Self::CrankLower => station.crank_lower(),
            Self::BaseWheel => station.motion.raise.base_wheel,
            Self::DeckWheel => station.motion.raise.top_wheel,
            Self::Pivot(joint) => station.motion.raise.joint(joint).length(),
            Self::Caster(pair) => station.casters().get(pair).copied().unwrap_or(f64::NAN),
        }
    }
}

/// A curve of a plot.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Series {
    /// Its name, written on it.
    pub(super) name: String,
    /// What it shows.
    pub(super) quantity: Quantity,
    /// How it is drawn.
    pub(super) ink: Ink,
    /// Class of its lettering.
    pub(super) lettering: &'static str,
    /// Class and radius of its dot at the deck's height, px.
    pub(super) dot: (&'static str, f64),
    /// Value and deck height in m, lowest first; finite values only.
    pub(super) points: Vec<(f64, f64)>,
}

/// A line in a plot that should not be crossed.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Limit {
    /// Its name.
    pub(super) name: String,
    /// Its value, SI.
    pub(super) value: f64,
}

/// A plot before it has a place on paper.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Plot {
    pub(super) chart: Chart,
    /// Its heading.
    pub(super) title: &'static str,
    /// Unit and what is meant, beneath the heading.
    pub(super) note: String,
    /// Displayed units in one SI unit.
    pub(super) per_si: f64,
    /// The main curve first.
    pub(super) series: Vec<Series>,
    /// The limit, if there is one.
    pub(super) limit: Option<Limit>,
    /// Whether values are printed as screw and joint forces (kN) or hand and wheel forces (N).
    large: bool,
}

/// Lines of a series by its rank in the plot: the main one, its companion, the third.
const INKS: [(&str, f64, &[f64]); 3] = [("c-raise", 2.2, &[]), ("c-free", 1.1, &[6.0, 2.5]), ("c-lower", 1.1, &[])];

fn ink(rank: usize) -> Ink {
    let (class, width, dash) = INKS[rank.min(2)];
    Ink { class, hue: Hue::Force, width, dash, opacity: 1.0 }
}

const fn look(rank: usize) -> (&'static str, (&'static str, f64)) {
    if rank == 0 { ("force-t b halo", ("d-force", 4.0)) } else { ("force-t halo", ("d-free", 3.0)) }
}

impl Plot {
    /// The plot of a chart.
    pub(super) fn of(chart: Chart, report: &Report, system: System) -> Self {
        let large = matches!(chart, Chart::ScrewForce | Chart::Pivots);
        let (unit, per_si) = match (system, large) {
            (System::Metric, true) => ("kN", 1e-3),
            (System::Metric, false) => ("N", 1.0),
            (System::Inch, _) => ("lbf", figures::NEWTON_IN_LBF),
        };
        let (title, meaning, named) = content(chart, report);
        // Of two curves the second is a full thin line; of three, the second is dashed.
        let count = named.len();
        let series = named
            .into_iter()
            .enumerate()
            .map(|(rank, (name, quantity))| {
                let (lettering, dot) = look(rank);
                let points = report
                    .stations
                    .iter()
                    .map(|station| (quantity.of(station), station.height))
                    .filter(|(value, height)| value.is_finite() && height.is_finite())
                    .collect();
                Series { name, quantity, ink: ink(if count == 2 { 2 * rank } else { rank }), lettering, dot, points }
            })
            .collect();
        let limit = limit(chart, report, system);
        Self { chart, title, note: format!("{unit}, {meaning}"), per_si, series, limit, large }
    }

    /// A value as it stands beside its dot.
    pub(super) fn figure(&self, value: f64, system: System) -> String {
        if self.large { figures::large_force(value, system).number } else { figures::small_force(value, system).number }
    }

    /// Least and greatest value of all curves, SI.
    pub(super) fn extremes(&self) -> (f64, f64) {
        let values = || self.series.iter().flat_map(|series| series.points.iter().map(|point| point.0));
        (values().fold(0.0, f64::min), values().fold(0.0, f64::max))
    }
}

type Named = Vec<(String, Quantity)>;

fn content(chart: Chart, report: &Report) -> (&'static str, &'static str, Named) {
    let name = str::to_owned;
    match chart {
        Chart::ScrewForce => (
            "Screw force",
            "along the screw",
            vec![
                (name("raise"), Quantity::Raise),
                (name("without friction"), Quantity::Still),
                (name("lower"), Quantity::Lower),
            ],
        ),
        Chart::CrankForce => (
            "Crank force",
            "on the handle",
            vec![(name("raise"), Quantity::CrankRaise), (name("lower"), Quantity::CrankLower)],
        ),
        Chart::Wheels => (
            "Wheel loads",
            "both sides, raising",
            vec![(name("base wheels"), Quantity::BaseWheel), (name("deck wheels"), Quantity::DeckWheel)],
        ),
        Chart::Pivots => ("Pivot loads", "both sides, raising", pivots(report)),
        Chart::Casters => (
            "Caster loads",
            "a pair, at rest",
            vec![(name("left pair"), Quantity::Caster(0)), (name("right pair"), Quantity::Caster(1))],
        ),
    }
}

/// The three pivots that carry most, the worst first.
fn pivots(report: &Report) -> Named {
    let stages = report.stations.first().map_or(1, |station| station.pose.n);
    let mut all: Vec<(f64, JointId)> = JointId::all(stages)
        .map(|joint| (report.greatest(|station| Quantity::Pivot(joint).of(station)).0, joint))
        .collect();
    all.sort_by(|one, other| other.0.total_cmp(&one.0));
    all.into_iter().take(3).map(|(_, joint)| (joint_words(joint), Quantity::Pivot(joint))).collect()
}

/// A pivot in the words of a builder.
pub(super) fn joint_words(joint: JointId) -> String {
    match joint {
        JointId::Bl => "base pivot".to_owned(),
        JointId::Br => "base axle".to_owned(),
        JointId::C(stage) => format!("centre {stage}"),
        JointId::Jl(level) => format!("left side {level}"),
        JointId::Jr(level) => format!("right side {level}"),
        JointId::Tl => "deck pivot".to_owned(),
        JointId::Tr => "deck axle".to_owned(),
    }
}

fn limit(chart: Chart, report: &Report, system: System) -> Option<Limit> {
    let limit = report.design.drive.crank_limit.to_n();
    let words = figures::small_force(limit, system);
    match chart {
        Chart::CrankForce => Some(Limit { name: format!("limit {words}"), value: limit }),
        Chart::ScrewForce => {
            report.screw_force_at_limit().map(|value| Limit { name: format!("crank {words}"), value })
        }
        _ => None,
    }
}
