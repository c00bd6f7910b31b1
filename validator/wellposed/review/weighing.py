"""Delivered against asked: inside the bounds, outside, or not to be told."""

from __future__ import annotations

from collections.abc import Sequence

from wellposed.review.result import Compared, Span
from wellposed.vocabulary.terms import ReviewOutcome

ANY = Span(None, None)
NONE_EXPECTED = Span(0.0, 0.0)
ROUNDING = 1e-9
"""What sums of numbers as they are written may be off by."""


def exactly(value: float) -> Span:
    """A value known exactly."""
    return Span(value, value)


def weighed(  # noqa: PLR0913 - the members of what is compared
    what: str,
    where: str,
    unit: str,
    asked: Span,
    delivered: Span | None,
    tolerance: float,
    *,
    before: float | None = None,
    why: str | None = None,
    expected: Span = NONE_EXPECTED,
) -> Compared:
    """One thing compared.

    expected  a change counted on, that may come on top of what is delivered; what is met only with it, or only without,
              says so
    """
    if delivered is None:
        return Compared(what, where, unit, asked, before, None, None, tolerance, None, why or "not-stated")
    met, why = _told(asked, delivered, tolerance, expected)
    difference = _outside(asked, delivered) if met is not True else 0.0
    counted_on = expected if why == "expected" else None
    return Compared(what, where, unit, asked, before, delivered, difference, tolerance, met, why, counted_on)


def _told(asked: Span, delivered: Span, tolerance: float, expected: Span) -> tuple[bool | None, str | None]:
    met = _inside(asked, delivered, tolerance)
    if expected != NONE_EXPECTED:
        helped = _inside(_eased(asked, expected), delivered, tolerance)
        if met is not True and helped is not False:
            return helped, "expected" if helped else "hinge"
        if met is True and helped is not True:
            return None, "expected"
    return met, "hinge" if met is None else None


def _inside(asked: Span, delivered: Span, tolerance: float) -> bool | None:
    """Whether all of what may be delivered is within the bounds; None if some is and some is not."""
    low = float("-inf") if asked.low is None else asked.low - tolerance - ROUNDING
    high = float("inf") if asked.high is None else asked.high + tolerance + ROUNDING
    least, most = _ends(delivered)
    if low <= least and most <= high:
        return True
    return False if most < low or least > high else None


def _eased(asked: Span, expected: Span) -> Span:
    least, most = _ends(expected)
    low = None if asked.low is None else asked.low - most
    return Span(low, None if asked.high is None else asked.high - least)


def _outside(asked: Span, delivered: Span) -> float:
    """How far outside the bounds at the least, + above and - below."""
    least, most = _ends(delivered)
    if asked.low is not None and most < asked.low:
        return most - asked.low
    return least - asked.high if asked.high is not None and least > asked.high else 0.0


def _ends(span: Span) -> tuple[float, float]:
    least = float("-inf") if span.low is None else span.low
    return least, float("inf") if span.high is None else span.high


def outcome(parts: Sequence[Compared]) -> ReviewOutcome:
    """Of all parts of a clause: one that is not met decides, then one that cannot be told."""
    if any(part.met is False for part in parts):
        return "not-met"
    return "cannot-be-told" if any(part.met is None for part in parts) else "met"


def telling(parts: Sequence[Compared]) -> tuple[Compared, ...]:
    """The parts that say more than that all is as it should be; all of them where none does."""
    apart = tuple(part for part in parts if part.met is not True)
    return apart or tuple(parts)
