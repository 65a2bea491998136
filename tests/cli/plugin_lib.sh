# Shared by the scripts that test plugins; each sources it after lib.sh.
trap 'rm -rf "$dir"' EXIT
mkdir -p "$dir/include/bedbow"
cp "$source_dir/io/plugin/bedbow_plugin.h" "$dir/include/bedbow/plugin.h"
build() { # name, source
  cc -std=c11 -O2 -Wall -Wno-unused-function -Werror -fPIC -shared -I"$dir/include" -o "$dir/$1.so" "$2" -lm
}
# A case of one piece without the piece itself: title and a steel for it.
piece() { # title
  cat <<END
title = "$1"
[material.steel]
E = "205 GPa"
nu = 0.25
density = "7850 kg/m^3"
yield = "275 MPa"
END
}
# An example with something replaced, as $dir/NAME.c, built: name, example, then pairs of text and replacement.
altered() {
  local name=$1
  cp "$source_dir/docs/plugins/$2.c" "$dir/$name.c"
  shift 2
  while [ $# -gt 0 ]; do
    cp "$dir/$name.c" "$dir/before"
    sed -i "s#$1#$2#" "$dir/$name.c"
    if cmp -s "$dir/$name.c" "$dir/before"; then bad "$name: nothing replaced"; fi
    shift 2
  done
  expect "build $name" 0 "" build "$name" "$dir/$name.c"
}
