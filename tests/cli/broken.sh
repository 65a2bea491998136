#!/usr/bin/env bash
# The built program on broken cases. The first lines of each case in tests/cli/broken state what is expected:
#   # expect CODE: text that standard error must contain
# Files that are not text, far too large, or unusable because of their location are made here. After every failing run
# the results of an earlier run must be the same to the byte, and nothing may be beside them.
# Usage: broken.sh BEDBOW SOURCE_DIR
set -u
bedbow=$1
source_dir=$2
. "$source_dir/tests/cli/lib.sh"
cases=$source_dir/tests/cli/broken
good=$source_dir/cases/hive-lid/case.toml
trap 'mountpoint -q "$dir/small" && umount "$dir/small"; rm -rf "$dir"' EXIT

sums() { # directory: names, hidden ones too, with checksums
  (cd "$1" && find . -type f -print0 | sort -z | xargs -0 sha256sum)
}
# Only standard error counts here. A minute is far more than any case may take.
errors_of() { # command...
  timeout 60 "$@" 2>&1 >"$dir/stdout"
}
untouched() { # name
  if [ "$(sums "$dir/kept")" = "$before" ]; then ok; else bad "$1: it touched the earlier results"; fi
}

"$bedbow" solve "$good" --quiet --out "$dir/kept" || bad "the sound case: exit $?"
before=$(sums "$dir/kept")

# Every error of a text file carries file, line and column.
placed() { # name, file
  local lines
  lines=$(grep -F ': error: ' <<<"$said" | grep -vE "^$(printf %s "$2" | sed 's/[.+]/\\&/g'):[0-9]+:[0-9]+: error: ")
  if [ -z "$lines" ]; then ok; else bad "$1: no line and column in: $lines"; fi
}

