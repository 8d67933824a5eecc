#!/usr/bin/env bash
# Fuzzes every target for a number of executions: `bash tests/fuzz/run.sh [executions] [executions of analyse]`, a million and a hundred thousand unless told otherwise.
# It begins with what the tests have: frozen links and files, reference cases. What is found stands in `artifacts`; it belongs into `tests/reference/hostile`.
# Ends with a line `N passed, N failed`.
set -uo pipefail
cd "$(dirname "$0")"
executions=${1:-1000000}
of_analyse=${2:-100000}
if ! cargo +nightly fuzz --version >/dev/null 2>&1; then
  echo "Fuzzing needs cargo-fuzz and a nightly compiler: rustup toolchain install nightly && cargo install cargo-fuzz --locked"
  exit 2
fi

mkdir -p corpus/{link,file,quantity,model,analyse}
tail -n +2 ../reference/frozen/links.csv | cut -d, -f3 | awk '{ print > ("corpus/link/seed-" NR) }'
cp ../reference/frozen/files/{by-hand,later-members,paper-lift}.json corpus/file/
printf '\0001 1/2"' >corpus/quantity/seed-1
printf "\0004' 2 3/4\"" >corpus/quantity/seed-2
printf '\0021,200 mm' >corpus/quantity/seed-3
for case in 01_n1_base_ideal 08_n1_strut_base_arm 11_n1_left_overhang_uplift; do
  node -e 'process.stdout.write(JSON.stringify(JSON.parse(require("fs").readFileSync(process.argv[1])).input))' \
    ../reference/cases/$case.json >corpus/model/$case
done
# A first byte that is no JSON stands for a sound mechanism, to be changed.
printf '\0' >corpus/model/sound

passed=0
failed=0
for target in link file quantity model analyse; do
  runs=$executions
  [ "$target" = analyse ] && runs=$of_analyse
  echo "== $target, $runs executions"
  # Without the address sanitizer, since there is no unsafe code to watch, but with arithmetic checked. Time limits are generous, a hang still ends the run.
  if cargo +nightly fuzz run --sanitizer none --release --debug-assertions "$target" -- \
    -runs="$runs" -max_len=4096 -timeout=10 -rss_limit_mb=4096 -print_final_stats=1 -verbosity=0 2>&1 | tail -n 12; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
  fi
done
printf '%d passed, %d failed\n' "$passed" "$failed"
((failed == 0))
