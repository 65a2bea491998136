#!/usr/bin/env bash
# The built program on valid and broken input: exit codes, messages, and that a failing run leaves old results unchanged.
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
for f in results.json bend_line.csv machine.pvd machine_0.vtu assembly.pvd; do expect "file $f" 0 "" test -s "$dir/out/$f"; done
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
# Without [limits] an overloaded stud used to give "within the limits" and exit 0.
sed -e '/^\[limits\]/,/^$/d' -e 's/preload = "15 kN"/preload = "150 kN"/' "$hive" >"$dir/overload.toml"
expect overload-without-limits 1 "(stud) in step" "$bedbow" solve "$dir/overload.toml" --out "$dir/overload"
expect overload-is-a-limit 1 "post left end reaches" "$bedbow" solve "$dir/overload.toml" --out "$dir/overload"
# A bed of 1 m on a spring of 10 N/mm goes down by 34 mm under 340 N (more than 1/30 of its length), by 30 mm under 300 N;
# as a cantilever it turns by 2 deg at its end under 5.28 kN (F l^2 / 2 E I).
loaded() { # downward newtons, supports of the bar
  cat <<CASE
[bed]
length = "1000 mm"
material = "S275JR"
[[bed.bar]]
name = "bar"
shape = "rectangle"
width = "20 mm"
height = "60 mm"
at = ["10 mm", "-30 mm"]
[[load]]
on = "bed.bar"
at = ["1000 mm", "10 mm", "-30 mm"]
force = ["0 N", "0 N", "-$1 N"]
[[support]]
name = "left"
bar = "bed.bar"
at = ["0 mm", "10 mm", "-30 mm"]
$2
CASE
}
spring='holds = ["x", "y", "z", "rx", "rz"]
[[support]]
name = "right"
bar = "bed.bar"
at = ["1000 mm", "10 mm", "-30 mm"]
holds = ["y", "z"]
stiffness = "10 N/mm"'
loaded 300 "$spring" >"$dir/soft.toml"
loaded 340 "$spring" >"$dir/too-soft.toml"
loaded 6000 'holds = ["x", "y", "z", "rx", "ry", "rz"]' >"$dir/rough.toml"
expect displaced-in-range 0 "within the limits" "$bedbow" solve "$dir/soft.toml" --out "$dir/soft"
expect displaced-too-far 3 "bed turns about y" "$bedbow" solve "$dir/too-soft.toml" --out "$dir/soft"
expect what-gives 3 "support right deflects by 34 mm" "$bedbow" solve "$dir/too-soft.toml" --out "$dir/too-soft"
expect no-file-of-it 1 "" test -e "$dir/too-soft/results.json"
expect displaced-roughly 1 "bed turns by 2." "$bedbow" solve "$dir/rough.toml" --out "$dir/rough"
expect roughly-is-a-warning 1 "is only approximate" "$bedbow" solve "$dir/rough.toml" --out "$dir/rough"
# Sheets that no folder can bend.
sed 's/flange = "25 mm"/flange = "3.4 mm"/' "$hive" >"$dir/flange.toml" # thickness plus radius is 3.5 mm
expect flange-shorter-than-the-bend 2 "shorter than the bend" "$bedbow" check "$dir/flange.toml"
sed -e 's/thickness = "1.5 mm"/thickness = "15 mm"/' -e 's/"11.5 mm"/"25 mm"/' -e 's/"71.5 mm"/"85 mm"/' \
  -e 's/"3.5 mm"/"17 mm"/' -e 's/"63.5 mm"/"77 mm"/' "$hive" >"$dir/plate.toml"
expect plate-is-no-sheet 0 "is plate, not sheet" "$bedbow" check "$dir/plate.toml"
expect plate-lifts-the-clamp 3 "clamp turns about x" "$bedbow" solve "$dir/plate.toml" --out "$dir/plate"
expect unwritable 4 "" "$bedbow" solve "$hive" --out /proc/nowhere
expect wrong-case-again 2 "" "$bedbow" solve "$dir/key.toml" --out "$dir/out"
expect results-untouched 0 "" cmp "$dir/before.json" "$dir/out/results.json"
finish cli
