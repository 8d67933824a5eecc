//! The tables of a lesson, analysed.
use super::plan::Plan;
use crate::quantity::System;
use crate::report::{Report, SwayReport, SwayRun, Unsound, analyse};
use crate::share::lesson::Lesson;

/// The tables of a lesson, analysed, and its two curves.
#[derive(Debug)]
pub struct Studied {
    /// The tables; the first is the one that is drawn.
    pub reports: Vec<Report>,
    /// Their sideways figures, where the lesson needs them.
    pub sways: Vec<SwayReport>,
    /// Deck heights, m, from the lowest to the highest, even in height.
    pub heights: Vec<f64>,
    /// What the reader is asked to sketch, at these heights, SI.
    pub sought: Vec<f64>,
    /// What is drawn to go by, at these heights, SI; empty where there is nothing.
    pub given: Vec<f64>,
}

/// Heights of the curves.
pub(super) const SAMPLES: usize = 57;

/// Frames in space that are computed in one slice of work.
const SLICE: usize = 4;

impl Studied {
    const NONE: Self = Self {
        reports: Vec::new(),
        sways: Vec::new(),
        heights: Vec::new(),
        sought: Vec::new(),
        given: Vec::new(),
    };

    /// The table that is drawn.
    #[must_use]
    pub fn first(&self) -> Option<&Report> {
        self.reports.first()
    }

    /// The lift of the table that is drawn, m; nothing where there is none.
    #[must_use]
    pub fn lift(&self) -> [f64; 2] {
        self.first().map_or([0.0; 2], |report| [report.lowest(), report.highest()])
    }
}

/// The work behind a lesson, in slices.
pub(super) struct Study {
    plan: &'static Plan,
    pub known: Studied,
    run: Option<SwayRun>,
    pub done: bool,
    pub trouble: Option<String>,
}

impl Study {
    pub const fn new(plan: &'static Plan) -> Self {
        Self { plan, known: Studied::NONE, run: None, done: false, trouble: None }
    }

    /// Does a slice; whether there is more to do.
    pub fn advance(&mut self) -> bool {
        if self.done {
            return false;
        }
        if let Err(unsound) = self.slice() {
            let words: Vec<_> = unsound.phrases().iter().map(|phrase| phrase.text(System::Metric)).collect();
            self.trouble = Some(words.join(" "));
            self.done = true;
        }
        !self.done
    }

    fn slice(&mut self) -> Result<(), Unsound> {
        let known = &mut self.known;
        if known.reports.is_empty() {
            known.reports = (self.plan.designs)().iter().map(analyse).collect::<Result<_, _>>()?;
            return Ok(());
        }
        if self.plan.sideways && known.sways.len() < known.reports.len() {
            let run = match &mut self.run {
                Some(run) => run,
                None => self.run.insert(SwayRun::new(&known.reports[known.sways.len()].design)?),
            };
            let progress = run.advance(SLICE)?;
            if let Some(report) = run.report() {
                known.sways.push(report);
                self.run = None;
            } else if progress.finished() {
                known.sways.push(SwayReport::default());
                self.run = None;
            }
            return Ok(());
        }
        let [low, high] = known.lift();
        let last = (SAMPLES - 1) as f64;
        known.heights = (0..SAMPLES).map(|at| low + (high - low) * at as f64 / last).collect();
        let sampled =
            |curve: super::plan::Curve| known.heights.iter().map(|height| curve(known, *height)).collect();
        let sought = sampled(self.plan.sought.1);
        let given = self.plan.given.map_or_else(Vec::new, |(_, curve)| sampled(curve));
        (known.sought, known.given) = (sought, given);
        self.done = true;
        Ok(())
    }
}

/// All of a lesson's figures at once.
///
/// # Errors
/// What is wrong with one of its tables, in a sentence.
pub fn study(lesson: Lesson) -> Result<Studied, String> {
    let mut study = Study::new(super::plan(lesson));
    while study.advance() {}
    study.trouble.map_or(Ok(study.known), Err)
}
