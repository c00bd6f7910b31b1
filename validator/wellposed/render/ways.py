"""Ways out in words."""

from __future__ import annotations

from math import ceil

from wellposed.render.amounts import amount, down, number, up, value
from wellposed.render.conflict import Fact, limit
from wellposed.render.phrases import clause, contacts, measure, teeth
from wellposed.render.sides import direction, sided
from wellposed.render.words import MEANS_WORDS, MOTION_VERBS, VARIABLE_WORDS
from wellposed.vocabulary.teeth import arch_of, position

UNUSUAL = "beyond usual limits"
CAUSES = {"hinge": "hinge factor", "arch-depth": "arch depth"}


def way(fact: Fact) -> str:
    """One way out in words; in brackets the change, whether it can be undone, and how far the amount is known."""
    words, _, change = _WAYS[str(fact["what"])](fact).partition(" | ")
    told = [part for part in (change, "irreversible" if fact["irreversible"] else "", _span(fact)) if part]
    return f"{words} ({'; '.join(told)})" if told else words


def _span(fact: Fact) -> str:
    """How far the amount depends on what is not known, where that is more than a rounding."""
    if not fact["by"]:
        return ""
    high = fact["high"]
    reach = f"{number(fact['low'])} to {number(high)}" if high is not None else f"{number(fact['low'])} and more"
    return f"{reach} by {' and '.join(CAUSES[cause] for cause in fact['by'])}"


def _lower(fact: Fact) -> str:
    said, change = fact["said"], up(fact["amount"])
    unit = str(fact["unit"])
    left = amount(down(said["at_least"] - fact["amount"]), unit)
    if "measure" not in said and down(said["at_least"] - fact["amount"]) <= 0:
        return "do not ask for it"
    if "measure" in said:
        return _accepted(said, down(said["at_least"] - fact["amount"]), change, -1)
    if "use" in said:
        return f"ask for {left} of enamel reduction only | {amount(change, unit)} less"
    verb = MOTION_VERBS[said["motion"]].format("them").split(",")[0]
    return f"{verb} by {left} only | {amount(change, unit)} less"


def _raise(fact: Fact) -> str:
    said, part, unit = fact["said"], str(fact.get("part", "")), str(fact["unit"])
    more = f"| {amount(up(fact['amount']), unit)} more"
    if part == "both":
        return _both(fact, more)
    name = part.replace("-", "_") if part in ("per-contact", "in-all") else "at_most" if "at_most" in said else "up_to"
    total = (
        amount(up(said[name] + fact["amount"]), unit) if name in said else f"{amount(up(fact['amount']), unit)} more"
    )
    if "measure" in said:
        return _accepted(said, up(said["at_most"] + fact["amount"]), up(fact["amount"]), 1)
    if "use" not in said:
        return f"{MOTION_VERBS[said['motion']].format('them').split(',')[0]} by up to {total} {more}"
    each = " a contact" if part == "per-contact" else " in all" if part == "in-all" else ""
    return f"allow {MEANS_WORDS[said['use']]} up to {total}{each} {more}"


def _accepted(said: Fact, size: float, change: float, sign: int) -> str:
    """Another value of a measure: with its side in words where it has one, else with its sign."""
    unit, name = str(said["unit"]), str(said["measure"])
    further = "further " if sided(name) else ""
    told = value(name, size, unit) if sided(name) and round(size, 9) else amount(size, unit)
    return f"accept {measure(said)} of {told} | {amount(change, unit)} {further}{direction(name, sign)}"


def _both(fact: Fact, more: str) -> str:
    """Both limits of a reduction."""
    said, unit = fact["said"], str(fact["unit"])
    total = amount(up(said["in_all"] + fact["amount"]), unit)
    each = amount(up(said["per_contact"] + fact["amount"] * fact["share"]), unit)
    return f"allow enamel reduction up to {total} in all and {each} a contact {more}"


