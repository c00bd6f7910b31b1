"""The whole catalogue: the rules of all groups in order, and whatever a name stands for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from difflib import get_close_matches
from functools import cache
from types import MappingProxyType

from wellposed import consistency, norms
from wellposed.catalogue.entry import Entry, Verdict, entries, verdicts
from wellposed.norms import Norm

__all__ = ["GROUPS", "Family", "Found", "find", "known_names", "nearest", "rules"]

Family = tuple[Norm, ...]
Found = Entry | Verdict | Norm | Family

GROUPS: Mapping[str, str] = MappingProxyType(
    {
        "text": "The text of a document",
        "structure": "The members of a document",
        "consistency": "Between the parts of a prescription",
        "kinematics": "Whether the clauses can hold together",
    }
)
"""When a rule is looked at, in order, and the heading of its group."""


@cache
def rules() -> tuple[Entry, ...]:
    """Every rule, in the order in which a document meets them."""
    by_group = {group: entries(group) for group in ("text", "structure", "kinematics")}
    by_group["consistency"] = tuple(_consistency())
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


def _consistency() -> Iterator[Entry]:
    """The rules between the parts of a prescription, which stand beside their code."""
    for rule in consistency.RULES:
        what, _, rest = " ".join(rule.page.replace("\n\n", "\0").split()).partition("\0")
        why, _, examples = rest.partition("Passes: ")
        passes, _, fails = examples.partition("Fails: ")
        yield Entry(
            id=rule.id,
            severity=rule.severity,
            title=rule.title.rstrip("."),
            what=what.strip(),
            why=why.replace("\0", " ").strip(),
            do=rule.do,
            source="The format itself",
            group="consistency",
            passes=passes.replace("\0", " ").strip(),
            fails=fails.replace("\0", " ").strip(),
        )
