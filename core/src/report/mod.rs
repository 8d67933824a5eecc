//! A design goes in, everything the page shows comes out.

mod advice;
mod analysis;
mod body;
mod caution;
mod difference;
mod digest;
mod ends;
mod fault;
mod finding;
mod findings;
mod reach;
mod relations;
mod revise;
pub mod search;
pub mod sensitivity;
mod station;
mod stiffen;
mod sway;
mod trial;

use analysis::{computed, worse_share};
pub(crate) use findings::SAG_UNSAFE;

pub use crate::quantity::{Amount, Phrase};
pub use advice::Help;
pub use analysis::{Analysis, analyse};
pub use body::Doing;
pub use difference::{Changed, Compared, Difference, Sense, Turned, difference};
pub use finding::{Cure, Curve, Finding, Grade, Spot};
pub use reach::reach;
pub use relations::Obstacle;
pub use revise::{Offer, Refusal, Span, marked, revise, span};
pub use station::Station;
pub use stiffen::{Goal, Idle, Remedy, Stand, StiffenRun};
pub use sway::{
    CORNER, COUPLE, Case, LEAST_MULTIPLE, Lean, LeanNode, PUSH, Progress, SWAY_STATIONS, SpringEffect,
    SpringRun, SwayReport, SwayRun, Worst, merged, told,
};

use crate::checks::{Check, Weight};
use crate::design::{Design, Fault};
use crate::mechanics::{Diagram, Limits, Mechanism, Solver};
use crate::parts::Part;

/// Heights in a sweep from the lowest to the highest deck, even in height, ends included.
pub const STATIONS: usize = 200;

/// Why there is no report.
#[derive(Clone, Debug)]
pub enum Unsound {
    /// Inputs outside their ranges.
    Range(Vec<Fault>),
    /// Inputs that do not go together.
    Obstacle(Obstacle),
}

impl Unsound {
    /// What is wrong, in a sentence each.
    #[must_use]
    pub fn phrases(&self) -> Vec<Phrase> {
        match self {
            Self::Range(faults) => faults
                .iter()
                .map(|fault| Phrase::new(format!("{}: the value lies outside its range.", fault.field.label)))
                .collect(),
            Self::Obstacle(obstacle) => vec![obstacle.phrase.clone()],
        }
    }
}

/// Everything computed from a design. It always covers the whole lift.
#[derive(Clone, Debug)]
pub struct Report {
    /// The design it was made from.
    pub design: Design,
    /// What the table is made of.
    pub parts: Vec<Part>,
    /// [`STATIONS`] heights from the lowest to the highest deck.
    pub stations: Vec<Station>,
    /// Whether it holds, part by part.
    pub checks: Vec<Check>,
    /// What was found, worst first.
    pub findings: Vec<Finding>,
    solver: Solver,
    /// Share of the load that the worse side carries, 0.5 when it stands in the middle.
    pub share: f64,
}

impl Report {
    /// The mechanism behind it.
    #[must_use]
    pub fn mechanism(&self) -> &Mechanism {
        self.solver.mechanism()
    }

    pub(crate) const fn solver(&self) -> &Solver {
        &self.solver
    }

    /// The range of motion between the stops of the carriage.
    #[must_use]
    pub fn limits(&self) -> &Limits {
        self.solver.limits()
    }

    /// The lowest deck height, m.
    #[must_use]
    pub fn lowest(&self) -> f64 {
        self.design.lift.lowest.to_m()
    }

    /// The highest deck height, m.
    #[must_use]
    pub fn highest(&self) -> f64 {
        self.design.lift.highest.to_m()
    }

    /// Everything at one height, m; a height outside the lift is brought back to its nearer end.
    #[must_use]
    pub fn at(&self, height: f64) -> Station {
        let height =
            if height.is_nan() { self.lowest() } else { height.clamp(self.lowest(), self.highest()) };
        Station::new(&self.solver, height, self.share, true).unwrap_or_else(|_| self.nearest(height).clone())
    }

    /// The station of the sweep at or above a height.
    fn nearest(&self, height: f64) -> &Station {
        let at = self.stations.partition_point(|station| station.height < height);
        &self.stations[at.min(STATIONS - 1)]
    }

