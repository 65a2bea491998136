#!/usr/bin/env bash
# Colour on a terminal only, and never with NO_COLOR (https://no-color.org) or on a terminal without colours. `script`
# gives the program a terminal of its own. Usage: colour.sh BEDBOW SOURCE_DIR
set -u
bedbow=$1
hive=$2/cases/hive-lid/case.toml
broken=$2/tests/cli/broken/no-unit.toml
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
passed=0
failed=0
colour() { # yes or no, name, text
  local found=no
  [[ "$3" == *$'\033['* ]] && found=yes
  if [ "$found" = "$1" ] && [ -n "$3" ]; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    printf 'FAIL %s: colour %s, wanted %s, in: %s\n' "$2" "$found" "$1" "$(head -c 300 <<<"$3" | cat -v)"
  fi
}
terminal() { # assignments, command...: output of the command on a terminal, including standard error
  env -u NO_COLOR TERM=xterm $1 script -qec "$2" /dev/null </dev/null
}
for command in "check '$hive'" "list" "solve '$hive' --out '$out'" "check '$broken'"; do
  run="'$bedbow' $command"
  colour yes "on a terminal: $command" "$(terminal "" "$run")"
  colour no "with NO_COLOR: $command" "$(terminal NO_COLOR=1 "$run")"
  colour no "on a dumb terminal: $command" "$(terminal TERM=dumb "$run")"
  colour no "in a pipe: $command" "$(env -u NO_COLOR TERM=xterm bash -c "$run" 2>&1)"
  # An empty NO_COLOR counts as unset.
  colour yes "with an empty NO_COLOR: $command" "$(terminal NO_COLOR= "$run")"
done
# Each stream separately: tables into a file, errors to the terminal.
colour no "tables into a file" "$(terminal "" "'$bedbow' list >'$out/list'" && cat "$out/list")"
colour yes "errors beside a file" "$(terminal "" "'$bedbow' check '$broken' >'$out/list'")"
echo "colour: $passed passed, $failed failed"
[ "$failed" -eq 0 ]
