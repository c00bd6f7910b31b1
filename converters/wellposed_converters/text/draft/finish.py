"""From a draft to a prescription: answers, the particulars that only the clinic has, and nothing left open."""

from __future__ import annotations

import copy
import json
from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any, Final, NamedTuple

from wellposed.findings import Finding
from wellposed.model.envelope import NOTE_EXTENSION, Envelope
from wellposed.reading import Document, read_document, structured
from wellposed.vocabulary.teeth import ARCHES
from wellposed_converters.text.draft.drafting import AS_NOTE, ENVELOPE, Draft, Uncarried

FIXED: Final = {"format": "wellposed/prescription", "version": "1.0", "notation": "ISO 3950"}
PARTICULARS: Final = frozenset(
    ("id", "revision", "replaces", "issued", "prescriber", "laboratory", "patient", "teeth", "records", "findings")
)


class Lack(NamedTuple):
    """Why a draft is no prescription yet: a name, and the question or the place it is about."""

    rule: str
    about: str


class NotFinished(ValueError):  # noqa: N818  # not a fault of the caller's program: the draft is open
    """The draft cannot become a prescription; ``lacks`` says all that is in the way."""

    def __init__(self, lacks: tuple[Lack, ...]) -> None:
        super().__init__("; ".join(f"{one.rule} {one.about}" for one in lacks))
        self.lacks = lacks


def answered(one: Draft, question: str, answer: Any) -> Draft:
    """The draft with an answer to a question that the format asked.

    answer  the open members and their values, as ``{"within": 0.5}``; or ``"as-note"`` for words that stay a note.
            What the reader asked is answered by reading or editing the clauses, and drafting again.

    Raises:
        KeyError: there is no such question
        ValueError: the answer is not one of this question, or it is answered already
    """
    asked = {entry["id"]: entry for entry in one.questions}[question]
    if question in {entry["question"] for entry in one.answers}:
        raise ValueError(f"{question} is answered already")
    document = copy.deepcopy(one.document)
    if "members" in asked:
        _filled(document, asked, answer)
    elif answer != AS_NOTE or AS_NOTE not in asked.get("options", ()):
        raise ValueError(f"{question} is not answered by that")
    return replace(one, document=document, answers=(*one.answers, {"question": question, "answer": answer}))


def _filled(document: dict[str, Any], asked: Mapping[str, Any], answer: Any) -> None:
    bounds = asked["members"] == ["at_least", "at_most"]
    known = isinstance(answer, Mapping) and answer and set(answer) <= set(asked["members"])
    if not known or not (bounds or set(answer) == set(asked["members"])):
        raise ValueError(f"{asked['id']} asks for {', '.join(asked['members'])}")
    for pointer in asked["pointers"]:
        _at(document, pointer).update(answer)


def _at(document: Any, pointer: str) -> Any:
    for step in pointer.split("/")[1:]:
        document = document[int(step)] if isinstance(document, list) else document[step]
    return document


def finish(one: Draft, particulars: Mapping[str, Any]) -> dict[str, Any]:
    """The prescription, once nothing is open.

    particulars  members of the prescription that no note says: id, revision, issued, prescriber, laboratory, patient,
                 teeth; records and replaces where there are any; findings of what the note does not measure, which
                 follow its own. Nothing of them is filled in.

    The result is sound in itself; whether its clauses can hold together is for the check.

    Raises:
        NotFinished: naming every open question and all that is missing or at odds with the note
    """
    lacks = [*_open(one), *_missing(one, particulars), *_at_odds(one, particulars)]
    if lacks:
        raise NotFinished(tuple(lacks))
    whole = _whole(one, particulars)
    faults = _faults(whole)
    if faults:
        raise NotFinished(faults)
    return whole


def _open(one: Draft) -> Iterator[Lack]:
    yield from (Lack("question-open", entry["id"]) for entry in one.open_questions())


def _missing(one: Draft, particulars: Mapping[str, Any]) -> Iterator[Lack]:
    yield from (Lack("particular-unknown", f"/{name}") for name in particulars if name not in PARTICULARS)
    yield from (Lack("particular-missing", pointer) for pointer in one.missing if _value(particulars, pointer) is None)


def _value(particulars: Mapping[str, Any], pointer: str) -> Any:
    value: Any = particulars
    for step in pointer.split("/")[1:]:
        value = value.get(step) if isinstance(value, Mapping) else None
    return value