    /// Turns of the crank from the lowest to the highest deck.
    #[must_use]
    pub fn turns(&self) -> f64 {
        self.turns_at(self.highest())
    }

    /// Turns of the crank from the lowest deck up to a height, m.
    #[must_use]
    pub fn turns_at(&self, height: f64) -> f64 {
        let travel = self.at(height).state.screw_length - self.stations[0].state.screw_length;
        travel.abs() / self.design.drive.lead.to_m()
    }

    /// The deck height after so many turns from the lowest deck, m, within the lift.
    #[must_use]
    pub fn height_at_turns(&self, turns: f64) -> f64 {
        let (mut low, mut high) = (self.lowest(), self.highest());
        let turns = if turns.is_nan() { 0.0 } else { turns };
        if turns <= 0.0 {
            return low;
        }
        if turns >= self.turns() {
            return high;
        }
        while high - low > HEIGHT_STEP {
            let middle = 0.5 * (low + high);
            if self.turns_at(middle) < turns { low = middle } else { high = middle }
        }
        0.5 * (low + high)
    }

    /// The deck height with the base wheel axle at a place along the base, m, within the lift.
    #[must_use]
    pub fn height_at_carriage(&self, x: f64) -> f64 {
        let (outer, inner) = (self.stations[0].pose.carriage_x, self.stations[STATIONS - 1].pose.carriage_x);
        let x = x.clamp(inner.min(outer), inner.max(outer));
        self.solver
            .pose_at_carriage(x)
            .map_or(self.lowest(), |pose| pose.deck_height.clamp(self.lowest(), self.highest()))
    }

    /// The force along the screw at which the crank reaches the force the builder accepts, N. The torque to raise is in proportion
    /// to the force, so one figure holds for every height; none where the screw has no friction and no lead.
    #[must_use]
    pub fn screw_force_at_limit(&self) -> Option<f64> {
        let torque = self.design.drive.crank_limit.to_n() * self.design.drive.crank.to_m();
        let force = torque / self.mechanism().screw.as_ref()?.torque_against(1.0);
        force.is_finite().then_some(force)
    }

    /// Bending and axial force along every arm at a station of this report, without friction, in the order A1, B1, A2, ...
    #[must_use]
    pub fn diagrams(&self, station: &Station) -> Vec<Diagram> {
        self.solver.diagrams(&station.pose, &station.state.rest).unwrap_or_default()
    }

    /// The check of a name; none where it does not apply to this design.
    #[must_use]
    pub fn check(&self, id: &str) -> Option<&Check> {
        self.checks.iter().find(|check| check.id == id)
    }

    /// The checks that count: passing one means that a part fails.
    fn limiting(&self) -> impl Iterator<Item = &Check> {
        self.checks.iter().filter(|check| check.weight == Weight::Limit)
    }

    /// The check that counts and is nearest its limit, or farthest beyond it.
    #[must_use]
    pub fn weakest(&self) -> Option<&Check> {
        self.weakest_of(|_| true)
    }

    /// The same among some of them.
    fn weakest_of(&self, some: impl Fn(&Check) -> bool) -> Option<&Check> {
        self.limiting().filter(|check| some(check)).max_by(|one, other| one.ratio.total_cmp(&other.ratio))
    }

    /// The check that counts and is nearest its limit at one deck height, m, with its ratio there.
    #[must_use]
    pub fn weakest_at(&self, height: f64) -> Option<(&Check, f64)> {
        let here = self.nearest(height).height;
        self.limiting()
            .filter_map(|check| Some((check, check.ratio_at(here)?)))
            .max_by(|one, other| one.1.total_cmp(&other.1))
    }

    /// The greatest of a figure over the lift and the deck height at which it stands; figures that are not numbers do not count.
    pub fn greatest(&self, figure: impl Fn(&Station) -> f64) -> (f64, f64) {
        self.stations.iter().fold((f64::NEG_INFINITY, self.lowest()), |best, station| {
            let value = figure(station);
            if value > best.0 { (value, station.height) } else { best }
        })
    }
}

/// How fine a height is found from turns of the crank, m: a hundredth of what a page can draw.
const HEIGHT_STEP: f64 = 1e-7;
