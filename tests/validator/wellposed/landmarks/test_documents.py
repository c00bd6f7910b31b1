"""What was measured fits the format: findings into a prescription, movements into a setup."""

import json
from random import Random

import jsonschema
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.validator.wellposed.consistency.ordinary import document
from tests.validator.wellposed.landmarks.made import mouth, moved, table, upright_turn

from wellposed.check import check
from wellposed.findings import Severity
from wellposed.landmarks.documents import findings, movement_tables, rounded
from wellposed.landmarks.table import taken
from wellposed.measure import Measures, measure, measure_points
from wellposed.model.setup import Setup
from wellposed.reading.points import read_points
from wellposed.render.points_json import points_json
from wellposed.render.points_text import points_text
from wellposed.render.schemas import schema_text
from wellposed.vocabulary.motions import VARIABLES

VALIDATOR = jsonschema.Draft202012Validator(json.loads(schema_text("points")))
BEFORE = mouth(between={"42-41": -1.5, "41-31": -0.7, "13-12": 0.8}, spee=1.5)
AFTER = moved(moved(BEFORE, "41", upright_turn((0, 0, 1), 12), (0.5, 0.8, -0.3)), "16", None, (0, -1.5, 0))


@pytest.fixture(scope="module")
def found():
    return taken(read_points(table(BEFORE, AFTER)))


def test_findings_make_a_sound_prescription(found):
    """Nothing in it stops, nothing is measured twice, and all of it reaches what is derived."""
    whole = json.dumps(document(findings=findings(found))).encode()
    report = check(whole)
    assert {f.rule for f in report.findings if f.severity == Severity.STOP} == set()
    assert {f.rule for f in report.findings} & {"measured-twice", "implausible-value", "negative-size"} == set()
    assert isinstance(measure(whole), Measures)


def test_findings_say_what_was_made(found):
    told = {one.get("measure", one.get("tooth_measure")): one for one in findings(found)}
    assert [one["id"] for one in findings(found)] == [f"f{n}" for n in range(1, len(told) + 1)]
    assert (told["overbite"]["value"], told["overbite"]["unit"], told["overjet"]["value"]) == (2.5, "mm", 3.0)
    assert (told["lower-crowding"]["value"], told["lower-crowding"]["contacts"]) == (2.2, ["42-41", "41-31"])
    assert (told["upper-spacing"]["value"], told["upper-spacing"]["contacts"]) == (0.8, ["13-12"])
    assert told["curve-of-spee"]["value"] == 1.5
    assert told["tooth-width"]["values"]["46"] == 11.0
    assert "contacts" not in told["lower-spacing"]


def test_movements_make_a_sound_setup(found):
    tables = movement_tables(found)
    setup = {
        "format": "wellposed/setup",
        "version": "1.0",
        "notation": "ISO 3950",
        "id": "HR-2031-setup",
        "revision": 1,
        "issued": "2026-03-11T10:00:00+01:00",
        "answers": {"id": "HR-2031", "revision": 1, "sha256": "0" * 64},
        "movements": tables,
    }
    read = Setup.model_validate_json(json.dumps(setup))
    assert [one.variable for one in read.movements] == list(VARIABLES)
    assert {len(one.values) for one in read.movements} == {28}
    assert (tables[2]["values"]["41"], tables[3]["values"]["16"]) == (-0.3, 0.0)


def test_no_amount_has_a_third_decimal(found):
    values = [one["value"] for one in findings(found) if "value" in one]
    values += [v for one in [*findings(found), *movement_tables(found)] for v in one.get("values", {}).values()]
    assert all(len(repr(value).partition(".")[2]) <= 2 for value in values)
    assert all(str(value) != "-0.0" for value in values)


@pytest.mark.parametrize(
    "value,told", [(1.005, "1.0"), (-0.004, "0.0"), (2.675001, "2.68"), (np.float64(3.14159), "3.14")]
)
def test_rounding(value, told):
    assert str(float(rounded(value))) == told


def test_one_moment_has_no_movements():
    assert movement_tables(taken(read_points(table(BEFORE)))) == []


@settings(max_examples=40)
@given(st.sampled_from([0.05, 0.3, 0.6, 0.9]), st.integers(0, 2**32))
def test_whatever_is_missing_the_rest_is_told(share, seed):
    """Any points left out, at either moment: every measure has a value or says what it lacks, and the JSON is sound."""
    lines = table(BEFORE, AFTER).decode().splitlines()
    random = Random(seed)
    kept = [line for line in lines[1:] if random.random() > share]
    found = measure_points("\n".join([lines[0], *kept]).encode())
    if isinstance(found, tuple):
        assert {fault.reason for fault in found} <= {"moment-missing", "no-rows"}
        return
    for one in found.taken.measures:
        assert all((value is None) == bool(lacks) for value, lacks in zip(one.values, one.lacks, strict=True))
    assert all((moved.why is None) == (len(moved.values) == 6) for moved in found.taken.movements)
    told = json.loads(points_json(found, "points.csv"), parse_constant=pytest.fail)
    VALIDATOR.validate(told)
    assert points_text(found, "points.csv").endswith("\n")
