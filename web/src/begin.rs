//! How the page begins: with the first design that can stand, analysed in short turns so that the browser can answer in between.
use risewright::design::Design;
use risewright::report::{Analysis, Report, Unsound};

use crate::clock::in_turns;
use crate::state::cannot_stand;

/// Heights in a turn: a few milliseconds on a telephone whose browser meets this code for the first time.
const HEIGHTS: usize = 40;

/// What the page begins with.
pub struct Begun {
    /// Of the first design that can stand.
    pub report: Report,
    /// What was wrong with those before it.
    pub notice: Option<String>,
}

/// Looks for the first of some designs that can stand, else takes the demo, and calls `then` with it; with what is wrong where even the demo
/// cannot stand.
pub fn begin(
    designs: impl Iterator<Item = Design> + 'static,
    notice: Option<String>,
    then: impl FnOnce(Result<Begun, Unsound>) + 'static,
) {
    let mut candidates = Candidates { designs, demo: false, analysis: None, notice };
    let mut then = Some(then);
    in_turns(move || match candidates.advance() {
        Some(outcome) => {
            if let Some(then) = then.take() {
                then(outcome);
            }
            false
        }
        None => true,
    });
}

/// The designs to begin with, and the analysis of the one that is tried now.
struct Candidates<I> {
    designs: I,
    /// Whether it has come to the demo.
    demo: bool,
    analysis: Option<Analysis>,
    notice: Option<String>,
}

impl<I: Iterator<Item = Design>> Candidates<I> {
    /// A piece of the work; something once it is done.
    fn advance(&mut self) -> Option<Result<Begun, Unsound>> {
        let outcome = match &mut self.analysis {
            None => {
                let design = self.designs.next().unwrap_or_else(|| {
                    self.demo = true;
                    Design::default()
                });
                Analysis::new(&design).map(|analysis| {
                    self.analysis = Some(analysis);
                    None
                })
            }
            Some(analysis) => analysis.advance(HEIGHTS),
        };
        match outcome {
            Ok(report) => Some(Ok(Begun { report: report?, notice: self.notice.take() })),
            Err(unsound) if self.demo => Some(Err(unsound)),
            Err(unsound) => {
                self.notice = Some(cannot_stand(&unsound));
                self.analysis = None;
                None
            }
        }
    }
}
