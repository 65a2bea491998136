#!/usr/bin/env python3
"""The JSON Schema that the program prints, against an independent validator (Debian's python3-jsonschema) and against
the reader, which shall know the same keys.

    schema.py BEDBOW SOURCE_DIR

- Every sound case of the project validates: cases/, tests/cases, those that the tutorials write, TOML in the pages.
- A walk over the schema: each key of each table is known to the reader, one more is refused by both, a value of another
  kind, a word that is not listed, a number beyond its limits and a missing key are refused by both.
- Broken cases whose mistake a schema can see are refused by it; the others are listed, with why it can't.
"""
import glob
import json
import os
import re
import subprocess
import sys
import tempfile
import tomllib

import jsonschema

bedbow, source = sys.argv[1:3]
schema = json.loads(subprocess.run([bedbow, "schema"], check=True, capture_output=True, text=True).stdout)
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)
tables = schema["$defs"]
passed = failed = 0


def expect(name, holds, why=""):
    global passed, failed
    passed, failed = passed + bool(holds), failed + (not holds)
    if not holds:
        print("FAIL", name, why)


def faults(case):
    """What the schema finds: path (without numbers) and message."""
    return [(".".join(str(p) for p in e.absolute_path if not isinstance(p, int)), e) for e in validator.iter_errors(case)]


# ---- sound cases ----
def sound():
    yield from sorted(glob.glob(source + "/cases/*/case.toml") + glob.glob(source + "/tests/cases/*.toml"))
    for page in sorted(glob.glob(source + "/docs/tutorials/*.md")):
        # What a tutorial writes by a here-document is a case where it has a title.
        for n, text in enumerate(re.findall(r"<<'?(\w+)'?\n(.*?)\n\1\n", open(page).read(), re.S)):
            if text[1].lstrip().startswith("title"):
                yield page, text[1]


count = 0
for item in sound():
    name, text = item if isinstance(item, tuple) else (item, open(item).read())
    found = faults(tomllib.loads(text))
    expect(name, not found, found[:1])
    count += 1
expect("sound cases are there", count >= 11, count)
# Pages show parts of cases: all of their keys are known, though tables that a whole case has may be missing.
shown = 0
for page in sorted(glob.glob(source + "/docs/**/*.md", recursive=True) + glob.glob(source + "/cases/*/README.md") + [source + "/README.md"]):
    for text in re.findall(r"^```toml\n(.*?)^```", open(page).read(), re.S | re.M):
        found = [e for _, e in faults(tomllib.loads(text)) if e.validator != "required"]
        expect(page, not found, [e.message for e in found[:1]])
        shown += 1
expect("pages show TOML", shown >= 5, shown)


# ---- the walk ----
def places():
    """Where each definition is used: (name, keys from the root, an "[]" after those of arrays of tables)."""
    seen, todo = set(), [([], schema)]
    while todo:
        path, table = todo.pop()
        for key, value in table.get("properties", {}).items():
            many = value.get("type") == "array"
            inner = value.get("items", {}) if many else value
            ref = inner.get("$ref")
            named = inner.get("additionalProperties")
            here = path + [key + ("[]" if many else "")]
            if ref is None and isinstance(named, dict):  # [material.NAME]
                ref, here = named.get("$ref"), here + ["sample"]
            if ref is None:
                continue
            name = ref.rsplit("/", 1)[1]
            if (name, *path[:1]) in seen:
                continue
            seen.add((name, *path[:1]))
            yield name, here, tables[name]
            todo.append((here, tables[name]))


def nested(path, table):
    """A case with nothing but this table."""
    out = table
    for key in reversed(path):
        out = {key[:-2]: [out]} if key.endswith("[]") else {key: out}
    return out


def toml(value):
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{k} = {toml(v)}" for k, v in value.items()) + " }"
    if isinstance(value, list):
        return "[" + ", ".join(toml(v) for v in value) + "]"
    return json.dumps(value)


scratch = tempfile.TemporaryDirectory()


def said(case):
    """What `bedbow check` says of a case, as (key, message)."""
    file = os.path.join(scratch.name, "case.toml")
    with open(file, "w", encoding="utf-8") as out:
        for key, value in case.items():
            out.write(f"{key} = {toml(value)}\n")
    run = subprocess.run([bedbow, "check", file], capture_output=True, text=True)
    lines = re.findall(r"^[^\n]*?:\d+:\d+: error: (.*)$", run.stderr, re.M)
    expect(f"check says what is wrong with {case}", run.returncode == 2 and lines, (run.returncode, run.stderr[:300]))
    return lines


# Files that are read while a case is, before its other keys.
FILES = {"mesh.file": source + "/cases/bracketed-bed/brackets.vtu", "plugins.files": []}


def example(s, place=""):
    """A value that fits a property, as the schema has it."""
    if place in FILES:
        return FILES[place]
    if "$ref" in s:
        return {}
    if s.get("type") == "array":
        items = s.get("items", {})
        return [example(items)] * max(s.get("minItems", 1), 1) if items else [1] * max(s.get("minItems", 1), 1)
    if "enum" in s:
        return s["enum"][0]
    if s.get("type") in ("number", "integer"):
        return s.get("minimum", s.get("exclusiveMinimum", 0) + 1)
    if s.get("type") == "boolean":
        return True
    if s.get("type") == "string" or "type" in s or "anyOf" in s or "oneOf" in s:
        return (s.get("examples") or ["1 mm"])[0]
    return (s.get("examples") or ["1 mm"])[0]


