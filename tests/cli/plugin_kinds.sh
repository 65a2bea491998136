#!/usr/bin/env bash
# Section shapes, elements, linear solvers and result writers from plugins built outside the source tree: valid ones work,
# wrong ones are refused with a message.
set -u
bedbow=$1
source_dir=$2
. "$source_dir/tests/cli/lib.sh"
. "$source_dir/tests/cli/plugin_lib.sh"
for name in tee_section slender_beam skyline_solver step_page; do
  expect "build $name" 0 "" build $name "$source_dir/docs/plugins/$name.c"
done
hive=$source_dir/cases/hive-lid/case.toml

# A cantilever of 500 mm with 100 N at its tip; $1: its section and further keys.
cantilever() {
  piece cantilever
  cat <<END
[[member]]
name = "m"
from = ["0 mm", "0 mm", "0 mm"]
to = ["500 mm", "0 mm", "0 mm"]
material = "steel"
$1
[[hold]]
at = ["0 mm", "0 mm", "0 mm"]
holds = ["x", "y", "z", "rx", "ry", "rz"]
[[load]]
at = ["500 mm", "0 mm", "0 mm"]
force = ["0 N", "0 N", "-100 N"]
[[dial]]
name = "tip"
on = "m"
at = ["500 mm", "0 mm", "0 mm"]
END
}
made() { # the same, as a file
  cantilever "$1" >"$dir/made.toml"
  echo "$dir/made.toml"
}
# Tip and root stress in results.json against P L^3 / 3 E I + P L / G As and P L c / I. 
against() { # I, shear area (inf: none), c [mm]; then case and options
  local i=$1 area=$2 c=$3
  shift 3
  "$bedbow" solve "$@" --out "$dir/out" --json | /usr/bin/python3 -c '
import json, sys
i, area, c = float(sys.argv[1]), float(sys.argv[2]), float(sys.argv[3])
step = json.load(sys.stdin)["steps"][0]
tip, stress = -step["dials"]["tip"]["z_mm"], step["bars"][0]["stress_MPa"]
due, bending = 100 * 500**3 / (3 * 205e3 * i) + 100 * 500 / (82e3 * area), 100 * 500 * c / i
print("same" if abs(tip / due - 1) < 1e-9 and abs(stress / bending - 1) < 1e-9 else (tip, due, stress, bending))' "$i" "$area" "$c"
}
# --- section shape: T 60 x 80 x 8, by parts: centroid and second moment in closed form
tee='shape = "tee"
width = "60 mm"
height = "80 mm"
wall = "8 mm"'
cantilever "$tee" >"$dir/tee.toml"
read -r i c < <(/usr/bin/python3 -c '
b, h, t = 60, 80, 8
w = h - t; A = b * t + w * t
c = (b * t * (w + t / 2) + w * t * w / 2) / A
print(repr(b * t**3 / 12 + b * t * (w + t / 2 - c)**2 + t * w**3 / 12 + w * t * (w / 2 - c)**2), repr(c))')
expect tee 0 same against "$i" "$(/usr/bin/python3 -c 'print(80 * 8 * 5 / 6)')" "$c" "$dir/tee.toml" --plugin "$dir/tee_section.so"
expect tee-unknown 2 'unknown section shape "tee"' "$bedbow" check "$dir/tee.toml"
expect tee-refuses 2 "wall must be less than half" "$bedbow" check "$(made "${tee/8 mm/40 mm}")" --plugin "$dir/tee_section.so"
expect tee-missing-size 2 'the shape "tee" needs width, height, wall' "$bedbow" check "$(made "$(grep -v wall <<<"$tee")")" --plugin "$dir/tee_section.so"
# --- element: no shear flexibility
flat='shape = "rectangle"
width = "10 mm"
height = "60 mm"'
cantilever "$flat
element = \"slender beam\"" >"$dir/slender.toml"
expect slender 0 same against 180000 inf 30 "$dir/slender.toml" --plugin "$dir/slender_beam.so"
expect slender-told 0 "element 'slender beam' (slender_beam.so 1.0)" "$bedbow" solve "$dir/slender.toml" --plugin "$dir/slender_beam.so" --out "$dir/out"
expect element-unknown 2 'unknown element "slender beam"; available here: beam' "$bedbow" check "$dir/slender.toml"
expect element-over-line 2 "is for a surface" "$bedbow" check "$(made "$flat
element = \"shell4\"")"
expect element-asymmetric 2 "does not support Iyz" "$bedbow" solve "$(made 'shape = "angle"
width = "40 mm"
height = "60 mm"
wall = "5 mm"
element = "slender beam"')" --plugin "$dir/slender_beam.so" --out "$dir/none"
# Built-in elements give the same numbers whether named or by default.
same_numbers() { # case with all bars naming the built-in elements, case as it is
  for f in "$1" "$2"; do "$bedbow" solve "$f" --out "$dir/out" --json >"$f.json" || [ $? -eq 1 ] || return; done
  /usr/bin/python3 - "$1.json" "$2.json" <<'END'
import json, sys
def walk(a, b, at):
    if isinstance(a, dict):
        if a.get("stress_MPa", 1) < 1e-6:
            return []  # where a bar that nothing loads has its greatest stress says nothing
        return [w for k in a for w in walk(a[k], b.get(k), at + "/" + k)]
    if isinstance(a, list):
        return [w for i, v in enumerate(a) for w in walk(v, b[i] if b and i < len(b) else None, at)]
    if isinstance(a, float) and isinstance(b, (int, float)):
        return [(at, a, b)]
    return []
one, other = (json.load(open(f)) for f in sys.argv[1:])
pairs = walk(one["steps"], other["steps"], "")
pairs = [p for p in pairs if not any(k in p[0] for k in ("/checks",))]
scale = {}
for at, a, b in pairs: scale[at] = max(scale.get(at, 0), abs(a), abs(b))
worst = max((abs(a - b) / scale[at] if scale[at] > 1e-9 else 0, at) for at, a, b in pairs)
print("same" if len(pairs) > 100 and worst[0] < 1e-7 else (len(pairs), worst))
END
}
sed '/^\[\[\(bed\|clamp\|apron\)\.bar\]\]/a element = "beam"' "$hive" >"$dir/named.toml"
as_beams "$hive" >"$dir/hive.toml"
expect named-beams 0 same same_numbers "$dir/named.toml" "$dir/hive.toml"
sed '/^\[\[clamp\.bar\]\]/a model = "plate"' "$hive" | with_elements "50 mm" - >"$dir/plates.toml"
sed 's/^model = "plate".*/&\nelement = "shell4"/' "$dir/plates.toml" >"$dir/named-plates.toml"
expect plates-named 0 "shell4" grep shell4 "$dir/named-plates.toml"
expect named-shells 0 same same_numbers "$dir/named-plates.toml" "$dir/plates.toml"
# --- linear solver
sed 's/^\[solve\].*/&\nlinear_solver = "skyline"/' "$hive" >"$dir/skyline.toml"
grep -q skyline "$dir/skyline.toml" || printf '[solve]\nlinear_solver = "skyline"\n' >>"$dir/skyline.toml"
solved() { "$bedbow" "$1" "$dir/skyline.toml" --plugin "$dir/skyline_solver.so" --out "$dir/out" --json >"$dir/by-plugin.json" &&
  "$bedbow" "$1" "$hive" --out "$dir/out" --json >"$dir/by-house.json" && /usr/bin/python3 - "$dir/by-plugin.json" "$dir/by-house.json" <<'END'
import json, sys
one, other = (json.load(open(f)) for f in sys.argv[1:])
a, b = one["steps"][-1]["bow"], other["steps"][-1]["bow"]
pairs = [(a[k], b[k]) for k in a] + list(zip(one["modes"]["frequencies_Hz"], other["modes"]["frequencies_Hz"]))
print("same", len(pairs) if all(x is y or abs(x - y) <= 1e-7 * abs(y) for x, y in pairs) else pairs)
END
}
expect skyline 0 "same 8" solved solve
expect skyline-modes 0 "same 14" solved modes
expect skyline-unknown 2 'unknown linear solver "skyline"' "$bedbow" check "$dir/skyline.toml"
# --- result writer
expect writer 0 "steps.md" "$bedbow" solve "$hive" --plugin "$dir/step_page.so" --out "$dir/written"
expect writer-page 0 "| bend 90 deg | 0." cat "$dir/written/steps.md"
expect writer-modes 0 "steps.md" "$bedbow" modes "$hive" --plugin "$dir/step_page.so" --out "$dir/written-too"
# --- all kinds in the list, with the file that they come from
for name in tee_section slender_beam skyline_solver step_page; do
  expect "list $name" 0 "$name.so 1.0" "$bedbow" list --plugin "$dir/$name.so"
