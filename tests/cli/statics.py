#!/usr/bin/env python3
"""Sums the forces of results.json alone: in every step every part, and the machine as a whole, must be in
equilibrium, in force and in moment, to 1e-8 of the greatest force.

  statics.py FILE...                 checks each results.json, one line each; exit 1 where one is not in equilibrium
  statics.py --cases BEDBOW PROJECT  solves the project's cases and checks those; then changes single forces in the results
                                     by a millionth, and expects the check to fail
"""
import copy
import json
import math
import pathlib
import subprocess
import sys
import tempfile

LIMIT = 1e-8  # of the greatest force; of moments over the greatest force times the machine's size


def plus(a, b):
    return [x + y for x, y in zip(a, b)]


def times(a, factor):
    return [x * factor for x in a]


def cross(a, b):
    return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]


def norm(a):
    return math.sqrt(sum(x * x for x in a))


def joint_actions(joint):
    """Action of a joint on each side: (part, place, force, moment). Holds act on each part separately."""
    if "shares" in joint:
        for share in joint["shares"]:
            yield share["part"], share["at_mm"], share["vector_N"], share["moment_N_mm"]
        return
    places = joint.get("at_each_mm", [joint["at_mm"]] * 2)
    for part, place, sign in zip(joint["parts"], places, (1, -1)):
        yield part, place, times(joint["vector_N"], sign), times(joint["moment_N_mm"], sign)


def contact_actions(contact):
    for x, y, z, force in zip(contact["x_mm"], contact["y_mm"], contact["z_mm"], contact["force_N"]):
        for part, sign in zip(contact["parts"], (-1, 1)):
            yield part, [x, y, z], times(contact["normal"], sign * force), [0, 0, 0]


def joints(step):
    """Entries of all lists of joints: those with the force on the first of what is joined."""
    return [item for value in step.values() if isinstance(value, list)
            for item in value if isinstance(item, dict) and "vector_N" in item]


def actions(step):
    """Everything that acts in a step: (part or None for ground, place, force, moment), and whether between parts."""
    for load in step["loads"]:
        yield load["part"], load["at_mm"], load["force_N"], load["moment_N_mm"]
    for joint in joints(step):
        yield from joint_actions(joint)
    for contact in step["contacts"]:
        yield from contact_actions(contact)


def box_of(places):
    lower = [min(p[k] for p in places) for k in range(3)]
    upper = [max(p[k] for p in places) for k in range(3)]
    return times(plus(lower, upper), 0.5), norm(plus(upper, times(lower, -1)))


def rest(acting, centre, greatest, size, plane):
    """Unbalanced force and moment, relative to the greatest force."""
    force, moment = [0, 0, 0], [0, 0, 0]
    for _, at, f, m in acting:
        force = plus(force, f)
        moment = plus(moment, plus(m, cross(plus(at, times(centre, -1)), f)))
    if plane:  # nothing moves along y, about x or about z there
        force, moment = [force[0], 0, force[2]], [0, moment[1], 0]
    return max(norm(force) / greatest, norm(moment) / greatest / size)


def check_step(step, parts, plane):
    """Yields the name of each sum, and its imbalance."""
    acting = list(actions(step))
    greatest = max([norm(f) for _, _, f, _ in acting], default=0)
    if greatest == 0:
        return
    centre, size = box_of([at for _, at, _, _ in acting])
    size = max(size, 1.0)
    for i, part in enumerate(parts):
        yield f"{step['name']}: {part['name']}", rest([a for a in acting if a[0] == i], centre, greatest, size, plane)
    on_machine = [a for a in acting if a[0] is not None]
    yield f"{step['name']}: the whole", rest(on_machine, centre, greatest, size, plane)


def moment_along_x(load):
    """Moment of a load about the bend line."""
    return cross(load["at_mm"], load["force_N"])[0] + load["moment_N_mm"][0]


