"""The development samples with their expected clauses, as clauses of the program."""

import json
from pathlib import Path

from wellposed_converters.text.clause import RENAMED, Clause

PATH = Path(__file__).parent / "corpus" / "samples.jsonl"
MEMBERS = {said: member for member, said in RENAMED.items()}


def samples():
    """Pairs of a sample's record and its expected clauses."""
    records = map(json.loads, PATH.read_text("utf-8").splitlines())
    return [(record, [clause(one) for one in record["expected"]]) for record in records]


def clause(record):
    """The clause of an expected record."""
    said = {MEMBERS.get(name, name): value for name, value in record.items() if name != "quote"}
    return Clause(**{name: _tuples(value) for name, value in said.items()})


def _tuples(value):
    return tuple(_tuples(one) for one in value) if isinstance(value, list) else value
