"""Findings of clinical rules in words: what is said, what it rests on, what it was measured against, what would
change the judgement, and the instructions that rest on a doubted diagnosis alone."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from wellposed.catalogue import Entry, rules
from wellposed.findings import Finding, Severity
from wellposed.render.amounts import amount
from wellposed.render.filled import filled, joined
from wellposed.render.phrases import clause
from wellposed.vocabulary.measures import MEASURE_KINDS, TOOTH_MEASURE_KINDS

__all__ = ["clinical_lines", "clinical_sentence", "is_clinical", "would_change"]

_SURE = {"from memory": "recalled, not read", "common practice": "common practice, no source", "computed": "worked out"}


@cache
def _entries() -> Mapping[str, Entry]:
    return {entry.id: entry for entry in rules() if entry.says}


def is_clinical(finding: Finding) -> bool:
    """Whether a clinical rule speaks."""
    return finding.rule in _entries()


def clinical_sentence(finding: Finding) -> str:
    """What is said, in a sentence, with how sure its figures are where they were not read in print."""
    weighed = finding.facts.get("usual_severity")
    weight = f" (Usually weighed as {weighed}; the practice profile says otherwise.)" if weighed else ""
    said = filled(_entries()[finding.rule].says, finding.facts)
    seen = said if finding.severity == Severity.NOTE else f"{said} {would_change(finding)}"
    return said + _sureness(finding.facts, seen) + weight


def would_change(finding: Finding) -> str | None:
    """What would change the judgement, where the rule says it."""
    entry = _entries().get(finding.rule)
    return filled(entry.change, finding.facts) if entry and entry.change else None


def clinical_lines(finding: Finding) -> Iterator[str]:
    """A finding for a report: sentence, instructions that rest on it, ground, what would change it, what to do.

    A note asks for nothing: it is the sentence alone.
    """
    yield clinical_sentence(finding)
    if finding.severity == Severity.NOTE:
        return
    told = [f"{clause(one['said'])} ({one['clause']})" for one in finding.facts.get("instructions", ())]
    if told:
        yield f"No other reason is stated for: {'; '.join(told)}."
    ground = _ground(finding)
    if ground:
        yield f"Rests on: {ground}."
    changed = would_change(finding)
    if changed:
        yield f"Would change it: {changed}"
    yield f"To do: {_entries()[finding.rule].do}"


def _sureness(facts: Mapping[str, Any], seen: str) -> str:
    """The figures that no published text was read for, and what they are instead; nought is no figure.

    seen  what else the reader sees of the finding: a figure that is not in it is said to be used too
    """
    told = []
    for sure, words in _SURE.items():
        figures = [one for one in facts.get("figures", ()) if one["sure"] == sure and one["value"]]
        amounts = dict.fromkeys(map(_figure, figures))
        shown = [one for one in amounts if _is_in(one, seen)]
        besides = [one for one in amounts if one not in shown]
        told += [f"{joined(shown)}: {words}"] if shown else []
        told += [f"also used, {joined(besides)}: {words}"] if besides else []
    return f" ({'; '.join(told)}.)" if told else ""


def _figure(one: Mapping[str, Any]) -> str:
    """A figure with its unit; a whole number without one is a count."""
    value = one["value"]
    return f"{value:g}" if one["unit"] == "1" and value == int(value) else amount(value, one["unit"])


def _is_in(told: str, seen: str) -> bool:
    """Whether the number of an amount stands in a sentence."""
    return (
        re.search(rf"(?<![\d.]){re.escape(told.rstrip(' °%abcdefghijklmnopqrstuvwxyz'))}(?!\d|\.\d)", seen) is not None
    )


def _ground(finding: Finding) -> str:
    """Measurements, diagnoses and clauses by their ids; then what is not stated."""
    kinds: dict[str, list[str]] = {}
    for kind, name in finding.rests_on:
        kinds.setdefault(kind, []).append(name)
    missing = [_named(name) for name in kinds.pop("missing", ())]
    named = [f"{kind} {joined(ids)}" for kind, ids in kinds.items()]
    return "; ".join([*named, *([f"not stated: {joined(missing)}"] if missing else [])])


def _named(name: str) -> str:
    kind = MEASURE_KINDS.get(name) or TOOTH_MEASURE_KINDS.get(name)
    return kind.words if kind else name.replace("-", " ")
