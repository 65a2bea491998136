#!/usr/bin/env bash
# Strength, rock, setup, crown, prototype, fit, fingers and sensitivity, on valid and broken cases.
set -u
bedbow=$1
source_dir=$2
. "$source_dir/tests/cli/lib.sh"
trap 'rm -rf "$dir"' EXIT
hive=$source_dir/cases/hive-lid/case.toml
rocking=$source_dir/cases/rocking-clamp/case.toml
# --- strength checks in solve
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
# who reads "within the limits" has to know what was not judged: it was among thirty assumptions
expect classless-warned 0 "posts not checked" python3 -c 'import json, sys; print(json.load(open(sys.argv[1]))["warnings"])' "$dir/classless/results.json"
sed 's/^material = "S275JR"/material = "plain"/; 1i [material.plain]\nE = "210 GPa"\nnu = 0.3\ndensity = "7850 kg/m^3"' "$hive" |
  sed '/^title/d' >"$dir/plain.toml"
expect yieldless-warned 0 "stress not checked (bed.top, bed.web, clamp.plate, clamp.rib, apron.face, apron.rib): give \`yield\` of material plain" \
  "$bedbow" solve "$dir/plain.toml" --json
# overloaded studs left crown and rock with exit 0 and without a word
sed 's/preload = "15 kN"/preload = "150 kN"/; /^\[limits\]/,/^$/d' "$hive" >"$dir/torn.toml"
expect torn-crown 1 "over its limit: post left end reaches a utilisation of" "$bedbow" crown "$dir/torn.toml" --places 3
expect torn-rock 1 "over its limit: post left end reaches a utilisation of" "$bedbow" rock "$dir/torn.toml"
sed 's/^\[clamp.nose\]/[clamp.crown]\nx = ["100 mm", "800 mm"]\nheight = ["0.1 mm"]\n[clamp.nose]/' "$hive" >"$dir/crown.toml"
expect crown-heights 2 "1 heights for 2 places" "$bedbow" check "$dir/crown.toml"
# --- the swing: a builder wants to know about collisions before the bars are cut
expect swing-limit 0 "greatest bend as drawn: 95.4 deg, where the flange meets clamp.plate" "$bedbow" check "$hive"
sed 's/at = \["40 mm", "71.5 mm"\]/at = ["13.5 mm", "71.5 mm"]/' "$hive" >"$dir/front.toml" # the rib on the plate's edge
expect swing-deflected 0 "apron.face meets clamp.rib at 92." "$bedbow" check "$dir/front.toml"
# --- rock
expect rock 0 "Lever: nose force over cam force: 0.712" "$bedbow" rock "$rocking"
expect rock-json 0 '"lever_ratio": 0.7118' "$bedbow" rock "$rocking" --json
# As beams, whose nose presses with the middle of its land; one that turns presses with its rear edge.
as_beams "$rocking" >"$dir/rocking-beams.toml"
as_beams "$hive" >"$dir/hive-beams.toml"
expect rock-lever 0 '"lever_force_N": 12627.6955979' "$bedbow" rock "$dir/rocking-beams.toml" --json # moments about the posts
expect rock-preload 0 "24.950    24.950    24.950" "$bedbow" rock "$dir/hive-beams.toml" # 4 x 15 kN x 42/101
expect rock-csv 0 "angle_deg,lift_mm,opening_mm,nose_force_N,lever_force_N" "$bedbow" rock "$rocking" --csv
expect rock-lift 0 "need cams by \`throw\`" "$bedbow" rock "$hive"
expect rock-lag 0 "rigid left kN" "$bedbow" rock "$rocking" --lag "0.5 deg"
expect rock-files 0 "" "$bedbow" rock "$rocking" --out "$dir/rock"
for f in rock.json turn.csv hand.csv lag.csv turn.svg; do expect "rock $f" 0 "" test -s "$dir/rock/$f"; done
expect rock-no-unit 2 "--lag" "$bedbow" rock "$rocking" --lag 2
sed 's/y = "112 mm"/y = "60 mm"/' "$rocking" >"$dir/tail.toml"
expect rock-nothing 2 "does not rock" "$bedbow" rock "$dir/tail.toml"
expect rock-no-cams 2 "needs [[post]] and [[cam]]" "$bedbow" rock "$source_dir/tests/cases/folder-x.toml"
expect rock-both 2 "excludes" "$bedbow" rock "$rocking" --json --csv
# --- setup
expect setup 0 "swing to" "$bedbow" setup "$hive" --thickness "1 mm" "1.5 mm" --reach "400 mm" --legs "30 mm" "100 mm"
expect setup-json 0 '"springback_deg"' "$bedbow" setup "$hive" --thickness "16 ga" --json
expect setup-csv 0 "thickness_mm,least_radius_mm" "$bedbow" setup "$hive" --csv
for t in clamp apron nuts; do expect "setup-csv-$t" 0 "thickness_mm," "$bedbow" setup "$hive" --csv --table $t; done
expect setup-table 2 "available: bend, clamp, apron, nuts" "$bedbow" setup "$hive" --csv --table wings
expect setup-setback 0 "1.5,3.5,1.5,0," "$bedbow" setup "$hive" --csv --table clamp # t + r, t
expect setup-inch 0 '"setback_mm": 4.51892' "$bedbow" setup "$hive" --thickness "0.0598 in" --json
fits() { [ "$("$@" 2>&1 | awk 'length > 100' | wc -l)" -eq 0 ] && ok || bad "wider than 100 columns: $*"; }
for c in hive-lid rocking-clamp roof-flashing; do
  with_elements "100 mm" "$source_dir/cases/$c/case.toml" >"$dir/$c.toml"
  fits "$bedbow" setup "$dir/$c.toml" --reach "400 mm"
  fits "$bedbow" prototype "$dir/$c.toml" --material "northern red oak"
