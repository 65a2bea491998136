"""The JSON Schema that the program prints, in an independent validator (Debian's python3-jsonschema)."""
import json
import subprocess
import sys

import jsonschema


class Tally:
    """Counts passed checks and reports failed ones."""

    def __init__(self, name):
        self.name, self.passed, self.failed = name, 0, 0

    def expect(self, held, what):
        self.passed += bool(held)
        self.failed += not held
        if not held:
            print("FAIL", what)

    def end(self):
        print(f"{self.name}: {self.passed} passed, {self.failed} failed")
        sys.exit(self.failed > 0)


def schema_of(bedbow):
    printed = subprocess.run([bedbow, "schema"], check=True, stdout=subprocess.PIPE, text=True).stdout
    schema = json.loads(printed)
    jsonschema.Draft202012Validator.check_schema(schema)
    return schema


def validator_of(schema):
    return jsonschema.Draft202012Validator(schema)


def faults(validator, case, in_part=False):
    """Errors that the validator finds in a case. in_part: required keys may be missing, as in a fragment."""
    return [
        "/".join(map(str, e.absolute_path)) + ": " + e.message
        for e in validator.iter_errors(case)
        if not (in_part and e.validator == "required")
    ]
