//! What a plot shows: curves over the deck's height, taken from the report.
use super::mark::{Hue, Ink};
use super::plot::TINT;
use super::view::Chart;
use crate::mechanics::JointId;
use crate::order::order;
use crate::quantity::{System, figures};
use crate::report::{Report, SAG_UNSAFE, Station};

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
    Sag,
    SagWithPlay,
    Tilt,
    /// Largest bending moment in the arms A, or in the arms B.
    ArmMoment {
        b: bool,
    },
    /// What the points of its curve say, whatever the station has.
    Drawn,
}

impl Quantity {
    /// Its value at a station.
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
            Self::Sag => station.sag().total(),
            Self::SagWithPlay => {
                let sag = station.sag();
                sag.total() + sag.play
            }
            Self::Tilt => station.deflection.tilt.total(),
            Self::Drawn => f64::NAN,
            Self::ArmMoment { b } => station.state.sections.as_ref().map_or(f64::NAN, |sections| {
                sections
                    .iter()
                    .skip(usize::from(b))
                    .step_by(2)
                    .map(|arm| arm.moment.abs())
                    .fold(0.0, f64::max)
            }),
        }
    }
}

/// What the values of a plot are measured in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unit {
    /// A screw or joint force.
    Thrust,
    /// A hand or wheel force.
    Load,
    /// A small displacement.
    Give,
    /// A small angle as a slope.
    Slope,
    /// How far something turns that hardly turns at all, in thousandths of a radian: mm in a metre.
    Twist,
    /// How many times something could grow.
    Times,
    /// A bending moment.
    Moment,
}

impl Unit {
    pub(super) fn figure(self, value: f64, system: System) -> figures::Figure {
        match self {
            Self::Thrust => figures::large_force(value, system),
            Self::Load => figures::small_force(value, system),
            Self::Give => figures::sag(value, system),
            Self::Slope => figures::sag(value * Self::run(system), system),
            Self::Moment => figures::torque(value, system),
            Self::Twist => figures::twist(value),
            Self::Times => figures::factor(value),
        }
    }

    /// The length on which a slope is given, m: a metre or a foot.
    const fn run(system: System) -> f64 {
        match system {
            System::Metric => 1.0,
            System::Inch => 0.3048,
        }
    }

