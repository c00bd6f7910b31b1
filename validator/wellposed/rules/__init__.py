"""Where a careful colleague would stop and ask: clinical rules, one topic after another.

``TOPICS`` holds them in the order they look. A rule that breaks becomes the finding ``rule-failed``, and the others
go on.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from wellposed.findings import Finding, Severity
from wellposed.rules import (
    attachments,
    attachments_reason,
    completeness,
    completeness_plan,
    diagnosis,
    enamel,
    enamel_places,
    enamel_restored,
    enamel_sums,
    enamel_told,
    enamel_when,
    inclination,
    midlines,
    minimality,
    mouth,
    mouth_allergy,
    mouth_roots,
    mouth_teeth,
    notation,
    predictability,
    predictability_amounts,
    privacy,
    proclination,
    proclination_gums,
    revisions,
    sagittal,
    sagittal_class,
    sagittal_front,
    space,
    space_counted,
    space_means,
    staging,
    staging_order,
    tooth_size,
    tooth_size_plan,
    torque,
    transverse,
    transverse_need,
    vertical,
    vertical_back,
    vertical_display,
    vertical_gum,
    vertical_open,
)
from wellposed.rules._declare import Clinical
from wellposed.rules.chart import Chart

_MODULES = {
    "diagnosis": (diagnosis,),
    "tooth size": (tooth_size, tooth_size_plan),
    "space": (space, space_means, space_counted),
    "vertical": (vertical, vertical_display, vertical_gum, vertical_open, vertical_back),
    "transverse": (transverse, transverse_need),
    "incisor inclination": (proclination, proclination_gums, inclination, torque),
    "sagittal": (sagittal, sagittal_class, sagittal_front, midlines),
    "enamel reduction": (enamel, enamel_sums, enamel_places, enamel_restored, enamel_when, enamel_told),
    "attachments": (attachments, attachments_reason),
    "teeth and mouth": (mouth, mouth_allergy, mouth_teeth, mouth_roots),
    "staging": (staging, staging_order),
    "predictability": (predictability, predictability_amounts),
    "minimality": (minimality,),
    "completeness": (completeness, completeness_plan),
    "notation": (notation,),
    "revisions": (revisions,),
    "privacy": (privacy,),
}
TOPICS: Mapping[str, tuple[Clinical[Chart], ...]] = MappingProxyType(
    {topic: tuple(rule for module in modules for rule in module.RULES) for topic, modules in _MODULES.items()}
)
"""The rules by topic, in the order they look."""
RULES: tuple[Clinical[Chart], ...] = tuple(rule for rules in TOPICS.values() for rule in rules)

USUAL: Mapping[str, Severity] = MappingProxyType({rule.id: rule.severity for rule in RULES})
"""How much each rule weighs, unless a practice profile says otherwise."""

__all__ = ["RULES", "TOPICS", "USUAL", "Chart", "Clinical", "clinical"]


def clinical(chart: Chart) -> Iterator[Finding]:
    """Everything the clinical rules find, rule by rule. Never raises for what is in the document."""
    for rule in RULES:
        yield from rule.findings(chart)
