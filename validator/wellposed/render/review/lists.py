"""The shorter lists of a review: what moved unasked, claims, what cannot be told, what is met."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import groupby

from wellposed.model import Prescription
from wellposed.model.base import Part
from wellposed.model.clauses import Movement
from wellposed.model.setup import Setup
from wellposed.render.amounts import amount, number, rounded, value
from wellposed.render.readback.words import quoted
from wellposed.render.review.amounts import is_variable, measure_name, reached
from wellposed.render.review.clause_words import in_words, part_of
from wellposed.render.review.delivered import grouped, place, subject
from wellposed.render.review.words import STANDINGS, TRAVELS, because
from wellposed.review.requests import leaning
from wellposed.review.result import Compared, MeasureLine, Reviewed, SetupReview, Span, Unasked
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.motions import VARIABLES
from wellposed.vocabulary.teeth import ARCHES, arch_of

__all__ = ["claims", "declared", "met", "unasked", "untold"]


# what moved though nothing opened it

Group = tuple[int, int, int, str, str]


def unasked(moved: Iterable[Unasked]) -> Iterator[str]:
    """A line for each arch, variable, sense and passed clause: its teeth, and how far."""
    for (*_, owner, _doing), found in groupby(sorted(moved, key=_group), key=_group):
        several = list(found)
        told = f"{place([one.where for one in several]) or 'back teeth'}: {_how_far(several)}"
        beyond = f", {_spread([one.beyond for one in several], several[0].unit)} beyond {owner}" if owner else ""
        yield told + beyond + (_partly(several) or _NEEDED.get(several[0].doing, ""))


def _group(one: Unasked) -> Group:
    kind = VARIABLES.index(one.what) if one.what in VARIABLES else len(VARIABLES)
    arch = ARCHES.index(arch_of(one.where[:2])) if one.where else len(ARCHES)
    return arch, kind, -1 if one.delivered < 0 else 1, one.owner or "", f"{one.doing} {one.nearer > 0}"


def _partly(several: list[Unasked]) -> str:
    """That only some of it is needed."""
    spared = [one.nearer for one in several if one.nearer]
    if not spared:
        return ""
    return f"; the order needs some of it, but could be met as far with {_spread(spared, several[0].unit)} less"


_NEEDED = {"prescription": "; the order cannot be met without it", "either": "; it may be that the order needs it"}


def _how_far(several: list[Unasked]) -> str:
    first = several[0]
    sizes = _spread([abs(one.delivered) for one in several], first.unit)
    if first.what == "reduction":
        return f"{sizes} of enamel taken off{' each' if len(several) > 1 else ''}"
    if first.what == "posterior-open-bite":
        return f"{sizes} further apart than at the start"
    return TRAVELS[first.what, 1 if first.delivered > 0 else -1].format(f"{sizes}{' each' if len(several) > 1 else ''}")


def _spread(sizes: list[float], unit: str) -> str:
    low, high = rounded(min(sizes)), rounded(max(sizes))
    return amount(high, unit) if low == high else f"{number(low)} to {amount(high, unit)}"


# what the laboratory states


def claims(review: SetupReview) -> Iterator[str]:
    """The measures that are stated otherwise than the movements give, where no finding says so; what has no answer."""
    said = any(one.rule == CLAIMED for one in review.findings)
    yield from (told for line in review.measures if not said for told in _claim(line))
    lines = [line for line in review.measures if line.claimed is not None and line.agrees is None]
    if lines:
        unknown = [measure_name(line.measure, line.where) for line in lines]
        yield f"stated, but not to be compared: {', '.join(unknown)}"


CLAIMED = "prediction-differs"
"""The rule that speaks of a prediction the movements do not bear out."""


def _claim(line: MeasureLine) -> Iterator[str]:
    if line.agrees is False and line.after is not None and line.claimed is not None:
        yield (
            f"{measure_name(line.measure, line.where)}: stated {value(line.measure, line.claimed, line.unit)}, its "
            f"movements give {reached(line.measure, line.after, line.unit, is_change=line.is_change)} "
            f"(tolerance {amount(line.tolerance, line.unit)})"
        )


# what cannot be told, and what only the laboratory says


def untold(clauses: Iterable[Reviewed], prescription: Prescription) -> Iterator[str]:
    """By reason, then by clause."""
    reasons: dict[str, list[str]] = {}
    for one in clauses:
        if one.outcome == "cannot-be-told":
            clause = part_of(prescription, one)
            reasons.setdefault(_why(one), []).append(f"{one.id} {in_words(clause)}{_as_far(one, clause)}")
    for why, told in reasons.items():
        yield f"{why}: {'; '.join(told)}."


def _why(one: Reviewed) -> str:
    reasons = dict.fromkeys(part.why for part in one.parts if part.why is not None) or [None]
    told = ", and ".join(because(why) for why in reasons)
    return told[:1].upper() + told[1:]


def _as_far(one: Reviewed, clause: Part) -> str:
    """As far as it is known: a range, or a change; of a staging, which part of it is not."""
    told = list(grouped([part for part in one.parts if part.delivered is not None], one.section, clause))
    if one.section == "staging":
        told += dict.fromkeys(subject(part) for part in one.parts if part.delivered is None)
    return f" ({'; '.join(told)})" if told else ""


def declared(clauses: Iterable[Reviewed], prescription: Prescription, setup: Setup) -> Iterator[tuple[str, str]]:
    """What the laboratory says of clauses that teeth do not show."""
    said = {one.clause: one for one in setup.statements or ()}
    for one in clauses:
        if one.outcome == "declared":
            told = said.get(one.id)
            standing = STANDINGS[told.standing] if told else "said to be done"
            words = f", {quoted(told.words)}" if told and told.words else ""
            yield one.id, f"{in_words(part_of(prescription, one))}: {standing}{words}"


# what is met


def met(clauses: Iterable[Reviewed], prescription: Prescription) -> Iterator[tuple[str, str]]:
    """Each clause that is met, or used within, with what is delivered where that is one amount or a range."""
    for one in clauses:
        if one.outcome in ("met", "within"):
            clause = part_of(prescription, one)
            brief = _brief(one, clause)
            leans = ", with what is counted on" if leaning(one) and not brief else ""
            just = ", within the tolerance" if any(_is_outside(part) for part in one.parts) else ""
            yield one.id, in_words(clause) + (f": {brief}" if brief else "") + just + leans


def _is_outside(part: Compared) -> bool:
    """Whether what is delivered lies outside the bounds themselves."""
    low, high = part.asked.low, part.asked.high
    ends = [end for end in (part.delivered.low, part.delivered.high) if end is not None] if part.delivered else []
    return part.why != "expected" and any(
        (high is not None and rounded(end) > rounded(high)) or (low is not None and rounded(end) < rounded(low))
        for end in ends
    )


def _brief(one: Reviewed, clause: Part) -> str:
    known = [part for part in one.parts if part.delivered is not None and part.delivered.low is not None]
    if not known:
        return ""
    if len(known) == 1 and known[0].what in MEASURE_KINDS:
        return next(grouped(known, one.section, clause))
    if isinstance(clause, Movement):
        return _range(known)
    return _used(known) if one.section == "allow" else ""


def _used(parts: list[Compared]) -> str:
    """How much of an allowance is used."""
    in_all = next((part for part in parts if part.what == "reduction-in-all"), None)
    kind = in_all.what if in_all else parts[0].what
    sizes = [size for part in parts if part.what == kind for size in _ends(part.delivered)]
    most = max(sizes, default=0.0)
    if kind == "extraction":
        return "taken out" if most else "not taken out"
    if not rounded(most):
        return "not used"
    return f"{amount(most, parts[0].unit)}{' in all' if in_all else ''} used"


def _ends(span: Span | None) -> tuple[float, ...]:
    return () if span is None else tuple(abs(end) for end in (span.low, span.high) if end is not None)


def _range(parts: list[Compared]) -> str:
    sizes = [size for part in parts if is_variable(part.what) for size in _ends(part.delivered)]
    return _spread(sizes, parts[0].unit) if sizes else ""
