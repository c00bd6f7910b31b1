"""What is read from a text: clauses, questions, and the place of each in the text.

A span is a half-open pair of offsets in Unicode code points of the text as it was given. Teeth are ISO 3950 numbers,
from upper right to upper left, then from lower right to lower left; a contact is a pair of neighbours in that order.
Sides are the patient's.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any, Final

Span = tuple[int, int]
Contact = tuple[int, int]

QUESTIONS: Final = (
    "notation",
    "teeth",
    "missing_amount",
    "missing_unit",
    "meaning",
    "finding_or_request",
    "scope",
    "reference",
    "contradiction",
    "condition",
    "vague",
    "external_reference",
    "implausible",
    "not_understood",
)

HARD: Final = (
    "kind",
    "mode",
    "teeth",
    "contacts",
    "arch",
    "side",
    "dir",
    "class",
    "measure",
    "min",
    "max",
    "unit",
    "approx",
    "max_open",
    "only",
    "links",
)
"""The members in which a wrong value is an error of meaning; ``of`` joins them for the kinds of ``OF_IS_HARD``."""

OF_IS_HARD: Final = frozenset(
    (
        "level",
        "staging",
        "overcorrection",
        "retainer",
        "process",
        "sagittal",
        "tooth_status",
        "attachment",
        "archwidth",
        "notation",
    )
)


@dataclass(frozen=True)
class Clause:
    """One statement of the text. Absent members are not said; ``minimum`` equal to ``maximum`` is an exact value.

    ``mode`` is its force: ``do`` wanted, ``keep`` left as it is, ``forbid`` must not be, ``limit`` may be inside the
    bounds, ``permit`` may be, ``prefer`` wished, ``state`` a fact.
    """

    kind: str
    mode: str
    spans: tuple[Span, ...]
    teeth: tuple[int, ...] = ()
    contacts: tuple[Contact, ...] = ()
    arch: str | None = None
    side: str | None = None
    dir: str | None = None
    of: str | None = None
    relation: str | None = None
    measure: str | None = None
    minimum: float | None = None
    maximum: float | None = None
    unit: str | None = None
    approx: bool = False
    max_open: bool = False
    only: bool = False
    ref: str | None = None
    links: tuple[Contact, ...] = ()
    condition: str | None = None
    inferred: tuple[str, ...] = ()
    pending: tuple[str, ...] = ()
    rules: tuple[str, ...] = ()

    def with_(self, **changes: Any) -> Clause:
        """The same clause with other members."""
        return replace(self, **changes)


@dataclass(frozen=True)
class Question:
    """What must be answered before the order exists; ``concerns`` are indexes into the clauses.

    ``asks`` is the name of the question's wording, ``facts`` what the wording needs, ``options`` the readings offered.
    """

    type: str
    asks: str
    spans: tuple[Span, ...]
    options: tuple[str, ...] = ()
    concerns: tuple[int, ...] = ()
    facts: tuple[tuple[str, str], ...] = ()


RENAMED: Final = {"relation": "class", "minimum": "min", "maximum": "max", "condition": "if"}
"""Members whose name in a record is a word of Python."""


def quoted(text: str, spans: tuple[Span, ...]) -> str:
    """The words at the spans, parts joined by an ellipsis."""
    return " … ".join(text[start:end] for start, end in spans)


def record(clause: Clause, text: str) -> dict[str, Any]:
    """The clause as a JSON record; members that say nothing are left out, numbers without a fraction are whole."""
    said = {RENAMED.get(name, name): _plain(value) for name, value in vars(clause).items() if not _unsaid(value)}
    return {key: said[key] for key in said if key != "rules"} | {"quote": quoted(text, clause.spans)}


def _unsaid(value: Any) -> bool:
    """Whether a member says nothing; an amount of nought says something."""
    return value is None or value is False or value == ()


def _plain(value: Any) -> Any:
    if isinstance(value, tuple):
        return [_plain(part) for part in value]
    if isinstance(value, float) and value.is_integer():
        return int(value)
    return value
