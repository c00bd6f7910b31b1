"""What is found: an amount, a change from one value to another, what an amount is counted by, one step of the row.

Offsets are those of the text. Values are never negative; a written sign stands by itself. Lengths are millimetres,
angles degrees, shares per cent, as ``unit`` says.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Amount:
    """An amount with the words that bound it; without what it is counted by.

    minimum, maximum  equal for an exact value; only one of them for "up to" and "at least"; both None where the
                      words give no number that is certain
    unit      mm deg pct unit (a premolar width) tooth_li (a lower incisor width) day week month count;
              None: not written
    bound     exact at_most at_least range
    max_open  strictly less than
    noun      what is counted: step
    asks, why the type of the question it is, and what is odd about it; the values are then only one reading
    sign      + or - as written
    bare      a lone number that may as well be a tooth
    within    "within" bounds it; ``kept``: in "keep within"
    """

    start: int
    end: int
    minimum: float | None
    maximum: float | None
    unit: str | None
    bound: str
    approx: bool = False
    max_open: bool = False
    noun: str | None = None
    asks: str | None = None
    why: str | None = None
    sign: str | None = None
    bare: bool = False
    within: bool = False
    kept: bool = False


@dataclass(frozen=True)
class FromTo:
    """``from 60 % to 30 %``, ``6 -> 3 mm``."""

    start: int
    end: int
    before: Amount
    after: Amount


@dataclass(frozen=True)
class Basis:
    """What an amount is counted by: per_contact per_surface per_tooth per_side per_arch total step interval each."""

    start: int
    end: int
    measure: str


@dataclass(frozen=True)
class Ordinal:
    """One step of the row: ``third aligner``, ``step 4``."""

    start: int
    end: int
    value: int
    noun: str
