"""A sentence of the read-back: where what it says stands in the document, under which heading it goes, its words."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from types import MappingProxyType
from typing import Any, NamedTuple

from wellposed.consistency.whole import Place, Whole
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.translate import Translation
from wellposed.model import Prescription
from wellposed.model.making import LargestStep, Order
from wellposed.render.readback.words import ids, quoted

__all__ = ["FOUR", "HEADINGS", "Context", "Sentence", "Teller", "context", "said", "saying"]

HEADINGS: Mapping[str, str] = MappingProxyType(
    {
        "there": "What is there",
        "found": "What was found",
        "expected": "What is counted on, but not ordered",
        "change": "What will change",
        "stay": "What must stay",
        "means": "What may be used, and what not",
        "kept": "What was not mentioned and is therefore kept",
        "made": "How it is made",
        "open": "What is not stated, or does not bind",
    }
)
"""Every heading by its name, in order."""

FOUR = ("change", "stay", "means", "kept")
"""The headings that always stand there."""


class Sentence(NamedTuple):
    """One sentence.

    pointer  RFC 6901 pointer to what it says in words; "" where it says what the document does not
    heading  a name of ``HEADINGS``
    text     the sentence: ids in square brackets, words of the prescriber in quotation marks
    id       id of the clause it is or belongs to, "" where there is none
    """

    pointer: str
    heading: str
    text: str
    id: str = ""


class Context(NamedTuple):
    """The prescription a sentence is about, its parts with their places, and what the arithmetic makes of it."""

    whole: Whole
    translation: Translation

    @property
    def rx(self) -> Prescription:
        """The prescription."""
        return self.whole.prescription

    @property
    def mouth(self) -> Mouth:
        """The mouth as the arithmetic reads it."""
        return self.translation.mouth


Teller = Callable[[Place, Context], Iterator[Sentence]]
Phrase = Callable[[Any, Context], str]

_FORCE = {"must": "Must: ", "prefer": "Preferably: "}


def context(prescription: Prescription) -> Context:
    """What the sentences of a sound prescription are made from."""
    return Context(Whole(prescription), Translation(Mouth(prescription)))


def saying(heading: str, prefix: str | None, phrase: Phrase) -> Teller:
    """What tells a part in one sentence; without a prefix of its own it begins with the strength of its clause."""

    def tell(place: Place, ctx: Context) -> Iterator[Sentence]:
        begins = _force(place.part, ctx) if prefix is None else prefix
        yield said(place, heading, begins + phrase(place.part, ctx))

    return tell


def said(place: Place, heading: str, told: str) -> Sentence:
    """A sentence on a part, with what every part may add: words of the prescriber, and what it answers."""
    words, because, about = place.said("words"), place.said("because"), ""
    if words is not None:
        about += f", {quoted(words)}"
    if because:
        about += f" (because of {ids(because)})"
    return Sentence(place.pointer, heading, f"{told}{about}.", place.owner)


def _force(part: Any, ctx: Context) -> str:
    """The strength a clause begins with; steps and orders have that of the staging they stand in."""
    owner: Any = ctx.rx.staging if isinstance(part, LargestStep | Order) else part
    return _FORCE[owner.strength]
