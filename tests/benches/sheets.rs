//! How often a sheet that was cut up comes back onto one sheet: our search and a crate for the same purpose, side by side.
//!
//! 200 sheets of 2440 x 1220 are cut by random cuts from edge to edge with a 3 mm kerf into 10 to 25 rectangles; 8 to 12 % of each is thrown
//! away, kerf included, so one sheet is surely enough. Each search has one second. Half of the sheets keep their grain, on half of them every
//! piece may turn. A second table throws nothing away but the kerf. Fails where fewer than 95 of 100 of the first kind come back.
#![allow(clippy::cast_possible_truncation, reason = "sizes of sheets in millimetres")]

#[path = "../tests/cutting/mod.rs"]
mod cutting;

use cut_optimizer_2d::{CutPiece, Optimizer, PatternDirection, StockPiece};
use cutting::{Dice, cut_up};
use risewright::workshop::sheets::{Job, Search};
use std::time::{Duration, Instant};

const SHEETS: usize = 200;
const GIVEN: Duration = Duration::from_secs(1);
const WANTED: f64 = 0.95;

/// Whether our search comes back with one sheet in the time given, and the time it took.
fn ours(job: &Job) -> (bool, Duration) {
    let start = Instant::now();
    let mut search = Search::new(job);
    loop {
        let one = search.best().left.is_empty() && search.best().bought(job) == 1;
        if one || start.elapsed() > GIVEN {
            return (one, start.elapsed());
        }
        search.advance(200);
    }
}

/// The same of the crate, which is given one sheet and a new seed as long as there is time.
fn theirs(job: &Job) -> (bool, Duration) {
    let start = Instant::now();
    let mm = |length: risewright::quantity::Length| length.to_mm().round() as usize;
    for seed in 1.. {
        let blank = job.blanks[0];
        let mut optimizer = Optimizer::new();
        optimizer.add_stock_piece(StockPiece {
            quantity: Some(1),
            length: mm(blank.length),
            width: mm(blank.width),
            pattern_direction: PatternDirection::None,
            price: 0,
        });
        for (id, piece) in job.pieces.iter().enumerate() {
            optimizer.add_cut_piece(CutPiece {
                quantity: 1,
                external_id: Some(id),
                length: mm(piece.length),
                width: mm(piece.width),
                pattern_direction: PatternDirection::None,
                can_rotate: piece.may_turn,
            });
        }
        optimizer.set_cut_width(mm(job.kerf)).set_random_seed(seed);
        let one = optimizer.optimize_guillotine(|_| {}).is_ok();
        if one || start.elapsed() > GIVEN {
            return (one && start.elapsed() <= GIVEN, start.elapsed());
        }
    }
    (false, start.elapsed())
}

/// Shares of jobs that come back, and mean times, of ours and of theirs.
fn measure(name: &str, waste: [f64; 2]) -> f64 {
    let mut dice = Dice(7);
    let jobs: Vec<Job> = (0..SHEETS).map(|at| cut_up(&mut dice, waste, at % 2 == 0)).collect();
    let rate = |solve: fn(&Job) -> (bool, Duration)| {
        let answers: Vec<(bool, Duration)> = jobs.iter().map(solve).collect();
        let back = answers.iter().filter(|(one, _)| *one).count();
        let time: Duration = answers.iter().map(|(_, time)| *time).sum();
        (back as f64 / SHEETS as f64, time.as_secs_f64() / SHEETS as f64)
    };
    let (ours, our_time) = rate(ours);
    let (theirs, their_time) = rate(theirs);
    println!("{name}: {SHEETS} sheets, {} s each", GIVEN.as_secs());
    println!("  ours             {:5.1} % back on one sheet, mean {:.3} s", 100.0 * ours, our_time);
    println!("  cut-optimizer-2d {:5.1} % back on one sheet, mean {:.3} s", 100.0 * theirs, their_time);
    ours
}

fn main() {
    let rate = measure("8 to 12 % waste", [0.08, 0.12]);
    measure("nothing thrown away but the kerf", [0.0, 0.06]);
    assert!(rate >= WANTED, "only {:.1} % came back", 100.0 * rate);
}
