#!/usr/bin/env bash
# `bedbow modes` on the built program: tables, files, machines that nothing holds, refusals.
set -u
bedbow=$1
source_dir=$2
. "$source_dir/tests/cli/lib.sh"
trap 'rm -rf "$dir"' EXIT
hive=$source_dir/cases/hive-lid/case.toml
head='title = "rod"
[material.m]
E = "210 GPa"
nu = 0.3
density = "7850 kg/m^3"
[[member]]
name = "rod"
from = ["0 mm", "0 mm", "0 mm"]
to = ["0 mm", "0 mm", "1000 mm"]
shape = "round"
diameter = "10 mm"
material = "m"
divisions = 16
'
hold='[[hold]]
at = ["0 mm", "0 mm", "0 mm"]
holds = ["x", "y", "z", "rx", "ry", "rz"]
'
push='[[load]]
at = ["0 mm", "0 mm", "1000 mm"]
force = ["0 N", "0 N", "-200 N"]
'
expect help 0 "Example" "$bedbow" modes --help
expect hive-lid 0 "Natural frequencies" "$bedbow" modes "$hive" --out "$dir/hive"
for f in results.json modes.pvd modes_0.vtu modes_5.vtu buckling.pvd buckling_0.vtu; do
  expect "file $f" 0 "" test -s "$dir/hive/$f"
done
expect json 0 '"frequencies_Hz"' "$bedbow" modes "$hive" --json --out "$dir/hive"
widest=$("$bedbow" modes "$hive" --out "$dir/hive" | grep -v '^Written to' | awk '{ if (length($0) > w) w = length($0) } END { print w + 0 }')
[ "$widest" -le 100 ] && ok || bad "tables are $widest columns wide"
expect report 0 "report.html" "$bedbow" modes "$hive" --report --out "$dir/hive"
expect report-page 0 "lowest natural frequency" grep -o "The lowest natural frequency[^<]*" "$dir/hive/report.html"
# Fewer shapes than before: surplus files are removed.
expect fewer 0 "" "$bedbow" modes "$hive" --modes 2 --buckling 0 --out "$dir/hive"
expect left-over 1 "" test -e "$dir/hive/modes_2.vtu"
expect left-over 1 "" test -e "$dir/hive/buckling.pvd"
# A report and plots of an earlier solve do not outlive the results that they show.
expect report 0 "report.html" "$bedbow" solve "$hive" --report --plots --out "$dir/hive"
expect report-there 0 "" test -s "$dir/hive/report.html"
expect modes-again 0 "" "$bedbow" modes "$hive" --modes 2 --out "$dir/hive"
expect report-gone 1 "" test -e "$dir/hive/report.html"
expect plots-gone 1 "" test -e "$dir/hive/bow_clamp.svg"
# Nothing holds the rod: six named rigid-body modes at 0 Hz instead of a failure; solve still refuses.
printf '%s' "$head" >"$dir/free.toml"
expect free 0 "member rod slides along x" "$bedbow" modes "$dir/free.toml" --modes 8 --out "$dir/free"
expect free-says-why 0 "modes only, without loads" "$bedbow" modes "$dir/free.toml" --out "$dir/free"
expect free-solve 3 "can slide along x" "$bedbow" solve "$dir/free.toml" --out "$dir/free-solve"
# A rod without density swings at any frequency: "part 1 could not be factored at unknown 96", exit 3, named nothing.
sed '/^density/d' "$dir/free.toml" >"$dir/weightless.toml"
expect weightless 2 "natural frequencies need masses, and member rod has none: give \`density\` of material m" "$bedbow" modes "$dir/weightless.toml" --out "$dir/free"
# Euler's column: pi^3 E d^4 / 64 / (4 L^2) = 254.3 N, 1.27 times the load, under the limit of 3.
printf '%s%s%s' "$head" "$hold" "$push" >"$dir/column.toml"
expect column 1 "buckles at 1.27 times" "$bedbow" modes "$dir/column.toml" --out "$dir/column"
expect column-in-solve 1 "buckles at 1.27 times" sh -c "sed '1a [solve]\nbuckling = 1' '$dir/column.toml' >'$dir/c2.toml' && '$bedbow' solve '$dir/c2.toml' --out '$dir/c2'"
expect limit 0 "1.27" sh -c "sed '1a [limits]\nbuckling = 1.2' '$dir/column.toml' >'$dir/c3.toml' && '$bedbow' modes '$dir/c3.toml' --out '$dir/c3'"
expect quiet 1 "" "$bedbow" modes "$dir/column.toml" --quiet --out "$dir/column"
# Refusals, each leaving the results of the last run alone.
cp "$dir/column/results.json" "$dir/before.json"
expect no-step 2 'unknown step "bend"; available: "load"' "$bedbow" modes "$dir/column.toml" --step bend --out "$dir/column"
expect negative 2 "--modes" "$bedbow" modes "$dir/column.toml" --modes -3
expect too-many 2 "--modes" "$bedbow" modes "$dir/column.toml" --modes 5000
expect no-file 4 "none.toml" "$bedbow" modes "$dir/none.toml"
sed '1a [solve]\nmass = "heavy"' "$dir/column.toml" >"$dir/mass.toml"
expect no-such-mass 2 "not one of consistent, lumped" "$bedbow" modes "$dir/mass.toml" --out "$dir/column"
expect unwritable 4 "" "$bedbow" modes "$dir/free.toml" --out /proc/nowhere
same results-untouched "$dir/before.json" "$dir/column/results.json"
finish modes
