#!/usr/bin/env bash
# `bedbow stock` on the built program.
set -u
bedbow=$1
source_dir=$2
. "$source_dir/tests/cli/lib.sh"
trap 'rm -rf "$dir"' EXIT
case=$dir/case.toml
with_elements "60 mm" "$source_dir/cases/hive-lid-stock/case.toml" >"$case"
run() { "$bedbow" stock "$case" --bars clamp.plate clamp.rib "$@"; }
expect help 0 "Example" "$bedbow" stock --help
expect table 0 "Cut list" run
run --json --threads 1 >"$dir/one.json"
run --json --threads 3 >"$dir/three.json"
same threads "$dir/one.json" "$dir/three.json"
for key in '"cheapest"' '"lightest"' '"cut_list"' '"cost"' '"length_mm"' '"bars_of_this_stock"'; do
  grep -q "$key" "$dir/one.json" && ok || bad "no $key in the JSON"
done
# With every bar free, "the heaviest elsewhere" was once a plate stood on edge, and nothing passed.
expect every-bar 0 "Cut list" "$bedbow" stock "$case"
# Every combination by a separate sweep: the cheapest that passes must be the same. Five flats, two orientations. The rib
# of 12 mm has too little metal around its threads: a sweep lets that pass, stock does not (docs/theory/buildable.md).
rows=""
for f in "120 20" "100 20" "80 16" "80 20" "60 12"; do
  set -- $f
  rows="$rows[\"$1 mm\", \"$2 mm\"], [\"$2 mm\", \"$1 mm\"], "
done
{
  cat "$case"
  echo '[sweep]'
  echo '[[sweep.vary]]'
  echo 'keys = ["clamp.bar.rib.width", "clamp.bar.rib.height"]'
  echo "rows = [${rows%, }]"
} >"$dir/sweep.toml"
"$bedbow" sweep "$dir/sweep.toml" --quiet --out "$dir/sweep" --csv "$dir/sweep.csv"
swept=$(awk -F, 'NR > 1 && $4 == "true" && $1 != "12 mm" && (least == "" || $12 < least) { least = $12 } END { print least }' "$dir/sweep.csv")
chosen=$("$bedbow" stock "$case" --bars clamp.rib --json | grep -m1 -o '"cost": [0-9.]*' | cut -d' ' -f2)
awk -v a="$swept" -v b="$chosen" 'BEGIN { exit !(a > 0 && (a - b) ^ 2 < 1e-12) }' && ok || bad "cheapest by sweep $swept, by stock $chosen"
sed 's/^angle = "0.5 deg"/angle = "0.0001 deg"/' "$case" >"$dir/tight.toml"
expect none-passes 1 "even the heaviest" "$bedbow" stock "$dir/tight.toml"
expect unknown-bar 2 "available: bed.top" run --bars clamp.rip
expect no-stock 2 "[[stock]]" "$bedbow" stock "$source_dir/cases/hive-lid/case.toml"
finish cli.stock
