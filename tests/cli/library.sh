#!/usr/bin/env bash
# The files of `cmake --install`, used from outside the source tree: the example program built by find_package and by
# pkg-config, the man page and the completions.
set -u
build=$1
source_dir=$2
. "$source_dir/tests/cli/lib.sh"
trap 'rm -rf "$dir"' EXIT
expect install 0 "" cmake --install "$build" --prefix "$dir/usr"
lib=$(dirname "$(find "$dir/usr" -name libbedbow.so)")
cp -r "$source_dir/tools/library/example" "$dir/example"
hive=$source_dir/cases/hive-lid/case.toml
expect configure 0 "" cmake -S "$dir/example" -B "$dir/example/build" -DCMAKE_PREFIX_PATH="$dir/usr"
expect build 0 "" cmake --build "$dir/example/build"
expect run 0 "up to" "$dir/example/build/thickness" "$hive"
expect own-machine 0 "within limits" "$dir/example/build/own_machine"
expect short-examples 0 "" bash -c "for f in '$dir'/example/*.cpp; do [ \$(wc -l <\$f) -lt 60 ] || exit 1; done"
expect missing 4 "none.toml" "$dir/example/build/thickness" "$dir/none.toml"
sed 's/width = "600 mm"/width = 600/' "$hive" >"$dir/wrong.toml"
expect wrong 2 "width" "$dir/example/build/thickness" "$dir/wrong.toml"
export PKG_CONFIG_PATH=$lib/pkgconfig
expect pkg-config 0 "-lbedbow" pkg-config --cflags --libs bedbow
# shellcheck disable=SC2046
expect build-by-pkg-config 0 "" c++ -std=c++20 "$dir/example/thickness.cpp" -o "$dir/thickness" $(pkg-config --cflags --libs bedbow)
expect run-by-pkg-config 0 "up to" env LD_LIBRARY_PATH="$lib" "$dir/thickness" "$hive"
# A machine of structs gives the same results as the program for its text; errors in it are refused as in a file.
# shellcheck disable=SC2046
expect build-machine 0 "" c++ -std=c++20 -Wall -Wextra -Werror "$source_dir/tests/cli/library/machine.cpp" -o "$dir/machine" $(pkg-config --cflags --libs bedbow)
expect machine-wrong-thread 10 "M99.5" bash -c "LD_LIBRARY_PATH='$lib' '$dir/machine' '$dir/machine.toml' >'$dir/structs.json'"
same_as_program() { "$dir/usr/bin/bedbow" solve "$dir/machine.toml" --out "$dir/program" --json >"$dir/text.json"
  /usr/bin/python3 - "$dir/structs.json" "$dir/text.json" <<'END'
import json, sys
one, other = (json.load(open(f)) for f in sys.argv[1:])
for r in (one, other): r.pop("bracket", None), r.pop("friction_bracket", None)
print("same" if one == other and len(one["steps"]) == 3 and "\n" in one["title"] else [k for k in one if one[k] != other.get(k)])
END
}
expect machine-as-text 0 same same_as_program
# The last digits of plates differed, and with them one place of a greatest stress flipped from 900 to 0: the program gave
# BLAS one thread, the library as many as available. Both write the same bytes, whatever threads the process has.
# (Welds instead of screws: with screws the program also solves the slip bounds. It always solves the bounds of the
# sheet's friction, which the library does not; all other values are compared digit by digit, as they are written.)
sed -e '/^\[\[screws\]\]/,/^$/{s/screws/weld/;/^\(size\|class\|first\|pitch\|shear_stiffness\|y\) /d}' \
  -e 's/^shape = "rectangle"/&\nmodel = "plate"/' "$hive" >"$dir/plates.toml"
# shellcheck disable=SC2046
expect build-solve 0 "" c++ -std=c++20 -Wall -Wextra -Werror "$source_dir/tests/cli/library/solve.cpp" -o "$dir/solve" $(pkg-config --cflags --libs bedbow)
expect plates-by-program 0 "" bash -c "'$dir/usr/bin/bedbow' solve '$dir/plates.toml' --quiet --out '$dir/plates-program'; [ \$? -lt 2 ]"
expect plates-by-library 0 "" env LD_LIBRARY_PATH="$lib" OPENBLAS_NUM_THREADS=4 "$dir/solve" "$dir/plates.toml" "$dir/plates-library"
for by in program library; do
  /usr/bin/python3 -c 'import json, sys