done
fits "$bedbow" rock "$rocking"
fits "$bedbow" crown "$hive"
fits "$bedbow" fit "$source_dir/cases/trestle-fit/case.toml"
expect setup-limit 1 "over the limits" "$bedbow" setup "$hive" --thickness "4 mm"
expect setup-roof 0 "swing to" "$bedbow" setup "$source_dir/cases/roof-flashing/case.toml" --thickness "0.5 mm" "0.6 mm"
expect setup-cam-angle 0 "140.000" "$bedbow" setup "$rocking" # the case's own sheet
expect setup-no-unit 2 "--thickness" "$bedbow" setup "$hive" --thickness 1.5
expect setup-effort 2 "unknown effort limit" "$bedbow" setup "$hive" --effort "teeth"
expect setup-no-sheet 2 "needs [sheet]" "$bedbow" setup "$source_dir/cases/trestle-bed/case.toml"
# --- crown
expect crown 0 "shims from the stock" "$bedbow" crown "$hive" --stock "0.02 mm" "0.05 mm"
expect crown-json 0 '"shims"' "$bedbow" crown "$hive" --json
expect crown-csv 0 "x_mm,height_mm,shim_mm,pieces" "$bedbow" crown "$hive" --csv
expect crown-rod 0 "Tension" "$bedbow" crown "$hive" --on apron --aim straight --rod "-60 mm"
expect crown-files 0 "" "$bedbow" crown "$hive" --out "$dir/crown"
expect crown-plot 0 "from the stock" cat "$dir/crown/shims.svg"
expect crown-step 2 "unknown step" "$bedbow" crown "$hive" --step nothing
expect crown-aim 2 "" "$bedbow" crown "$hive" --aim sideways
expect crown-stock 2 "--stock" "$bedbow" crown "$hive" --stock 0.05
expect crown-no-sheet 2 "needs [sheet]" "$bedbow" crown "$source_dir/cases/trestle-bed/case.toml"
# --- prototype
expect prototype 0 "times as much as E alone would predict" "$bedbow" prototype "$hive" --material "Douglas-fir" --scale 0.5
expect prototype-json 0 '"load_scale"' "$bedbow" prototype "$hive" --material "sugar maple" --json
expect prototype-parts 0 "Ratio of shear and twist contributions (G): 2.709" "$bedbow" prototype "$hive" --material "Douglas-fir" --scale 0.5
expect prototype-shares 0 "body,of,bending,shear,joints,set" "$bedbow" prototype "$hive" --material beech --csv --table shares
expect prototype-hand 0 "hand at handle left" "$bedbow" prototype "$hive" --material beech --reach "400 mm"
expect prototype-dials 0 "clamp middle" "$bedbow" prototype "$source_dir/cases/roof-flashing/case.toml" --material beech
expect prototype-bed 0 "left end" "$bedbow" prototype "$source_dir/cases/trestle-fit/case.toml" --material beech
expect prototype-csv 0 "body,machine_mm,prototype_mm" "$bedbow" prototype "$hive" --material beech --csv
expect prototype-material 2 "unknown material" "$bedbow" prototype "$hive" --material butter
expect prototype-scale 2 "" "$bedbow" prototype "$hive" --material beech --scale 0
# --- fit
trestle=$source_dir/cases/trestle-fit/case.toml
expect fit 0 "standard error" "$bedbow" fit "$trestle"
expect fit-json 0 '"value_si"' "$bedbow" fit "$trestle" --json
expect fit-csv 0 "key,start,value" "$bedbow" fit "$trestle" --csv
expect fit-nothing 2 "nothing to fit" "$bedbow" fit "$hive"
expect fit-step 2 "unknown step" "$bedbow" fit "$trestle" --step bend
sed 's/^reading = .*//' "$trestle" >"$dir/unread.toml"
expect fit-unread 2 "nothing was measured" "$bedbow" fit "$dir/unread.toml"
# --- fingers
expect fingers-csv 0 "120,120,10 20 30 60" "$bedbow" fingers --length "120 mm" --step "10 mm" --fill --csv
expect fingers-csv-none 0 "40,," "$bedbow" fingers --length "80 mm" --step "10 mm" --pieces "10 mm" "20 mm" "50 mm" --csv
expect fingers-bound 0 "counting bound" "$bedbow" fingers --length "80 mm" --step "10 mm"
expect fingers-caution 0 '"cautions"' "$bedbow" fingers --length "80 mm" --step "10 mm" --json
expect fingers-out 0 "" "$bedbow" fingers --length "80 mm" --step "10 mm" --out "$dir/fingers"
for f in fingers.json fingers.csv; do expect "fingers $f" 0 "" test -s "$dir/fingers/$f"; done
expect fingers-both 2 "excludes" "$bedbow" fingers --length "80 mm" --step "10 mm" --json --csv
# --- holds among the supports
cat >"$dir/post.toml" <<'TOML'
[material.steel]
E = "210 GPa"
nu = 0.3
[[member]]
name = "post"
from = ["0 mm", "0 mm", "0 mm"]
to = ["0 mm", "0 mm", "500 mm"]
shape = "round"
diameter = "20 mm"
material = "steel"
[[hold]]
at = ["0 mm", "0 mm", "0 mm"]
holds = ["x", "y", "z", "rx", "ry", "rz"]
[[load]]
at = ["0 mm", "0 mm", "500 mm"]
force = ["0 N", "-40 N", "-30 N"]
TOML
expect hold 0 "hold 1" "$bedbow" solve "$dir/post.toml" --out "$dir/post"
expect hold-force 0 '"force_N": 50.0' "$bedbow" solve "$dir/post.toml" --out "$dir/post" --json # 3-4-5
# --- sensitivity: some sixty analyses each, so one of the case's machine and the others of beams
"$bedbow" solve "$hive" --sensitivity >"$dir/moves.txt" 2>&1 && ok || bad "sensitivity"
for text in "sheet.thickness" "DC01: K" "0.1 mm*"; do expect "moves $text" 0 "$text" grep -F "$text" "$dir/moves.txt"; done
fits cat "$dir/moves.txt"
as_beams "$source_dir/cases/roof-flashing/case.toml" >"$dir/roof-beams.toml"
expect sensitivity-friction 0 "post.left.preload" "$bedbow" solve "$dir/roof-beams.toml" --sensitivity
expect sensitivity-bed 0 "support.left trestle.stiffness" "$bedbow" solve "$source_dir/cases/trestle-fit/case.toml" --sensitivity
expect sensitivity-csv 0 "quantity,by,bed_bow_mm,clamp_bow_mm,apron_bow_mm,bow_error_mm" "$bedbow" solve "$dir/hive-beams.toml" --sensitivity --csv
expect sensitivity-json 0 '"angle_spread_error_deg"' "$bedbow" solve "$dir/hive-beams.toml" --sensitivity --json
expect csv-alone 2 "requires" "$bedbow" solve "$hive" --csv
for command in rock setup crown prototype fit; do expect "$command-help" 0 "Example" "$bedbow" $command --help; done
finish decide