done

# --- every command that reads a case: none loads the case's plugins without permission, all do with it
{
  cat "$hive"
  printf '[plugins]\nfiles = ["tee_section.so"]\n[[sweep.vary]]\nkey = "sheet.thickness"\nvalues = ["1 mm", "1.5 mm"]\n'
} | with_elements "100 mm" - >"$dir/asks.toml"
for command in solve sweep posts capacity stock modes check crown "prototype --material Douglas-fir" rock setup fit; do
  # shellcheck disable=SC2086
  expect "leave $command" 2 "--allow-plugins" "$bedbow" $command "$dir/asks.toml"
  # shellcheck disable=SC2086
  expect "missing $command" 4 "no such file" "$bedbow" $command "$hive" --plugin "$dir/nowhere.so"
done
stamped() { "$bedbow" "$@" --allow-plugins | grep -c 'tee_section.so: tee 1.0'; }
for command in solve modes crown setup "prototype --material Douglas-fir"; do
  # shellcheck disable=SC2086
  expect "stamp $command" 0 1 stamped $command "$dir/asks.toml" --json --out "$dir/out"
done
expect capacity-allowed 0 "Thickest sheet" "$bedbow" capacity "$dir/asks.toml" --widths "300 mm" --centres "450 mm" --allow-plugins
expect posts-allowed 0 "3 posts are the fewest" "$bedbow" posts "$dir/asks.toml" --count 3 --allow-plugins --out "$dir/out"
expect sweep-allowed 0 "variants.db" "$bedbow" sweep "$dir/asks.toml" --allow-plugins --out "$dir/sweep"
expect sweep-other-plugins 2 "tee_section.so" "$bedbow" sweep "$dir/asks.toml" --allow-plugins --plugin "$dir/step_page.so" --out "$dir/sweep"
# Every command that takes a case takes --plugin and --allow-plugins.
commands() { "$bedbow" "$@" --help | sed -n '/^Subcommands:/,/^$/s/^  \([a-z]\+\) .*/\1/p'; }
seen=0
for command in $(commands); do
  "$bedbow" "$command" --help | grep -q '^  *CASE ' || continue
  seen=$((seen + 1))
  for option in --plugin --allow-plugins; do
    expect "$command takes $option" 0 "$option" bash -c "'$bedbow' $command --help | grep -e '$option'"
  done
