"""``wellposed setup``: one table worked by hand from cell to document, what is written when, exit status, no leaks."""

import json
import re
from hashlib import sha256

import pytest
import rfc8785
from click.testing import CliRunner
from tests.converters.wellposed_converters.setups.tables import changed
from tests.validator.wellposed.consistency.ordinary import allowed, document, found, must

from wellposed.findings import CAUTION
from wellposed_converters.setups.command import command

RX = document(
    findings=[found("f1", "upper-crowding", 2.0)],
    goals=[must("g1", align=["12", "11", "21", "22"], because=["f1"])],
    movements=[must("m1", teeth=["12", "11", "21", "22"], motion="intrusion", at_least=1, at_most=1.5, unit="mm")],
    allow=[
        allowed("a1", "enamel-reduction", contacts=["12-11", "11-21", "21-22"], per_contact=0.4, in_all=1.2, unit="mm")
    ],
)
TABLE = """Export 7;;;;;;;
Tooth;Left/right;Up/down;Turn;In/out;M;D;Note
12;0,4;1,2;5,0 cw;-0,3;0,2;0;x
11;-;1,2;-;0,1;0,2;0,2;
21;-0,2;1,2;2,5 ccw;n/a;0,2;0,2;
22;-0,4;1,25;0;0;0,2;0;
Total;;;;;;;
"""
COLUMNS = """
[table]
layout = "row-a-tooth"
header_row = 2
decimal = "comma"
delimiter = ";"
ignore_rows = [1]
ignore_rows_with = { Tooth = ["Total"] }
ignore_columns = ["Note"]
none = ["-"]
not_stated = ["n/a"]
[tooth]
column = "Tooth"
notation = "ISO 3950"
[[movement]]
column = "Left/right"
variable = "along"
unit = "mm"
positive = "left"
[[movement]]
column = "Up/down"
variable = "vertical"
unit = "mm"
positive = "up"
[[movement]]
column = "Turn"
variable = "rotation"
unit = "deg"
directions = { cw = "clockwise-on-the-biting-surface", ccw = "counterclockwise-on-the-biting-surface" }
direction_at = "after"
[[movement]]
column = "In/out"
variable = "out"
unit = "mm"
positive = "labial"
[reductions]
mesial = "M"
distal = "D"
counts = "surface"
unit = "mm"
not_listed = "none"
[setup]
unlisted = "unmoved"
"""
# By hand. along: mesial of a right tooth is to the left, so 12 keeps its sign; 21 and 22 turn theirs. vertical: an
# upper tooth that goes up is intruded, so all turn. rotation: seen from below, on the biting surface of an upper tooth,
# the mesial surface of a right one goes to the tongue clockwise, of a left one counterclockwise, so both are positive.
MOVEMENTS = [
    {"variable": "along", "unit": "mm", "values": {"12": 0.4, "11": 0, "21": 0.2, "22": 0.4}},
    {"variable": "out", "unit": "mm", "values": {"12": -0.3, "11": 0.1, "22": 0}},
    {"variable": "vertical", "unit": "mm", "values": {"12": -1.2, "11": -1.2, "21": -1.2, "22": -1.25}},
    {"variable": "rotation", "unit": "deg", "values": {"12": 5, "11": 0, "21": 2.5, "22": 0}},
]
# 12 mesial 0.2 + 11 distal 0.2; 11 mesial 0.2 + 21 mesial 0.2; 21 distal 0.2 + 22 mesial 0.2.
ENAMEL = {"12-11": 0.4, "11-21": 0.4, "21-22": 0.4}


class Desk:
    """A folder with the files of one run."""

    def __init__(self, folder):
        self.folder = folder
        self.put("rx.json", json.dumps(RX))
        self.put("t.csv", TABLE)
        self.put("c.toml", COLUMNS)

    def put(self, name, text):
        (self.folder / name).write_bytes(text if isinstance(text, bytes) else text.encode())

    def run(self, *more, table="t.csv", answers="rx.json"):
        """Exit status and output; what is written goes to ``s.json``."""
        files = [self.folder / table, "--columns", self.folder / "c.toml", "--answers", self.folder / answers]
        told = ["--id", "ST-1", "--issued", "2026-03-05T09:00:00Z", "-o", self.folder / "s.json"]
        done = CliRunner().invoke(command, [str(one) for one in (*files, *told, *more)])
        assert done.exception is None or isinstance(done.exception, SystemExit)
        return done.exit_code, done.output

    @property
    def setup(self):
        """What was written, None if nothing was."""
        file = self.folder / "s.json"
        return json.loads(file.read_text("utf-8")) if file.exists() else None


@pytest.fixture
def desk(tmp_path):
    return Desk(tmp_path)


def test_a_table_worked_by_hand(desk):
    code, told = desk.run("--all")
    assert code == 0
    setup = desk.setup
    assert setup["movements"] == MOVEMENTS
    assert {one["contact"]: one["amount"] for one in setup["reductions"]} == ENAMEL
    assert setup["answers"] == {"id": "HR-2031", "revision": 1, "sha256": sha256(rfc8785.dumps(RX)).hexdigest()}
    assert (setup["id"], setup["revision"], setup["unlisted"]) == ("ST-1", 1, "unmoved")
    assert not {"aligners", "extractions", "attachments", "stages", "predicted", "replaces"} & setup.keys()
    assert "row 3, column C (Up/down): 12 (upper right lateral incisor), vertical -1.2 mm" in told
    assert "Not stated, as declared: E5." in told
    assert told.rstrip().endswith(CAUTION)


