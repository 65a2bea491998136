#!/usr/bin/env bash
# What the builder must decide: bearing, rock, setup, crown, prototype, fit, sensitivity; on real and on broken cases.
set -u
bedbow=$1
source_dir=$2
. "$source_dir/tests/cli/lib.sh"
trap 'rm -rf "$dir"' EXIT
hive=$source_dir/cases/hive-lid/case.toml
rocking=$source_dir/cases/rocking-clamp/case.toml
# --- bearing in solve
sed 's/^pin_material.*//; s/pin = "20 mm"/pin = "16 mm"/; s/bearing_length = "30 mm"/bearing_length = "20 mm"/' "$hive" >"$dir/oval.toml"
expect oval 1 "wear oval" "$bedbow" solve "$dir/oval.toml" --out "$dir/oval"
expect oval-reason 1 "(pin pressure) in step" "$bedbow" solve "$dir/oval.toml" --out "$dir/oval"
sed 's/pin = "16 mm"/pin = "16 mm"\nallowed_pressure = "40 MPa"/' "$dir/oval.toml" >"$dir/own.toml"
expect own-allowable 0 "pin pressure: case" "$bedbow" solve "$dir/own.toml" --out "$dir/own"
sed 's/^allowed_pressure.*//' "$hive" >"$dir/cam.toml"
expect cam-contact 1 "cam left reaches" "$bedbow" solve "$dir/cam.toml" --out "$dir/cam"
sed 's/pin_material = "bolt steel 12.9"/pin_material = "butter"/' "$hive" >"$dir/butter.toml"
expect pin-material 2 "butter" "$bedbow" check "$dir/butter.toml"
sed 's/class = "8.8"//' "$hive" >"$dir/classless.toml"
expect classless 0 "posts not checked" "$bedbow" solve "$dir/classless.toml" --out "$dir/classless"
sed 's/^\[clamp.nose\]/[clamp.crown]\nx = ["100 mm", "800 mm"]\nheight = ["0.1 mm"]\n[clamp.nose]/' "$hive" >"$dir/crown.toml"
expect crown-heights 2 "1 heights for 2 places" "$bedbow" check "$dir/crown.toml"
# --- rock
expect rock 0 "Lever: nose force over cam force: 0.672" "$bedbow" rock "$rocking"
expect rock-json 0 '"lever_ratio": 0.672' "$bedbow" rock "$rocking" --json
expect rock-csv 0 "angle_deg,lift_mm,opening_mm,nose_force_N" "$bedbow" rock "$rocking" --csv
expect rock-lift 0 "need cams by \`throw\`" "$bedbow" rock "$hive"
expect rock-files 0 "" "$bedbow" rock "$rocking" --out "$dir/rock"
for f in rock.json turn.csv hand.csv lag.csv; do expect "rock $f" 0 "" test -s "$dir/rock/$f"; done
expect rock-no-unit 2 "--lag" "$bedbow" rock "$rocking" --lag 2
sed 's/y = "112 mm"/y = "20 mm"/' "$rocking" >"$dir/tail.toml"
expect rock-nothing 2 "nothing rocks" "$bedbow" rock "$dir/tail.toml"
expect rock-no-cams 2 "needs [[post]] and [[cam]]" "$bedbow" rock "$source_dir/tests/cases/folder-x.toml"
expect rock-both 2 "excludes" "$bedbow" rock "$rocking" --json --csv
# --- further commands
finish decide
