"""Teeth that are turned or stand off the line, as findings with the signs of the format, or in the writer's words."""

from __future__ import annotations

from wellposed.vocabulary.motions import MOTIONS
from wellposed_converters.text.checks.data import data as checks
from wellposed_converters.text.draft.bites import told
from wellposed_converters.text.draft.data import data, motion
from wellposed_converters.text.draft.part import Amount, Facts, NotCarried, Part, plain


def turned(facts: Facts) -> tuple[Part, ...]:
    """A turned tooth: measured exactly and with its sense it is a rotation, else it is told."""
    name = motion("rotate", checks()["turn"].get(facts.clause.dir or ""))
    if name is None or not _exact(facts, "deg"):
        return told(facts, "rotated-teeth")
    facts.take("dir")
    amount = facts.amount("current")
    return (_of_teeth(facts, "rotation", amount, MOTIONS[name].sign),)


def _of_teeth(facts: Facts, measure: str, amount: Amount | None, sign: int) -> Part:
    if amount is None or amount.exact is None:
        raise NotCarried("not-one-value")
    values = {tooth: plain(sign * amount.exact) for tooth in facts.teeth()}
    return Part("findings", {"tooth_measure": measure, "values": values, "unit": amount.unit})


def position_of(facts: Facts) -> tuple[Part, ...]:
    """A tooth off the line, over-erupted or tilted: measured exactly it is a displacement, else it is told."""
    known = data()["position"].get(facts.clause.of or "")
    if known is None or facts.mode != "state":
        raise NotCarried("no-such-state")
    if "sense" not in known or not _exact(facts, "mm"):
        return told(facts, known["problem"])
    facts.take("of")
    return (_of_teeth(facts, "displacement", facts.amount("current"), known["sense"]),)


def _exact(facts: Facts, unit: str) -> bool:
    one = facts.clause
    return one.minimum is not None and one.minimum == one.maximum and not one.approx and one.unit == unit
