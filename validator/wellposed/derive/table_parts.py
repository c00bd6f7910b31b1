"""One derived measurement."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from wellposed.findings import no_facts
from wellposed.model.findings import Finding, ToothFinding
from wellposed.model.prescription import Prescription


@dataclass(frozen=True, slots=True)
class Derived:
    """A measurement that follows from others.

    name       what it is, a short phrase such as overall-tooth-size-ratio
    value      in ``unit``; None where it is a grade, a range, or was refused
    unit       mm, deg, percent or 1
    low, high  range where there is one
    keys       norms used
    from_      ids of the findings and clauses it comes from
    usual      least and most that is usual
    refused    why it could not be derived: a reason code
    facts      what else there is to say, JSON types only
    """

    name: str
    value: float | None
    unit: str
    low: float | None = None
    high: float | None = None
    keys: tuple[str, ...] = ()
    from_: tuple[str, ...] = ()
    usual: tuple[float, float] | None = None
    refused: str | None = None
    facts: Mapping[str, Any] = field(default_factory=no_facts)


def measuring(prescription: Prescription, *measures: str) -> tuple[str, ...]:
    """Ids of the findings of these measures, in document order."""
    return tuple(one.id for one in prescription.findings or () if _measure(one) in measures)


def _measure(finding: Finding | ToothFinding) -> str:
    return finding.measure if isinstance(finding, Finding) else finding.tooth_measure


def once(ids: Iterable[str]) -> tuple[str, ...]:
    """Each once, in order."""
    return tuple(dict.fromkeys(ids))
