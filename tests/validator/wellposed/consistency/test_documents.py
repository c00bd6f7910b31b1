"""The document as a whole: its revision, its dates, its extensions."""

import pytest
from tests.validator.wellposed.consistency.ordinary import found, rows, told_by

from wellposed.consistency import documents, envelope_faults
from wellposed.model import Receipt

DIGEST = "0f" * 32


@pytest.mark.parametrize(
    "revision, replaces, expected",
    **rows(
        ("The first replaces nothing.", 1, None, []),
        ("The second replaces the first.", 2, DIGEST, []),
        ("The first replaces something.", 1, DIGEST, [("/replaces", (), {"revision": 1, "expected": "no replaces"})]),
        ("The second replaces nothing.", 2, None, [("/revision", (), {"revision": 2, "expected": "replaces"})]),
    ),
)
def test_revision_chain(revision, replaces, expected):
    told = [(pointer, clauses, facts | {"name": "replaces"}) for pointer, clauses, facts in expected]
    assert told_by(documents.revision_chain, revision=revision, replaces=replaces) == told


def dated(pointer, *clauses):
    return [(pointer, clauses, {"expected": "a day of the calendar"})]


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("A leap day.", {"issued": "2028-02-29T09:30:00Z"}, []),
        ("A leap day of another year.", {"issued": "2026-02-29T09:30:00Z"}, dated("/issued")),
        (
            "The 31st of April.",
            {"laboratory": {"id": "lab-4", "needed_by": "2026-04-31"}},
            dated("/laboratory/needed_by"),
        ),
        (
            "The year 0.",
            {"records": [{"kind": "other"}, {"kind": "other", "date": "0000-01-01"}]},
            dated("/records/1/date"),
        ),
        (
            "Of a finding.",
            {"findings": [found("f1", "overjet", 2, date="2026-06-31")]},
            dated("/findings/0/date", "f1"),
        ),
        (
            "Of a step.",
            {"process": [{"id": "q1", "step": "extraction", "date": "2026-11-31"}]},
            dated("/process/0/date", "q1"),
        ),
    ),
)
def test_no_such_date(changes, expected):
    assert told_by(documents.no_such_date, **changes) == expected


OWN = {"expected": "a domain of your own"}


@pytest.mark.parametrize(
    "key, critical, unknown, reserved, kept",
    **rows(
        ("Anybody's.", "org.example", False, False, False, True),
        ("Anybody's, critical.", "org.example", True, True, False, False),
        ("The format's.", "wellposed.x", False, False, True, False),
        ("The format's, critical.", "wellposed.x", True, False, True, False),
        ("One that only sounds like the format's.", "wellposedness.x", False, False, False, True),
    ),
)
def test_extensions(key, critical, unknown, reserved, kept):
    said = {"extensions": {key: {"critical": critical, "content": None}}}
    told = [(f"/extensions/{key}", (), {"name": key})]
    assert told_by(documents.unknown_critical_extension, **said) == told * unknown
    assert told_by(documents.extension_kept, **said) == told * kept
    own = [(pointer, clauses, facts | OWN) for pointer, clauses, facts in told]
    assert told_by(documents.reserved_extension, **said) == own * reserved


def test_a_document_of_a_later_version_may_use_the_names_kept_for_it():
    said = {"version": "1.1", "extensions": {"wellposed.x": {"critical": True, "content": None}}}
    told = [("/extensions/wellposed.x", (), {"name": "wellposed.x"})]
    assert told_by(documents.reserved_extension, **said) == []
    assert told_by(documents.unknown_critical_extension, **said) == told


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Nothing wrong.", {}, []),
        ("The second replaces nothing.", {"revision": 2}, [("revision-chain", "/revision")]),
        ("A leap day of another year.", {"issued": "2026-02-29T09:30:00Z"}, [("no-such-date", "/issued")]),
    ),
)
def test_the_envelope_of_another_document_is_held_to_the_same(changes, expected):
    answers = {"id": "HR-2031", "revision": 1, "sha256": DIGEST}
    said = {
        "format": "wellposed/receipt",
        "version": "1.0",
        "id": "R-1",
        "revision": 1,
        "issued": "2026-03-05T09:00:00Z",
    }
    receipt = Receipt.model_validate({**said, "answers": answers, "outcome": "accepted", **changes})
    assert [(finding.rule, finding.pointer) for finding in envelope_faults(receipt)] == expected