r = json.load(sys.stdin, parse_float=str)
r.pop("friction_bracket", None)
json.dump(r, sys.stdout, indent=1)' <"$dir/plates-$by/results.json" >"$dir/plates-$by.json"
done
same plates-to-the-byte "$dir/plates-program.json" "$dir/plates-library.json"
# Plugins, built against the installed header: the same results as the program's, written files and all.
# shellcheck disable=SC2046
for name in measured_moment clamp_evenness step_page; do
  expect "build-$name" 0 "" cc -std=c11 -O2 -fPIC -shared -o "$dir/$name.so" "$source_dir/docs/plugins/$name.c" $(pkg-config --cflags bedbow) -lm
done
sed 's|put(values, capacity, count, "greatest_N_per_mm", greatest \* 1e-3);|*count = 100000;|' "$source_dir/docs/plugins/clamp_evenness.c" >"$dir/lying.c"
# shellcheck disable=SC2046
expect build-lying 0 "" cc -std=c11 -O2 -fPIC -shared -o "$dir/lying.so" "$dir/lying.c" $(pkg-config --cflags bedbow) -lm
# shellcheck disable=SC2046
expect build-plugins 0 "" c++ -std=c++20 -Wall -Wextra -Werror "$source_dir/tests/cli/library/plugins.cpp" -o "$dir/plugins" $(pkg-config --cflags --libs bedbow)
plugins() { LD_LIBRARY_PATH="$lib" "$dir/plugins" "$@"; }
sed -e '/^moment_law/d' -e 's/^\[sheet\].*/&\nmoment_law = "measured"/' "$hive" >"$dir/measured.toml"
brought=("$dir/measured_moment.so" "$dir/clamp_evenness.so" "$dir/step_page.so")
expect plugins-loaded 0 "measured_moment.so: measured 1.0" plugins "$dir/measured.toml" "$dir/by-library" "${brought[@]}"
expect plugins-found 0 "clamp evenness: greatest_N_per_mm = " plugins "$dir/measured.toml" "$dir/by-library" "${brought[@]}"
plugins_as_program() {
  sed 's/^title = .*/title = "with plugins"/' "$dir/measured.toml" >"$dir/titled.toml"
  "$dir/usr/bin/bedbow" solve "$dir/titled.toml" --out "$dir/by-program" "${brought[@]/#/--plugin=}" >/dev/null
  cmp "$dir/by-library/steps.md" "$dir/by-program/steps.md" && /usr/bin/python3 - "$dir/by-library" "$dir/by-program" <<'END'
import json, sys
one, other = (json.load(open(d + "/results.json")) for d in sys.argv[1:])
for r in (one, other): r.pop("bracket", None), r.pop("friction_bracket", None), r.pop("case_sha256")
print("same", len(one["findings"]["clamp evenness"]) if one == other and len(one["plugins"]) == 3 else [k for k in one if one[k] != other.get(k)])
END
}
expect plugins-as-program 0 "same 2" plugins_as_program
{ cat "$dir/measured.toml"; printf '[plugins]\nfiles = ["measured_moment.so"]\n'; } >"$dir/asks.toml"
expect plugins-no-leave 22 "Plugins::of_case" plugins "$dir/asks.toml" "$dir/none"
expect plugins-leave 0 "measured_moment.so: measured 1.0" plugins --of-case "$dir/asks.toml"
expect plugins-missing 21 "no such file" plugins "$hive" "$dir/none" "$dir/nowhere.so"
expect plugins-unknown-law 20 "measured" plugins "$dir/measured.toml" "$dir/none"
expect plugins-lying 22 "claims 100000 values" plugins "$hive" "$dir/none" "$dir/lying.so"
expect plugins-nothing-left 1 "" test -e "$dir/none"
# Each installed header compiles on its own; the plugins' also as C.
strict=(-Wall -Wextra -Wpedantic -Werror -fsyntax-only -I"$dir/usr/include")
headers=$(cd "$dir/usr/include" && find . -name '*.h' | sort | tr '\n' ' ')
expect headers 0 "./bedbow/bedbow.h ./bedbow/plugin.h " echo "$headers"
for header in $headers; do
  printf '#include <%s>\n#include <%s>\n' "${header#./}" "${header#./}" >"$dir/alone.cpp"
  expect "alone $header" 0 "" c++ -std=c++20 "${strict[@]}" "$dir/alone.cpp"
