#!/usr/bin/env bash
# Plugins built from outside the source tree: the two examples do their work, and broken ones are refused in words.
set -u
bedbow=$1
source_dir=$2
. "$source_dir/tests/cli/lib.sh"
trap 'rm -rf "$dir"' EXIT
mkdir -p "$dir/include/bedbow"
cp "$source_dir/io/bedbow_plugin.h" "$dir/include/bedbow/plugin.h"
build() { cc -std=c11 -O2 -fPIC -shared -I"$dir/include" -o "$dir/$1.so" "$2" -lm; }
for name in measured_moment clamp_evenness; do expect "build $name" 0 "" build $name "$source_dir/docs/plugins/$name.c"; done
hive=$source_dir/cases/hive-lid/case.toml
sed -e '/^moment_law/d' -e 's/^\[sheet\].*/&\nmoment_law = "measured"/' "$hive" >"$dir/measured.toml"

expect list 0 "measured_moment.so 1.0" "$bedbow" list --plugin "$dir/measured_moment.so"
# 1.5 mm stands in the table itself: 160 N mm/mm.
moment() { "$bedbow" solve "$dir/measured.toml" --plugin "$dir/measured_moment.so" --out "$dir/out" --json |
  /usr/bin/python3 -c 'import json,sys; r=json.load(sys.stdin); print("moment", round(r["sheet"]["moment_N_mm_per_mm"], 9), r["plugins"])'; }
expect law 0 "moment 160.0 ['measured_moment.so: measured 1.0']" moment
expect law-unknown 2 "measured" "$bedbow" solve "$dir/measured.toml" --out "$dir/none"
sed 's/^thickness = "1.5 mm"/thickness = "4 mm"/' "$dir/measured.toml" >"$dir/thick.toml"
expect law-refuses 2 "4.00 mm was not measured" "$bedbow" solve "$dir/thick.toml" --plugin "$dir/measured_moment.so" --out "$dir/none"
# The finding against the same numbers taken from bend_line in results.json.
evenness() { "$bedbow" solve "$hive" --plugin "$dir/clamp_evenness.so" --out "$dir/out" --json | /usr/bin/python3 -c '
import json, sys
r = json.load(sys.stdin)
steps = [[v for v in s["bend_line"]["clamp_N_per_mm"] if v is not None] for s in r["steps"]]
found = r["findings"]["clamp evenness"]
most = max(map(max, steps)); least = min(min(s) / max(s) for s in steps if max(s) > 0)
print("same" if abs(found["greatest_N_per_mm"] - most) < 1e-6 * most and abs(found["least_over_greatest"] - least) < 1e-6 else (found, most, least))'; }
expect finding 0 "same" evenness

printf '[plugins]\nfiles = ["measured_moment.so"]\n' | cat "$dir/measured.toml" - >"$dir/asks.toml"
expect no-leave 2 "--allow-plugins" "$bedbow" check "$dir/asks.toml"
expect leave 0 "No problems" "$bedbow" check "$dir/asks.toml" --allow-plugins

broken() { # name, what to replace in the law, by what, wanted code, wanted text
  sed "s|$2|$3|" "$source_dir/docs/plugins/measured_moment.c" >"$dir/$1.c"
  cmp -s "$dir/$1.c" "$source_dir/docs/plugins/measured_moment.c" && { failed=$((failed + 1)); echo "FAIL $1: nothing replaced"; }
  build "$1" "$dir/$1.c" || failed=$((failed + 1))
  expect "$1" "$4" "$5" "$bedbow" solve "$dir/measured.toml" --plugin "$dir/$1.so" --out "$dir/none"
}
broken version '{BEDBOW_PLUGIN_INTERFACE,' '{99,' 2 "speaks interface version 99"
broken size 'sizeof entry,' '16,' 2 "its entry has 16 bytes"
broken kind '"moment law",' '"bender",' 2 "there are: moment law, section shape"
broken no-name '"measured",' '"",' 2 "must not be empty"
broken table-size '{sizeof law, moment}' '{8, moment}' 2 "its table of functions has 8 bytes"
broken no-function '{sizeof law, moment}' '{sizeof law, NULL}' 2 "lacks its function"
broken taken '"measured",' '"rigid-plastic",' 2 "registered twice"
broken nan '\*out = moment_N\[i\] + s \* (moment_N\[i + 1\] - moment_N\[i\]);' '*out = moment_N[i] * (s - s) / (s - s);' 2 "a finite one above zero is due"
broken no-symbol 'bedbow_plugin(uint32_t' 'other(uint32_t' 2 "does not export bedbow_plugin"
sed 's|put(values, capacity, count, "greatest_N_per_mm", greatest \* 1e-3);|*count = 100000;|' "$source_dir/docs/plugins/clamp_evenness.c" >"$dir/lying.c"
expect build-lying 0 "" build lying "$dir/lying.c"
expect lying-size 2 "claims 100000 values" "$bedbow" solve "$hive" --plugin "$dir/lying.so" --out "$dir/none"
expect missing-file 4 "no such file" "$bedbow" solve "$hive" --plugin "$dir/nowhere.so" --out "$dir/none"
echo text >"$dir/text.so"
expect no-object 4 "shared object" "$bedbow" solve "$hive" --plugin "$dir/text.so" --out "$dir/none"
expect nothing-left 1 "" test -e "$dir/none"
finish plugins
