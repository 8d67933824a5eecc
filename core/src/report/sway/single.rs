//! Which assumed stiffness the bands hang on: one at a time is made soft, then stiff, while all others stay at their best guess.
use super::Progress;
use crate::design::Design;
use crate::mechanics::frame3::{Frame3, Stiffness3};
use crate::mechanics::{Fault, Firmness, Guides, Mechanism, Pose, Spring, Springs, in_space_but};
use crate::report::Report;

/// The ends of a band.
const ENDS: [Firmness; 2] = [Firmness::Soft, Firmness::Stiff];

/// What one stiffness does by itself.
#[derive(Clone, Debug, PartialEq)]
pub struct SpringEffect {
    /// The stiffness, with its band and the reason for it.
    pub spring: Spring,
    /// The deck at each of the heights looked at, with it soft.
    pub soft: Vec<Stiffness3>,
    /// The same with it stiff.
    pub stiff: Vec<Stiffness3>,
}

/// The search for what each stiffness does at a few heights, in steps: one step is one stiffness, soft or stiff, at one height.
#[derive(Clone, Debug)]
pub struct SpringRun {
    design: Design,
    mechanism: Mechanism,
    poses: Vec<Pose>,
    springs: Vec<Spring>,
    /// For each stiffness, soft and stiff, the deck at every height.
    found: Vec<Stiffness3>,
}

impl SpringRun {
    /// A search for a design at deck heights, m. Stiffnesses that are known, not guessed, are left out.
    ///
    /// # Errors
    /// Where a height lies outside the linkage's reach.
    pub fn new(report: &Report, heights: &[f64]) -> Result<Self, Fault> {
        let solver = &report.solver;
        let uncertain = |spring: &&Spring| spring.values[0] < spring.values[2];
        Ok(Self {
            design: report.design.clone(),
            mechanism: solver.mechanism().clone(),
            poses: heights.iter().map(|height| solver.pose_at_height(*height)).collect::<Result<_, _>>()?,
            springs: Springs::of(&report.design).shown().filter(uncertain).copied().collect(),
            found: Vec::new(),
        })
    }

    /// How far it has come.
    #[must_use]
    pub fn progress(&self) -> Progress {
        Progress { done: self.found.len(), all: self.springs.len() * ENDS.len() * self.poses.len() }
    }

    /// Does so many steps more, or as many as are left.
    ///
    /// # Errors
    /// Where a frame cannot be computed.
    pub fn advance(&mut self, steps: usize) -> Result<Progress, Fault> {
        for _ in 0..steps {
            let done = self.found.len();
            let Some(pose) = self.poses.get(done % self.poses.len().max(1)) else { break };
            let end = done / self.poses.len();
            let Some(spring) = self.springs.get(end / ENDS.len()) else { break };
            let firmness = ENDS[end % ENDS.len()];
            let space = in_space_but(&self.design, &self.mechanism, spring.title, firmness, Guides::Touching);
            let mechanism = Mechanism { model3d: Some(space), ..self.mechanism.clone() };
            self.found.push(Frame3::new(&mechanism, pose)?.answers());
        }
        Ok(self.progress())
    }

    /// What was found so far, in the order in which stiffnesses are shown.
    #[must_use]
    pub fn effects(&self) -> Vec<SpringEffect> {
        let heights = self.poses.len().max(1);
        self.springs
            .iter()
            .zip(self.found.chunks_exact(ENDS.len() * heights))
            .map(|(spring, rows)| {
                let (soft, stiff) = rows.split_at(heights);
                SpringEffect { spring: *spring, soft: soft.to_vec(), stiff: stiff.to_vec() }
            })
            .collect()
    }
}
