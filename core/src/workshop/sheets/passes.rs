//! The cuts of a sheet as one makes them: one setting of the fence, as many cuts as it serves.
use super::cuts::{Cut, Sequence, halves};
use super::job::Job;
use super::layout::{Offcut, Sheet};
use crate::quantity::Length;

/// Cuts one after another with the fence where it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pass {
    /// The first of them.
    pub first: Cut,
    /// How many.
    pub times: usize,
    /// What comes off at each, measured along the sheet where it is cut across, else across the sheet.
    pub fence: Length,
    /// The pieces that are finished, by their places in the job's list.
    pub freed: Vec<usize>,
    /// What of the piece of sheet is left after the last cut; none where it is finished or used up.
    pub rest: Option<Offcut>,
}

/// The sequence with equal cuts in a row drawn together.
#[must_use]
pub fn passes(job: &Job, sheet: &Sheet, sequence: &Sequence) -> Vec<Pass> {
    let piece = |at: &Offcut| {
        let same = |placed: &&super::layout::Placed| {
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
        match list.last_mut() {
            Some(pass)
                if pass.rest == Some(cut.from) && pass.first.across == cut.across && pass.fence == fence =>
            {
                pass.times += 1;
                pass.freed.extend(freed);
                pass.rest = rest;
            }
            _ => list.push(Pass { first: *cut, times: 1, fence, freed: freed.collect(), rest }),
        }
    }
    list
}
