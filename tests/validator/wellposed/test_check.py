"""From bytes to a report: the verdict of each stage, and what every document of the conversation is held to."""

import json

import pytest

from wellposed.check import check, prescription_of, sound, sound_document
from wellposed.report import READ_VERDICTS, Report

SMALL = {
    "format": "wellposed/prescription",
    "version": "1.0",
    "notation": "ISO 3950",
    "id": "C-1",
    "revision": 1,
    "issued": "2026-03-04T09:30:00+01:00",
    "prescriber": {"id": "clinic-1"},
    "laboratory": {"id": "lab-1"},
    "patient": {"reference": "P-1"},
    "teeth": {"upper": ["11", "21"], "lower": ["41", "31"]},
}
RECEIPT = {
    "format": "wellposed/receipt",
    "version": "1.0",
    "id": "R-1",
    "revision": 1,
    "issued": "2026-03-04T09:30:00+01:00",
    "answers": {"id": "C-1", "revision": 1, "sha256": "0" * 64},
    "outcome": "accepted",
}


BARE = {"age-not-stated", "nothing-asked", "records-missing", "treat-not-stated", "work-order-not-known"}


def told(document):
    report = check(json.dumps(document).encode())
    return report.verdict, report.fit_to_send, sorted({finding.rule for finding in report.findings})


@pytest.mark.parametrize(
    "document, expected",
    [
        pytest.param(SMALL, ("possible", True, sorted(BARE)), id="nothing is asked"),
        pytest.param(RECEIPT, ("not-judged", True, []), id="a sound receipt is read, not judged"),
        pytest.param(
            RECEIPT | {"revision": 2}, ("refused", False, ["revision-chain"]), id="a second revision replaces something"
        ),
        pytest.param(
            RECEIPT | {"issued": "2026-02-31T09:30:00Z"}, ("refused", False, ["no-such-date"]), id="no 31st of February"
        ),
        pytest.param(
            RECEIPT | {"extensions": {"org.example.x": {"critical": True, "content": 1}}},
            ("refused", False, ["unknown-critical-extension"]),
            id="a receipt's critical extension nobody knows",
        ),
        pytest.param(
            SMALL | {"version": "1.7", "extensions": {"wellposed.later": {"critical": False, "content": {}}}},
            ("possible", True, sorted({*BARE, "extension-kept"})),
            id="a later 1.x is read; what it adds is kept",
        ),
        pytest.param(
            SMALL | {"version": "1.7", "extensions": {"wellposed.later": {"critical": True, "content": {}}}},
            ("refused", False, ["nothing-asked", "treat-not-stated", "unknown-critical-extension"]),
            id="a later 1.x whose addition must not be ignored is refused",
        ),
        pytest.param(
            SMALL | {"extensions": {"wellposed.later": {"critical": False, "content": {}}}},
            ("refused", False, ["nothing-asked", "reserved-extension", "treat-not-stated"]),
            id="1.0 itself has no names of the format's own among the extensions",
        ),
        pytest.param(
            SMALL | {"version": "2.0"}, ("refused", False, ["wrong-form"]), id="another major version is not read"
        ),
        pytest.param(
            SMALL | {"version": "1.7", "later": 1},
            ("refused", False, ["unknown-member"]),
            id="unknown members stay faults",
        ),
        pytest.param([], ("unreadable", False, ["not-an-object"]), id="a list is no document"),
    ],
)
def test_the_report_of_a_document(document, expected):
    assert told(document) == expected


