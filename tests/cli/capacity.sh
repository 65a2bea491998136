#!/usr/bin/env bash
# `bedbow capacity` on the built program.
set -u
bedbow=$1
source_dir=$2
. "$source_dir/tests/cli/lib.sh"
trap 'rm -rf "$dir"' EXIT
case=$dir/case.toml
with_elements "60 mm" "$source_dir/cases/hive-lid/case.toml" >"$case"
run() { "$bedbow" capacity "$case" "$@"; }
expect help 0 "Example" "$bedbow" capacity --help
expect table 0 "limited by" run --csv "$dir/c.csv" --svg "$dir/c.svg"
[ "$(head -1 "$dir/c.csv")" = "material,width_mm,centre_mm,thickness_mm,limited_by" ] && ok || bad "head: $(head -1 "$dir/c.csv")"
expect picture 0 "<svg" head -c 200 "$dir/c.svg"
[ "$(grep -c '>post<' "$dir/c.svg")" -eq 4 ] && ok || bad "the four posts are not in the picture"
run --widths "300 mm" "600 mm" --centres "450 mm" --threads 1 --json >"$dir/one.json"
run --widths "300 mm" "600 mm" --centres "450 mm" --threads 3 --json >"$dir/three.json"
same threads "$dir/one.json" "$dir/three.json"
for key in '"rows"' '"width_mm"' '"centre_mm"' '"thickness_mm"' '"limited_by"'; do
  grep -q "$key" "$dir/one.json" && ok || bad "no $key in the JSON"
done
expect report 0 "report.html" run --widths "300 mm" --report --out "$dir/out"
expect report-page 0 "300.0 mm wide" grep -o "Within the limits the machine bends[^<]*" "$dir/out/report.html"
# A softer sheet may be thicker; 304 hardens far more than DC01.
run --widths "600 mm" --centres "450 mm" --materials DC01 304 --json >"$dir/two.json"
grep -o '"thickness_mm": [0-9.]*' "$dir/two.json" | cut -d' ' -f2 | { read -r a; read -r b; awk -v a="$a" -v b="$b" 'BEGIN { exit !(a > b) }'; } &&
  ok || bad "DC01 and 304: $(cat "$dir/two.json")"
expect two-pictures 0 "" run --widths "600 mm" --materials DC01 S355JR --svg "$dir/m.svg"
expect picture-each 0 "" test -s "$dir/m-S355JR.svg"
expect unknown-material 2 "nearest is" run --materials DC011
expect off-the-bed 2 "no sheet" run --widths "300 mm" --centres "0 mm"
sed '/^\[limits\]/,/^$/d' "$case" >"$dir/free.toml"
expect no-limits 2 "[limits]" "$bedbow" capacity "$dir/free.toml"
finish cli.capacity
