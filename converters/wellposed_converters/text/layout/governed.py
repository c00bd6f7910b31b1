"""Which heading governs which part of a text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from wellposed_converters.text.clause import Span
from wellposed_converters.text.layout.lines import BREAK
from wellposed_converters.text.layout.parts import Part


@dataclass(frozen=True)
class Place:
    """Where a part stands: the section, and the heading or colon line above that says what it is about."""

    section: str | None = None
    heading: Span | None = None


NOWHERE = Place()


@dataclass(frozen=True)
class _State:
    place: Place = NOWHERE
    filled: bool = False
    """Whether something has been said under the heading; a blank line then ends it."""
    listing: bool = False
    """Whether the last thing said was an item of a list; blank lines between items end nothing."""


def governed(text: str, parts: Sequence[Part]) -> Iterator[Place]:
    """The place of each part, in order.

    A heading holds until the next one, or until a blank line after something was said under it.
    """
    state, before = _State(), 0
    for part in parts:
        gap = len(BREAK.findall(text, before, part.start)) > 1
        state = _entered(state, part, gap)
        yield state.place if part.sort in ("segment", "row", "table_head", "heading") else NOWHERE
        state = _left(state, part)
        before = part.end


def _entered(state: _State, part: Part, gap: bool) -> _State:
    if gap and state.filled and not (state.listing and part.sort == "numbering"):
        state = _State()
    if part.sort == "heading":
        section = part.section if part.section is not None else state.place.section
        return _State(Place(section))
    return state


def _left(state: _State, part: Part) -> _State:
    if part.sort in ("signature", "quoted"):
        return _State()
    if part.sort == "heading":
        return replace(state, place=replace(state.place, heading=(part.start, part.end) if part.governs else None))
    if part.sort == "numbering":
        return replace(state, listing=True)
    if part.sort == "segment" and part.opens:
        return _State(replace(state.place, heading=(part.start, part.end)), filled=False)
    if part.sort in ("segment", "row", "table_head"):
        return replace(state, filled=True)
    return state