done
expect plugin.h-is-C 0 "" cc -std=c11 "${strict[@]}" -x c - <<<'#include <bedbow/plugin.h>'
expect plugin.h-is-C++11 0 "" c++ -std=c++11 "${strict[@]}" -x c++ - <<<'#include <bedbow/plugin.h>'
# One version everywhere; while the first number is 0 the second goes into the SONAME and must match exactly.
version=$("$dir/usr/bin/bedbow" --version | grep -oE '[0-9]+\.[0-9]+\.[0-9]+')
IFS=. read -r first second third <<<"$version"
abi=$first
[ "$first" -eq 0 ] && abi=0.$second
expect version-project 0 "VERSION $version " grep '^project(bedbow' "$source_dir/CMakeLists.txt"
expect version-changelog 0 "" grep -qE "^## (Unreleased|$version)" "$source_dir/CHANGELOG.md"
expect version-pkg-config 0 "$version" pkg-config --modversion bedbow
expect soname 0 "[libbedbow.so.$abi]" bash -c "readelf -d '$lib/libbedbow.so' | grep SONAME"
expect soname-told 0 "" grep -qF "libbedbow.so.$abi" "$source_dir/docs/guide/library.md"
expect needed 0 "[libbedbow.so.$abi]" bash -c "readelf -d '$dir/thickness' | grep NEEDED"
expect real-file 0 "libbedbow.so.$version" readlink -f "$lib/libbedbow.so.$abi"
wants() { # version; configures a project that requires it
  rm -rf "$dir/wants"
  mkdir "$dir/wants"
  printf 'cmake_minimum_required(VERSION 3.25)\nproject(wants LANGUAGES CXX)\nfind_package(bedbow %s REQUIRED)\nmessage(STATUS "found ${bedbow_VERSION}")\n' "$1" >"$dir/wants/CMakeLists.txt"
  cmake -S "$dir/wants" -B "$dir/wants/build" -DCMAKE_PREFIX_PATH="$dir/usr"
}
expect find-any 0 "found $version" wants ""
expect find-same 0 "found $version" wants "$first.$second"
expect find-exact 0 "found $version" wants "$version EXACT"
expect find-later-patch 1 "considered but not accepted" wants "$first.$second.$((third + 1))"
expect find-later-second 1 "considered but not accepted" wants "$first.$((second + 1))"
expect find-earlier-second 1 "considered but not accepted" wants "$first.$((second - 1 < 0 ? 0 : second - 1))"
expect find-later-first 1 "considered but not accepted" wants "$((first + 1)).0"
expect pkg-config-later 1 "" pkg-config --atleast-version="$first.$second.$((third + 1))" bedbow
# The library exports exactly the symbols of tools/library/symbols.txt: docs/guide/library.md on versions.
symbols() { nm -DC --defined-only "$lib/libbedbow.so" | sed -n 's/^[0-9a-f]* [TVDR] //p' | grep bedbow:: | sed 's/\[abi:cxx11\]//' | sort -u | diff - "$source_dir/tools/library/symbols.txt" && echo none differ; }
expect symbols-as-listed 0 "none differ" symbols
# The library exports only declarations of bedbow.h.
expect symbols 1 "" bash -c "nm -DC --defined-only '$lib/libbedbow.so' | grep ' [TW] ' | grep -v bedbow::library | grep -q bedbow::"
expect installed-program 0 "Verdict" "$dir/usr/bin/bedbow" solve "$hive" --out "$dir/out"
expect man-page 0 "EXIT STATUS" zgrep "EXIT" "$dir/usr/share/man/man1/bedbow.1.gz"
expect completion 0 "solve" bash -c "PATH=$dir/usr/bin:\$PATH; source $dir/usr/share/bash-completion/completions/bedbow; COMP_WORDS=(bedbow so) COMP_CWORD=1; _bedbow; echo \${COMPREPLY[@]}"
finish library
