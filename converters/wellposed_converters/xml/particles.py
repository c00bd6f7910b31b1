"""What an object may hold, as a particle of XSD 1.0 in which every element says by its name where it stands.

XSD 1.0 wants to know from the next element alone which part of the type it belongs to (Unique Particle Attribution).
Forms of one object are therefore written as one choice after another, each as soon as they differ.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from copy import deepcopy
from typing import Any, NamedTuple, TypeAlias

from lxml import etree


class Slot(NamedTuple):
    """A member of a form: its element, and whether it must be there."""

    element: Any
    required: bool

    @property
    def name(self) -> str:
        """The name of the element."""
        return str(self.element.get("name"))

    def same(self, other: Slot) -> bool:
        """Whether both say the same of a member."""
        return (self.name, self.required) == (other.name, other.required)


Rest: TypeAlias = Sequence[Slot]
"""The members of a form that are still to come."""

Named: TypeAlias = Callable[[str], str]


def particle(forms: Sequence[Rest], named: Named) -> Any:
    """A sequence that lets through what one of the forms lets through.

    Raises ValueError where one name would have two types, which XSD does not allow in one object.
    """
    _one_type_each(forms)
    sequence = etree.Element(named("sequence"))
    _fill(sequence, [tuple(form) for form in forms], named)
    return sequence


def _fill(sequence: Any, forms: list[tuple[Slot, ...]], named: Named) -> None:
    """First what all have alike; then, if they differ, a choice by the next element."""
    while all(forms) and all(forms[0][0].same(form[0]) for form in forms[1:]):
        sequence.append(_occurring(forms[0][0]))
        forms = [form[1:] for form in forms]
    nexts = _nexts(forms)
    if not nexts:
        return
    optional = any(not any(slot.required for slot in form) for form in forms)
    choice = etree.SubElement(sequence, named("choice"), {"minOccurs": "0"} if optional else {})
    for slot, rests in nexts:
        branch = etree.Element(named("sequence"))
        branch.append(deepcopy(slot.element))
        _fill(branch, rests, named)
        choice.append(branch if len(branch) > 1 else branch[0])


def _nexts(forms: Sequence[Rest]) -> list[tuple[Slot, list[tuple[Slot, ...]]]]:
    """Each element that may come next, with what may come behind it, form by form."""
    found: dict[str, tuple[Slot, list[tuple[Slot, ...]]]] = {}
    for form in forms:
        for place, slot in enumerate(form):
            found.setdefault(slot.name, (slot, []))[1].append(tuple(form[place + 1 :]))
            if slot.required:
                break
    return list(found.values())


def _occurring(slot: Slot) -> Any:
    element = deepcopy(slot.element)
    if not slot.required:
        element.set("minOccurs", "0")
    return element


def _one_type_each(forms: Sequence[Rest]) -> None:
    types: dict[str, str] = {}
    for slot in (slot for form in forms for slot in form):
        if types.setdefault(slot.name, slot.element.get("type")) != slot.element.get("type"):
            raise ValueError(f"{slot.name} would have two types in one object")
