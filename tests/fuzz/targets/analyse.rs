//! Hunts with designs made of random bytes: see `hunt::hunt_design`.
#![no_main]

#[path = "../../hunt/mod.rs"]
mod hunt;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| drop(hunt::hunt_design(bytes)));