    /// The unit's sign.
    pub(super) fn symbol(self, system: System) -> &'static str {
        match (self, system) {
            (Self::Slope, System::Metric) => "mm per m",
            (Self::Slope, System::Inch) => "in per ft",
            _ => self.figure(0.0, system).unit,
        }
    }

    /// Displayed units in one SI unit.
    pub(super) fn per_si(self, system: System) -> f64 {
        match (self, system) {
            (Self::Thrust, System::Metric) => 1e-3,
            (Self::Load | Self::Moment, System::Metric) | (Self::Times, _) => 1.0,
            (Self::Thrust | Self::Load, System::Inch) => figures::NEWTON_IN_LBF,
            (Self::Give, System::Metric) | (Self::Twist, _) => 1e3,
            (Self::Give, System::Inch) => figures::METRE_IN_INCHES,
            (Self::Slope, System::Metric) => 1e3,
            (Self::Slope, System::Inch) => 12.0,
            (Self::Moment, System::Inch) => figures::NEWTON_IN_LBF * figures::METRE_IN_INCHES,
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

impl Series {
    /// Its value at a station; along the straight line between its points where the station has none.
    pub(super) fn value(&self, station: &Station) -> f64 {
        if self.quantity == Quantity::Drawn { self.drawn(station.height) } else { self.quantity.of(station) }
    }

    /// Where its line stands at a height, m; not a number above and below it.
    pub(super) fn drawn(&self, height: f64) -> f64 {
        let at = self.points.partition_point(|point| point.1 <= height);
        match (at.checked_sub(1).and_then(|at| self.points.get(at)), self.points.get(at)) {
            (Some(from), Some(to)) => from.0 + (height - from.1) / (to.1 - from.1) * (to.0 - from.0),
            (Some(from), None) if height <= from.1 => from.0,
            _ => f64::NAN,
        }
    }
}

/// A line in a plot that its main curve should not cross.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Limit {
    /// Its name.
    pub(super) name: String,
    /// Value and deck height in m, lowest first: the same at all heights, or growing with the height.
    pub(super) points: Vec<(f64, f64)>,
    /// Whether the curve should stay to the right of it, not to the left.
    pub(super) least: bool,
}

impl Limit {
    /// The same limit at all heights.
    pub(super) fn even(name: String, value: f64, report: &Report) -> Self {
        Self { name, points: vec![(value, report.lowest()), (value, report.highest())], least: false }
    }

    /// Whether a point lies on the wrong side of it, or on it.
    pub(super) fn is_passed(&self, (value, height): (f64, f64)) -> bool {
        if self.least { value <= self.at(height) } else { value >= self.at(height) }
    }

    /// Its value at a height, m: along the straight line between its points.
    pub(super) fn at(&self, height: f64) -> f64 {
        let (Some(first), Some(last)) = (self.points.first(), self.points.last()) else { return f64::NAN };
        let part = ((height - first.1) / (last.1 - first.1)).clamp(0.0, 1.0);
        first.0 + part * (last.0 - first.0)
    }
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
    /// The main curve of another design, over the same heights; empty without one. It has no name and no dot.
    pub(super) other: Vec<(f64, f64)>,
    /// The limit, if there is one.
    pub(super) limit: Option<Limit>,
    /// The two curves between which the area is tinted, by their place in the list, and the tint.
    pub(super) tint: Option<([usize; 2], Ink)>,
    pub(super) unit: Unit,
}

pub(super) const fn line(class: &'static str, hue: Hue, width: f64, dash: &'static [f64]) -> Ink {
    Ink { class, hue, width, dash, opacity: 1.0 }
}

/// The ways a curve is drawn: its ink, the class of its lettering and its dot.
pub(super) type Look = (Ink, &'static str, (&'static str, f64));
const MAIN: Look = (line("c-raise", Hue::Force, 2.2, &[]), "force-t b halo", ("d-force", 4.0));
const DASHED: Look = (line("c-free", Hue::Force, 1.1, &[6.0, 2.5]), "force-t halo", ("d-free", 3.0));
const THIN: Look = (line("c-lower", Hue::Force, 1.1, &[]), "force-t halo", ("d-free", 3.0));
pub(super) const SAG: Look = (line("c-sag", Hue::Sag, 2.2, &[]), "sag-t b halo", ("d-sag", 4.0));
pub(super) const PLAY: Look = (line("c-play", Hue::Play, 1.6, &[]), "play-t halo", ("d-play", 3.0));

type Named = Vec<(String, Quantity, Look)>;

impl Plot {
    /// The plot of a chart.
    pub(super) fn of(chart: Chart, report: &Report, system: System) -> Self {
        let (title, meaning, unit, named) = content(chart, report, system);
        let series = named
            .into_iter()
            .map(|(name, quantity, (ink, lettering, dot))| {
                let points = report
                    .stations
                    .iter()
                    .map(|station| (quantity.of(station), station.height))
                    .filter(|(value, height)| value.is_finite() && height.is_finite())
                    .collect();
                Series { name, quantity, ink, lettering, dot, points }
            })
            .collect();
        Self {
            chart,
            title,
            note: format!("{}, {meaning}", unit.symbol(system)),
            per_si: unit.per_si(system),
            series,
            other: Vec::new(),
            limit: limit(chart, report, system),
            tint: (chart == Chart::Sag).then_some(([0, 1], TINT)),
            unit,
        }
    }

    /// The same plot with the main curve of another design's as far as its heights lie within the lift; without it where the other has no such
    /// pivot.
    pub(super) fn with(mut self, other: &Report) -> Self {
        let Some(main) = self.series.first() else { return self };
        let (Some(low), Some(high)) = (main.points.first(), main.points.last()) else { return self };
        let stages = other.stations.first().map_or(0, |station| station.pose.n);
        let quantity = main.quantity;
        if let Quantity::Pivot(joint) = quantity
            && !JointId::all(stages).any(|one| one == joint)
        {
            return self;
        }
        let lift = low.1..=high.1;
        let points = other.stations.iter().map(|station| (quantity.of(station), station.height));
        self.other = points.filter(|(value, height)| value.is_finite() && lift.contains(height)).collect();
        self
    }

