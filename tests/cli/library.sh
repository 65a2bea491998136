#!/usr/bin/env bash
# What `cmake --install` puts down, used from outside the source tree: the example program built by find_package and by
# pkg-config, the man page and the completions.
set -u
build=$1
source_dir=$2
dir=$(mktemp -d)
trap 'rm -rf "$dir"' EXIT
source "$source_dir/tests/cli/expect.sh"
expect install 0 "" cmake --install "$build" --prefix "$dir/usr"
lib=$(dirname "$(find "$dir/usr" -name libbedbow.so)")
cp -r "$source_dir/tools/library/example" "$dir/example"
hive=$source_dir/cases/hive-lid/case.toml
expect configure 0 "" cmake -S "$dir/example" -B "$dir/example/build" -DCMAKE_PREFIX_PATH="$dir/usr"
expect build 0 "" cmake --build "$dir/example/build"
expect run 0 "up to" "$dir/example/build/thickness" "$hive"
expect missing 4 "none.toml" "$dir/example/build/thickness" "$dir/none.toml"
sed 's/width = "600 mm"/width = 600/' "$hive" >"$dir/wrong.toml"
expect wrong 2 "width" "$dir/example/build/thickness" "$dir/wrong.toml"
export PKG_CONFIG_PATH=$lib/pkgconfig
expect pkg-config 0 "-lbedbow" pkg-config --cflags --libs bedbow
# shellcheck disable=SC2046
expect build-by-pkg-config 0 "" c++ -std=c++20 "$dir/example/thickness.cpp" -o "$dir/thickness" $(pkg-config --cflags --libs bedbow)
expect run-by-pkg-config 0 "up to" env LD_LIBRARY_PATH="$lib" "$dir/thickness" "$hive"
# Only what bedbow.h declares leaves the library.
expect symbols 1 "" bash -c "nm -DC --defined-only '$lib/libbedbow.so' | grep ' [TW] ' | grep -v bedbow::library | grep -q bedbow::"
expect installed-program 0 "Verdict" "$dir/usr/bin/bedbow" solve "$hive" --out "$dir/out"
expect man-page 0 "EXIT STATUS" grep -A1 "EXIT" "$dir/usr/share/man/man1/bedbow.1"
expect completion 0 "solve" bash -c "PATH=$dir/usr/bin:\$PATH; source $dir/usr/share/bash-completion/completions/bedbow; COMP_WORDS=(bedbow so) COMP_CWORD=1; _bedbow; echo \${COMPREPLY[@]}"
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" -eq 0 ]
