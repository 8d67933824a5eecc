//! Tables from what the builder needs: heights, load, deck, effort and stock go in, a few good designs come out.
//!
//! A [`Search`] tries every combination of a [`Space`], and throws most away early: closed forms give a bound below the crank's force, and the
//! turns; the list of parts gives weight, sheet and cost; a few heights give bounds below sag and crank, and checks that fail already; three
//! heights of the frame in space the give sideways. What is left is analysed in full, with all checks, clashes, the sideways figures at all
//! heights and a layout on sheets. What remains is the set of tables of which none beats another in everything. Where nothing is left, it
//! looks for the least that would have to give. It is a value with [`Search::advance`], without clock or thread, and the same targets give
//! the same tables on every machine.
mod candidate;
mod figures;
mod front;
mod judge;
mod kit;
mod loosen;
mod picks;
mod run;
mod space;
mod targets;

pub use candidate::Misfit;
pub use figures::Figures;
pub use front::{Front, Kept};
pub use judge::{Fault, judge};
pub use kit::pins;
pub use loosen::{Loose, RUNGS, WayOut};
pub use picks::Pick;
pub use space::{Brace, Choice, Space};
pub use targets::{MEASURES, Measure, Stance, Target, Targets, Way};

use crate::design::Design;
use loosen::Question;
use run::{Aim, Run};
use std::collections::BTreeMap;

/// How far a search has come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Count {
    /// Combinations there are.
    pub all: usize,
    /// Combinations that are done with.
    pub settled: usize,
    /// Tables that came as far as the full analysis.
    pub judged: usize,
}

/// A search, from its targets to its proposals.
pub struct Search {
    run: Run,
    /// Limits that are still to be asked about, the next one last.
    waiting: Vec<Loose>,
    question: Option<Question>,
    /// Whether the nearest table was asked for.
    last: bool,
    ways: Vec<WayOut>,
    nearest: Option<(Design, Figures)>,
    over: bool,
}

impl Search {
    /// A search over the usual space, nothing computed yet.
    #[must_use]
    pub fn new(targets: &Targets) -> Self {
        Self::over(targets, &Space::of(targets))
    }

    /// A search over a space of one's own.
    #[must_use]
    pub fn over(targets: &Targets, space: &Space) -> Self {
        let mut waiting = loosen::limits(targets);
        waiting.reverse();
        Self {
            run: Run::new(targets, space, Aim::Front),
            waiting,
            question: None,
            last: false,
            ways: Vec::new(),
            nearest: None,
            over: false,
        }
    }

    /// A slice of work, a few milliseconds; whether there is more to do.
    pub fn advance(&mut self) -> bool {
        if self.over {
            return false;
        }
        if self.run.advance() {
            return true;
        }
        if !self.front().kept().is_empty() {
            self.over = true;
        } else if let Some(question) = &mut self.question {
            if !question.run.advance() {
                self.heard();
            }
        } else if let Some(loose) = self.waiting.pop() {
            self.question = Some(Question::one(loose, &self.run.targets, &self.run.space));
        } else if self.ways.is_empty() && !self.last {
            self.last = true;
            self.question = Some(Question::nearest(&self.run.targets, &self.run.space));
        } else {
            self.over = true;
        }
        !self.over
    }

    /// A question is answered.
    fn heard(&mut self) {
        let Some(question) = self.question.take() else { return };
        self.question = question.closer(&self.run.targets, &self.run.space);
        if self.question.is_none() {
            self.ways.extend(question.answer());
            self.nearest = question.nearest_table().filter(|_| self.last);
        }
    }

    /// Whether all is known.
    #[must_use]
    pub const fn is_over(&self) -> bool {
        self.over
    }

    /// Whether nothing kept all limits and it looks for what would have to give.
    #[must_use]
    pub fn is_loosening(&self) -> bool {
        self.run.is_done() && self.front().kept().is_empty()
    }

    /// How far the search itself has come.
    #[must_use]
    pub fn count(&self) -> Count {
        Count { all: self.run.space.len(), settled: self.run.settled, judged: self.run.judged }
    }

    /// The share of the work that is done, 0 to 1; what would have to give counts as much as the search.
    #[must_use]
    pub fn progress(&self) -> f64 {
        if self.over {
            return 1.0;
        }
        let all = loosen::limits(&self.run.targets).len().max(1) as f64;
        let loosened = (all - self.waiting.len() as f64 - 1.0).max(0.0) / all;
        if self.is_loosening() { 0.5 + 0.5 * loosened } else { self.run.progress() }
    }

    /// All tables kept so far: none beats another. Complete once the search is over.
    #[must_use]
    pub const fn front(&self) -> &Front {
        &self.run.front
    }

    /// A few of them, good all round first.
    #[must_use]
    pub fn picks(&self, most: usize) -> Vec<Pick> {
        picks::picks(self.front(), &self.run.targets, most)
    }

    /// The design of a table that was kept; none for a place outside the space.
    #[must_use]
    pub fn design(&self, kept: &Kept) -> Option<Design> {
        self.run.space.choice(kept.at)?.design(&self.run.targets).ok()
    }

    /// What was chosen for a table that was kept.
    #[must_use]
    pub fn choice(&self, kept: &Kept) -> Option<Choice> {
        self.run.space.choice(kept.at)
    }

    /// The limits of which one alone would have to give, each with the least that does; known once the search is over and has kept nothing.
    #[must_use]
    pub fn ways_out(&self) -> &[WayOut] {
        &self.ways
    }

    /// Where no limit alone is to blame: the table that passes its limits by least; none where no table holds at all.
    #[must_use]
    pub const fn nearest(&self) -> Option<&(Design, Figures)> {
        self.nearest.as_ref()
    }

    /// Why combinations were ruled out, and how many each.
    #[must_use]
    pub const fn faults(&self) -> &BTreeMap<Fault, usize> {
        &self.run.faults
    }

    /// What is asked for.
    #[must_use]
    pub const fn targets(&self) -> &Targets {
        &self.run.targets
    }

    /// The space searched.
    #[must_use]
    pub const fn space(&self) -> &Space {
        &self.run.space
    }
}
