//! What would help: how strongly each input moves the figures of a table, and what real steps bring, each run through the whole analysis.
//!
//! It takes seconds and is therefore made in steps: one step is one input, or one idea.
mod results;
mod slope;
mod tried;

pub use results::{OUTCOMES, Outcome, Results, weakest};
pub use slope::{Effect, NOTHING, Slope};
pub use tried::Step;

use super::{Progress, Report, Unsound, analyse};
use crate::design::{Design, Field};
use tried::{Failing, Idea};

/// The search for what would help, in steps.
pub struct SensitivityRun {
    design: Design,
    own: Results,
    failing: Failing,
    weakest: &'static str,
    fields: Vec<&'static Field>,
    effects: Vec<Effect>,
    /// Ideas that were not run yet, the next one last.
    ideas: Vec<Idea>,
    /// How many there were.
    count: usize,
    steps: Vec<Step>,
}

impl SensitivityRun {
    /// A search for a design, only its own figures computed.
    ///
    /// # Errors
    /// Where the design cannot stand.
    pub fn new(design: &Design) -> Result<Self, Unsound> {
        Ok(Self::of(&analyse(design)?))
    }

    /// The same for a report that is known.
    #[must_use]
    pub fn of(report: &Report) -> Self {
        let design = &report.design;
        let leaning = results::give(report);
        let mut own = Results::planar(report);
        own.0[Outcome::Give.at()] = leaning.map(|(give, _)| give);
        let mut ideas = tried::ideas(design);
        ideas.reverse();
        Self {
            own,
            failing: Failing::of(report, leaning.map(|(_, multiple)| multiple)),
            weakest: weakest(report).map_or("", |check| check.title),
            fields: Design::fields().filter(|field| slope::has_scale(field, design)).collect(),
            effects: Vec::new(),
            count: ideas.len(),
            ideas,
            steps: Vec::new(),
            design: design.clone(),
        }
    }

    /// How far it has come.
    #[must_use]
    pub fn progress(&self) -> Progress {
        let done = self.effects.len() + self.count - self.ideas.len();
        Progress { done, all: self.fields.len() + self.count }
    }

    /// Does one step more: ideas first, for they are what one reads first. Whether there is more to do.
    pub fn advance(&mut self) -> bool {
        if let Some(idea) = self.ideas.pop() {
            self.steps.extend(idea.run(&self.design, &self.failing));
        } else if let Some(field) = self.fields.get(self.effects.len()) {
            self.effects.push(slope::effect(&self.design, field, &self.own));
        }
        !self.progress().finished()
    }

    /// The design's own figures.
    #[must_use]
    pub const fn own(&self) -> &Results {
        &self.own
    }

    /// The title of its weakest check.
    #[must_use]
    pub const fn weakest(&self) -> &'static str {
        self.weakest
    }

    /// What each input does, in the order of the inputs, as far as it is known.
    #[must_use]
    pub fn effects(&self) -> &[Effect] {
        &self.effects
    }

    /// Whether a step betters a figure by more than one in a thousand.
    fn betters(&self, step: &Step, outcome: Outcome) -> bool {
        let (own, after) = (self.own.of(outcome), step.after.of(outcome));
        own.zip(after).is_some_and(|(own, after)| after < own * 0.999)
    }

    /// Steps in building that better a figure and make nothing fail that held, the most helpful first.
    #[must_use]
    pub fn helps(&self, outcome: Outcome) -> Vec<&Step> {
        let builds = |step: &&Step| !step.asks && self.betters(step, outcome);
        let mut list: Vec<&Step> = self.steps.iter().filter(builds).collect();
        let after = |step: &Step| step.after.of(outcome).unwrap_or(f64::INFINITY);
        list.sort_by(|one, other| after(one).total_cmp(&after(other)));
        list
    }

    /// Steps that better a figure by changing what is asked of the table, in the order of the inputs.
    #[must_use]
    pub fn asking_less(&self) -> Vec<&Step> {
        let helps = |step: &Step| Outcome::ALL.into_iter().any(|outcome| self.betters(step, outcome));
        self.steps.iter().filter(|step| step.asks && helps(step)).collect()
    }
}
