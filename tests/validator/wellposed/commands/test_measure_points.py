"""`wellposed measure` of landmark points: what it prints, on which stream, and how it ends."""

import json

import jsonschema
import pytest
from click.testing import CliRunner
from tests.validator.wellposed.commands.documents import EXAMPLE, written
from tests.validator.wellposed.landmarks.made import mouth, moved, table, upright_turn

from wellposed.commands import main
from wellposed.findings import CAUTION
from wellposed.render.schemas import schema_text
from wellposed.vocabulary.measures import MEASURES

BEFORE = mouth(between={"42-41": -1.5, "13-12": 0.8})
AFTER = moved(moved(BEFORE, "11", upright_turn((0, 0, 1), 12), (0, -1.2, 0)), "36", None, (0, 0, 1.0))
ONE, BOTH = table(BEFORE), table(BEFORE, AFTER)


@pytest.fixture
def run(tmp_path):
    def ran(content, *options, name="points.csv"):
        (tmp_path / name).write_bytes(content)
        return CliRunner().invoke(main, ["measure", str(tmp_path / name), *options])

    return ran


def test_points_are_measured(run):
    result = run(ONE)
    told = " ".join(result.stdout.split())
    assert (result.exit_code, result.stderr) == (0, "")
    for words in (
        "points.csv 28 teeth, before.",
        "overbite 2.5 mm + upper incisors overlap the lower",
        "lower crowding 1.5 mm",
        "upper spacing 0.8 mm",
        "42-41 -1.5 mm",
        "tooth-size ratio, 12 teeth 91.4 %",
        CAUTION,
    ):
        assert words in told
    assert "Movements" not in told


def test_movements_are_told(run):
    told = run(BOTH).stdout
    assert "Movements" in told
    row = next(line for line in told.splitlines() if line.split()[:1] == ["36"] and "+1.0" in line)
    assert row.split()[:8] == ["36", "0.0", "0.0", "+1.0", "0.0", "0.0", "0.0", "0.000"]
    assert "Not moved: 12 13" in told


def test_what_cannot_be_told_says_what_is_missing(run):
    lines = [
        line for line in ONE.decode().splitlines() if not line.startswith(("face", "46,groove")) and "root" not in line
    ]
    told = " ".join(run("\n".join(lines).encode()).stdout.split())
    assert "right molar relation, mm: no groove of 46" in told
    assert "upper midline, mm: no point on the facial midline" in told
    assert "interincisal angle, deg: no root of 11 21 41 31" in told


@pytest.mark.parametrize("content", [ONE, BOTH])
def test_the_json_is_what_its_schema_says(run, content):
    told = json.loads(run(content, "--format", "json").stdout)
    jsonschema.Draft202012Validator(json.loads(schema_text("points"))).validate(told)
    assert (told["format"], told["caution"], told["document"]["name"]) == ("wellposed/points", CAUTION, "points.csv")
    named = {one["name"] for one in (*told["measures"], *told["derived"])} | set(told["no_landmark_for"])
    assert set(MEASURES) - named == {
        "upper-tooth-size-excess",
        "lower-tooth-size-excess",
    }  # told for 12 and for 6 teeth


def test_the_sections_for_documents(run):
    whole = json.loads(run(BOTH, "--format", "json").stdout)
    assert json.loads(run(BOTH, "--format", "findings").stdout) == whole["for_prescription"]
    assert json.loads(run(BOTH, "--format", "movements").stdout) == whole["for_setup"]
    assert len(whole["for_setup"]["movements"]) == 6


def test_movements_need_two_moments(run):
    result = run(ONE, "--format", "movements")
    assert (result.exit_code, result.stdout) == (2, "")
    assert "is for points of two moments; points.csv has one" in result.stderr


def test_what_a_section_leaves_out_is_said_on_the_error_stream(run):
    whole = mouth()
    result = run(
        table(whole, {tooth: points for tooth, points in whole.items() if tooth != "14"}), "--format", "movements"
    )
    again, untold = result.stderr.splitlines()
    assert again.startswith("wellposed: points.csv: look at again: after, 15-13: no tooth between them has points")
    assert untold == "wellposed: points.csv: 14: not told, no points after"
    assert "14" not in json.loads(result.stdout)["movements"][0]["values"]


def test_the_output_is_the_same_every_time(run):
    first, second = (run(BOTH, "--format", "json").stdout_bytes for _ in range(2))
    assert first == second


FAULTS = [
    ("a fault in the table", b"tooth,landmark,x,y,z\n19,edge,1,2,3\n", "line 2, column 1: not a tooth number"),
    (
        "no table of ours",
        b"tooth,x,y\n",
        "line 1, column 1: the first line must be tooth,width or tooth,landmark,x,y,z",
    ),
    ("axes of radiology", ONE.replace(b"x,y,z", b"left,back,up", 1), "Which way does back run in your file?"),
    ("no text", b"tooth,landmark,x,y,z\n\xff", "line 2, column 1: the text is not UTF-8"),
    ("bytes that begin otherwise", b"\xff\xfe", "line 1, column 1: the text is not UTF-8"),
]


@pytest.mark.parametrize("sentence,content,told", FAULTS)
def test_what_cannot_be_used_is_said_on_the_error_stream(run, sentence, content, told):
    result = run(content)
    assert (sentence, result.exit_code, result.stdout) == (sentence, 3, "")
    assert told in result.stderr


@pytest.mark.parametrize("form", ["findings", "movements"])
def test_only_points_make_sections(run, form):
    result = run(written(EXAMPLE), "--format", form, name="order.json")
    assert (result.exit_code, "is for landmark points" in result.stderr) == (2, True)
