#!/usr/bin/env bash
# Breaks the code on purpose, one line of mutations.txt at a time, in a copy of the tree, and sees that the test named
# there fails: `bash tests/mutate.sh [words]`, with words only the lines that hold one of them. A change that no test
# minds, that does not compile, or whose old text does not stand exactly once is a failure.
# Ends with a line `N passed, N failed`.
set -uo pipefail
cd "$(dirname "$0")/.."

copy=$(mktemp -d)
trap 'rm -rf "$copy"' EXIT
tar --create --exclude=./target --exclude=./dist --exclude=./.git --exclude=node_modules . | tar --extract --directory "$copy"
export CARGO_TARGET_DIR=${MUTANTS_TARGET_DIR:-$copy/target}
export CARGO_TERM_COLOR=never PROPTEST_CASES=64
cd "$copy" || exit 2

# Everything compiled once, without a limit: the first build takes longer than any mistake's.
cargo test --locked --quiet --no-run --workspace --exclude risewright-web --exclude risewright-worker \
  --config 'profile.dev.package.risewright.opt-level=0' --config 'profile.dev.debug=false' >&2

# run PACKAGE TEST: builds in the profile that is compiled fastest, for every line compiles anew.
run() {
  local where
  case $1 in
    */*) where=(-p "${1%/*}" --test "${1#*/}") ;;
    risewright) where=(-p "$1" --lib) ;;
    *) where=(-p "$1") ;;
  esac
  timeout 600 cargo test --locked --quiet --config 'profile.dev.package.risewright.opt-level=0' \
    --config 'profile.dev.debug=false' "${where[@]}" -- "$2" 2>&1
}

# Everything after the header, or what holds one of the words.
mapfile -t lines < <(grep -v '^#' tests/mutations.txt | grep -E -- "$(IFS='|'; echo "${*:-.}")")
passed=0
failed=0
complain() {
  printf 'FAILED %s\n' "$1"
  failed=$((failed + 1))
}

# A test that fails anyway would catch everything.
declare -A sound
for line in "${lines[@]}"; do
  IFS=$'\t' read -r _ _ _ package test <<<"$line"
  [ -z "${sound[$package $test]:-}" ] || continue
  sound[$package $test]=no
  # Read to its end: what writes into a pipe that nobody reads any more fails.
  told=$(run "$package" "$test")
  if grep -q '^test result: ok\. [1-9]' <<<"$told"; then sound[$package $test]=yes; fi
done

for line in "${lines[@]}"; do
  IFS=$'\t' read -r file old new package test <<<"$line"
  name="$file: $old -> $new ($package, $test)"
  if [ "${sound[$package $test]}" = no ]; then
    complain "$name: the test does not pass as the code stands"
    continue
  fi
  text=$(<"$file")
  rest=${text#*"$old"}
  if [ "$rest" = "$text" ] || [[ $rest == *"$old"* ]]; then
    complain "$name: the old text does not stand there exactly once"
    continue
  fi
  printf '%s\n' "${text%%"$old"*}$new$rest" >"$file"
  told=$(run "$package" "$test")
  printf '%s\n' "$text" >"$file"
  if grep -q '^test result: FAILED' <<<"$told"; then
    passed=$((passed + 1))
    printf 'caught %s\n' "$name"
  elif grep -q '^test result: ok' <<<"$told"; then
    complain "$name: no test minds"
  else
    complain "$name: does not compile, or does not end"
    tail -n 5 <<<"$told"
  fi
done
printf '%d passed, %d failed\n' "$passed" "$failed"
((failed == 0 && passed > 0))
