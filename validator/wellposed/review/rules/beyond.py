"""How far the plan goes: teeth that cannot or should not move, practice limits, and the amounts one asks from."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.review.amounts import NARROWED, Amount
from wellposed.review.held import Facts, Held, grouped
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._enamel import BACK, FRONT, PART, part_of
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.teeth import ARCHES, arch_of

_PRACTICE, _ADVICE = "practice.", "caution."
_ADVISED = (
    *("reduction-per-contact", "distal", "intrusion.upper-incisors", "intrusion.lower-incisors", "apex-travel"),
    *("intrusion.upper-posterior", "intrusion.lower-posterior", "advance.lower-incisors"),
    *("widening.lower-canines", "widening.lower-premolars-molars"),
)
"""Practice limits below which there is an amount of the same name that one asks from."""
_UPPER = "practice.widening.upper"
_MOLARS = 6


@rule(
    "plan-beyond-practice",
    Severity.ASK,
    title="The plan goes beyond what is ordinary practice.",
    says="{what:words} at {where:list}: {amount:{unit}} is planned at the most; {limit:{unit}} is the most in ordinary"
    " practice.",
    do="Say that so much is meant, or ask for less.",
    change="At {limit:{unit}} or less this no longer applies.",
    figures=("practice",),
)
def plan_beyond_practice(held: Held) -> Iterator[Told]:
    """Nothing in the plan passes a practice limit: enamel at a contact and in all, intrusion, extrusion, distal travel,
    travel of incisors, width of a pair, torque, tip, rotation, travel of the root's end.

    The order may leave the amount to the laboratory, and what it then plans was asked of nobody.

    Evidence: published maxima where there are any, else common practice; `wellposed explain KEY` tells which.

    Passes: {"movements": [{"variable": "vertical", "unit": "mm", "values": {"11": -2.5}}]}
    Fails: {"movements": [{"variable": "vertical", "unit": "mm", "values": {"11": -3}}]}
    """
    beyond = (one for one in held.amounts if above(one.value, held.limit(one.norm)))
    for (norm, _), found in grouped(((one.norm, one.what), one) for one in beyond).items():
        yield _told(held, norm, found)


@rule(
    "plan-beyond-advice",
    Severity.CAUTION,
    title="The plan goes beyond the amount from which one asks.",
    says="{what:words} at {where:list}: {amount:{unit}} is planned at most; more than {limit:{unit}} is asked about.",
    do="Look at these teeth, and accept the amount or ask for less.",
    change="At {limit:{unit}} or less this no longer applies.",
    figures=tuple(f"{_ADVICE}{name}" for name in (*_ADVISED, "widening", "reduction-in-all")),
)
def plan_beyond_advice(held: Held) -> Iterator[Told]:
    """Nothing in the plan passes an amount from which a careful colleague asks and still stays within practice.

    The order bounds what may be used; how much of it is used, and where, is seen in the plan only.

    Evidence: advice of textbooks and means of treated groups, half of it recalled. What passes a practice limit is
    asked about elsewhere.

    Passes: {"movements": [{"variable": "along", "unit": "mm", "values": {"16": -3, "26": -3}}]}
    Fails: {"movements": [{"variable": "along", "unit": "mm", "values": {"16": -3.5, "26": -3.5}}]}
    """
    for (norm, _), found in grouped(((key, one.what), one) for key, one in _advised(held)).items():
        yield _told(held, norm, found)


def _told(held: Held, norm: str, found: list[Amount]) -> Told:
    """One finding of a limit: where it is passed, and by how much at the most."""
    facts: Facts = {"what": found[0].what, "where": [one.where for one in found]}
    facts |= {"amount": max(one.value for one in found), "limit": held.limit(norm)}
    return told(_pointer(held, found), figures=(norm,), unit=held.numbers.norm(norm).unit, **facts)


def _pointer(held: Held, found: list[Amount]) -> str:
    first, teeth = found[0], [tooth for one in found for tooth in one.teeth]
    if first.variable is None:
        return "/reductions"
    return held.at(first.variable, [tooth for tooth in teeth if held.going(tooth, first.variable)] or teeth)


def _advised(held: Held) -> Iterator[tuple[str, Amount]]:
    """By the amount one asks from, what passes it but no practice limit."""
    for one in held.amounts:
        key = _advice(one)
        if key and above(one.value, held.limit(key)) and not above(one.value, held.limit(one.norm)):
            yield key, one
    for arch in ARCHES:
        whole = f"practice.reduction-in-all.{arch}"
        for part in (FRONT, BACK):
            taken = _taken(held, arch, part)
            if above(taken, held.limit(f"{PART}.{part}")) and not above(taken, held.limit(whole)):
                yield f"{PART}.{part}", Amount(whole, "reduction-in-all", f"{arch} {part}", taken, None, ())


def _advice(one: Amount) -> str | None:
    if one.what == NARROWED and one.norm != "practice.widening.lower-canines":
        return None
    if one.norm == _UPPER:
        return f"caution.widening.upper-{'molars' if int(one.teeth[0][1]) >= _MOLARS else 'canines-premolars'}"
    name = one.norm.removeprefix(_PRACTICE)
    return f"{_ADVICE}{name}" if name.startswith(_ADVISED) else None


def _taken(held: Held, arch: str, part: str) -> float:
    """Enamel taken in front or behind, mm."""
    named = ((teeth_of(name), amount) for name, amount in held.plan.reductions.items())
    return sum(amount for teeth, amount in named if arch_of(teeth[0]) == arch and part_of(*teeth) == part)


RULES = (plan_beyond_practice, plan_beyond_advice)