done
expect commands-with-a-case 0 "" test "$seen" -ge 12
# a new size is a key of bars, members and stock
sed 's/"width", "height", "wall"/"width", "brim", "wall"/; s/"tee",/"brimmed",/' "$source_dir/docs/plugins/tee_section.c" >"$dir/brimmed.c"
expect build-brimmed 0 "" build brimmed "$dir/brimmed.c"
expect schema-sizes 0 'size of the shape brimmed (brimmed.so 1.0)' "$bedbow" schema --plugin "$dir/brimmed.so"
expect keys-sizes 0 'size of the shape brimmed' "$bedbow" list --keys --plugin "$dir/brimmed.so"
brimmed=${tee/height/brim}
cantilever "${brimmed/tee/brimmed}" >"$dir/brimmed.toml"
expect brimmed 0 same against "$i" "$(/usr/bin/python3 -c 'print(80 * 8 * 5 / 6)')" "$c" "$dir/brimmed.toml" --plugin "$dir/brimmed.so"

# --- wrong ones: plugin, name, text, replacement, expected code and message, then the command
broken() {
  local plugin=$1 name=$2 what=$3 by=$4 code=$5 text=$6
  shift 6
  altered "$name" "$plugin" "$what" "$by"
  expect "$name" "$code" "$text" "$bedbow" "$@" --plugin "$dir/$name.so"
}
tee() { broken tee_section "$@" solve "$dir/tee.toml" --out "$dir/none"; }
tee shape-nan 's->Iyz = 0;' 's->Iyz = 0, s->A = s->Iyz / s->Iyz;' 2 "expected a finite one above zero"
tee shape-negative 's->Iyz = 0;' 's->Iyz = 1;' 2 "whose square is not below Iyy Izz"
tee shape-lying-points 's->point_count = 6;' 's->point_count = 100000;' 2 "claims 100000 stress points"
tee shape-lying-corners 's->loop_ends\[0\] = 8;' 's->loop_ends[0] = 999999;' 2 "claims 999999 corners"
tee shape-lying-loops 's->loop_count = 1;' 's->loop_count = 77;' 2 "claims 77 outline loops"
tee shape-no-outline 's->loop_ends\[0\] = 8;' 's->loop_ends[0] = 2;' 2 "fewer than three corners"
tee shape-clockwise '= outline\[i\]\[0\];' '= -outline[i][0];' 2 "does not run counter-clockwise"
tee shape-no-function 'examples, make}' 'examples, NULL}' 2 "lacks its function"
tee shape-size '{sizeof shape, sizeof' '{8, sizeof' 2 "its table of functions has 8 bytes"
tee shape-key '"height", "wall"}' '"length", "wall"}' 2 "its size 'length' is not a valid key"
tee shape-version '{BEDBOW_PLUGIN_INTERFACE,' '{7,' 2 "uses interface version 7"
tee shape-taken '"tee",' '"tube",' 2 "registered twice"
slender() { broken slender_beam "$@" solve "$dir/slender.toml" --out "$dir/none"; }
slender element-nan 'by \* p\[E\] \* p\[A\]' 'NAN' 2 "a stiffness that is not a number"
slender element-lying '\*count = 144;' '*count = 1440;' 2 "claims 1440 stiffness values; expected 144"
slender element-fails 'capacity >= due' 'capacity < due' 2 "no room, or an element without length"
slender element-skew '\*count = 144;' '*count = 144; out[5] += 1e6;' 2 "not symmetric"
slender element-nodes '= {sizeof element, 1, *2,' '= {sizeof element, 1, 3,' 2 "has 3 nodes of 6 dofs; expected 2 of 6"
slender element-asks '{"J", "m^4"' '{"Wt", "m^3"' 2 "requests Wt; available: E, G"
slender element-unit '{"J", "m^4"' '{"J", "mm^4"' 2 "requests J in mm^4; its unit is m^4"
slender element-no-function ' stiffness, *mass' ' NULL, mass' 2 "lacks its function"
skyline() { broken skyline_solver "$@" solve "$dir/skyline.toml" --out "$dir/none"; }
skyline solver-nan 'b\[i\] /= s->pivots\[i\];' 'b[i] *= NAN;' 2 "a solution that is not a number"
skyline solver-wrong 'b\[i\] /= s->pivots\[i\];' 'b[i] /= 2 * s->pivots[i];' 2 "leaves a residual"
skyline solver-fails 'if (s == NULL || s->first == NULL || s->start' 'if (s != NULL || s->start' 2 "no memory for the envelope"
skyline solver-nothing '\*out = s;' 'release(s);' 2 "neither a factor nor an unknown"
skyline solver-no-function 'factor, solve,' 'factor, NULL,' 2 "lacks its function"
broken skyline_solver solver-lying '*count = 0;' '*count = (int64_t)s->order + 1;' 1 "negative pivots of 391" \
  list --prove skyline
