"""A runner of the conformance kit: JSON lines in, JSON lines out. The protocol stands in ``spec/conformance``.

python tests/spec/conformance/runner.py < cases.jsonl > answers.jsonl
"""

import base64
import json
import sys

from wellposed.check import check
from wellposed.findings import Severity
from wellposed.report import REFUSED, UNREADABLE
from wellposed.rules import USUAL

MEDIA_TYPES = ("application/json",)
MEMBER = ("role", "clause", "part", "arch", "group", "tooth")
AMOUNT = ("what", "use", "clause", "arch", "unit", "amount")
FINDING = ("rule", "severity", "pointer", "line", "column")
CONFLICTS = ("cannot-hold-together", "means-not-said", "too-close-to-tell", "beyond-practice")
HEAVY = (Severity.STOP, Severity.ASK)


def answered(line):
    """The answer to one line; never raises, and repeats nothing of a document."""
    seq = None
    try:
        asked = json.loads(line)
        seq, case = asked["seq"], asked["case"]
        if case["media_type"] not in MEDIA_TYPES:
            return {"seq": seq, "skipped": True, "why": f"media type {case['media_type']}"}
        return {"seq": seq, **told(check(base64.b64decode(case["input"], validate=True)))}
    except Exception as error:
        return {"seq": seq, "errored": True, "why": type(error).__name__}


def told(report):
    """A report in the words of the protocol."""
    conflicts = [finding.facts for finding in report.findings if finding.rule in CONFLICTS]
    return {
        "outcome": outcome(report),
        "verdict": report.verdict,
        "findings": [finding_of(finding) for finding in report.findings],
        "conflicts": [[chosen(member, MEMBER) for member in facts["members"]] for facts in conflicts],
        "amounts": [chosen(way, AMOUNT) for facts in conflicts for way in facts["ways_out"]],
    }


def outcome(report):
    """One of four; clinical rules have no part in it."""
    if report.verdict in (UNREADABLE, REFUSED):
        return "unreadable" if report.verdict == UNREADABLE else "reject"
    heavy = any(finding.severity in HEAVY and finding.rule not in USUAL for finding in report.findings)
    return "accept-with-findings" if heavy else "accept"


def finding_of(finding):
    """Rule, severity and place; the nearest known name where one is told; whether a clinical rule speaks."""
    values = {name: getattr(finding, name) for name in FINDING} | {"nearest": finding.facts.get("nearest")}
    values["clinical"] = True if finding.rule in USUAL else None
    return {name: value for name, value in values.items() if value is not None}


def chosen(facts, names):
    """The facts of these names that are there."""
    return {name: facts[name] for name in names if name in facts}


def main():
    """Answer every line at once, so that nobody waits."""
    for line in sys.stdin:
        sys.stdout.write(json.dumps(answered(line)) + "\n")
        sys.stdout.flush()


if __name__ == "__main__":
    main()
