//! Computes a mechanism given as JSON and prints limits and results as JSON: the door for outside checks.
//!
//! `solve MECHANISM.json`; see [`answer`] for what goes in and comes out.

#![allow(
    clippy::disallowed_methods,
    reason = "unlike the crate itself, this program reads its argument and a file"
)]

#[path = "solve/answer.rs"]
mod answer;

use std::process::ExitCode;

fn main() -> ExitCode {
    let Some(path) = std::env::args().skip(1).next_back() else {
        eprintln!("usage: solve MECHANISM.json");
        return ExitCode::FAILURE;
    };
    let text = std::fs::read_to_string(&path).map_err(|fault| fault.to_string());
    match text.and_then(|text| answer::answer(&text)) {
        Ok(answer) => {
            println!("{answer}");
            ExitCode::SUCCESS
        }
        Err(fault) => {
            eprintln!("{path}: {fault}");
            ExitCode::FAILURE
        }
    }
}