    /// A value as it stands beside its dot.
    pub(super) fn figure(&self, value: f64, system: System) -> String {
        self.unit.figure(value, system).number
    }

    /// Least and greatest value of all curves, SI.
    pub(super) fn extremes(&self) -> (f64, f64) {
        let points = || self.series.iter().flat_map(|series| &series.points).chain(&self.other);
        let values = || points().map(|point| point.0);
        (values().fold(0.0, f64::min), values().fold(0.0, f64::max))
    }
}

fn content(chart: Chart, report: &Report, system: System) -> (&'static str, String, Unit, Named) {
    let one = |name: &str, quantity, look| (name.to_owned(), quantity, look);
    let text = str::to_owned;
    match chart {
        Chart::ScrewForce => (
            "Screw force",
            text("along the screw"),
            Unit::Thrust,
            vec![
                one("raise", Quantity::Raise, MAIN),
                one("without friction", Quantity::Still, DASHED),
                one("lower", Quantity::Lower, THIN),
            ],
        ),
        Chart::Sag => {
            let mass = super::moving::load_words(report, system);
            (
                "Sag at the load",
                format!("{mass} on the deck"),
                Unit::Give,
                vec![one("under load", Quantity::Sag, SAG), one("with play", Quantity::SagWithPlay, PLAY)],
            )
        }
        Chart::CrankForce => (
            "Crank force",
            text("on the handle"),
            Unit::Load,
            vec![one("raise", Quantity::CrankRaise, MAIN), one("lower", Quantity::CrankLower, THIN)],
        ),
        Chart::Wheels => (
            "Wheel loads",
            text("both sides, raising"),
            Unit::Load,
            vec![
                one("base wheels", Quantity::BaseWheel, MAIN),
                one("deck wheels", Quantity::DeckWheel, THIN),
            ],
        ),
        Chart::Pivots => ("Pivot loads", text("both sides, raising"), Unit::Thrust, pivots(report)),
        Chart::ArmMoment => (
            "Bending of the arms",
            text("both sides, at rest"),
            Unit::Moment,
            vec![
                one("arms A", Quantity::ArmMoment { b: false }, MAIN),
                one("arms B", Quantity::ArmMoment { b: true }, THIN),
            ],
        ),
        Chart::Tilt => (
            "Tilt of the deck",
            text("under load, right end up"),
            Unit::Slope,
            vec![one("tilt", Quantity::Tilt, SAG)],
        ),
        Chart::Casters => (
            "Caster loads",
            text("a pair, at rest"),
            Unit::Load,
            vec![one("left pair", Quantity::Caster(0), MAIN), one("right pair", Quantity::Caster(1), THIN)],
        ),
        Chart::Sway(_) => ("Sideways", text("beside the end elevation"), Unit::Give, Vec::new()),
    }
}

/// The three pivots that carry most, the worst first.
pub(super) fn pivots(report: &Report) -> Named {
    let stages = report.stations.first().map_or(1, |station| station.pose.n);
    let mut all: Vec<(f64, JointId)> = JointId::all(stages)
        .map(|joint| (report.greatest(|station| Quantity::Pivot(joint).of(station)).0, joint))
        .collect();
    order(&mut all, |one, other| other.0.total_cmp(&one.0));
    all.into_iter()
        .zip([MAIN, DASHED, THIN])
        .map(|((_, joint), look)| (joint_words(joint), Quantity::Pivot(joint), look))
        .collect()
}

/// A pivot in the words of a builder.
pub(crate) fn joint_words(joint: JointId) -> String {
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
    let crank = report.design.drive.crank_limit.to_n();
    let words = figures::small_force(crank, system);
    match chart {
        Chart::CrankForce => Some(Limit::even(format!("limit {words}"), crank, report)),
        Chart::ScrewForce => {
            let force = report.screw_force_at_limit()?;
            Some(Limit::even(format!("crank {words}"), force, report))
        }
        Chart::Sag => {
            let points = [report.stations.first()?, report.stations.last()?]
                .map(|station| (SAG_UNSAFE * station.pose.top.origin.y, station.height));
            Some(Limit {
                name: format!("{} of lift", figures::percent(SAG_UNSAFE)),
                points: points.into(),
                least: false,
            })
        }
        _ => None,
    }
}
