#!/usr/bin/env bash
# The built program on real and broken input: exit codes, messages, and that a failing run leaves old results alone.
set -u
bedbow=$1
source_dir=$2
. "$source_dir/tests/cli/lib.sh"
trap 'rm -rf "$dir"' EXIT
hive=$source_dir/cases/hive-lid/case.toml
expect help 0 "Example" "$bedbow" solve --help
expect list 0 "S275JR" "$bedbow" list
expect check 0 "beam elements" "$bedbow" check "$hive"
expect solve 0 "Verdict" "$bedbow" solve "$hive" --out "$dir/out"
for f in results.json bend_line.csv assembly.pvd assembly_0.vtu; do expect "file $f" 0 "" test -s "$dir/out/$f"; done
expect cross-check 0 "" "$bedbow" solve "$source_dir/tests/cases/folder-x.toml" --quiet --out "$dir/x"
# Seven steps need three fingers: 2^m - 1 >= 7 (counting bound).
expect fingers 0 '"pieces_mm": [10, 20, 40]' "$bedbow" fingers --length "70 mm" --step "10 mm" --json
expect fingers-not-made 0 "40.00  can't be made" "$bedbow" fingers --length "80 mm" --step "10 mm" --pieces "10 mm" "20 mm" "50 mm"
expect fingers-no-unit 2 "has no unit" "$bedbow" fingers --length 70 --step "10 mm"
expect no-command 2 "" "$bedbow"
expect missing-file 4 "" "$bedbow" solve "$dir/none.toml"
expect directory 4 "" "$bedbow" solve "$dir"
: >"$dir/empty.toml"
expect empty 2 "" "$bedbow" check "$dir/empty.toml"
sed 's/width = "600 mm"/width = 600/' "$hive" >"$dir/unit.toml"
expect no-unit 2 "width" "$bedbow" check "$dir/unit.toml"
sed 's/flange = /flannge = /' "$hive" >"$dir/key.toml"
expect unknown-key 2 "flange" "$bedbow" check "$dir/key.toml"
sed 's/bed.top", "clamp.plate/bed.topp", "clamp.plate/' "$hive" >"$dir/bar.toml"
expect unknown-bar 2 "topp" "$bedbow" check "$dir/bar.toml"
sed 's/bow = "0.25 mm"/bow = "0.001 mm"/' "$hive" >"$dir/limit.toml"
expect limit 1 "limit" "$bedbow" solve "$dir/limit.toml" --out "$dir/limit"
cp "$dir/out/results.json" "$dir/before.json"
expect unwritable 4 "" "$bedbow" solve "$hive" --out /proc/nowhere
expect wrong-case-again 2 "" "$bedbow" solve "$dir/key.toml" --out "$dir/out"
expect results-untouched 0 "" cmp "$dir/before.json" "$dir/out/results.json"
finish cli
