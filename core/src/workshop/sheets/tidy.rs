//! A layout set in order: strips of equal width side by side, the widest first, and what is left over in one place.
//!
//! Strips between cuts that go right through may change places, and each may be pushed together; nothing else changes, so that a lawful layout
//! stays one. Equal strips next to each other are sawn with one setting of the fence, and small rests join into a larger offcut.
use super::groups::{Way, strips};
use super::job::Job;
use super::layout::{Placed, Sheet};
use crate::quantity::Length;

/// The sheet set in order; none where its pieces cannot be freed by cuts from edge to edge.
pub(super) fn tidy(job: &Job, sheet: &Sheet) -> Option<Sheet> {
    let blank = job.blanks.get(sheet.blank)?;
    let mut block = pushed(job.kerf, &sheet.placed, job.room(*blank))?;
    for piece in &mut block.pieces {
        piece.x += job.trim;
        piece.y += job.trim;
    }
    block.pieces.sort_by_key(|placed| (placed.x, placed.y));
    Some(Sheet { blank: sheet.blank, placed: block.pieces })
}

/// Pieces pushed together, places from their own lower left corner, and the room they take.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Block {
    pieces: Vec<Placed>,
    size: [Length; 2],
}

/// Pieces in a room, which is only asked for the direction that leaves more of it whole.
fn pushed(kerf: Length, pieces: &[Placed], room: [Length; 2]) -> Option<Block> {
    if let [only] = pieces {
        let piece = Placed { x: Length::ZERO, y: Length::ZERO, ..*only };
        return Some(Block { pieces: vec![piece], size: [only.length, only.width] });
    }
    let mut best: Option<(i64, Block)> = None;
    for way in Way::BOTH {
        let parts = strips(way, kerf, pieces);
        if parts.len() < 2 {
            continue;
        }
        let mut blocks = Vec::with_capacity(parts.len());
        for strip in &parts {
            let [_, across] = way.sides(room);
            let own = way.sides([strip.end - strip.start, across]);
            blocks.push(pushed(kerf, &strip.pieces, own)?);
        }
        let block = stacked(way, kerf, blocks);
        let [depth, side] = way.sides([room[0], room[1]]);
        let rest = depth - way.sides(block.size)[0];
        let whole = rest.steps().saturating_mul(side.steps());
        if best.as_ref().is_none_or(|(most, _)| whole > *most) {
            best = Some((whole, block));
        }
    }
    best.map(|(_, block)| block)
}

/// Blocks one after another, a kerf between, equal ones together and the widest first.
fn stacked(way: Way, kerf: Length, mut blocks: Vec<Block>) -> Block {
    let key = |block: &Block| {
        let [depth, side] = way.sides(block.size);
        let sizes: Vec<[Length; 2]> = block.pieces.iter().map(|piece| [piece.length, piece.width]).collect();
        core::cmp::Reverse((depth, side, sizes))
    };
    blocks.sort_by_cached_key(key);
    let mut whole = Block { pieces: Vec::new(), size: [Length::ZERO; 2] };
    let (mut at, mut side) = (Length::ZERO, Length::ZERO);
    for block in blocks {
        let [depth, own] = way.sides(block.size);
        whole.pieces.extend(block.pieces.into_iter().map(|piece| match way {
            Way::Across => Placed { x: piece.x + at, ..piece },
            Way::Along => Placed { y: piece.y + at, ..piece },
        }));
        at += depth + kerf;
        side = side.max(own);
    }
    whole.size = way.sides([at - kerf, side]);
    whole
}
