# Shared by the scripts that test the built program; each sources it with `bedbow` and `source_dir` set.
dir=$(mktemp -d)
passed=0
failed=0
ok() { passed=$((passed + 1)); }
bad() {
  failed=$((failed + 1))
  printf 'FAIL %s\n' "$*"
}
attempt() { # command...; its output is kept in $said, its exit code in $got
  said=$("$@" 2>&1)
  got=$?
}
gave() { # name, exit code and text (may be empty) expected of the last command
  if [ "$got" -eq "$2" ] && [[ "$said" == *"$3"* ]]; then
    ok
  else
    bad "$1: exit $got (wanted $2), wanted text \"$3\", said: ${said:0:800}"
  fi
}
expect() { # name, wanted exit code, wanted text (may be empty), command...
  attempt "${@:4}"
  gave "$1" "$2" "$3"
}
same() { # name, file, file
  if cmp -s "$2" "$3"; then ok; else bad "$1: $2 and $3 differ"; fi
}
finish() {
  echo "$1: $passed passed, $failed failed"
  [ "$failed" -eq 0 ]
}
# Cases with other elements and bars, for tests that need no exact figures or those of beam theory.
with_elements() { # size, case file
  sed "s/^\\[solve\\]/&\\nelement_size = \"$1\"/" "$2"
}
as_beams() { # case file
  sed 's/^\[\[\(bed\|clamp\|apron\)\.bar\]\]/&\nmodel = "beam"/' "$1"
}
# The hive-lid sweep with a coarser mesh and only the clamp's sizes and the posts of 15 or, with $2, more variants.
small_sweep() { # file to write, number of rib heights
  with_elements "60 mm" "$source_dir/cases/hive-lid-sweep/case.toml" |
    sed "s/^values = \[\"60 mm\", \"70 mm\".*/from = \"60 mm\"\nto = \"120 mm\"\nsteps = $2/" >"$1"
}
