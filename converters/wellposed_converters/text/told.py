"""A clause in a line of plain words: force, subject, place in numbers and words, direction, amount, condition."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from wellposed_converters.text.clause import Clause
from wellposed_converters.text.tables import read_table
from wellposed_converters.text.wording import tooth_words


@cache
def _words() -> dict[str, dict[str, str]]:
    return read_table(__package__, "told.toml")


def told(clause: Clause) -> str:
    """The clause as a line."""
    return "; ".join(_parts(clause))


def _parts(clause: Clause) -> Iterator[str]:
    words = _words()
    yield f"{words['mode'][clause.mode]}: {_subject(clause)}"
    place = _place(clause)
    if place:
        yield place
    if clause.minimum is not None or clause.maximum is not None:
        yield _amount(clause)
    if clause.only:
        yield "nothing of this kind elsewhere"
    if clause.condition:
        yield f'on the condition "{clause.condition}"'
    if clause.pending:
        yield f"open: {', '.join(name.replace('_', ' ') for name in clause.pending)}"


def _subject(clause: Clause) -> str:
    more = [
        clause.of,
        clause.relation and f"Class {clause.relation}",
        clause.dir,
        clause.ref and _against(clause.ref),
    ]
    said = ", ".join(word.replace("_", " ") for word in more if word)
    kind = _words()["kind"][clause.kind]
    return f"{kind} ({said})" if said else kind


def _against(ref: str) -> str:
    reason: str | None = _words()["reason"].get(ref)
    return reason or f"against the {ref}"


def _place(clause: Clause) -> str:
    contacts = ", ".join(f"{one}/{other}" for one, other in clause.contacts)
    places = [
        f"teeth {tooth_words(clause.teeth)}" if clause.teeth else "",
        f"contacts {contacts}" if contacts else "",
        {"both": "both arches"}.get(clause.arch, f"{clause.arch} arch") if clause.arch else "",
        {"both": "both sides"}.get(clause.side, f"the patient's {clause.side}") if clause.side else "",
    ]
    return ", ".join(place for place in places if place)


def _amount(clause: Clause) -> str:
    words = _words()
    unit = words["unit"].get(clause.unit or "", "")
    measure = words["measure"].get(clause.measure or "", "")
    return " ".join(part for part in (_bounds(clause), unit, measure) if part)


def _bounds(clause: Clause) -> str:
    about = "about " if clause.approx else ""
    low, high = clause.minimum, clause.maximum
    if low is not None and low == high:
        return f"{about}{low:g}"
    if low is not None and high is not None:
        return f"{about}{low:g} to {high:g}"
    if high is not None:
        return f"{about}{'less than' if clause.max_open else 'at most'} {high:g}"
    return f"{about}at least {low:g}"
