#!/usr/bin/env bash
# tools/layers on the code itself and on a small tree that violates its table in every way.
# Usage: layers.sh SOURCE_DIR
set -u
source_dir=$1
dir=$(mktemp -d)
trap 'rm -rf "$dir"' EXIT
passed=0
failed=0
expect() { # name, wanted exit code, wanted text
  if [ "$got" -eq "$2" ] && [[ "$said" == *"$3"* ]]; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    printf 'FAIL %s: exit %s (wanted %s), wanted "%s", said:\n%s\n' "$1" "$got" "$2" "$3" "$said"
  fi
}
judge() {
  said=$("$source_dir/tools/layers" "$@" 2>&1)
  got=$?
}

judge
expect "the code itself" 0 " 0 break "

mkdir -p "$dir"/{mesh,solver/element,io/vtk,tools}
cat >"$dir/table" <<'END'
group mesh: files = mesh/*
group element: files = solver/element/*; may include = mesh
group solver: files = solver/*; may include = mesh element
group vtk: files = io/vtk/*; may include = io; libraries = vtk*
group io: files = io/*; may include = mesh solver
END
echo '#pragma once' >"$dir/mesh/mesh.h"
printf '#include "mesh/mesh.h"\n#include <vector>\n' >"$dir/solver/element/beam.h"
printf '#include "solver/element/beam.h"\n' >"$dir/solver/steps.h"
printf '#include "solver/steps.h"\n' >"$dir/io/csv.h"
printf '#include "io/csv.h"\n#include <vtkPoints.h>\n' >"$dir/io/vtk/module.cpp"
judge "$dir" "$dir/table"
expect "a sound tree" 0 "6 includes, 0 break "

sample() { # name, file, text, expected message
  printf '%b' "$3" >"$dir/$2"
  judge "$dir" "$dir/table"
  expect "$1" 1 "$4"
  rm "$dir/$2"
}
sample "upwards" mesh/wrong.h '\n#include "io/csv.h"\n' 'mesh/wrong.h:2: a file of the group mesh may not include "io/csv.h", which is of io'
sample "upwards within the solver" solver/element/wrong.cpp ' # include "solver/steps.h"\n' 'solver/element/wrong.cpp:1: a file of the group element may not include'
sample "a library out of place" io/wrong.cpp '#include <vtkPoints.h>\n' 'io/wrong.cpp:1: <vtkPoints.h> is for the group vtk only'
sample "no path from the root" solver/wrong.cpp '#include "steps.h"\n' 'solver/wrong.cpp:1: "steps.h" is no path from the root'
sample "in no group" tools/wrong.cpp '#include "io/csv.h"\n' 'tools/wrong.cpp:1: is in no group of the table'
: >"$dir/nothing"
judge "$dir" "$dir/nothing"
expect "an empty table" 1 "no groups in it"

echo "layers: $passed passed, $failed failed"
[ "$failed" -eq 0 ]
