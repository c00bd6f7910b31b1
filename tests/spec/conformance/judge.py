"""Puts the cases of the kit before a runner and says which it passes; the protocol stands in ``spec/conformance``.

``python -m tests.spec.conformance.judge [--area NAME]… [--junit FILE] -- COMMAND…``: ends with 0 where every case
of the level ``must`` is passed, with 1 otherwise. It needs Python and nothing else.
"""

import argparse
import re
import sys
from collections import Counter
from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree as ET

from tests.spec.conformance import kit

PASSED, FAILED, ERRORED, SKIPPED = "passed", "failed", "errored", "skipped"
ELEMENTS = {FAILED: "failure", ERRORED: "error", SKIPPED: "skipped"}
NOT_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


class Judged(NamedTuple):
    """A case, how it ended, and all in which the answer is not as expected."""

    case: kit.Case
    how: str
    wrong: tuple


def judged(case, answer):
    """A case without an answer that can be compared is errored."""
    wrong = tuple(kit.lacks(case.expected, answer))
    if kit.unanswered(answer):
        return Judged(case, ERRORED, wrong)
    return Judged(case, SKIPPED if answer.get("skipped") else FAILED if wrong else PASSED, wrong)


def conforms(all_judged):
    """Whether every case that binds is passed."""
    return all(one.how == PASSED for one in all_judged if one.case.about["level"] == "must")


def junit(all_judged):
    """JUnit XML: a suite an area, a case a case; what was wrong as the message."""
    root = ET.Element("testsuites", name="conformance", **counts(all_judged))
    for area, of_area in by_area(all_judged).items():
        suite = ET.SubElement(root, "testsuite", name=area, **counts(of_area))
        for one in of_area:
            suite.append(testcase(one))
    return ET.tostring(root, encoding="utf-8", xml_declaration=True)


def testcase(one):
    area, _, name = one.case.about["id"].partition("/")
    case = ET.Element("testcase", classname=area, name=name)
    if one.how != PASSED:
        said = {"message": NOT_XML.sub("?", "; ".join(one.wrong))}
        kind = {} if one.how == SKIPPED else {"type": one.case.about["level"]}
        ET.SubElement(case, ELEMENTS[one.how], said | kind)
    return case


def counts(all_judged):
    found = Counter(one.how for one in all_judged)
    told = {"tests": len(all_judged), "failures": found[FAILED], "errors": found[ERRORED], "skipped": found[SKIPPED]}
    return {name: str(count) for name, count in told.items()}


def by_area(all_judged):
    areas = {}
    for one in all_judged:
        areas.setdefault(one.case.about["id"].partition("/")[0], []).append(one)
    return areas


def summary(all_judged):
    """A line an area, and a line for each case that is not passed."""
    for area, of_area in by_area(all_judged).items():
        found = Counter(one.how for one in of_area)
        yield f"{area}: " + ", ".join(f"{found[how]} {how}" for how in (PASSED, FAILED, ERRORED, SKIPPED))
    for one in all_judged:
        if one.how != PASSED:
            yield f"{one.how} ({one.case.about['level']}) {one.case.about['id']}: {'; '.join(one.wrong)}"


def arguments(given):
    areas = sorted({case.about["id"].partition("/")[0] for case in kit.cases()})
    parser = argparse.ArgumentParser(description="Put the conformance kit before a runner.")
    parser.add_argument("--area", action="append", choices=areas, help="only this area; may be given again")
    parser.add_argument("--junit", type=Path, metavar="FILE", help="write the results as JUnit XML")
    parser.add_argument("command", nargs="+", help="the runner, behind --")
    return parser.parse_args(given)


def main(given=None):
    """Run, print, and say whether it conforms."""
    asked = arguments(given)
    chosen = [one for one in kit.cases() if not asked.area or one.about["id"].partition("/")[0] in asked.area]
    try:
        answers = kit.run(asked.command, chosen)
    except OSError as error:
        sys.exit(f"the runner cannot be started: {error.strerror}")
    found = [judged(case, answers.get(case.about["id"])) for case in chosen]
    sys.stdout.write("".join(f"{line}\n" for line in summary(found)))
    if asked.junit:
        asked.junit.write_bytes(junit(found))
    return 0 if conforms(found) else 1


if __name__ == "__main__":
    sys.exit(main())
