//! The slow run, a step at a time.
use super::lean::Lean;
use super::{Case, SWAY_STATIONS, SwayReport, Worst};
use crate::design::{Design, DriveKind};
use crate::mechanics::frame3::Frame3;
use crate::mechanics::{
    Detail, Fault, Firmness, Guides, Mechanism, Pose, Slack, Solver, idealise, in_space, rattle,
};
use crate::parts::{arm_thickness, flange_thickness};
use crate::quantity::{Length, Phrase};
use crate::report::relations::Obstacle;
use crate::report::{Unsound, fault::unsolvable, reach::stands};

/// How far a run has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// Steps done.
    pub done: usize,
    /// Steps in all.
    pub all: usize,
}

impl Progress {
    /// Whether nothing is left to do.
    #[must_use]
    pub const fn finished(self) -> bool {
        self.done >= self.all
    }
}

/// The slow report in the making. One step is one frame in space at one height with one guess of the stiffnesses; a step
/// of the best guess takes the free play with it. The best guess comes first at all heights.
#[derive(Clone, Debug)]
pub struct SwayRun {
    solver: Solver,
    slack: Slack,
    cases: Vec<(Case, Mechanism)>,
    report: SwayReport,
    done: usize,
}

impl SwayRun {
    /// A run for a design, nothing computed yet.
    ///
    /// # Errors
    /// [`Unsound`] where the design cannot stand, or where its screw is one for which the side-to-side figures are not
    /// computed: a strut, or one between side pivots.
    pub fn new(design: &Design) -> Result<Self, Unsound> {
        stands(design)?;
        if !computed(design) {
            let phrase = Phrase::new(
                "Sideways figures are computed for a screw along the base or under the deck; not yet for this drive.",
            );
            return Err(Unsound::Obstacle(Obstacle { key: "dr", phrase }));
        }
        let mechanism = idealise(design).map_err(|faults| unsolvable(&faults))?;
        let solver = Solver::new(&mechanism).map_err(|faults| unsolvable(&faults))?;
        let (low, high) = (design.lift.lowest.to_m(), design.lift.highest.to_m());
        let last = (SWAY_STATIONS - 1) as f64;
        let heights = (0..SWAY_STATIONS).map(|at| low + (high - low) * at as f64 / last).collect();
        let cases = Case::ALL
            .into_iter()
            .filter(|case| *case != Case::Unguided || is_guided(design))
            .map(|case| (case, frame(design, &mechanism, case)))
            .collect();
        let report = SwayReport { heights, ..SwayReport::default() };
        Ok(Self { solver, slack: slack(design), cases, report, done: 0 })
    }

    /// How far it has come.
    #[must_use]
    pub fn progress(&self) -> Progress {
        Progress { done: self.done, all: self.cases.len() * SWAY_STATIONS }
    }

    /// Does so many steps more, or as many as are left.
    ///
    /// # Errors
    /// [`Unsound`] where a frame cannot be computed; the run has then come to its end and stays there.
    pub fn advance(&mut self, steps: usize) -> Result<Progress, Unsound> {
        for _ in 0..steps {
            if self.progress().finished() {
                break;
            }
            self.step().map_err(|fault| unsolvable(&[fault]))?;
            self.done += 1;
        }
        Ok(self.progress())
    }

    /// What is known so far. A case that is not complete is left out; nothing before the best guess is known at all heights.
    #[must_use]
    pub fn report(&self) -> Option<SwayReport> {
        let complete = self.done / SWAY_STATIONS;
        (complete > 0).then(|| {
            let mut report = self.report.clone();
            for (case, _) in self.cases.iter().skip(complete) {
                list(&mut report, *case).clear();
            }
            report
        })
    }

    fn step(&mut self) -> Result<(), Fault> {
        let station = self.done % SWAY_STATIONS;
        let (Some((case, mechanism)), Some(height)) =
            (self.cases.get(self.done / SWAY_STATIONS), self.report.heights.get(station).copied())
        else {
            return Ok(());
        };
        let pose = self.solver.pose_at_height(height)?;
        let frame = Frame3::new(mechanism, &pose)?;
        let case = *case;
        if case == Case::Middle {
            let rest = self.solver.state(&pose, Detail::FORCES)?.rest;
            self.report.wheel_lift.push(frame.wheel_lift(&rest, 0.0));
            self.report.lean.push(Lean::of(&frame, &pose));
            self.report.rattle.push(rattle(mechanism, &pose, &self.slack)?);
        }
        list(&mut self.report, case).push(frame.answers());
        if case == Case::Middle && station + 1 == SWAY_STATIONS {
            self.report.worst = self.worst()?;
        }
        Ok(())
    }

    /// The worst height of the best guess, and the same with the load's weight at the deck's surface.
    fn worst(&self) -> Result<Option<Worst>, Fault> {
        let Some((multiple, height)) = self.report.least_multiple(Case::Middle) else { return Ok(None) };
        let Some((_, mechanism)) = self.cases.first() else { return Ok(None) };
        let mut low = mechanism.clone();
        if let Some(space) = &mut low.model3d {
            space.h_cg = 0.0;
        }
        let pose: Pose = self.solver.pose_at_height(height)?;
        let with_low_weight = Frame3::new(&low, &pose)?.answers().lambda;
        Ok(Some(Worst { height, multiple, with_low_weight }))
    }
}

/// Whether the side-to-side figures are computed for its drive.
pub(in crate::report) const fn computed(design: &Design) -> bool {
    matches!(design.drive.kind, DriveKind::BaseCarriage | DriveKind::TopCarriage)
}

fn list(report: &mut SwayReport, case: Case) -> &mut Vec<crate::mechanics::frame3::Stiffness3> {
    match case {
        Case::Middle => &mut report.middle,
        Case::Soft => &mut report.soft,
        Case::Stiff => &mut report.stiff,
        Case::Unguided => &mut report.unguided,
    }
}

/// Whether anything guides the wheels sideways.
pub(super) fn is_guided(design: &Design) -> bool {
    [false, true].into_iter().any(|deck| flange_thickness(design, deck) > Length::ZERO)
}

/// The mechanism of a design with the frame of a case.
pub(in crate::report) fn frame(design: &Design, mechanism: &Mechanism, case: Case) -> Mechanism {
    let (firmness, guides) = match case {
        Case::Middle => (Firmness::Middle, Guides::Touching),
        Case::Soft => (Firmness::Soft, Guides::Touching),
        Case::Stiff => (Firmness::Stiff, Guides::Touching),
        Case::Unguided => (Firmness::Middle, Guides::Free),
    };
    let space = in_space(design, mechanism, firmness, guides);
    Mechanism { model3d: Some(space), ..mechanism.clone() }
}

/// The free play of a design's pivots and guides.
pub(in crate::report) fn slack(design: &Design) -> Slack {
    let worn = design.sway.wear.slack();
    Slack {
        pin: worn * design.running.clearance.to_m(),
        axle: worn * design.running.axle_clearance.to_m(),
        grip: arm_thickness(design).to_m(),
        guides: [design.sway.guide_play.to_m(); 2],
    }
}
