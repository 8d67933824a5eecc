#!/usr/bin/env bash
# What takes too long for every change: `bash tests/long.sh [cases]`. The property tests over many more designs (20,000
# each unless told otherwise), optimised but with arithmetic checked, the solver's timings, how well sheets are laid out, fuzzing, mutations, and
# how fast the page is.
set -uo pipefail
cd "$(dirname "$0")/.."
# shellcheck source=tests/steps.sh
source tests/steps.sh

export CARGO_TERM_PROGRESS_WHEN=never
# A clean clone has nothing to build on, and without it the solver compiles in a third of the time.
export CARGO_INCREMENTAL=0
export PROPTEST_CASES=${1:-20000}
export CARGO_PROFILE_RELEASE_OVERFLOW_CHECKS=true CARGO_PROFILE_RELEASE_DEBUG_ASSERTIONS=true

prepare_rust

step "Properties over $PROPTEST_CASES designs each" cargo \
  cargo test --locked --quiet --release --no-fail-fast -p risewright -p risewright-tests
unset CARGO_PROFILE_RELEASE_OVERFLOW_CHECKS CARGO_PROFILE_RELEASE_DEBUG_ASSERTIONS
step "Timings" single cargo bench --locked -p risewright
step "Sheets that were cut up come back on one" single cargo bench --locked -p risewright-tests --bench sheets
step "Tables searched a second" single cargo bench --locked -p risewright-tests --bench search
if cargo +nightly fuzz --version >/dev/null 2>&1; then
  step "Fuzzing" stories bash tests/fuzz/run.sh
else
  echo "Fuzzing is left out; it needs: rustup toolchain install nightly && cargo install cargo-fuzz --locked"
fi
step "Mistakes made on purpose" stories nice bash tests/mutate.sh
prepare_browser
(cd tests/perf && npm ci --silent) || give_up "npm could not install Lighthouse; its reason stands above."
step "Page builds" single cargo run --locked --quiet --release -- --build-only
step "Programs of the solver build" single cargo build --locked --quiet --release -p risewright --examples
step "How fast the page is" single node tests/perf/run.mjs

summary
