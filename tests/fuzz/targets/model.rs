//! Hunts with random bytes: see `hunt::model::hunt_model`.
#![no_main]

#[path = "../../hunt/mod.rs"]
mod hunt;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    hunt::model::hunt_model(bytes);
});