broken skyline_solver solver-cannot-count 'negative_pivots, release}' 'NULL, release}' 0 "proved" list --prove skyline
page() { broken step_page "$@" solve "$hive" --out "$dir/none"; }
page writer-outside '"steps.md"' '"../steps.md"' 2 "is not a plain file name"
page writer-taken '"steps.md"' '"results.json"' 2 "the name results.json is already in use"
page writer-hidden '"steps.md"' '".steps"' 2 "is not a plain file name"
page writer-fails 'p.length = 0;' 'return snprintf(message, message_size, "out of ink");' 2 "out of ink"
page writer-no-function 'sizeof writer, write' 'sizeof writer, NULL' 2 "lacks its function"
expect nothing-left 1 "" test -e "$dir/none"

# --- conformance suites: the examples pass; wrong elements, sections and solvers don't
for pair in tee:tee_section "slender beam:slender_beam" skyline:skyline_solver; do
  expect "prove ${pair%:*}" 0 "proved" "$bedbow" list --prove "${pair%:*}" --plugin "$dir/${pair#*:}.so"
done
for name in rectangle tube round pipe angle channel section rigid-plastic power-law beam shell4 auto band cholmod multifrontal simplicial; do
  expect "prove $name" 0 "proved" "$bedbow" list --prove $name
done
expect prove-unknown 2 'unknown entry "cube"' "$bedbow" list --prove cube
broken slender_beam rotates 'cubic(n, l, s, w, dw, dry, ry, -1);' 'cubic(n, l, s, w, dw, dry, ry, 1);' 1 \
  "rigid-body modes are free" list --prove "slender beam"
expect rotates-fails 1 "FAILS" "$bedbow" list --prove "slender beam" --plugin "$dir/rotates.so"
broken slender_beam heavy 'by \* p\[E\] \* p\[A\]' '2 * by * p[E] * p[A]' 1 "worst: stretch" list --prove "slender beam"
broken tee_section half-area 's->A = b \* t + web \* t;' 's->A = 2 * (b * t + web * t);' 1 "area against its outline" list --prove tee
broken skyline_solver miscounts 'count += s->pivots\[i\] < 0' 'count += s->pivots[i] < -1' 1 "eigenvalues in closed form" list --prove skyline
finish plugin_kinds
