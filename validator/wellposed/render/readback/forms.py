"""The read-back as text and as JSON."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from textwrap import wrap

from wellposed.findings import CAUTION
from wellposed.model import PRIVATE, Prescription
from wellposed.render.filled import joined
from wellposed.render.json_report import CLOSING, dumped
from wellposed.render.readback.sentence import FOUR, HEADINGS, Sentence
from wellposed.render.readback.told import sentences

__all__ = ["FOOT", "NUMBERS", "readback_json", "readback_text"]

NUMBERS = "Tooth numbers: ISO 3950 (FDI)."
_SCOPE = "This says what is written and what follows from silence. Whether it can hold together is for a check to say."
_LEFT_OUT = tuple(pointer.removeprefix("/") for pointer in PRIVATE)
FOOT = (f"Not repeated here: {joined(list(_LEFT_OUT))}.", _SCOPE, CAUTION)
"""What stands below the sentences, a paragraph each."""
_HANG = 6
_TIE = "\u00a0"
_TOGETHER = re.compile(r"(?<=\d) (?=\(|mm|%)")
"""A number is not parted from its unit, nor a tooth from its name."""


def readback_text(prescription: Prescription, usage: str, width: int = 100) -> str:
    """The sentences under their headings, ending in a line break; ``width`` is the longest line, in characters."""
    told = sentences(prescription, usage)
    head = f"{NUMBERS}\n{prescription.id}, revision {prescription.revision}.\n"
    parts = [_part(name, [one for one in told if one.heading == name], width) for name in HEADINGS]
    return "\n".join([head, *(part for part in parts if part), _foot(width)]) + "\n"


def _part(name: str, told: list[Sentence], width: int) -> str:
    """A heading with its sentences; nothing for one of the lists around the four that has none."""
    if not told and name not in FOUR:
        return ""
    return "\n".join([HEADINGS[name], "", *(_lines(told, width) if told else ["Nothing."]), ""])


def _lines(told: Iterable[Sentence], width: int) -> Iterator[str]:
    for one in told:
        line = f"{one.id:<{_HANG - 1}} {_TOGETHER.sub(_TIE, one.text)}"
        hang = " " * _HANG
        lines = wrap(line, width, subsequent_indent=hang, break_long_words=False, break_on_hyphens=False)
        yield from (line.replace(_TIE, " ") for line in lines)


def _foot(width: int) -> str:
    return "\n".join(line for part in FOOT for line in wrap(part, width))


def readback_json(prescription: Prescription, name: str, usage: str) -> str:
    """The same as JSON, described by ``spec/schema/1/readback.schema.json``; ``name`` is the base name of the file."""
    whole = {
        "document": {"name": name, "id": prescription.id, "revision": prescription.revision},
        "notation": prescription.notation,
        "usage": usage,
        "headings": [{"name": heading, "words": words} for heading, words in HEADINGS.items()],
        "sentences": [_object(one) for one in sentences(prescription, usage)],
        "left_out": list(_LEFT_OUT),
        **CLOSING,
        "format": "wellposed/readback",
    }
    return dumped(whole, indent=2)


def _object(one: Sentence) -> dict[str, str | None]:
    return {"pointer": one.pointer, "heading": one.heading, "clause": one.id or None, "text": one.text}
