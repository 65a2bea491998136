#!/usr/bin/env bash
# An interrupted sweep loses at most the variants in progress: 20 kills at random moments, and a full disk (a limited
# file size). Resumed to the end it equals an uninterrupted run.
set -u
bedbow=$1
source_dir=$2
. "$source_dir/tests/cli/lib.sh"
trap 'rm -rf "$dir"' EXIT
seed=${BEDBOW_KILL_SEED:-$$}
RANDOM=$seed
echo "moments of the kills by seed $seed (BEDBOW_KILL_SEED=$seed repeats them)"
case=$dir/case.toml
small_sweep "$case" 200 # 3000 variants
run() { "$bedbow" sweep "$case" --quiet --out "$1" --csv "$1.csv"; }
count() { sqlite3 "$1/variants.db" "SELECT count(*) FROM variant" 2>/dev/null || echo 0; }
expect uninterrupted 0 "" run "$dir/whole"
kills=0
before=0
for i in $(seq 20); do
  "$bedbow" sweep "$case" --quiet --out "$dir/killed" 2>/dev/null &
  pid=$!
  sleep "0.$(printf '%03d' $((RANDOM % 300)))"
  kill -KILL $pid 2>/dev/null && kills=$((kills + 1))
  wait $pid 2>/dev/null
  if [ -s "$dir/killed/variants.db" ]; then
    now=$(count "$dir/killed")
    [ "$now" -ge "$before" ] || bad "kill $i: $before results were there, now $now"
    before=$now
    # On a fast machine the sweep may already be finished: start again, so that every kill hits a running sweep.
    [ "$now" -eq 3000 ] && rm -rf "$dir/killed" && before=0
  fi
done
[ "$kills" -eq 20 ] && ok || bad "only $kills of 20 runs were killed at work"
expect resumed 0 "" run "$dir/killed"
same "killed and resumed" "$dir/whole.csv" "$dir/killed.csv"
expect sound 0 "ok" sqlite3 "$dir/killed/variants.db" "PRAGMA integrity_check"

limited() { # KiB that a file may have
  (
    ulimit -f "$1"
    run "$dir/full"
  )
}
for size in 60 120 200; do
  expect "full disk at $size KiB" 4 "variants.db" limited $size
  expect "sound at $size KiB" 0 "ok" sqlite3 "$dir/full/variants.db" "PRAGMA integrity_check"
done
[ "$(count "$dir/full")" -gt 0 ] && ok || bad "nothing was kept before the disk was full"
expect "room again" 0 "" run "$dir/full"
same "full and resumed" "$dir/whole.csv" "$dir/full.csv"
finish cli.sweep_kill
