#!/usr/bin/python3
"""Cases against the JSON Schema that the program prints: every valid case of the project validates, and so does every
piece of a case in the documents; of the broken cases those validate whose error a schema can't detect.

    schema.py BEDBOW SOURCE_DIR
"""
import glob
import os
import re
import subprocess
import sys
import tempfile
import tomllib

from case_schema import Tally, faults, schema_of, validator_of

# Broken cases (tests/cli/broken, exit code 2 or 4) whose error a schema can't detect, with the reason.
UNSEEN = {
    "a name that has to be in the case or built in": """
        hold-in-the-air mesh-part-unknown missing-bed missing-nose no-such-bar no-such-body no-such-gauge
        sheet-without-clamp two-bars-of-one-name unknown-class unknown-material unknown-moment-law unknown-shape
        unknown-thread""",
    "which keys a shape takes": "missing-key",
    "what a unit means": """gauge-not-of-a-sheet weight-as-mass wrong-case-of-unit wrong-kind-of-unit""",
    "how large a quantity is": """
        hinge-play-without-bearing hinge-slides-out seat-larger-than-its-bar too-large wall-too-thick""",
    "where things are": """
        apron-meets-a-nut apron-meets-the-bed apron-meets-the-clamp flange-meets-the-clamp setback-at-sixty-degrees
        setback-in-the-bend setback-in-the-plane setback-of-a-rounded-nose square-front-stops-the-flange flange-shorter-than-the-bend
        element-size-too-small fingers-beyond-the-clamp joint-to-itself load-off-its-bar member-without-length
        post-beside-its-bar seat-across-a-hole screws-beside-the-mesh screws-off-the-mesh
        screws-on-a-panel screws-on-lines screws-that-do-not-fit sheet-off-the-bed tie-without-place""",
    "numbers that JSON does not have": "nan-bare",
    "what stands in another file": """
        mesh-cell-names-no-point mesh-cell-twice mesh-cells-of-other-kinds mesh-claims-too-much mesh-cut-short
        mesh-empty
        mesh-is-a-folder mesh-line-without-length mesh-material-no-names mesh-no-file mesh-no-material mesh-no-section
        mesh-no-thickness mesh-not-vtk mesh-point-no-number mesh-quad-folded mesh-quad-warped mesh-set-below-nought
        mesh-set-unknown mesh-set-without-cell mesh-surface-file mesh-thickness-nought mesh-unknown-material
        mesh-unknown-section mesh-up-along mesh-xml-cut-short""",
}


def check_valid(tally, validator, source):
    paths = glob.glob(f"{source}/cases/*/case.toml") + glob.glob(f"{source}/tests/cases/*.toml")
    paths.append(f"{source}/tests/fuzz/corpus/everything.toml")
    for path in sorted(paths):
        found = faults(validator, tomllib.load(open(path, "rb")))
        tally.expect(not found, f"{path}: {found}")


def check_broken(tally, validator, source):
    reasons = {name: why for why, names in UNSEEN.items() for name in names.split()}
    for path in sorted(glob.glob(f"{source}/tests/cli/broken/*.toml")):
        name = os.path.basename(path)[: -len(".toml")]
        text = open(path, encoding="utf-8").read()
        code = re.match(r"# expect (\d+)", text)[1]
        try:
            found = faults(validator, tomllib.loads(text))
        except tomllib.TOMLDecodeError as e:
            found = [str(e)]
        # A case that solves, within limits or not, or can't be solved for lack of supports, is still a valid case.
        sound = code in "013" or name in reasons
        tally.expect(sound == (not found), f"{name} ({reasons.get(name, 'code ' + code)}): {found or 'no fault found'}")
        tally.expect(not (code in "013" and name in reasons), f"{name} is no broken case and needs no reason")
        reasons.pop(name, None)
    tally.expect(not reasons, f"reasons for no case: {reasons}")


def check_documents(tally, validator, source):
    pages = glob.glob(f"{source}/docs/**/*.md", recursive=True) + glob.glob(f"{source}/cases/*/README.md")
    pages.append(f"{source}/README.md")
    count = 0
    for page in sorted(pages):
        for text in re.findall(r"^```toml\n(.*?)^```", open(page, encoding="utf-8").read(), re.S | re.M):
            count += 1
            found = faults(validator, tomllib.loads(text), in_part=True)
            tally.expect(not found, f"{page}: {found} in\n{text}")
    tally.expect(count >= 5, f"only {count} pieces of cases in the documents")


def check_tests(tally, validator, bedbow, source):
    """Texts in the C++ tests: those that the reader accepts, the schema accepts."""
    count = 0
    with tempfile.TemporaryDirectory() as scratch:
        path = f"{scratch}/case.toml"
        for file in sorted(glob.glob(f"{source}/tests/**/*.[ch]*", recursive=True)):
            for _, text in re.findall(r'R"(\w*)\((.*?)\)\1"', open(file, encoding="utf-8").read(), re.S):
                try:
                    case = tomllib.loads(text)
                except tomllib.TOMLDecodeError:
                    continue
                open(path, "w", encoding="utf-8").write(text)
                if not case or subprocess.run([bedbow, "check", path], capture_output=True).returncode:
                    continue
                count += 1
                found = faults(validator, case)
                tally.expect(not found, f"{file}: {found} in\n{text}")
    print(f"{count} case texts in the C++ tests")


def main(bedbow, source):
    tally = Tally("schema against cases")
    validator = validator_of(schema_of(bedbow))
    check_valid(tally, validator, source)
    check_broken(tally, validator, source)
    check_documents(tally, validator, source)
    check_tests(tally, validator, bedbow, source)
    tally.end()


main(*sys.argv[1:3])