for file in "$cases"/*.toml; do
  name=$(basename "$file" .toml)
  mapfile -t wants < <(sed -n 's/^# expect //p; /^#/!q' "$file")
  [ ${#wants[@]} -gt 0 ] || bad "$name: says not what it expects"
  code=${wants[0]%%:*}
  out=$dir/kept
  [ "$code" -ge 2 ] || out=$dir/solved
  attempt errors_of "$bedbow" solve "$file" --out "$out"
  for want in "${wants[@]}"; do gave "$name" "$code" "${want#*: }"; done
  [ "$code" -ne 2 ] || placed "$name" "$file"
  [ "$code" -lt 2 ] || untouched "$name"
  # `check` finds errors in the file, too; only solving finds what can't be solved.
  if [ "$code" -eq 2 ]; then expect "check $name" 2 "${wants[0]#*: }" errors_of "$bedbow" check "$file"; fi
done

solve=(errors_of "$bedbow" solve --quiet --out "$dir/kept")
: >"$dir/empty.toml"
expect "an empty file" 2 "the file is empty; a case needs at least a [bed]" "${solve[@]}" "$dir/empty.toml"
printf ' \n\n\t\r\n' >"$dir/blank.toml"
expect "a blank file" 2 "the file is empty" "${solve[@]}" "$dir/blank.toml"
head -c 4096 "$bedbow" >"$dir/binary.toml"
expect "a binary file" 2 "this is not text" "${solve[@]}" "$dir/binary.toml"
{ cat "$good"; printf 'title2 = "\xff\xfe"\n'; } >"$dir/utf8.toml"
expect "broken UTF-8" 2 "invalid TOML" "${solve[@]}" "$dir/utf8.toml"
expect "a directory" 4 "it is a directory; give the case file in it" "${solve[@]}" "$dir"
expect "no such file" 4 "there is no such file" "${solve[@]}" "$dir/none.toml"
expect "a file as directory" 4 "none.toml" "${solve[@]}" "$good/none.toml"

# 100 MB take no longer than an empty file, sparse or not.
yes '[[member]] # far too many' | head -c 100000000 >"$dir/large.toml"
start=$(date +%s%N)
expect "100 MB" 2 "the file has 96 MB; the limit for a case is 4 MB" "${solve[@]}" "$dir/large.toml"
took=$((($(date +%s%N) - start) / 1000000))
[ "$took" -lt 1000 ] && ok || bad "100 MB: took $took ms to be refused"
expect "100 MB from a pipe" 2 "larger than the limit of 4 MB for a case" "${solve[@]}" <(cat "$dir/large.toml")
rm "$dir/large.toml"

# Nesting so deep that a recursive reader overflows its stack.
repeat() { # text, times
  yes "$1" | head -n "$2" | tr -d '\n'
}
{ printf 'a = '; repeat '[' 100000; } >"$dir/lists.toml"
expect "100000 lists" 2 "lists.toml:1:" "${solve[@]}" "$dir/lists.toml"
{ repeat 'a.' 100000; echo 'a = 1'; } >"$dir/keys.toml"
expect "100000 dotted keys" 2 "keys.toml:1:1: error: tables are nested deeper than any case needs" "${solve[@]}" "$dir/keys.toml"
{ printf '['; repeat 'a.' 100000; echo 'a]'; } >"$dir/tables.toml"
expect "100000 tables" 2 "nested deeper" "${solve[@]}" "$dir/tables.toml"
{ repeat 'a = {' 100000; } >"$dir/inline.toml"
expect "100000 inline tables" 2 "inline.toml:1:" "${solve[@]}" "$dir/inline.toml"
for i in $(seq 20000); do echo "[[member]]"; done >"$dir/members.toml"
expect "20000 empty members" 2 "80000 errors" "${solve[@]}" "$dir/members.toml"
untouched "files that are no cases"

# Places that can't be written to.
expect "no place to write" 4 "choose" errors_of "$bedbow" solve "$good" --quiet --out /proc/nowhere
: >"$dir/occupied"
expect "a file where the directory should be" 4 "Not a directory" errors_of "$bedbow" solve "$good" --quiet --out "$dir/occupied"
mkdir -p "$dir/blocked/results.json"
expect "a directory where a file should be" 4 "results.json" errors_of "$bedbow" solve "$good" --quiet --out "$dir/blocked"
[ "$(ls -A "$dir/blocked")" = results.json ] && ok || bad "a directory where a file should be: left: $(ls -A "$dir/blocked")"
if [ "$(id -u)" -ne 0 ]; then # root writes everywhere
  mkdir -m 555 "$dir/locked"
  expect "a read-only directory" 4 "Permission denied" errors_of "$bedbow" solve "$good" --quiet --out "$dir/locked/out"
fi
expect "standard output is full" 4 "standard output" errors_of bash -c '"$0" solve "$1" --out "$2" >/dev/full' "$bedbow" "$good" "$dir/solved"
# A limit on file sizes, with its signal ignored and not ignored.
for signal in "trap '' XFSZ;" ""; do
  expect "too small a limit on files" 4 "raise the limit on file sizes" \
    errors_of bash -c "$signal ulimit -f 8; \"\$0\" solve \"\$1\" --quiet --out \"\$2\"" "$bedbow" "$good" "$dir/kept"
done
untouched "places that can't be written to"

# A full disk: a file system of 256 kB where one may be mounted, with results on it that must survive.
mkdir "$dir/small"
if mount -t tmpfs -o size=256k tmpfs "$dir/small" 2>/dev/null; then
  mkdir "$dir/small/out"
  cp "$dir/kept/results.json" "$dir/small/out/"
  kept=$(sums "$dir/small")
  expect "a full disk" 4 "No space left on device; free some space or choose another directory" \
    errors_of "$bedbow" solve "$good" --quiet --out "$dir/small/out"
  [ "$(sums "$dir/small")" = "$kept" ] && ok || bad "a full disk: the earlier results changed: $(sums "$dir/small")"
  umount "$dir/small"
else
  echo "no file system can be mounted here, so a full disk was not tried"
fi

finish "broken cases"
