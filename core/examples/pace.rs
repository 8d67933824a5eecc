//! How long a whole analysis with the digest of its curves takes on this machine: `pace LINK ...` prints for every link the best time of many in milliseconds, a line each.
#![allow(clippy::disallowed_methods, reason = "unlike the crate itself, this program reads its arguments")]
#![allow(clippy::disallowed_types, reason = "this program reads the clock")]

use std::hint::black_box;
use std::process::ExitCode;
use std::time::Instant;

use risewright::report::analyse;
use risewright::share::link;

const ROUNDS: usize = 60;

/// The best time of a link's analysis, ms; none where there is none.
fn pace(text: &str) -> Option<f64> {
    let mut best = f64::INFINITY;
    for _ in 0..ROUNDS {
        let start = Instant::now();
        black_box(analyse(&link::decode(black_box(text)).ok()?).ok()?.digest());
        best = best.min(start.elapsed().as_secs_f64());
    }
    Some(best * 1e3)
}

fn main() -> ExitCode {
    for text in std::env::args().skip(1) {
        let Some(best) = pace(&text) else {
            eprintln!("{text} is no design that can be analysed.");
            return ExitCode::FAILURE;
        };
        println!("{best:.3}");
    }
    ExitCode::SUCCESS
}
