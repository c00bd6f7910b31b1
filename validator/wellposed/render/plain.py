"""Findings without a phrase of their own: the title of the rule, what was found and expected, what to do."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import cache
from typing import Any

from wellposed.catalogue import Entry, rules
from wellposed.findings import Finding
from wellposed.render.amounts import number
from wellposed.vocabulary.contacts import contact_in_words
from wellposed.vocabulary.teeth import TEETH, in_words

_SHOWN = 8


@cache
def _entries() -> dict[str, Entry]:
    return {entry.id: entry for entry in rules()}


def plain_sentence(finding: Finding, title: str = "") -> str:
    """The rule's title, the facts of the case, and the advice. A rule that no catalogue lists brings its title."""
    entry = _entries().get(finding.rule)
    title = title or (entry.title.rstrip(".") if entry else finding.rule.replace("-", " ").capitalize())
    details = "; ".join(dict.fromkeys(_details(finding.facts)))
    told = f"{title}: {details}." if details else f"{title}."
    near = finding.facts.get("nearest")
    suggested = f' Did you mean "{near}"?' if near else ""
    return told + suggested + (f" {entry.do}" if entry else "")


def _details(facts: Mapping[str, Any]) -> Iterator[str]:
    """The facts worth saying, in a fixed order."""
    for name, phrase in _PHRASES:
        if facts.get(name) not in (None, "", []) and not (name == "expected" and facts[name] == facts.get("name")):
            yield phrase(facts[name])
    if "least" in facts or "most" in facts:
        yield _span(facts)


def _listed(value: Any) -> str:
    if isinstance(value, list | tuple) and len(value) > _SHOWN and value[0] in TEETH:
        return "a tooth number of ISO 3950, in quotation marks"
    if not isinstance(value, list | tuple):
        return _one(value)
    shown = [_one(item) for item in value[:_SHOWN]]
    more = f" and {len(value) - _SHOWN} more" if len(value) > _SHOWN else ""
    return ", ".join(shown) + more


def _one(value: Any) -> str:
    if isinstance(value, bool) or not isinstance(value, int | float):
        return f"{value} ({in_words(value)})" if value in TEETH else str(value)
    return str(value) if isinstance(value, int) else number(value)


def _contact(value: Any) -> str:
    return contact_in_words(value) if isinstance(value, str) and "-" in value else _listed(value)


def _span(facts: Mapping[str, Any]) -> str:
    ends = [_one(facts[end]) for end in ("least", "most") if facts.get(end) is not None]
    unit = f" {facts['unit']}" if facts.get("unit") else ""
    return f"between {' and '.join(ends)}{unit}" if len(ends) > 1 else f"{''.join(ends)}{unit}"


_PHRASES: tuple[tuple[str, Callable[[Any], str]], ...] = (
    ("name", lambda value: f'"{_listed(value)}"'),
    ("names", lambda value: f'"{_listed(value)}"'),
    ("tooth", _listed),
    ("teeth", _listed),
    ("contact", _contact),
    ("contacts", _listed),
    ("measure", lambda value: str(value).replace("-", " ")),
    ("means", lambda value: str(value).replace("-", " ")),
    ("value", lambda value: f"it says {_listed(value)}"),
    ("found", lambda value: f"found {_listed(value)}"),
    ("expected", lambda value: f"expected {_listed(value)}"),
    ("neighbours", lambda value: f"the neighbours are {_listed(value)}"),
    ("first", lambda value: f"first at {_listed(value)}"),
    ("first_line", lambda value: f"first in line {value}"),
    ("cycle", lambda value: " → ".join(map(str, value))),
    ("rule", lambda value: f"rule {value}"),
)
