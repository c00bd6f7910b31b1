"""The sections of a document from its entries, and where each entry stands in it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Any, Final, NamedTuple

from wellposed.vocabulary.teeth import ARCHES, arch_of
from wellposed_converters.text.draft.assembly import LISTS, Entries, Entry

GROUNDS: Final = ("findings", "problems")
"""Sections that a clause can give as its reason."""


class Placed(NamedTuple):
    """An entry and its place in the document; of missing teeth and facts of the patient there may be several."""

    entry: Entry
    pointers: tuple[str, ...]


def document_of(entries: Entries) -> tuple[dict[str, Any], tuple[Placed, ...]]:
    """The parts of the prescription that follow from the entries, and the pointers of each."""
    document: dict[str, Any] = {}
    placed: list[Placed] = []
    for section in ("treat", "patient"):
        for entry in _of(entries, section):
            document[section] = dict(entry.part.value)
            members = (*entry.part.value, *entry.part.open)
            placed.append(Placed(entry, tuple(f"/{section}/{member}" for member in members)))
    placed += _teeth(entries, document)
    for entry in _of(entries, "staging"):
        document["staging"] = {"id": entry.id, **entry.part.value}
        placed.append(Placed(entry, ("/staging",)))
    for section in LISTS:
        found = [Placed(entry, (f"/{section}/{at}",)) for at, entry in enumerate(_of(entries, section))]
        if found:
            document[section] = [_written(one.entry, entries) for one in found]
            placed += found
    return document, tuple(placed)


def _of(entries: Entries, section: str) -> Iterator[Entry]:
    return (entry for entry in entries if entry.part.section == section)


def _teeth(entries: Entries, document: dict[str, Any]) -> Iterator[Placed]:
    """Particulars of teeth; missing teeth stand nowhere but are not among those present."""
    particulars = list(_of(entries, "particulars"))
    if particulars:
        document["teeth"] = {"particulars": [dict(entry.part.value) for entry in particulars]}
    yield from (Placed(entry, (f"/teeth/particulars/{at}",)) for at, entry in enumerate(particulars))
    for entry in _of(entries, "absent"):
        arches = {arch_of(tooth) for tooth in entry.part.value["teeth"]}
        yield Placed(entry, tuple(f"/teeth/{arch}" for arch in ARCHES if arch in arches))


def _written(entry: Entry, entries: Entries) -> dict[str, Any]:
    value = ({"id": entry.id} if entry.id else {}) | dict(entry.part.value)
    reasons = _ids(entries, entry.part.because, GROUNDS)
    if reasons:
        value["because"] = reasons
    about = _ids(entries, entry.clauses, LISTS) if entry.part.section == "notes" else []
    return value | ({"about": about} if about else {})


def _ids(entries: Entries, clauses: Iterable[int], sections: Sequence[str]) -> list[str]:
    wanted = set(clauses)
    return [
        entry.id for entry in entries if entry.id and entry.part.section in sections and wanted & set(entry.clauses)
    ]


def absent_teeth(entries: Entries) -> tuple[str, ...]:
    """The teeth the note says are missing."""
    return tuple(dict.fromkeys(tooth for entry in _of(entries, "absent") for tooth in entry.part.value["teeth"]))
