"""Teeth that do not move, or not in one way."""

from __future__ import annotations

from collections.abc import Sequence

from wellposed.vocabulary.motions import VARIABLE_UNITS, VARIABLES, Motion, Variable, unit_of
from wellposed.vocabulary.teeth import arch_of
from wellposed_converters.text.draft.bites import arches
from wellposed_converters.text.draft.data import data
from wellposed_converters.text.draft.part import Facts, NotCarried, Part, plain


def forbidden(facts: Facts, name: Motion | None, of: str | None) -> tuple[Part, ...]:
    """Not at all: heights by an exclusion, the rest by a keep within 0."""
    teeth, arch = facts.teeth(), facts.take("arch")
    if of is not None or facts.amount("change") is not None:
        raise NotCarried("more-than-the-format-says")
    if name in ("intrusion", "extrusion"):
        place = {"teeth": teeth} if teeth else ({"arch": arch} if arch not in (None, "both") else {})
        return (Part("exclude", {"means": name, **place}),)
    if not teeth or arch:
        raise NotCarried("which-teeth")
    if name is not None:
        value = {"strength": "must", "motion": name, "teeth": teeth, "within": 0, "unit": unit_of(name)}
        return (Part("keep", value),)
    if facts.clause.dir is not None:
        raise NotCarried("which-way")
    return still(teeth, data()["variable"][facts.kind])


def still(teeth: list[str], variables: Sequence[Variable]) -> tuple[Part, ...]:
    """Keeps of variables within nothing."""
    value = {"strength": "must", "teeth": teeth, "within": 0}
    return tuple(Part("keep", {**value, "variable": name, "unit": VARIABLE_UNITS[name]}) for name in variables)


def kept(facts: Facts, of: str | None) -> tuple[Part, ...]:
    """An inclination or another variable that is kept: how far it may change is open, unless an amount says it."""
    teeth = facts.teeth()
    variables = data()["variable"][facts.kind]
    if of is not None or facts.clause.dir is not None or not teeth or len(variables) != 1:
        raise NotCarried("force-does-not-fit")
    value = {"strength": "must", "variable": variables[0], "teeth": teeth, "unit": VARIABLE_UNITS[variables[0]]}
    amount = facts.amount("change")
    if amount is None:
        return (Part("keep", value, ("within",)),)
    if amount.about or amount.low is not None or amount.high is None or amount.unit != value["unit"]:
        raise NotCarried("about" if amount.about else "not-one-value")
    part = Part("keep", {**value, "within": plain(amount.high)})
    return (part.assuming("within", "bound-included") if amount.below else part,)


def locked(facts: Facts) -> tuple[Part, ...]:
    """Teeth that do not move. ``hold`` forbids reduction at their contacts too, so not where that is asked for."""
    of = facts.take("of")
    if facts.mode != "forbid" or of is not None:
        raise NotCarried("no-such-clause")
    teeth = facts.teeth()
    if not teeth:
        return tuple(
            Part("keep", {"strength": "must"}, fill=("hold", arch)).assuming("hold", "all-teeth-present")
            for arch in arches(facts)
        )
    reduced = [one for _, one in facts.order.of(("ipr",), ("do", "limit", "permit", "prefer"))]
    if any(_reduces(one.contacts, one.arch, teeth) for one in reduced):
        return still(teeth, VARIABLES)
    return (Part("keep", {"strength": "must", "hold": teeth}),)


def _reduces(contacts: tuple[tuple[int, int], ...], arch: str | None, teeth: list[str]) -> bool:
    named = {str(number) for contact in contacts for number in contact}
    return bool(named & set(teeth)) or any(arch in ("both", arch_of(tooth)) for tooth in teeth)
