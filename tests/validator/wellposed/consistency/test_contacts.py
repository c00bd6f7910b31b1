"""Contacts: two teeth that stand beside each other, each named once."""

import pytest
from tests.validator.wellposed.consistency.ordinary import UPPER, allowed, expected, found, must, present, rows, told_by

from wellposed.consistency import contacts

WITHOUT_14 = [tooth for tooth in UPPER if tooth != "14"]
OUT = [allowed("a1", "extraction", teeth=["14"])]


def close(*names):
    return {"goals": [must("g1", close=list(names))]}


def spaced(*names):
    return {"findings": [found("f1", "upper-spacing", 1, contacts=list(names))]}


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "Primary teeth end at 5.",
            close("86-75"),
            [("/goals/0/close/0", ("g1",), {"tooth": "86", "contact": "86-75"})],
        ),
        ("Permanent teeth end at 8.", close("18-17"), []),
    ),
)
def test_no_such_tooth(changes, expected):
    assert told_by(contacts.no_such_tooth, **changes) == expected


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Above each other.", close("11-41"), [("/goals/0/close/0", ("g1",), {"contact": "11-41"})]),
        ("Across the midline.", close("11-21"), []),
        ("Of a tooth that is none, another rule speaks.", close("11-86"), []),
    ),
)
def test_contact_across_arches(changes, expected):
    assert told_by(contacts.contact_across_arches, **changes) == expected


NEAR_14 = ["16-15", "15-14", "14-13", "13-12"]


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "A tooth stands between.",
            close("13-15"),
            [("/goals/0/close/0", ("g1",), {"contact": "13-15", "expected": NEAR_14})],
        ),
        ("None does where it is missing.", close("13-15") | {"teeth": present(upper=WITHOUT_14)}, []),
        ("Nor where it is extracted.", close("13-15") | {"allow": OUT}, []),
        ("Nor where its state says that it goes.", close("15-13") | {"teeth": present(("14", "to-be-extracted"))}, []),
        ("Nor where it has not erupted.", close("13-15") | {"teeth": present(("14", "unerupted"))}, []),
        (
            "A finding is of the teeth before extraction.",
            spaced("13-15") | {"allow": OUT},
            [("/findings/0/contacts/0", ("f1",), {"contact": "13-15", "expected": NEAR_14})],
        ),
        ("There the contacts of the tooth that goes are measured.", spaced("13-14", "14-15") | {"allow": OUT}, []),
        ("In a goal they are gone, and another rule says so.", close("13-14") | {"allow": OUT}, []),
        (
            "A tooth is not its own neighbour.",
            close("11-11"),
            [("/goals/0/close/0", ("g1",), {"contact": "11-11", "expected": ["12-11", "11-21"]})],
        ),
        (
            "A reduction, an expectation and a space to be left are looked at alike.",
            {
                "goals": [must("g1", leave="11-22", amount=1, unit="mm")],
                "allow": [allowed("a1", "enamel-reduction", contacts=["11-22"], in_all=1, unit="mm")],
                "expect": [expected("e1", "upper-crowding", -1, ground="growth", contacts=["22-11"])],
            },
            [
                ("/goals/0/leave", ("g1",), {"contact": "11-22", "expected": ["12-11", "11-21", "21-22", "22-23"]}),
                (
                    "/allow/0/contacts/0",
                    ("a1",),
                    {"contact": "11-22", "expected": ["12-11", "11-21", "21-22", "22-23"]},
                ),
                (
                    "/expect/0/contacts/0",
                    ("e1",),
                    {"contact": "22-11", "expected": ["12-11", "11-21", "21-22", "22-23"]},
                ),
            ],
        ),
        (
            "An unerupted tooth touches none, and is named.",
            close("13-12") | {"teeth": present(("13", "unerupted"))},
            [
                (
                    "/goals/0/close/0",
                    ("g1",),
                    {"contact": "13-12", "expected": ["14-12", "12-11"], "not_in_line": ["13"]},
                )
            ],
        ),
        ("Of a tooth that is not there, another rule speaks.", close("17-18"), []),
        (
            "So it does of a contact across the arches.",
            close("13-43") | {"teeth": present(("13", "unerupted"), ("43", "unerupted"))},
            [],
        ),
        (
            "A tooth in the wrong list comes between no others.",
            close("21-22") | {"teeth": present(upper=[*UPPER, "31"])},
            [],
        ),
    ),
)
def test_not_neighbours(changes, expected):
    assert told_by(contacts.not_neighbours, **changes) == expected


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "Either way round it is one contact.",
            spaced("11-21", "12-11", "21-11"),
            [("/findings/0/contacts/2", ("f1",), {"contact": "21-11", "first": "/findings/0/contacts/0"})],
        ),
        ("Two clauses may name one contact.", close("11-21") | spaced("11-21"), []),
    ),
)
def test_contact_listed_twice(changes, expected):
    assert told_by(contacts.contact_listed_twice, **changes) == expected


@pytest.mark.parametrize(
    "where, expected",
    **rows(
        ("Nowhere.", {}, [("/allow/0", ("a1",), {"expected": ["contacts", "arch"], "found": []})]),
        (
            "Twice.",
            {"contacts": ["11-21"], "arch": "upper"},
            [("/allow/0", ("a1",), {"expected": ["contacts", "arch"], "found": ["contacts", "arch"]})],
        ),
        ("At contacts.", {"contacts": ["11-21"]}, []),
        ("In an arch.", {"arch": "upper"}, []),
    ),
)
def test_reduction_place(where, expected):
    allow = [allowed("a1", "enamel-reduction", in_all=1, unit="mm", **where)]
    assert told_by(contacts.reduction_place, allow=allow) == expected
