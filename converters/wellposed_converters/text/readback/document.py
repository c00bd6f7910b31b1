"""The parts of a prescription from the sentences of its read-back, each in its place."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import Any, Final

from wellposed.render.readback.spelling import BRITISH, spelt
from wellposed_converters.text.clause import Question
from wellposed_converters.text.readback.form import Form, Members, NotSaidAlike
from wellposed_converters.text.readback.grammar import parsed
from wellposed_converters.text.readback.page import Entry
from wellposed_converters.text.readback.said import Said, said

NAMELESS: Final = frozenset(("treat", "teeth", "particulars", "conditions", "notes", "extensions"))
"""Places of parts that have no id."""
NOT_REPEATED: Final = frozenset(("notes", "extensions"))
"""Parts that a read-back names without saying what is in them. They do not bind."""
_STAGED: Final = ("staging", "order")
_IN_STAGING: Final = frozenset(("largest_steps", "order"))


@dataclass
class Made:
    """What has been put together so far.

    document   members of the prescription
    pointers   place of each part in it to the number of the sentence it comes from
    follows    numbers of sentences that order nothing
    unsaid     number of the sentence of each note and extension, and what is told of it
    questions  what could not be read, or is said twice
    """

    document: Members = field(default_factory=dict)
    pointers: dict[str, list[int]] = field(default_factory=dict)
    follows: list[int] = field(default_factory=list)
    unsaid: list[tuple[int, Said]] = field(default_factory=list)
    questions: list[Question] = field(default_factory=list)


def made_of(entries: Iterable[Entry]) -> Made:
    """The parts that the sentences say."""
    made = Made()
    for at, entry in enumerate(entries):
        try:
            _put(made, at, entry)
        except NotSaidAlike as fault:
            asked = (("said", fault.words),)
            made.questions.append(Question("contradiction", f"readback-{fault.asks}", (entry.span,), facts=asked))
    return made


def _put(made: Made, at: int, entry: Entry) -> None:
    tree = parsed(spelt(entry.text, BRITISH))
    if tree is None:
        made.questions.append(Question("not_understood", "readback-sentence", (entry.span,)))
        return
    told = said(Form(tree))
    if told is None:
        made.follows.append(at)
    elif told.place in NOT_REPEATED:
        made.unsaid.append((at, told))
    elif told.place == "none":
        _none(made, at, entry, next(iter(told.value)))
    elif told.place in _STAGED:
        _stage(made, at, entry, told)
    else:
        _add(made, at, entry, told)


def _add(made: Made, at: int, entry: Entry, told: Said) -> None:
    """A part that stands by itself, or in a list."""
    if bool(entry.id) == (told.place in NAMELESS):
        raise NotSaidAlike("id-lacking" if not entry.id else "id-not-expected", entry.id or entry.text)
    value = ({"id": entry.id} if entry.id else {}) | told.value
    if told.place == "treat":
        _member(made, at, made.document, "treat", value, "/treat")
    elif told.place == "teeth":
        ((arch, teeth),) = value.items()
        _member(made, at, made.document.setdefault("teeth", {}), arch, teeth, f"/teeth/{arch}")
    elif told.place == "particulars":
        _append(made, at, made.document.setdefault("teeth", {}), "particulars", value, "/teeth/particulars")
    else:
        _append(made, at, made.document, told.place, value, f"/{told.place}")


def _member(made: Made, at: int, where: Members, name: str, value: Any, pointer: str) -> None:
    if name in where:
        raise NotSaidAlike("twice", name)
    where[name] = value
    made.pointers.setdefault(pointer, []).append(at)


def _append(made: Made, at: int, where: Members, name: str, value: Any, pointer: str) -> None:
    listed = where.setdefault(name, [])
    if not listed and pointer in made.pointers:
        raise NotSaidAlike("twice", name)
    listed.append(value)
    made.pointers.setdefault(f"{pointer}/{len(listed) - 1}", []).append(at)


def _none(made: Made, at: int, entry: Entry, name: str) -> None:
    """A list stated as none."""
    if name in _IN_STAGING:
        _staged(made, entry.id, {})
        _member(made, at, made.document["staging"], name, [], f"/staging/{name}")
    elif name == "particulars":
        _member(made, at, made.document.setdefault("teeth", {}), name, [], "/teeth/particulars")
    else:
        _member(made, at, made.document, name, [], f"/{name}")


# staging, of which each member has its own sentence


def _stage(made: Made, at: int, entry: Entry, told: Said) -> None:
    value = dict(told.value)
    strength = {"strength": value.pop("strength")}
    if told.place == "order":
        staging = _staged(made, "", strength)
        _append(made, at, staging, "order", {"id": entry.id} | value, "/staging/order")
        return
    staging = _staged(made, entry.id, strength)
    for name, inner in value.items():
        if name == "largest_steps":
            _append(made, at, staging, name, inner[0], f"/staging/{name}")
        else:
            _member(made, at, staging, name, inner, f"/staging/{name}")
    if not value:
        made.pointers.setdefault("/staging", []).append(at)


def _staged(made: Made, name: str, said_: Members) -> Members:
    """The staging so far, once what a sentence says of the whole of it is the same as before."""
    staging: Members = made.document.setdefault("staging", {})
    for member, value in (said_ | ({"id": name} if name else {})).items():
        if staging.setdefault(member, value) != value:
            raise NotSaidAlike("staging", f"{staging[member]}, {value}")
    return staging


def taken(made: Made) -> Iterator[int]:
    """Numbers of the sentences that went somewhere."""
    yield from made.follows
    yield from (at for at, _ in made.unsaid)
    yield from (at for found in made.pointers.values() for at in found)
