"""The rows of spec/notes.md: words of a note, and what is read of them."""

import re
from pathlib import Path

import pytest

from wellposed_converters.text.read import read_text

PAGE = (Path(__file__).parents[2] / "spec" / "notes.md").read_text("utf-8")
TABLE = re.compile(r"<!-- read: (?P<lead>[^>]*?)-->\n(?P<body>(?:\|[^\n]*\n)+)")
REASON = {"retention": "to hold the aligner", "movement": "for a movement"}
FORCE = {"do": "wanted", "keep": "leave as it is", "forbid": "must not be", "limit": "allowed", "permit": "allowed"}
KIND = {
    "ipr": "enamel reduction", "align": "alignment", "intrude": "intrusion", "rotate": "rotation", "move": "movement",
    "attachment": "attachments", "movement": "any movement",
}  # fmt: skip
WHEN = {"current": " now", "target": " at the end", "per_contact": " per contact"}
ROWS = [
    (mark["lead"] + cells[0].strip(), cells[1].strip())
    for mark in TABLE.finditer(PAGE)
    for cells in [row.split("|")[1:3] for row in mark["body"].splitlines()[2:]]
]


def amount(clause):
    if clause.minimum is None and clause.maximum is None:
        return ""
    bound = "exactly" if clause.minimum == clause.maximum else "at most" if clause.minimum is None else "at least"
    value = clause.maximum if clause.maximum is not None else clause.minimum
    when = WHEN.get(clause.measure, "")
    measured = clause.mode == "keep" or clause.dir in ("reduce", "increase")
    change = " of change" if clause.measure == "change" and measured else ""
    return f"{bound} {value:g} {clause.unit or ''}{when}{change}".rstrip()


def line(clause):
    if clause.kind == "notation":
        return f"notation {clause.of}"
    places = [
        f"teeth {', '.join(map(str, clause.teeth))}" if clause.teeth else "",
        f"contacts {', '.join(f'{a}/{b}' for a, b in clause.contacts)}" if clause.contacts else "",
        {"both": "both arches"}.get(clause.arch, f"{clause.arch} arch") if clause.arch else "",
    ]
    subject = " ".join(filter(None, [KIND.get(clause.kind, clause.kind), clause.dir]))
    force = "found" if clause.mode == "state" else FORCE[clause.mode]
    more = "only" if clause.only else "", REASON[clause.ref] if clause.kind == "attachment" and clause.ref else ""
    return "; ".join(filter(None, [f"{force}: {subject}", *places, amount(clause), *more]))


@pytest.mark.parametrize("words, read", ROWS)
def test_the_page_says_what_is_read(words, read):
    reading = read_text(words)
    stated = words.startswith("FDI.")
    waiting = {at for question in reading.questions for at in question.concerns if question.type != "contradiction"}
    firm = [
        line(clause)
        for at, clause in enumerate(reading.clauses)
        if clause.kind != "note" and at not in waiting and not (stated and clause.kind == "notation")
    ]
    asked = [f"[{question.type}]" for question in reading.questions]
    assert ". ".join([*firm, *asked]) == read


def test_there_are_rows():
    assert len(ROWS) > 25
