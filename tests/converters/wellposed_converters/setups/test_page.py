"""The page of the specification: its example is run, its faults are those the program tells."""

import ast
import re
from pathlib import Path

from tests.converters.wellposed_converters.setups.tables import RX
from tests.spec.prose import PAGES

from wellposed_converters import setups
from wellposed_converters.setups.csv_file import csv_book
from wellposed_converters.setups.declared import mapping_of
from wellposed_converters.setups.directions import BY_PLACE
from wellposed_converters.setups.faults import RULES
from wellposed_converters.setups.reading import read_table

PAGE = PAGES["setup-tables.md"]
SOURCES = [path.read_text("utf-8") for path in sorted(Path(setups.__file__).parent.glob("*.py"))]


def block(begins):
    """The indented block that begins so, without its indent."""
    (found,) = [
        part for part in re.findall(r"(?:^(?:    .*)?\n)+", PAGE, re.MULTILINE) if part.strip().startswith(begins)
    ]
    return re.sub(r"(?m)^    ", "", found.strip("\n")) + "\n"


def test_the_example_is_what_its_table_says():
    table, mapping = block("Tooth;"), mapping_of(block("[table]").encode(), "columns.toml")
    said = read_table(csv_book(table.encode(), "t.csv", None, ";"), None, mapping, RX)
    found = {(one.tooth, one.variable): f"{float(one.value):g}" for one in said.final}
    head = ("along", "vertical", "rotation")
    rows = re.findall(r"^\| (\d\d) \| (.*?) \| (.*?) \| (.*?) \|$", PAGE, re.MULTILINE)
    told = {(tooth, name): cell for tooth, *cells in rows for name, cell in zip(head, cells, strict=True)}
    assert found == {at: cell for at, cell in told.items() if cell != "not stated"}
    assert {one.contact: float(one.amount) for one in said.reductions} == dict.fromkeys(
        ("12-11", "11-21", "21-22"), 0.4
    )


def test_its_faults_are_those_of_the_program():
    rows = re.findall(r"^\| `(setup-[a-z-]+)` \| (.*) \|$", PAGE, re.MULTILINE)
    assert dict(rows) == RULES


def test_every_fault_that_is_told_has_a_name_and_every_name_is_told():
    strings = {
        node.value
        for source in SOURCES
        for node in ast.walk(ast.parse(source))
        if isinstance(node, ast.Constant)
        and isinstance(node.value, str)
        and re.match(r"setup-(table|columns)-", node.value)
    }
    assert strings == set(RULES)
    counted = [len(re.findall(f'"{rule}"', "".join(SOURCES))) for rule in RULES]
    assert min(counted) >= 2


def test_every_direction_by_place_is_named():
    opposites = {name.removeprefix("counter") for name in BY_PLACE}
    assert {name for name in opposites if f"`{name}`" not in PAGE} == set()
