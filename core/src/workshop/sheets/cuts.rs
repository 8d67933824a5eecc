//! In which order a sheet is cut, edge to edge, and what is left over.
use super::groups::{Way, strips};
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

/// A rest narrower than this is not worth a cut of its own before others: nobody keeps it.
const KEPT: Length = Length::mm(40.0);

/// The order of cuts of a sheet laid out for cuts from edge to edge; none where its pieces cannot be freed so. All strips of a piece of sheet
/// are cut off it one after another before the first of them is cut up.
#[must_use]
pub fn sequence(job: &Job, sheet: &Sheet) -> Option<Sequence> {
    let blank = job.blanks.get(sheet.blank)?;
    let [length, width] = job.room(*blank);
    let whole = Offcut { x: job.trim, y: job.trim, length, width };
    let mut found = Sequence::default();
    let mut waiting = std::collections::VecDeque::from([(whole, sheet.placed.clone(), 0)]);
    while let Some((region, pieces, depth)) = waiting.pop_front() {
        if pieces.is_empty() {
            found.offcuts.push(region);
            continue;
        }
        let sides = [region.length, region.width];
        if let [only] = pieces.as_slice()
            && [only.length, only.width] == sides
        {
            continue;
        }
        let way = way(job.kerf, region, &pieces)?;
        let parts = cut_off(job.kerf, region, way, &pieces, depth, &mut found.cuts);
        if parts.len() < 2 {
            // No cut frees what stands less than a kerf off its edge.
            return None;
        }
        for part in parts.into_iter().rev() {
            waiting.push_front(part);
        }
    }
    found.offcuts.retain(|rest| rest.length > Length::ZERO && rest.width > Length::ZERO);
    found
        .offcuts
        .sort_by_key(|rest| core::cmp::Reverse(rest.length.steps().saturating_mul(rest.width.steps())));
    Some(found)
}

/// Which way a piece of sheet is cut first: the way that frees the larger offcut worth keeping, else the one that tells pieces apart, else the
/// one that leaves a rest.
fn way(kerf: Length, region: Offcut, pieces: &[Placed]) -> Option<Way> {
    let worth = |way: Way| {
        let [size, side] = way.sides([region.length, region.width]);
        let [start, _] = way.sides([region.x, region.y]);
        let parts = strips(way, kerf, pieces);
        let end = parts.last().map_or(start, |strip| strip.end);
        let rest = start + size - end;
        let before = parts.first().map_or(Length::ZERO, |strip| strip.start - start);
        let kept = if rest - kerf >= KEPT { rest.steps().saturating_mul(side.steps()) } else { 0 };
        let any = rest > Length::ZERO || before > Length::ZERO;
        (kept, parts.len() > 1, any)
    };
    let [across, along] = Way::BOTH.map(worth);
    let possible = |worth: &(i64, bool, bool)| worth.1 || worth.2;
    match (possible(&across), possible(&along)) {
        (false, false) => None,
        (true, false) => Some(Way::Across),
        (false, true) => Some(Way::Along),
        (true, true) => Some(if across > along { Way::Across } else { Way::Along }),
    }
}

/// Cuts a piece of sheet into its strips one way, one after another from its start; the parts in order, with the pieces in each.
fn cut_off(
    kerf: Length,
    region: Offcut,
    way: Way,
    pieces: &[Placed],
    depth: usize,
    cuts: &mut Vec<Cut>,
) -> Vec<(Offcut, Vec<Placed>, usize)> {
    let mut parts = Vec::new();
    let mut rest = region;
    let mut off = |rest: &mut Offcut, at: Length, pieces: Vec<Placed>| {
        let cut = Cut { across: way == Way::Across, at, from: *rest, depth: depth + parts.len() };
        let (before, after) = halves(kerf, &cut);
        cuts.push(cut);
        parts.push((before, pieces, cut.depth + 1));
        *rest = after;
    };
    let ends = |rest: &Offcut| {
        let [start, _] = way.sides([rest.x, rest.y]);
        (start, start + way.sides([rest.length, rest.width])[0])
    };
    let mut last = Vec::new();
    let mut list = strips(way, kerf, pieces).into_iter().peekable();
    while let Some(strip) = list.next() {
        if strip.start - kerf > ends(&rest).0 {
            off(&mut rest, strip.start - kerf, Vec::new());
        }
        // Where there is no room for two cuts before the next strip, one is made at its edge, and what is over stays with this one.
        let at = match list.peek() {
            Some(next) if next.start <= strip.end + kerf * 2 => next.start - kerf,
            _ => strip.end,
        };
        if at < ends(&rest).1 {
            off(&mut rest, at, strip.pieces);
        } else {
            last = strip.pieces;
        }
    }
    let depth = depth + parts.len();
    parts.push((rest, last, depth));
    parts
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
