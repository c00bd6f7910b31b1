"""The document as a whole: its revision, its dates, its extensions."""

import pytest
from tests.validator.wellposed.consistency.ordinary import found, rows, told_by

from wellposed.consistency import documents

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
