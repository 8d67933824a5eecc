//! Which assumed stiffness the bands hang on: one at a time is made soft, then stiff, while all others stay at their best guess.
use super::{PUSH, Progress, SwayReport};
use crate::design::Design;
use crate::mechanics::frame3::{Frame3, Stiffness3};
use crate::mechanics::{Fault, Firmness, Guides, Mechanism, Pose, Spring, Springs, in_space_but};
use crate::report::{Case, Report};

/// The ends of a band.
const ENDS: [Firmness; 2] = [Firmness::Soft, Firmness::Stiff];

/// What one stiffness does by itself.
#[derive(Clone, Debug, PartialEq)]
pub struct SpringEffect {
    /// The stiffness, with its band and the reason for it.
    pub spring: Spring,
    /// The give under [`PUSH`] where the deck gives most, with it soft and with it stiff, m.
    pub give: [f64; 2],
    /// The critical load as a multiple of the load where that is lowest, with it soft and with it stiff; none where nothing is critical.
    pub multiple: [Option<f64>; 2],
}

impl SpringEffect {
    /// How many times the give grows from stiff to soft: 1 for a stiffness that does not matter.
    #[must_use]
    pub fn reach(&self) -> f64 {
        self.give[0] / self.give[1]
    }
}

/// The search for what each stiffness does, in steps: one step is one stiffness soft or stiff.
#[derive(Clone, Debug)]
pub struct SpringRun {
    design: Design,
    mechanism: Mechanism,
    /// The table where its deck gives most, and where its critical load is lowest.
    poses: [Pose; 2],
    springs: Vec<Spring>,
    found: Vec<(f64, Option<f64>)>,
}

impl SpringRun {
    /// A search for a design whose best guess is known. Stiffnesses that are known, not guessed, are left out.
    #[must_use]
    pub fn new(report: &Report, sway: &SwayReport) -> Option<Self> {
        let (design, solver) = (&report.design, &report.solver);
        let (_, gives_most) = sway.greatest_give(Case::Middle)?;
        let weakest = sway.worst.map_or(gives_most, |worst| worst.height);
        let pose = |height| solver.pose_at_height(height).ok();
        let uncertain = |spring: &&Spring| spring.values[0] < spring.values[2];
        Some(Self {
            design: design.clone(),
            mechanism: solver.mechanism().clone(),
            poses: [pose(gives_most)?, pose(weakest)?],
            springs: Springs::of(design).shown().filter(uncertain).copied().collect(),
            found: Vec::new(),
        })
    }

    /// How far it has come.
    #[must_use]
    pub fn progress(&self) -> Progress {
        Progress { done: self.found.len(), all: self.springs.len() * ENDS.len() }
    }

    /// Does so many steps more, or as many as are left. What cannot be computed is taken as without effect: not a number.
    pub fn advance(&mut self, steps: usize) -> Progress {
        for _ in 0..steps {
            let at = self.found.len();
            let Some(spring) = self.springs.get(at / ENDS.len()) else { break };
            let found = self.look(spring.title, ENDS[at % ENDS.len()]).unwrap_or((f64::NAN, None));
            self.found.push(found);
        }
        self.progress()
    }

    /// What was found so far, what matters most for the give first.
    #[must_use]
    pub fn effects(&self) -> Vec<SpringEffect> {
        let pairs = self.springs.iter().zip(self.found.chunks_exact(ENDS.len()));
        let mut list: Vec<SpringEffect> = pairs
            .filter_map(|(spring, ends)| {
                let [soft, stiff] = ends else { return None };
                Some(SpringEffect {
                    spring: *spring,
                    give: [soft.0, stiff.0],
                    multiple: [soft.1, stiff.1],
                })
            })
            .filter(|effect| effect.reach().is_finite())
            .collect();
        list.sort_by(|one, other| other.reach().total_cmp(&one.reach()));
        list
    }

    fn look(&self, title: &str, firmness: Firmness) -> Result<(f64, Option<f64>), Fault> {
        let space = in_space_but(&self.design, &self.mechanism, title, firmness, Guides::Touching);
        let mechanism = Mechanism { model3d: Some(space), ..self.mechanism.clone() };
        let answers = |pose: &Pose| -> Result<Stiffness3, Fault> { Ok(Frame3::new(&mechanism, pose)?.answers()) };
        let [gives_most, weakest] = &self.poses;
        Ok((PUSH / answers(gives_most)?.sway, answers(weakest)?.lambda))
    }
}
