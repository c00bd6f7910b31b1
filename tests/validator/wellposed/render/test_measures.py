"""Derived measurements in words: every name and reason has some, and the lines say what they should."""

from pathlib import Path

import pytest
from tests.validator.wellposed.consistency.ordinary import LOWER, UPPER, allowed, expected, found, must, prescription

import wellposed.derive
from wellposed.derive.table import Derived, derived
from wellposed.measure import Measures
from wellposed.reading import table, widths
from wellposed.render.measures import measures_text
from wellposed.render.measures_words import FAULTS, LINES, REASONS, name_of

FOLDER = Path(wellposed.derive.__file__).parent


def text(*findings, width=100, **sections):
    return measures_text(Measures(derived(prescription(findings=list(findings), **sections)), "HR-2031", 1), "x", width)


def block(told, name):
    """The lines of one measurement."""
    return next(part for part in told.split("\n\n") if part.startswith(name)).splitlines()


def test_a_budget_in_words():
    told = block(
        text(
            found("f1", "lower-crowding", 4),
            goals=[must("g1", level="lower")],
            allow=[allowed("a1", "distal-movement", arch="lower", sides=["left"], up_to=2, unit="mm")],
        ),
        "lower arch",
    )
    assert told == [
        "lower arch, room left over  not derived",
        "    An amount is not stated.",
        "    needs crowding 4.0 mm, measured to 3.5 to 4.5 mm (f1)",
        "    needs levelling not stated (g1)",
        "    gives distal movement, up to 2.0 mm (a1)",
        "    from f1 g1 a1; cho-2016 (computed); kirschen-2000 (from memory)",
    ]


def test_a_refusal_in_words():
    told = block(text({"id": "f1", "tooth_measure": "tooth-width", "values": {"11": 8.5}, "unit": "mm"}), "tooth-size")
    assert told[1] == "    Only measured widths of sound permanent teeth count; these have none:"
    assert "12 (no width)" in told[2]


def test_a_grade_in_words():
    assert block(text(found("f1", "overjet", 6.1)), "ABO overjet")[0].split() == ["ABO", "overjet", "grade", "3"]


@pytest.mark.parametrize(
    "low,high,said",
    [
        (120.0, 125.0, "120.0 to 125.0°"),
        (None, 126.0, "at most 126.0°"),
        (126.0, None, "at least 126.0°"),
        (None, None, "no bound"),
    ],
)
def test_a_range_in_words(low, high, said):
    one = Derived("planned-interincisal-angle", None, "deg", low, high)
    told = measures_text(Measures((one,)), "order.json")
    assert told.splitlines()[2] == f"interincisal angle as planned  {said}"


def test_nothing_to_derive():
    assert measures_text(Measures(()), "order.json").startswith("order.json  Nothing can be derived")


def test_no_line_is_longer_than_the_width():
    values = dict.fromkeys([*UPPER, *LOWER], 7.0)
    told = text({"id": "f1", "tooth_measure": "tooth-width", "values": values, "unit": "mm"}, width=80)
    assert max(map(len, told.splitlines())) <= 80


def test_every_kind_of_line_has_its_words():
    front = ["42", "41", "31", "32"]
    told = text(
        found("f1", "lower-crowding", 4, contacts=["33-32"]),
        found("f2", "lower-spacing", 1, contacts=["42-41"]),
        found("f3", "curve-of-spee", 3),
        goals=[
            must("g1", level="lower"),
            must("g2", leave="42-41", amount=1, unit="mm"),
            must("g3", measure="lower-midline", at_least=1, unit="mm"),
        ],
        movements=[
            must("m1", teeth=front, motion="lingual", at_most=1, unit="mm"),
            must("m2", teeth=["36"], motion="mesial", at_most=1, unit="mm"),
            must("m3", teeth=["35", "45"], motion="lingual", at_most=1, unit="mm"),
        ],
        allow=[
            allowed("a1", "incisor-advance", arch="lower", up_to=1, unit="mm"),
            allowed("a2", "widening", arch="lower", up_to=1, unit="mm"),
            allowed("a3", "distal-movement", arch="lower", up_to=1, unit="mm"),
            allowed("a4", "enamel-reduction", arch="lower", in_all=1, unit="mm"),
            allowed("a5", "extraction", teeth=["44"]),
            allowed("a6", "laboratory-choice", arch="lower"),
        ],
        expect=[expected("e1", "lower-crowding", -1, ground="growth")],
    )
    told = block(told, "lower arch")
    assert {words for words in LINES.values() if not any(f"s {words}" in line for line in told)} == set()


@pytest.mark.parametrize("reason,words", [*REASONS.items(), *FAULTS.items()])
def test_reasons_and_faults_are_known_where_they_are_made(reason, words):
    made = "".join(
        path.read_text("utf-8") for path in (*FOLDER.glob("table_*.py"), Path(widths.__file__), Path(table.__file__))
    )
    assert (f'"{reason}"' in made, bool(words)) == (True, True)


@pytest.mark.parametrize(
    "name,words",
    [
        ("iotn-overjet-lips-competent", "IOTN overjet lips competent"),
        ("lower-abo-crowding", "lower ABO crowding"),
        ("overbite", "overbite"),
        ("anterior-lower-tooth-size-excess", "lower tooth-size excess, 6 teeth"),
    ],
)
def test_names(name, words):
    assert name_of(name) == words
