//! How many tables the search settles and judges a second, when the first answer stands and when all is known, for the targets it begins with
//! in both systems and for limits that clash.
#![allow(clippy::unwrap_used, reason = "a benchmark may stop where its own targets are at fault")]
#![allow(clippy::disallowed_types, reason = "a benchmark reads the clock")]

use risewright::quantity::{Length, System};
use risewright::report::search::{Search, Targets};
use std::time::Instant;

fn main() {
    println!(
        "targets            combinations  settled/s  analysed/s  first, s  all, s  slowest slice, ms  kept"
    );
    let mut low = Targets::first(System::Metric);
    low.lowest.value = Length::mm(420.0);
    let cases = [
        ("metric", Targets::first(System::Metric)),
        ("inch", Targets::first(System::Inch)),
        ("metric, too low", low),
    ];
    for (name, targets) in cases {
        let mut search = Search::new(&targets);
        let begin = Instant::now();
        let (mut first, mut main, mut slowest) = (None, None, 0.0_f64);
        loop {
            let slice = Instant::now();
            let more = search.advance();
            slowest = slowest.max(slice.elapsed().as_secs_f64());
            let now = begin.elapsed().as_secs_f64();
            if first.is_none() && !search.front().kept().is_empty() {
                first = Some(now);
            }
            if main.is_none() && search.count().settled == search.count().all {
                main = Some(now);
            }
            if !more {
                break;
            }
        }
        let (count, all) = (search.count(), begin.elapsed().as_secs_f64());
        let main = main.unwrap();
        let first = first.map_or_else(|| "none".to_owned(), |first| format!("{first:.2}"));
        println!(
            "{name:18} {:12} {:10.0} {:11.0} {first:>9} {all:7.2} {:18.1} {:5}",
            count.all,
            count.all as f64 / main,
            count.judged as f64 / main,
            slowest * 1e3,
            search.front().kept().len()
        );
    }
}
