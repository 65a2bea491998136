#!/usr/bin/python3
"""A walk over the JSON Schema that the program prints, against the program's reader: for every table and key the same
values are accepted and refused by both, and both know the same keys.

    schema_walk.py BEDBOW
"""
import json
import re
import subprocess
import sys
import tempfile
import tomllib

from case_schema import Tally, schema_of, validator_of

AT_ONCE = 50  # keys in one case: the reader reports the first hundred problems only

# The reader's messages about a value on its own. Its other messages depend on other keys.
REFUSED = re.compile(
    r"unknown key|(?<!held; )expected|has no unit|greater than zero|must not be negative|is not between"
    r"|is not one of|is not a valid|string is empty|the list has|is not a unit of|begin with a number|must be finite"
    r"|there is only one such table|there may be several|unknown unit|is too large|must be whole numbers"
)
# For quantities these depend on the unit, which the schema does not check.
UNSEEN = re.compile(r"is not between .* in SI units|is too large: the greatest")


def tables_of(schema):
    """Every table of the schema with one path to it: (id, [(key, kind)], its schema)."""
    out, seen, queue = [], set(), [("", [], schema)]
    while queue:
        table, way, spec = queue.pop(0)
        out.append((table, way, spec))
        for key, value in spec["properties"].items():
            for kind, at in (("table", value), ("tables", value.get("items", {})),
                             ("named", value.get("additionalProperties", {}))):
                target = at.get("$ref", "").removeprefix("#/$defs/") if isinstance(at, dict) else ""
                if target and target not in seen:
                    seen.add(target)
                    queue.append((target, way + [(key, kind)], schema["$defs"][target]))
    return out, seen


def holds_tables(value):
    nested = (value, value.get("items", {}), value.get("additionalProperties", {}))
    return any("$ref" in at for at in nested if isinstance(at, dict))


def heading(way):
    """Lines that open the table, and where TOML then puts its keys."""
    lines, place, names = [], [], []
    for step, (key, kind) in enumerate(way):
        names.append(key)
        place += [key, 0] if kind == "tables" else [key, "mine"] if kind == "named" else [key]
        if kind == "named":
            names.append("mine")
        if kind == "tables":
            lines.append(f"[[{'.'.join(names)}]]")
        elif step == len(way) - 1:
            lines.append(f"[{'.'.join(names)}]")
    return lines, place


def as_toml(value):
    """A value in TOML; of those tried, only nested tables differ from JSON."""
    return json.dumps(value, ensure_ascii=False).replace('"a": 1', "a = 1")


def number_probes(spec):
    low, high = spec.get("minimum"), spec.get("maximum")
    above = spec.get("exclusiveMinimum")
    step = 1e-6
    out = [("x", False), (True, False), ([1], False), ({"a": 1}, False)]
    if spec["type"] == "integer":
        low, high, step = *(None if end is None else int(end) for end in (low, high)), 1
        out += [(2.5, False)]
    if low is not None:
        out += [(low - step, False)] + ([(low, True)] if above is None else [])
    if above is not None:
        out += [(above, False), (above - step, False)]
    if high is not None:
        out += [(high, True), (high + max(step, abs(high) * 1e-9), False)]
    return out


def text_probes(spec, example):
    """Verdict None: both have to give the same one, whatever it is."""
    out = [(3, False), (True, False), (1.5, False), (["x", "y"], False), ({"a": 1}, False)]
    if "enum" in spec:
        return out + [(word, True) for word in spec["enum"]] + [("no such word", False), ("", False)]
    if "minLength" in spec:
        out.append(("", False))
    if "maxLength" in spec:
        out += [("n" * spec["maxLength"], True), ("n" * (spec["maxLength"] + 1), False), ("a\tb", False), ("a.b", None)]
    if "A-Za-z" in spec.get("pattern", ""):  # a quantity
        unit = re.sub(r"^[-+0-9./ ]+", "", example)
        out += [(text, False) for text in ("", "600", "600.5", "1e5", unit, "six " + unit, "nan " + unit, "inf " + unit)]
        numbers = ["1", "+1", "-1", "\u22121", "\u20131", "0", "0.0", "-0", "+0", "0e3", "1e0", ".5", "-.5", "1/2", "1 1/2",
                   "1-1/2", "0 1/2", "-0 1/2", "\u00bd", "1\u00bd", "0\u00bd", "1\u20442", " 1", "- 1", "1/0", "1.5/2"]
        out += [(f"{number} {unit}", None) for number in numbers] + [(f"1{unit} ", None), (f"1\u00a0{unit}", None)]
    return out


