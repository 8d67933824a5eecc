# How the checks are prepared, run and counted: sourced by all.sh and long.sh from the project's root.
# shellcheck shell=bash

WASM=wasm32-unknown-unknown
passed=0
failed=0
failures=()
log=$(mktemp)
trap 'rm -f "$log"' EXIT

# Ends the run with one sentence on what is missing.
give_up() {
  printf '%s\n' "$1" >&2
  exit 2
}

prepare_rust() {
  command -v cargo >/dev/null || give_up "Rust is missing: install rustup."
  if cargo clippy --version && cargo fmt --version && [ -d "$(rustc --print target-libdir --target "$WASM")" ]; then
    return
  fi >/dev/null 2>&1
  local channel
  channel=$(sed -n 's/^channel = "\(.*\)"/\1/p' rust-toolchain.toml)
  command -v rustup >/dev/null ||
    give_up "Rust $channel with clippy, rustfmt and the target $WASM is needed, and rustup, which would install them, is missing."
  rustup toolchain install "$channel" --profile minimal --component clippy,rustfmt --target "$WASM" ||
    give_up "rustup could not install Rust $channel with clippy, rustfmt and the target $WASM; its reason stands above."
}

# Where the stories look for it: tests/browser/browser.mjs.
has_browser() {
  local found
  for found in "${CHROMIUM:-}" /usr/bin/chromium /usr/bin/chromium-browser /usr/bin/google-chrome; do
    [ -x "$found" ] && break
  done
  [ -x "$found" ] && fc-list | grep -q "DejaVu Sans.*Condensed"
}

prepare_browser() {
  node --eval 'process.exit(process.versions.node.split(".")[0] >= 20 ? 0 : 1)' 2>&1 && command -v npm ||
    give_up "The browser tests need Node 20 or newer with npm: install them."
  if ! has_browser; then
    [ "$(id -u)" = 0 ] && command -v apt-get ||
      give_up "The browser tests need Chromium and the DejaVu fonts: install the packages chromium, fontconfig, fonts-dejavu-core and fonts-dejavu-extra."
    apt-get update --quiet --quiet && DEBIAN_FRONTEND=noninteractive apt-get install --quiet --quiet --yes \
      --no-install-recommends chromium fontconfig fonts-dejavu-core fonts-dejavu-extra ||
      give_up "Chromium and the DejaVu fonts could not be installed; the reason stands above."
  fi
  (cd tests/browser && npm ci --silent) || give_up "npm could not install the browser tests' two packages; its reason stands above."
} >/dev/null

prepare_python() {
  python3 -c 'import venv, ensurepip' && return
  [ "$(id -u)" = 0 ] && command -v apt-get ||
    give_up "The check of the DXF files needs Python 3.10 or newer with venv: install python3 and python3-venv."
  apt-get update --quiet --quiet && DEBIAN_FRONTEND=noninteractive apt-get install --quiet --quiet --yes \
    --no-install-recommends python3 python3-venv || give_up "Python with venv could not be installed; the reason stands above."
} >/dev/null 2>&1

# step NAME KIND COMMAND...: runs the command and counts what it tested. KIND is `cargo` or `stories` for a suite, whose
# own figures are added up, or `single` for a check that counts as one.
step() {
  local name=$1 kind=$2 start=$SECONDS status good bad
  shift 2
  printf '\n== %s\n' "$name"
  "$@" 2>&1 | tee "$log"
  status=${PIPESTATUS[0]}
  case $kind in
    cargo) read -r good bad < <(sed -n 's/^test result: .* \([0-9]*\) passed; \([0-9]*\) failed;.*/\1 \2/p' "$log" | add_up) ;;
    stories) read -r good bad < <(sed -n 's/^\([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p' "$log" | add_up) ;;
    single) good=$((status == 0)) bad=$((status != 0)) ;;
  esac
  # A suite that broke off, or tested nothing, has failed whatever it counted.
  if ((bad == 0)) && { ((status != 0)) || ((good == 0)); }; then bad=1; fi
  passed=$((passed + good))
  failed=$((failed + bad))
  ((bad == 0)) || failures+=("$name")
  printf -- '-- %s: %d passed, %d failed, %d s\n' "$name" "$good" "$bad" $((SECONDS - start))
}

add_up() {
  awk '{ good += $1; bad += $2 } END { print good + 0, bad + 0 }'
}

summary() {
  printf '\nAfter %d min %d s' $((SECONDS / 60)) $((SECONDS % 60))
  if ((failed > 0)); then
    printf ', failed in:\n'
    printf '  %s\n' "${failures[@]}"
  fi
  printf '\n%d passed, %d failed\n' "$passed" "$failed"
  ((failed == 0))
}
