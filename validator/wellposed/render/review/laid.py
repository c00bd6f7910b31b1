"""Lines of a review: a mark, a label, words that hang under their beginning."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from textwrap import wrap

__all__ = ["block", "listed", "section", "wrapped"]


def wrapped(head: str, words: str, width: int) -> list[str]:
    """Words behind a head, in lines no longer than ``width``; those after the first stand under the words."""
    hang = " " * len(head)
    return wrap(head + words, width, subsequent_indent=hang, break_long_words=False, break_on_hyphens=False)


def listed(rows: Iterable[tuple[str, str]], width: int) -> Iterator[str]:
    """Marks in a column of their own, words beside it."""
    told = list(rows)
    wide = min(max((len(mark) for mark, _ in told), default=0), 12)
    for mark, words in told:
        yield from wrapped(f"{mark:<{wide}}  ", words, width)


def section(heading: str, lines: Iterable[str]) -> str:
    """A heading, an empty line and what stands under it; "" where that is nothing."""
    told = list(lines)
    return "\n".join([heading, "", *told]) + "\n" if told else ""


def block(mark: str, rows: Iterable[tuple[str, str]], width: int) -> Iterator[str]:
    """Labelled words under one mark; a row without a label stands under the labels."""
    left = f"{mark:<4}" if len(mark) < 4 else f"{mark}  "
    label_width = 14
    for label, words in rows:
        yield from wrapped(left + (f"{label:<{label_width}}" if label else ""), words, width)
        left = " " * len(left)