def probes(spec):
    """Values to try for a key, each with the verdict expected from the schema's text."""
    example = spec.get("examples", [None])[0]
    out = [] if example is None else [(example, True)]
    kind = spec.get("type")
    if kind == "array":
        item, least = spec["items"], max(spec.get("minItems", 0), 1)
        one = example[0] if example else item.get("enum", ["1"])[0]
        inner = text_probes(item, one) if item.get("type") == "string" else number_probes(item) if item else []
        out += [([value] + [one] * (least - 1), verdict) for value, verdict in inner]
        out += [("x", False), (3, False), ([one] * (spec["minItems"] - 1), False)]
        if "maxItems" in spec:
            out += [([one] * spec["maxItems"], True), ([one] * (spec["maxItems"] + 1), False)]
    elif kind == "string":
        out += text_probes(spec, example or "")
    elif kind in ("number", "integer"):
        out += number_probes(spec)
    elif kind == "boolean":
        out += [(True, True), (False, True), (1, False), ("true", False), ([True], False)]
    return out


class Walk:
    def __init__(self, bedbow):
        self.bedbow = bedbow
        self.schema = schema_of(bedbow)
        self.validator = validator_of(self.schema)
        self.tables, self.reached = tables_of(self.schema)
        self.tally = Tally("schema against the reader")
        self.scratch = tempfile.TemporaryDirectory()

    def read(self, text):
        """The reader's messages by line, and the places where the validator finds errors."""
        path = f"{self.scratch.name}/case.toml"
        open(path, "w", encoding="utf-8").write(text)
        run = subprocess.run([self.bedbow, "check", path], capture_output=True, text=True)
        said = run.stderr
        assert run.returncode in (0, 2) or "frame.vtu: there is no such file" in said, f"exit code {run.returncode}: {said}\n{text}"
        lines = {}
        for line, message in re.findall(r"case\.toml:(\d+):\d+: error: (.*)", said):
            lines.setdefault(int(line), []).append(message)
        if re.search("^error: plugin : the case requests it", said):
            return {2: ["the string is empty"]}, self.found(text)
        told = re.findall(r"^(\d+) errors?$", said, re.M)
        assert sum(map(len, lines.values())) == int(told[-1] if told else 0), said
        return lines, self.found(text)

    def found(self, text):
        return [(list(e.absolute_path), e) for e in self.validator.iter_errors(tomllib.loads(text))]

    def try_values(self, tried):
        """tried: (way, key, value, verdict), no two of one table and key."""
        lines, at, opened = [], [], {}
        for one in tried:
            opened.setdefault(tuple(one[0]), []).append(one)
        for way, ones in sorted(opened.items(), key=lambda w: len(w[0])):
            head, place = heading(way)
            # The tables above may be open already, each once.
            lines += [h for h in head if h not in lines]
            for _, key, value, verdict in ones:
                lines.append(f"{key} = {as_toml(value)}")
                at.append((len(lines), place + [key], lines[-1], verdict))
        said, found = self.read("\n".join(lines) + "\n")
        for line, place, text, verdict in at:
            messages = [m for m in said.get(line, []) if REFUSED.search(m)]
            by_schema = [e.message for path, e in found if path[: len(place)] == place]
            what = f"{'.'.join(map(str, place))}: {text}: reader {said.get(line)}, schema {by_schema}"
            if any(UNSEEN.search(m) for m in messages):
                self.tally.expect(not by_schema or verdict is not True, what)
                continue
            self.tally.expect(bool(messages) == bool(by_schema), what)
            if verdict is not None:
                self.tally.expect(bool(by_schema) != verdict, f"not as the schema says: {what}")

    def values(self):
        keys = []
        for _, way, spec in self.tables:
            for key, value in spec["properties"].items():
                if holds_tables(value):
                    continue
                keys.append((way, key, probes(value)))
                self.tally.expect(keys[-1][2], f"nothing to try for {key}")
        # The reader stops at a case with plugins or a mesh that are not allowed, so these are tried alone.
        alone = [[key] for key in keys if key[0] in ([("plugins", "table")], [("mesh", "table")]) and "file" in key[1]]
        self.tally.expect(len(alone) == 2, f"alone: {alone}")
        rest = [key for key in keys if [key] not in alone]
        for group in alone + [rest[start : start + AT_ONCE] for start in range(0, len(rest), AT_ONCE)]:
            for turn in range(max(len(tries) for _, _, tries in group)):
                self.try_values([(way, key, *tries[turn]) for way, key, tries in group if turn < len(tries)])

    def nested(self):
        """A number, a text or the other kind of brackets where tables are expected."""
        for _, way, spec in self.tables:
            for key, value in spec["properties"].items():
                if holds_tables(value):
                    for wrong in (3, "x", [3], {"a": 1} if value.get("type") == "array" else [{"a": 1}]):
                        self.try_nested(way, key, wrong)

    def try_nested(self, way, key, wrong):
        head, place = heading(way)
        text = as_toml(wrong)
        said, found = self.read("\n".join(head + [f"{key} = {text}"]) + "\n")
        line = len(head) + 1
        by_schema = [e.message for path, e in found if path[: len(place) + 1] == place + [key]]
        self.tally.expect(said.get(line) and by_schema, f"{place} {key} = {text}: {said.get(line)}, {by_schema}")

    def unknown(self):
        for _, way, spec in self.tables:
            head, place = heading(way)
            said, found = self.read("\n".join(head + ['no_such_key = "1 mm"']) + "\n")
            by_reader = any("unknown key" in m for m in said.get(len(head) + 1, []))
            by_schema = any(e.validator == "additionalProperties" and path == place for path, e in found)
            self.tally.expect(by_reader and by_schema, f"unknown key in {place}: {said}, {found}")

    def due(self):
        for _, way, spec in self.tables:
            head, place = heading(way)
            if not head:
                continue
            said, _ = self.read("\n".join(head) + "\n")
            missing = " ".join(m for messages in said.values() for m in messages)
            for key in spec.get("required", []):
                named = f'missing key "{key}"' in missing or re.search(rf"missing table \[\[[\w.]*{key}\]\]", missing)
                self.tally.expect(named, f"{place} without {key}: {said}")

    def same_keys(self):
        """The reader's table of keys, as the program prints it for the pages."""
        written = subprocess.run([self.bedbow, "list", "--keys"], capture_output=True, text=True, check=True).stdout
        by_reader = {}
        for section in written.split("### ")[1:]:
            title, rest = section.split("\n", 1)
            title = title.strip("`") if title.startswith("`") else ""
            rows = re.findall(r"^\| `([^`]+)` \|.*", rest, re.M)
            due = re.findall(r"^\| `([^`]+)` \|.*(?<!\\)\| required \|", rest, re.M)
            by_reader[title] = (sorted(rows), sorted(due))
        by_schema = {}
        for _, _, spec in self.tables:
            title = spec["description"].split(": ", 1)[0]
            by_schema[title] = (sorted(spec["properties"]), sorted(spec.get("required", [])))
        self.tally.expect(len(by_reader) > 30, f"only {len(by_reader)} tables")
        self.tally.expect(sorted(by_reader) == sorted(by_schema), f"{sorted(by_reader)} {sorted(by_schema)}")
        for title, keys in by_reader.items():
            self.tally.expect(by_schema.get(title) == keys, f"{title}: {by_schema.get(title)} for {keys}")

    def run(self):
        self.tally.expect(self.reached == set(self.schema["$defs"]), "tables that nothing leads to")
        self.same_keys()
        self.unknown()
        self.due()
        self.nested()
        self.values()
        self.tally.end()


Walk(sys.argv[1]).run()
