"""A conflict in words: what is said, what stands against it, what is missing, the ways out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from wellposed import norms
from wellposed.render.amounts import amount, up
from wellposed.render.phrases import clause, contacts
from wellposed.render.words import VARIABLE_WORDS
from wellposed.vocabulary.teeth import in_words

Fact = Mapping[str, Any]

ROLES = {
    "excluded": "You exclude:",
    "limited": "You limit:",
    "asked": "You ask:",
    "kept": "You keep:",
    "allowed": "You allow:",
    "fixed": "Cannot move:",
    "usual": "Usual limit:",
}
_SILENT = {
    "incisor-out": "{} incisors forward or back",
    "side-out": "{} canines to molars in or out",
    "incisor-vertical": "{} incisors up or down",
    "canine-vertical": "{} canines up or down",
    "posterior-vertical": "{} back teeth up or down",
    "along": "{} teeth along the arch",
    "reduction": "{} enamel",
    "gap": "the contact of the back teeth",
}
_CLASS_WORDS = {"incisor": "incisors", "canine": "canines", "posterior": "back teeth"}
_STATE_WORDS = {
    "implant": "is an implant",
    "ankylosed": "is ankylosed",
    "pontic": "is a pontic",
    "bridge-abutment": "carries a bridge with a pontic",
    "to-be-extracted": "is to be extracted",
}


def member(fact: Fact) -> str:
    """One member in words, without its role."""
    if fact["of"] == "clause":
        return _clause(fact)
    if fact["of"] == "state":
        return _state(fact)
    if fact["of"] == "practice":
        return limit(fact)
    if fact["of"] == "space":
        return f"no new space left in the {fact['arch']} arch"
    return silent(fact)


def _clause(fact: Fact) -> str:
    part = str(fact["part"])
    if part.startswith("site"):
        return f"close the extraction space at {contacts([part.split()[1]])}"
    return clause(fact["said"], part)


def _state(fact: Fact) -> str:
    tooth = str(fact["tooth"])
    states = [words for state, words in _STATE_WORDS.items() if state in fact["states"]]
    return f"{tooth} ({in_words(tooth)}) {states[0] if states else 'cannot be moved'}"


def limit_words(fact: Fact) -> str:
    """A practice limit in words."""
    norm = norms.norm(str(fact["norm"]))
    words = str(fact["norm"]).removeprefix("practice.").replace("-", " ").replace(".", ", ")
    return f"{words}: at most {amount(norm.value, norm.unit)}, {norm.sure}"


def limit(fact: Fact) -> str:
    """A practice limit in words, with its place."""
    return f"{limit_words(fact)} ({fact['place']})"


def silent(fact: Fact) -> str:
    """What was not mentioned."""
    group, arch = str(fact["group"]), str(fact["arch"])
    if group in _SILENT:
        return _SILENT[group].format(arch)
    kind, _, variable = group.partition("-")
    return f"{arch} {_CLASS_WORDS[kind]}, {VARIABLE_WORDS[variable]}"


def silences(facts: Iterable[Fact]) -> str:
    """Everything not mentioned, in one line; both arches together where both are silent alike."""
    groups: dict[str, list[str]] = {}
    for fact in facts:
        also = f" (which you also exclude, {fact['excluded_by']})" if "excluded_by" in fact else ""
        groups.setdefault(f"{fact['group']}{also}", []).append(str(fact["arch"]))
    return "; ".join(_silent_in(group, arches) for group, arches in groups.items())


def _silent_in(group: str, arches: list[str]) -> str:
    name, _, also = group.partition(" ")
    words = silent({"group": name, "arch": " and ".join(sorted(arches, reverse=True))})
    return f"{words} {also}" if also else words


def role(fact: Fact) -> str:
    """The role a member has in words; "" for what is not mentioned."""
    return ROLES.get(str(fact["role"]), "")


def missing(facts: Fact) -> str:
    """How much is unaccounted for: what would be left undone, else what the first demand would have to give way by."""
    for what, words in _MISSING:
        for fact in facts["ways_out"]:
            if (fact["what"], str(fact.get("part", ""))[:5]) == what or (fact["what"], "*") == what:
                return words.format(amount(up(fact["amount"]), str(fact["unit"])))
    return ""


_MISSING = (
    (("leave-undone", "align"), "{} of room is missing."),
    (("leave-undone", "*"), "{} of space has nothing to close it."),
    (("lower-floor", "*"), "{} is unaccounted for."),
)
