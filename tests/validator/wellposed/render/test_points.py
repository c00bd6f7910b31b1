"""Landmark points in words: every reason has some, and they say what they should."""

from pathlib import Path
from typing import get_args

import pytest

import wellposed.landmarks
from wellposed.landmarks.result import Doubt, Lack, Why
from wellposed.reading import points
from wellposed.reading.table import TableFault
from wellposed.render.measures import faults_text
from wellposed.render.points_words import DOUBTS, POINT_FAULTS, WHYS, doubt_text, lacks_text

FOLDER = Path(wellposed.landmarks.__file__).parent
MADE = "".join(path.read_text("utf-8") for path in (*FOLDER.glob("*.py"), Path(points.__file__)))


@pytest.mark.parametrize("reason", [*POINT_FAULTS, *DOUBTS, *WHYS])
def test_reasons_are_known_where_they_are_made(reason):
    assert f'"{reason}"' in MADE


def test_every_reason_why_a_movement_is_not_told_has_words():
    assert set(get_args(Why)) == set(WHYS)


def test_what_is_missing_in_words():
    lacks = [Lack("11", "root"), Lack("face", "midline"), Lack("21", "root"), Lack("upper", "arch-line")]
    assert lacks_text(lacks) == (
        "too few upper teeth with both contact points for an arch line; no point on the facial midline; "
        "no root of 11 21"
    )
    assert lacks_text([Lack("lower", "tooth")]) == "no lower teeth"
    assert lacks_text([Lack("lower", "reversed")]) == "the lower curve is the other way round"
    assert lacks_text([Lack("16", "mesial-contact")]) == "no mesial contact of 16"


def test_a_doubt_in_words():
    told = doubt_text(Doubt("turned-round", "14", "before", 171.25))
    assert told.startswith("before, 14: its mesial contact lies further back")
    assert "171.25°" in told
    assert doubt_text(Doubt("moved-as-one", "upper", amount=2.0)).startswith(
        "upper arch: all teeth move alike, by 2.0 mm"
    )


def test_a_measure_is_named_in_words():
    told = doubt_text(Doubt("not-plausible", "upper-inter-canine-width", "before", 3.27))
    assert told.startswith("before, upper width between the canines: 3.27 is beyond what mouths have")


def test_a_question_in_words():
    fault = TableFault(1, 18, "mirrored", {"axis": "y", "axes": "y"})
    assert faults_text([fault], "p.csv") == (
        "wellposed: p.csv: line 1, column 18: the teeth run against y, so that the points are a mirror image of the "
        "mouth. Which way does y run in your file? If the other way, name each coordinate in the header by the way it "
        "runs, such as left,back,up\n"
    )
