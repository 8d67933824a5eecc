//! Why it feels flimsy: how the deck gives way sideways, twists and rattles, under what load the table would collapse, how sure that is,
//! and what would stiffen it.
//!
//! Order of work: the best guess at all heights, then the ends of the bands, then what each assumed stiffness does by itself, then remedies.
mod band;
mod figures;
mod joint_test;
mod lift;
mod live;
mod stiffen;
mod summary;
#[cfg(test)]
mod tests;
mod verdict;

pub(super) use summary::Summary;
pub use verdict::headline;

use std::rc::Rc;

use super::document::{Block, Document};
use super::{Live, Page, Reader};
use crate::quantity::Phrase;
use crate::report::{
    Finding, Progress, Report, SWAY_STATIONS, SpringRun, StiffenRun, SwayReport, SwayRun, Unsound, merged,
};
use crate::{drawing, share};
use live::Kept;

/// Frames in space in one slice of work.
const SLICE: usize = 4;

/// The page.
#[derive(Debug)]
pub(super) struct Sway {
    report: Rc<Report>,
    stage: Stage,
    /// Why nothing sideways can be said of this design; empty where it can.
    refused: Vec<Phrase>,
    /// The slow report so far; none before the best guess is known at all heights.
    known: Option<SwayReport>,
    /// All findings, those of the slow report among them, for the marks in the picture.
    findings: Vec<Finding>,
    /// Where each assumed stiffness is varied alone: the stations at which some figure is worst.
    looked: Vec<usize>,
    springs: Option<SpringRun>,
    stiffen: Option<StiffenRun>,
    kept: Option<Kept>,
    edition: u32,
}

/// What is being worked at.
#[derive(Debug)]
enum Stage {
    Sweep(Box<SwayRun>),
    Springs,
    Remedies,
    Done,
}

impl Sway {
    /// Over a report; nothing is computed yet.
    pub(super) fn new(report: Rc<Report>) -> Self {
        let mut page = Self {
            findings: report.findings.clone(),
            report,
            stage: Stage::Done,
            refused: Vec::new(),
            known: None,
            looked: Vec::new(),
            springs: None,
            stiffen: None,
            kept: None,
            edition: 0,
        };
        match SwayRun::new(&page.report.design) {
            Ok(run) => page.stage = Stage::Sweep(Box::new(run)),
            Err(unsound) => page.refuse(&unsound),
        }
        page
    }

    fn refuse(&mut self, unsound: &Unsound) {
        self.refused = unsound.phrases();
        self.stage = Stage::Done;
    }

    /// Whether nothing more will be found that the picture shows.
    fn is_settled(&self) -> bool {
        !matches!(self.stage, Stage::Sweep(_))
    }

    /// Why nothing sideways can be said of this design.
    fn refusal(&self, reader: &Reader) -> Vec<Block> {
        self.refused.iter().map(|reason| Block::text(reason.text(reader.system))).collect()
    }

    fn sweep(&mut self) {
        let Stage::Sweep(run) = &mut self.stage else { return };
        let before = run.progress();
        let progress = match run.advance(SLICE) {
            Ok(progress) => progress,
            Err(unsound) => return self.refuse(&unsound),
        };
        let complete = |progress: Progress| progress.done / SWAY_STATIONS;
        if complete(progress) == complete(before) {
            return;
        }
        let Some(known) = run.report() else { return };
        self.findings = merged(&self.report.findings, known.findings(&self.report.design));
        // The picture shows more now.
        self.kept = None;
        if progress.finished() {
            self.looked = figures::worst_stations(&known);
            let heights: Vec<f64> =
                self.looked.iter().filter_map(|station| known.heights.get(*station).copied()).collect();
            self.springs = SpringRun::new(&self.report, &heights).ok();
            self.stage = Stage::Springs;
        }
        self.known = Some(known);
    }
}

impl Page for Sway {
    fn advance(&mut self) -> bool {
        match self.stage {
            Stage::Sweep(_) => self.sweep(),
            Stage::Springs => {
                let left = self.springs.as_mut().map(|run| run.advance(SLICE).map(Progress::finished));
                // What cannot be computed is not told.
                if matches!(left, Some(Err(_))) {
                    self.springs = None;
                }
                if !matches!(left, Some(Ok(false))) {
                    self.stiffen = StiffenRun::new(&self.report.design).ok();
                    self.stage = Stage::Remedies;
                }
            }
            Stage::Remedies => {
                let done = self.stiffen.as_mut().is_none_or(|run| run.advance(1).finished());
                if done {
                    self.stage = Stage::Done;
                }
            }
            Stage::Done => {}
        }
        !matches!(self.stage, Stage::Done)
    }

    fn progress(&self) -> f64 {
        let part = |progress: Option<Progress>| {
            progress.map_or(0.0, |progress| progress.done as f64 / progress.all.max(1) as f64)
        };
        match &self.stage {
            Stage::Sweep(run) => SWEEP * part(Some(run.progress())),
            Stage::Springs => SWEEP + SPRINGS * part(self.springs.as_ref().map(SpringRun::progress)),
            Stage::Remedies => {
                let before = SWEEP + SPRINGS;
                before + (1.0 - before) * part(self.stiffen.as_ref().map(StiffenRun::progress))
            }
            Stage::Done => 1.0,
        }
    }

    fn document(&self, reader: &Reader) -> Document {
        let mut blocks = Vec::new();
        if self.refused.is_empty() {
            blocks.extend(self.verdict(reader));
            blocks.extend(self.remedies(reader));
            blocks.extend(self.figures(reader));
            blocks.extend(self.over_the_lift(reader));
            blocks.extend(self.bands(reader));
            blocks.extend(self.joint_test(reader));
        } else {
            blocks.extend(self.refusal(reader));
            blocks.push(Block::note(
                "The side view, its forces, sag and play are computed for every drive and stand under Elevation and Strength. For figures from side to side put the screw along the base or under the deck.",
            ));
        }
        Document { title: TITLE.into(), blocks }
    }

    fn file(&self, name: &str, _reader: &Reader) -> Option<String> {
        let known = self.known.as_ref().filter(|_| name == lift::file(&self.report.design))?;
        Some(share::sideways::csv(known))
    }

    fn live(&mut self, view: &drawing::View, deck: f64, push: f64) -> Option<Live> {
        Some(self.picture(view, deck, push))
    }
}

/// Shares of the work before the remedies, by the time they take.
const SWEEP: f64 = 0.45;
const SPRINGS: f64 = 0.15;

const TITLE: &str = "Sway, twist and rattle";
