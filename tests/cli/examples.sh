#!/usr/bin/env bash
# Checks the worked examples in the documents. A block that begins with "$ bedbow ..." is run; every line
# under it must be printed by the program in that order, "..." standing for omitted lines.
# Usage: examples.sh BEDBOW SOURCE_DIR
set -u
bedbow=$1
source_dir=$2
dir=$(mktemp -d)
trap 'rm -rf "$dir"' EXIT
ln -s "$source_dir/cases" "$dir/cases"
mkdir "$dir/bin"
ln -s "$bedbow" "$dir/bin/bedbow"
export PATH="$dir/bin:$PATH"
passed=0
failed=0

# Writes each console block of a page to its own file.
blocks() { # page
  rm -f "$dir"/block.*
  awk -v out="$dir/block." '/^```console/ { n++; on = 1; next } /^```/ { on = 0 } on { print > (out sprintf("%03d", n)) }' "$1"
}

check_block() { # page, block
  local command line rest said
  command=$(head -n 1 "$2")
  said=$(cd "$dir" && eval "${command#\$ }" 2>&1 | sed 's/ *$//')
  rest=$said
  while IFS= read -r line; do
    line=${line%"${line##*[! ]}"}
    if [ -z "$line" ] || [ "$line" = ... ]; then continue; fi
    if [[ $'\n'"$rest"$'\n' == *$'\n'"$line"$'\n'* ]]; then
      rest=${rest#*"$line"}
      passed=$((passed + 1))
    else
      failed=$((failed + 1))
      printf 'FAIL %s: "%s" does not print (in this place)\n  %s\nbut:\n%s\n' "$1" "$command" "$line" "${said:0:1500}"
    fi
  done < <(tail -n +2 "$2")
}

found=0
while IFS= read -r page; do
  blocks "$page"
  for block in "$dir"/block.*; do
    [ -e "$block" ] || continue
    found=$((found + 1))
    check_block "${page#"$source_dir"/}" "$block"
  done
done < <(find "$source_dir/README.md" "$source_dir/docs" "$source_dir/cases" -name '*.md' | sort)
echo "examples: $found blocks, $passed lines as printed, $failed not"
[ "$failed" -eq 0 ] && [ "$found" -gt 0 ]
