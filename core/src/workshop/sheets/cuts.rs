//! In which order a sheet is cut, edge to edge, and what is left over.
use super::job::Job;
use super::layout::{Offcut, Placed, Sheet};
use crate::quantity::Length;

/// A straight cut through one piece of the sheet, from edge to edge. The saw takes a kerf from `at` on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cut {
    /// Whether it runs across the sheet (at a place along its length) or along it (at a place across).
    pub across: bool,
    /// Where it begins to take: the end of the part that stays, from the sheet's lower left corner.
    pub at: Length,
    /// The piece of sheet it is made in: left end, lower edge, length, width.
    pub from: Offcut,
    /// How many cuts before it freed that piece.
    pub depth: usize,
}

/// The cuts of a sheet in order, and its offcuts, largest first.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sequence {
    /// After the edges are trimmed.
    pub cuts: Vec<Cut>,
    /// What is left over.
    pub offcuts: Vec<Offcut>,
}

/// The order of cuts of a sheet laid out for cuts from edge to edge; none where its pieces cannot be freed so.
#[must_use]
pub fn sequence(job: &Job, sheet: &Sheet) -> Option<Sequence> {
    let blank = job.blanks.get(sheet.blank)?;
    let [length, width] = job.room(*blank);
    let whole = Offcut { x: job.trim, y: job.trim, length, width };
    let mut found = Sequence::default();
    // Large pieces of sheet first: they are freed in the order in which one would carry them to the saw.
    let mut waiting = std::collections::VecDeque::from([(whole, sheet.placed.clone(), 0)]);
    while let Some((region, pieces, depth)) = waiting.pop_front() {
        if pieces.is_empty() {
            found.offcuts.push(region);
            continue;
        }
        if let [only] = pieces.as_slice()
            && only.length == region.length
            && only.width == region.width
        {
            continue;
        }
        let (cut, first, second) = through(job.kerf, region, &pieces, depth)?;
        found.cuts.push(cut);
        let (before, after) = halves(job.kerf, &cut);
        waiting.push_front((after, second, depth + 1));
        waiting.push_front((before, first, depth + 1));
    }
    found.offcuts.retain(|rest| rest.length > Length::ZERO && rest.width > Length::ZERO);
    found
        .offcuts
        .sort_by_key(|rest| core::cmp::Reverse(rest.length.steps().saturating_mul(rest.width.steps())));
    Some(found)
}

/// The two pieces of sheet a cut leaves.
pub(super) fn halves(kerf: Length, cut: &Cut) -> (Offcut, Offcut) {
    let whole = cut.from;
    if cut.across {
        let first = cut.at - whole.x;
        let rest = (whole.length - first - kerf).max(Length::ZERO);
        (Offcut { length: first, ..whole }, Offcut { x: cut.at + kerf, length: rest, ..whole })
    } else {
        let first = cut.at - whole.y;
        let rest = (whole.width - first - kerf).max(Length::ZERO);
        (Offcut { width: first, ..whole }, Offcut { y: cut.at + kerf, width: rest, ..whole })
    }
}

/// A cut through the region that meets no piece, with the pieces on either side: the one that frees the largest offcut, else the
/// one nearest the middle. A piece touches an edge of its region or stands at least a kerf off it.
fn through(
    kerf: Length,
    region: Offcut,
    pieces: &[Placed],
    depth: usize,
) -> Option<(Cut, Vec<Placed>, Vec<Placed>)> {
    let mut best: Option<(i64, Cut)> = None;
    for across in [true, false] {
        let span = |piece: &Placed| {
            if across { (piece.x, piece.x + piece.length) } else { (piece.y, piece.y + piece.width) }
        };
        let (start, size) = if across { (region.x, region.length) } else { (region.y, region.width) };
        let places = pieces.iter().flat_map(|piece| [span(piece).1, span(piece).0 - kerf]);
        for at in places {
            let rest = start + size - at;
            let clear = pieces.iter().all(|other| span(other).1 <= at || span(other).0 >= at + kerf);
            if at <= start || rest <= Length::ZERO || !clear {
                continue;
            }
            let side = if across { region.width } else { region.length };
            let area = |depth: Length| depth.steps().saturating_mul(side.steps());
            let worth = if pieces.iter().all(|other| span(other).1 <= at) {
                area(rest)
            } else if pieces.iter().all(|other| span(other).0 > at) {
                area(at - start)
            } else {
                -((at - start) * 2 - size).abs().steps()
            };
            if best.is_none_or(|(most, _)| worth > most) {
                best = Some((worth, Cut { across, at, from: region, depth }));
            }
        }
    }
    let (_, cut) = best?;
    let before = |piece: &Placed| {
        if cut.across { piece.x + piece.length <= cut.at } else { piece.y + piece.width <= cut.at }
    };
    let (first, second) = pieces.iter().copied().partition(before);
    Some((cut, first, second))
}
