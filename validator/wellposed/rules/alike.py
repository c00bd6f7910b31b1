"""Two rules that tell one cause of one clause: what the weaker says goes under the finding of the stronger.

Each rule still speaks by itself. Only where both speak of one place do they stand as one, so that one trouble is not
counted as two.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from types import MappingProxyType

from wellposed.findings import Finding

STRONGER: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "adult-widening-partly-reached": ("widening-without-root-control",),
        "allowance-not-needed": ("goals-already-met",),
        "allowance-without-use": ("reduction-at-an-implant", "what-it-forces"),
        "bare-number-in-words": ("number-of-another-notation",),
        "class-left-as-it-is": ("class-not-supported",),
        "crossbite-without-width-change": ("crossbite-not-supported",),
        "extrusion-without-attachment": ("incisor-extrusion-seldom-reached",),
        "midline-without-asymmetric-means": ("means-not-said",),
        "movement-nothing-needs": ("answers-a-normal-finding", "gum-intrusion-inside-norm"),
        "problem-without-finding": ("crowding-not-supported", "spacing-not-supported"),
        "reduction-without-reason": ("reduction-in-the-small-arch",),
    }
)
"""By rule, those that say more of the same cause, the fittest first. None of them has an entry of its own."""
_OF_THE_WHOLE = ("goals-already-met", "what-it-forces")
"""Rules that speak of every clause at once."""


def as_one(findings: Iterable[Finding]) -> Iterator[Finding]:
    """The findings as they come, those that say less put under those that say more."""
    told = list(findings)
    leading = {one.under for one in told}
    for finding in told:
        leader = None if finding.under or finding.name in leading else _leader(finding, told)
        yield finding if leader is None else replace(finding, under=leader.under or leader.name)


def _leader(finding: Finding, told: list[Finding]) -> Finding | None:
    """The finding of the same place that says more, and weighs no less."""
    here = [one for one in told if one.pointer == finding.pointer or one.rule in _OF_THE_WHOLE]
    grave = [one for one in here if one.severity.rank <= finding.severity.rank]
    fitting = (one for rule in STRONGER.get(finding.rule, ()) for one in grave if one.rule == rule)
    return next(fitting, None) or next((one for one in grave if _same_limit(finding, one)), None)


def _same_limit(finding: Finding, other: Finding) -> bool:
    """Whether the other asks about passing the very limit that this one was measured against."""
    passed = {one["norm"] for one in other.facts.get("members", ()) if one.get("role") == "usual"}
    return any(figure["key"] in passed for figure in finding.facts.get("figures", ()))
