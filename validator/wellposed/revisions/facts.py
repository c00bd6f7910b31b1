"""Facts without an id of their own: who, which arches, teeth and their states, conditions, records, notes."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any

from wellposed.model import PRIVATE
from wellposed.model.base import Part
from wellposed.model.prescription import Prescription
from wellposed.revisions.result import FactChange

_HIDDEN = tuple(pointer.removeprefix("/") for pointer in PRIVATE)
_SINGLE = ("treat", "patient", "prescriber", "laboratory")
_WHOLE = ("records", "notes")


def facts_changed(old: Prescription, new: Prescription) -> tuple[FactChange, ...]:
    """Every fact that differs, section by section. Values of private sections are left out, their members named."""
    return tuple(one for facts in _SECTIONS for one in facts(old, new))


def _singles(old: Prescription, new: Prescription) -> Iterator[FactChange]:
    for section in _SINGLE:
        yield from _differing(section, _members(getattr(old, section)), _members(getattr(new, section)))


def _members(part: Part | None) -> dict[str, Any]:
    return {} if part is None else part.model_dump(exclude_none=True, mode="json")


def _teeth(old: Prescription, new: Prescription) -> Iterator[FactChange]:
    """Teeth that are listed or not, each with its arch; then their states."""
    yield from _differing("teeth", _listed(old), _listed(new))
    yield from _differing("states", _states(old), _states(new))


def _listed(prescription: Prescription) -> dict[str, str]:
    teeth = prescription.teeth
    return {tooth: arch for arch, listed in (("upper", teeth.upper), ("lower", teeth.lower)) for tooth in listed}


def _states(prescription: Prescription) -> dict[str, list[str]]:
    """Of each tooth its states, with the words said of it."""
    return {
        one.tooth: [*sorted(one.states), *filter(None, [one.words])] for one in prescription.teeth.particulars or ()
    }


def _conditions(old: Prescription, new: Prescription) -> Iterator[FactChange]:
    """Conditions by their name and teeth, with the words said of them."""
    yield from _differing("conditions", _named(old), _named(new))


def _named(prescription: Prescription) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for one in prescription.conditions or ():
        name = " ".join((one.condition, *sorted(one.teeth or ())))
        found[name] = sorted((*found.get(name, ()), one.words or ""))
    return found


def _lists(old: Prescription, new: Prescription) -> Iterator[FactChange]:
    for section in _WHOLE:
        before, after = getattr(old, section), getattr(new, section)
        if _plain(before) != _plain(after):
            yield _change(section, "", before is None, after is None)


def _plain(parts: Iterable[Part] | None) -> list[str] | None:
    """What a list says, in any order."""
    return None if parts is None else sorted(repr(_members(one)) for one in parts)


def _extensions(old: Prescription, new: Prescription) -> Iterator[FactChange]:
    before, after = ({k: _members(v) for k, v in (one.extensions or {}).items()} for one in (old, new))
    for key in dict.fromkeys((*before, *after)):
        if before.get(key) != after.get(key):
            yield _change("extensions", key, key not in before, key not in after)


def _differing(section: str, before: Mapping[str, Any], after: Mapping[str, Any]) -> Iterator[FactChange]:
    for name in sorted({*before, *after}):
        was, now = before.get(name), after.get(name)
        if was != now or (name in before) != (name in after):
            shown = {} if section in _HIDDEN else {"before": was, "after": now}
            yield _change(section, name, name not in before, name not in after, **shown)


def _change(section: str, what: str, new: bool, gone: bool, **shown: Any) -> FactChange:
    return FactChange(section, what, "added" if new else "dropped" if gone else "changed", **shown)


_SECTIONS: tuple[Callable[[Prescription, Prescription], Iterator[FactChange]], ...] = (
    *(_singles, _teeth, _conditions, _lists, _extensions),
)
