//! From an order of pieces to a layout: each goes into the first sheet that has room, where it fits tightest.
//!
//! In whole steps of a length. Every piece and every sheet is taken larger by one kerf to the right and up; then pieces may touch, and the
//! saw's cut is in between. Rotation is tried where the grain allows it.
use super::job::Job;
use super::layout::{Layout, Placed, Sheet};
use crate::design::Cutting;
use crate::quantity::Length;

/// A free rectangle, a kerf larger than it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Free {
    pub x: i64,
    pub y: i64,
    pub w: i64,
    pub h: i64,
}

impl Free {
    fn area(&self) -> f64 {
        self.w as f64 * self.h as f64
    }
}

/// How the rest is cut when a piece is taken out of the corner of a free rectangle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Split {
    /// So that the larger rest stays whole.
    Larger,
    /// Across the sheet first: the rest to the right keeps the full width.
    Across,
    /// Along the sheet first: the rest above keeps the full length.
    Along,
}

impl Split {
    pub(super) const ALL: [Self; 3] = [Self::Larger, Self::Across, Self::Along];
}

/// A layout in the making: what decides it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Plan {
    /// Pieces in the order in which they are laid.
    pub order: Vec<usize>,
    /// Which way round each is tried first.
    pub turned: Vec<bool>,
    /// How the rest is cut behind each.
    pub split: Vec<Split>,
}

/// A piece's sides with the kerf, and whether it may turn.
#[derive(Clone, Copy)]
struct Sides {
    w: i64,
    h: i64,
    may_turn: bool,
}

/// One sheet with its free rectangles and the room that is taken.
struct Open {
    blank: usize,
    free: Vec<Free>,
    placed: usize,
    used: f64,
}

/// Where a piece went.
#[derive(Clone, Copy)]
struct Put {
    sheet: usize,
    x: i64,
    y: i64,
    turned: bool,
}

/// Lays out plans, one after another, in the same memory.
pub(super) struct Packer {
    cutting: Cutting,
    kerf: i64,
    trim: i64,
    sides: Vec<Sides>,
    /// Sizes with the kerf, and how many.
    blanks: Vec<(i64, i64, Option<u32>)>,
    open: Vec<Open>,
    puts: Vec<Option<Put>>,
    spare: Vec<Vec<Free>>,
}

impl Packer {
    pub(super) fn new(job: &Job) -> Self {
        let kerf = job.kerf.max(Length::ZERO).steps();
        let sides = job
            .pieces
            .iter()
            .map(|piece| Sides {
                w: piece.length.steps() + kerf,
                h: piece.width.steps() + kerf,
                may_turn: piece.may_turn,
            })
            .collect();
        let blanks = job
            .blanks
            .iter()
            .map(|blank| {
                let [length, width] = job.room(*blank);
                (length.steps() + kerf, width.steps() + kerf, blank.count)
            })
            .collect();
        Self {
            cutting: job.cutting,
            kerf,
            trim: job.trim.max(Length::ZERO).steps(),
            puts: vec![None; job.pieces.len()],
            sides,
            blanks,
            open: Vec::new(),
            spare: Vec::new(),
        }
    }

    /// Lays out a plan and says how bad it is: bought sheets, the share of the last of them that is used, less a little for rests that hang
    /// together. A piece that fits nowhere counts as ten sheets.
    pub(super) fn cost(&mut self, plan: &Plan) -> f64 {
        self.lay(plan);
        let left = self.puts.iter().filter(|put| put.is_none()).count();
        let bought: Vec<&Open> =
            self.open.iter().filter(|open| open.placed > 0 && self.blanks[open.blank].2.is_none()).collect();
        let Some(last) = bought.last() else { return 10.0 * left as f64 };
        let whole = self.blanks[last.blank].0 as f64 * self.blanks[last.blank].1 as f64;
        let squares: f64 =
            bought.iter().flat_map(|open| &open.free).map(|free| free.area() * free.area()).sum();
        10.0 * left as f64 + bought.len() as f64 + last.used / whole - TOGETHER * squares.sqrt() / whole
    }

    fn lay(&mut self, plan: &Plan) {
        self.spare.extend(self.open.drain(..).map(|open| open.free));
        self.puts.fill(None);
        for blank in 0..self.blanks.len() {
            for _ in 0..self.blanks[blank].2.unwrap_or(0) {
                self.start(blank);
            }
        }
        for &piece in &plan.order {
            let placed = (0..self.open.len()).any(|sheet| self.put(sheet, piece, plan));
            if !placed && self.open_for(piece) {
                self.put(self.open.len() - 1, piece, plan);
            }
        }
    }

    fn start(&mut self, blank: usize) {
        let (w, h, _) = self.blanks[blank];
        let mut free = self.spare.pop().unwrap_or_default();
        free.clear();
        free.push(Free { x: 0, y: 0, w, h });
        self.open.push(Open { blank, free, placed: 0, used: 0.0 });
    }

    /// Buys a sheet that takes the piece, the smallest; false where none does.
    fn open_for(&mut self, piece: usize) -> bool {
        let Sides { w, h, may_turn } = self.sides[piece];
        let takes = |(bw, bh, count): (i64, i64, Option<u32>)| {
            count.is_none() && ((w <= bw && h <= bh) || (may_turn && h <= bw && w <= bh))
        };
        let smallest = (0..self.blanks.len())
            .filter(|blank| takes(self.blanks[*blank]))
            .min_by_key(|blank| self.blanks[*blank].0.saturating_mul(self.blanks[*blank].1));
        if let Some(blank) = smallest {
            self.start(blank);
        }
        smallest.is_some()
    }

