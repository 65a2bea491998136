#!/usr/bin/env bash
# The JSON Schema that the program prints, against an independent validator (Debian's python3-jsonschema): every case of
# the project validates, and mistakes that the schema can see do not.
set -euo pipefail
bedbow=$1
source_dir=$2
dir=$(mktemp -d)
trap 'rm -rf "$dir"' EXIT
"$bedbow" schema >"$dir/schema.json"
/usr/bin/python3 - "$dir/schema.json" "$source_dir" <<'EOF'
import glob, json, sys, tomllib
import jsonschema

schema = json.load(open(sys.argv[1]))
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)
passed = failed = 0

def expect(name, valid, text):
    global passed, failed
    errors = list(validator.iter_errors(tomllib.loads(text)))
    if (not errors) == valid:
        passed += 1
    else:
        failed += 1
        print("FAIL", name, "valid" if not errors else errors[0].message, list(errors[0].path) if errors else "")

cases = sorted(glob.glob(sys.argv[2] + "/cases/*/case.toml")) + [sys.argv[2] + "/tests/cases/folder-x.toml"]
for path in cases:
    expect(path, True, open(path).read())
hive = open(sys.argv[2] + "/cases/hive-lid/case.toml").read()
def wrong(name, what, by):
    assert what in hive, what
    expect(name, False, hive.replace(what, by, 1))
wrong("bare number where a unit is due", 'width = "600 mm"', "width = 600")
wrong("no unit", 'width = "600 mm"', 'width = "600"')
wrong("unknown key", 'width = "600 mm"', 'widht = "600 mm"')
wrong("not one of the choices", 'shape = "rectangle"', "shape = 3")
expect("missing key", False, '[sheet]\nthickness = "1 mm"\n')
print(f"{passed} passed, {failed} failed")
sys.exit(failed > 0)
EOF
