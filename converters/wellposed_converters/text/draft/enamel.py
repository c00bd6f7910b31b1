"""Enamel reduction: an allowance, or an exclusion. What is ordered is an allowance with a least amount in all."""

from __future__ import annotations

from typing import Final

from wellposed.vocabulary.units import MM
from wellposed_converters.text.draft.bites import arches
from wellposed_converters.text.draft.data import data
from wellposed_converters.text.draft.measured import ARCHES
from wellposed_converters.text.draft.part import Amount, Facts, NotCarried, Part, plain

MEMBERS: Final = {"per_contact": "per_contact", "total": "in_all"}


def enamel_reduction(facts: Facts) -> tuple[Part, ...]:
    """Both teeth of a contact together, per contact or in all."""
    if facts.clause.teeth:
        raise NotCarried("which-contacts")
    if facts.take("of") is not None or facts.mode not in ("do", "limit", "permit", "forbid"):
        raise NotCarried("no-strength" if facts.mode == "prefer" else "more-than-the-format-says")
    if facts.mode == "forbid":
        return _excluded(facts)
    if facts.clause.condition in data()["condition"]["harmless"] and facts.mode == "limit":
        facts.take("condition")
    if facts.clause.measure == "per_surface":
        raise NotCarried("per-surface")
    amount = facts.amount(*MEMBERS)
    if amount is not None and ((facts.mode == "do") != (amount.low is not None)):
        raise NotCarried("exactly-or-at-most")
    if amount is not None and (amount.about or amount.unit != MM):
        raise NotCarried("about" if amount.about else "unit-unknown")
    return tuple(_allowed(facts, place, amount) for place in _places(facts))


def _places(facts: Facts) -> list[dict[str, object]]:
    contacts = facts.contacts()
    if contacts:
        return [{"contacts": contacts}]
    if facts.clause.arch is None:
        raise NotCarried("which-contacts")
    if facts.clause.arch == "both" and facts.clause.measure == "total":
        raise NotCarried("which-arch")
    return [{"arch": arch} for arch in arches(facts)]


def _allowed(facts: Facts, place: dict[str, object], amount: Amount | None) -> Part:
    value = {"use": "enamel-reduction", **place, "unit": MM}
    if amount is None:
        return Part("allow", value, ("per_contact",))
    if amount.high is None:
        return Part("allow", {**value, **_least(facts, amount)}, (MEMBERS[facts.clause.measure or ""],))
    member = MEMBERS[facts.clause.measure or ""]
    part = Part("allow", {**value, member: plain(amount.high), **_least(facts, amount)})
    return part.assuming(member, "bound-included") if amount.below else part


def _least(facts: Facts, amount: Amount) -> dict[str, object]:
    """What is ordered in all: of an exact amount at each contact, the sum over the contacts."""
    if amount.low is None:
        return {}
    if facts.clause.measure == "total":
        return {"at_least": plain(amount.low)}
    number = len(facts.clause.contacts)
    if not number:
        raise NotCarried("which-contacts")
    if number > 1 and amount.exact is None:
        raise NotCarried("each-contact-from-to")
    return {"at_least": plain(amount.low * number)}


def _excluded(facts: Facts) -> tuple[Part, ...]:
    """An arch, the whole mouth, or the teeth whose contacts are exactly those that are named."""
    if facts.amount(*MEMBERS) is not None:
        raise NotCarried("more-than-the-format-says")
    contacts = facts.take("contacts")
    value: dict[str, object] = {"means": "enamel-reduction"}
    if contacts:
        return (Part("exclude", {**value, "teeth": _covering(contacts)}),)
    arch = facts.take("arch")
    if arch is None:
        raise NotCarried("which-contacts")
    return (Part("exclude", value | ({"arch": arch} if arch in ARCHES else {})),)


def _covering(contacts: tuple[tuple[int, int], ...]) -> list[str]:
    """Teeth both of whose contacts are named: an exclusion of teeth reaches every contact of each of them."""
    every = [tooth for contact in contacts for tooth in contact]
    inner = [tooth for tooth in dict.fromkeys(every) if every.count(tooth) > 1]
    if any(not set(contact) & set(inner) for contact in contacts):
        raise NotCarried("which-contacts")
    return [str(tooth) for tooth in inner]
