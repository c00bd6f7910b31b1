"""The proof of a reading: what was read is read back again, and must be told in the same sentences."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterable, Iterator
from typing import Any, Final

from wellposed.check import sound
from wellposed.model import Prescription
from wellposed.render.readback import sentences
from wellposed.render.readback.sentence import HEADINGS
from wellposed.render.readback.spelling import BRITISH, spelt
from wellposed_converters.text.clause import Question
from wellposed_converters.text.readback.document import Made
from wellposed_converters.text.readback.page import Entry

_NOBODY: Final[dict[str, Any]] = {
    "format": "wellposed/prescription",
    "version": "1.0",
    "notation": "ISO 3950",
    "issued": "2000-01-01T00:00:00Z",
    "prescriber": {"id": "x"},
    "laboratory": {"id": "x"},
    "patient": {"reference": "x"},
}
"""What a read-back does not repeat, for the time of the proof; no sentence says anything of it."""
_BEFORE: Final = "0" * 64


def told_again(made: Made, entries: Iterable[Entry], identity: tuple[str, int]) -> Iterator[Question]:
    """What the reading would be told in otherwise than it was."""
    listed = list(entries)
    found = sound(json.dumps(_whole(made, identity)).encode())
    if not isinstance(found, Prescription):
        yield from (_stopped(made, listed, one.rule, one.pointer) for one in found.findings)
        return
    yield from _differences(listed, found)


def _whole(made: Made, identity: tuple[str, int]) -> dict[str, Any]:
    """The prescription with something in place of what is not repeated."""
    name, revision = identity
    earlier = {"replaces": _BEFORE} if revision > 1 else {}
    notes = [{"text": "-", **one.value} for _, one in made.unsaid if one.place == "notes"]
    names = [key for _, one in made.unsaid if one.place == "extensions" for key in one.value]
    more = {"notes": notes} if notes else {}
    kept = {"extensions": {key: {"critical": False, "content": None} for key in names}} if names else {}
    return {**_NOBODY, "id": name, "revision": revision, **earlier, **made.document, **more, **kept}


def _stopped(made: Made, entries: list[Entry], rule: str, pointer: str) -> Question:
    """A rule between the parts stops what was read: asked about at the sentence it comes from."""
    near = [at for place, found in made.pointers.items() if _meets(place, pointer) for at in found]
    spans = tuple(entries[at].span for at in near) or ((0, 0),)
    return Question("contradiction", "readback-not-sound", spans, facts=(("rule", rule), ("pointer", pointer)))


def _meets(place: str, pointer: str) -> bool:
    return f"{pointer}/".startswith(f"{place}/") or f"{place}/".startswith(f"{pointer}/")


def _differences(entries: list[Entry], found: Prescription) -> Iterator[Question]:
    """Sentences of the page that would not be told, and those that would be but do not stand on it."""
    told = Counter((one.heading, one.id, one.text) for one in sentences(found, BRITISH))
    for entry in entries:
        as_read = entry.heading, entry.id, spelt(entry.text, BRITISH)
        if told[as_read]:
            told[as_read] -= 1
        else:
            yield Question("contradiction", "readback-not-told-again", (entry.span,))
    for heading, name, text in told.elements():
        facts = (("heading", HEADINGS[heading]), ("said", f"{name} {text}".strip()))
        yield Question("contradiction", "readback-lacking", ((0, 0),), facts=facts)