def _widen(fact: Fact) -> str:
    said, unit = fact["said"], str(fact["unit"])
    total = amount(up(said["within"] + fact["amount"]), unit)
    more = f"{amount(up(fact['amount']), unit)} more"
    if "measure" in said:
        return f"accept a change of {measure(said)} of {total} | {more}"
    moved = VARIABLE_WORDS[said["variable"]] if "variable" in said else said["motion"].replace("-", " ")
    return f"accept {moved} of {teeth(said['teeth'])} of {total} | {more}"


def _leave(fact: Fact) -> str:
    left = amount(up(fact["amount"]), str(fact["unit"]))
    return f"leave {left} of crowding there" if fact.get("part") == "align" else f"leave {left} of space there"


def _allow(fact: Fact) -> str:
    use, size, arch = str(fact["use"]), amount(up(fact["amount"]), str(fact["unit"])), fact.get("arch", "")
    named = _group(fact.get("teeth", ()))
    if use in _SLIDES and len(fact["teeth"]) < _ALL_MOLARS:
        return f"let {named}, and the teeth between, move {_SLIDES[use]} {size}"
    if use in _ALLOWED:
        return _ALLOWED[use].format(size=size, arch=arch)
    if use in _VERTICAL:
        return f"let {named} {_VERTICAL[use]} {size}"
    return f"let the laboratory {MOTION_VERBS[use].format(named)} by up to {size}"


def _group(listed: list[str] | tuple[str, ...]) -> str:
    """Front or back teeth of one arch by name, others by number."""
    if not listed:
        return ""
    places = {position(tooth) for tooth in listed}
    if {arch_of(tooth) for tooth in listed} and len(listed) > 4 and min(places) >= 4:
        return f"the {arch_of(listed[0])} back teeth"
    if len(listed) == 4 and places == {1, 2}:
        return f"the four {arch_of(listed[0])} incisors"
    return teeth(listed)


_SLIDES = {"distal-movement": "distally", "mesial-movement": "mesially"}
_ALL_MOLARS = 4
_VERTICAL = {"intrusion": "intrude", "extrusion": "extrude"}
_ALLOWED = {
    "enamel-reduction": "allow {size} of enamel reduction in the {arch} arch, first molar to first molar",
    "incisor-advance": "let the {arch} incisors come forward {size}",
    "incisor-retraction": "let the {arch} incisors go back {size}",
    "widening": "let the {arch} canines to molars move outwards {size} a side",
    "narrowing": "let the {arch} canines to molars move inwards {size} a side",
    "distal-movement": "let the {arch} molars, and the teeth between, move distally {size} a side",
    "mesial-movement": "let the {arch} molars, and the teeth between, move mesially {size} a side",
    "slide": "let the {arch} teeth in front of the molars slide along the arch by up to {size}",
    "posterior-open-bite": "accept a posterior open bite of {size}",
}


def _change(fact: Fact) -> str:
    where = contacts([fact["said"]["leave"]])
    return f"accept a space {amount(up(fact['amount']), str(fact['unit']))} off that amount at {where}"


def _aligners(fact: Fact) -> str:
    more = ceil(fact["amount"] - 1e-6)
    return f"allow {fact['said']['most_aligners'] + more} aligners | {more} more"


def _give_up(fact: Fact) -> str:
    return f"give up: {clause(fact['said'])}"


def _lift(fact: Fact) -> str:
    return f"allow what you excluded ({clause(fact['said'])}) by {amount(up(fact['amount']), str(fact['unit']))}"


def _pass(fact: Fact) -> str:
    return f"pass the usual limit by {amount(up(fact['amount']), str(fact['unit']))} ({limit(fact)})"


def _space(fact: Fact) -> str:
    return f"say that {amount(up(fact['amount']), 'mm')} more stays open in the {fact['arch']} arch, and where"


_WAYS = {
    "lower-floor": _lower,
    "raise-ceiling": _raise,
    "widen-tolerance": _widen,
    "leave-undone": _leave,
    "change-amount": _change,
    "allow": _allow,
    "give-up": _give_up,
    "lift-exclusion": _lift,
    "more-aligners": _aligners,
    "pass-limit": _pass,
    "leave-space": _space,
}
