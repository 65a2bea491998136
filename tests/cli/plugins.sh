#!/usr/bin/env bash
# Plugins built from outside the source tree: the two examples work, and broken ones are refused with a message.
set -u
bedbow=$1
source_dir=$2
. "$source_dir/tests/cli/lib.sh"
trap 'rm -rf "$dir"' EXIT
mkdir -p "$dir/include/bedbow"
cp "$source_dir/io/plugin/bedbow_plugin.h" "$dir/include/bedbow/plugin.h"
build() { cc -std=c11 -O2 -fPIC -shared -I"$dir/include" -o "$dir/$1.so" "$2" -lm; }
for name in measured_moment clamp_evenness; do expect "build $name" 0 "" build $name "$source_dir/docs/plugins/$name.c"; done
hive=$source_dir/cases/hive-lid/case.toml
sed -e '/^moment_law/d' -e 's/^\[sheet\].*/&\nmoment_law = "measured"/' "$hive" >"$dir/measured.toml"

expect list 0 "measured_moment.so 1.0" "$bedbow" list --plugin "$dir/measured_moment.so"
# 1.5 mm is a row of the table: 160 N mm/mm.
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

broken() { # name, text in the law, replacement, expected code, expected message
  sed "s|$2|$3|" "$source_dir/docs/plugins/measured_moment.c" >"$dir/$1.c"
  cmp -s "$dir/$1.c" "$source_dir/docs/plugins/measured_moment.c" && { failed=$((failed + 1)); echo "FAIL $1: nothing replaced"; }
  build "$1" "$dir/$1.c" || failed=$((failed + 1))
  expect "$1" "$4" "$5" "$bedbow" solve "$dir/measured.toml" --plugin "$dir/$1.so" --out "$dir/none"
}
broken version '{BEDBOW_PLUGIN_INTERFACE,' '{99,' 2 "uses interface version 99"
broken size 'sizeof entry,' '16,' 2 "its entry has 16 bytes"
broken kind '"moment law",' '"bender",' 2 "known: moment law, section shape"
broken no-name '"measured",' '"",' 2 "must not be empty"
broken table-size '{sizeof law, moment}' '{8, moment}' 2 "its table of functions has 8 bytes"
broken no-function '{sizeof law, moment}' '{sizeof law, NULL}' 2 "lacks its function"
broken taken '"measured",' '"rigid-plastic",' 2 "registered twice"
broken nan '\*out = moment_N\[i\] + s \* (moment_N\[i + 1\] - moment_N\[i\]);' '*out = moment_N[i] * (s - s) / (s - s);' 2 "expected a finite one above zero"
broken no-symbol 'bedbow_plugin(uint32_t' 'other(uint32_t' 2 "does not export bedbow_plugin"
# All kinds: nothing of an entry is used before its version and sizes are checked, nothing may be missing.
wrong() { # example, text, replacement, expected message, where (default everywhere)
  sed "${5-}s|$2|$3|" "$source_dir/docs/plugins/$1.c" >"$dir/wrong.c"
  if cmp -s "$dir/wrong.c" "$source_dir/docs/plugins/$1.c"; then bad "$1: $2 not replaced"; fi
  build wrong "$dir/wrong.c" || bad "$1: $3 does not build"
  expect "$1: $4" 2 "$4" "$bedbow" solve "$hive" --plugin "$dir/wrong.so" --out "$dir/none"
}
while read -r name table call kind; do
  wrong "$name" 'BEDBOW_PLUGIN_INTERFACE,' '3,' "wrong.so: uses interface version 3, this program uses 2"
  wrong "$name" 'sizeof entry,' '16,' "its entry has 16 bytes"
  wrong "$name" "\"$kind\"" '"bender"' "provides an unknown kind 'bender'"
  wrong "$name" "\"1.0\"" '""' "must not be empty"
  wrong "$name" "{sizeof $table," '{8,' "wrong.so: $kind '"
  wrong "$name" "{sizeof $table," '{8,' "its table of functions has 8 bytes"
  wrong "$name" "\\b$call\\b" NULL "lacks its function \`$call\`" "/^static const.* $table = /,/^static const bedbow_entry/"
  wrong "$name" 'const bedbow_entry\* bedbow_plugin' 'const bedbow_entry* entries' "does not export bedbow_plugin"
  wrong "$name" 'index == 0 ? &entry : NULL' '\&entry + 0 * index' "registered twice"
  wrong "$name" 'index == 0 ? &entry : NULL' '(void)index, (const bedbow_entry*)NULL' "provides no entry"
done <<END
measured_moment law moment moment law
tee_section shape make section shape
slender_beam element stiffness element
skyline_solver solver factor linear solver
clamp_evenness finding evaluate finding
step_page writer write result writer
END
# Conformance of a law: the example passes; one that decreases with thickness, or depends on the width, does not.
expect prove-law 0 "proved" "$bedbow" list --prove measured --plugin "$dir/measured_moment.so"
law() { # name, text, replacement, expected message
  sed "s|$2|$3|" "$source_dir/docs/plugins/measured_moment.c" >"$dir/$1.c"
  expect "build $1" 0 "" build "$1" "$dir/$1.c"
  expect "$1" 1 "$4" "$bedbow" list --prove measured --plugin "$dir/$1.so"
}
moments='\*out = moment_N\[i\] + s \* (moment_N\[i + 1\] - moment_N\[i\]);'
law shrinking "$moments" '*out = 300 - moment_N[i];' "grows with thickness"
law by-width "$moments" '*out = moment_N[i] * sheet->width;' "per width"
law forgetful "$moments" 'static int calls; *out = moment_N[i] * (1 + 0.01 * (calls++ % 2));' "repeatable"
# Findings.
finding() { # name, text, replacement, expected message
  sed "s|$2|$3|" "$source_dir/docs/plugins/clamp_evenness.c" >"$dir/$1.c"
  if cmp -s "$dir/$1.c" "$source_dir/docs/plugins/clamp_evenness.c"; then bad "$1: nothing replaced"; fi
  expect "build $1" 0 "" build "$1" "$dir/$1.c"
  expect "$1" 2 "$4" "$bedbow" solve "$hive" --plugin "$dir/$1.so" --out "$dir/none"
}
finding finding-fails '\*count = 0;' 'return snprintf(message, message_size, "no clamp");' "no clamp"
finding finding-key '"greatest_N_per_mm"' '"greatest, N/mm"' "letters, digits and _"
finding finding-endless 'values\[(\*count)++\].value = value;' 'for (int i = 0; i < 64; ++i) values[*count].key[i] = 65; values[(*count)++].value = value;' "letters, digits and _"
sed 's|put(values, capacity, count, "greatest_N_per_mm", greatest \* 1e-3);|*count = 100000;|' "$source_dir/docs/plugins/clamp_evenness.c" >"$dir/lying.c"
expect build-lying 0 "" build lying "$dir/lying.c"
expect lying-size 2 "claims 100000 values" "$bedbow" solve "$hive" --plugin "$dir/lying.so" --out "$dir/none"
expect missing-file 4 "no such file" "$bedbow" solve "$hive" --plugin "$dir/nowhere.so" --out "$dir/none"
echo text >"$dir/text.so"
expect no-object 4 "shared object" "$bedbow" solve "$hive" --plugin "$dir/text.so" --out "$dir/none"
expect nothing-left 1 "" test -e "$dir/none"
finish plugins
