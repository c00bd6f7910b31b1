"""Where a careful colleague would stop and ask: clinical rules, one module a topic.

``TOPICS`` holds them in the order they look. A rule that breaks becomes the finding ``rule-failed``, and the others
go on.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from wellposed.findings import Finding, Severity
from wellposed.rules._declare import Clinical
from wellposed.rules.chart import Chart

TOPICS: Mapping[str, tuple[Clinical, ...]] = MappingProxyType({})
RULES: tuple[Clinical, ...] = tuple(rule for rules in TOPICS.values() for rule in rules)
USUAL: Mapping[str, Severity] = MappingProxyType({rule.id: rule.severity for rule in RULES})
"""How much each rule weighs, unless a practice profile says otherwise."""

__all__ = ["RULES", "TOPICS", "Chart", "USUAL", "Clinical", "clinical"]


def clinical(chart: Chart) -> Iterator[Finding]:
    """Everything the clinical rules find, rule by rule. Never raises for what is in the document."""
    for rule in RULES:
        yield from rule.findings(chart)
