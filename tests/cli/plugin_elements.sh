#!/usr/bin/env bash
# Optional functions of plugin elements: mass, geometric stiffness and loads take effect in modes, buckling and statics;
# omitted ones have defaults, which are reported; wrong ones are refused.
set -u
bedbow=$1
source_dir=$2
twin=$3
. "$source_dir/tests/cli/lib.sh"
. "$source_dir/tests/cli/plugin_lib.sh"
expect build 0 "" build slender_beam "$source_dir/docs/plugins/slender_beam.c"

# A cantilever of 500 mm, 10 mm wide and 60 mm high, pushed along its length by 1 kN and loaded across by 0.02 N/mm.
# $1: the element, or nothing.
bar() {
  piece cantilever
  cat <<END
[[member]]
name = "m"
from = ["0 mm", "0 mm", "0 mm"]
to = ["500 mm", "0 mm", "0 mm"]
material = "steel"
shape = "rectangle"
width = "10 mm"
height = "60 mm"
divisions = 16
${1:+element = \"$1\"}
[[hold]]
at = ["0 mm", "0 mm", "0 mm"]
holds = ["x", "y", "z", "rx", "ry", "rz"]
[[load]]
at = ["500 mm", "0 mm", "0 mm"]
force = ["-1000 N", "0 N", "0 N"]
[[load]]
from = ["0 mm", "0 mm", "0 mm"]
to = ["500 mm", "0 mm", "0 mm"]
per_length = ["0 N/mm", "0 N/mm", "-0.02 N/mm"]
[[dial]]
name = "tip"
on = "m"
at = ["500 mm", "0 mm", "0 mm"]
[solve]
modes = 3
buckling = 2
END
}
bar "slender beam" >"$dir/slender.toml"
# First frequency, buckling factor and tip deflection over theory: Blevins 1979 table 8-1 with Rayleigh's rotary inertia,
# whose share is below (r / L)^2 10 = 3e-4 for the first mode; Euler's load; q L^4 / 8 E I. The line load is small
# enough not to affect Euler's load.
shares() {
  "$bedbow" modes "$@" --out "$dir/out" --json | /usr/bin/python3 -c '
import json, math, sys
r = json.load(sys.stdin)
E, b, h, l, density = 205e9, .01, .06, .5, 7850
weak, strong = E * h * b**3 / 12, E * b * h**3 / 12
first = 1.875104069**2 / (2 * math.pi) * math.sqrt(weak / (density * b * h * l**4))
euler = math.pi**2 * weak / (4 * l**2) / 1000
tip = 20 * l**4 / (8 * strong) * 1e3
factors = r["modes"]["buckling_factors"] or [math.nan]
print(*("%.3f" % v for v in (r["modes"]["frequencies_Hz"][0] / first, factors[0] / euler,
                             -r["steps"][-1]["dials"]["tip"]["z_mm"] / tip)))'
}
with() { shares "$dir/slender.toml" --plugin "$dir/$1.so"; }
expect slender 0 "1.000 1.000 1.000" with slender_beam
expect prove 0 "proved" "$bedbow" list --prove "slender beam" --plugin "$dir/slender_beam.so"
for what in "total mass" "Euler's load" "lateral buckling" "loads in equilibrium"; do
  expect "proves $what" 0 "$what" "$bedbow" list --prove "slender beam" --plugin "$dir/slender_beam.so"
done
expect told 0 "provides stiffness, mass, geometric stiffness," "$bedbow" modes "$dir/slender.toml" \
  --plugin "$dir/slender_beam.so" --out "$dir/out"

# Its own terms are used: halving or doubling each shows where expected, and only there.
other() { altered "$1" slender_beam "${@:2}"; } # name, pairs of text and replacement
proves() { "$bedbow" list --prove "slender beam" --plugin "$dir/$1.so"; }
other heavy 'per_length = p\[density\]' 'per_length = 4 * p[density]'
expect heavy 0 "0.500 1.000 1.000" with heavy
expect heavy-fails 1 "FAILS" proves heavy
other soft 'double N = f\[0\]' 'double N = 2 * f[0]'
expect soft 0 "1.000 0.500 1.000" with soft
expect soft-fails 1 "FAILS" proves soft
other loaded 'n\[k\]\[i\] \* q\[k\]' 'n[k][i] * 2 * q[k]'
expect loaded 0 "1.000 1.000 2.000" with loaded
expect loaded-fails 1 "FAILS" proves loaded
other moments-aside 'by \* My / 2' 'by * 0 * My'
expect moments-aside-fails 1 "lateral buckling moment of a beam between forks" proves moments-aside

# Omitted: half of the mass counts at each of the 16 nodes, loads are the built-in element's, buckling is refused.
other bare ' *mass, geometric, loads}' ' NULL, NULL, NULL}'
expect bare 0 "0.998 nan 1.000" shares "$dir/slender.toml" --plugin "$dir/bare.so" --buckling 0
expect bare-told 0 "its mass is lumped" "$bedbow" modes "$dir/slender.toml" --plugin "$dir/bare.so" --buckling 0 --out "$dir/out"
expect bare-proved 0 "proved" proves bare
expect bare-buckling 2 "provides no geometric stiffness" "$bedbow" modes "$dir/slender.toml" --plugin "$dir/bare.so" --out "$dir/none"
expect bare-buckling-solve 2 "provides no geometric stiffness" "$bedbow" solve "$dir/slender.toml" --plugin "$dir/bare.so" --out "$dir/none"

# Wrong extents, failures, not a number.
refused() { # name, text, pairs
  local name=$1 text=$2
  other "$name" "${@:3}"
  expect "$name" 2 "$text" "$bedbow" modes "$dir/slender.toml" --plugin "$dir/$name.so" --out "$dir/none"
}
refused mass-nan "gave a mass that is not a number" 'turn_matrix(m, in->axes, matrix, count);' 'm[3][3] = NAN; turn_matrix(m, in->axes, matrix, count);'
refused mass-lying "claims 9999 mass values; expected 144" 'turn_matrix(m, in->axes, matrix, count);' 'turn_matrix(m, in->axes, matrix, count); *count = 9999;'
refused mass-skew "gave a mass that is not symmetric" 'turn_matrix(m, in->axes, matrix, count);' 'm[0][5] += m[0][0]; turn_matrix(m, in->axes, matrix, count);'
refused mass-fails "out of weights" 'double m\[12\]\[12\] = {{0}};' 'double m[12][12] = {{0}}; return snprintf(message, message_size, "out of weights");'
refused geometric-nan "gave a geometric stiffness that is not a number" 'double N = f\[0\]' 'double N = f[0] * NAN'
refused geometric-lying "claims 0 geometric stiffness values; expected 144" '(void)state_count;' '(void)state_count; *count = 0; return 0;'
refused geometric-fails "too stressed" '(void)state_count;' 'return snprintf(message, message_size, "too stressed: %zu", state_count);'
refused loads-nan "gave a load that is not a number" 'vector\[i\] = 0;' 'vector[i] = NAN;'
refused loads-lying "claims 144 load values; expected 12" '\*count = 12;' '*count = 144;'
refused loads-fail "too heavy: 6" '(void)load_count;' 'return snprintf(message, message_size, "too heavy: %zu", load_count);'
expect nothing-left 1 "" test -e "$dir/none"

# A surface: the built-in element through the interface gives its usual results in statics, modes and buckling.
panel() { # element, or nothing
  piece gusset
  cat <<END
[[panel]]
name = "gusset"
corner = ["0 mm", "0 mm", "0 mm"]
edge_a = ["400 mm", "0 mm", "0 mm"]
edge_b = ["0 mm", "150 mm", "0 mm"]
thickness = "6 mm"
material = "steel"
divisions = [8, 3]
${1:+element = \"$1\"}
[[hold]]
from = ["0 mm", "0 mm", "0 mm"]
to = ["0 mm", "150 mm", "0 mm"]
holds = ["x", "y", "z", "rx", "ry", "rz"]
[[load]]
panel = "gusset"
pressure = "10 kPa"
[[load]]
from = ["400 mm", "0 mm", "0 mm"]
to = ["400 mm", "150 mm", "0 mm"]
per_length = ["-10 N/mm", "5 N/mm", "0 N/mm"]
[[dial]]
name = "corner"
on = "gusset"
at = ["400 mm", "150 mm", "0 mm"]
[solve]
modes = 5
buckling = 3
END
}
panel "" >"$dir/panel.toml"
panel "shell twin" >"$dir/twin.toml"
twins() {
  "$bedbow" modes "$dir/panel.toml" --out "$dir/out" --json >"$dir/one.json" &&
    "$bedbow" modes "$dir/twin.toml" --plugin "$twin" --out "$dir/out" --json >"$dir/other.json" &&
    /usr/bin/python3 - "$dir/one.json" "$dir/other.json" <<'END'
import json, sys
one, other = (json.load(open(f)) for f in sys.argv[1:])
def numbers(r):
    d = r["steps"][-1]["dials"]["corner"]
    return [d["x_mm"], d["y_mm"], d["z_mm"]] + r["modes"]["frequencies_Hz"] + r["modes"]["buckling_factors"]
a, b = numbers(one), numbers(other)
print("same", len(a) if len(a) == len(b) and all(abs(x - y) <= 1e-8 * abs(x) and x != 0 for x, y in zip(a, b)) else (a, b))
END
}
expect twins 0 "same 11" twins
expect twin-proved 0 "proved" "$bedbow" list --prove "shell twin" --plugin "$twin"
expect twin-told 0 "element 'shell twin' (shell_twin.so 1.0) provides stiffness, mass, geometric" \
  "$bedbow" modes "$dir/twin.toml" --plugin "$twin" --out "$dir/out"
finish plugin_elements
