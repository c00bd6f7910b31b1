"""A setup's aligners and its path. Expected places follow from spec/setup.md."""

import pytest
from tests.validator.wellposed.consistency.answering import off, stage, table, told_of_setup
from tests.validator.wellposed.consistency.ordinary import rows

from wellposed.consistency import setup_path


def late(pointer, arch, value, most):
    return (pointer, (), {"name": arch, "value": value, "expected": f"at most {most}"})


LATE = {
    "reductions": [off("31-41", 0.2, 9), off("11-21", 0.2, 9), off("12-11")],
    "attachments": [{"tooth": "33", "from_aligner": 9}, {"tooth": "13", "from_aligner": 9}],
    "stages": [stage(9, "lower"), stage(9, "upper")],
}


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("No number is stated.", LATE, []),
        ("The last one.", {**LATE, "aligners": {"upper": 9, "lower": 9}}, []),
        (
            "One beyond, in one arch.",
            {**LATE, "aligners": {"lower": 8}},
            [
                late("/reductions/0/before_aligner", "lower", 9, 8),
                late("/attachments/0/from_aligner", "lower", 9, 8),
                late("/stages/0/aligner", "lower", 9, 8),
            ],
        ),
        (
            "An arch without aligners.",
            {"aligners": {"upper": 0}, "stages": [stage(1, "upper")]},
            [late("/stages/0/aligner", "upper", 1, 0)],
        ),
        (
            "A contact of no mouth.",
            {"aligners": {"upper": 3}, "reductions": [off("99-99".replace("9", "8"), 0.1, 3)]},
            [],
        ),
        ("A contact of no tooth.", {"aligners": {"upper": 3}, "reductions": [off("56-57", 0.1, 9)]}, []),
    ),
)
def test_beyond_last_aligner(changes, expected):
    assert told_of_setup(setup_path.beyond_last_aligner, **changes) == expected


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Not stated.", {"movements": [table("out", t41=1)]}, []),
        ("No movement but 0.", {"aligners": {"lower": 0}, "movements": [table("out", t41=0, t11=1)]}, []),
        (
            "Two teeth, one finding.",
            {"aligners": {"lower": 0}, "movements": [table("out", t11=1, t41=1), table("tip", "deg", t31=1, t41=2)]},
            [("/movements/0/values/41", (), {"name": "lower", "teeth": ["41", "31"], "first": "/aligners/lower"})],
        ),
    ),
)
def test_moves_without_aligners(changes, expected):
    assert told_of_setup(setup_path.moves_without_aligners, **changes) == expected


@pytest.mark.parametrize(
    "stages, expected",
    **rows(
        ("One of each arch.", [stage(1, "upper"), stage(1, "lower")], []),
        (
            "Three of one aligner.",
            [stage(1, "upper"), stage(2, "upper"), stage(1, "upper"), stage(1, "upper")],
            [(f"/stages/{at}", (), {"name": "upper", "value": 1, "first": "/stages/0"}) for at in (2, 3)],
        ),
    ),
)
def test_stage_stated_twice(stages, expected):
    assert told_of_setup(setup_path.stage_stated_twice, stages=stages) == expected


def test_stage_of_other_arch():
    stages = [
        stage(1, "lower", table("out", t41=1, t83=1)),
        stage(1, "upper", table("out", t11=1), table("tip", "deg", t53=1, t31=1)),
        stage(2, "lower", table("out", t21=1)),
    ]
    assert told_of_setup(setup_path.stage_of_other_arch, stages=stages) == [
        ("/stages/1/movements/1/values/31", (), {"tooth": "31", "expected": "a tooth of the upper arch"}),
        ("/stages/2/movements/0/values/21", (), {"tooth": "21", "expected": "a tooth of the lower arch"}),
    ]


OUT = [table("out", t11=1, t12=0)]


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Both have an end.", {"stages": [stage(1, "upper", table("out", t12=0.2))]}, []),
        (
            "Another variable, told where it first stands.",
            {
                "stages": [
                    stage(1, "upper", *OUT, table("tip", "deg", t11=1)),
                    stage(2, "upper", table("tip", "deg", t11=2)),
                ]
            },
            [("/stages/0/movements/1/values/11", (), {"tooth": "11", "name": "tip"})],
        ),
        (
            "What is not listed is unmoved in the end.",
            {"unlisted": "unmoved", "stages": [stage(1, "upper", table("tip", "deg", t11=1))]},
            [],
        ),
    ),
)
def test_path_without_end(changes, expected):
    assert told_of_setup(setup_path.path_without_end, **{"movements": OUT, "unlisted": None, **changes}) == expected


