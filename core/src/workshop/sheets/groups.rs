//! What a straight cut can tell apart: runs of pieces with a kerf's room between them.
use super::layout::Placed;
use crate::quantity::Length;

/// A direction of sawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Way {
    /// Cuts run across the sheet, at places along its length.
    Across,
    /// Cuts run along the sheet, at places along its width.
    Along,
}

impl Way {
    pub(super) const BOTH: [Self; 2] = [Self::Across, Self::Along];

    /// Where a piece begins and ends, measured square to the cuts.
    pub(super) fn span(self, piece: &Placed) -> (Length, Length) {
        match self {
            Self::Across => (piece.x, piece.x + piece.length),
            Self::Along => (piece.y, piece.y + piece.width),
        }
    }

    /// Of two sides, length and width, the one square to the cuts first.
    pub(super) const fn sides(self, [length, width]: [Length; 2]) -> [Length; 2] {
        match self {
            Self::Across => [length, width],
            Self::Along => [width, length],
        }
    }
}

/// Pieces between two cuts.
#[derive(Clone, Debug)]
pub(super) struct Strip {
    pub start: Length,
    pub end: Length,
    pub pieces: Vec<Placed>,
}

/// The pieces in as many strips as cuts one way can make of them, in order; one strip where no cut goes between.
pub(super) fn strips(way: Way, kerf: Length, pieces: &[Placed]) -> Vec<Strip> {
    let mut sorted: Vec<Placed> = pieces.to_vec();
    sorted.sort_by_key(|piece| (way.span(piece), piece.x, piece.y));
    let mut list: Vec<Strip> = Vec::new();
    for piece in sorted {
        let (start, end) = way.span(&piece);
        match list.last_mut() {
            Some(last) if start < last.end + kerf => {
                last.end = last.end.max(end);
                last.pieces.push(piece);
            }
            _ => list.push(Strip { start, end, pieces: vec![piece] }),
        }
    }
    list
}
