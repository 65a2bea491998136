# Sourced by scripts that try the program: counts what comes out as wanted, and shows what does not.
# shellcheck shell=bash
passed=0
failed=0
expect() { # name, wanted exit code, wanted text, command...
  local name=$1 code=$2 text=$3
  shift 3
  local out got
  out=$("$@" 2>&1)
  got=$?
  if [ "$got" -eq "$code" ] && [[ "$out" == *"$text"* ]]; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    printf 'FAIL %s: exit %s (wanted %s), wanted "%s", said:\n%s\n' "$name" "$got" "$code" "$text" "${out:0:1500}"
  fi
}