def check_sheet(results):
    """The sheet's loads equal the file's values per length times the sheet's width: the couple of its pushes on nose and
    apron is its moment at every angle. Fingers take loads over their own widths, not over the gaps between them: the
    grips, which act over the same lengths as the pushes, say over how much."""
    if "sheet" not in results:
        return
    for step in results["steps"]:
        x = step["bend_line"]["x_mm"]
        width = x[-1] - x[0]
        loads = {load["what"]: load for load in step["loads"]}
        if "grip on the bed" in loads:
            wanted = results["sheet"]["grip_N_per_mm"] * width
            yield f"{step['name']}: grip on the bed", abs(norm(loads["grip on the bed"]["force_N"]) / wanted - 1)
        if "push on the apron" in loads:
            held = norm(loads["grip on the nose"]["force_N"]) / norm(loads["grip on the bed"]["force_N"])
            couple = moment_along_x(loads["push on the apron"]) + moment_along_x(loads["push on the nose"]) / held
            wanted = results["sheet"]["moment_N_mm_per_mm"] * width
            yield f"{step['name']}: couple of the pushes", abs(abs(couple) / wanted - 1)


def check(results):
    """(worst imbalance, where it is) of a file."""
    plane = results["solver"]["dimension"] == 2
    found = [found for step in results["steps"] for found in check_step(step, results["parts"], plane)]
    found += check_sheet(results)
    if not found:
        return math.inf, "nothing acts in any step"
    return max((r, what) for what, r in found)


# ---- the project's cases

def solve(bedbow, case, out):
    """Exit 0 or 1: solved."""
    done = subprocess.run([bedbow, "solve", str(case), "--out", str(out)], capture_output=True, text=True, check=False)
    if done.returncode not in (0, 1):
        sys.exit(f"{case}: exit {done.returncode}\n{done.stderr}")
    return json.loads((out / "results.json").read_text())


def cases_of(project):
    yield from sorted(project.glob("cases/*/case.toml"))
    yield from sorted(project.glob("tests/cases/*.toml"))


def seen_forces(step):
    """The vectors of a step so large that a millionth of them exceeds the limit."""
    least = 0.05 * max([norm(f) for _, _, f, _ in actions(step)], default=0)
    for joint in joints(step):
        if len(set(joint.get("parts", [0, None]))) == 1:  # inside one part, as screws are
            continue
        for item in joint.get("shares", [joint]):
            yield joint["name"], item["vector_N"], least
    for load in step["loads"]:
        yield load["what"], load["force_N"], least


def tampered(results):
    """The same file with one force changed by a millionth, a different one each time."""
    for i, step in enumerate(results["steps"]):
        for k, (what, force, least) in enumerate(seen_forces(step)):
            if norm(force) <= least:
                continue
            copied = copy.deepcopy(results)
            changed = list(seen_forces(copied["steps"][i]))[k][1]
            changed[:] = times(changed, 1 + 1e-6)
            yield f"{step['name']}: {what}", copied
        for k, contact in enumerate(step["contacts"]):
            if len(set(contact["parts"])) == 1 or not contact["force_N"]:
                continue
            copied = copy.deepcopy(results)
            copied["steps"][i]["contacts"][k]["normal"] = times(contact["normal"], 1 + 1e-6)
            if sum(contact["force_N"]) > 0.05 * max(norm(f) for _, _, f, _ in actions(step)):
                yield f"{step['name']}: {contact['what']}", copied


def check_cases(bedbow, project):
    failed = False
    with tempfile.TemporaryDirectory() as scratch:
        for i, case in enumerate(cases_of(project)):
            results = solve(bedbow, case, pathlib.Path(scratch) / str(i))
            worst, what = check(results)
            print(f"{case.relative_to(project)}: {worst:.1e} ({what})")
            failed |= not worst < LIMIT
            for changed, copied in tampered(results):
                if check(copied)[0] < LIMIT:
                    print(f"{case.relative_to(project)}: a millionth more is not seen, {changed}")
                    failed = True
    return failed


def main():
    if sys.argv[1:2] == ["--cases"]:
        return check_cases(sys.argv[2], pathlib.Path(sys.argv[3]))
    failed = False
    for name in sys.argv[1:]:
        worst, what = check(json.loads(pathlib.Path(name).read_text()))
        print(f"{name}: {worst:.1e} ({what})")
        failed |= not worst < LIMIT
    return failed


if __name__ == "__main__":
    sys.exit(main())