def wrong(s):
    """A value of another kind; None where every kind is allowed."""
    kinds = s.get("type") or ("object" if "$ref" in s else None)
    if kinds is None:
        return None
    return {"string": {"a": 1}, "array": "text", "object": "text", "number": "text", "integer": "text",
            "boolean": "text"}.get(kinds if isinstance(kinds, str) else kinds[0])


def mentions(lines, key, text=""):
    return any(re.search(rf'(^|[.\s"\[]){re.escape(key)}\b', line) and text in line for line in lines)


walked = 0
for name, path, table in places():
    place, properties = ".".join(path), table.get("properties", {})
    walked += 1
    # All keys at once: the reader may find values that do not go together, but no key that it does not know.
    lines = said(nested(path, {k: example(p, f"{place}.{k}") for k, p in properties.items()}))
    expect(f"{place}: reader knows all keys", not any("unknown key" in l for l in lines),
           [l for l in lines if "unknown key" in l])
    # One more than there are.
    more = nested(path, {"xyzzy": 1})
    expect(f"{place}: unknown key refused by the schema", any("xyzzy" in e.message or "xyzzy" in e.absolute_path for _, e in faults(more)))
    expect(f"{place}: unknown key refused by the reader", mentions(said(more), "xyzzy", "unknown key"))
    # Values of another kind, all at once.
    bad = {k: wrong(p) for k, p in properties.items() if wrong(p) is not None}
    case = nested(path, bad)
    lines, found = said(case), {e.absolute_path[-1] for _, e in faults(case) if e.absolute_path}
    for key in bad:
        expect(f"{place}.{key}: wrong kind refused by the schema", key in found, bad[key])
        expect(f"{place}.{key}: wrong kind refused by the reader", mentions(lines, key), (bad[key], lines))
    # Words that are not listed, numbers out of range.
    for key, p in properties.items():
        values = []
        if "enum" in p:
            values.append("xyzzy")
        if "minimum" in p:
            values.append(p["minimum"] - 1)
        if "exclusiveMinimum" in p:
            values.append(p["exclusiveMinimum"])
        if "maximum" in p:
            values.append(p["maximum"] + 1)
        for value in values:
            value = int(value) if p.get("type") == "integer" else value
            case = nested(path, {key: value})
            expect(f"{place}.{key} = {value}: refused by the schema", any(e.absolute_path and e.absolute_path[-1] == key for _, e in faults(case)))
            expect(f"{place}.{key} = {value}: refused by the reader", mentions(said(case), key), said(case))
    # Missing keys.
    if table.get("required"):
        lines, case = said(nested(path, {})), nested(path, {})
        for key in table["required"]:
            expect(f"{place}.{key}: missing, said by the schema", any(f"'{key}' is a required" in e.message for _, e in faults(case)))
            expect(f"{place}.{key}: missing, said by the reader", mentions(lines, key, "missing"), lines)
expect("tables walked", walked >= len(tables), (walked, len(tables)))

# The other way: what the reader's own list of keys has, the schema has, table by table.
listed = subprocess.run([bedbow, "list", "--keys"], check=True, capture_output=True, text=True).stdout
keys = {}
for heading, body in re.findall(r"^### ([^\n]+)\n(.*?)(?=^#|\Z)", listed, re.S | re.M):
    keys[heading] = re.findall(r"^\| `(\w+)` \|", body, re.M)
expect("the reader's tables are listed", len(keys) >= 30, len(keys))
flat = {tuple(sorted(t.get("properties", {}))) for t in tables.values()} | {tuple(sorted(schema["properties"]))}
for heading, names in keys.items():
    expect(f"{heading}: the schema has the same keys", tuple(sorted(names)) in flat, names)

# ---- broken cases ----
# Looks like one, and is none: what a schema would have to know.
BLIND = {
    "missing-key.toml": "which sizes are due goes by the shape, and plugins bring shapes",
    "missing-nose.toml": "due only where there is a sheet",
    "sheet-without-clamp.toml": "due only where there is a sheet",
}
seen = unseen = 0
for file in sorted(glob.glob(source + "/tests/cli/broken/*.toml")):
    try:
        case = tomllib.loads(open(file, encoding="utf-8").read())
    except (tomllib.TOMLDecodeError, UnicodeDecodeError):
        continue
    wants = " ".join(re.findall(r"^# expect \d+: (.*)$", open(file, encoding="utf-8").read(), re.M))
    visible = re.search(r"unknown key|missing key|is a (list|text)|true or false|has no unit|is no table|one of|are due, as in|the list has|write \[|is not between|missing table|date or time|there is one such", wants)
    if not visible or os.path.basename(file) in BLIND:
        unseen += 1
        continue
    seen += 1
    expect(f"{os.path.basename(file)}: refused by the schema", faults(case), wants)
expect("broken cases whose mistake a schema sees", seen >= 5, (seen, unseen))
print(f"schema: {passed} passed, {failed} failed")
sys.exit(failed > 0)
