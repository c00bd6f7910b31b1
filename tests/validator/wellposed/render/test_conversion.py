"""What is said of a conversion: the place as the user of each form counts, the words of a form's own rules, losses."""

import pytest

from wellposed.findings import Finding, Severity
from wellposed.formats import Carried, Form, Loss
from wellposed.render.conversion import Conversion, conversion_text, forms_text

FORM = Form("song", "sung", (".song",), None, None, rules={"not-a-song": "it is no song"})
OTHER = Form("other", "said", (), None, lambda _: None)


def told(*findings, losses=(), written=False):
    return conversion_text(Conversion("a.song", FORM, OTHER, (Carried(None, findings),), losses, written), 200)


PLACES = [
    (
        {"sheet": "order", "row": 7, "column": "F", "header": "unit"},
        None,
        None,
        "",
        'sheet "order", row 7, column F (unit)',
    ),
    ({"row": 7, "column": "F"}, 7, 30, "/goals/0", "row 7, column F · /goals/0"),
    ({"row": 7}, 9, 1, "", "row 7, line 9"),
    ({"sheet": "order"}, None, None, "", 'sheet "order"'),
    ({}, 3, 8, "/id", "line 3, column 8 · /id"),
    ({}, None, None, "/id", "/id"),
    ({"within": "/entry/1"}, 3, 8, "/id", "line 3, column 8 · /id in the document at /entry/1"),
    ({"within": "/entry/1"}, 3, 8, "", "line 3, column 8 · in the document at /entry/1"),
]


@pytest.mark.parametrize("facts, line, column, pointer, words", PLACES)
def test_a_place_is_named_as_it_is_counted(facts, line, column, pointer, words):
    finding = Finding("not-a-song", Severity.STOP, pointer, facts, line=line, column=column)
    assert f"  stop  It is no song. [not-a-song · {words}]\n" in told(finding)


def test_a_rule_of_the_catalogue_keeps_its_words():
    assert "A needed member is missing" in told(Finding("missing-member", Severity.STOP, "/id", {"name": "id"}))


def test_losses_are_said_one_by_one():
    text = conversion_text(
        Conversion(
            "a.song", FORM, OTHER, (), (Loss("/notes", "no-place-for-it", "text"), Loss("", "sung-too-low")), True
        ),
        200,
    )
    assert text == (
        "a.song: 0 documents, song to other; not all of it was carried.\n"
        "Not carried:\n  /notes: the form has no place for it (text)\n  the whole document: sung too low\n"
    )


def test_forms_stand_in_columns():
    assert forms_text({"song": FORM, "other": OTHER}) == "song            .song  sung\nother  written         said\n"
