"""A runner of the conformance kit: JSON lines in, JSON lines out. The protocol stands in ``spec/conformance``.

python tests/spec/conformance/runner.py < cases.jsonl > answers.jsonl
"""

import base64
import json
import sys

from wellposed.check import check, sound, sound_document
from wellposed.digests import digest, digest_of
from wellposed.exchange.trusting import trust_of
from wellposed.exchange.verification import Received, verified
from wellposed.findings import Severity
from wellposed.formats import forms
from wellposed.reading import Document, read_document
from wellposed.report import REFUSED, UNREADABLE, Report
from wellposed.review import review
from wellposed.review.rules import USUAL as OF_SETUPS
from wellposed.rules import USUAL as OF_ORDERS

FORMS = {"application/xml": "xml", "text/csv": "csv", "application/fhir+json": "fhir"}
MEMBER = ("role", "clause", "part", "arch", "group", "tooth")
AMOUNT = ("what", "use", "clause", "arch", "unit", "amount")
FINDING = ("rule", "severity", "pointer", "line", "column")
CONFLICTS = ("cannot-hold-together", "means-not-said", "too-close-to-tell", "beyond-practice")
HEAVY = (Severity.STOP, Severity.ASK)
CLINICAL = OF_ORDERS.keys() | OF_SETUPS.keys()


def answered(line):
    """The answer to one line; never raises, and repeats nothing of a document."""
    seq = None
    try:
        asked = json.loads(line)
        seq, case = asked["seq"], asked["case"]
        task, kind = case.get("task", "check"), case["media_type"]
        if task not in TASKS:
            return {"seq": seq, "skipped": True, "why": f"task {task}"}
        if kind not in (FORMS if task == "read" else ("application/json",)):
            return {"seq": seq, "skipped": True, "why": f"media type {kind}"}
        return {"seq": seq, **TASKS[task](case, bytes_of(case["input"]))}
    except Exception as error:
        return {"seq": seq, "errored": True, "why": type(error).__name__}


def bytes_of(text):
    return base64.b64decode(text, validate=True)


def checked(_case, data):
    """``check``: whether the document is sound, and its clauses can hold together."""
    return told(check(data))


def read(case, data):
    """``read``: the document that another form carries."""
    (found,) = forms()[FORMS[case["media_type"]]].read(data)
    answer = {"outcome": "reject", "findings": [finding_of(one) for one in found.findings]}
    if found.document is None:
        return answer
    return answer | {"outcome": accepted(found.findings), "digest": digest(found.document)}


def canonical(_case, data):
    """``canonical``: the digest of the canonical bytes of a document, sound or not, that can be read."""
    found = read_document(data)
    if isinstance(found, Document):
        return {"outcome": "accept", "findings": [], "digest": digest_of(found.value)}
    return {"outcome": "unreadable", "findings": [finding_of(one) for one in found]}


def verify(case, data):
    """``verify``: whether the document comes from whom it names, by the keys and the signature beside it."""
    beside = {name: bytes_of(text) for name, text in case["beside"].items()}
    earlier = [Received(**one) for one in json.loads(beside.get("received", b"[]"))]
    found = verified(data, beside.get("signature"), trust_of(beside["trust"]), case["now"], earlier)
    answer = {"findings": [finding_of(one) for one in found.findings]}
    if found.digest is None:
        return answer | {"outcome": "unreadable"}
    return answer | {"outcome": accepted(found.findings) if found.authentic else "reject", "digest": found.digest}


def reviewed(case, data):
    """``review``: what a setup makes of the prescription beside it, which is sound."""
    made, order = sound_document(data), sound(bytes_of(case["beside"]["prescription"]))
    if isinstance(made, Report):
        return told(check(data))
    found = review(order, made)
    findings = (*check(data).findings, *found.findings)
    return {
        "outcome": accepted(one for one in findings if one.rule not in CLINICAL),
        "findings": [finding_of(one) for one in findings],
        "clauses": [{"clause": one.id, "outcome": one.outcome} for one in found.clauses],
    }


def accepted(findings):
    """One of two, of what is accepted."""
    return "accept-with-findings" if any(one.severity in HEAVY for one in findings) else "accept"


TASKS = {"check": checked, "read": read, "canonical": canonical, "verify": verify, "review": reviewed}


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
    return accepted(finding for finding in report.findings if finding.rule not in CLINICAL)


def finding_of(finding):
    """Rule, severity and place; the nearest known name where one is told; whether a clinical rule speaks."""
    values = {name: getattr(finding, name) for name in FINDING} | {"nearest": finding.facts.get("nearest")}
    values["clinical"] = True if finding.rule in CLINICAL else None
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
