"""What a reader sees of clinical findings: how sure figures are, what a group shows, the first line."""

import json

import pytest
from tests.validator.wellposed.consistency.ordinary import document, found
from tests.validator.wellposed.rules.stories import moved, problem

from wellposed.check import check
from wellposed.findings import Finding, Severity
from wellposed.render.clinical import clinical_sentence
from wellposed.render.filled import filled
from wellposed.render.text import text

STEEP = [
    found("f1", "lower-crowding", 5),
    found("f2", "lower-incisor-to-mandibular-plane", 97, "deg"),
]
OVERSTATED = {
    "findings": STEEP,
    "problems": [problem("p1", "crowding", "f1", arch="lower", grade="severe")],
    "movements": [moved("m1", ["42", "41", "31", "32"], "labial", 1.5, "p1", at_most=2)],
}


def told(**members):
    return " ".join(text(check(json.dumps(document(**members)).encode()), "order").split())


def figure(value, sure):
    return {"key": "k", "value": value, "unit": "mm", "sure": sure, "sources": []}


@pytest.mark.parametrize(
    "limit, figures, expected",
    [
        pytest.param(2, [figure(2.0, "published")], "", id="published"),
        pytest.param(2, [figure(2.0, "common practice")], " (2.0 mm: common practice, no source.)", id="in the words"),
        pytest.param(
            2, [figure(0.5, "from memory")], " (also used, 0.5 mm: recalled, not read.)", id="not in the words"
        ),
        pytest.param(
            12, [figure(2.0, "computed")], " (also used, 2.0 mm: worked out.)", id="the end of another number"
        ),
        pytest.param(
            2,
            [figure(2.0, "computed"), figure(0.5, "computed")],
            " (2.0 mm: worked out; also used, 0.5 mm: worked out.)",
            id="both",
        ),
    ],
)
def test_a_figure_that_is_not_in_the_sentence_is_said_to_be_used_too(limit, figures, expected):
    asked = moved("m1", ["16"], "buccal", 3)
    facts = {"asked": asked, "teeth": ["16"], "amount": 3.0, "limits": [float(limit)], "figures": figures}
    sentence = clinical_sentence(Finding("widening-without-root-control", Severity.CAUTION, "/movements/0", facts))
    assert sentence.partition("torqued.")[2] == expected


def test_what_weighs_more_than_its_leader_says_what_to_do():
    shown = told(**OVERSTATED)
    assert "To do: Look at the bone and gums over these roots, and confirm the inclination or lessen it." in shown
    assert "rests on p1, whose grade is not that of the measurements." in shown


def test_an_instruction_that_rests_on_two_diagnoses_is_counted_once():
    shown = told(
        findings=[found("f1", "overbite", 2.5), found("f2", "gingival-display-on-smiling", 1)],
        problems=[problem("p1", "deep-bite"), problem("p2", "excess-gingival-display")],
        movements=[moved("m1", ["12", "11", "21", "22"], "intrusion", 1, "p1", "p2")],
    )
    assert "1 instruction rests on p1 and p2, which the measurements do not support." in shown


@pytest.mark.parametrize(
    "members, expected",
    [
        pytest.param({}, "possible. Nothing is asked for.", id="an order without goal and movement"),
        pytest.param(
            {"movements": [moved("m1", ["31"], "intrusion", 0.5)]},
            "possible. A plan within usual limits can meet every instruction.",
            id="an order with one",
        ),
    ],
)
def test_the_first_line_says_whether_anything_is_asked(members, expected):
    assert told(**members).startswith(f"HR-2031 {expected}")


@pytest.mark.parametrize(
    "members, expected",
    [
        ({"treat": None}, "It is not said which arches are treated; until it is, both are taken to be."),
        ({"goals": []}, "The order has no goal and no movement. State what is to be reached, unless nothing is."),
        ({"movements": [moved("m1", ["31"], "intrusion", 0.5)]}, "No reason is given for m1. Name in `because`"),
    ],
)
def test_what_is_not_said_is_told_in_whole_sentences(members, expected):
    assert expected in told(**members)


# A clause has commas of its own, so more than two are parted by semicolons.
HELD = [{"hold": [tooth]} for tooth in ("13", "23", "33")]


@pytest.mark.parametrize(
    "number, expected",
    [
        (1, "Hold 13 (upper right canine)."),
        (2, "Hold 13 (upper right canine) and hold 23 (upper left canine)."),
        (3, "Hold 13 (upper right canine); hold 23 (upper left canine); and hold 33 (lower left canine)."),
    ],
)
def test_several_clauses_are_told_apart(number, expected):
    assert filled("{asked:clause}.", {"asked": HELD[:number]}) == expected
