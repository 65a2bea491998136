#!/usr/bin/env bash
# `bedbow sweep` on the built program: exact columns, threads, resuming, shards, merging, refusals.
set -u
bedbow=$1
source_dir=$2
. "$source_dir/tests/cli/lib.sh"
trap 'rm -rf "$dir"' EXIT
case=$dir/case.toml
small_sweep "$case" 2 # 2 x 3 x 5 = 30 variants
run() { "$bedbow" sweep "$case" --quiet "$@"; }
expect help 0 "Example" "$bedbow" sweep --help
expect merge-help 0 "Example" "$bedbow" sweep merge --help
expect one-thread 0 "" run --out "$dir/one" --threads 1 --csv "$dir/one.csv"
expect four-threads 0 "" run --out "$dir/four" --threads 4 --csv "$dir/four.csv"
same threads "$dir/one.csv" "$dir/four.csv"
head='clamp.bar.rib.height,clamp.bar.rib.width,post.left middle.x,post.right middle.x,status,pass,clamp_bow_mm,bed_bow_mm,apron_bow_mm,angle_mean_deg,angle_spread_deg,utilisation,mass_kg,cost,message'
[ "$(head -1 "$dir/one.csv")" = "$head" ] && ok || bad "head of the CSV: $(head -1 "$dir/one.csv")"
[ "$(wc -l <"$dir/one.csv")" -eq 31 ] && ok || bad "rows of the CSV"
# Every combination, the last one changing fastest.
[[ "$(sed -n 2p "$dir/one.csv")" == "60 mm,12 mm,200 mm,700 mm,ok,"* ]] && ok || bad "first row"
[[ "$(sed -n 7p "$dir/one.csv")" == "60 mm,16 mm,200 mm,700 mm,ok,"* ]] && ok || bad "sixth row"
# A variant has the same results as solving that machine on its own.
sed -e 's/^height = "100 mm"/height = "120 mm"/' -e 's/^x = "310 mm"/x = "400 mm"/' -e 's/^x = "590 mm"/x = "500 mm"/' \
  "$case" >"$dir/last.toml"
"$bedbow" solve "$dir/last.toml" --quiet --out "$dir/last"
# The steps only: the slip bounds of screwed machines, further down, contain spreads that are not the answer.
solved=$(sed '/^ "bracket"/,$d' "$dir/last/results.json" | grep -o '"angle_spread_deg": [0-9.e-]*' | sort -t: -k2 -g | tail -1 | cut -d' ' -f2)
stored=$(tail -1 "$dir/one.csv" | cut -d, -f11)
awk -v a="$solved" -v b="$stored" 'BEGIN { exit !(a > 0 && (a - b) ^ 2 < (1e-9 * a) ^ 2) }' && ok ||
  bad "last variant: solve says $solved, sweep $stored"
expect again 0 "30 of 30" "$bedbow" sweep "$case" --out "$dir/one"
expect front 0 "" test -s "$dir/one/front.svg"
expect parts 0 "" run --out "$dir/p1" --shard 1/3
expect parts 0 "" run --out "$dir/p2" --shard 2/3
expect parts 0 "" run --out "$dir/p3" --shard 3/3
expect no-part 2 "K/N" run --shard 4/3
expect merged 0 "30 of 30" "$bedbow" sweep merge "$dir/p1" "$dir/p2" "$dir/p3/variants.db" --out "$dir/whole" --csv "$dir/whole.csv"
same merged "$dir/one.csv" "$dir/whole.csv"
expect merged-report 0 "" "$bedbow" sweep merge "$dir/p1" --out "$dir/whole" --report
expect merged-page 0 "variants keep" grep -o "variants keep the limits" "$dir/whole/report.html"
expect whole-report 0 "report.html" "$bedbow" sweep "$case" --out "$dir/whole" --report
expect whole-page 0 "Variant" grep -o "<h2>Variant[^<]*" "$dir/whole/report.html"
expect merged-again 0 "30 of 30" "$bedbow" sweep merge "$dir/p1" --out "$dir/whole"
sqlite3 "$dir/p2/variants.db" "UPDATE variant SET mass_kg = mass_kg + 1 WHERE id = 4"
expect disagree 2 "variant 4" "$bedbow" sweep merge "$dir/p2" --out "$dir/whole"
sed 's/angle = "0.32 deg"/angle = "0.3 deg"/' "$case" >"$dir/changed.toml"
expect changed 2 "--fresh" "$bedbow" sweep "$dir/changed.toml" --quiet --out "$dir/one"
expect fresh 0 "" "$bedbow" sweep "$dir/changed.toml" --quiet --out "$dir/one" --fresh
expect kept 0 "30" sqlite3 "$(ls "$dir"/one/variants-*.db)" "SELECT count(*) FROM variant"
# A variant that can't be solved is recorded, and the others go on.
sed 's/"200 mm", "700 mm"/"-200 mm", "700 mm"/' "$case" >"$dir/off.toml"
expect failing 0 "6 failed" "$bedbow" sweep "$dir/off.toml" --out "$dir/off" --csv "$dir/off.csv"
[[ "$(sed -n 2p "$dir/off.csv")" == *",failed,false,,,,,,,,,"*[a-z]* ]] && ok || bad "failed row: $(sed -n 2p "$dir/off.csv")"
# A Latin hypercube depends on its seed only.
for seed in 1 2; do
  sed "s/^\[sweep\].*/[sweep]\nsample = 12\nseed = $seed/" "$case" >"$dir/s$seed.toml"
  expect sample 0 "" "$bedbow" sweep "$dir/s$seed.toml" --quiet --out "$dir/s$seed" --csv "$dir/s$seed.csv"
done
expect sample-again 0 "" "$bedbow" sweep "$dir/s1.toml" --quiet --out "$dir/s1b" --threads 1 --csv "$dir/s1b.csv"
same seed "$dir/s1.csv" "$dir/s1b.csv"
[ "$(wc -l <"$dir/s1.csv")" -eq 13 ] && ! cmp -s "$dir/s1.csv" "$dir/s2.csv" && ok || bad "seeds"
expect nothing-to-vary 2 "[sweep]" "$bedbow" sweep "$source_dir/cases/hive-lid/case.toml" --out "$dir/none"
expect unwritable 4 "" run --out /proc/nowhere
# Ctrl-C ends cleanly, and a second process is refused meanwhile.
small_sweep "$dir/long.toml" 2000
"$bedbow" sweep "$dir/long.toml" --quiet --out "$dir/long" 2>"$dir/said" &
pid=$!
while ! sqlite3 "$dir/long/variants.db" "SELECT 1 FROM variant LIMIT 1" 2>/dev/null | grep -q 1; do sleep 0.1; done
expect second 4 "process $pid" "$bedbow" sweep "$dir/long.toml" --quiet --out "$dir/long"
kill -INT $pid
wait $pid
[ $? -eq 130 ] && grep -q "interrupted: [1-9]" "$dir/said" && ok || bad "Ctrl-C: $(cat "$dir/said")"
expect sound 0 "ok" sqlite3 "$dir/long/variants.db" "PRAGMA integrity_check"
finish cli.sweep
