"""Everything of fixed shape in a segment: tooth references, quantities, conditions, words that state the numbering."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Final

from wellposed_converters.text.clause import Span
from wellposed_converters.text.grammar.items import Found, Named
from wellposed_converters.text.lexicon.conditions import find_conditions
from wellposed_converters.text.places import Numbering, Place, find_places
from wellposed_converters.text.quantities import Amount, FromTo, find_amounts, find_bases, find_ordinals

WIDTH_OR_FORM: Final = re.compile(r"(.*\S)(\s+arch)(?=\s+(?:form|shape|width|widths)\b)", re.IGNORECASE | re.DOTALL)
TWO_WAYS: Final = re.compile(
    r"single teeth (?:are |in |by |use )?(?:fdi|universal|palmer)(?: numbers?)?,? (?:and )?(?:segments|groups|ranges)"
    r" (?:are |in )?by position(?: numbers?)?",
    re.IGNORECASE,
)
"""Single teeth by a numbering, ranges by position: both are said."""


def found(text: str, span: Span, numbering: Numbering) -> list[Found]:
    """Everything of fixed shape in a span: tooth references, quantities, conditions."""
    start, end = span
    conditions = find_conditions(text, start, end)
    named = [one for one in _named(text, numbering) if start <= one.start and one.end <= end]
    things: list[Found] = [*conditions, *named]
    free = _outside(span, sorted((one.start, one.end) for one in things))
    for first, last in free:
        places = [_short(text, one) for one in find_places(text, first, last, dotted=numbering.dotted)]
        sure = [place for place in places if not place.bare_number]
        amounts = find_amounts(text, first, last, [(place.start, place.end) for place in sure])
        things += [*amounts, *find_bases(text, first, last), *find_ordinals(text, first, last)]
        things += [place for place in places if not _clash(place, amounts)]
    return things


def _short(text: str, place: Place) -> Place:
    """In "lower arch form" the place is "lower"."""
    words = WIDTH_OR_FORM.match(text, place.start)
    return replace(place, end=words.end(1)) if words and words.end(2) == place.end else place


def _named(text: str, numbering: Numbering) -> list[Named]:
    """The words that say which numbering the text uses."""
    name = f"{numbering.system}_dot" if numbering.dotted else str(numbering.system)
    both = list(TWO_WAYS.finditer(text)) if numbering.stated_spans else []
    spans = [span for span in numbering.stated_spans if not any(one.start() <= span[0] < one.end() for one in both)]
    two = [Named(one.start(), one.end(), f"{name}+position") for one in both]
    return [*two, *(Named(start, end, name) for start, end in spans)]


def _clash(place: Place, amounts: Iterable[Amount | FromTo]) -> bool:
    """A lone number that is also an amount is left to the amount where no tooth has it in this numbering."""
    over = [one for one in amounts if one.start < place.end and place.start < one.end]
    doubtful = place.bare_number and not place.asks and all(isinstance(one, Amount) and one.bare for one in over)
    return bool(over) and not doubtful


def _outside(span: Span, taken: Sequence[Span]) -> list[Span]:
    free, at = [], span[0]
    for start, end in taken:
        if start > at:
            free.append((at, start))
        at = max(at, end)
    if at < span[1]:
        free.append((at, span[1]))
    return free
