//! Hunts with random bytes: see `hunt::hunt_file`.
#![no_main]

#[path = "../../hunt/mod.rs"]
mod hunt;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| hunt::hunt_file(bytes));
