"""A way out as RFC 6902 operations on the prescription; none where it takes words of the prescriber's own."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import ceil, floor
from typing import Any

from wellposed.kinematics.places import Places
from wellposed.kinematics.repair import Repair
from wellposed.vocabulary.motions import MOTIONS


def up(value: float) -> float:
    """The next hundredth that is not less."""
    return ceil(value * 100 - 1e-4) / 100


def down(value: float) -> float:
    """The next hundredth that is not more."""
    return floor(value * 100 + 1e-4) / 100


def patch(places: Places, repair: Repair, amount: float) -> list[dict[str, Any]]:
    """RFC 6902 operations that make the repair; none where it takes words of the prescriber's own."""
    facts = dict(repair.facts)
    if repair.what == "allow":
        return _added(places, repair.use, facts, up(amount), repair.unit)
    clause_id = facts.get("clause", "")
    item, pointer = places.clauses.get(clause_id), places.pointer(clause_id)
    if item is None:
        return []
    if repair.what == "give-up":
        return [{"op": "remove", "path": pointer}]
    if facts.get("part") == "both":
        return _both(pointer, item, amount, facts["share"])
    member = _bound_member(repair, facts, item)
    value = getattr(item, member, None) if member else None
    if not member or value is None:
        return []
    return [{"op": "replace", "path": f"{pointer}/{member}", "value": _changed(repair, value, amount)}]


def _both(pointer: str, item: Any, amount: float, share: float) -> list[dict[str, Any]]:
    """Both limits of a reduction raised."""
    values = {"in_all": up(item.in_all + amount), "per_contact": up(item.per_contact + amount * share)}
    return [{"op": "replace", "path": f"{pointer}/{name}", "value": value} for name, value in values.items()]


def _changed(repair: Repair, value: float, amount: float) -> float:
    if repair.whole:
        return value + ceil(amount - 1e-6)
    return down(value - amount) if repair.what == "lower-floor" else up(value + amount)


def _bound_member(repair: Repair, facts: Mapping[str, Any], item: Any) -> str:
    if repair.what == "lower-floor":
        return "at_least"
    if repair.what == "widen-tolerance":
        return "within"
    if repair.what == "more-aligners":
        return "most_aligners"
    if repair.what != "raise-ceiling":
        return ""
    part = str(facts.get("part", ""))
    if part in ("per-contact", "in-all"):
        return part.replace("-", "_")
    return "at_most" if hasattr(item, "at_most") else "up_to"


def _added(places: Places, use: str, facts: Mapping[str, Any], amount: float, unit: str) -> list[dict[str, Any]]:
    bodies = list(_allowances(use, facts, amount, unit))
    present = places.prescription.allow
    fresh = (f"added-{n}" for n in range(1, 999) if f"added-{n}" not in places.clauses)
    clauses = [{"id": next(fresh), **body} for body in bodies]
    if present is None:
        return [{"op": "add", "path": "/allow", "value": clauses}]
    return [{"op": "add", "path": "/allow/-", "value": clause} for clause in clauses]


def _allowances(use: str, facts: Mapping[str, Any], amount: float, unit: str) -> Iterator[dict[str, Any]]:
    arch, teeth = facts.get("arch"), list(facts.get("teeth", ()))
    if use == "enamel-reduction":
        yield {"use": use, "contacts": list(facts["contacts"]), "in_all": amount, "unit": unit}
    elif use in ("incisor-advance", "incisor-retraction"):
        yield {"use": use, "arch": arch, "up_to": amount, "unit": unit}
    elif use in ("distal-movement", "mesial-movement"):
        yield {"use": use, "arch": arch, "teeth": teeth, "up_to": amount, "unit": unit}
    elif use in ("intrusion", "extrusion"):
        yield {"use": use, "teeth": teeth, "up_to": amount, "unit": unit}
    elif use == "posterior-open-bite":
        yield {"use": use, "up_to": amount, "unit": unit}
    else:
        for motion in {"widening": ("buccal",), "narrowing": ("lingual",), "slide": ("mesial", "distal")}.get(
            use, (use,)
        ):
            assert motion in MOTIONS
            yield {"use": "movement", "motion": motion, "teeth": teeth, "up_to": amount, "unit": unit}