ODD = {
    "teeth that crowding puts on one spot": {
        "teeth": {
            "upper": ["12", "11", "21", "22"],
            "lower": ["47", "46", "45", "44", "43", "42", "41", "31", "32", "33"],
        },
        "findings": [{"id": "f1", "measure": "lower-crowding", "value": 201, "unit": "mm"}],
        "goals": [{"id": "g1", "strength": "must", "align": ["42", "41", "31"]}],
    },
    "a single tooth in all": {"teeth": {"upper": ["16"], "lower": []}},
    "no teeth at all": {"teeth": {"upper": [], "lower": []}},
    "one tooth": {"teeth": {"upper": ["11"], "lower": []}},
    "third molars alone": {"teeth": {"upper": ["18", "28"], "lower": ["38", "48"]}},
    "primary teeth alone": {"teeth": {"upper": ["55", "54", "53"], "lower": ["71", "81"]}},
    "crowding beyond the arch itself": {
        "findings": [{"id": "f1", "measure": "upper-crowding", "value": 199, "unit": "mm"}],
        "goals": [{"id": "g1", "strength": "must", "align": ["11", "21"]}],
    },
    "teeth of no width": {
        "findings": [{"id": "f1", "tooth_measure": "tooth-width", "values": {"11": 0, "21": 0}, "unit": "mm"}],
        "goals": [{"id": "g1", "strength": "must", "close_arch": "upper"}],
    },
    "every tooth extracted": {"allow": [{"id": "a1", "use": "extraction", "teeth": ["11", "21", "41", "31"]}]},
    "an arch deeper than long": {"findings": [{"id": "f1", "measure": "upper-arch-depth", "value": 60, "unit": "mm"}]},
    "everything delegated": {"allow": [{"id": "a1", "use": "laboratory-choice"}]},
}


@pytest.mark.parametrize("sections", ODD.values(), ids=ODD)
def test_odd_but_well_formed_documents_are_judged_or_refused(sections):
    assert told(SMALL | sections)[0] in {*READ_VERDICTS, "refused"}


def test_a_report_says_nothing_of_the_patient():
    secret = SMALL | {"patient": {"reference": "CANARY-77", "growth": "CANARY-78"}, "notes": [{"text": ""}]}
    report = check(json.dumps(secret).encode())

    assert report.verdict == "refused"
    assert "CANARY" not in repr(report)


SETUP = {
    "format": "wellposed/setup",
    "version": "1.0",
    "notation": "ISO 3950",
    "id": "S-1",
    "revision": 1,
    "issued": "2026-03-05T09:30:00+01:00",
    "answers": {"id": "C-1", "revision": 1, "sha256": "0" * 64},
    "movements": [{"variable": "out", "unit": "mm", "values": {"11": 0.5}}],
}
ASKED = {"movements": [{"variable": "out", "unit": "mm", "values": {"11": 50}}]}
STOPPED = {"extractions": ["11"]}


@pytest.mark.parametrize(
    "document, expected",
    [
        pytest.param(SMALL, ("C-1", "Prescription"), id="a prescription"),
        pytest.param(RECEIPT, ("R-1", "Receipt"), id="a receipt"),
        pytest.param(SETUP, ("S-1", "Setup"), id="a setup"),
        pytest.param(SETUP | ASKED, ("S-1", "Setup"), id="a setup that is asked about is sound"),
        pytest.param(SETUP | STOPPED, ("refused", ["planned-at-extracted-tooth"]), id="a setup that is stopped"),
        pytest.param(SMALL | {"revision": 2}, ("refused", ["revision-chain"]), id="a prescription that is stopped"),
        pytest.param(SETUP | {"movements": None}, ("refused", ["wrong-kind"]), id="of no sound structure"),
        pytest.param([], ("unreadable", ["not-an-object"]), id="no document"),
    ],
)
def test_any_sound_document_or_the_report_on_why_there_is_none(document, expected):
    made = sound_document(json.dumps(document).encode())
    if isinstance(made, Report):
        assert (made.verdict, [finding.rule for finding in made.findings]) == expected
    else:
        assert (made.id, type(made).__name__) == expected


def test_a_sound_setup_is_no_prescription():
    data = json.dumps(SETUP).encode()
    assert sound(data) == Report("not-judged", (), "S-1", 1)
    assert prescription_of(data) is None
