//! The cuts of a sheet as one makes them: one setting of the fence, as many cuts as it serves.
use super::cuts::{Cut, Sequence, halves};
use super::job::Job;
use super::layout::{Offcut, Placed, Sheet};
use crate::quantity::Length;

/// Cuts with the fence where it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pass {
    /// The first cut in each of the equal boards it is done to.
    pub firsts: Vec<Cut>,
    /// How many cuts each board gets.
    pub times: usize,
    /// What comes off at each, measured along the sheet where it is cut across, else across the sheet.
    pub fence: Length,
    /// The pieces that are finished, by their places in the job's list.
    pub freed: Vec<usize>,
    /// What is left of the last board after its last cut; none where it is finished or used up.
    pub rest: Option<Offcut>,
}

impl Pass {
    /// All its cuts.
    #[must_use]
    pub const fn count(&self) -> usize {
        self.firsts.len() * self.times
    }

    /// Whether another is the same work on another board of the same size.
    fn is_like(&self, other: &Self, job: &Job) -> bool {
        let board =
            |pass: &Self| pass.firsts.first().map(|cut| (cut.across, cut.from.length, cut.from.width));
        let parts = |pass: &Self| -> Vec<u32> {
            let mut list: Vec<u32> =
                pass.freed.iter().filter_map(|at| job.pieces.get(*at)).map(|piece| piece.part).collect();
            list.sort_unstable();
            // Several boards give each part as many times.
            list.chunks(pass.firsts.len().max(1)).filter_map(|chunk| chunk.first().copied()).collect()
        };
        board(self) == board(other)
            && (self.times, self.fence) == (other.times, other.fence)
            && parts(self) == parts(other)
    }
}

/// The sequence with equal cuts in a row drawn together: in one board, and over boards of one size that are cut alike.
#[must_use]
pub fn passes(job: &Job, sheet: &Sheet, sequence: &Sequence) -> Vec<Pass> {
    let mut list: Vec<Pass> = Vec::new();
    for pass in in_boards(job, sheet, sequence) {
        match list.last_mut() {
            Some(last) if last.is_like(&pass, job) => {
                last.firsts.extend(pass.firsts);
                last.freed.extend(pass.freed);
                last.rest = pass.rest;
            }
            _ => list.push(pass),
        }
    }
    list
}

/// Equal cuts in a row in the same board, drawn together.
fn in_boards(job: &Job, sheet: &Sheet, sequence: &Sequence) -> Vec<Pass> {
    let piece = |at: &Offcut| {
        let same = |placed: &&Placed| {
            (placed.x, placed.y, placed.length, placed.width) == (at.x, at.y, at.length, at.width)
        };
        sheet.placed.iter().find(same).map(|placed| placed.piece)
    };
    let mut list: Vec<Pass> = Vec::new();
    for cut in &sequence.cuts {
        let (before, after) = halves(job.kerf, cut);
        let fence = if cut.across { before.length } else { before.width };
        let done = [piece(&before), piece(&after)];
        let freed = done.iter().flatten().copied();
        let is_whole = done[1].is_some() || after.length <= Length::ZERO || after.width <= Length::ZERO;
        let rest = (!is_whole).then_some(after);
        let across = |pass: &Pass| pass.firsts.first().is_some_and(|first| first.across);
        match list.last_mut() {
            Some(pass)
                if pass.rest == Some(cut.from) && across(pass) == cut.across && pass.fence == fence =>
            {
                pass.times += 1;
                pass.freed.extend(freed);
                pass.rest = rest;
            }
            _ => list.push(Pass { firsts: vec![*cut], times: 1, fence, freed: freed.collect(), rest }),
        }
    }
    list
}
