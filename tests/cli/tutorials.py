#!/usr/bin/python3
"""Runs the tutorials: every command in order, in one scratch directory, as a reader would. A block
```sh is run by a shell that stops at the first command that fails; every line of the block ```text under it must be
printed by it, in that order, "..." standing for omitted lines. Every case that a block leaves behind is validated
against the JSON Schema that the program prints.

    tutorials.py BEDBOW SOURCE_DIR [--show]

--show prints the output of each block, for writing a tutorial.
"""
import glob
import os
import re
import subprocess
import sys
import tempfile
import tomllib

from case_schema import faults as schema_faults, schema_of, validator_of

PROMISED = 5  # tutorials that docs/start.md lists


def blocks(page):
    """Fenced blocks as (kind, line number, text)."""
    out, kind, start, lines = [], None, 0, []
    for number, line in enumerate(open(page, encoding="utf-8"), 1):
        fence = re.match(r"```(\w*)\s*$", line)
        if fence and kind is None:
            kind, start, lines = fence.group(1), number, []
        elif fence:
            out.append((kind, start, "".join(lines)))
            kind = None
        elif kind is not None:
            lines.append(line)
    if kind is not None:
        sys.exit(f"{page}:{start}: the block is not closed")
    return out


def missing(quoted, said):
    """The first quoted line that was not printed in its place."""
    printed = [line.rstrip() for line in said.splitlines()]
    at = 0
    for line in (q.rstrip() for q in quoted.splitlines()):
        if line in ("", "..."):
            continue
        if line not in printed[at:]:
            return line
        at = printed.index(line, at) + 1
    return None


class Cases:
    """The case files of the scratch directory against the schema, each text once."""

    def __init__(self, bedbow, folder):
        self.validator, self.folder, self.seen = validator_of(schema_of(bedbow)), folder, set()

    def faults(self):
        out = []
        for path in glob.glob(f"{self.folder}/**/*.toml", recursive=True):
            text = open(path, encoding="utf-8").read()
            if text not in self.seen:
                self.seen.add(text)
                out += [f"{os.path.basename(path)}: {f}" for f in schema_faults(self.validator, tomllib.loads(text))]
        return out


def main(bedbow, source, show):
    pages = sorted(glob.glob(os.path.join(source, "docs/tutorials/*.md")))
    passed, faults = 0, []
    if len(pages) != PROMISED:
        faults.append(f"{len(pages)} tutorials where {PROMISED} are promised")
    with tempfile.TemporaryDirectory() as scratch:
        os.mkdir(f"{scratch}/bin")
        os.symlink(os.path.abspath(bedbow), f"{scratch}/bin/bedbow")
        os.mkdir(f"{scratch}/work")
        world = dict(os.environ, PATH=f"{scratch}/bin:{os.environ['PATH']}", LC_ALL="C.UTF-8")
        cases = Cases(bedbow, f"{scratch}/work")
        for page in pages:
            said, commands = None, 0
            for kind, line, text in blocks(page):
                place = f"{os.path.relpath(page, source)}:{line}"
                if kind == "sh":
                    run = subprocess.run(["bash", "-euo", "pipefail", "-c", text], cwd=f"{scratch}/work", env=world,
                                         stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, timeout=300)
                    said, commands = run.stdout, commands + 1
                    if show:
                        print(f"--- {place}\n{said}")
                    passed += run.returncode == 0
                    faults += [f"{place}: by the schema, {fault}" for fault in cases.faults()]
                    if run.returncode:
                        faults.append(f"{place}: ends with exit status {run.returncode}, having said:\n{said[-800:]}")
                elif kind == "text":
                    lost = missing(text, said) if said is not None else "no command above it"
                    passed += lost is None
                    if lost is not None:
                        faults.append(f'{place}: does not print (in this place)\n  {lost}\nbut:\n{(said or "")[:3000]}')
                elif kind not in ("toml",):
                    faults.append(f'{place}: a block "{kind}" is not checked; expected sh, text or toml')
            if commands < 3:
                faults.append(f"{os.path.basename(page)}: only {commands} blocks of commands")
        if len(cases.seen) < PROMISED:
            faults.append(f"only {len(cases.seen)} cases were made")
    print("\n".join(faults))
    print(f"tutorials: {passed} blocks true, {len(faults)} not; {len(cases.seen)} cases")
    return bool(faults)


sys.exit(main(sys.argv[1], sys.argv[2], "--show" in sys.argv[3:]))
