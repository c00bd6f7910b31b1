"""Words around a value: what bounds it, before and after; and whether it can only be an amount."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from wellposed_converters.text.quantities.value import value
from wellposed_converters.text.quantities.words import DASHES, Row, negated, phrases, words

STOPS: Final = frozenset(",;)]")
SIDES: Final = DASHES | frozenset("<>=")
"""Signs that with a sign of comparison make an arrow."""


@dataclass(frozen=True)
class Frame:
    """``last``: the index behind the words; ``said``: the words; ``dotted``: whether a full stop ends them."""

    last: int
    bounds: frozenset[str] = frozenset()
    approx: bool = False
    exact: bool = False
    said: frozenset[str] = frozenset()
    why: str | None = None
    dotted: bool = False

    def joined(self, name: str, said: str, last: int) -> Frame:
        """The frame with one more form."""
        bounds = self.bounds | ({name} if name not in ("approx", "exact") else set())
        approx, exact = self.approx or name == "approx", self.exact or name == "exact"
        return Frame(last, frozenset(bounds), approx, exact, self.said | {said}, self.why, said.endswith("."))

    def __bool__(self) -> bool:
        return bool(self.bounds) or self.approx or self.exact


def before(row: Row, at: int) -> Frame:
    """The bounding words that begin at the token."""
    frame = Frame(at)
    while found := _before(row, frame.last):
        name, last = found
        frame = frame.joined(name, row.said(frame.last, last), last)
    if not frame or not _denied(row, at, frame):
        return frame
    return replace(frame, why="negated-bound")


def _before(row: Row, at: int) -> tuple[str, int] | None:
    found = row.phrase(at, negated()) or row.phrase(at, phrases("pre"))
    if found is None or row.any_sort(at) != "sign":
        return found
    arrow = (row.tight(at) and row.row[at - 1].norm in SIDES) or (row.tight(found[1]) and row.norm(found[1]) in SIDES)
    between = row.any_sort(at - 1) == "number" and row.tight(at) and row.norm(at) == "~"
    return None if between or (arrow and not _signed_number(row, found[1])) else found


def _signed_number(row: Row, at: int) -> bool:
    """``≥-2``."""
    return row.dash(at) and row.sort(at + 1) == "number" and row.tight(at + 1)


def _denied(row: Row, at: int, frame: Frame) -> bool:
    """Whether a denial stands directly before words of bounding that are not one with it."""
    return row.norm(at - 1) in words("negated", "words") and (bool(frame.bounds) or frame.approx)


def behind(row: Row, at: int) -> Frame:
    """The bounding words that follow an amount, as far as they are sure to belong to it."""
    frame = Frame(at)
    while found := row.phrase(frame.last + _hyphen(row, frame.last), phrases("post")):
        name, last = found
        said = row.said(last - _length(row, frame.last, found), last)
        fault = _fault(row, said, last)
        if fault:
            return frame if fault == "other" else replace(frame, why=fault)
        frame = frame.joined(name, said, last)
    return replace(frame, why="maximum-or-maxillary" if _taken_max(row, frame.last) else None)


def _hyphen(row: Row, at: int) -> bool:
    return row.dash(at) and row.tight(at) and row.norm(at + 1) == "ish"


def _length(row: Row, at: int, found: tuple[str, int]) -> int:
    return found[1] - at - _hyphen(row, at)


def _fault(row: Row, said: str, last: int) -> str | None:
    """What keeps the words from going with the amount before them."""
    if row.norm(last) in words("post_rules", "not_before"):
        return "other"
    if said not in words("post_rules", "doubtful") or row.broken(last):
        return None
    after = last + (row.row[last].norm == ".")
    if _begins_number(row, after):
        upper = said in words("context", "upper_words") and not _measured(row, after)
        return "maximum-or-maxillary" if upper else "other"
    if after > last or row.row[last].norm in STOPS or row.row[last].norm in words("post_rules", "followers"):
        return None
    return None if (row.norm(last) == "/" or row.dash(last)) and not row.tight(last + 1) else "other"


POSITIONS: Final = ("ur", "ul", "lr", "ll")


def _begins_number(row: Row, at: int) -> bool:
    """A number or a sign of teeth, or an arch word that something else has taken with its teeth."""
    if row.broken(at):
        return False
    return row.any_sort(at) == "number" or row.row[at].norm in (*".#|⏌⎿⏋⎾", *POSITIONS)


def _measured(row: Row, at: int) -> bool:
    """Whether the number there has a unit, a point or a count."""
    found = value(row, at)
    return found is not None and (found.unit is not None or found.number.form != "integer")


def _taken_max(row: Row, at: int) -> bool:
    """``3 max 4|4``, where "max" went with the teeth."""
    inside = at in row.blocked and not row.broken(at)
    return inside and row.row[at].norm in words("context", "upper_words")


def certain(row: Row, at: int, framed: bool = False, toothlike: bool = False) -> bool:
    """Whether what stands before the token makes a number there an amount: ``overjet of``, ``OJ``, ``by``.

    Behind ``steps`` the number is one only where words bound it (``framed``) or a colon stands; behind ``by`` or
    ``of`` it is none for certain if it may be a tooth.
    """
    if row.norm(at - 1) in words("context", "immediate"):
        return not toothlike
    if (framed or row.norm(at - 1) == ":") and row.norm(at - 1 - (row.norm(at - 1) == ":")) in words("noun", "step"):
        return True
    while row.norm(at - 1) in words("context", "between"):
        at -= 1
        if toothlike and row.any_sort(at) == "word":
            return False
    names = words("context", "values")
    return row.norm(at - 1) in names or "".join(row.norm(one) for one in range(at - 3, at)) in names


def counted_by(row: Row, last: int) -> bool:
    """Whether what follows makes a number before it an amount: ``per side``."""
    return row.norm(last) in words("context", "per") or (row.norm(last) == "/" and row.sort(last + 1) == "word")
