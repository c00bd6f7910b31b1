"""What a setup delivers of one clause: each thing compared in words, equal ones together."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from wellposed.model.base import Part
from wellposed.model.clauses import Movement
from wellposed.render.amounts import amount, number, rounded, value
from wellposed.render.phrases import contacts, teeth
from wellposed.render.review.amounts import is_variable, reached, travel
from wellposed.render.review.words import BEYOND, NOUNS, because
from wellposed.render.sides import direction, sided
from wellposed.render.words import VARIABLE_WORDS
from wellposed.review.result import Compared, Span
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.motions import MOTIONS
from wellposed.vocabulary.teeth import ARCHES, TEETH

__all__ = ["delivered", "grouped", "place", "subject"]


def grouped(parts: Iterable[Compared], section: str, clause: Part) -> Iterator[str]:
    """What is delivered: a line for each of the same teeth or contacts, which stand before what is said of them."""
    said: dict[str, list[str]] = {}
    for part in parts:
        said.setdefault(delivered(part, section, clause), []).append(_where(part))
    lines: dict[tuple[str, str], list[str]] = {}
    for words, where in said.items():
        at = place(where)
        lines.setdefault((at, "" if at else words), []).append(words)
    yield from (f"{at}: {'; '.join(told)}" if at else told[0] for (at, _), told in lines.items())


def _where(part: Compared) -> str:
    """The place a thing is taken at; of a step that of its tooth, or the variable where no tooth is known."""
    if part.what != "step":
        return part.where
    if part.delivered is not None and not rounded(part.delivered.high or 0.0):
        return ""
    variable, _, tooth = part.where.partition(" ")
    return tooth or VARIABLE_WORDS.get(variable, variable)


def place(where: Iterable[str]) -> str:
    """Teeth, contacts, arches or pairs; "" for the mouth."""
    named = list(dict.fromkeys(one for listed in where for one in listed.split()))
    if named and all(one in TEETH for one in named):
        return teeth(named)
    if named and all(_is_contact(one) for one in named):
        return contacts(named)
    return ", ".join(f"{one} arch" if one in ARCHES else one for one in named)


def _is_contact(where: str) -> bool:
    first, _, second = where.partition("-")
    return first in TEETH and second in TEETH


def delivered(part: Compared, section: str, clause: Part) -> str:
    """One thing compared: what is delivered, and by how much it is outside what was asked."""
    if part.delivered is None:
        named = subject(part)
        return f"{named}: cannot be told ({because(part.why)})" if named else f"cannot be told ({because(part.why)})"
    off = _off(part, section, clause)
    told = _told(part) + _helped(part)
    return f"{told}, {off}" if off else told


def _helped(part: Compared) -> str:
    """What it comes to with the change that is counted on; no overlap is less than none."""
    span, change = part.delivered, part.counted_on
    if change is None or span is None:
        return ""
    ends = [_plus(span.low, change.low), _plus(span.high, change.high)]
    if part.what in MEASURE_KINDS:
        to = reached(part.what, Span(*ends), part.unit, is_change=part.before is None)
    else:
        low, high = (max(0.0, rounded(end or 0.0)) for end in ends)
        to = amount(high, part.unit) if low == high else f"{number(low)} to {amount(high, part.unit)}"
    return f" by the movements, {to} with what is counted on"


def _plus(end: float | None, change: float | None) -> float | None:
    return None if end is None or change is None else end + change


def subject(part: Compared) -> str:
    """What is compared, as a thing: ``largest step, height``, ``overlap``; "" where the clause says it."""
    if part.what == "step":
        return f"largest step, {VARIABLE_WORDS[part.where.partition(' ')[0]]}"
    return _SUBJECTS.get(part.what, "")


_SUBJECTS: Mapping[str, str] = {
    "gap": "space left",
    "overlap": "overlap left",
    "reduction": "enamel taken off",
    "reduction-in-all": "enamel taken off in all",
    "rotation-left": "rotation left",
    "displacement-left": "displacement left",
    "aligners": "number of aligners",
    "wear-interval": "wear of each",
    "order": "order of the clauses",
    "statement": "what the laboratory says",
}


def _told(part: Compared) -> str:
    if part.what in MEASURE_KINDS:
        return _measured(part)
    span = part.delivered
    assert span is not None
    low, high = span.low, span.high
    if low is None or high is None:
        return f"{'at most' if low is None else 'at least'} {_amount(part, high or low or 0.0)}"
    return _exactly(part, low, high)


def _exactly(part: Compared, low: float, high: float) -> str:
    if part.what in _LEFT and part.before is not None:
        return _left(_LEFT[part.what], part.before, high, part.unit)
    if is_variable(part.what):
        return travel(part.what, low, part.unit)
    if part.what in _PLANNED:
        return _PLANNED[part.what][high > 0]
    if part.what == "step":
        size = f"a step of {amount(high, part.unit)}" if rounded(high) else "no step"
        return f"{size}, {VARIABLE_WORDS[part.where.partition(' ')[0]]}"
    size = _amount(part, high)
    if rounded(low) != rounded(high):
        size = f"{number(rounded(low))} to {size}"
    return _KINDS.get(part.what, "{}").format(size) + ("" if part.where or part.what not in _SUMS else " in all")


def _amount(part: Compared, size: float) -> str:
    """An amount in the unit of the part; of aligners and days in words."""
    return amount(size, _COUNTED.get(part.what, part.unit))


def _left(measure: str, before: float, after: float, unit: str) -> str:
    """What is left of a rotation or a displacement from the arch line."""
    if rounded(before) * rounded(after) < 0:
        return f"{measure} of {amount(abs(before), unit)} corrected, and {amount(abs(after), unit)} beyond"
    if rounded(abs(after)) > rounded(abs(before)):
        return f"{measure} of {amount(abs(before), unit)} made {amount(abs(after), unit)}"
    return f"{amount(abs(after), unit)} of its {amount(abs(before), unit)} of {measure} left"


_PLANNED: Mapping[str, tuple[str, str]] = {
    "attachment": ("no attachment is planned", "an attachment is planned"),
    "extraction": ("not taken out", "taken out"),
    "statement": ("not done as ordered, as the laboratory says", "done, as the laboratory says"),
}
_LEFT = {"rotation-left": "rotation", "displacement-left": "displacement"}
_COUNTED = {"aligners": "aligners", "wear-interval": "days"}
_SUMS = ("gap", "overlap")
_KINDS: Mapping[str, str] = {
    "gap": "{} of space left",
    "overlap": "{} of overlap left",
    "reduction": "{} of enamel taken off",
    "reduction-in-all": "{} of enamel taken off in all",
    "width": "width changed by {}",
    "alike": "{} apart",
    "wear-interval": "each worn {}",
}


def _measured(part: Compared) -> str:
    """``2.5 mm → 1.2 mm``; only the change where nothing was measured before."""
    span = part.delivered
    assert span is not None
    after = reached(part.what, span, part.unit, is_change=part.before is None)
    if part.before is None:
        return after
    start = value(part.what, part.before, part.unit)
    return f"{start} → {after}"


# how far outside

_PLAIN = (*_PLANNED, *_LEFT, "overlap")
"""Of these what is left says it all."""


def _off(part: Compared, section: str, clause: Part) -> str:
    """``0.6 mm less intrusion than asked``; "" where there is no amount to name."""
    if part.met is not False or not part.difference or part.what in _PLAIN:
        return ""
    none_asked = part.asked.low == 0 and part.asked.high == 0 and part.what not in MEASURE_KINDS
    if section == "exclude" or none_asked:
        return ""
    off = abs(part.difference)
    size = f"{off:g}" if part.what in _COUNTED else amount(off, part.unit)
    if section == "allow" and part.difference < 0:
        return f"{size} less than asked"
    return f"{size} {_which(part, section, clause)} than {BEYOND.get(section, 'asked')}"


def _which(part: Compared, section: str, clause: Part) -> str:
    """``more``, ``less intrusion``, ``further to the patient's left``."""
    if section in ("keep", "allow"):
        return "more change" if section == "keep" and part.what in MEASURE_KINDS else "more"
    above = (part.difference or 0.0) > 0
    if isinstance(clause, Movement) and is_variable(part.what):
        sense = MOTIONS[clause.motion]
        return f"{'more' if above == (sense.sign > 0) else 'less'} {NOUNS[sense.variable, sense.sign]}"
    if part.what in MEASURE_KINDS:
        told = direction(part.what, 1.0 if above else -1.0)
        return f"further {told}" if sided(part.what) else told
    return "more" if above else "less"
