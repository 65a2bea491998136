#!/usr/bin/env python3
"""Checks docs/theory/formulas.md against the tree: the pages, sections, files and tests that it names exist, every row
has a source, and every source file of mesh and solver has a row or is listed as having no formula.

    formulas.py SOURCE_DIR
"""
import glob
import os
import re
import sys

source = sys.argv[1]
os.chdir(source)
passed = failed = 0


def expect(holds, what):
    global passed, failed
    passed, failed = passed + bool(holds), failed + (not holds)
    if not holds:
        print("FAIL", what)


suites = set()
for file in glob.glob("tests/**/*.cpp", recursive=True):
    suites |= set(re.findall(r"^TEST(?:_F|_P)?\((\w+),", open(file, encoding="utf-8").read(), re.M))
page = open("docs/theory/formulas.md", encoding="utf-8").read()
indexed, pages = set(), set()
rows = [[c.strip() for c in line.strip("|").split(" | ")] for line in page.splitlines() if line.startswith("| ")]
rows = [r for r in rows if r[0] != "formula"]
for row in rows:
    expect(len(row) == 5, f"five cells: {row}")
    if len(row) != 5:
        continue
    formula, where, code, whose, tests = row
    link = re.fullmatch(r"\[[^\]]+\]\(([\w.]+)\), (.+)", where)
    expect(link, f"{formula}: no page and section in '{where}'")
    if link:
        file, section = link.groups()
        pages.add(file)
        text = open("docs/theory/" + file, encoding="utf-8").read() if os.path.exists("docs/theory/" + file) else ""
        expect(f"\n## {section}\n" in text, f"{formula}: no section '{section}' in {file}")
    files = re.findall(r"`([^`]+)`", code)
    expect(files, f"{formula}: no code")
    for file in files:
        indexed.add(file)
        expect(os.path.exists(file), f"{formula}: no file {file}")
    expect(whose, f"{formula}: no source")
    names = re.findall(r"`([^`]+)`", tests)
    expect(names, f"{formula}: no test")
    for name in names:
        expect(name in suites, f"{formula}: no test suite {name}")
expect(len(rows) >= 60, f"{len(rows)} rows")
without = set(re.findall(r"`([\w/]+\.cpp)`", page[page.index("## Files without a formula"):]))
expect(not without & indexed, f"with and without a formula: {without & indexed}")
for file in sorted(glob.glob("mesh/**/*.cpp", recursive=True) + glob.glob("solver/**/*.cpp", recursive=True)):
    if not file.startswith("solver/conformance/"):
        expect(file in indexed | without, f"{file} is neither in a row nor among those without a formula")
for file in without:
    expect(os.path.exists(file), f"no file {file}")
for file in os.listdir("docs/theory"):
    expect(file in pages or file == "formulas.md", f"{file}: none of its formulas is in the index")
print(f"formulas: {passed} passed, {failed} failed")
sys.exit(failed > 0)