    /// Puts a piece into a sheet where its shorter rest is least; false where it has no room.
    fn put(&mut self, sheet: usize, piece: usize, plan: &Plan) -> bool {
        let sides = self.sides[piece];
        let open = &mut self.open[sheet];
        let mut best: Option<((i64, i64), usize, bool)> = None;
        let ways = if sides.may_turn { &[plan.turned[piece], !plan.turned[piece]][..] } else { &[false][..] };
        for &turned in ways {
            let (w, h) = if turned { (sides.h, sides.w) } else { (sides.w, sides.h) };
            for (at, free) in open.free.iter().enumerate() {
                let (right, above) = (free.w - w, free.h - h);
                if right < 0 || above < 0 {
                    continue;
                }
                let rests = (right.min(above), right.max(above));
                if best.is_none_or(|(least, ..)| rests < least) {
                    best = Some((rests, at, turned));
                }
            }
        }
        let Some((_, at, turned)) = best else { return false };
        let (w, h) = if turned { (sides.h, sides.w) } else { (sides.w, sides.h) };
        let Free { x, y, .. } = open.free[at];
        match self.cutting {
            Cutting::Straight => guillotine(&mut open.free, at, (w, h), plan.split[piece]),
            Cutting::Free => carve(&mut open.free, Free { x, y, w, h }),
        }
        open.placed += 1;
        open.used += w as f64 * h as f64;
        self.puts[piece] = Some(Put { sheet, x, y, turned });
        true
    }

    /// The layout of a plan.
    pub(super) fn layout(&mut self, plan: &Plan) -> Layout {
        self.lay(plan);
        let mut sheets: Vec<Sheet> =
            self.open.iter().map(|open| Sheet { blank: open.blank, placed: Vec::new() }).collect();
        let mut left = Vec::new();
        for (piece, put) in self.puts.iter().enumerate() {
            let Some(put) = put else {
                left.push(piece);
                continue;
            };
            let sides = self.sides[piece];
            let (w, h) = if put.turned { (sides.h, sides.w) } else { (sides.w, sides.h) };
            sheets[put.sheet].placed.push(Placed {
                piece,
                x: Length::from_steps(put.x + self.trim),
                y: Length::from_steps(put.y + self.trim),
                length: Length::from_steps(w - self.kerf),
                width: Length::from_steps(h - self.kerf),
                turned: put.turned,
            });
        }
        sheets.retain(|sheet| !sheet.placed.is_empty());
        for sheet in &mut sheets {
            sheet.placed.sort_by_key(|placed| (placed.x, placed.y));
        }
        Layout { sheets, left }
    }
}

/// How much rests that hang together count beside the sheets: enough to prefer one large offcut to many, too little to cost a sheet.
const TOGETHER: f64 = 0.02;

/// Takes a piece out of the lower left corner of a free rectangle and cuts the rest into two, edge to edge.
fn guillotine(free: &mut Vec<Free>, at: usize, (w, h): (i64, i64), split: Split) {
    let Free { x, y, w: whole_w, h: whole_h } = free.swap_remove(at);
    let (right, above) = (whole_w - w, whole_h - h);
    let across = match split {
        Split::Larger => right as f64 * whole_h as f64 >= above as f64 * whole_w as f64,
        Split::Across => true,
        Split::Along => false,
    };
    let (beside, over) = if across {
        (Free { x: x + w, y, w: right, h: whole_h }, Free { x, y: y + h, w, h: above })
    } else {
        (Free { x: x + w, y, w: right, h }, Free { x, y: y + h, w: whole_w, h: above })
    };
    free.extend([beside, over].into_iter().filter(|rest| rest.w > 0 && rest.h > 0));
}

/// Takes a rectangle out of overlapping free rectangles and keeps the largest that remain: J. Jylänki, "A thousand ways to pack the bin"
/// (2010), section 2.3, maximal rectangles.
fn carve(free: &mut Vec<Free>, taken: Free) {
    let mut rest: Vec<Free> = Vec::with_capacity(free.len() + 4);
    for old in free.iter() {
        let (right, top) = (old.x + old.w, old.y + old.h);
        let (taken_right, taken_top) = (taken.x + taken.w, taken.y + taken.h);
        if taken.x >= right || taken_right <= old.x || taken.y >= top || taken_top <= old.y {
            rest.push(*old);
            continue;
        }
        let pieces = [
            Free { w: taken.x - old.x, ..*old },
            Free { x: taken_right, w: right - taken_right, ..*old },
            Free { h: taken.y - old.y, ..*old },
            Free { y: taken_top, h: top - taken_top, ..*old },
        ];
        rest.extend(pieces.into_iter().filter(|piece| piece.w > 0 && piece.h > 0));
    }
    let inside = |one: &Free, other: &Free| {
        one.x >= other.x
            && one.y >= other.y
            && one.x + one.w <= other.x + other.w
            && one.y + one.h <= other.y + other.h
    };
    free.clear();
    for (at, one) in rest.iter().enumerate() {
        let covered = rest
            .iter()
            .enumerate()
            .any(|(other_at, other)| other_at != at && inside(one, other) && (one != other || other_at < at));
        if !covered {
            free.push(*one);
        }
    }
}
