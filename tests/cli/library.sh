#!/usr/bin/env bash
# What `cmake --install` puts down, used from outside the source tree: the example program built by find_package and by
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
# A machine of structs gives what the program gives for its text; what is wrong in it is refused as in a file.
# shellcheck disable=SC2046
expect build-machine 0 "" c++ -std=c++20 -Wall -Wextra -Werror "$source_dir/tests/cli/library/machine.cpp" -o "$dir/machine" $(pkg-config --cflags --libs bedbow)
expect machine-wrong-thread 10 "M99.5" bash -c "LD_LIBRARY_PATH='$lib' '$dir/machine' '$dir/machine.toml' >'$dir/structs.json'"
same_as_program() { "$dir/usr/bin/bedbow" solve "$dir/machine.toml" --out "$dir/program" --json >"$dir/text.json"
  /usr/bin/python3 - "$dir/structs.json" "$dir/text.json" <<'END'
import json, sys
one, other = (json.load(open(f)) for f in sys.argv[1:])
other.pop("bracket", None), one.pop("bracket", None)
print("same" if one == other and len(one["steps"]) == 3 and "\n" in one["title"] else [k for k in one if one[k] != other.get(k)])
END
}
expect machine-as-text 0 same same_as_program
# What leaves the library is what tools/library/symbols.txt says: docs/guide/library.md on versions.
symbols() { nm -DC --defined-only "$lib/libbedbow.so" | sed -n 's/^[0-9a-f]* [TVDR] //p' | grep bedbow:: | sed 's/\[abi:cxx11\]//' | sort -u | diff - "$source_dir/tools/library/symbols.txt" && echo none differ; }
expect symbols-as-listed 0 "none differ" symbols
# Only what bedbow.h declares leaves the library.
expect symbols 1 "" bash -c "nm -DC --defined-only '$lib/libbedbow.so' | grep ' [TW] ' | grep -v bedbow::library | grep -q bedbow::"
expect installed-program 0 "Verdict" "$dir/usr/bin/bedbow" solve "$hive" --out "$dir/out"
expect man-page 0 "EXIT STATUS" zgrep "EXIT" "$dir/usr/share/man/man1/bedbow.1.gz"
expect completion 0 "solve" bash -c "PATH=$dir/usr/bin:\$PATH; source $dir/usr/share/bash-completion/completions/bedbow; COMP_WORDS=(bedbow so) COMP_CWORD=1; _bedbow; echo \${COMPREPLY[@]}"
finish library
