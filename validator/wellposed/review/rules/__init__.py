"""Where a careful colleague would stop over a setup: its staging, its movements, what holds the teeth, its claims.

``TOPICS`` holds the rules in the order they look. A rule that breaks becomes the finding ``rule-failed``, and the
others go on.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from types import MappingProxyType

from wellposed.findings import Finding, Severity, ordered
from wellposed.review.held import Held
from wellposed.review.result import MeasureLine
from wellposed.review.rules import (
    answering,
    beyond,
    claims,
    enamel,
    holds,
    inclined,
    reached,
    room_first,
    roots,
    staging,
    teeth,
    timing,
)
from wellposed.rules._declare import Clinical

__all__ = ["RULES", "TOPICS", "USUAL", "setup_findings"]

_MODULES = {
    "setup answers": (answering,),
    "setup teeth": (teeth,),
    "setup staging": (staging, timing, room_first),
    "setup amounts": (beyond, enamel),
    "setup roots": (roots, inclined),
    "setup attachments": (holds,),
    "setup predictability": (reached,),
    "setup claims": (claims,),
}
TOPICS: Mapping[str, tuple[Clinical[Held], ...]] = MappingProxyType(
    {topic: tuple(rule for module in modules for rule in module.RULES) for topic, modules in _MODULES.items()}
)
"""The rules by topic, in the order they look."""
RULES: tuple[Clinical[Held], ...] = tuple(rule for rules in TOPICS.values() for rule in rules)

USUAL: Mapping[str, Severity] = MappingProxyType({rule.id: rule.severity for rule in RULES})
"""How much each rule weighs, unless a practice profile says otherwise."""


def setup_findings(held: Held, measures: Iterable[MeasureLine] = ()) -> tuple[Finding, ...]:
    """Everything the rules find in a setup, heaviest first, with pointers into the setup. Never raises.

    measures  every measure the movements change or the setup predicts, already compared
    """
    whole = replace(held, measures=tuple(measures) or held.measures)
    return ordered(finding for rule in RULES for finding in rule.findings(whole))
