//! A panel saw, and sheets that were cut by one.
#![allow(dead_code, reason = "each test that uses this room needs a part of it")]
#![allow(clippy::cast_possible_truncation, reason = "sizes of sheets in millimetres")]

use proptest::prelude::TestCaseError;
use risewright::design::Cutting;
use risewright::quantity::Length;
use risewright::workshop::sheets::{Blank, Cut, Job, Piece, Sheet};

/// x, y, length, width.
pub type Board = [Length; 4];

/// Saws a trimmed sheet by a list of cuts, each through one board that is at hand, and gives what then lies there, sorted; boards thinner
/// than nothing are sawdust.
pub fn saw(job: &Job, sheet: &Sheet, cuts: &[Cut]) -> Result<Vec<Board>, TestCaseError> {
    let blank = job.blanks[sheet.blank];
    let [length, width] = job.room(blank);
    let mut boards: Vec<Board> = vec![[job.trim, job.trim, length, width]];
    for cut in cuts {
        let from = [cut.from.x, cut.from.y, cut.from.length, cut.from.width];
        let at = boards
            .iter()
            .position(|board| *board == from)
            .ok_or_else(|| TestCaseError::fail(format!("{cut:?} is made in a board that is not there")))?;
        let [x, y, length, width] = boards.swap_remove(at);
        let (start, size) = if cut.across { (x, length) } else { (y, width) };
        let first = cut.at - start;
        if first <= Length::ZERO || first >= size {
            return Err(TestCaseError::fail(format!("{cut:?} misses its board")));
        }
        let rest = size - first - job.kerf;
        if cut.across {
            boards.push([x, y, first, width]);
            boards.push([cut.at + job.kerf, y, rest, width]);
        } else {
            boards.push([x, y, length, first]);
            boards.push([x, cut.at + job.kerf, length, rest]);
        }
        boards.retain(|[_, _, length, width]| *length > Length::ZERO && *width > Length::ZERO);
    }
    boards.sort_unstable();
    Ok(boards)
}

/// SplitMix64, for sheets that are the same in every run.
pub struct Dice(pub u64);

impl Dice {
    pub fn roll(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut word = self.0;
        word = (word ^ (word >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        word = (word ^ (word >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        word ^ (word >> 31)
    }

    pub fn unit(&mut self) -> f64 {
        (self.roll() >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn below(&mut self, end: usize) -> usize {
        (self.unit() * end as f64) as usize
    }
}

/// Size of the sheets that are cut up, mm, and the kerf.
const SHEET: [i64; 2] = [2440, 1220];
const KERF: i64 = 3;

/// No piece is smaller than this, mm.
const SMALLEST: i64 = 40;

/// A sheet cut into 10 to 25 rectangles by random cuts from edge to edge, some of them thrown away until the waste, kerf included, lies
/// between two shares; so one sheet is enough for what is left. `free` lets every piece turn, and half of them lie turned.
pub fn cut_up(dice: &mut Dice, waste: [f64; 2], free: bool) -> Job {
    loop {
        let wanted = 10 + dice.below(16) + dice.below(4);
        let boards = random_cuts(dice, wanted);
        for _ in 0..50 {
            if let Some(kept) = thin_out(dice, boards.clone(), waste) {
                return job(dice, &kept, free);
            }
        }
    }
}

fn random_cuts(dice: &mut Dice, wanted: usize) -> Vec<[i64; 2]> {
    let mut boards = vec![SHEET];
    for _ in 0..1000 {
        if boards.len() >= wanted {
            break;
        }
        // The larger a board, the likelier it is cut.
        let area: i64 = boards.iter().map(|[length, width]| length * width).sum();
        let mut mark = (dice.unit() * area as f64) as i64;
        let at = boards
            .iter()
            .position(|[length, width]| {
                mark -= length * width;
                mark < 0
            })
            .unwrap_or(0);
        let [length, width] = boards[at];
        let across = dice.unit() * ((length + width) as f64) < length as f64;
        let size = if across { length } else { width };
        let first = (size as f64 * (0.2 + 0.6 * dice.unit())) as i64;
        let rest = size - first - KERF;
        if first < SMALLEST || rest < SMALLEST {
            continue;
        }
        boards[at] = if across { [first, width] } else { [length, first] };
        boards.push(if across { [rest, width] } else { [length, rest] });
    }
    boards
}

fn thin_out(dice: &mut Dice, mut boards: Vec<[i64; 2]>, [least, most]: [f64; 2]) -> Option<Vec<[i64; 2]>> {
    let whole = (SHEET[0] * SHEET[1]) as f64;
    loop {
        let used: i64 = boards.iter().map(|[length, width]| length * width).sum();
        let waste = 1.0 - used as f64 / whole;
        let counted = (10..=25).contains(&boards.len());
        if waste >= least && waste <= most && counted {
            return Some(boards);
        }
        if waste > most || boards.len() <= 10 {
            return None;
        }
        let at = dice.below(boards.len());
        boards.swap_remove(at);
    }
}

fn job(dice: &mut Dice, boards: &[[i64; 2]], free: bool) -> Job {
    let mm = |size: i64| Length::mm(size as f64);
    let pieces = boards.iter().zip(1..).map(|(&[length, width], part)| {
        let turned = free && dice.below(2) == 0;
        let [length, width] = if turned { [width, length] } else { [length, width] };
        Piece { part, name: String::new(), length: mm(length), width: mm(width), may_turn: free }
    });
    Job {
        thickness: mm(18),
        pieces: pieces.collect(),
        blanks: vec![Blank { length: mm(SHEET[0]), width: mm(SHEET[1]), count: None }],
        kerf: mm(KERF),
        trim: Length::ZERO,
        cutting: Cutting::Straight,
    }
}