def test_by_column_no_cell_is_left_out(desk):
    """The cells of the columns together are those of the table."""
    _, told = desk.run()
    assert "18 cells read, told by column" in told
    assert sum(int(count) for count in re.findall(r": (\d+) read as", " ".join(told.split()))) == 18
    assert max(map(len, told.split("\n\n")[0].splitlines())) <= 100


def test_every_cell_is_accounted_for(desk):
    """4 teeth x 4 movements less one not stated, and 3 contacts."""
    _, told = desk.run("--format", "json")
    said = json.loads(told)
    assert [len([one for one in said["read"] if one["what"] == what]) for what in ("along", "out", "reduction")] == [
        4,
        3,
        3,
    ]
    assert (len(said["read"]), said["not_stated"]) == (18, ["E5"])
    assert said["left_out"] == ['column "Note"', "row 1", "rows with 'Total' under \"Tooth\""]


def test_turned_signs_are_asked_about_and_left_as_they_are(desk):
    desk.put("c.toml", changed(COLUMNS, ('positive = "up"', 'positive = "down"')))
    code, told = desk.run()
    assert (code, desk.setup["movements"][2]["values"]["12"]) == (1, 1.2)
    assert "[sign-against-the-order]" in told


def test_faults_are_told_and_nothing_is_written(desk):
    desk.put("t.csv", TABLE.replace("1,25", "1.25").replace("11;-", "99;-"))
    code, told = desk.run()
    assert (code, desk.setup) == (1, None)
    assert told.startswith("stops  t.csv, row 4, column A (Tooth): ")
    assert "row 6, column C (Up/down): a number with a decimal point; expected a number with a decimal comma." in told
    faults = json.loads(desk.run("--format", "json")[1])["faults"]
    assert [(one["rule"], one["row"], one["column"]) for one in faults] == [
        ("setup-table-not-a-tooth", 4, "A"),
        ("setup-table-not-a-number", 6, "C"),
    ]


UNREADABLE = [
    ({"table": "no.csv"}, {}),
    ({"table": "c.toml"}, {}),
    ({"answers": "no.json"}, {}),
    ({"answers": "t.csv"}, {}),
    ({}, {"c.toml": "[table"}),
    ({}, {"c.toml": b"\xff"}),
    ({}, {"t.csv": b"\xff\xfe"}),
    ({}, {"rx.json": json.dumps(RX | {"goals": [must("g1", align=["18"])]})}),
    ({"table": "t.xlsx"}, {"t.xlsx": b"PK"}),
]


@pytest.mark.parametrize("asked, files", UNREADABLE)
def test_a_file_that_cannot_be_read(desk, asked, files):
    for name, text in files.items():
        desk.put(name, text)
    code, told = desk.run(**asked)
    assert (code, desk.setup) == (3, None)
    assert "Traceback" not in told


def test_a_reading_with_an_unknown_member_stops(desk):
    desk.put("c.toml", COLUMNS + "[shape]\nx = 1\n")
    assert desk.run()[0] == 1


USAGE = [("--also", "x"), ("--replaces", "rx.json"), ("--nonsense",)]


@pytest.mark.parametrize("more", USAGE)
def test_a_wrong_call(desk, more):
    if more[0] == "--replaces":
        more = ("--replaces", str(desk.folder / "rx.json"))
    assert (desk.run(*more)[0], desk.setup) == (2, None)


def test_the_next_revision_names_the_one_before(desk):
    desk.run()
    before = desk.setup
    desk.put("before.json", json.dumps(before))
    assert desk.run("--replaces", str(desk.folder / "before.json"))[0] == 0
    assert (desk.setup["revision"], desk.setup["replaces"]) == (2, sha256(rfc8785.dumps(before)).hexdigest())


def test_a_file_that_is_read_is_never_written_over(desk):
    for name in ("t.csv", "c.toml", "rx.json"):
        before = (desk.folder / name).read_bytes()
        assert desk.run("-o", str(desk.folder / name))[0] == 2
        assert (desk.folder / name).read_bytes() == before


def test_it_is_said_where_nothing_was_written(desk):
    code, said = desk.run("--issued", "yesterday")
    assert (code, desk.setup, "\nNo setup was written.\n" in said) == (1, None, True)
    assert "No setup was written" not in desk.run()[1]


def test_a_name_given_to_two_files_is_a_wrong_call(desk):
    named = f"enamel={desk.folder / 't.csv'}"
    assert desk.run("--also", named, "--also", named)[0] == 2


def test_a_further_file_is_known_by_a_name(desk):
    desk.put("enamel.csv", "Where;Amount\n31/41;0,2\n")
    own = '[reductions]\nsheet = "enamel"\nheader_row = 1\ncontact = "Where"\nseparator = "/"\namount = "Amount"\n'
    part = COLUMNS[COLUMNS.index("[reductions]") : COLUMNS.index("[setup]")]
    columns = changed(COLUMNS, (part, own + 'unit = "mm"\nnot_listed = "none"\n'), ('["Note"]', '["Note", "M", "D"]'))
    desk.put("c.toml", columns)
    assert desk.run("--also", f"enamel={desk.folder / 'enamel.csv'}")[0] == 0
    assert desk.setup["reductions"] == [{"contact": "41-31", "amount": 0.2, "unit": "mm"}]


def test_no_text_of_a_cell_is_repeated_in_a_fault(desk):
    for at in ("12;0,4", "5,0 cw", "Export 7", "Note", "Total"):
        desk.put("t.csv", changed(TABLE, (at, f"Jane Roe{at}")))
        assert "Jane" not in desk.run()[1]


def test_the_same_input_gives_the_same_bytes(desk):
    first = desk.run()[1], (desk.folder / "s.json").read_bytes()
    assert first == (desk.run()[1], (desk.folder / "s.json").read_bytes())
