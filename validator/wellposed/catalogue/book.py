"""The whole catalogue: the rules of all groups in order, and whatever a name stands for."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import replace
from difflib import get_close_matches
from functools import cache
from types import MappingProxyType
from typing import Any

from wellposed import consistency, norms
from wellposed.catalogue.entry import Entry, Verdict, entries, verdicts
from wellposed.catalogue.origin import references_of
from wellposed.declare import Rule
from wellposed.exchange.rules import RULES as AT_INTAKE
from wellposed.exchange.verification import RULES as ON_ARRIVAL
from wellposed.norms import Norm
from wellposed.review import signs
from wellposed.review.rules import TOPICS as SETUP_TOPICS
from wellposed.revisions import chain, told
from wellposed.rules import TOPICS, Clinical

__all__ = ["GROUPS", "Family", "Found", "find", "known_names", "nearest", "rules"]

Family = tuple[Norm, ...]
Found = Entry | Verdict | Norm | Family

GROUPS: Mapping[str, str] = MappingProxyType(
    {
        "text": "The text of a document",
        "structure": "The members of a document",
        "consistency": "Between the parts of a prescription",
        "setup": "Between the parts of a setup",
        "review": "Between the parts of a review",
        "receipt": "Between the parts of a receipt",
        "kinematics": "Whether the clauses can hold together",
        **{topic: f"Clinical: {topic}" for topic in TOPICS},
        **{topic: f"Clinical, of a setup: {topic.removeprefix('setup ')}" for topic in SETUP_TOPICS},
        "signs": "Clinical, of a setup: signs",
        "history": "Over the documents of a case",
        "exchange": "On arrival: the signature, its key, the sender, what came before",
        "intake": "At the intake of a laboratory",
    }
)
"""When a rule is looked at, in order, and the heading of its group."""


@cache
def rules() -> tuple[Entry, ...]:
    """Every rule, in the order in which a document meets them."""
    by_group = {group: entries(group) for group in ("text", "structure", "kinematics")}
    by_group["consistency"] = tuple(_entry(rule, "consistency") for rule in consistency.RULES)
    by_group["setup"] = tuple(_entry(rule, "setup") for rule in consistency.OWN_OF_SETUPS)
    by_group["review"] = tuple(_entry(rule, "review") for rule in consistency.OWN_OF_REVIEWS)
    by_group["receipt"] = tuple(_entry(rule, "receipt") for rule in consistency.OWN_OF_RECEIPTS)
    by_group |= {topic: tuple(_clinical(rule, topic) for rule in rules) for topic, rules in TOPICS.items()}
    by_group |= {topic: tuple(_clinical(rule, topic) for rule in rules) for topic, rules in SETUP_TOPICS.items()}
    by_group["signs"] = tuple(_entry(rule, "signs") for rule in signs.RULES)
    by_group["history"] = tuple(_clinical(rule, "history") for rule in (*chain.RULES, *told.RULES))
    by_group["exchange"] = tuple(_entry(rule, "exchange") for rule in ON_ARRIVAL)
    by_group["intake"] = tuple(_entry(rule, "intake") for rule in AT_INTAKE)
    return tuple(entry for group in GROUPS for entry in by_group[group])


def find(name: str) -> tuple[Found, ...]:
    """What a name stands for: rules, verdicts, a norm or a family of norms; nothing where it is unknown."""
    named: tuple[Entry | Verdict, ...] = (*rules(), *verdicts())
    return tuple(one for one in named if one.id == name) or tuple(_norms(name))


def known_names() -> list[str]:
    """Every name that has a page, families of norms left out."""
    keys = [norm.key for norm in norms.load()]
    return [*(rule.id for rule in rules()), *(verdict.id for verdict in verdicts()), *keys]


def nearest(name: str) -> str | None:
    """The known name most like another, if one is near."""
    return next(iter(get_close_matches(name.lower(), known_names(), n=1)), None)


def _norms(name: str) -> Iterator[Norm | Family]:
    try:
        yield norms.norm(name)
    except KeyError:
        members = tuple(norm for norm in norms.load() if norm.key.startswith(f"{name}."))
        yield from [members] if members else []


def _entry(rule: Rule[Any], group: str) -> Entry:
    """A rule that stands beside its code."""
    return Entry(
        id=rule.id,
        severity=rule.severity,
        title=rule.title.rstrip("."),
        what=rule.what,
        why=rule.why,
        do=rule.do,
        source="The format itself",
        group=group,
        passes=_example(rule.passes),
        fails=_example(rule.fails),
    )


def _clinical(rule: Clinical[Any], topic: str) -> Entry:
    return replace(
        _entry(rule, topic),
        source=references_of(rule.figures, rule.sources),
        evidence=rule.evidence,
        says=rule.says,
        change=rule.change,
        figures=rule.figures,
    )


def _example(members: dict[str, Any]) -> str:
    return json.dumps(members, ensure_ascii=False)
