"""Our lists of codes, each with its codes in words."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Final, get_args

from wellposed.findings import Severity
from wellposed.model import DOCUMENTS
from wellposed.report import NOT_JUDGED, READ_VERDICTS, REFUSED, UNREADABLE
from wellposed.vocabulary.measures import MEASURES, ToothMeasure
from wellposed.vocabulary.teeth import TEETH, in_words
from wellposed.vocabulary.terms import Problem, ToothState
from wellposed_converters.fhir.bundle import OUTCOMES
from wellposed_converters.fhir.sections import FINDING, ON_ORDER, ON_SERIES, PROBLEM
from wellposed_converters.fhir.series import COUNTS, TERMS
from wellposed_converters.fhir.shape import Slot, slots

_OWN: Final[dict[str, tuple[str, ...]]] = {
    "document": tuple(name.removeprefix("wellposed/") for name in DOCUMENTS),
    "measure": MEASURES,
    "parameter": tuple(name for _, name, _ in (*TERMS, *COUNTS)),
    "problem": get_args(Problem),
    "receipt-outcome": tuple(OUTCOMES),
    "request": ("clear-aligner-prescription", "clear-aligner-series"),
    "tooth": TEETH,
    "tooth-measure": get_args(ToothMeasure),
    "tooth-state": get_args(ToothState),
    "severity": tuple(one.value for one in Severity),
    "verdict": (*READ_VERDICTS, REFUSED, UNREADABLE, NOT_JUDGED),
}


@cache
def terms() -> dict[str, tuple[str, ...]]:
    """Every list by its name, in the order of the names. ValueError where two of a name are not the same."""
    found = dict(_OWN)
    for slot in _slots():
        if found.setdefault(slot.terms, slot.codes) != slot.codes:
            raise ValueError(f"two lists of codes are called {slot.terms}")
    return dict(sorted(found.items()))


def in_plain(name: str, code: str) -> str:
    """A code in words."""
    return in_words(code) if name == "tooth" else code.replace("-", " ")


def _slots() -> Iterator[Slot]:
    for section in (*ON_ORDER, *ON_SERIES, FINDING, PROBLEM):
        yield from _coded(section.slots)
    yield from (slot for slot in _coded(slots("treat", "treat")))


def _coded(found: tuple[Slot, ...]) -> Iterator[Slot]:
    for slot in found:
        yield from [slot] if slot.codes else []
        yield from _coded(slot.parts)
