#!/usr/bin/env bash
# Every check of the project, from a clean clone: `bash tests/all.sh`. Installs what is missing where it can, says in one
# sentence what it cannot, runs each step even when an earlier one failed, and ends with `N passed, N failed`.
set -uo pipefail
cd "$(dirname "$0")/.."
# shellcheck source=tests/steps.sh
source tests/steps.sh

export CARGO_TERM_PROGRESS_WHEN=never
# A clean clone has nothing to build on, and without it the solver compiles in a third of the time.
export CARGO_INCREMENTAL=0
# The same random designs at every run, so that a change is not blamed for what another draw finds; long.sh draws anew.
export PROPTEST_RNG_SEED=1

prepare_rust
prepare_browser
prepare_python

step "Format" single cargo fmt --all --check
step "Lints, solver and tools" single \
  cargo clippy --locked --quiet -p risewright -p risewright-tests -p risewright-serve --all-targets -- -D warnings
step "Lints, page" single \
  cargo clippy --locked --quiet -p risewright-web -p risewright-worker --target "$WASM" --all-targets -- -D warnings
step "Documentation" single env RUSTDOCFLAGS="-D warnings" cargo doc --locked --quiet --no-deps -p risewright
step "Solver, its outside checks, and the page's own" cargo \
  cargo test --locked --quiet --no-fail-fast -p risewright -p risewright-tests -p risewright-web
step "DXF files read by another program" stories bash tests/dxf/run.sh
# In the release profile, since the page's builder is compiled in it anyway.
step "Builder and server" cargo cargo test --locked --quiet --release -p risewright-serve
step "Page builds" single cargo run --locked --quiet --release -- --build-only
# Only the page's own package is compiled again for it.
step "Page that fails on demand builds" single \
  cargo run --locked --quiet --release -- --build-only --trial --dist "${CARGO_TARGET_DIR:-target}/trial"
# The browser stories hold the figures on screen against these; compiling them would exhaust a story's patience.
step "Programs of the solver build" single cargo build --locked --quiet --release -p risewright --examples
step "Page weighs no more than its budget" single node tests/browser/budget.mjs
step "The page's module computes the same digits" single node tests/browser/digests.mjs
step "Analysis in the page against this machine" single node tests/perf/analysis.mjs
step "Page in a browser" stories node tests/browser/run.mjs
if cargo deny --version >/dev/null 2>&1; then
  step "Licences and origins of dependencies" single cargo deny --locked check bans licenses sources
fi

summary