def missed(value, expected=1, tooth="11", variable="out", at=0):
    facts = {"tooth": tooth, "name": variable, "value": value, "expected": expected}
    return [(f"/stages/{at}/movements/0/values/{tooth}", (), facts)]


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Exactly.", {"stages": [stage(4, "upper", table("out", t11=1))]}, []),
        ("By 0.05 mm.", {"stages": [stage(4, "upper", table("out", t11=1.05))]}, []),
        ("By more.", {"stages": [stage(4, "upper", table("out", t11=1.06))]}, missed(1.06)),
        ("By half a degree.", {"stages": [stage(4, "upper", table("torque", "deg", t11=3.5))]}, []),
        (
            "By more than that.",
            {"stages": [stage(4, "upper", table("torque", "deg", t11=3.4))]},
            missed(3.4, 4, variable="torque"),
        ),
        ("In the other sense.", {"stages": [stage(4, "upper", table("out", t11=-1))]}, missed(-1)),
        ("Before the last one.", {"stages": [stage(3, "upper", table("out", t11=0.4))]}, []),
        (
            "Without a number the last on the path is the last.",
            {
                "aligners": None,
                "stages": [stage(3, "upper", table("out", t11=0.8)), stage(2, "upper", table("out", t11=0.4))],
            },
            missed(0.8),
        ),
        (
            "Each arch for itself.",
            {
                "aligners": {"upper": 4, "lower": 2},
                "stages": [stage(2, "upper", table("out", t11=0.5)), stage(2, "lower")],
            },
            [],
        ),
        (
            "Not listed, so unmoved in the end.",
            {"stages": [stage(4, "upper", table("out", t21=0.3))]},
            missed(0.3, 0, tooth="21"),
        ),
        (
            "Without an end another rule speaks.",
            {"unlisted": None, "stages": [stage(4, "upper", table("out", t21=1))]},
            [],
        ),
        ("Of a wrong unit, too.", {"stages": [stage(4, "upper", table("out", "deg", t11=9))]}, []),
    ),
)
def test_path_misses_the_end(changes, expected):
    said = {"aligners": {"upper": 4}, "movements": [table("out", t11=1), table("torque", "deg", t11=4)]}
    assert told_of_setup(setup_path.path_misses_the_end, **{**said, **changes}) == expected


def gaps(arch, *found, end):
    return ("/stages", (), {"name": arch, "found": list(found), "expected": f"1 to {end}"})


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("No path.", {"aligners": {"upper": 4}}, []),
        ("Every one.", {"aligners": {"upper": 2}, "stages": [stage(2, "upper"), stage(1, "upper")]}, []),
        (
            "The end is missing.",
            {"aligners": {"upper": 3}, "stages": [stage(1, "upper"), stage(2, "upper")]},
            [gaps("upper", 1, 2, end=3)],
        ),
        (
            "One in between, of an arch whose number is not stated.",
            {"aligners": {"upper": 3}, "stages": [stage(1, "lower"), stage(3, "lower")]},
            [gaps("lower", 1, 3, end=3)],
        ),
    ),
)
def test_path_not_whole(changes, expected):
    assert told_of_setup(setup_path.path_not_whole, **changes) == expected


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Stated.", {"aligners": {"lower": 2}, "stages": [stage(1, "lower")]}, []),
        (
            "Stated for the other arch.",
            {"aligners": {"upper": 2}, "stages": [stage(1, "lower")]},
            [("/stages", (), {"name": "lower", "expected": "aligners/lower"})],
        ),
        ("No path.", {}, []),
    ),
)
def test_aligners_not_stated(changes, expected):
    assert told_of_setup(setup_path.aligners_not_stated, **changes) == expected


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Nothing moves, and it is said.", {"movements": []}, []),
        ("A movement.", {"movements": OUT, "unlisted": None}, []),
        ("Neither.", {"unlisted": None}, [("/movements", (), {"expected": ["movements", "unlisted"]})]),
    ),
)
def test_nothing_planned(changes, expected):
    assert told_of_setup(setup_path.nothing_planned, **changes) == expected
