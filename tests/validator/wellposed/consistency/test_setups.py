"""What a setup plans for single teeth and contacts. Expected places follow from spec/setup.md."""

import pytest
from tests.validator.wellposed.consistency.answering import off, stage, table, told_of_setup
from tests.validator.wellposed.consistency.ordinary import rows

from wellposed import norms
from wellposed.consistency import contacts, setups, teeth
from wellposed.vocabulary.motions import VARIABLE_UNITS, VARIABLES


def twice(pointer, tooth, variable, first):
    return (pointer, (), {"tooth": tooth, "name": variable, "first": first})


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Two variables of one tooth.", {"movements": [table("along", t11=1), table("out", t11=1)]}, []),
        (
            "The same value in two tables.",
            {"movements": [table("along", t11=1), table("along", t12=1, t11=1)]},
            [twice("/movements/1/values/11", "11", "along", "/movements/0/values/11")],
        ),
        (
            "Two units are one variable.",
            {"movements": [table("tip", "deg", t11=1), table("tip", "mm", t11=2)]},
            [twice("/movements/1/values/11", "11", "tip", "/movements/0/values/11")],
        ),
        (
            "At the end and on the way is once each.",
            {
                "movements": [table("out", t11=1)],
                "stages": [stage(1, "upper", table("out", t11=1)), stage(2, "upper", table("out", t11=1))],
            },
            [],
        ),
        (
            "Twice in one stage.",
            {"stages": [stage(1, "upper"), stage(2, "upper", table("out", t11=1), table("out", t11=2))]},
            [
                twice(
                    "/stages/1/movements/1/values/11",
                    "11",
                    "out",
                    "/stages/1/movements/0/values/11",
                )
            ],
        ),
    ),
)
def test_movement_stated_twice(changes, expected):
    assert told_of_setup(setups.movement_stated_twice, **changes) == expected


def large(pointer, tooth, variable, value, expected):
    return (pointer, (), {"tooth": tooth, "name": variable, "value": value, "expected": expected})


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("At the bound, either way.", {"movements": [table("along", t16=-15, t26=15)]}, []),
        (
            "Just beyond it.",
            {"movements": [table("along", t16=-15.01)]},
            [large("/movements/0/values/16", "16", "along", -15.01, "at most 15 mm")],
        ),
        (
            "More than half a turn.",
            {"movements": [table("rotation", "deg", t15=200)]},
            [large("/movements/0/values/15", "15", "rotation", 200, "at most 180 deg")],
        ),
        (
            "On the way as well is told once.",
            {"movements": [table("out", t11=70)], "stages": [stage(1, "upper", table("out", t11=70))]},
            [large("/movements/0/values/11", "11", "out", 70, "at most 12 mm")],
        ),
        (
            "On the way alone.",
            {"movements": [table("out", t11=1)], "stages": [stage(3, "upper", table("out", t11=-70))]},
            [large("/stages/0/movements/0/values/11", "11", "out", -70, "at most 12 mm")],
        ),
        ("Of a wrong unit another rule speaks.", {"movements": [table("out", "deg", t11=70)]}, []),
        (
            "A reduction in hundredths.",
            {"reductions": [off("11-21", 2), off("12-11", 20)]},
            [("/reductions/1/amount", (), {"contact": "12-11", "value": 20, "expected": "at most 2 mm"})],
        ),
    ),
)
def test_implausible_amount(changes, expected):
    assert told_of_setup(setups.implausible_amount, **changes) == expected


@pytest.mark.parametrize("variable", VARIABLES)
def test_every_variable_has_its_largest_amount_in_its_unit(variable):
    assert norms.norm(f"setup.largest.{variable}").unit == VARIABLE_UNITS[variable]


def gone(pointer, tooth="14", first=0, **more):
    return (pointer, (), {"tooth": tooth, "first": f"/extractions/{first}", **more})


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Its neighbours move.", {"movements": [table("along", t13=-2, t15=2)]}, []),
        ("A movement.", {"movements": [table("along", t14=1)]}, [gone("/movements/0/values/14")]),
        ("A movement of 0.", {"movements": [table("along", t14=0)]}, [gone("/movements/0/values/14")]),
        (
            "On the way.",
            {"stages": [stage(1, "upper", table("along", t14=0))]},
            [gone("/stages/0/movements/0/values/14")],
        ),
        ("An attachment.", {"attachments": [{"tooth": "14"}]}, [gone("/attachments/0/tooth")]),
        (
            "A reduction beside it.",
            {"extractions": ["24", "14"], "reductions": [off("13-14")]},
            [gone("/reductions/0/contact", first=1, contact="13-14")],
        ),
        (
            "A measure taken at it.",
            {"predicted": [{"measure": "transverse-overlap-right", "pair": ["14", "44"], "value": 1, "unit": "mm"}]},
            [gone("/predicted/0/pair/0")],
        ),
    ),
)
def test_planned_at_extracted_tooth(changes, expected):
    assert told_of_setup(setups.planned_at_extracted_tooth, **{"extractions": ["14"], **changes}) == expected


