#!/usr/bin/env bash
# `bedbow posts` on the built program.
set -u
bedbow=$1
source_dir=$2
. "$source_dir/tests/cli/lib.sh"
trap 'rm -rf "$dir"' EXIT
case=$dir/case.toml
with_elements "60 mm" "$source_dir/cases/hive-lid/case.toml" >"$case"
run() { "$bedbow" posts "$case" --out "$dir/out" "$@"; }
expect help 0 "Example" "$bedbow" posts --help
expect table 0 "passes" run --count 2..3 --between "40 mm" "860 mm"
expect plot 0 "<svg" head -c 400 "$dir/out/posts.svg"
expect report 0 "report.html" run --count 2 --between "40 mm" "860 mm" --report
expect report-page 0 "2 posts at x = " grep -o "2 posts at x = [^<]*" "$dir/out/report.html"
expect bow 0 '"smallest": ' run --count 2..3 --for bow --between "40 mm" "860 mm" --json
run --count 2..3 --for bow --between "40 mm" "860 mm" --json --threads 1 >"$dir/one.json"
run --count 2..3 --for bow --between "40 mm" "860 mm" --json --threads 3 >"$dir/three.json"
same threads "$dir/one.json" "$dir/three.json"
for key in '"counts"' '"count"' '"x_mm"' '"angle_spread_deg"' '"clamp_bow_mm"' '"clamp_straightness_mm"' '"worst_utilisation"' '"pass"'; do
  grep -q "$key" "$dir/one.json" && ok || bad "no $key in the JSON"
done
expect spacings 0 "spacing mm" run --count 4 --spacings "200 mm" "270 mm"
# The freest layout crowds its posts, which loads the screws beyond the case's own limit.
sed 's/^utilisation = .*/utilisation = 1.0/' "$case" >"$dir/strong.toml"
expect free 0 "passes" "$bedbow" posts "$dir/strong.toml" --count 3 --free --between "40 mm" "860 mm" --out "$dir/out"
sed 's/^angle = "0.5 deg"/angle = "0.001 deg"/' "$case" >"$dir/tight.toml"
expect none-passes 1 "no layout keeps" "$bedbow" posts "$dir/tight.toml" --count 2 --out "$dir/out"
expect no-room 2 "do not fit" run --count 8 --between "400 mm" "500 mm"
expect wrong-count 2 "--count" run --count two
expect wrong-goal 2 "" run --for beauty
expect no-unit 2 "--between" run --between 40 860
finish cli.posts