def _at_odds(one: Draft, particulars: Mapping[str, Any]) -> Iterator[Lack]:
    """What the particulars say otherwise than the note, or beside it: a missing tooth that is present, a fact of the
    patient, a measure that the note gives too."""
    teeth = particulars.get("teeth")
    present = {tooth for arch in ARCHES for tooth in _list(_value(particulars, f"/teeth/{arch}"))}
    yield from (Lack("said-to-be-missing", tooth) for tooth in one.absent if tooth in present)
    if isinstance(teeth, Mapping) and "particulars" in teeth and "teeth" in one.document:
        yield Lack("said-by-the-note", "/teeth/particulars")
    said = dict.fromkeys((*ENVELOPE, *(f"/patient/{name}" for name in one.document.get("patient", {}))))
    for pointer in said:
        noted, given = _value(one.document, pointer), _value(particulars, pointer)
        if noted is not None and given not in (None, noted):
            yield Lack("said-by-the-note", pointer)
    if not isinstance(particulars.get("findings", []), list):
        yield Lack("wrong-kind", "/findings")
    noted = {what for entry in one.document.get("findings", ()) for what in _measured(entry)}
    for number, entry in enumerate(_entries(particulars)):
        if noted & set(_measured(entry)):
            yield Lack("said-by-the-note", f"/findings/{number}")


def _measured(finding: Any) -> Iterator[tuple[str, ...]]:
    """What a finding measures, whatever the value, its unit and the jaw position: a measure, at its pair or tooth."""
    if isinstance(finding, Mapping):
        teeth = values if isinstance(values := finding.get("values"), Mapping) else ()
        yield from ((str(finding.get("tooth_measure")), tooth) for tooth in teeth)
        if "measure" in finding:
            yield (str(finding["measure"]), *sorted(_list(finding.get("pair"))))


def _entries(particulars: Mapping[str, Any]) -> list[Any]:
    found = particulars.get("findings")
    return found if isinstance(found, list) else []


def _list(value: Any) -> list[Any]:
    return [tooth for tooth in value if isinstance(tooth, str)] if isinstance(value, list | tuple) else []


def _whole(one: Draft, particulars: Mapping[str, Any]) -> dict[str, Any]:
    """Fixed members, particulars and clauses, in the order of the format; lists of all teeth filled."""
    given = copy.deepcopy(dict(particulars))
    document = copy.deepcopy(one.document)
    for fill in one.fills:
        pointer, _, member = fill["pointer"].rpartition("/")
        arches = ARCHES if fill["teeth_of"] == "both" else (fill["teeth_of"],)
        _at(document, pointer)[member] = [tooth for arch in arches for tooth in given["teeth"][arch]]
    for name in ("patient", "teeth"):
        given[name] = {**given.get(name, {}), **document.pop(name, {})}
    if "findings" in document:
        document["findings"] = [*document["findings"], *_entries(given)]
    members = (
        FIXED
        | given
        | document
        | {"extensions": {NOTE_EXTENSION: {"critical": False, "content": _origin(one, document)}}}
    )
    return {name: members[name] for name in (*FIRST, *members) if name in members}


NOTE: Final = "org.wellposed.note"
"""The extension that says which note a prescription was made of, and where in it each clause stands."""


def _origin(one: Draft, document: Mapping[str, Any]) -> dict[str, Any]:
    """The digest of the note, and clause id (or pointer, where there is no id) to spans."""
    sources: dict[str, list[list[int]]] = {}
    for pointer, source in one.sources.items():
        try:
            entry = _at(document, pointer)
        except (KeyError, IndexError):
            entry = None
        name = entry.get("id", pointer) if isinstance(entry, Mapping) else pointer
        sources[name] = sorted([*sources.get(name, []), *source["spans"]])
    return {"sha256": one.note_sha256, "sources": sources}


FIRST: Final = (
    "format", "version", "notation", "id", "revision", "replaces", "issued", "prescriber", "laboratory", "treat",
    "patient", "teeth", "conditions", "records", "findings",
)  # fmt: skip


def _faults(whole: Mapping[str, Any]) -> tuple[Lack, ...]:
    """What is wrong with the prescription as text and as a structure."""
    read = read_document(json.dumps(whole, ensure_ascii=False).encode())
    made = structured(read) if isinstance(read, Document) else read
    if isinstance(made, Envelope):
        return ()
    return tuple(_lack(finding) for finding in made)


def _lack(found: Finding) -> Lack:
    return Lack(found.rule, found.pointer)


def restored(record: Mapping[str, Any]) -> Draft:
    """The draft that ``record`` was made of. :raises KeyError: for a record that lacks a member."""
    left = tuple(Uncarried(one["clause"], one["reason"], tuple(one["pointers"])) for one in record["uncarried"])
    lists = ("administrative", "questions", "missing", "assumed", "absent", "fills", "answers")
    rest = {name: tuple(record[name]) for name in lists}
    return Draft(record["note_sha256"], record["prescription"], record["sources"], left, **rest)


__all__ = ["ENVELOPE", "Lack", "NotFinished", "answered", "finish", "restored"]