def apart(pointer, contact, *between):
    return (pointer, (), {"contact": contact, "teeth": list(between)})


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Neighbours.", {"reductions": [off("11-21"), off("31-41"), off("16-17")]}, []),
        ("Over a tooth of which nothing is said.", {"reductions": [off("13-15")]}, []),
        (
            "Over a tooth that moves.",
            {"movements": [table("out", t14=0)], "reductions": [off("15-13")]},
            [apart("/reductions/0/contact", "15-13", "14")],
        ),
        (
            "Over one named at another contact.",
            {"reductions": [off("13-14"), off("13-15")]},
            [apart("/reductions/1/contact", "13-15", "14")],
        ),
        (
            "Over one that carries an attachment, across the midline.",
            {"attachments": [{"tooth": "21"}], "reductions": [off("11-22")]},
            [apart("/reductions/0/contact", "11-22", "21")],
        ),
        (
            "Over the place of one taken out.",
            {"extractions": ["41"], "movements": [table("out", t42=1)], "reductions": [off("42-31")]},
            [],
        ),
        ("Over a tooth of the other arch.", {"movements": [table("out", t44=1)], "reductions": [off("13-15")]}, []),
        (
            "Over a milk tooth.",
            {"movements": [table("out", t54=1)], "reductions": [off("13-15")]},
            [apart("/reductions/0/contact", "13-15", "54")],
        ),
        ("Beside a milk tooth at its own place.", {"reductions": [off("13-12"), off("53-12")]}, []),
        ("One tooth.", {"reductions": [off("11-11")]}, [apart("/reductions/0/contact", "11-11")]),
        ("Of two arches another rule speaks.", {"reductions": [off("11-41"), off("12-56")]}, []),
    ),
)
def test_teeth_cannot_touch(changes, expected):
    assert told_of_setup(setups.teeth_cannot_touch, **changes) == expected


@pytest.mark.parametrize(
    "reductions, expected",
    **rows(
        ("Before one aligner each.", [off("31-41", 0.2, 1), off("31-41", 0.1, 5)], []),
        (
            "Before one and the same, the other way round.",
            [off("31-41", 0.2, 5), off("41-31", 0.1, 5)],
            [("/reductions/1", (), {"contact": "41-31", "first": "/reductions/0"})],
        ),
        (
            "Without a time.",
            [off("31-41"), off("42-41"), off("31-41")],
            [("/reductions/2", (), {"contact": "31-41", "first": "/reductions/0"})],
        ),
        (
            "One with, one without.",
            [off("31-41"), off("31-41", 0.2, 5)],
            [("/reductions/1", (), {"contact": "31-41", "first": "/reductions/0"})],
        ),
    ),
)
def test_reduction_planned_twice(reductions, expected):
    assert told_of_setup(setups.reduction_planned_twice, reductions=reductions) == expected


@pytest.mark.parametrize(
    "attachments, expected",
    **rows(
        ("For two reasons.", [{"tooth": "13", "reason": "movement"}, {"tooth": "13", "reason": "retention"}], []),
        ("One after the other.", [{"tooth": "13", "from_aligner": 1}, {"tooth": "13", "from_aligner": 9}], []),
        ("Told apart in words.", [{"tooth": "16", "words": "buccal"}, {"tooth": "16", "words": "palatal"}], []),
        (
            "Told apart by nothing but the shape.",
            [{"tooth": "13"}, {"tooth": "12"}, {"tooth": "13", "shape": "ellipsoid-vertical"}],
            [("/attachments/2", (), {"tooth": "13", "first": "/attachments/0"})],
        ),
    ),
)
def test_attachment_planned_twice(attachments, expected):
    assert told_of_setup(setups.attachment_planned_twice, attachments=attachments) == expected


def test_rules_shared_with_a_prescription_look_into_a_setup():
    assert told_of_setup(teeth.tooth_listed_twice, extractions=["14", "24", "14"]) == [
        ("/extractions/2", (), {"tooth": "14", "first": "/extractions/0"})
    ]
    assert told_of_setup(contacts.no_such_tooth, reductions=[off("12-56")]) == [
        ("/reductions/0/contact", (), {"tooth": "56", "contact": "12-56"})
    ]
    assert told_of_setup(contacts.contact_across_arches, reductions=[off("11-41")]) == [
        ("/reductions/0/contact", (), {"contact": "11-41"})
    ]
