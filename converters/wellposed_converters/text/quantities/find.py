"""Amounts of a text: values with their units and bounds, ranges, changes, what they are counted by, places in a row.

What can be read in two ways is found and says so; what is no amount is not among the results.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from wellposed_converters.text.quantities.bases import find_ordinals, whole_interval
from wellposed_converters.text.quantities.kinds import Amount, FromTo
from wellposed_converters.text.quantities.made import expression, merged
from wellposed_converters.text.quantities.numbers import number
from wellposed_converters.text.quantities.words import Row, phrases, row

Found = Amount | FromTo


def find_amounts(text: str, start: int, end: int, taken: Sequence[tuple[int, int]] = ()) -> tuple[Found, ...]:
    """The amounts of ``text[start:end]`` in order, none overlapping another or a span of ``taken``."""
    steps = [(one.start, one.end) for one in find_ordinals(text, start, end)]
    tokens = row(text, start, end, (*taken, *steps))
    return tuple(_joined(text, _found(tokens)))


def _found(tokens: Row) -> Iterator[Found]:
    at = 0
    while at < len(tokens.row):
        made = whole_interval(tokens, at) or expression(tokens, at)
        if made is None:
            at = _past(tokens, at)
        else:
            yield made[0]
            at = _past_adverb(tokens, *made)


def _past(tokens: Row, at: int) -> int:
    """The index behind a number that is no amount: its parts are none either."""
    refused = number(tokens, at) if tokens.sort(at) == "number" else None
    return refused.last if refused else at + 1


def _past_adverb(tokens: Row, made: Found, last: int) -> int:
    """The index behind ``2-weekly``, whose adverb is no second amount."""
    adverb = tokens.phrase(last, phrases("adverb"))
    counted = adverb is not None and isinstance(made, Amount) and made.unit == adverb[0]
    return adverb[1] if adverb and counted else last


def _joined(text: str, found: Iterable[Found]) -> Iterator[Found]:
    """A least and a greatest value that stand together are one range."""
    waiting: Found | None = None
    for one in found:
        pair = merged(text, waiting, one)
        if pair is None and waiting is not None:
            yield waiting
        waiting = pair or one
    if waiting is not None:
        yield waiting
